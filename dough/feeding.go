package dough

import "example.org/maslin/dough/quantity"

// Culture is ripe levain or starter at hand.
type Culture struct {
	Mass      quantity.Mass
	Hydration quantity.Percent
}

// Flour returns the flour in the culture, mass ÷ (1 + hydration), rounded half to even.
func (c Culture) Flour() quantity.Mass { return c.Mass.Over(wholeFlour.Add(c.Hydration)) }

// Water returns the water in the culture: its mass without its flour.
func (c Culture) Water() quantity.Mass { return c.Mass.Sub(c.Flour()) }

// String prints "50 g at 100 %".
func (c Culture) String() string { return shown(c.Mass) + " at " + shownPercent(c.Hydration) }

// Feeding is one feeding of a culture: 1:5:5 is 20 g of culture with 100 g of flour and 100 g of
// water.
type Feeding struct {
	Culture Culture
	Flour   quantity.Mass // new flour
	Water   quantity.Mass // new water
}

// Made returns everything in the bowl.
func (f Feeding) Made() quantity.Mass { return f.Culture.Mass.Add(f.Flour).Add(f.Water) }

// Hydration returns all water ÷ all flour, those of the culture included.
//
//	h = (w + c·h_c ÷ (1 + h_c)) ÷ (f + c ÷ (1 + h_c))
//
// Invalid without any flour. Exact but for two roundings of a microgram and a millionth of a point.
func (f Feeding) Hydration() quantity.Percent {
	return f.Water.Add(f.Culture.Water()).PercentOf(f.Flour.Add(f.Culture.Flour()))
}

// Inoculation returns the culture as a percentage: of the new flour, or of the whole mix. Print
// uses both, so that 1:5:5 is 20 % or 9.09 %. Invalid when the basis is zero.
func (f Feeding) Inoculation(of InoculationBasis) quantity.Percent {
	if of == OfMix {
		return f.Culture.Mass.PercentOf(f.Made())
	}
	return f.Culture.Mass.PercentOf(f.Flour)
}

// Result returns what the feeding makes, as a culture for the next one.
func (f Feeding) Result() Culture { return Culture{f.Made(), f.Hydration()} }

// String prints "20 g culture, 100 g flour, 100 g water".
func (f Feeding) String() string {
	return shown(f.Culture.Mass) + " culture, " + shown(f.Flour) + " flour, " + shown(f.Water) + " water"
}
