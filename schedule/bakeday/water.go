package bakeday

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// Water is what to pour, and what the mixer will do.
type Water struct {
	mixing.WaterResult
	Factors mixing.Factors
	Guess   bool                      // the friction is a guide value, not measured on this mixer
	Prior   mixing.Prior              // where the guide value comes from
	Rise    quantity.TemperatureDelta // of the dough, from mixing
	Pour    quantity.Mass             // the water of one batch that is not bound in the levain
	Liquids []string                  // what is poured when there is no water: milk, egg
	Fit     mixing.BowlFit
	HasFit  bool          // false: nothing is known of the bowl
	Mixes   int           // batches
	Each    quantity.Mass // dough in one batch
}

// water asks package mixing, with the room as warm as it is when the dough is mixed.
func (b *Bake) water(batch dough.Batch, room, levain quantity.Temperature) (Water, error) {
	flour := b.Kitchen.Flour
	if flour.IsZero() {
		flour = room
	}
	w := Water{Mixes: 1, Each: batch.Dough()}
	in := mixing.Factors{
		Target: b.Mixing.Temperature, Tap: b.Kitchen.Tap, Mixing: b.Mixing.Takes,
		Others: []mixing.Factor{{Kind: mixing.FlourFactor, Name: "flour", Temperature: flour}, {Kind: mixing.RoomFactor, Name: "room", Temperature: room}},
	}
	if b.Levain != nil {
		in.Others = append(in.Others, mixing.Factor{Kind: mixing.LevainFactor, Name: "levain", Temperature: levain})
	}
	for _, x := range b.Preferments {
		at := x.Temperature
		if at.IsZero() {
			at = room
		}
		in.Others = append(in.Others, mixing.Factor{Kind: mixing.LevainFactor, Name: x.Name, Temperature: at})
	}
	var err error
	var friction mixing.Friction
	if b.Mixing.Warming.IsZero() {
		w.Guess = true
		if w.Prior, err = b.Mixing.Mixer.Prior(); err != nil {
			return w, err
		}
		friction, err = w.Prior.Friction.For(in.Count())
	} else {
		friction, err = mixing.FrictionOf(b.Mixing.Warming, in.Count())
	}
	if err != nil {
		return w, err
	}
	if w.Rise, err = friction.Rise(); err != nil {
		return w, err
	}
	in.Friction = friction.Factor
	for _, l := range batch.FinalDough() {
		if l.Role == dough.RoleLiquid && (l.Kind == dough.KindWater || l.Kind == dough.KindUnstated) {
			w.Pour = w.Pour.Add(l.Mass)
		}
	}
	if w.Pour.IsZero() { // brioche and the like: milk and egg take its place
		for _, l := range batch.FinalDough() {
			if l.Role == dough.RoleLiquid {
				w.Pour = w.Pour.Add(l.Mass)
				w.Liquids = append(w.Liquids, l.Name)
			}
		}
	}
	if !b.Mixing.Bowl.IsZero() || b.Mixing.Mixer == mixing.Hand {
		if w.Fit, err = Mix(batch, b.Mixing.Mixer, b.Mixing.Bowl).Fit(); err != nil {
			return w, err
		}
		w.HasFit = true
		if w.Fit.Batches > 1 {
			w.Mixes, w.Each = w.Fit.Batches, w.Fit.Each
			w.Pour = w.Pour.Divide(int64(w.Mixes))
		}
	}
	in.Pour = w.Pour
	w.Factors = in
	w.WaterResult, err = in.Water()
	return w, err
}

// wetness is the water in a dough as the mixer feels it: that in milk and egg included, as far as it is stated.
func wetness(b dough.Batch) quantity.Mass {
	return quantity.Grams(b.Flour().Grams() * b.EffectiveHydration().Hydration.Fraction())
}

// Mix is a batch of a formula in a mixer.
func Mix(b dough.Batch, mixer mixing.MixerKind, bowl quantity.Volume) mixing.Mix {
	flour := b.Flour()
	return mixing.Mix{
		Mixer: mixer, Bowl: bowl, Kind: DoughKind(b), Dough: b.Dough(), Flour: flour, Water: wetness(b), Salt: b.SaltShare().Of(flour),
		Fat: b.Share(dough.KindButter, dough.KindFat).Of(flour), Sugar: b.Share(dough.KindSweetener).Of(flour), Prefermented: b.Prefermented().Of(flour),
	}
}

// DoughKind is the kind of dough of a batch, for capacity and kneading. What makes a dough enriched is a judgment.
func DoughKind(b dough.Batch) mixing.DoughKind {
	atLeast := func(p quantity.Percent, points float64) bool { return p.Compare(quantity.NewPercent(points)) >= 0 }
	switch {
	case atLeast(b.Rye(), 50):
		return mixing.RyeDough
	case atLeast(b.Share(dough.KindButter, dough.KindFat), 8), atLeast(b.Share(dough.KindSweetener), 10), atLeast(b.Share(dough.KindEgg), 20):
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

// ofMixing moves the paths of package mixing to the fields of a bake.
func ofMixing(err error) error {
	names := map[string]string{
		"Water": "Liquids", "Flour": "Flours", "Dough": "Loaves", "Bowl": "Mixing.Bowl", "Mixer": "Mixing.Mixer", "Target": "Mixing.Temperature",
		"Friction": "Mixing.Warming", "Others[0].Temperature": "Kitchen.Flour", "Others[1].Temperature": "Kitchen.Day", "Others[2].Temperature": "Levain.Temperature",
		"Tap": "Kitchen.Tap", "Mixing": "Mixing.Takes",
	}
	var p quantity.Problems
	for _, e := range quantity.InputErrors(err) {
		path, ok := names[e.GoPath]
		if !ok {
			path = "Mixing"
		}
		p.Join("", moved(e, path))
	}
	if p.Err() == nil {
		return err
	}
	return p.Err()
}
