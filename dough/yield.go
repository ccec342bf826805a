package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// DoughYield asks for the dough yield (Teigausbeute, TA) of weights.
type DoughYield struct {
	Flour  quantity.Mass
	Liquid quantity.Mass // water and milk, at full weight
	Rest   quantity.Mass // yeast, salt, sugar, fat, eggs and everything else
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
		p.Required("Flour", "the weight of the flour")
	} else {
		quantity.Check(&p, "Flour", y.Flour, quantity.Micrograms(1000), mostDough)
	}
	quantity.Check(&p, "Liquid", y.Liquid, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Rest", y.Rest, quantity.Mass{}, mostDough)
	if p.Err() == nil && !y.gross().IsValid() {
		p.Add("Rest", y.Rest.String(), "at most ten million times the flour", quantity.ErrOutOfRange)
	}
	return p.Err()
}

// String prints "TA 170, gross 174".
func (y DoughYield) String() string {
	if y.check() != nil {
		return "no dough yield"
	}
	return "TA " + figureText(y.net(), 1) + ", gross " + figureText(y.gross(), 1)
}

func figureText(p quantity.Percent, places int) string { return figure2(p.Text(places)) }

// Working derives both yields.
func (y DoughYield) Working() working.Working {
	w := working.Working{Title: "Dough yield"}
	if y.check() != nil {
		return w
	}
	flour := working.Binding{Symbol: "F", Meaning: "flour", Value: y.Flour.String()}
	liquid := working.Binding{Symbol: "L", Meaning: "water and milk", Value: y.Liquid.String()}
	w.Steps = []working.Step{{
		Name: "net dough yield", Symbol: "TA", Formula: "100 × (F + L) ÷ F", Where: []working.Binding{flour, liquid},
		Numbers: "100 × (" + figure(y.Flour) + " + " + figure(y.Liquid) + ") ÷ " + figure(y.Flour), Value: figure2(y.net().Text(6)),
		Note: "rounded half to even", Source: sources.DoughYieldTerm,
	}, {
		Name: "gross dough yield", Symbol: "BTA", Formula: "100 × (F + L + R) ÷ F",
		Where:   []working.Binding{{Symbol: "R", Meaning: "everything else", Value: y.Rest.String()}},
		Numbers: "100 × (" + figure(y.Flour) + " + " + figure(y.Liquid) + " + " + figure(y.Rest) + ") ÷ " + figure(y.Flour),
		Value:   figure2(y.gross().Text(6)), Note: "rounded half to even", Source: sources.DoughYieldTerm,
	}}
	return w
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
