package working_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
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
	if !slices.IsSortedFunc(working.Terms()[:18],
		func(a, b working.Term) int { return strings.Compare(a.Key, b.Key) }) {
		t.Error("not in alphabetical order")
	}
}

// A derivation explains the terms that it uses, each once, and no others.
func TestGlossaryOfADerivation(t *testing.T) {
	d := working.Derive(working.Say("pace"))
	b := working.Given("b", working.Tell("ferment.symbol_log_pace",
		"mean of the log of the pace, from %d {1|bake|bakes}", 3),
		0.1)
	d.Find(working.Finding{Name: working.Tell("ferment.derive_pace_likely", "pace of the culture, of the typical one"),
		Symbol: "p", Unit: working.Percent, By: working.Exp(b).Times(100), Term: working.Explain("pace"),
		Source: working.Algebra()})
	got := map[string]int{}
	for _, g := range d.Working().Glossary(working.Reader{}) {
		got[g.Meaning]++
	}
	for _, key := range []string{"pace", "logarithm"} {
		if got[working.Explain(key).String()] != 1 {
			t.Errorf("%s is explained %d times", key, got[working.Explain(key).String()])
		}
	}
	// A term that only the name of a step uses is explained too.
	d = working.Derive(working.Say("height"))
	d.Find(working.Finding{Name: working.Tell("bake.step_geopotential", "geopotential altitude"), Symbol: "H",
		Is: quantity.Meters(1150), Source: working.Algebra()})
	found := false
	for _, g := range d.Working().Glossary(working.Reader{}) {
		found = found || g.Meaning == working.Explain("altitude").String()
	}
	if !found {
		t.Error("the altitude is not explained where it is found")
	}
	if got[working.Explain("biot").String()] != 0 {
		t.Error("a term is explained that is not used")
	}
}
