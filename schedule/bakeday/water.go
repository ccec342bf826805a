package bakeday

import (
	"slices"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// Water is what to pour, and what the mixer will do.
type Water struct {
	mixing.PlannedWater
	Factors []mixing.Factor `json:"factors"`           // the temperatures that the water answers to
	Guess   bool            `json:"guess"`             // the warming is a guide value, not measured on this mixer
	Pour    quantity.Mass   `json:"pour"`              // the water of one batch that is not bound in the levain
	Liquids []string        `json:"liquids,omitempty"` // what is poured when there is no water: milk, egg
	Fit     mixing.BowlFit  `json:"fit,omitzero"`
	HasFit  bool            `json:"has_fit"` // false: nothing is known of the bowl
	Mixes   int             `json:"mixes"`   // batches
	Each    quantity.Mass   `json:"each"`    // dough in one batch
}

// water asks package mixing, with the room as warm as it is when the dough is mixed.
func (b *Bake) water(
	batch dough.Batch, room, levain quantity.Temperature, soaked []quantity.Temperature,
) (Water, error) {
	mixed := batch.Dough() // what goes in later is not in the bowl
	for _, l := range batch.FinalDough() {
		if b.later(l.Name) {
			mixed = mixed.Sub(l.Mass)
		}
	}
	w := Water{Mixes: 1, Each: mixed}
	if !b.Mixer().Bowl.IsZero() || b.Mixing.Mixer == mixing.Hand {
		var err error
		mix := Mix(batch, b.Mixing.Mixer, b.Mixer().Bowl)
		mix.Dough = mixed
		if w.Fit, err = mix.Fit(); err != nil {
			return w, quantity.At("Liquids", err)
		}
		w.HasFit = true
		if w.Fit.Batches > 1 {
			w.Mixes, w.Each = w.Fit.Batches, w.Fit.Each
		}
	}
	in := mixing.Planned{
		Target: b.Mixing.Temperature, Room: room, Warming: b.Mixing.Warming, Mixer: b.Mixing.Mixer, Tap: b.Kitchen.Tap,
		Ice: b.Kitchen.Ice, Mixing: b.Mixing.Takes,
	}
	flour := b.Kitchen.Flour
	if flour.IsZero() {
		flour = room
	}
	w.Factors = []mixing.Factor{
		{Kind: mixing.FlourFactor, Name: "flour", Temperature: flour},
		{Kind: mixing.RoomFactor, Name: "room", Temperature: room},
	}
	w.pourOf(b, &in, batch)
	for _, l := range batch.FinalDough() {
		if w.poured(l) || b.later(l.Name) {
			continue
		}
		part := mixing.Portion{
			Name:        l.Name,
			Mass:        l.Mass.Divide(int64(w.Mixes)),
			Temperature: flour,
			Substance:   substance(l),
		}
		if own, stated := b.comesAt(l.Name); stated {
			part.Temperature = own
			w.Factors = append(w.Factors, mixing.Factor{Kind: mixing.OtherFactor, Name: l.Name, Temperature: own})
		}
		if l.Role == dough.RolePreferment {
			part.Temperature, part.Hydration = b.madeBefore(l.Name, batch, room, levain, soaked)
			kind := mixing.OtherFactor
			if l.Name == levainName {
				kind = mixing.LevainFactor
			}
			w.Factors = append(w.Factors, mixing.Factor{Kind: kind, Name: l.Name, Temperature: part.Temperature})
		}
		part.Warmest = b.warmest(l)
		in.Ingredients = append(in.Ingredients, part)
	}
	var err error
	w.PlannedWater, err = in.Pour()
	w.Guess = w.Basis == mixing.GuideValue
	return w, quantity.At("Mixing", err)
}

// pourOf is the water of one batch, or the milk and egg that take its place in a brioche.
func (w *Water) pourOf(b *Bake, in *mixing.Planned, batch dough.Batch) {
	var rest, largest quantity.Mass
	for _, l := range batch.FinalDough() {
		switch {
		case b.later(l.Name):
		case isWater(l):
			w.Pour = w.Pour.Add(l.Mass)
		case l.Role == dough.RoleLiquid && !b.warmed(l.Name):
			w.Liquids = append(w.Liquids, l.Name)
			if rest = rest.Add(l.Mass); l.Mass.Compare(largest) > 0 {
				largest, in.Pours = l.Mass, substance(l)
			}
		}
	}
	if !w.Pour.IsZero() {
		w.Liquids, in.Pours = nil, 0
	} else {
		w.Pour = rest
	}
	w.Pour = w.Pour.Divide(int64(w.Mixes))
	in.Water, in.Liquids = w.Pour, w.Liquids
}

// poured reports whether a line is part of what is poured.
func (w *Water) poured(l dough.DoughLine) bool {
	return isWater(l) || slices.Contains(w.Liquids, l.Name)
}

// comesAt is how warm an ingredient of its own temperature goes in: the baker's, or that of the refrigerator for what
// spoils.
func (b *Bake) comesAt(name string) (quantity.Temperature, bool) {
	for _, list := range b.lists() {
		for _, l := range list.lines {
			switch {
			case l.Name != name:
			case !l.Temperature.IsZero():
				return l.Temperature, true
			case l.spoils() && !b.Kitchen.Refrigerator.IsZero():
				return b.Kitchen.Refrigerator, true
			case l.spoils():
				return usualRefrigerator, true
			}
		}
	}
	return quantity.Temperature{}, false
}

// usualRefrigerator is how cold one is of which nothing is known; common practice, and what food rules ask for.
var usualRefrigerator = quantity.Celsius(4)

// warmed reports whether the baker says how warm an ingredient goes in.
func (b *Bake) warmed(name string) bool {
	for _, list := range b.lists() {
		for _, l := range list.lines {
			if l.Name == name && !l.Temperature.IsZero() {
				return true
			}
		}
	}
	return false
}

func isWater(l dough.DoughLine) bool {
	return l.Role == dough.RoleLiquid && (l.Kind == dough.KindWater || l.Kind == dough.KindUnstated)
}

// madeBefore is how warm and how wet a levain, a preferment or a soaker goes into the dough.
func (b *Bake) madeBefore(
	name string,
	batch dough.Batch,
	room, levain quantity.Temperature,
	soaked []quantity.Temperature,
) (quantity.Temperature, quantity.Percent) {
	at := room
	if b.Levain != nil && name == levainName {
		return levain, b.Levain.Hydration
	}
	for _, x := range b.Preferments {
		if x.Name == name {
			if !x.Temperature.IsZero() {
				at = x.Temperature
			}
			return at, b.wetness(x)
		}
	}
	for i, s := range b.Soakers {
		if s.Name == name && i < len(soaked) {
			at = soaked[i]
		}
	}
	build, _ := batch.Build(name)
	var wet, dry quantity.Mass
	for _, l := range build.Lines {
		if l.Role == dough.RoleLiquid {
			wet = wet.Add(l.Mass)
		} else {
			dry = dry.Add(l.Mass)
		}
	}
	if dry.IsZero() {
		return at, quantity.NewPercent(100)
	}
	return at, wet.PercentOf(dry)
}

// substance says which specific heat an ingredient has; what is not known counts as dry as flour.
func substance(l dough.DoughLine) mixing.Substance {
	if l.Role == dough.RolePreferment {
		return mixing.Levain
	}
	switch l.Kind {
	case dough.KindMilk:
		return mixing.Milk
	case dough.KindEgg:
		return mixing.Egg
	case dough.KindButter:
		return mixing.Butter
	case dough.KindFat:
		return mixing.Oil
	case dough.KindSweetener, dough.KindSyrup:
		return mixing.Sugar
	}
	switch l.Role {
	case dough.RoleSalt:
		return mixing.Salt
	case dough.RoleLiquid:
		return mixing.Water
	}
	return mixing.Flour
}

// warmest is how warm a part may be made before mixing. Milk beyond what the water may have is no better; egg thickens
// from about 60 °C, and is no warmer than the room; a preferment as a levain, a soaker a little more. Judgment.
func (b *Bake) warmest(l dough.DoughLine) quantity.Temperature {
	switch {
	case slices.ContainsFunc(b.Soakers, func(s SoakerWork) bool { return s.Name == l.Name }):
		return quantity.Celsius(40)
	case l.Role == dough.RolePreferment && l.Name != levainName:
		return quantity.Celsius(30)
	case l.Kind == dough.KindMilk:
		return quantity.Celsius(40)
	case l.Kind == dough.KindEgg:
		return quantity.Celsius(25)
	}
	return quantity.Temperature{}
}

// wetness is the water in a dough as the mixer feels it: that in milk and egg included, as far as it is stated.
func wetness(b dough.Batch) quantity.Mass {
	return quantity.Grams(b.Flour().Grams() * b.EffectiveHydration().Hydration.Fraction())
}

// Mix is a batch of a formula in a mixer.
func Mix(b dough.Batch, mixer mixing.MixerKind, bowl quantity.Volume) mixing.Mix {
	flour := b.Flour()
	return mixing.Mix{
		Mixer: mixer, Bowl: bowl, Kind: DoughKind(b), Dough: b.Dough(), Flour: flour, Water: wetness(b),
		Salt: b.SaltShare().Of(flour),
		Fat: b.Share(dough.KindButter, dough.KindFat).
			Of(flour),
		Sugar: b.Share(dough.KindSweetener).Of(flour), Prefermented: b.Prefermented().Of(flour),
	}
}

// DoughKind is the kind of dough of a batch, for capacity and kneading. What makes a dough enriched is a judgment.
func DoughKind(b dough.Batch) mixing.DoughKind {
	atLeast := func(p quantity.Percent, points float64) bool { return p.Compare(quantity.NewPercent(points)) >= 0 }
	switch {
	case atLeast(b.Share(dough.KindGlutenFreeFlour), 50):
		return mixing.GlutenFreeDough
	case atLeast(b.Rye(), 50):
		return mixing.RyeDough
	case atLeast(b.Share(dough.KindButter, dough.KindFat), 8),
		atLeast(b.Share(dough.KindSweetener), 10),
		atLeast(b.Share(dough.KindEgg), 20):
		return mixing.EnrichedDough
	case atLeast(b.Share(dough.KindSpelt, dough.KindWholeSpelt), 50):
		return mixing.SpeltDough
	case atLeast(b.WholeGrain(), 50):
		return mixing.WholeGrainDough
	case atLeast(b.Rye(), 30):
		return mixing.MixedRyeDough
	}
	return mixing.WheatDough
}
