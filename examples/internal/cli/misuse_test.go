package cli

import (
	"bytes"
	"example.org/maslin/internal/textpage"
	"strings"
	"syscall"
	"testing"
	"time"
)

// fullDisk takes nothing.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

// Whatever cannot be printed is a failure that is said, of the help too.
func TestOutputThatCannotBeWritten(t *testing.T) {
	for _, args := range [][]string{
		{}, {"--help"}, {"plan", "--help"}, {"help", "plan"}, {"log"}, {"plan", "../../bakes/hall-kitchen.toml"},
		{"plan", "../../bakes/hall-kitchen.toml", "--json"}, {"plan", "../../bakes/hall-kitchen.toml", "--working=latex"},
		{"table", "bulk"},
		{"convert", "1", "cup", "flour"}, {"log", "show", "--log", "none.jsonl"},
	} {
		var complaint bytes.Buffer
		s := System{
			In: strings.NewReader(""), Out: fullDisk{}, Err: &complaint, Getenv: func(string) string { return "" },
			Now: func() time.Time { return time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC) },
		}
		if status := Run(args, s); status == exitAnswered || complaint.Len() == 0 {
			t.Errorf("maslin %s: status %d, complaint %q", strings.Join(args, " "), status, complaint.String())
		}
	}
}

// On the narrowest terminal and in the plain locale everything is ASCII, and no line is wider than the
// terminal but for a word that is.
func TestTwentyColumnsOfASCII(t *testing.T) {
	const width = 20
	text := planOn(true, width, map[string]string{"LANG": "C"})
	for i, line := range strings.Split(text, "\n") {
		if strings.Trim(line, " ~") != strings.Map(printableASCII, strings.Trim(line, " ~")) {
			t.Errorf("line %d is not ASCII: %q", i+1, line)
		}
		if textpage.Width(line) > width && len(strings.Fields(line)) > 2 {
			t.Errorf("line %d has %d columns: %s", i+1, textpage.Width(line), line)
		}
	}
	if !strings.Contains(text, "Take care") {
		t.Error("the plan is not whole")
	}
}

func printableASCII(r rune) rune {
	if r < 0x20 || r > 0x7e {
		return -1
	}
	return r
}
