package handcheck

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strings"
)

// Counts is how many steps were read, and the names of those that print a value without arithmetic.
type Counts struct {
	Steps, Lines int
	Bare         []string
}

// Faults lists what is wrong with what is printed at the width.
func Faults(text string, width int) ([]string, Counts) {
	var out []string
	var counts Counts
	for _, d := range Read(strings.ToValidUTF8(text, "\uFFFD"), width) {
		c := checker{title: d.Title, symbols: map[string]*symbol{}}
		for i, s := range d.Steps {
			c.step(i+1, s, &counts)
		}
		out = append(out, c.faults...)
	}
	return out, counts
}

// A symbol is what is known of one by what is printed.
type symbol struct {
	meaning string
	values  []Value
	step    int // that found it
	cells   []string
}

type checker struct {
	title   string
	symbols map[string]*symbol
	faults  []string
	where   string
}

func (c *checker) fault(format string, args ...any) {
	c.faults = append(c.faults, c.title+": "+c.where+": "+fmt.Sprintf(format, args...))
}

func (c *checker) step(number int, s Step, counts *Counts) {
	c.where = fmt.Sprintf("step %d, %s", number, s.Name)
	counts.Steps++
	if s.Name == "" || len(s.Lines) == 0 {
		c.fault("has no name or no value")
	}
	if s.Source == "" {
		c.fault("has no source")
	}
	if s.Table != nil {
		c.table(*s.Table)
	}
	bare := s.Table == nil && len(s.Lines) > 0
	for _, l := range s.Lines {
		counts.Lines++
		c.line(number, l)
		bare = bare && !hasArithmetic(l.Numbers) && l.Rounded == ""
	}
	if bare {
		counts.Bare = append(counts.Bare, c.title+": "+s.Name)
		if len(s.Notes) == 0 && s.Lines[0].Formula == "" {
			c.fault("has no arithmetic and does not say where to look")
		}
	}
}

var arithmetic = regexp.MustCompile(`[+×÷^]|.−|[a-z]\(`)

func hasArithmetic(numbers string) bool { return arithmetic.MatchString(numbers) }

var fromStep = regexp.MustCompile(`^(.*), from step ([0-9]+)$`)

// bind takes note of what a symbol is said to be.
func (c *checker) bind(b Binding) {
	if b.Meaning == "" || b.Value == "" {
		c.fault("symbol %s has no value or no meaning", b.Symbol)
		return
	}
	meaning, step := b.Meaning, 0
	if m := fromStep.FindStringSubmatch(meaning); m != nil {
		meaning = m[1]
		_, _ = fmt.Sscan(m[2], &step)
	}
	s := c.symbols[b.Symbol]
	if s == nil {
		s = &symbol{meaning: meaning}
		c.symbols[b.Symbol] = s
	}
	if s.meaning == "" {
		s.meaning = meaning // of a symbol that a step found
	}
	switch {
	case s.meaning != meaning:
		c.fault("symbol %s stands for %q and for %q", b.Symbol, s.meaning, meaning)
	case step > 0 && s.step != step:
		c.fault("symbol %s is not found in step %d", b.Symbol, step)
	}
	if len(s.cells) > 0 {
		return
	}
	v, ok := ReadValue(b.Value)
	if !ok {
		c.fault("symbol %s: %s does not begin with a number", b.Symbol, b.Value)
		return
	}
	c.give(b.Symbol, s, v)
}

func (c *checker) give(name string, s *symbol, v Value) {
	for _, w := range s.values {
		if !v.agrees(w) {
			c.fault("symbol %s is %s and %s", name, w.Text, v.Text)
			break
		}
	}
	s.values = append(s.values, v)
}

func (c *checker) line(number int, l Line) {
	for _, b := range l.Where {
		c.bind(b)
	}
	value, ok := ReadValue(l.Value)
	if !ok {
		c.fault("value %s does not begin with a number", l.Value)
		return
	}
	c.arithmetic(l, value)
	found := value
	if l.Rounded != "" {
		if found, ok = ReadValue(l.Rounded); !ok {
			c.fault("value %s does not begin with a number", l.Rounded)
			return
		}
	}
	s := c.symbols[l.Symbol]
	if s == nil {
		s = &symbol{}
		c.symbols[l.Symbol] = s
	}
	if s.step == 0 {
		s.step = number
	}
	c.give(l.Symbol, s, found)
}

