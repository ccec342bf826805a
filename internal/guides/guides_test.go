package guides

import (
	"context"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

func percent(text string) quantity.Percent { return quantity.MustPercent(text) }

func celsius(t quantity.Temperature) string { return working.Reader{}.Temperature(t, 1) }

func elapsed(d time.Duration) string { return working.Reader{}.Elapsed(d) }

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if d := got - want; d > 0.051 || d < -0.051 {
		t.Errorf("%s: the library says %.3f, the page %.1f", what, got, want)
	}
}

func TestPercentages(t *testing.T) {
	p := read(t, "dough/PERCENTAGES.md")
	f := dough.Formula{
		Flours: []dough.Part{
			{Name: "bread flour", Percent: percent("80 %"), Kind: dough.KindWheat},
			{Name: "whole rye", Percent: percent("20 %"), Kind: dough.KindWholeRye},
		},
		Liquids: []dough.Part{{Name: "water", Percent: percent("72 %"), Kind: dough.KindWater}},
		Salt:    percent("2 %"),
		Preferments: []dough.Preferment{{
			Name: "levain", Flour: percent("15 %"), Hydration: percent("100 %"),
			Blend: []dough.Part{{Name: "whole rye", Percent: percent("100 %")}},
			Seed:  dough.Seed{Percent: percent("20 %"), Hydration: percent("100 %")},
		}},
	}
	b, err := f.For(dough.Baked{Pieces: 6, Each: quantity.Grams(780), Loss: percent("12 %")})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "piece", b.ScalingWeight().Grams(), 886.4)
	near(t, "flour", b.Flour().Grams(), 3056.4)
	near(t, "water", b.Water().Grams(), 2200.6)
	near(t, "hydration", b.Hydration().Points(), 72)
	near(t, "at mixing", b.FinalHydration().Points(), 67.1)
	levain, _ := b.Build("levain")
	near(t, "levain", levain.Flour.Add(levain.Water).Grams(), 916.9)
	for _, l := range b.FinalDough() {
		switch l.Name {
		case "whole rye":
			near(t, "rye at mixing", l.Mass.Grams(), 152.8)
		case "water":
			near(t, "water at mixing", l.Mass.Grams(), 1742.2)
		}
	}
	for _, said := range []string{
		"1530 g of flour and 1102 g of water", // a story of its own
		"water " + f.Liquids[0].Percent.Text(0) + ": for each 100 g of flour there are 72 g of water",
		"always 100 %, and all the rest", "why the sum is more than 100", "the flour is always 100", "share the 100 between",
		"| bread flour | " + f.Flours[0].Percent.Text(0), "| whole rye | " + f.Flours[1].Percent.Text(0), "| water | 72 %",
		"| salt | " + f.Salt.Text(0), "| together | " + b.Total().Text(0), "Six loaves of 780 g", "loses 12 %", "is 88 %",
		"adding 12 % to the bread", "the hall " + f.Preferments[0].Flour.Text(0) + " of all the flour",
		"hydration " + b.Hydration().Text(0), "here 15 %",
		"cannot weigh " + b.Flour().Text(quantity.Gram, 1),
	} {
		p.says(said)
	}
	p.done()
}

