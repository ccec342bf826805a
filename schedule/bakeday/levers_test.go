package bakeday

import (
	"context"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// A bake that does not fit as written: so little levain that the bulk would run into the night.
func slow() Bake {
	b := hall()
	b.Levain.Prefermented = quantity.NewPercent(3)
	b.Mixing.Temperature = quantity.Celsius(22)
	b.Levers = Levers{
		Prefermented: []quantity.Percent{quantity.NewPercent(3), quantity.NewPercent(20)},
		Temperature:  []quantity.Temperature{quantity.Celsius(22), quantity.Celsius(27)},
	}
	return b
}

func ExampleBake_Fit() {
	zone := time.FixedZone("Europe/Zurich", 3600)
	fit, err := slow().Fit(context.Background(), KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC),
		Zone: zone}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("as written:", fit.AsWritten.Against)
	fmt.Println("better:", fit.Best.Changes, fit.Best.Against)
	// Output:
	// as written: [the plan holds over only 26 % of the range in which the dough may be early or late 13m of hands-on work before 7:00 or after 21:00]
	// better: [prefermented flour 16 % instead of 3 %] []
}

func TestFitFindsAPlanWithinItsBounds(t *testing.T) {
	b := slow()
	f, err := b.Fit(context.Background(), wednesday(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	if f.Best.Points >= f.AsWritten.Points || !f.Best.Day.Possible() {
		t.Fatalf("nothing better than %v: %v", f.AsWritten.Against, f.Best.Against)
	}
	if f.Tried < 10 || len(f.Others) == 0 {
		t.Errorf("tried %d, others %d", f.Tried, len(f.Others))
	}
	got := f.Best.Day.Bake
	if p := got.Levain.Prefermented; p.Compare(b.Levers.Prefermented[0]) < 0 ||
		p.Compare(b.Levers.Prefermented[1]) > 0 {
		t.Errorf("prefermented flour of %v is out of bounds", p)
	}
	if c := got.Mixing.Temperature; c.Compare(b.Levers.Temperature[0]) < 0 || c.Compare(b.Levers.Temperature[1]) > 0 {
		t.Errorf("a dough at %v is out of bounds", c)
	}
	for i := range f.Others {
		if f.Others[i].Points < f.Best.Points {
			t.Error("the best is not the best")
		}
	}
	// The bake itself is not touched.
	if b.Levain.Prefermented != quantity.NewPercent(3) {
		t.Error("the bake was changed")
	}
}

func TestFitLeavesAGoodPlanAlone(t *testing.T) {
	b := hall()
	b.Levers.Temperature = []quantity.Temperature{quantity.Celsius(25), quantity.Celsius(27)}
	f, err := b.Fit(context.Background(), wednesday(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Best.Changes) != 0 {
		t.Errorf("a plan with %v was changed: %v", f.AsWritten.Against, f.Best.Changes)
	}
}

func TestLeversAreChecked(t *testing.T) {
	b := hall()
	b.Levers = Levers{
		Prefermented: []quantity.Percent{
			quantity.NewPercent(20),
		}, Inoculation: []quantity.Percent{quantity.NewPercent(50), quantity.NewPercent(10)},
		Temperature: []quantity.Temperature{
			{},
			quantity.Celsius(200),
		}, Box: []quantity.Temperature{quantity.Celsius(1), quantity.Celsius(2)},
		Retard: []quantity.Elapsed{-1, 1},
	}
	_, err := b.Fit(context.Background(), wednesday(t), nil)
	const want = "levers.prefermented out of range; levers.inoculation[1] out of range; levers.temperature[0] required; " +
		"levers.temperature[1] out of range; levers.box[0] out of range; levers.box[1] out of range; " +
		"levers.retard[0] out of range; levers.retard[1] out of range"
	if got := trial.Refused(err); got != want {
		t.Error(got)
	}
	if !(Levers{}).IsZero() || b.Levers.IsZero() {
		t.Error("IsZero")
	}
}

func TestFitStopsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithTimeout(context.Background(), 100*time.Millisecond)
	defer cancel()
	b := slow()
	b.Levers.Inoculation = []quantity.Percent{quantity.NewPercent(10), quantity.NewPercent(60)}
	start := time.Now()
	if f, err := b.Fit(ctx, wednesday(t), nil); err == nil && f.Tried > 60 {
		t.Errorf("tried %d in %v", f.Tried, time.Since(start))
	}
}

// What is left out could not have been told: the best and its rivals are those of planning every setting.
func TestFitLeavesOutOnlyWhatCannotBeTold(t *testing.T) {
	b := slow()
	told := []int{}
	f, err := b.Fit(context.Background(), wednesday(t), func(tried, left int) { told = append(told, tried, left) })
	if err != nil {
		t.Fatal(err)
	}
	all := []Choice{f.AsWritten}
	for _, set := range b.byDistance(b.settings()) {
		full := set.bake.withDefaults()
		day, err := full.planFor(context.Background(), f.AsWritten.Day.Wanted, wednesday(t))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, b.choice(day, set.bake))
	}
	tried := len(all)
	all = ranked(all)
	for i, c := range append([]Choice{f.Best}, f.Others...) {
		if c.Points != all[i].Points || len(c.Changes) != len(all[i].Changes) {
			t.Errorf("number %d has %v points and %v, and not %v and %v", i, c.Points, c.Changes, all[i].Points, all[i].Changes)
		}
	}
	if len(f.Others) != mostOthers || f.Tried >= tried {
		t.Errorf("tried %d of %d, %d others", f.Tried, tried, len(f.Others))
	}
	for i := 3; i < len(told); i += 2 {
		if told[i] >= told[i-2] || told[i] < 1 || told[i-1] < told[i-3] {
			t.Errorf("progress %v", told)
		}
	}
	if len(told) == 0 || told[0] != 1 || told[1] != tried-1 {
		t.Errorf("progress %v of %d", told, tried)
	}
}

// Nothing speaks against the bake as written: nothing else is planned.
func TestFitEndsAtOnceWhenNothingIsWrong(t *testing.T) {
	b := rolls()
	b.Levers = Levers{Temperature: slow().Levers.Temperature}
	f, err := b.Fit(context.Background(), wednesday(t), func(int, int) { t.Error("another setting was planned") })
	if err != nil || f.AsWritten.Points != 0 || f.Tried != 1 {
		t.Errorf("tried %d against %v, %v", f.Tried, f.AsWritten.Against, err)
	}
}

// Five levers at once: 640 settings, few of which need planning.
func BenchmarkFitWithFiveLevers(bench *testing.B) {
	b := fiveLevers()
	for bench.Loop() {
		f, err := b.Fit(context.Background(), wednesday(bench), nil)
		if err != nil {
			bench.Fatal(err)
		}
		bench.ReportMetric(float64(f.Tried), "tried")
	}
}

func fiveLevers() Bake {
	b := slow()
	b.Bulk.Box = quantity.Celsius(22)
	b.Levers.Inoculation = []quantity.Percent{quantity.NewPercent(10), quantity.NewPercent(60)}
	b.Levers.Box = []quantity.Temperature{quantity.Celsius(20), quantity.Celsius(28)}
	b.Levers.Retard = []quantity.Elapsed{quantity.Elapsed(6 * time.Hour), quantity.Elapsed(36 * time.Hour)}
	return b
}
