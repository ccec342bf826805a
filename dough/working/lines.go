package working

import (
	"math"
)

// A Line is one printed line of a derivation, as its reader sees it: the formula, the same with the numbers put
// in, and the value. Most steps have one; where a formula needs its own units, lines of conversion stand around
// it.
type Line struct {
	Step    int    `json:"step,omitzero"` // from 1
	Name    string `json:"name,omitzero"` // what the step finds
	Symbol  string `json:"symbol"`
	Formula string `json:"formula"`
	Numbers string `json:"numbers"`
	Value   string `json:"value"`
	Rounded string `json:"rounded,omitzero"` // what becomes of Value by the rounding that the step states
	// what the library takes in its place, near to it; the step's note says why
	Taken  string    `json:"taken,omitzero"`
	Exact  bool      `json:"exact"` // the numbers give exactly Value
	Where  []Binding `json:"where,omitzero"`
	Source Source    `json:"source,omitzero"`
	Fault  string    `json:"fault,omitzero"` // why the line is not to be trusted; for tests

	formula, numbers *node
	symbol           *binding
	value            Value // as printed
	finer            int   // decimals more that the numbers are put in with
}

// A Binding says what one symbol of a formula stands for, with its value and unit.
type Binding struct {
	Symbol  string `json:"symbol"`        // "T_flour"
	Meaning string `json:"meaning"`       // "temperature of the flour"
	Value   string `json:"value"`         // "21 °C"
	Step    int    `json:"step,omitzero"` // the step that found it, from 1; 0 for what was given
}

// Lines tells every step of the derivation line by line to the reader.
func (w Working) Lines(r Reader) []Line {
	n := newNames(w.steps, r)
	var out []Line
	for i, s := range w.steps {
		for _, l := range s.lines(r, n) {
			l.Step, l.Name, l.Source = i+1, s.finding.Name.Text(r), s.finding.Source
			out = append(out, l)
		}
	}
	return out
}

// lines tells a step: conversions into the units of the formula, the formula, and the conversion of its result.
func (s step) lines(r Reader, n *names) []Line {
	f := s.finding
	if f.By.n == nil {
		v := s.result.value.For(r)
		return []Line{{Symbol: n.name(s.result), Value: v.text(r), Exact: true, symbol: s.result, value: v}}
	}
	var lines []Line
	done := map[bindingKey]bool{}
	in := func(b *binding, u Unit) *node {
		c := b.in(u)
		k := c.key()
		if told := n.converted[k]; !done[k] && (told == nil || told == s.result) {
			done[k] = true
			x := conversion(symbolExpr(b), b.shown(r).Unit, u)
			lines = append(lines, r.line(n, c, x.n, c.value))
			n.converted[k], n.step[k] = s.result, n.step[s.result.key()]
		}
		return symbolExpr(c).n
	}
	own := !s.holds(r)
	by := f.By.n.replace(func(x *node) *node {
		switch {
		case x.op == opIn:
			b := x.args[0].symbol
			if b == nil {
				return operand(nil)
			}
			if b.shown(r).Unit == x.unit {
				return x.args[0]
			}
			return in(b, x.unit)
		case own && x.op == opSymbol && x.symbol.shown(r).Unit != x.symbol.value.Unit:
			return in(x.symbol, x.symbol.value.Unit)
		}
		return x
	})
	printed := s.result.value
	moved := s.moved(r)
	if !f.Rounding.IsZero() || moved {
		printed = s.raw
	}
	unit := printed.Unit
	symbol := s.result
	if own && unit.for_(r) != unit {
		symbol = s.result.in(unit)
		n.converted[symbol.key()], n.step[symbol.key()] = s.result, n.step[s.result.key()]
	}
	var back *Line
	if symbol != s.result {
		x := conversion(symbolExpr(symbol), unit, unit.for_(r))
		l := r.line(n, s.result, x.n, s.result.value)
		back = &l
		printed = printed.finer(l.finer)
	}
	main := r.line(n, symbol, by, printed)
	if main.Fault == "" && f.Is != nil && f.Rounding.IsZero() &&
		!(math.Abs(s.raw.Number-s.result.value.Number) <= s.result.value.half()*(1+1e-9)+f.Within) {
		main.Fault = "the expression gives " + s.raw.String() + ", the library says " + s.result.value.String()
	}
	after := s.result.value.Text(r)
	if back != nil { // what is converted back is what was rounded or taken
		after = s.result.value.finer(back.finer).text(r)
	}
	switch {
	case !f.Rounding.IsZero():
		main.Rounded = after
	case moved:
		main.Taken = after
	}
	lines = append(lines, main)
	if back != nil {
		lines = append(lines, *back)
	}
	for _, l := range lines {
		for i := range l.Where {
			if l.Where[i].Step == n.step[s.result.key()] {
				l.Where[i].Step = 0
			}
		}
	}
	return lines
}

