package dough

import (
	"example.org/maslin/dough/quantity"
)

// sum adds the percentages of the ingredients that pick chooses.
func (b *Batch) sum(pick func(*item) bool) quantity.Percent {
	var total quantity.Percent
	for i := range b.c.items {
		if pick(&b.c.items[i]) {
			total = total.Add(b.c.items[i].percent)
		}
	}
	return total
}

// Total returns the sum of all baker's percentages: 172 % for 100 % flour, 70 % water, 2 % salt.
func (b Batch) Total() quantity.Percent { return b.c.total }

// Hydration returns all water ÷ all flour, that of the preferments included. Only liquids that
// are water count; see [Batch.EffectiveHydration] for milk, eggs and butter. Inclusions do
// not count.
func (b Batch) Hydration() quantity.Percent { return b.sum((*item).isWater) }

// FinalHydration returns the water weighed at mixing ÷ the flour weighed at mixing: what the
// hands meet before the preferments are in. Invalid if no flour is weighed at mixing.
func (b Batch) FinalHydration() quantity.Percent {
	var water, flour quantity.Mass
	own := b.mass
	if len(b.work) > 0 {
		own = b.work[0].own
	}
	for i := range b.c.items {
		switch it := &b.c.items[i]; {
		case it.role == RoleFlour:
			flour = flour.Add(own[i])
		case it.isWater():
			water = water.Add(own[i])
		}
	}
	return water.PercentOf(flour)
}

// EffectiveHydration is the water in everything but the flour, as a percentage of all flour.
type EffectiveHydration struct {
	Hydration quantity.Percent `json:"hydration"`
	// Assumed are the ingredients whose water content is not stated and was taken from their kind: whole milk,
	// egg, butter, syrup.
	Assumed []string `json:"assumed,omitempty"`
	// Unknown are those of which neither is known; they were counted as dry.
	Unknown []string `json:"unknown,omitempty"`
}

// EffectiveHydration answers how wet the dough is when milk, eggs, butter and honey are counted too:
//
//	h = Σ percentage · water content
//
// Water counts fully and every other ingredient with its Part.Water or, where that is not stated, with what is
// usual of its kind; inclusions, yeast of unstated content and the flour's own moisture do not count. Exact but for one
// rounding per line to a millionth of a point. Source of the usual contents: USDA National Nutrient Database SR28.
func (b Batch) EffectiveHydration() EffectiveHydration {
	var e EffectiveHydration
	for i := range b.c.items {
		it := &b.c.items[i]
		usual := it.kind.usualWater()
		switch {
		case it.role == RoleInclusion || it.role == RoleFlour:
		case it.isWater():
			e.Hydration = e.Hydration.Add(it.percent)
		case !it.water.IsZero():
			e.Hydration = e.Hydration.Add(it.water.OfPercent(it.percent))
		case !usual.IsZero():
			e.Hydration = e.Hydration.Add(usual.OfPercent(it.percent))
			e.Assumed = append(e.Assumed, it.name)
		case it.role == RoleLiquid, it.kind == KindDairy, it.kind == KindStarter:
			e.Unknown = append(e.Unknown, it.name)
		}
	}
	return e
}

// usualWater is the water content of a kind of food; zero where it varies too much to be assumed. Source: SR28,
// whole milk (01077), whole egg (01123), unsalted butter (01145), honey (19296).
func (k Kind) usualWater() quantity.Percent {
	switch k {
	case KindMilk:
		return quantity.MustPercent("88.13 %")
	case KindEgg:
		return quantity.MustPercent("76.15 %")
	case KindButter:
		return quantity.MustPercent("17.94 %")
	case KindSyrup:
		return quantity.MustPercent("17.1 %")
	}
	return quantity.Percent{}
}

// Prefermented returns the flour that ferments beforehand ÷ all flour. Soakers do not ferment.
func (b Batch) Prefermented() quantity.Percent {
	var total quantity.Percent
	for i := 1; i < len(b.c.nodes); i++ {
		if n := &b.c.nodes[i]; n.parent == 0 && n.fermented {
			total = total.Add(n.flour)
		}
	}
	return total
}

// SaltShare returns salt ÷ all flour.
func (b Batch) SaltShare() quantity.Percent {
	return b.sum(func(it *item) bool { return it.kind == KindSalt })
}

// SaltInWater returns salt as a percentage of the dough's water, that in milk, eggs and butter
// included where it is stated. It is what yeast and bacteria feel. Invalid without any water.
func (b Batch) SaltInWater() quantity.Percent {
	return b.SaltShare().Over(b.EffectiveHydration().Hydration)
}

// Share returns all ingredients of the kinds ÷ all flour.
func (b Batch) Share(kinds ...Kind) quantity.Percent {
	return b.sum(func(it *item) bool {
		for _, k := range kinds {
			if it.kind == k {
				return true
			}
		}
		return false
	})
}

// WholeGrain returns the whole-grain flours ÷ all flour, as their kinds state.
func (b Batch) WholeGrain() quantity.Percent {
	return b.sum(func(it *item) bool { return it.role == RoleFlour && it.kind.WholeGrain() })
}

// Rye returns the rye flours of any extraction ÷ all flour, as their kinds state.
func (b Batch) Rye() quantity.Percent {
	return b.sum(func(it *item) bool { return it.role == RoleFlour && it.kind.Rye() })
}

// Unstated lists the ingredients whose kind is not stated, except liquids, which are then
// water: nothing is known of their grain and allergens.
func (b Batch) Unstated() []string {
	var out []string
	for i := range b.c.items {
		if it := &b.c.items[i]; it.kind == KindUnstated && it.role != RoleLiquid {
			out = append(out, it.name)
		}
	}
	return out
}

// Allergens returns what the ingredients carry, as their kinds and Part.Contains state. It says
// nothing of traces; see [Batch.Unstated] for what is not known.
func (b Batch) Allergens() Allergens {
	var a Allergens
	for i := range b.c.items {
		it := &b.c.items[i]
		a |= it.kind.Allergens() | it.contains
	}
	return a
}

// Divide answers how many pieces of a scaling weight the dough makes, and what is left over. The number
// is rounded down, as yields are.
//
//	pieces = ⌊scaled ÷ each⌋
//
// Each from 1 g to 100 t. Errors: ErrOutOfRange, ErrRequired for a batch that is not from Formula.For or
// Weights.Batch. Source: Gisslen, Professional Baking (yields are rounded down).
func (b Batch) Divide(each quantity.Mass) (pieces int, left quantity.Mass, err error) {
	var p quantity.Problems
	if len(b.mass) == 0 {
		p.Required("Batch", quantity.Tell("dough.want_batch_was_reckoned", "a batch that was reckoned"))
	}
	checkMass(&p, "each", each)
	if err := p.ErrFor(b); err != nil {
		return 0, quantity.Mass{}, err
	}
	whole, left := b.goal.scaled.RoundDown(each)
	return int(micrograms(whole) / micrograms(each)), left, nil
}

// ShareOfDough returns an ingredient as a percentage of the whole dough, the "true" percentage,
// which adds up to 100 % over all ingredients; zero for a name the formula does not have.
func (b Batch) ShareOfDough(name string) quantity.Percent {
	for i := range b.c.items {
		if b.c.items[i].name == name {
			return b.c.items[i].percent.Over(b.c.total)
		}
	}
	return quantity.Percent{}
}
