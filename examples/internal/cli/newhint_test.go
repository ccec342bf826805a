package cli

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A bake written on a Saturday for that Saturday says at once that it cannot be met, why, and what is nearest.
func TestNewOnItsOwnDay(t *testing.T) {
	for at, want := range map[string]string{
		"2026-11-28T06:00:00Z": "The wish for Saturday 28 November 2026, 12:30 can no longer be met",
		"2026-11-28T12:00:00Z": "Saturday 12:30 is over for today, so this is for Saturday 5 December 2026, 12:30",
		"2026-11-25T06:00:00Z": "",
	} {
		now, err := time.Parse(time.RFC3339, at)
		if err != nil {
			t.Fatal(err)
		}
		var out, wrong bytes.Buffer
		file := filepath.Join(t.TempDir(), "bread.toml")
		status := Run([]string{"new", file, "--wanted", "Saturday 12:30", "--zone", "Europe/Zurich"}, System{
			Out: &out, Err: &wrong, In: strings.NewReader(""), Now: func() time.Time { return now }, Width: 80,
			Getenv: func(string) string { return "" },
		})
		text := strings.Join(strings.Fields(out.String()), " ")
		if status != 0 || wrong.Len() > 0 || !strings.Contains(text, "Wrote ") {
			t.Fatalf("status %d: %s %s", status, text, wrong.String())
		}
		if want == "" && (strings.Contains(text, "no longer") || strings.Contains(text, "is over")) ||
			!strings.Contains(text, want) {
			t.Errorf("at %s: %s", at, text)
		}
		if strings.HasPrefix(want, "The wish") && !strings.Contains(text, "Nearest that works: Sunday 29 November") {
			t.Errorf("at %s nothing nearer is named: %s", at, text)
		}
	}
}
