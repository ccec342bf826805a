package house

import (
	"go/parser"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestArgumentsHaveNames(t *testing.T) {
	for text, want := range map[string]string{
		"lo": "lo", "w.Temperature": "temperature", "len(b.Loaves)": "loaves", "all[0].WholeGrain": "whole grain",
		"(*x)": "x", "r.Ready()": "ready", "quantity.Elapsed(until)": "until", "between(low, high)": "low",
		"made()": "made", "-a.Rise": "rise", "a + b": "a + b", `"g"`: `"g"`, "x.Times(a, b)": "times",
		`working.Tell("bake.core_wanted", "core %v", c)`: "core wanted",
	} {
		e, err := parser.ParseExpr(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := argumentName(e); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
	all, err := Arguments("../..")
	if err != nil {
		t.Fatal(err)
	}
	english, _, err := Sentences("../..")
	if err != nil {
		t.Fatal(err)
	}
	for id, template := range english {
		if got, want := len(all[id]), len(Placeholders(template)); got != want {
			t.Errorf("%s has %d arguments and %d names", id, want, got)
		}
	}
	root := t.TempDir()
	for _, room := range library {
		if err := os.MkdirAll(filepath.Join(root, room), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	source := `package dough
import "example.org/maslin/dough/working"
func a(x int) { working.Tell("dough.of", "%v of %v", x, len(all)); working.Tell("dough.of", "%v of %v", y, z) }
func b() { working.Tell("dough.none", "none"); working.Tell(id, "%v", x) }`
	if err := os.WriteFile(filepath.Join(root, "dough", "a.go"), []byte(source), 0o600); err != nil {
		t.Fatal(err)
	}
	all, err = Arguments(root)
	if diff := cmp.Diff(map[string][]string{"dough.of": {"x", "all"}}, all); err != nil || diff != "" {
		t.Error(err, diff)
	}
	if _, err := Arguments(t.TempDir()); err == nil {
		t.Error("a root without the library")
	}
}
