package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// toOrder reports whether the pieces are baked one after the other and eaten as they come: the last is out when they
// are wanted, and none of them cools.
func (l Loaves) toOrder() bool { return l.Style == bake.Pizza || l.Style == bake.FlatBread }

// betweenOrders is how long a hot stone takes to be hot again after one thin bread. Judgment.
const betweenOrders = quantity.Elapsed(3 * time.Minute)

// batter reports whether the dough is without gluten: it swells and is filled into its tin, and rises once.
func (b *Bake) batter() bool { return b.Loaves.Style == bake.GlutenFree }

// standName says what the dough does between the mixer and shaping.
func (b *Bake) standName() working.Message {
	if b.batter() {
		return working.Tell("bakeday.step_swell", "the batter swells")
	}
	return working.Tell("bakeday.step_bulk", "bulk fermentation")
}

// proofName says what the pieces do between shaping and the oven.
func (b *Bake) proofName() working.Message {
	if b.batter() {
		return working.Tell("bakeday.step_rise", "proof")
	}
	return working.Tell("bakeday.step_proof", "final proof")
}

// shapeName says what is done with the dough after its bulk.
func (b *Bake) shapeName() working.Message {
	switch {
	case b.Loaves.toOrder():
		return working.Tell("bakeday.step_balls", "divide into balls")
	case b.Loaves.Style == bake.Focaccia:
		return working.Tell("bakeday.step_tray", "lay it in the oiled tray")
	case b.batter() && b.Loaves.Shape.For(b.Loaves.Style) == bake.Tin:
		return working.Tell("bakeday.step_fill", "fill the tins, and smooth them with a wet spoon")
	case b.batter():
		return working.Tell("bakeday.step_wet_hands", "shape with wet hands")
	}
	if b.Loaves.Pieces == 1 {
		return working.Tell("bakeday.step_shape_one", "shape the loaf")
	}
	return working.Tell("bakeday.step_shape", "divide and shape")
}

// A bagel lies in the kettle so long; common practice, no source.
const (
	boiledLeast = quantity.Elapsed(time.Minute)
	boiledMost  = quantity.Elapsed(2 * time.Minute)
)

// heatName says what is heated for the bake.
func (b *Bake) heatName() working.Message {
	if b.Loaves.Style == bake.Bagel {
		return working.Tell("bakeday.step_kettle", "heat the oven, and a wide pot of water")
	}
	return working.Tell("bakeday.step_preheat", "heat the oven")
}

// bakeName says what is done with the pieces before and in the oven.
func (b *Bake) bakeName() working.Message {
	switch {
	case b.Loaves.Style == bake.FlatBread:
		return working.Tell("bakeday.step_roll_out", "roll out and bake")
	case b.Loaves.toOrder():
		return working.Tell("bakeday.step_stretch", "stretch and bake")
	case b.Loaves.Style == bake.Focaccia:
		return working.Tell("bakeday.step_dimple", "dimple and bake")
	case b.Loaves.Style == bake.Bagel:
		return working.Tell("bakeday.step_boil", "boil %v to %v in a wide pot, and bake", boiledLeast, boiledMost)
	}
	return working.Tell("bakeday.step_bake", "bake")
}

// apart reports whether a line is no part of the dough that is divided: filled in at shaping, or laid on top.
func (l Ingredient) apart() bool {
	at, _ := l.moment()
	return at == schedule.Shape || at == schedule.Bake
}

// withApart is a piece with what is filled in and laid on top, by the weight of its dough alone.
func (b *Bake) withApart(each quantity.Mass) quantity.Mass {
	whole, apart := b.Salt, quantity.Percent{}
	for _, list := range b.lists() {
		for _, l := range list.lines {
			whole = whole.Add(l.Percent)
			if l.apart() {
				apart = apart.Add(l.Percent)
			}
		}
	}
	hundred := quantity.Grams(100) // a percentage of it is a mass with the same digits
	if apart.IsZero() || apart.Compare(whole) >= 0 {
		return each
	}
	return each.Scale(whole.Of(hundred), whole.Sub(apart).Of(hundred))
}

// enriched reports whether milk or egg is in the dough while it ferments. Butter, which is an allergen as milk is,
// keeps in the warm for as long as a dough rises.
func (b *Bake) enriched() bool {
	for _, list := range b.lists() {
		if slices.ContainsFunc(list.lines, func(l Ingredient) bool {
			return !l.apart() && (l.Kind == dough.KindMilk || l.Kind == dough.KindDairy || l.Kind == dough.KindEgg)
		}) {
			return true
		}
	}
	return false
}
