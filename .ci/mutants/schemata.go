package main

import (
	"fmt"
	"path/filepath"
	"strings"
)

const (
	chooses  = "mutantChosen"  // the variable of the mutated package
	variable = "MASLIN_MUTANT" // what it is read from
)

func (s *source) helperPath() string { return filepath.Join(s.dir, "zz_mutant_chosen.go") }

func (s *source) helper() string {
	return fmt.Sprintf("package %s\n\nimport (\n\tmutantOS %q\n\tmutantStrconv %q\n)\n\n"+
		"var %s, _ = mutantStrconv.Atoi(mutantOS.Getenv(%q))\n", s.pkg.Name(), "os", "strconv", chooses, variable)
}

// schemata are the changed files in which every mutant can be chosen by its number.
func (s *source) schemata(ms []*mutant) map[string]string {
	out := map[string]string{s.helperPath(): s.helper()}
	byFile := map[*file][]*mutant{}
	for _, m := range ms {
		byFile[m.file] = append(byFile[m.file], m)
	}
	for f, of := range byFile {
		byPlace(of)
		out[f.path] = written(f.text, 0, len(f.text), of)
	}
	return out
}

// written is the text of a stretch of a file with the mutants within it, which are sorted by their place.
func written(text string, from, to int, ms []*mutant) string {
	var b strings.Builder
	for len(ms) > 0 {
		m, inner := ms[0], 1
		for inner < len(ms) && ms[inner].start < m.end {
			inner++
		}
		b.WriteString(text[from:m.start])
		b.WriteString(m.choice(written(text, m.start, m.end, ms[1:inner])))
		from, ms = m.end, ms[inner:]
	}
	b.WriteString(text[from:to])
	return b.String()
}

// choice is the place of a mutant, where the original may hold choices of its own.
func (m *mutant) choice(original string) string {
	switch m.form {
	case truth:
		return fmt.Sprintf("(%s != %d && (%s) || %s == %d && (%s))",
			chooses, m.number, original, chooses, m.number, m.mutated)
	case value:
		if m.results == "" {
			return fmt.Sprintf("func() { if %s == %d { %s\nreturn }\n%s }()", chooses, m.number, m.mutated, original)
		}
		return fmt.Sprintf("func() %s { if %s == %d { return %s\n}\nreturn %s }()",
			m.results, chooses, m.number, m.mutated, original)
	case before:
		return fmt.Sprintf("\nif %s == %d { %s }\n", chooses, m.number, m.mutated)
	}
	if m.kind == dropped {
		return fmt.Sprintf("if %s != %d { %s }", chooses, m.number, original)
	}
	return fmt.Sprintf("if %s == %d { %s }\n%s", chooses, m.number, m.mutated, original)
}

// fitting divides sound mutants into those that can be chosen at run time and those that are built alone.
func (s *source) fitting(ms []*mutant) (together, alone []*mutant) {
	var can []*mutant
	for _, m := range ms {
		if m.form == fixed {
			alone = append(alone, m)
			continue
		}
		can = append(can, m)
		m.number = len(can)
	}
	together = s.fit(can)
	fits := map[*mutant]bool{}
	for _, m := range together {
		fits[m] = true
	}
	for _, m := range can {
		if !fits[m] {
			m.number = 0
			alone = append(alone, m)
		}
	}
	return together, alone
}

// fit halves a set that does not compile until those in the way are found.
func (s *source) fit(ms []*mutant) []*mutant {
	if len(ms) == 0 || s.compiles(s.schemata(ms)) {
		return ms
	}
	if len(ms) == 1 {
		return nil
	}
	half := len(ms) / 2
	return append(s.fit(ms[:half:half]), s.fit(ms[half:])...)
}
