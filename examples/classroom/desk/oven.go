package desk

import (
	"context"
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// The breads that share the oven of the hall.
const (
	loavesName = "loaves"
	bunsName   = "buns"
)

// ovenTask is two breads that both want the oven, each at its own temperature.
func ovenTask() task {
	steps := []handStep{{loavesName, schedule.Mix}, {loavesName, schedule.Shape}, {loavesName, schedule.Bake},
		{bunsName, schedule.Mix}, {bunsName, schedule.Shape}, {bunsName, schedule.Bake}}
	wish := func(name string, label working.Message, start string) field {
		return field{name: name, label: label, kind: aText, start: both(start), places: wishes()}
	}
	oven := func(name string, label working.Message, metric, us string) field {
		return field{name: name, label: label, kind: aTemperature, start: [2]string{metric, us},
			slide: temperatures(150, 260, 5, 300, 500, 10)}
	}
	one := dayTask()
	var fields []field
	for _, f := range one.fields {
		if !f.hand && f.name != "wanted" {
			fields = append(fields, f)
		}
	}
	return task{
		id: "day.oven", title: working.Tell("desk.oven", "Two breads, one oven"),
		about: working.Tell("desk.oven_about",
			"The six loaves again, and twelve buns with yeast for the same lunch. The oven has one temperature at a time, and "+
				"the baker two hands. Move one wish and see what it does to the other bread."),
		ask: working.Tell("desk.oven_ask",
			"When does each step of the two begin? Which bread bakes first? Put as many as you can on the clock."),
		guess: field{name: "guess", kind: onTheClock}, slow: true, steps: steps,
		fields: append(append(handFields(steps),
			wish("wanted", working.Tell("desk.field_wanted_loaves", "loaves wanted"), hallDay+" 12:30"),
			wish("buns.wanted", working.Tell("desk.field_wanted_buns", "buns wanted"), hallDay+" 12:30"),
			oven("oven.temperature", working.Tell("desk.field_oven_loaves", "oven for the loaves"), "245 °C", "470 °F"),
			oven("buns.oven", working.Tell("desk.field_oven_buns", "oven for the buns"), "190 °C", "370 °F")), fields...),
		paths: map[string]string{"bake[0].wanted": "wanted", "bake[1].wanted": "buns.wanted",
			"bake[0].oven.temperature": "oven.temperature", "bake[1].oven.temperature": "buns.oven",
			"bake[0].retard.at_least": "retard.at_least", "bake[0].retard.at_most": "retard.at_most",
			"bake[0].kitchen.day": "kitchen.day", "bake[1].kitchen.day": "kitchen.day",
			"bake[0].kitchen.night": "kitchen.night", "bake[1].kitchen.night": "kitchen.night",
			"bake[0].mixing.temperature":  "mixing.temperature",
			"bake[0].levain.prefermented": "levain.prefermented"},
		solve: func(v *values) (solved, error) {
			loaves, clock, err := v.hall()
			buns := bunsFor(v)
			loaves.Name = loavesName
			loaves.Oven.Temperature = temperature(v, "oven.temperature")
			if more := v.problems.Err(); more != nil {
				return solved{}, more
			}
			if err != nil {
				return solved{}, err
			}
			o := bakeday.Order{Kitchen: loaves.Kitchen, Bakes: []bakeday.Bake{loaves, buns}}
			o.Bakes[0].Kitchen = bakeday.Kitchen{}
			ctx, cancel := context.WithTimeout(context.Background(), patience)
			defer cancel()
			d, err := o.Plan(ctx, clock)
			if err != nil {
				return solved{}, err
			}
			return planned(d.DayReport(), d.Workings, d.Possible(), &d.Timetable), nil
		},
	}
}

// bunsFor are twelve buns with yeast.
func bunsFor(v *values) bakeday.Bake {
	b := bakeday.Bake{
		Name: bunsName,
		Loaves: bakeday.Loaves{Pieces: 12, Baked: quantity.Grams(65), Loss: quantity.NewPercent(10),
			Style: bake.SoftRoll},
		Flours:  []bakeday.Ingredient{{Name: wheat, Percent: quantity.NewPercent(100), Kind: dough.KindWheat}},
		Liquids: []bakeday.Ingredient{{Name: water, Percent: quantity.NewPercent(58)}},
		Others: []bakeday.Ingredient{
			{Name: "butter", Percent: quantity.NewPercent(10), Water: quantity.NewPercent(16), Kind: dough.KindButter},
			{Name: "sugar", Percent: quantity.NewPercent(8), Kind: dough.KindSweetener},
			{Name: "instant yeast", Percent: quantity.NewPercent(1), Kind: dough.KindInstantYeast},
		},
		Salt: quantity.NewPercent(1.6),
		Mixing: bakeday.Mixing{Temperature: quantity.Celsius(25), Mixer: mixing.Hand,
			Takes: quantity.Elapsed(20 * time.Minute)},
		Bulk:    bakeday.BulkWork{Rise: quantity.NewPercent(150)},
		Shaping: bakeday.Shaping{Takes: quantity.Elapsed(25 * time.Minute)},
		Oven: bakeday.OvenWork{Temperature: temperature(v, "buns.oven"), Together: 12,
			Preheat: quantity.Elapsed(25 * time.Minute), Uncovered: quantity.Elapsed(16 * time.Minute)},
	}
	wish, err := bakeday.ParseWish(strings.TrimSpace(v.text("buns.wanted")))
	v.problems.Join("buns.wanted", err)
	b.Wanted = wish
	return b
}
