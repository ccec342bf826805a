package bakeday

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
	"example.org/maslin/schedule"
)

// The limits for food that spoils, in one place. Cooked food cools from 57 to 21 °C within two hours, and to 5 °C within six
// hours in all (Food Code 3-501.14); perishable food stands at most two hours between 4 and 60 °C, one above 32 °C.
const (
	warmLimit    = 2 * time.Hour
	hotLimit     = time.Hour
	coolingFirst = 2 * time.Hour
	coolingInAll = 6 * time.Hour
)

// fillingCautions are those of what is cooked or spoils and goes into or onto the dough, with how long it stands warm in it
// by this plan. Whether a bread with it may be sold from a home kitchen is for local rules to say.
func (d Day) fillingCautions() []working.Caution {
	var cooked, spoils []any
	var longest time.Duration
	for _, list := range d.Bake.lists() {
		for _, l := range list.lines {
			name := working.Tell("bakeday.named", "%v", l.Name)
			if l.Cooked {
				cooked = append(cooked, name)
			}
			if l.Cooked || l.Perishable {
				spoils = append(spoils, name)
				longest = max(longest, d.standsWarm(l))
			}
		}
	}
	var out []working.Caution
	if len(cooked) > 0 {
		out = append(out, working.Caution{
			Subject: "cooked filling", Source: sources.FoodCode,
			Text: working.Tell("bakeday.caution_cooked",
				"cool %v from %.0f to %.0f within %v and to %.0f within %v in all, spread thin and uncovered in the refrigerator; "+
					"what missed that is heated to %.0f or thrown away",
				working.And(cooked...), quantity.Celsius(57), quantity.Celsius(21), quantity.Elapsed(coolingFirst),
				quantity.Celsius(5), quantity.Elapsed(coolingInAll), quantity.Celsius(74)),
		})
	}
	if len(spoils) == 0 {
		return out
	}
	limit := warmLimit
	if d.Bake.Kitchen.Day.Compare(quantity.Celsius(32)) > 0 || d.Bake.Bulk.Box.Compare(quantity.Celsius(32)) > 0 {
		limit = hotLimit
	}
	says := working.Tell("bakeday.caution_perishable",
		"%v: not more than %v in all between %.0f and %.0f; keep it cold until it goes in",
		working.And(spoils...), quantity.Elapsed(limit), quantity.Celsius(4), quantity.Celsius(60))
	if longest > limit {
		says = working.Tell("bakeday.caution_perishable_long",
			"%v: not more than %v in all between %.0f and %.0f, and by this plan it stands %v in the warm dough: add it later, or retard "+
				"the dough cold; local food rules decide",
			working.And(spoils...), quantity.Elapsed(limit), quantity.Celsius(4), quantity.Celsius(60),
			quantity.Elapsed(longest.Round(time.Minute)))
	}
	return append(out, working.Caution{Subject: "perishable filling", Text: says, Source: sources.DangerZone})
}

// standsWarm is how long a line is in dough that is not in the cold, from when it goes in until the first loaves bake.
func (d Day) standsWarm(l Ingredient) time.Duration {
	baked, ok := d.Timetable.Step(nth(idBake, 0))
	at, fold := l.moment()
	id := nth(idMix, 0)
	switch at {
	case schedule.Fold:
		id = nth(idFold, fold-1)
	case schedule.Laminate:
		id = idLaminate
	case schedule.Shape:
		id = idShape
	case schedule.Bake:
		return 0
	}
	in, there := d.Timetable.Step(id)
	if !ok || !there {
		return 0
	}
	warm := baked.Start.Sub(in.Start)
	if cold, ok := d.Timetable.Step(idRetard); ok {
		warm -= cold.End.Sub(cold.Start)
	}
	return warm
}
