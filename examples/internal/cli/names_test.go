package cli

import (
	"encoding/json"
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
		"now ../../bakes/hall-kitchen.toml --done", "log mix ../../bakes/hall-kitchen.toml --dough 25C",
	} {
		out.Reset()
		if status := Run(strings.Fields(line), s); status != exitBadInput || !strings.Contains(out.String(), "is not a file") {
			t.Errorf("%s: status %d, %s", line, status, out)
		}
	}
}

// Whatever is given, nothing of it steers the terminal that the answer or the complaint is shown on; as JSON it can be
// read back.
func TestGivenTextSteersNothing(t *testing.T) {
	const steering = "\x1b\a\u009b\u061c\u200e\u2028\u202e\u2066\x7f"
	const hostile = steering + "[31mx"
	log := filepath.Join(t.TempDir(), hostile)
	if err := os.WriteFile(log, nil, 0o600); err != nil {
		t.Skip(err)
	}
	s, out := kitchen(t, log)
	for _, args := range [][]string{
		{"--" + hostile}, {"plan", "--" + hostile}, {"plan", "-" + hostile}, {hostile}, {"plan", hostile}, {"log", hostile},
		{"log", "import", hostile}, {"log", "note", hostile}, {"cost", hostile}, {"bulk", "--readings", hostile},
		{"log", "show"}, {"log", "show", "--json"}, {"learn"}, {"learn", "--json"}, {"log", "note", "x"},
		{"plan", "../../bakes/hall-kitchen.toml", "--html", filepath.Join(log, "x")},
	} {
		out.Reset()
		Run(args, s)
		if out.Len() == 0 || strings.ContainsAny(out.String(), steering) {
			t.Errorf("%q: %q", args, out)
		}
	}
	out.Reset()
	var read struct{ Log string }
	if Run([]string{"learn", "--json"}, s); json.Unmarshal(out.Bytes(), &read) != nil || read.Log != log {
		t.Errorf("%q, want %q", read.Log, log)
	}
}

// However much is given, a complaint is short: a hundred faults of a file, and of a text its beginning.
func TestComplaintsAreShort(t *testing.T) {
	folder := t.TempDir()
	s, out := kitchen(t, filepath.Join(folder, "log.jsonl"))
	slips := filepath.Join(folder, "slips.toml")
	if err := os.WriteFile(slips, []byte(strings.Repeat("[[flower]]\nnaem = 1\n", 300)+"[[kitchen.mixer]]\n"+
		strings.Repeat("[[kitchen.mixer]]\nkind = \"spirall\"\n", 101)), 0o600); err != nil {
		t.Fatal(err)
	}
	if status := Run([]string{"plan", slips}, s); status != exitBadInput || strings.Count(out.String(), "\n") != 101 ||
		!strings.HasSuffix(out.String(), "more of them\n") {
		t.Errorf("status %d, %d lines: %s", status, strings.Count(out.String(), "\n"), out)
	}
	long := strings.Repeat("x", 50000)
	for _, args := range [][]string{
		{long}, {"--" + long}, {"-" + long}, {"plan", long}, {"plan", slips, "--html", long}, {"bake-file", long},
		{"new", long},
		{"convert", long}, {"log", "note", long}, {"log", "show", "--log", long}, {"compare", "curves", long}, {"cost", long},
		{"learn", "--pool", long + "=x"}, {"exercise", "--topic", long}, {"vessel", long}, {"plan", slips, "--step", long},
	} {
		out.Reset()
		if status := Run(args, s); status != exitBadInput || out.Len() == 0 || out.Len() > 25000 {
			t.Errorf("%.40q: status %d, %d bytes", args, status, out.Len())
		}
	}
}
