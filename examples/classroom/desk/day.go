package desk

import (
	"context"
	"fmt"
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/wallclock"
)

func dayTasks() []task { return []task{dayTask(), ovenTask()} }

// patience is how long a page waits for a plan. What is known by then is shown, and that time ran out.
const patience = 4 * time.Second

// The day of the class is always the same, so that a link shows the same plan next year.
const (
	hallZone = "Europe/Zurich"
	hallNow  = "2026-11-26 08:00"
	hallDay  = "2026-11-28"
	hallEnd  = "2026-11-28 20:00"
)

func wishes() []string {
	var out []string
	for minutes := 6 * 60; minutes <= 20*60; minutes += 30 {
		out = append(out, fmt.Sprintf("%s %02d:%02d", hallDay, minutes/60, minutes%60))
	}
	return out
}

func dayTask() task {
	hoursField := func(name string, label working.Message, start string) field {
		return field{name: name, label: label, kind: aTime, start: both(start), slide: times(0, 24, 0.5, working.Hour)}
	}
	return task{
		id: "day.plan", title: working.Tell("desk.day", "Bread from its end"),
		about: working.Tell("desk.day_about",
			"Six loaves for a lunch in the village hall. Pull the wanted time and the whole chain follows, around "+
				"sleep and absence. It is Thursday, 26 November 2026, eight in the morning."),
		ask: working.Tell("desk.day_ask",
			"When does each step begin? Put as many as you can on the clock, from the end backward."),
		guess: field{name: "guess", kind: onTheClock}, slow: true, steps: chain(),
		fields: append(handFields(chain()), []field{
			{name: "wanted", label: working.Tell("desk.field_wanted", "bread wanted"), kind: aText,
				start: both(hallDay + " 12:30"), places: wishes()},
			{name: "kitchen.asleep[0]", label: working.Tell("desk.field_asleep", "asleep"), kind: aText,
				start: both("22:30 to 06:30")},
			{name: "kitchen.away[0]", label: working.Tell("desk.field_away", "away"), kind: aText,
				start: both("09:00 to 15:00 on 2026-11-27"), empty: true},
			hoursField("retard.at_least", working.Tell("desk.field_retard_least", "in the cold at least"), "8 h"),
			hoursField("retard.at_most", working.Tell("desk.field_retard_most", "in the cold at most"), "14 h"),
			kitchenTemperature("mixing.temperature", working.Tell("desk.field_target", "dough wanted"), "26 °C", "79 °F"),
			kitchenTemperature("kitchen.day", working.Tell("desk.field_room_day", "room at its warmest"), "22 °C", "72 °F"),
			kitchenTemperature("kitchen.night", working.Tell("desk.field_room_night", "room at its coldest"),
				"19 °C", "66 °F"),
			{name: "levain.prefermented", label: working.Tell("desk.field_prefermented", "flour that is in the levain"),
				kind:  aPercent,
				start: both("12 %"), slide: percents(2, 40, 1)},
		}...),
		solve: func(v *values) (solved, error) {
			b, clock, err := v.hall()
			if err != nil {
				return solved{}, err
			}
			ctx, cancel := context.WithTimeout(context.Background(), patience)
			defer cancel()
			d, err := b.Plan(ctx, clock)
			if err != nil {
				return solved{}, err
			}
			return planned(d.Report(), d.Workings, d.Possible(), &d.Timetable), nil
		},
	}
}

// hall is the bake of the village hall with what the class has changed in it.
func (v *values) hall() (bakeday.Bake, bakeday.KitchenClock, error) {
	whole := quantity.Millionths(100_000_000)
	b := bakeday.Bake{
		Loaves: bakeday.Loaves{Pieces: 6, Baked: quantity.Grams(780), Loss: quantity.NewPercent(13),
			Style: bake.LeanHearth},
		Flours: []bakeday.Ingredient{
			{Name: wheat, Percent: quantity.NewPercent(75), Kind: dough.KindWheat},
			{Name: rye, Percent: quantity.NewPercent(25), Kind: dough.KindWholeRye},
		},
		Liquids: []bakeday.Ingredient{{Name: water, Percent: quantity.NewPercent(70)}},
		Salt:    quantity.NewPercent(2),
		Levain: &bakeday.Levain{Prefermented: percent(v, "levain.prefermented"), Hydration: whole, Flour: rye,
			Inoculation: quantity.NewPercent(60)},
		Mixing: bakeday.Mixing{Temperature: temperature(v, "mixing.temperature"), Mixer: mixing.Planetary,
			Warming: quantity.DeltaCelsius(5), Takes: quantity.Elapsed(25 * time.Minute)},
		Bulk:    bakeday.BulkWork{Rise: quantity.NewPercent(75), Folds: 2, FoldEvery: quantity.Elapsed(45 * time.Minute)},
		Shaping: bakeday.Shaping{Takes: quantity.Elapsed(40 * time.Minute)},
		Retard:  &bakeday.Retard{AtLeast: elapsed(v, "retard.at_least"), AtMost: elapsed(v, "retard.at_most")},
		Oven: bakeday.OvenWork{Temperature: quantity.Celsius(245), Pots: 2, Preheat: quantity.Elapsed(45 * time.Minute),
			Reheat: quantity.Elapsed(10 * time.Minute), Covered: quantity.Elapsed(22 * time.Minute),
			Uncovered: quantity.Elapsed(20 * time.Minute)},
		Kitchen: bakeday.Kitchen{Zone: hallZone,
			Mixers:   []bakeday.KitchenMixer{{Kind: mixing.Planetary, Bowl: quantity.Liters(7)}},
			Altitude: quantity.Meters(1150), Day: temperature(v, "kitchen.day"),
			Night: temperature(v, "kitchen.night"), Refrigerator: quantity.Celsius(4), Tap: quantity.Celsius(10),
			Scale: quantity.Grams(1), FineScale: quantity.Grams(0.1)},
	}
	wish, err := bakeday.ParseWish(strings.TrimSpace(v.text("wanted")))
	v.problems.Join("wanted", err)
	b.Wanted = wish
	for _, h := range []struct {
		name string
		into *[]wallclock.Habit
	}{{"kitchen.asleep[0]", &b.Kitchen.Asleep}, {"kitchen.away[0]", &b.Kitchen.Away}} {
		if text := get[string](v, h.name); text != "" {
			habit, err := wallclock.ParseHabit(text)
			v.problems.Join(h.name, err)
			*h.into = []wallclock.Habit{habit}
		}
	}
	zone, err := hallLocation()
	if err != nil {
		return b, bakeday.KitchenClock{}, err
	}
	now, err := wallclock.Resolve(wallclock.MustMoment(hallNow), zone, wallclock.RFC5545)
	v.problems.Join("now", err)
	return b, bakeday.KitchenClock{Now: now.At, Zone: zone}, v.problems.Err()
}

// chain are the steps of one bread that a class puts on the clock.
func chain() []handStep {
	var out []handStep
	for _, k := range []schedule.StepKind{schedule.Feed, schedule.Mix, schedule.Bulk, schedule.Shape, schedule.Retard,
		schedule.Preheat, schedule.Bake, schedule.Cool} {
		out = append(out, handStep{kind: k})
	}
	return out
}

// say is a section of one sentence.
func say(key string, m working.Message) report.Section {
	return report.Section{Key: key, Blocks: []report.Block{report.Say(m)}}
}
