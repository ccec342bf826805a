package flour

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// FlourBasis is a figure of a flour at one moisture, wanted at another.
type FlourBasis struct {
	// Value is protein, ash or water absorption, in percent of the flour at the moisture From.
	Value quantity.Percent `json:"value"`
	// From and To are moistures of the flour: as measured, 14 % in the US and in the standards, 0 % dry.
	From quantity.Percent `json:"from"`
	To   quantity.Percent `json:"to"`
}

// OnBasis is a figure of a flour at the moisture wanted.
type OnBasis struct {
	answer

	Value    quantity.Percent `json:"value"`
	Moisture quantity.Percent `json:"moisture"`

	in         FlourBasis
	absorption bool
	given      bool
}

func mostMoisture() quantity.Percent { return quantity.MustPercent("60 %") }

func (in FlourBasis) check(p *quantity.Problems, high quantity.Percent) {
	v := quantity.Check(p, "Value", in.Value, quantity.Percent{}, high)
	from := quantity.Check(p, "From", in.From, quantity.Percent{}, mostMoisture())
	quantity.Check(p, "To", in.To, quantity.Percent{}, mostMoisture())
	if v && from && high == wholeFlour && in.Value.Compare(wholeFlour.Sub(in.From)) > 0 {
		p.Add("Value", in.Value, quantity.Tell("flour.want_at_most_dry_matter", "at most the dry matter, %v",
			wholeFlour.Sub(in.From)),
			quantity.ErrInconsistent)
	}
}

// Protein answers what protein or ash is on another moisture basis.
//
//	X_B = X_M · (100 − B) ÷ (100 − M)
//
// X_M is the value at moisture M, X_B at moisture B, all in percent of the flour. US figures stand
// at 14 %, European ones on dry matter. Moistures 0 to 60 %; exact but for one rounding half to
// even to a millionth of a point. It is not for water absorption: see [FlourBasis.Absorption]. Errors:
// ErrOutOfRange; ErrInconsistent for more protein than dry matter. Source: Iowa State University
// Extension PM-1625.
func (in FlourBasis) Protein() (OnBasis, error) {
	var p quantity.Problems
	in.check(&p, wholeFlour)
	if err := p.ErrFor(in); err != nil {
		return OnBasis{}, err
	}
	value := percentRatio(in.Value, wholeFlour.Sub(in.To), wholeFlour.Sub(in.From))
	return OnBasis{Value: value, Moisture: in.To, in: in, given: true}, nil
}

// Absorption answers what the water absorption of a flour is at another moisture: a drier
// flour takes more water to the same dough.
//
//	A_B = (A_M + M) · (100 − B) ÷ (100 − M) − B
//
// A_M is the water for 100 g of flour at moisture M, A_B at moisture B: dry matter and total water
// stay the same. The factor of [FlourBasis.Protein] would be wrong here, because it leaves the flour's
// own water out. Absorption 0 to 200 %, moistures 0 to 60 %; rounded half to even to a millionth of
// a point. The answer may be below zero for a flour that brings all the water itself. Errors:
// ErrOutOfRange. Source: dry matter and water kept; ICC 115/1 for the 14 % basis.
func (in FlourBasis) Absorption() (OnBasis, error) {
	var p quantity.Problems
	in.check(&p, quantity.MustPercent("200 %"))
	if err := p.ErrFor(in); err != nil {
		return OnBasis{}, err
	}
	v := percentRatio(in.Value.Add(in.From), wholeFlour.Sub(in.To), wholeFlour.Sub(in.From)).Sub(in.To)
	return OnBasis{Value: v, Moisture: in.To, in: in, absorption: true, given: true}, nil
}

// String is the headline of the report.
func (r OnBasis) String() string { return r.Report().Headline.String() }

// Report tells the value.
func (r OnBasis) Report() report.Report {
	if !r.given {
		return report.Report{Headline: working.Tell("flour.no_value", "no value")}
	}
	return report.Report{
		Headline: working.Tell("flour.on_basis", "%.2f at %v moisture", r.Value,
			r.Moisture), Sources: []working.Source{r.source()},
	}
}

func (r OnBasis) source() working.Source {
	if r.absorption {
		return sources.DryMatterAbsorption
	}
	return sources.ISUMoisture
}

// Working derives the value on the new basis.
func (r OnBasis) Working() working.Working {
	d := working.Derive(working.Tell("flour.derive_basis", "Moisture basis"))
	if !r.given {
		return d.Working()
	}
	m := working.Given("M", working.Tell("flour.symbol_measured", "moisture as measured"), r.in.From)
	b := working.Given("B", working.Tell("flour.symbol_basis", "moisture of the new basis"), r.in.To)
	factor := func(x working.Expr) working.Expr {
		return x.Times(working.Num(100).Minus(b)).Over(working.Num(100).Minus(m))
	}
	f := working.Finding{Is: r.Value, Decimals: 6, Source: r.source()}
	if r.absorption {
		a := working.Given("A_M", working.Tell("flour.symbol_absorption", "absorption as measured"), r.in.Value)
		f.Name, f.Symbol = working.Tell("flour.absorption", "water absorption on the new basis"), "A_B"
		f.By = factor(a.Plus(m)).Minus(b)
	} else {
		x := working.Given("X_M", working.Tell("flour.symbol_value", "value as measured"), r.in.Value)
		f.Name, f.Symbol, f.By = working.Tell("flour.value", "value on the new basis"), "X_B", factor(x)
	}
	d.Find(f)
	return d.Working()
}

// FlourAsh is what is left of a flour that is burned, and the moisture that it is reckoned at.
type FlourAsh struct {
	Ash      quantity.Percent `json:"ash"` // of the flour at the moisture
	Moisture quantity.Percent `json:"moisture"`
}

// Type answers which European type number a flour has: its ash in mg for 100 g of dry matter.
//
//	type = 1000 · ash ÷ (1 − moisture)
//
// Standard types (550, 812, T65 …) are bands around such a number; national lists differ and are not looked up. Ash
// 0 to 5 %, moisture 0 to 60 %. Errors: ErrOutOfRange. Source: ISO 2171.
func (in FlourAsh) Type() (float64, error) {
	var p quantity.Problems
	quantity.Check(&p, "Ash", in.Ash, quantity.Percent{}, quantity.MustPercent("5 %"))
	quantity.Check(&p, "Moisture", in.Moisture, quantity.Percent{}, mostMoisture())
	if err := p.ErrFor(in); err != nil {
		return 0, err
	}
	return 1000 * in.Ash.Points() / (1 - in.Moisture.Fraction()), nil
}
