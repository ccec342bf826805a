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
	form, names := c.matcher(l.Formula)
	if form == nil {
		return
	}
	m := form.FindStringSubmatch(parentheses.Replace(l.Numbers))
	if m == nil {
		c.fault("%s = %s is not put in as %s", l.Symbol, l.Formula, l.Numbers)
		return
	}
	i := 0
	line := symbolForm.ReplaceAllStringFunc(l.Formula, func(name string) string {
		if i >= len(names) || names[i] != name {
			return name
		}
		i++
		return "(" + exponent.ReplaceAllString(m[2*i-1], "^($1)") + ")"
	})
	_, got, err := Evaluate(line)
	if err != nil || !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(want)) || got == want) {
		c.fault("%s with its numbers gives %.12g (%v), the line of numbers %.12g", l.Formula, got, err, want)
	}
}

// matcher matches the formula with its numbers, both without parentheses; names are its symbols in order.
func (c *checker) matcher(formula string) (form *regexp.Regexp, names []string) {
	var b strings.Builder
	b.WriteString("^")
	at := 0
	quote := func(text string) { b.WriteString(regexp.QuoteMeta(parentheses.Replace(text))) }
	for _, m := range symbolForm.FindAllStringIndex(formula, -1) {
		quote(formula[at:m[0]])
		at = m[1]
		name := formula[m[0]:m[1]]
		if name == "π" || strings.HasSuffix(name, "(") {
			quote(name)
			continue
		}
		column, isSum := strings.CutPrefix(name, "Σ ")
		s := c.symbols[strings.TrimPrefix(column, "Σ")]
		names = append(names, name)
		var forms []string
		switch {
		case s == nil || len(s.values) == 0 && len(s.cells) == 0:
			c.fault("formula %s uses %s, which is not explained", formula, name)
			return nil, nil
		case isSum:
			forms = []string{strings.Join(s.cells, " + ")}
		default:
			for _, v := range s.values {
				forms = append(forms, v.typed())
			}
		}
		for i, f := range forms {
			forms[i] = regexp.QuoteMeta(parentheses.Replace(f))
		}
		b.WriteString("(" + strings.Join(forms, "|") + ")( min)?")
	}
	quote(formula[at:])
	b.WriteString("$")
	return regexp.MustCompile(b.String()), names
}
