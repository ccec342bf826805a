package bench

import (
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// wash says of a mixing that the mixer is washed before it, because the dough before carried an allergen that this one
// does not.
func (k KitchenNow) wash(mix stepOf) []working.Message {
	kind := mix.of.Day.Bake.Mixing.Mixer
	var before *DayNow
	for _, s := range k.steps() {
		if s.Kind == schedule.Mix && s.Start.Before(mix.Start) && s.of.Day.Bake.Mixing.Mixer == kind {
			before = s.of
		}
	}
	if before == nil || kind == mixing.Hand {
		return nil
	}
	left := before.Day.Batch.Allergens() &^ mix.of.Day.Batch.Allergens()
	if left == 0 {
		return nil
	}
	return []working.Message{working.Tell("bench.do_wash",
		"first wash the %v mixer, and what the dough touches: %s carried %v", kind, before.Name, left)}
}
