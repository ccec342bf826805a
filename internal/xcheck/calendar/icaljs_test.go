package calendar_test

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

func TestJavaScriptDecoder(t *testing.T) {
	for _, tool := range []string{"node", "npm"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skipf("skipped: %s is not installed", tool)
		}
	}
	dir := t.TempDir()
	install := exec.Command("npm", "install", "--no-audit", "--no-fund", "--no-save", "--prefix", dir, "ical.js@2.2.1")
	if out, err := install.CombinedOutput(); err != nil {
		t.Skipf("skipped: ical.js 2.2.1 cannot be installed: %v\n%.500s", err, out)
	}
	script, err := os.ReadFile("testdata/read.mjs")
	if err != nil {
		t.Fatal(err)
	}
	text, _, want := written(t)
	// This reader does not know the type of the two properties that name a calendar, and leaves
	// their escapes as they are written.
	const name = `Hall kitchen\; maslin\, six loaves \\ Sunday`
	for file, content := range map[string][]byte{"read.mjs": script, "night.ics": text} {
		if err := os.WriteFile(filepath.Join(dir, file), content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	// The zone of the machine must not matter.
	for _, zone := range []string{"UTC", "America/Denver", "Australia/Lord_Howe"} {
		run := exec.Command("node", "read.mjs", "night.ics")
		run.Dir = dir
		run.Env = append(os.Environ(), "TZ="+zone)
		out, err := run.Output()
		if err != nil {
			t.Fatalf("node: %v\n%s", err, err.(*exec.ExitError).Stderr)
		}
		var got struct {
			Name, OtherName string
			Events          []reading
		}
		if err := json.Unmarshal(out, &got); err != nil {
			t.Fatal(err)
		}
		if got.Name != name || got.OtherName != name || len(got.Events) != len(want) {
			t.Fatalf("%s: got %q, %q and %d events; want %q and %d", zone, got.Name, got.OtherName, len(got.Events), name,
				len(want))
		}
		for i := range want {
			if fmt.Sprintf("%#v", got.Events[i]) != fmt.Sprintf("%#v", want[i]) {
				t.Errorf("%s: event %d\ngot  %#v\nwant %#v", zone, i, got.Events[i], want[i])
			}
		}
	}
}
