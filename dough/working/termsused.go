package working

import (
	"slices"
	"strings"
)

// termsUsed are the keys of the terms of the glossary that the name of a symbol or step uses.
func termsUsed(name Message) []string {
	_, after, ok := strings.Cut(termUses, "\n"+name.ID()+" ")
	if !ok || name.ID() == "" {
		return nil
	}
	keys, _, _ := strings.Cut(after, "\n")
	return strings.Fields(keys)
}

// used are the terms that the names of symbols and steps of a derivation use, in the order of the glossary; those that
// a symbol explains already are left out.
func (w Working) used(explained map[Message]bool) []Term {
	wanted := map[string]bool{}
	name := func(m Message) {
		for _, key := range termsUsed(m) {
			wanted[key] = true
		}
	}
	for _, s := range w.steps {
		name(s.finding.Name)
		for _, c := range s.finding.Table.Columns {
			name(c.Meaning)
		}
		for _, n := range symbolsOf(s.finding.By) {
			name(n.symbol.meaning)
		}
		wanted["logarithm"] = wanted["logarithm"] || s.finding.By.n.calls("ln", "exp", "log10")
	}
	var out []Term
	for _, t := range Terms() {
		if wanted[t.Key] && !explained[t.Explains] {
			out = append(out, t)
		}
	}
	return out
}

// calls reports whether the expression uses one of the functions.
func (n *node) calls(functions ...string) bool {
	if n == nil {
		return false
	}
	return n.op == opCall && slices.Contains(functions, n.name) ||
		slices.ContainsFunc(n.args, func(a *node) bool { return a.calls(functions...) })
}
