package bakeday

import (
	"context"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// hall is the bake of the village hall, in Go.
func hall() Bake {
	return Bake{
		Name: "Maslin for the Saturday lunch", Wanted: OnDay(time.Saturday, wallclock.MustClock("12:30")),
		Loaves: Loaves{
			Pieces: 6,
			Baked:  quantity.Grams(780),
			Loss:   quantity.NewPercent(13),
			Style:  bake.LeanHearth,
			Shape:  bake.Round,
		},
		Flours: []Ingredient{
			{Name: "wheat bread flour", Percent: quantity.NewPercent(75), Kind: dough.KindWheat},
			{Name: "whole rye flour", Percent: quantity.NewPercent(25), Kind: dough.KindWholeRye},
		},
		Liquids: []Ingredient{{Name: "water", Percent: quantity.NewPercent(70)}},
		Salt:    quantity.NewPercent(2.1),
		Levain: &Levain{
			Prefermented: quantity.NewPercent(12), Hydration: quantity.NewPercent(100), Flour: "whole rye flour",
			Inoculation:      quantity.NewPercent(60),
			CultureHydration: quantity.NewPercent(100), CultureAtHand: quantity.Grams(220),
		},
		Mixing: Mixing{
			Temperature: quantity.Celsius(26),
			Mixer:       mixing.Planetary,
			Warming:     quantity.DeltaCelsius(5),
			Takes:       quantity.Elapsed(25 * time.Minute),
		},
		Bulk:    BulkWork{Rise: quantity.NewPercent(75), Folds: 2, FoldEvery: quantity.Elapsed(45 * time.Minute)},
		Shaping: Shaping{Takes: quantity.Elapsed(40 * time.Minute)},
		Retard:  &Retard{AtLeast: quantity.Elapsed(8 * time.Hour), AtMost: quantity.Elapsed(14 * time.Hour)},
		Oven: OvenWork{
			Temperature: quantity.Celsius(245),
			Pots:        2, Preheat: quantity.Elapsed(45 * time.Minute), Reheat: quantity.Elapsed(10 * time.Minute),
			Covered: quantity.Elapsed(22 * time.Minute), Uncovered: quantity.Elapsed(20 * time.Minute),
		},
		Kitchen: Kitchen{
			Zone:     "Europe/Zurich",
			Asleep:   []wallclock.Habit{wallclock.MustHabit("22:30 to 06:30")},
			Away:     []wallclock.Habit{wallclock.MustHabit("09:00 to 15:00 on Friday")},
			Mixers:   []KitchenMixer{{Kind: mixing.Planetary, Bowl: quantity.Liters(7)}},
			Altitude: quantity.Meters(1150),
			Day:      quantity.Celsius(22), Night: quantity.Celsius(19), Refrigerator: quantity.Celsius(4),
			Tap:   quantity.Celsius(10),
			Scale: quantity.Grams(1), FineScale: quantity.Grams(0.1),
		},
	}
}

func BenchmarkPlan(b *testing.B) {
	zone := time.FixedZone("Europe/Zurich", 3600)
	clock := KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zone}
	for b.Loop() {
		if _, err := hall().Plan(context.Background(), clock); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkThreeBreads(b *testing.B) {
	zone := time.FixedZone("Europe/Zurich", 3600)
	clock := KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zone}
	o := sunday()
	for b.Loop() {
		if _, err := o.Plan(context.Background(), clock); err != nil {
			b.Fatal(err)
		}
	}
}
