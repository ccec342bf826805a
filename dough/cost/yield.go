package cost

import (
	"errors"
	"strings"

	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

// UsableYield answers which part of what was bought is usable: 100 · usable ÷ bought. Both above 0,
// usable at most bought. Rounded half to even to a millionth of a point. Errors: ErrOutOfRange,
// ErrInconsistent. Source: BC Cook Articulation Committee, yield testing.
func UsableYield(usable, bought quantity.Mass) (quantity.Percent, error) {
	var p quantity.Problems
	u := quantity.Check(&p, "usable", usable, quantity.Mass{}, mostDough)
	b := quantity.Check(&p, "bought", bought, quantity.Micrograms(1), mostDough)
	if u && b && usable.Compare(bought) > 0 {
		p.Add("usable", usable.String(), "at most what was bought, "+bought.String(), quantity.ErrInconsistent)
	}
	if err := p.Err(); err != nil {
		return quantity.Percent{}, err
	}
	return usable.PercentOf(bought), nil
}

// ToBuy answers how much to buy for a usable weight: usable ÷ yield, the inverse of [UsableYield].
// Yield 1 to 100 %. Rounded half to even to the microgram. Errors: ErrOutOfRange.
func ToBuy(usable quantity.Mass, yield quantity.Percent) (quantity.Mass, error) {
	var p quantity.Problems
	quantity.Check(&p, "usable", usable, quantity.Mass{}, mostDough)
	quantity.Check(&p, "yield", yield, quantity.MustPercent("1 %"), wholeFlour)
	if err := p.Err(); err != nil {
		return quantity.Mass{}, err
	}
	return usable.Over(yield), nil
}

// UnitPrice is the input of [UnitCost].
type UnitPrice struct {
	Price decimal.Decimal // of the pack
	Pack  quantity.Mass
	Yield quantity.Percent // usable part; zero means 100 %
	Unit  quantity.MassUnit
	// Rounding and Places as in [CostSheet]; exact prints six places.
	Rounding MoneyRounding
	Places   int
}

// UnitCost answers what a unit of usable ingredient costs: price ÷ pack ÷ yield, rounded as named.
//
// The trade rounds unit costs up: 20.00 for 45 kg is 0.45 a kilogram, exactly 0.444. Over a year of
// flour that is not small: prefer exact and round the loaf. Errors and ranges as in [Cost]. Source:
// Gisslen, Professional Baking.
func UnitCost(in UnitPrice) (decimal.Decimal, error) {
	c, err := Cost(CostSheet{
		Lines:  []CostLine{{Name: "unit", Used: quantity.Grams(1), Price: in.Price, Pack: in.Pack, Yield: in.Yield}},
		Loaves: 1, Unit: in.Unit, UnitRounding: in.Rounding, Places: in.Places,
	})
	if err != nil {
		var all []error
		for _, e := range quantity.InputErrors(err) {
			e.GoPath = strings.TrimPrefix(e.GoPath, "Lines[0].")
			all = append(all, e)
		}
		return decimal.Decimal{}, errors.Join(all...)
	}
	return c.Lines[0].UnitCost, nil
}
