package bakeday

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

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
	k.Cooling, err = bake.CoolingLoaf{
		Style: b.Loaves.Style, Shape: b.Loaves.Shape, Baked: b.Loaves.Baked, From: k.Target.Core, Room: room,
	}.Time()
	if err != nil {
		return k, quantity.At("Loaves", err)
	}
	k.Each = b.Oven.Together
	if k.Each == 0 {
		k.Each = b.Oven.Pots
	}
	if k.Each == 0 || k.Each > b.Loaves.Pieces {
		k.Each = b.Loaves.Pieces
	}
	k.Rounds = (b.Loaves.Pieces + k.Each - 1) / k.Each
	return k, b.heat(&k)
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