func TestWater(t *testing.T) {
	p := read(t, "dough/mixing/WATER.md")
	at := func(name string, c float64) mixing.Factor {
		return mixing.Factor{Name: name, Temperature: quantity.Celsius(c)}
	}
	hall := mixing.Factors{
		Target: quantity.Celsius(24.5), Others: []mixing.Factor{at("flour", 21), at("room", 23), at("levain", 22)},
		Friction: quantity.DeltaCelsius(12),
	}
	water, err := hall.Water()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "water", water.Temperature.Celsius(), 20)
	iced, err := mixing.IceWater{Water: quantity.Grams(2000), Tap: quantity.Celsius(22),
		Need: quantity.Celsius(12)}.Replace()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ice", iced.Ice.Grams(), 196.7)
	p.says("wanted at " + celsius(hall.Target) + ". The flour is at 21 °C, the room at 23 °C, the levain at 22 °C, and " +
		"the mixer adds 12 °C of warmth")
	near(t, "friction in °F", quantity.DeltaCelsius(12).Fahrenheit(), 21.6)
	near(t, "friction in °C", quantity.DeltaFahrenheit(24).Celsius(), 13.3)
	for _, said := range []string{
		`not "12 °C warm"`, "without the 32", "Reading 24 °F of friction", "came out at 25.2 °C with water of 20 °C",
		"the tap gives 22 °C and the formula asks for 12 °C", "same water by 79.7 °C", "For 2000 g of water",
		"above about 45 °C", "450 g of rye, 2500 g of flour", "takes 4.18 kJ for each degree, a kilogram of flour 1.8 kJ",
	} {
		p.says(said)
	}
	table := mixing.Factors{Target: quantity.Celsius(25), Friction: quantity.DeltaCelsius(10)}
	p.says("of 25 °C in a room of 22 °C, three things counted, 10 °C of friction")
	for flour := 16.0; flour <= 28; flour += 3 {
		table.Others = []mixing.Factor{at("flour", flour), at("room", 22)}
		r, err := table.Water()
		if err != nil {
			t.Fatal(err)
		}
		p.says(fmt.Sprintf("| %.0f °C | %s |", flour, celsius(r.Temperature)))
	}
	p.done()
}

func TestHeat(t *testing.T) {
	p := read(t, "bake/HEAT.md")
	hall := bake.Site{Altitude: quantity.Meters(1150)}
	boiling, err := hall.BoilingPoint()
	if err != nil {
		t.Fatal(err)
	}
	sea, err := bake.Goal{Style: bake.LeanHearth}.Target()
	if err != nil {
		t.Fatal(err)
	}
	target, err := bake.Goal{Style: bake.LeanHearth, Place: hall}.Target()
	if err != nil {
		t.Fatal(err)
	}
	p.says("lies at 1150 m")
	p.says("says " + celsius(boiling.Point) + ": the rule is good")
	p.says("wanted at " + celsius(sea.Core) + " in the middle")
	p.says("under boiling, " + celsius(target.Core) + " here")
	verdict, err := bake.LoafReading{
		Goal: bake.Goal{Style: bake.LeanHearth, Place: hall}, Core: quantity.Celsius(94.5),
		Dough: quantity.Grams(897), Loaf: quantity.Grams(795),
	}.Judge()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "loss", verdict.Loss.Points(), 11.4)
	if verdict.State != bake.Done {
		t.Errorf("the loaf of the page is %v", verdict.State)
	}
	p.says("went in with 897 g and weighs 795 g")
	p.says("wants " + verdict.MinimumLoss.Text(0) + " at least")
	p.says("a loaf of 780 g that loses 12 %")
	left, err := bake.CoolingProbe{Room: quantity.Celsius(21), Samples: []bake.Sample{
		{At: 0, Core: quantity.Celsius(88)}, {At: quantity.Elapsed(25 * time.Minute), Core: quantity.Celsius(61)},
	}}.TimeLeft()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "minutes left", left.Ready.Likely.Minutes(), 50.9)
	for i, said := range []string{"%s for a loaf of 780 g", "%s for one of half the weight"} {
		c, err := bake.CoolingLoaf{Style: bake.LeanHearth, Baked: quantity.Grams(780 / float64(i+1)),
			Room: quantity.Celsius(21)}.Time()
		if err != nil {
			t.Fatal(err)
		}
		p.says(fmt.Sprintf(said, elapsed(c.Ready.Likely.Round(time.Minute))))
		if i == 0 {
			p.says("a round loaf of 780 g on a rack")
		}
	}
	for _, said := range []string{
		"A core of 99 °C", "water boils at 100 °C", "one degree for each 300 m",
		"at 21 °C, the core is at 88 °C and 25 minutes",
		"later at 61 °C", "shrinks to 37 %", "cut at 35 °C, 14 degrees", "Below 0.1", "Far above 10 only",
	} {
		p.says(said)
	}
	p.done()
}

