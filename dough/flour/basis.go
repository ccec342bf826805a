package flour

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"

	"github.com/shopspring/decimal"
)

// FlourBasis is the input of [ConvertBasis] and [ConvertAbsorption].
type FlourBasis struct {
	// Value is the protein or ash (ConvertBasis) or the water absorption (ConvertAbsorption), in
	// percent of the flour at the moisture From.
	Value quantity.Percent
	// From and To are moistures of the flour: as measured, 14 % in the US and in the standards, 0 % dry.
	From, To quantity.Percent
}

// FlourBasisResult is the answer of [ConvertBasis] and [ConvertAbsorption].
type FlourBasisResult struct {
	Value quantity.Percent

	in         FlourBasis
	absorption bool
	given      bool
}

var mostMoisture = quantity.MustPercent("60 %")

func (in FlourBasis) check(p *quantity.Problems, high quantity.Percent) {
	v := quantity.Check(p, "Value", in.Value, quantity.Percent{}, high)
	from := quantity.Check(p, "From", in.From, quantity.Percent{}, mostMoisture)
	quantity.Check(p, "To", in.To, quantity.Percent{}, mostMoisture)
	if v && from && high == wholeFlour && in.Value.Compare(wholeFlour.Sub(in.From)) > 0 {
		p.Add("Value", in.Value.String(), "at most the dry matter, "+wholeFlour.Sub(in.From).String(), quantity.ErrInconsistent)
	}
}

// ConvertBasis answers what protein or ash is on another moisture basis.
//
//	X_B = X_M · (100 − B) ÷ (100 − M)
//
// X_M is the value at moisture M, X_B at moisture B, all in percent of the flour. US figures stand
// at 14 %, European ones on dry matter. Moistures 0 to 60 %; exact but for one rounding half to
// even to a millionth of a point. It is not for water absorption: see [ConvertAbsorption]. Errors:
// ErrOutOfRange; ErrInconsistent for more protein than dry matter. Source: Iowa State University
// Extension PM-1625.
func ConvertBasis(in FlourBasis) (FlourBasisResult, error) {
	var p quantity.Problems
	in.check(&p, wholeFlour)
	if err := p.Err(); err != nil {
		return FlourBasisResult{}, err
	}
	return FlourBasisResult{percentRatio(in.Value, wholeFlour.Sub(in.To), wholeFlour.Sub(in.From)), in, false, true}, nil
}

// ConvertAbsorption answers what the water absorption of a flour is at another moisture: a drier
// flour takes more water to the same dough.
//
//	A_B = (A_M + M) · (100 − B) ÷ (100 − M) − B
//
// A_M is the water for 100 g of flour at moisture M, A_B at moisture B: dry matter and total water
// stay the same. The factor of [ConvertBasis] would be wrong here, because it leaves the flour's
// own water out. Absorption 0 to 200 %, moistures 0 to 60 %; rounded half to even to a millionth of
// a point. The answer may be below zero for a flour that brings all the water itself. Errors:
// ErrOutOfRange. Source: dry matter and water kept; ICC 115/1 for the 14 % basis.
func ConvertAbsorption(in FlourBasis) (FlourBasisResult, error) {
	var p quantity.Problems
	in.check(&p, quantity.MustPercent("200 %"))
	if err := p.Err(); err != nil {
		return FlourBasisResult{}, err
	}
	v := percentRatio(in.Value.Add(in.From), wholeFlour.Sub(in.To), wholeFlour.Sub(in.From)).Sub(in.To)
	return FlourBasisResult{v, in, true, true}, nil
}

// String prints "11.891505 % at 14 % moisture".
func (r FlourBasisResult) String() string {
	if !r.given {
		return "no value"
	}
	return r.Value.String() + " at " + r.in.To.String() + " moisture"
}

// Working derives the value on the new basis.
func (r FlourBasisResult) Working() working.Working {
	if !r.given {
		return working.Working{Title: "Moisture basis"}
	}
	in := r.in
	s := working.Step{
		Name: "value on the new basis", Symbol: "X_B", Formula: "X_M × (100 − B) ÷ (100 − M)",
		Where: []working.Binding{
			{Symbol: "X_M", Meaning: "value as measured", Value: in.Value.String()},
			{Symbol: "M", Meaning: "moisture as measured", Value: in.From.String()},
			{Symbol: "B", Meaning: "moisture of the new basis", Value: in.To.String()},
		},
		Numbers: points(in.Value) + " × (100 − " + points(in.To) + ") ÷ (100 − " + points(in.From) + ")",
		Value:   r.Value.String(), Source: sources.ISUMoisture,
	}
	if r.absorption {
		s.Name, s.Symbol, s.Formula = "water absorption on the new basis", "A_B", "(A_M + M) × (100 − B) ÷ (100 − M) − B"
		s.Where[0] = working.Binding{Symbol: "A_M", Meaning: "absorption as measured", Value: in.Value.String()}
		s.Numbers = "(" + points(in.Value) + " + " + points(in.From) + ") × (100 − " +
			points(in.To) + ") ÷ (100 − " + points(in.From) + ") − " + points(in.To)
		s.Source = sources.DryMatterAbsorption
	}
	return working.Working{Title: "Moisture basis", Steps: []working.Step{s}}
}

// FlourType answers which European type number a flour has: its ash in mg for 100 g of dry matter.
//
//	type = 1000 · ash ÷ (1 − moisture)
//
// ash is in percent of the flour at the moisture. Standard types (550, 812, T65 …) are bands around
// such a number; national lists differ and are not looked up. Ash 0 to 5 %, moisture 0 to 60 %.
// Errors: ErrOutOfRange. Source: ISO 2171.
func FlourType(ash, moisture quantity.Percent) (float64, error) {
	var p quantity.Problems
	quantity.Check(&p, "ash", ash, quantity.Percent{}, quantity.MustPercent("5 %"))
	quantity.Check(&p, "moisture", moisture, quantity.Percent{}, mostMoisture)
	if err := p.Err(); err != nil {
		return 0, err
	}
	return 1000 * ash.Points() / (1 - moisture.Fraction()), nil
}

// percentRatio is x·num ÷ den with one rounding, half to even.
func percentRatio(x, num, den quantity.Percent) quantity.Percent {
	a, okA := x.Millionths()
	b, okB := num.Millionths()
	c, okC := den.Millionths()
	if !okA || !okB || !okC {
		return quantity.NewPercent(nan())
	}
	q := quantity.Micrograms(a).Scale(quantity.Micrograms(b), quantity.Micrograms(c))
	n, ok := q.Micrograms()
	if !ok {
		return quantity.NewPercent(nan())
	}
	p, err := quantity.PercentOfDecimal(decimal.New(n, -6))
	if err != nil {
		return quantity.NewPercent(nan())
	}
	return p
}

// points prints the number of a percentage for a line of numbers, in parentheses when negative.
func points(p quantity.Percent) string { return bareNumber(p.String()) }
