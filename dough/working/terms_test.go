package working_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
)

func TestEveryTermExplainsItself(t *testing.T) {
	seen := map[string]bool{}
	for _, term := range working.Terms() {
		word, text := term.Word.String(), term.Explains.String()
		if seen[term.Key] || word == "" || !strings.HasSuffix(text, ".") || working.Explain(term.Key) != term.Explains {
			t.Errorf("%s: %q, %q", term.Key, word, text)
		}
		if term.Word.ID() != "working.word_"+term.Key || term.Explains.ID() != "working.term_"+term.Key {
			t.Errorf("%s: identifiers %s, %s", term.Key, term.Word.ID(), term.Explains.ID())
		}
		seen[term.Key] = true
	}
	for _, key := range strings.Fields("dose pace amplitude lead hydration friction_factor biot") {
		if !seen[key] {
			t.Errorf("%s is not explained", key)
		}
	}
	if !working.Explain("no such word").IsZero() {
		t.Error("a word that is none is explained")
	}
	if !slices.IsSortedFunc(
		working.Terms()[:18],
		func(a, b working.Term) int { return strings.Compare(a.Key, b.Key) },
	) {
		t.Error("not in alphabetical order")
	}
}
