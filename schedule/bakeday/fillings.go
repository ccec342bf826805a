package bakeday

import (
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
	"example.org/maslin/schedule"
)

// Perishable food stands at most two hours between 4 and 60 °C, one above 32 °C.
const (
	warmLimit = 2 * time.Hour
	hotLimit  = time.Hour
)

// spoils reports whether a line is food that spoils when it stands warm.
func (l Ingredient) spoils() bool {
	switch l.Kind {
	case dough.KindMilk, dough.KindDairy, dough.KindEgg, dough.KindCookedFilling:
		return true
	}
	return l.Perishable
}

// fillingCautions say of fillings and toppings that spoil how long they stand warm in or on the dough by this plan.
// How they are cooled and kept before is said with the dough's own cautions. Whether a bread with them may be sold
// from a home kitchen is for local rules to say.
func (d Day) fillingCautions() []working.Caution {
	var spoils []any
	var longest time.Duration
	for _, list := range d.Bake.lists() {
		for _, l := range list.lines {
			if at, _ := l.moment(); l.spoils() && (l.Perishable || at != 0) {
				spoils = append(spoils, working.Tell("bakeday.named", "%v", l.Name))
				longest = max(longest, d.standsWarm(l))
			}
		}
	}
	if len(spoils) == 0 {
		return nil
	}
	limit := warmLimit
	if hot := quantity.Celsius(32); d.Bake.Kitchen.Day.Compare(hot) > 0 || d.Bake.Bulk.Box.Compare(hot) > 0 {
		limit = hotLimit
	}
	says := working.Tell("bakeday.caution_perishable",
		"%v: not more than %v in all between %.0f and %.0f; keep it cold until it goes in",
		working.And(spoils...), quantity.Elapsed(limit), quantity.Celsius(4), quantity.Celsius(60))
	if longest > limit {
		says = working.Tell("bakeday.caution_perishable_long",
			"%v: not more than %v in all between %.0f and %.0f, and by this plan it stands %v in the warm dough: add it "+
				"later, or retard "+
				"the dough cold; local food rules decide",
			working.And(spoils...), quantity.Elapsed(limit), quantity.Celsius(4), quantity.Celsius(60),
			quantity.Elapsed(longest.Round(time.Minute)))
	}
	return []working.Caution{{Subject: "perishable filling", Text: says, Source: sources.DangerZone}}
}

// standsWarm is how long a line is in dough that is not in the cold, from when it goes in until the first loaves bake.
func (d Day) standsWarm(l Ingredient) time.Duration {
	baked, ok := d.Timetable.Step(nth(idBake, 0))
	in, there := d.goesIn(l)
	if at, _ := l.moment(); !ok || !there || at == schedule.Bake {
		return 0
	}
	warm := baked.Start.Sub(in)
	if cold, ok := d.Timetable.Step(idRetard); ok && cold.Start.After(in) {
		warm -= cold.End.Sub(cold.Start)
	}
	return warm
}
