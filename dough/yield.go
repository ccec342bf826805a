package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// DoughYield asks for the dough yield (Teigausbeute, TA) of weights.
type DoughYield struct {
	Flour  quantity.Mass `json:"flour"`
	Liquid quantity.Mass `json:"liquid,omitzero"` // water and milk, at full weight
	Rest   quantity.Mass `json:"rest,omitzero"`   // yeast, salt, sugar, fat, eggs and everything else
}

// Net returns the net dough yield.
//
//	TA = 100 · (flour + liquid) ÷ flour
//
// Water and milk count at full weight, nothing else does. It is printed without a unit: 170 % here is
// TA 170, a hydration of 70 % when the liquid is water. Rounded half to even to a millionth. The figures of
// the trade rest on flour with 14 % of moisture. Errors: ErrRequired without flour, ErrOutOfRange for
// a negative or invalid weight. Source: the German standard term, as in the IREKS compendium and
// "Teigausbeute".
func (y DoughYield) Net() (quantity.Percent, error) {
	if err := y.check(); err != nil {
		return quantity.Percent{}, err
	}
	return y.net(), nil
}

// Gross returns the gross dough yield, in which every ingredient counts.
//
//	BTA = 100 · (flour + liquid + rest) ÷ flour
//
// Rounding, errors and source as for Net.
func (y DoughYield) Gross() (quantity.Percent, error) {
	if err := y.check(); err != nil {
		return quantity.Percent{}, err
	}
	return y.gross(), nil
}

func (y DoughYield) net() quantity.Percent { return y.Flour.Add(y.Liquid).PercentOf(y.Flour) }
func (y DoughYield) gross() quantity.Percent {
	return quantity.Sum(y.Flour, y.Liquid, y.Rest).PercentOf(y.Flour)
}

func (y DoughYield) check() error {
	var p quantity.Problems
	if y.Flour.IsZero() {
		p.Required("Flour", quantity.Tell("dough.want_weight_flour", "the weight of the flour"))
	} else {
		quantity.Check(&p, "Flour", y.Flour, quantity.Micrograms(1000), mostDough)
	}
	quantity.Check(&p, "Liquid", y.Liquid, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Rest", y.Rest, quantity.Mass{}, mostDough)
	if p.Err() == nil && !y.gross().IsValid() {
		p.Add("Rest", y.Rest, quantity.Tell("dough.want_at_most_ten_million_times", "at most ten million times the flour"),
			quantity.ErrOutOfRange)
	}
	return p.ErrFor(y)
}

// String prints "TA 170, gross 174".
func (y DoughYield) String() string {
	if y.check() != nil {
		return working.Tell("dough.no_yield", "no dough yield").String()
	}
	return working.Tell("dough.yield", "TA %.1f, gross %.1f", y.net().Points(), y.gross().Points()).String()
}

// Working derives both yields.
func (y DoughYield) Working() working.Working {
	d := working.Derive(working.Tell("dough.derive_yield", "Dough yield"))
	if y.check() != nil {
		return d.Working()
	}
	flour := working.Given("F", working.Tell("dough.symbol_yield_flour", "flour"), y.Flour)
	both := flour.Plus(working.Given("L", working.Tell("dough.symbol_liquid", "water and milk"), y.Liquid))
	rest := working.Given("R", working.Tell("dough.symbol_rest_of_dough", "everything else"), y.Rest)
	find := func(name working.Message, symbol string, all working.Expr, is quantity.Percent) {
		d.Find(working.Finding{
			Name: name, Symbol: symbol, By: working.Num(100).Times(all).Over(flour), Is: working.Amount(is.Points(), "",
				1), Decimals: 1,
			Source: sources.DoughYieldTerm,
		})
	}
	find(working.Tell("dough.gross_yield", "gross dough yield"), "BTA", both.Plus(rest), y.gross())
	find(working.Tell("dough.net_yield", "net dough yield"), "TA", both, y.net())
	return d.Working()
}

// DoughYield returns the weights from which the dough yield of the batch follows. Milk counts with
// its full weight as a liquid, as the term has it; starters on a line of their own are in the rest.
func (b Batch) DoughYield() DoughYield {
	y := DoughYield{Flour: b.flour}
	for i := range b.c.items {
		switch it := &b.c.items[i]; {
		case it.role == RoleFlour:
		case it.isWater(), it.role == RoleLiquid && it.kind == KindMilk:
			y.Liquid = y.Liquid.Add(b.mass[i])
		default:
			y.Rest = y.Rest.Add(b.mass[i])
		}
	}
	return y
}