func symbolExpr(b *binding) Expr { return Expr{&node{op: opSymbol, symbol: b}} }

// in is the symbol in a unit that it keeps for every reader.
func (b *binding) in(u Unit) *binding {
	c := &binding{name: b.name + "_" + u.measure().suffix, meaning: b.meaning, value: b.value.in(u), fixed: true}
	return c
}

// moved reports whether the result of the library, which may lie so far from the value of the expression as Within
// says, is another at the digits shown.
func (s step) moved(r Reader) bool {
	if s.finding.Within == 0 {
		return false
	}
	return !s.raw.For(r).printsAs(s.result.value.For(r))
}

// holds reports whether the formula gives the same in the units that the reader is shown as in its own.
func (s step) holds(r Reader) bool {
	unit := s.raw.Unit
	same := unit.for_(r) == unit
	for _, sym := range symbolsOf(s.finding.By) {
		same = same && sym.symbol.shown(r).Unit == sym.symbol.value.Unit
	}
	if same {
		return true
	}
	got := s.finding.By.n.evaluate(func(n *node) float64 {
		if n.op == opIn {
			return metricNumber(n)
		}
		return n.symbol.shown(r).Number
	})
	want, ok := convert(s.raw.Number, unit, unit.for_(r))
	// Weights are kept in micrograms and shown in ounces as they were given, which moves a difference of two small ones by
	// a hundred-millionth of itself; a formula that does not hold in other units is off by much more.
	return ok && math.Abs(got-want) <= 1e-7*(math.Abs(want)+1e-6)
}

// line makes one line whose numbers give the value as it is printed.
func (r Reader) line(n *names, symbol *binding, formula *node, value Value) Line {
	if !symbol.fixed {
		value = value.For(r)
	}
	l := Line{Symbol: n.name(symbol), formula: formula, symbol: symbol, value: value}
	l.numbers, l.finer, l.Fault = r.putIn(formula, value)
	l.Formula, l.Numbers, l.Value = r.plain(formula, n), r.plain(l.numbers, n), value.text(r)
	want, ok := value.literal(value.Decimals).rational()
	got, isRational := l.numbers.rational()
	l.Exact = value.Unit == Clock || ok && isRational && got.Cmp(want) == 0
	for _, sym := range formula.symbols() {
		b := sym.symbol
		v := b.shown(r).finer(l.finer)
		text := v.text(r)
		if b.column {
			text = r.word("in the table")
		}
		l.Where = append(l.Where,
			Binding{Symbol: n.name(b), Meaning: b.meaning.Text(r), Value: text, Step: n.step[b.key()]})
	}
	return l
}

// putIn puts the numbers into a formula, with as many decimals more than they are shown with as it takes for the
// line to give the value as printed.
func (r Reader) putIn(formula *node, want Value) (numbers *node, finer int, fault string) {
	clock := want.Unit == Clock
	for _, s := range formula.symbols() {
		clock = clock || s.symbol.value.Unit == Clock
	}
	printed := want.literal(want.Decimals).value
	if want.Unit == Clock {
		printed = want.Number
	}
	var first *node
	for finer = range 10 {
		numbers = formula.replace(func(x *node) *node {
			if x.op != opSymbol {
				return x
			}
			v := x.symbol.shown(r).finer(finer)
			number := &node{op: opNumber, literal: v.literal(v.Decimals)}
			switch {
			case v.Unit == Clock:
				number.literal.value, number.shown = v.Number, r.DayClock(v.moment())
			case clock && v.Unit == Minute:
				number.shown = r.number(number.literal.mantissa) + " min"
			}
			return number
		})
		if first == nil {
			first = numbers
		}
		got := numbers.evaluate(func(*node) float64 { return math.NaN() })
		if math.Abs(got-printed) <= want.half()*(1+tie)+1e-12*math.Abs(printed) {
			return numbers, finer, ""
		}
	}
	return first, 0, "the numbers do not give " + want.text(r)
}

// tie is how far beyond half a unit of the last printed digit, as a share of it, the numbers may lie: a result that
// stands at a tie is rounded by digits of its own (a quantity's last quantum) that the numbers need not have.
const tie = 1e-4