// saturday is the bake of the page.
func saturday(lunch time.Time) schedule.Problem {
	friday := time.Date(2026, 3, 13, 15, 0, 0, 0, time.UTC)
	minutes := func(m int) quantity.Elapsed { return quantity.Elapsed(time.Duration(m) * time.Minute) }
	hands := []schedule.Need{{Resource: "baker", Amount: 1}}
	return schedule.Problem{
		Anchor: friday, Horizon: minutes(24 * 60),
		Steps: []schedule.DayStep{
			{ID: "mix", Min: minutes(20), Needs: hands},
			{ID: "bulk", Min: minutes(240), Likely: minutes(300), Max: minutes(360), Living: true, Watch: "baker"},
			{ID: "shape", Min: minutes(30), Needs: hands},
			{ID: "retard", Min: minutes(8 * 60), Max: minutes(16 * 60), PerMinute: 1},
			{ID: "bake", Min: minutes(50), Needs: []schedule.Need{{Resource: "baker", Amount: 1},
				{Resource: "oven", Amount: 1}}},
			{ID: "cool", Min: minutes(120)},
		},
		Links: []schedule.Link{
			{From: "mix", To: "bulk"}, {From: "bulk", To: "shape", Max: minutes(20)}, {From: "shape", To: "retard"},
			{From: "retard", To: "bake"}, {From: "bake", To: "cool"},
		},
		Bounds: []schedule.Bound{{Step: "cool", Edge: schedule.End, Latest: lunch, Wanted: true,
			Words: working.Say("lunch")}},
		Resources: []schedule.Resource{
			{ID: "baker", Capacity: 1, Closed: []schedule.Span{
				{From: friday.Add(450 * time.Minute), To: friday.Add(930 * time.Minute), Words: working.Say("asleep")},
			}},
			{ID: "oven", Capacity: 1},
		},
	}
}

func TestBackward(t *testing.T) {
	p := read(t, "schedule/BACKWARD.md")
	lunch := time.Date(2026, 3, 14, 12, 30, 0, 0, time.UTC)
	plan, err := saturday(lunch).Latest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	begins := map[string]string{}
	for _, s := range plan.Steps {
		begins[s.ID] = s.Start.Format("15:04")
	}
	p.says("into the oven at " + begins["bake"])
	p.says("Friday " + begins["mix"])
	p.says("to end at " + begins["retard"] + " on Friday")
	if begins["shape"] != "22:00" || begins["bulk"] != "17:00" || begins["cool"] != "10:30" {
		t.Errorf("the library plans %v", begins)
	}
	breakfast := time.Date(2026, 3, 14, 8, 0, 0, 0, time.UTC)
	if no, err := saturday(breakfast).Latest(context.Background()); err == nil && len(no.Steps) > 0 {
		t.Error("breakfast at 08:00 fits")
	}
	if yes, err := saturday(breakfast.Add(80 * time.Minute)).Latest(context.Background()); err != nil ||
		len(yes.Steps) == 0 {
		t.Errorf("09:20 does not fit: %v", err)
	}
	for _, said := range []string{
		"| mix | 20 min", "| bulk | 4 to 6 hours, likely 5", "| shape | 30 min", "| retard | 8 to 16 hours",
		"| bake | 50 min",
		"| cool | 2 hours", "sleeps from 22:30 to 06:30", "on Saturday at 12:30", "as short as 8 hours",
		"shaped from 01:10 on",
		`"asleep from 22:30 to 06:30"`, "likely 5 hours", "5 hours of bulk", "ready after 4", "after 6 the baker", "at 15:40",
		"Breakfast at 08:00", "sleeps until 06:30", "the oven at 05:10", "wait until 09:20",
	} {
		p.says(said)
	}
	p.done()
}
