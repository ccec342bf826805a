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

var readingWords = enum.Of[LevainReading]("reading of a levain percentage", "flour of total flour", "levain of added flour", "levain of total flour", "levain of dough")

// String names the reading of a levain percentage.
func (r LevainReading) String() string { return readingWords.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r LevainReading) MarshalText() ([]byte, error) { return readingWords.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (r *LevainReading) UnmarshalText(text []byte) error { return readingWords.Unmarshal(r, text) }

// LevainShare is a levain percentage as some text prints it, with what is needed to understand
// it.
type LevainShare struct {
	Percent   quantity.Percent
	Reading   LevainReading
	Hydration quantity.Percent // of the levain
	Total     quantity.Percent // of the formula, for LevainOfDough: 174 %
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
func (l LevainShare) Flour() (quantity.Percent, error) {
	if err := l.check(); err != nil {
		return quantity.Percent{}, err
	}
	x := l.flour()
	if x.Compare(wholeFlour) > 0 {
		return quantity.Percent{}, &quantity.InputError{
			GoPath: "Percent", Got: l.Percent.String() + ", which is " + x.String() + " of total flour", Want: "a levain with at most all of the flour",
			Err: quantity.ErrInconsistent,
		}
	}
	return x, nil
}

func (l LevainShare) flour() quantity.Percent {
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

func (l LevainShare) check() error {
	var p quantity.Problems
	readingWords.Check(&p, "Reading", l.Reading)
	quantity.Check(&p, "Percent", l.Percent, leastPercent, mostOfFlour)
	if l.Reading != FlourOfTotalFlour {
		quantity.Check(&p, "Hydration", l.Hydration, leastWater, mostOfFlour)
	}
	if l.Reading == LevainOfDough {
		if l.Total.IsZero() {
			p.Required("Total", "the total of the formula's percentages, such as 174 %")
		} else {
			quantity.Check(&p, "Total", l.Total, wholeFlour, mostInAll)
		}
	}
	return p.Err()
}

// Working derives the share of prefermented flour.
func (l LevainShare) Working() working.Working {
	if l.check() != nil {
		return working.Working{Title: "Levain percentage"}
	}
	s := working.Step{
		Name: "prefermented flour", Symbol: "x", Formula: "s",
		Where:   []working.Binding{{Symbol: "s", Meaning: "levain percentage, " + l.Reading.String(), Value: l.Percent.String()}},
		Numbers: figure(l.Percent), Value: l.flour().String(), Note: "rounded half to even to a millionth of a point", Source: sources.Forkish,
	}
	h := working.Binding{Symbol: "h", Meaning: "hydration of the levain", Value: l.Hydration.String()}
	switch l.Reading {
	case LevainOfAddedFlour:
		s.Formula, s.Where = "100 × s ÷ (100 + h + s)", append(s.Where, h)
		s.Numbers = "100 × " + figure(l.Percent) + " ÷ (100 + " + figure(l.Hydration) + " + " + figure(l.Percent) + ")"
	case LevainOfTotalFlour:
		s.Formula, s.Where = "100 × s ÷ (100 + h)", append(s.Where, h)
		s.Numbers = "100 × " + figure(l.Percent) + " ÷ (100 + " + figure(l.Hydration) + ")"
	case LevainOfDough:
		s.Formula = "s × T ÷ (100 + h)"
		s.Where = append(s.Where, working.Binding{Symbol: "T", Meaning: "total of the formula's percentages", Value: l.Total.String()}, h)
		s.Numbers = figure(l.Percent) + " × " + figure(l.Total) + " ÷ (100 + " + figure(l.Hydration) + ")"
	}
	if l.Reading != FlourOfTotalFlour {
		s.Source = working.Algebra()
	}
	return working.Working{Title: "Levain percentage", Steps: []working.Step{s}}
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
