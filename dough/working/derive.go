package working

import (
	"math"

	"example.org/maslin/dough/quantity"
)

// A Finding is a step of a derivation before it is made: what is found, by which expression, and who says so. One of
// By, Table and Look says how.
type Finding struct {
	Name   Message `json:"name,omitzero"`  // what the step finds: "water temperature"
	Symbol string  `json:"symbol"`         // "T_water"
	By     Expr    `json:"by,omitzero"`    // the arithmetic
	Table  Table   `json:"table,omitzero"` // a table whose last column is added up
	// of a step without arithmetic: where to look, such as the table, or what was searched how
	Look Message `json:"look,omitzero"`
	// Is is the result of the library, a quantity or an [Amount]: its unit is that of the step, and the expression
	// has to agree with it. Without it the result is the value of the expression in Unit.
	Is   any  `json:"is,omitzero"`
	Unit Unit `json:"unit,omitzero"`
	// Decimals are shown of a result; WholeNumber for none. Not given, as many as make five significant digits.
	Decimals int `json:"decimals"`
	// Rounding says how Is was made of the value of the expression where that is more than ordinary
	// rounding, such as by largest remainder or up to what a scale can weigh. Both are shown then.
	Rounding Message `json:"rounding,omitzero"`
	// Within is how far Is may lie from the value of the expression beyond the rounding of what is printed, in
	// Unit, where the library computes in another way; Note says why. Both are shown where they differ.
	Within  float64 `json:"within,omitzero"`
	Brief   Message `json:"brief,omitzero"` // one sentence in trade words; not given, name and value
	Note    Message `json:"note,omitzero"`
	Meaning Message `json:"meaning,omitzero"` // what the symbol stands for; not given, Name
	Term    Message `json:"term,omitzero"`    // the entry of the glossary for the symbol
	Source  Source  `json:"source,omitzero"`
}

// WholeNumber as Decimals shows none.
const WholeNumber = -1

// A Derivation collects the steps of a working in order. It is not safe for concurrent use; a result makes its
// own each time it is asked.
type Derivation struct {
	answer

	title Message
	steps []step
}

// Derive begins a derivation.
func Derive(title Message) *Derivation { return &Derivation{title: title} }

// MarshalJSON writes what was derived so far; see [Working.MarshalJSON].
func (d Derivation) MarshalJSON() ([]byte, error) { return (&d).Working().MarshalJSON() }

// Find adds a step and returns its symbol, for the formulas of later steps. Where the arithmetic is a lone symbol of
// the same value, there is nothing to find: no step is added, unless it is the only one, and that symbol is returned.
func (d *Derivation) Find(f Finding) Expr {
	s := newStep(f)
	if n := f.By.n; len(d.steps) > 0 && n != nil && n.op == opSymbol && !n.symbol.column && f.Rounding.IsZero() &&
		f.Note.IsZero() &&
		n.symbol.value.Unit == s.result.value.Unit && n.symbol.value.Number == s.result.value.Number {
		return f.By
	}
	d.steps = append(d.steps, s)
	return symbolExpr(s.result)
}

// Add puts all steps of another working here and returns the symbol of its last step.
func (d *Derivation) Add(w Working) Expr {
	d.steps = append(d.steps, w.steps...)
	if len(w.steps) == 0 {
		return Expr{}
	}
	return symbolExpr(w.steps[len(w.steps)-1].result)
}

// Working is what was derived so far.
func (d *Derivation) Working() Working {
	return Working{title: d.title, steps: append([]step(nil), d.steps...)}
}

