package cli

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A name that is empty, as a variable that is not set gives it, is refused: nothing is written to nowhere, nor into
// another log.
func TestFilesWithoutAName(t *testing.T) {
	log := filepath.Join(t.TempDir(), "bakes.jsonl")
	s, out := kitchen(t, log)
	for _, line := range []string{
		"plan ../../bakes/hall-kitchen.toml --html=", "plan ../../bakes/hall-kitchen.toml --ics=", "log note x --log=",
		"plan ../../bakes/hall-kitchen.toml --csv=", "bulk --dough 25C --prefermented 12% --svg=", "learn --log=",
	} {
		out.Reset()
		if status := Run(strings.Fields(line), s); status != exitBadInput ||
			!strings.Contains(out.String(), "required: got \"\", want the name of a file") {
			t.Errorf("%s: status %d, %s", line, status, out)
		}
	}
	if _, err := os.Stat(log); err == nil {
		t.Error("the log of the kitchen was written")
	}
}

// What is no file is no log: it is refused before anything is read from it, since a pipe would be waited for.
func TestLogsThatAreNoFiles(t *testing.T) {
	folder := t.TempDir()
	s, out := kitchen(t, folder)
	for _, line := range []string{
		"log note x", "log rise 30%", "log import ../../bakes/hall-kitchen.toml", "now ../../bakes/hall-kitchen.toml --follow",
		"now ../../bakes/hall-kitchen.toml --done",
	} {
		out.Reset()
		if status := Run(strings.Fields(line), s); status != exitBadInput || !strings.Contains(out.String(), "is not a file") {
			t.Errorf("%s: status %d, %s", line, status, out)
		}
	}
}
