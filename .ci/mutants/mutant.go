package main

import (
	"fmt"
	"math/rand"
	"path/filepath"
	"sort"
	"strings"
)

// A mutant is one deliberate error: what stands between two places of a file is replaced.
type mutant struct {
	file       *file
	line       int
	kind, in   string // what kind of error it is, and the function in which it stands
	start, end int
	mutated    string
	told       string // the change, for people

	form    form
	results string // the types of an expression's results, or of a function's: "(T, error)"
	number  int    // the value of the variable that chooses it; 0 when it is built alone
}

// form is the way in which a mutant is made a choice at run time.
type form int

const (
	fixed     form = iota // it cannot be one
	truth                 // an expression that is true or false
	value                 // another expression
	statement             // a statement, replaced by another or by none
	before                // a statement that is put before what stands there
)

func (m *mutant) name() string {
	return fmt.Sprintf("%s:%d %s %s", filepath.Base(m.file.path), m.line, m.kind, m.told)
}

func (m *mutant) String() string { return fmt.Sprintf("%s [%s]", m.name(), m.in) }

// shares is how often each kind of error is tried; what is left of a sample is drawn from all kinds alike.
var shares = []struct {
	kind  string
	share float64
}{
	{relation, .2}, {arithmetic, .18}, {constant, .18}, {dropped, .14}, {negated, .08}, {logic, .06},
	{exchanged, .05}, {otherMethod, .03}, {withheld, .06}, {early, .02},
}

// sample draws mutants by their shares; those that do not compile are replaced.
func (s *source) sample(all []*mutant, count int, seed int64) []*mutant {
	r := rand.New(rand.NewSource(seed))
	byKind := map[string][]*mutant{}
	for _, m := range all {
		byKind[m.kind] = append(byKind[m.kind], m)
	}
	var first, rest []*mutant
	for _, k := range shares {
		of := byKind[k.kind]
		r.Shuffle(len(of), func(i, j int) { of[i], of[j] = of[j], of[i] })
		n := min(int(k.share*float64(count)+.5), len(of))
		first, rest = append(first, of[:n]...), append(rest, of[n:]...)
	}
	r.Shuffle(len(rest), func(i, j int) { rest[i], rest[j] = rest[j], rest[i] })
	drawn := append(first, rest...)
	return s.sound(drawn, min(count, len(drawn)))
}

// sound keeps the first mutants that compile, as a choice or each by itself.
func (s *source) sound(drawn []*mutant, count int) []*mutant {
	var kept []*mutant
	for len(kept) < count && len(drawn) > 0 {
		n := min(count-len(kept), len(drawn))
		together, alone := s.fitting(drawn[:n:n])
		kept, drawn = append(kept, together...), drawn[n:]
		for _, m := range alone {
			if s.compiles(map[string]string{m.file.path: m.file.text[:m.start] + m.alone() + m.file.text[m.end:]}) {
				kept = append(kept, m)
			}
		}
	}
	return kept
}

// alone is what replaces the place when the mutant is the only change of its package.
func (m *mutant) alone() string {
	if m.form == before {
		return "\nif true {\n" + m.mutated + "\n}\n"
	}
	return m.mutated
}

// byPlace sorts outer places before the inner, and statements before the expressions that fill them.
func byPlace(ms []*mutant) {
	rank := func(f form) int {
		if f == statement || f == before {
			return 0
		}
		return 1
	}
	sort.SliceStable(ms, func(i, j int) bool {
		a, b := ms[i], ms[j]
		switch {
		case a.start != b.start:
			return a.start < b.start
		case a.end != b.end:
			return a.end > b.end
		}
		return rank(a.form) < rank(b.form)
	})
}

// oneLine shortens a piece of source to a line for people.
func oneLine(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if r := []rune(s); len(r) > 110 {
		s = string(r[:110]) + "…"
	}
	return s
}
