package cost

import (
	"errors"
	"strings"

	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

// Trimming is an ingredient of which only a part is usable: give what was bought and what was usable of it to learn the
// yield, or the yield and what has to be usable to learn how much to buy.
type Trimming struct {
	Usable quantity.Mass    `json:"usable"`
	Bought quantity.Mass    `json:"bought,omitzero"`
	Yield  quantity.Percent `json:"yield,omitzero"`
}

// UsableYield answers which part of what was bought is usable: 100 · usable ÷ bought. Both above 0,
// usable at most bought. Rounded half to even to a millionth of a point. Errors: ErrOutOfRange,
// ErrInconsistent. Source: BC Cook Articulation Committee, yield testing.
func (t Trimming) UsableYield() (quantity.Percent, error) {
	var p quantity.Problems
	u := quantity.Check(&p, "Usable", t.Usable, quantity.Mass{}, mostDough)
	b := quantity.Check(&p, "Bought", t.Bought, quantity.Micrograms(1), mostDough)
	if u && b && t.Usable.Compare(t.Bought) > 0 {
		p.Add("Usable", t.Usable.String(), "at most what was bought, "+t.Bought.String(), quantity.ErrInconsistent)
	}
	if err := p.ErrFor(t); err != nil {
		return quantity.Percent{}, err
	}
	return t.Usable.PercentOf(t.Bought), nil
}

// ToBuy answers how much to buy for a usable weight: usable ÷ yield, the inverse of [Trimming.UsableYield].
// Yield 1 to 100 %. Rounded half to even to the microgram. Errors: ErrOutOfRange.
func (t Trimming) ToBuy() (quantity.Mass, error) {
	var p quantity.Problems
	quantity.Check(&p, "Usable", t.Usable, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Yield", t.Yield, quantity.MustPercent("1 %"), wholeFlour)
	if err := p.ErrFor(t); err != nil {
		return quantity.Mass{}, err
	}
	return t.Usable.Over(t.Yield), nil
}

// UnitPrice is the price of a pack.
type UnitPrice struct {
	Price decimal.Decimal   `json:"price"` // of the pack
	Pack  quantity.Mass     `json:"pack"`
	Yield quantity.Percent  `json:"yield,omitzero"` // usable part; zero means 100 %
	Unit  quantity.MassUnit `json:"unit"`
	// Rounding and Places as in [CostSheet]; exact gives six places.
	Rounding MoneyRounding `json:"rounding"`
	Places   int           `json:"places,omitzero"`
}

// PerUnit answers what a unit of usable ingredient costs: price ÷ pack ÷ yield, rounded as named.
//
// The trade rounds unit costs up: 20.00 for 45 kg is 0.45 a kilogram, exactly 0.444. Over a year of
// flour that is not small: prefer exact and round the loaf. Errors and ranges as in [CostSheet.Cost]. Source:
// Gisslen, Professional Baking.
func (in UnitPrice) PerUnit() (decimal.Decimal, error) {
	c, err := CostSheet{
		Lines:  []CostLine{{Name: "unit", Used: quantity.Grams(1), Price: in.Price, Pack: in.Pack, Yield: in.Yield}},
		Loaves: 1, Unit: in.Unit, UnitRounding: in.Rounding, Places: in.Places,
	}.Cost()
	if err != nil {
		var all []error
		for _, e := range quantity.InputErrors(err) {
			own := *e
			own.Path, own.GoPath = "", strings.TrimPrefix(e.GoPath, "Lines[0].")
			all = append(all, &own)
		}
		return decimal.Decimal{}, quantity.DataPaths(in, errors.Join(all...))
	}
	return c.Lines[0].UnitCost, nil
}
