package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// oneHeat is how long after a bread an oven counts as still hot from it. Judgment.
const oneHeat = 2 * time.Hour

// ovenOrderNotes say why a bread that wants a hotter oven bakes after one that wants a cooler one. Hottest first is
// common practice, since an oven falls by itself; but a dough bakes when it is ready, and the bread must be there when
// it is wanted.
func (k KitchenDay) ovenOrderNotes() []working.Message {
	if !k.Possible() || len(k.Breads) < 2 {
		return nil
	}
	var bakes []schedule.Timed
	for _, s := range k.Timetable.Steps {
		if s.Kind == schedule.Bake && !s.Spare {
			bakes = append(bakes, s)
		}
	}
	slices.SortStableFunc(bakes, func(a, b schedule.Timed) int { return a.Start.Compare(b.Start) })
	var out []working.Message
	for i := 1; i < len(bakes); i++ {
		before, after := bakes[i-1], bakes[i]
		if before.Bread == after.Bread || after.Start.Sub(before.End) > oneHeat {
			continue
		}
		first, ok := k.Bread(before.Bread)
		second, there := k.Bread(after.Bread)
		if !ok || !there || first.Bake.Oven.Temperature.Compare(second.Bake.Oven.Temperature) >= 0 {
			continue
		}
		says := working.Tell("bakeday.note_oven_order",
			"%s: baked after %s, though in a hotter oven, %05.0f and not %05.0f: the breads bake in the order in which they "+
				"are ready and wanted; hottest first would save heating the oven on",
			after.Bread, before.Bread, second.Bake.Oven.Temperature, first.Bake.Oven.Temperature)
		if !slices.Contains(out, says) {
			out = append(out, says)
		}
	}
	return out
}
