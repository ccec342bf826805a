package dough

import "example.org/maslin/dough/quantity"

// Starter is ripe levain or starter at hand.
type Starter struct {
	Mass      quantity.Mass    `json:"mass"`
	Hydration quantity.Percent `json:"hydration"`
}

// Flour returns the flour in the starter, mass ÷ (1 + hydration), rounded half to even.
func (c Starter) Flour() quantity.Mass { return c.Mass.Over(wholeFlour.Add(c.Hydration)) }

// Water returns the water in the starter: its mass without its flour.
func (c Starter) Water() quantity.Mass { return c.Mass.Sub(c.Flour()) }

// String prints "50 g at 100 %".
func (c Starter) String() string { return shown(c.Mass) + " at " + shownPercent(c.Hydration) }

// Feeding is one feeding of a starter: 1:5:5 is 20 g of starter with 100 g of flour and 100 g of
// water.
type Feeding struct {
	Starter Starter       `json:"starter"`
	Flour   quantity.Mass `json:"flour"` // new flour
	Water   quantity.Mass `json:"water"` // new water
}

// Made returns everything in the bowl.
func (f Feeding) Made() quantity.Mass { return f.Starter.Mass.Add(f.Flour).Add(f.Water) }

// Hydration returns all water ÷ all flour, those of the starter included.
//
//	h = (w + c·h_c ÷ (1 + h_c)) ÷ (f + c ÷ (1 + h_c))
//
// Invalid without any flour. Exact but for two roundings of a microgram and a millionth of a point.
func (f Feeding) Hydration() quantity.Percent {
	return f.Water.Add(f.Starter.Water()).PercentOf(f.Flour.Add(f.Starter.Flour()))
}

// Inoculation returns the starter as a percentage: of the new flour, or of the whole mix. Print
// uses both, so that 1:5:5 is 20 % or 9.09 %. Invalid when the basis is zero.
func (f Feeding) Inoculation(of InoculationBasis) quantity.Percent {
	if of == OfMix {
		return f.Starter.Mass.PercentOf(f.Made())
	}
	return f.Starter.Mass.PercentOf(f.Flour)
}

// Result returns what the feeding makes, as a starter for the next one. Without any flour its hydration is not given.
func (f Feeding) Result() Starter {
	h := f.Hydration()
	if !h.IsValid() {
		h = quantity.Percent{}
	}
	return Starter{f.Made(), h}
}

// String prints "20 g starter, 100 g flour, 100 g water".
func (f Feeding) String() string {
	return shown(f.Starter.Mass) + " culture, " + shown(f.Flour) + " flour, " + shown(f.Water) + " water"
}
