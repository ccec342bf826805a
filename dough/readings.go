package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// LevainReading is one of the four meanings in which print says "20 % levain".
type LevainReading uint8

// The readings.
const (
	// FlourOfTotalFlour: flour in the levain ÷ all flour: the prefermented flour. It is what
	// Preferment.Flour means, and the default.
	FlourOfTotalFlour LevainReading = iota
	// LevainOfAddedFlour: levain ÷ flour added at mixing, the levain's own flour left out.
	LevainOfAddedFlour
	// LevainOfTotalFlour: levain ÷ all flour.
	LevainOfTotalFlour
	// LevainOfDough: levain ÷ dough.
	LevainOfDough
)

var readingWords = enum.Of[LevainReading]("reading of a levain percentage", "flour of total flour",
	"levain of added flour", "levain of total flour", "levain of dough")

// String names the reading of a levain percentage.
func (r LevainReading) String() string { return readingWords.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r LevainReading) MarshalText() ([]byte, error) { return readingWords.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (r *LevainReading) UnmarshalText(text []byte) error { return readingWords.Unmarshal(r, text) }

// PrintedLevain is a levain percentage as some text prints it, with what is needed to understand
// it.
type PrintedLevain struct {
	Percent   quantity.Percent `json:"percent"`
	Reading   LevainReading    `json:"reading"`
	Hydration quantity.Percent `json:"hydration,omitzero"` // of the levain
	Total     quantity.Percent `json:"total,omitzero"`     // of the formula, for LevainOfDough: 174 %
}

// Flour answers which Preferment.Flour a printed levain percentage means.
//
//	x = s                        flour of total flour
//	x = s ÷ (1 + h + s)          levain of added flour
//	x = s ÷ (1 + h)              levain of total flour
//	x = s·T ÷ (1 + h)            levain of dough
//
// x is the prefermented flour, s the printed percentage, h the hydration of a levain of flour and
// water, T the total of the formula's percentages, all as shares of one. Rounded half to even to a
// millionth of a percentage point. Errors: ErrOutOfRange for s not above 0 % or h outside 1 % to
// 1000 %; ErrRequired for a total that is needed and missing; ErrInconsistent when x exceeds 100 %.
// Source: algebra on the printed readings of Forkish, Flour Water Salt Yeast (2012), The Sourdough
// Framework, and trade formulas.
func (l PrintedLevain) Flour() (quantity.Percent, error) {
	if err := l.check(); err != nil {
		return quantity.Percent{}, err
	}
	x := l.flour()
	if x.Compare(wholeFlour) > 0 {
		return quantity.Percent{}, &quantity.InputError{
			GoPath: "Percent", Got: quantity.Tell("dough.got_which_total_flour", "%v, which is %v of total flour", l.Percent,
				x), Want: quantity.Tell("dough.want_levain_at_most_all_flour", "a levain with at most all of the flour"),
			Err: quantity.ErrInconsistent,
		}
	}
	return x, nil
}

func (l PrintedLevain) flour() quantity.Percent {
	both := wholeFlour.Add(l.Hydration)
	switch l.Reading {
	case LevainOfAddedFlour:
		return l.Percent.Over(both.Add(l.Percent))
	case LevainOfTotalFlour:
		return l.Percent.Over(both)
	case LevainOfDough:
		num := []int64{millionths(l.Total)}
		m := massRatio(millionths(l.Percent), num, []int64{millionths(both)})
		return percentOf(micrograms(m))
	}
	return l.Percent
}

func (l PrintedLevain) check() error {
	var p quantity.Problems
	readingWords.Check(&p, "Reading", l.Reading)
	quantity.Check(&p, "Percent", l.Percent, leastPercent, mostOfFlour)
	if l.Reading != FlourOfTotalFlour {
		quantity.Check(&p, "Hydration", l.Hydration, leastWater, mostOfFlour)
	}
	if l.Reading == LevainOfDough {
		if l.Total.IsZero() {
			p.Required("Total", quantity.Tell("dough.want_total_formulas_percentages_174_percent",
				"the total of the formula's percentages, such as 174 %%"))
		} else {
			quantity.Check(&p, "Total", l.Total, wholeFlour, mostInAll)
		}
	}
	return p.ErrFor(l)
}

// Working derives the share of prefermented flour.
func (l PrintedLevain) Working() working.Working {
	d := working.Derive(working.Tell("dough.derive_share", "Levain percentage"))
	if l.check() != nil {
		return d.Working()
	}
	hundred := working.Num(100)
	s := working.Given("s", working.Tell("dough.symbol_printed", "levain percentage as printed, %v", l.Reading),
		l.Percent)
	h := working.Given("h", working.Tell("dough.symbol_levain_hydration", "hydration of the levain"), l.Hydration)
	f := working.Finding{
		Name: working.Tell("dough.prefermented",
			"prefermented flour"), Symbol: "x", By: s, Is: l.flour(), Decimals: 2, Source: working.Algebra(),
	}
	switch l.Reading {
	case LevainOfAddedFlour:
		f.By = hundred.Times(s).Over(hundred.Plus(h).Plus(s))
	case LevainOfTotalFlour:
		f.By = hundred.Times(s).Over(hundred.Plus(h))
	case LevainOfDough:
		f.By = s.Times(working.Given("P", working.Tell("dough.total_percent", "total of the percentages"),
			l.Total)).Over(hundred.Plus(h))
	case FlourOfTotalFlour:
		f.Source = sources.Forkish
	}
	d.Find(f)
	return d.Working()
}

// LevainPercent returns how much of a preferment is in the dough, in one of the printed readings.
// It is false if there is no preferment of that name.
func (b Batch) LevainPercent(name string, reading LevainReading) (quantity.Percent, bool) {
	build, ok := b.Build(name)
	if !ok {
		return quantity.Percent{}, false
	}
	switch reading {
	case FlourOfTotalFlour:
		return build.Flour.PercentOf(b.flour), true
	case LevainOfAddedFlour:
		return build.Used.PercentOf(b.flour.Sub(build.Flour)), true
	case LevainOfTotalFlour:
		return build.Used.PercentOf(b.flour), true
	case LevainOfDough:
		return build.Used.PercentOf(b.dough), true
	}
	return quantity.Percent{}, false
}