// newStep works the step out.
func newStep(f Finding) step {
	if f.Meaning.IsZero() {
		f.Meaning = f.Name
	}
	unit := f.Unit
	var is Value
	if f.Is != nil {
		is = valueOf(f.Is)
		unit = is.Unit
	}
	value := Value{Number: math.NaN(), Unit: unit}
	switch {
	case len(f.Table.Columns) > 0:
		f.Table = f.Table.filled()
		f.By = f.Table.sum()
		value.Number = f.By.n.evaluate(metricNumber)
	case f.By.n != nil:
		value.Number = f.By.n.evaluate(metricNumber)
	default:
		value = is
	}
	if f.Is != nil && is.Number == 0 && math.Abs(value.Number) < 1e-12 {
		value.Number = 0 // what is left of a difference of two float64 that are the same is no weight and no time
	}
	if value.Unit == Clock {
		value.zone, value.exact = is.zone, true
		for _, s := range symbolsOf(f.By) {
			if z := s.symbol.value.zone; z != nil && value.zone == nil {
				value.zone = z
			}
		}
	}
	raw := value
	if f.Is != nil {
		value.Number = is.Number
		if _, fixed := f.Is.(Value); fixed && f.Decimals == 0 {
			f.Decimals = max(is.Decimals, 0)
			if f.Decimals == 0 {
				f.Decimals = WholeNumber
			}
		}
	}
	switch {
	case f.Decimals > 0:
		value.Decimals = min(f.Decimals, 12)
	case f.Decimals < 0:
		value.Decimals = 0
	default:
		value.Decimals = significant(value.Number)
		if places, ok := decimalsOf(value.Number, min(value.Decimals, most)); ok {
			value.Decimals, value.exact = places, true
		}
	}
	if f.Is != nil && f.By.n != nil && f.Rounding.IsZero() && f.Within == 0 && !value.exact {
		value.Decimals = pastTie(raw, value)
		a, b := raw, value
		a.Decimals, b.Decimals = value.Decimals, value.Decimals
		_, temperature := f.Is.(quantity.Temperature)
		_, length := f.Is.(quantity.Length)
		if (temperature || length) && a.agrees(b) {
			// Its last quantum must not be rounded a second time where a later step shows more digits or another scale.
			value.Number = raw.Number
		}
	}
	raw.Decimals = value.Decimals
	if !f.Rounding.IsZero() {
		raw.Decimals = max(significant(raw.Number), min(value.Decimals+1, 9))
		if places, ok := decimalsOf(raw.Number, min(raw.Decimals, 9)); ok {
			raw.Decimals = places
		}
	}
	return step{finding: f, raw: raw, result: &binding{name: f.Symbol, meaning: f.Meaning, term: f.Term, value: value}}
}

// pastTie is how many decimals are shown of a result of the library. A quantity is kept to its last quantum, 1/9000 K
// or a second, and that can carry it onto a tie, or over one, where its arithmetic is not: 100.61496 °C is kept as
// 100.615 °C and would print as 100.62. Then up to two more are shown, by which both print the same, in the units of
// every reader.
func pastTie(raw, is Value) int {
	for more := range 3 {
		a, b := raw, is
		a.Decimals, b.Decimals = is.Decimals+more, is.Decimals+more
		if a.agrees(b) {
			return b.Decimals
		}
	}
	return is.Decimals
}

// agrees reports whether two values are as near as they are shown, and shown as the same to every reader.
func (v Value) agrees(w Value) bool {
	us := Reader{Units: USCustomary}
	return math.Abs(v.Number-w.Number) <= w.half() && v.printsAs(w) && v.For(us).printsAs(w.For(us))
}

// printsAs reports whether both are the same at the decimals that they are shown with.
func (v Value) printsAs(w Value) bool {
	return v.literal(v.Decimals).mantissa == w.literal(w.Decimals).mantissa
}

func symbolsOf(x Expr) []*node {
	if x.n == nil {
		return nil
	}
	return x.n.symbols()
}

// metricNumber is the number of a symbol for a metric reader.
func metricNumber(n *node) float64 {
	if n.op == opIn {
		if len(n.args) != 1 || n.args[0].op != opSymbol {
			return math.NaN()
		}
		v := n.args[0].symbol.value
		x, ok := convert(v.Number, v.Unit, n.unit)
		if !ok {
			return math.NaN()
		}
		return x
	}
	return n.symbol.value.Number
}