func (c *checker) arithmetic(l Line, value Value) {
	if l.Numbers == "" {
		return
	}
	rat, got, err := Evaluate(l.Numbers)
	typed := got
	if weeks := acrossWeeks(l.Numbers, value, got); weeks != 0 {
		got += float64(weeks * week)
		if rat != nil {
			rat = new(big.Rat).Add(rat, new(big.Rat).SetInt64(weeks*week))
		}
	}
	switch {
	case err != nil:
		c.fault("%s does not evaluate: %v", l.Numbers, err)
	case l.Exact && !value.clock && (rat == nil || rat.Cmp(value.Number) != 0):
		c.fault("claims to be exact: %s is not %s", l.Numbers, l.Value)
	case !value.Gives(got):
		c.fault("%s gives %.12g, the value says %s", l.Numbers, got, l.Value)
	}
	if l.Formula != "" {
		c.putIn(l, typed)
	}
}

var symbolForm = regexp.MustCompile(`Σ ?[\p{L}Δ][\p{L}\p{N}_′]*|[\p{L}Δ][\p{L}\p{N}_′]*\(?`)

var exponent = regexp.MustCompile(`\^([−-]?[0-9]+)`)

var parentheses = strings.NewReplacer("(", "", ")", "")

// putIn checks that the line of numbers is the formula with the numbers put in that its symbols are said to have:
// letter by letter, but for parentheses around a number, and by what the formula gives with these numbers.
func (c *checker) putIn(l Line, want float64) {
	parts, ok := c.parts(l.Formula)
	if !ok {
		return
	}
	put, ok := match(parts, parentheses.Replace(l.Numbers))
	if !ok {
		c.fault("%s = %s is not put in as %s", l.Symbol, l.Formula, l.Numbers)
		return
	}
	i := 0
	line := symbolForm.ReplaceAllStringFunc(l.Formula, func(name string) string {
		if i >= len(put) || parts[i].name != name {
			return name
		}
		i++
		return "(" + exponent.ReplaceAllString(put[i-1], "^($1)") + ")"
	})
	_, got, err := Evaluate(line)
	if err != nil || !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(want)) || got == want) {
		c.fault("%s with its numbers gives %.12g (%v), the line of numbers %.12g", l.Formula, got, err, want)
	}
}

// A part of a formula is a symbol, with the text before it; the last one is the text at the end.
type part struct {
	before, name string
	forms        []string // what may stand for the symbol in the line of numbers
}

// parts cuts a formula at its symbols, all without parentheses; ok is false if one of them is not explained.
func (c *checker) parts(formula string) (out []part, ok bool) {
	at := 0
	for _, m := range symbolForm.FindAllStringIndex(formula, -1) {
		name := formula[m[0]:m[1]]
		if name == "π" || strings.HasSuffix(name, "(") {
			continue
		}
		column, isSum := strings.CutPrefix(name, "Σ ")
		s := c.symbols[strings.TrimPrefix(column, "Σ")]
		if s == nil || len(s.values) == 0 && len(s.cells) == 0 {
			c.fault("formula %s uses %s, which is not explained", formula, name)
			return nil, false
		}
		p := part{before: parentheses.Replace(formula[at:m[0]]), name: name}
		if isSum {
			p.forms = []string{parentheses.Replace(strings.Join(s.cells, " + "))}
		} else {
			for _, v := range s.values {
				p.forms = append(p.forms, parentheses.Replace(v.typed()))
			}
		}
		out, at = append(out, p), m[1]
	}
	return append(out, part{before: parentheses.Replace(formula[at:])}), true
}

// match finds what stands in the line for each symbol of the parts, a time perhaps with its unit behind.
func match(parts []part, line string) (put []string, ok bool) {
	rest, ok := strings.CutPrefix(line, parts[0].before)
	if !ok || len(parts) == 1 {
		return nil, ok && rest == ""
	}
	for _, form := range parts[0].forms {
		after, ok := strings.CutPrefix(rest, form)
		if !ok {
			continue
		}
		for _, unit := range []string{" min", ""} {
			if next, ok := strings.CutPrefix(after, unit); ok {
				if more, ok := match(parts[1:], next); ok {
					return append([]string{form}, more...), true
				}
			}
		}
	}
	return nil, false
}
