package bench_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// While a loaf bakes the next thing is its lid, and what is added and the baker's own notes are among what to do.
func TestTheOvenIsTended(t *testing.T) {
	b := hall(t)
	b.Bulk.Folds, b.Bulk.FoldEvery = 2, quantity.Elapsed(30*time.Minute)
	b.Inclusions = []bakeday.Ingredient{
		{Name: "walnuts", Percent: quantity.NewPercent(10), Kind: dough.KindNuts, Fold: 2},
		{Name: "raisins", Percent: quantity.NewPercent(5), Kind: dough.KindFruit},
	}
	b.Notes = []bakeday.StepNote{{Step: "vent", Says: "kettle gloves"}}
	made := at(3, 20, 0)
	plan := bench.Observation{
		Version: bench.Format, At: made, Kind: bench.SawPlan, Bread: "hall",
		Plan: &bench.FollowedPlan{Made: made, Wanted: at(5, 12, 30)},
	}
	day := func(now time.Time) bench.DayNow {
		m, err := bench.Under{Bake: b, Observations: bench.Observations{plan}}.At(t.Context(), clock(now))
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	m := day(at(4, 8, 0))
	bakes, ok := m.Step("bake-1")
	if !ok {
		t.Fatal("nothing is baked")
	}
	in := day(bakes.Start.Add(5 * time.Minute))
	if all := in.UnderWay(); !slices.ContainsFunc(all, func(s bakeday.StepData) bool { return s.ID == "bake-1" }) {
		t.Errorf("under way: %v", all)
	}
	lid, ok := in.Next()
	if !ok || lid.ID != "vent-1" || lid.Kind != schedule.Tend || lid.Start.Sub(bakes.Start) != 22*time.Minute {
		t.Fatalf("next is %v at %v", lid.ID, lid.Start)
	}
	says := func(m bench.DayNow, s bakeday.StepData) string {
		text := ""
		for _, l := range m.LookFor(s) {
			text += l.String() + "\n"
		}
		return text
	}
	if got := says(in, lid); got != "your note: kettle gloves\n" {
		t.Errorf("at the lid: %q", got)
	}
	if len(in.Report().Cautions) == 0 {
		t.Error("no caution at the oven")
	}
	fold, _ := m.Step("fold-2")
	if got := says(m, fold); !strings.Contains(got, "of walnuts") {
		t.Errorf("at the fold: %q", got)
	}
	mix, _ := m.Step("mix-1")
	if got := says(m, mix); strings.Contains(got, "walnuts") || !strings.Contains(got, "raisins") {
		t.Errorf("at mixing: %q", got)
	}
	// Ticking the lid off does not plan the day again.
	done := bench.Observation{Version: bench.Format, At: lid.Start.Add(9 * time.Minute), Kind: bench.SawStep,
		Bread: "hall", Step: "vent-1"}
	after, err := bench.Under{Bake: b, Observations: bench.Observations{plan, done}}.At(t.Context(),
		clock(lid.Start.Add(10*time.Minute)))
	if err != nil || after.Changed != nil {
		t.Errorf("%+v %v", after.Changed, err)
	}
	if next, ok := after.Next(); ok {
		t.Errorf("next is %v", next.ID)
	}
}
