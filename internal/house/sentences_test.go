package house

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// One identifier, one English sentence, all of its arguments shown.
func TestSentencesHaveOneIdentifierEach(t *testing.T) {
	english, faults, err := Sentences("../..")
	if err != nil {
		t.Fatal(err)
	}
	for _, fault := range faults {
		t.Error(fault)
	}
	for _, id := range []string{"working.caution", "working.range", "error.out_of_range"} {
		if english[id] == "" {
			t.Errorf("%s is not listed", id)
		}
	}
}

func TestSentencesFindsWhatIsWrong(t *testing.T) {
	root := t.TempDir()
	for _, room := range library {
		if err := os.Mkdir(filepath.Join(root, room), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	source := `package bake
import w "example.org/maslin/dough/working"
func f(s string, args []any) {
	w.Tell("bake.good", "%[2]v of %[1]v, 5 %% {1|a|b}" + " more", 1, 2)
	w.Tell("bake.good", "other")
	w.Tell("bake.few", "%v %v", 1)
	w.Tell("bake.many", "%v", 1, 2)
	w.Tell("bake.gap", "%[2]v", 1, 2)
	w.Tell("bake.spread", "%v", args...)
	w.Tell("Bake.form", "x")
	w.Tell("mixing.elsewhere", "x")
	w.Tell(s, "x")
	w.Tell("bake.template", s)
	w.Tell("bake.alone")
}`
	if err := os.WriteFile(filepath.Join(root, "bake", "a.go"), []byte(source), 0o600); err != nil {
		t.Fatal(err)
	}
	english, faults, err := Sentences(root)
	if err != nil || len(english) != 1 || english["bake.good"] != "%[2]v of %[1]v, 5 %% {1|a|b} more" {
		t.Errorf("%v %v", english, err)
	}
	wants := []string{
		"another template",
		"1 arguments",
		"2 arguments",
		"2 arguments",
		"not written out",
		"no literal",
		"its package",
		"no literal",
		"no literal",
		"needs an identifier",
	}
	if len(faults) != len(wants) {
		t.Fatalf("%d faults: %s", len(faults), strings.Join(faults, "\n"))
	}
	for i, want := range wants {
		if !strings.Contains(faults[i], want) {
			t.Errorf("fault %d is %q, want %q", i, faults[i], want)
		}
	}
	if _, _, err := Sentences(t.TempDir()); err == nil {
		t.Error("an empty folder passes")
	}
}
