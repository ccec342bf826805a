package bench_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// overnight are buns of a dough that rests in the refrigerator before it is divided.
func overnight(t testing.TB) bakeday.Bake {
	b := hall(t)
	b.Name, b.Levain = "overnight", nil
	b.Others = []bakeday.Ingredient{
		{Name: "instant yeast", Percent: quantity.NewPercent(0.3), Kind: dough.KindInstantYeast},
	}
	b.Mixing.Temperature = quantity.Celsius(23)
	b.Bulk = bakeday.BulkWork{Rise: quantity.NewPercent(230)}
	b.Loaves = bakeday.Loaves{Pieces: 12, Baked: quantity.Grams(80), Style: bake.SoftRoll}
	b.Oven = bakeday.OvenWork{
		Temperature: quantity.Celsius(200), Preheat: quantity.Elapsed(25 * time.Minute),
		Uncovered: quantity.Elapsed(16 * time.Minute),
	}
	b.Retard = &bakeday.Retard{AtLeast: quantity.Elapsed(10 * time.Hour), AtMost: quantity.Elapsed(16 * time.Hour),
		Undivided: true}
	return b
}

// The bulk of a dough that rests in the cold ends when it goes there. That it was divided, half a day later, ends
// nothing but the dividing, and teaches nothing of how fast the dough rises.
func TestTheBulkEndsWhenTheDoughGoesIntoTheCold(t *testing.T) {
	made := at(4, 6, 0)
	of := overnight(t)
	under := func(now time.Time, seen ...bench.Observation) bench.KitchenNow {
		follows := bench.Observation{Version: bench.Format, At: made, Kind: bench.SawPlan, Bread: of.Name,
			Plan: &bench.FollowedPlan{Made: made, Wanted: at(5, 12, 30)}}
		k, err := bench.KitchenUnder{Order: bakeday.Order{Bakes: []bakeday.Bake{of}},
			Observations: append(bench.Observations{follows}, seen...)}.At(context.Background(), clock(now))
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	plan := under(made)
	bulk, chill := begins(t, plan, of.Name, "bulk"), begins(t, plan, of.Name, "chill")
	divide := begins(t, plan, of.Name, "divide")
	did := func(step string, at time.Time) bench.Observation {
		return bench.Observation{Version: bench.Format, At: at, Kind: bench.SawStep, Bread: of.Name, Step: step}
	}
	mix := bench.DoughMixed{Dough: quantity.Celsius(23)}.AsPlanned(plan.Day.Breads[0], bulk)
	mixed := bench.Observation{Version: bench.Format, At: bulk, Kind: bench.SawMixed, Bread: of.Name,
		Mix: &mix}

	middle := bulk.Add(chill.Sub(bulk) / 2)
	text := under(middle, mixed).Report().Text(report.Options{Width: 200})
	for _, want := range []string{"put it into the cold when it has risen by", "Next, in"} {
		if !strings.Contains(text, want) {
			t.Errorf("in the bulk %q is not told: %s", want, text)
		}
	}
	early := chill.Add(-20 * time.Minute)
	ticked := under(early.Add(time.Minute), mixed, did("chill", early))
	if s := ticked.Breads[0].UnderWay(); len(s) != 1 || s[0].ID != "retard" {
		t.Errorf("when it is in the cold, %v is under way", s)
	}
	if got := ticked.Report().Text(report.Options{Width: 200}); strings.Contains(got, "The dough") {
		t.Errorf("the dough in the cold is looked at as if it were in its bulk: %s", got)
	}
	if got := begins(t, ticked, of.Name, "divide"); got.Sub(divide) > 0 || divide.Sub(got) > 20*time.Minute {
		t.Errorf("it is divided at %v, as planned at %v", got, divide)
	}
	inCold := under(divide.Add(-time.Hour), mixed, did("chill", chill))
	if s, ok := inCold.Breads[0].Next(); !ok || s.ID != "divide" {
		t.Errorf("next is %v", s)
	}

	// What the log teaches: the dough took as long as until it went into the cold; when it was divided says nothing.
	taught := func(seen ...bench.Observation) (time.Duration, string) {
		bakes := append(bench.Observations{mixed}, seen...).Bakes()
		if len(bakes) != 1 {
			t.Fatalf("%d bakes", len(bakes))
		}
		one, why := bakes[0].Taught()
		return one.Took.Duration(), why.String()
	}
	if took, why := taught(did("chill", chill), did("divide", divide)); took != chill.Sub(bulk) || why != "" {
		t.Errorf("it took %v, and went into the cold after %v: %s", took, chill.Sub(bulk), why)
	}
	if took, why := taught(did("divide", divide)); why == "" {
		t.Errorf("divided after the cold, it is taken for a bulk of %v", took)
	}
}
