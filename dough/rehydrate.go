package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Rehydrate asks what to add to a starter so that all of it has another hydration.
type Rehydrate struct {
	Starter   Starter
	Hydration quantity.Percent // wanted
	// Mass is how much it is to be in the end. Zero adds as little as possible: water alone to a stiffer
	// starter, flour alone to a wetter one.
	Mass quantity.Mass
}

// Rehydrated is what to add.
type Rehydrated struct {
	Feeding Feeding
	Least   quantity.Mass // the smallest mass that all of the starter can become at this hydration
	Reached bool          // false: the mass wanted is below Least, and Feeding is the one for Least
	in      Rehydrate
}

// Plan works out the flour and water to add.
//
//	flour = M ÷ (1 + h) − c ÷ (1 + h_c);  water = M·h ÷ (1 + h) − c·h_c ÷ (1 + h_c)
//
// M is the mass in the end, h the hydration wanted, c the starter and h_c its hydration. Least is
// the M for which flour or water is zero. Rounded half to even to the microgram; starter, flour and
// water add up to M exactly. A mass below Least is an answer (Reached is false), not an error. Errors:
// ErrOutOfRange for masses outside 1 mg to 100 t or hydrations outside 20 % to 1000 %. Source: algebra.
func (r Rehydrate) Plan() (Rehydrated, error) {
	var p quantity.Problems
	least := quantity.MustPercent("20 %")
	quantity.Check(&p, "Starter.Mass", r.Starter.Mass, quantity.Micrograms(1000), mostDough)
	quantity.Check(&p, "Starter.Hydration", r.Starter.Hydration, least, mostOfFlour)
	quantity.Check(&p, "Hydration", r.Hydration, least, mostOfFlour)
	quantity.Check(&p, "Mass", r.Mass, quantity.Mass{}, mostDough)
	if err := p.Err(); err != nil {
		return Rehydrated{}, err
	}
	out := Rehydrated{Reached: true, in: r}
	flour, water := r.Starter.Flour(), r.Starter.Water()
	if r.Hydration.Compare(r.Starter.Hydration) >= 0 { // water alone
		out.Least = flour.Add(r.Hydration.Of(flour))
	} else { // flour alone
		out.Least = water.Add(water.Over(r.Hydration))
	}
	if r.Hydration == r.Starter.Hydration || out.Least.Compare(r.Starter.Mass) < 0 { // but for rounding
		out.Least = r.Starter.Mass
	}
	mass := r.Mass
	if mass.Compare(out.Least) < 0 {
		out.Reached = mass.IsZero()
		mass = out.Least
	}
	total := mass.Over(wholeFlour.Add(r.Hydration))
	add := total.Sub(flour)
	// At Least one of the two is zero but for rounding.
	if add.Sign() < 0 || micrograms(add) <= 2 {
		add = quantity.Mass{}
	}
	out.Feeding = Feeding{Starter: r.Starter, Flour: add, Water: mass.Sub(r.Starter.Mass).Sub(add)}
	if micrograms(out.Feeding.Water) <= 2 {
		out.Feeding.Flour = mass.Sub(r.Starter.Mass)
		out.Feeding.Water = quantity.Mass{}
	}
	return out, nil
}

// String prints what to add.
func (r Rehydrated) String() string {
	text := "add " + shown(r.Feeding.Flour) + " flour and " + shown(r.Feeding.Water) + " water to " + shown(r.Feeding.Starter.Mass) + " of starter"
	if !r.Reached {
		text += "; all of it becomes at least " + shown(r.Least)
	}
	return text
}

// Working derives what to add.
func (r Rehydrated) Working() working.Working {
	made, c := r.Feeding.Made(), r.Feeding.Starter
	h := r.in.Hydration
	return working.Working{Title: "Starter to another hydration", Steps: []working.Step{{
		Name: "flour in the starter", Symbol: "g", Formula: "c ÷ (1 + k ÷ 100)",
		Where: []working.Binding{
			{Symbol: "c", Meaning: "starter", Value: c.Mass.String()}, {Symbol: "k", Meaning: "its hydration", Value: c.Hydration.String()},
		},
		Numbers: figure(c.Mass) + " ÷ (1 + " + figure(c.Hydration) + " ÷ 100)", Value: c.Flour().Text(quantity.Gram, 6),
		Note: "rounded half to even to the microgram", Source: working.Algebra(),
	}, {
		Name: "flour to add", Symbol: "f", Formula: "M ÷ (1 + h ÷ 100) − g",
		Where: []working.Binding{
			{Symbol: "M", Meaning: "mass in the end", Value: made.String()}, {Symbol: "h", Meaning: "hydration wanted", Value: h.String()},
		},
		Numbers: figure(made) + " ÷ (1 + " + figure(h) + " ÷ 100) − " + figure(c.Flour()), Value: r.Feeding.Flour.Text(quantity.Gram, 6),
		Tolerance: 2e-6, Note: "rounded to the microgram", Source: working.Algebra(),
	}, {
		Name: "water to add", Symbol: "w", Formula: "M − c − f",
		Numbers: figure(made) + " − " + figure(c.Mass) + " − " + figure(r.Feeding.Flour), Value: r.Feeding.Water.String(), Exact: true,
		Source: working.Algebra(),
	}}}
}
