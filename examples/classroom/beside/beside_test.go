package beside

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/language"
)

func TestTheCatalogComesBack(t *testing.T) {
	german := language.German()
	text, err := Write(german, func(string) bool { return true })
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(german, Read(text)); d != "" {
		t.Error(d)
	}
	text, err = Write(german, func(id string) bool { return strings.HasPrefix(id, "desk.") })
	part := Read(text)
	if err != nil || len(part.Sentences) < 100 || len(part.Sentences) > 400 || len(part.Words) != len(german.Words) {
		t.Errorf("%d sentences, %d words, %v", len(part.Sentences), len(part.Words), err)
	}
	for id := range part.Sentences {
		if !strings.HasPrefix(id, "desk.") {
			t.Errorf("%s was not wanted", id)
		}
	}
}

func TestATextOfSeveralLinesIsRefused(t *testing.T) {
	for _, text := range []string{"a\nb", "a\tb"} {
		l := working.Language{Tag: "de", Sentences: map[string]string{"desk.add": text}}
		if out, err := Write(l, func(string) bool { return true }); err == nil {
			t.Errorf("%q is written: %q", text, out)
		}
	}
	if l := Read("x\ty\tz\n\ns\tonly"); l.Sentences["only"] != "" || len(l.Words) > 0 {
		t.Errorf("%v", l)
	}
}
