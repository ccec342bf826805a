package bakeday

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

// warmestRack is the warmest room in which [bake.CoolingLoaf] knows how bread cools.
var warmestRack = quantity.Celsius(40)

// bakeOff works out loss, doneness, rounds and cooling.
func (b *Bake) bakeOff(batch dough.Batch, room quantity.Temperature) (Baking, error) {
	k := Baking{Scaling: batch.ScalingWeight(), Loss: b.Loaves.Loss}
	var err error
	if k.Usual, err = b.Loaves.Style.UsualLoss(k.Scaling); err != nil {
		return k, quantity.At("Loaves", err)
	}
	if k.Doneness, err = b.Loaves.Style.Guide(); err != nil {
		return k, quantity.At("Loaves", err)
	}
	if b.Loaves.Style.ByCore() {
		if k.Target, err = (bake.Goal{Style: b.Loaves.Style, Place: bake.At(b.Kitchen.Altitude)}).Target(); err != nil {
			return k, quantity.At("Loaves", err)
		}
	}
	var p quantity.Problems
	if !quantity.Check(&p, "Kitchen.Day", room, quantity.Celsius(-25), warmestRack) {
		return k, p.Err()
	}
	k.Cooling, err = bake.CoolingLoaf{
		Style: b.Loaves.Style, Shape: b.Loaves.Shape, Baked: b.Loaves.Baked, From: k.Target.Core, Room: room,
	}.Time()
	if err != nil {
		return k, quantity.At("Loaves", err)
	}
	k.Each, k.Decks = b.load()
	k.Rounds = (b.Loaves.Pieces + k.Each - 1) / k.Each
	return k, b.heat(&k)
}

// load is how many loaves bake in one round, and on how many decks: as many as the pots hold or the decks do.
func (b *Bake) load() (each, decks int) {
	on := b.Oven.Together // loaves on a deck
	if on == 0 && b.Loaves.toOrder() {
		on = 1
	}
	if on == 0 {
		on = b.Kitchen.Oven.Holds
	}
	each = b.Loaves.Pieces
	if on > 0 {
		each = min(each, on*max(1, b.Kitchen.Oven.Decks))
	} else {
		on = max(1, each)
	}
	if b.Oven.Pots > 0 && b.Oven.Together == 0 {
		each = min(each, b.Oven.Pots)
	}
	return each, (each + on - 1) / on
}

// loss is the bake loss to reckon with: the baker's own, or the guide value for style and size.
func (b *Bake) loss() (quantity.Percent, error) {
	if !b.Loaves.Loss.IsZero() {
		return b.Loaves.Loss, nil
	}
	g, err := b.Loaves.Style.LossOfBread(b.Loaves.Baked)
	return g.Loss.Likely, quantity.At("Loaves", err)
}

// coreTo is the highest core at which a loaf is taken out here: what sources accept, or what boiling allows.
func (k Baking) coreTo() quantity.Temperature {
	if k.Target.Boiling.IsValid() && k.Target.Boiling.Compare(k.Target.Accepted.High) < 0 {
		return k.Target.Boiling
	}
	return k.Target.Accepted.High
}
