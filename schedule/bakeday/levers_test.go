package bakeday

import (
	"context"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
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
	fit, err := slow().Fit(context.Background(), KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zone})
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
	f, err := b.Fit(context.Background(), wednesday(t))
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
	f, err := b.Fit(context.Background(), wednesday(t))
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
	_, err := b.Fit(context.Background(), wednesday(t))
	if got := len(quantity.InputErrors(err)); got != 6 {
		t.Errorf("%d faults found: %v", got, err)
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
	if f, err := b.Fit(ctx, wednesday(t)); err == nil && f.Tried > 60 {
		t.Errorf("tried %d in %v", f.Tried, time.Since(start))
	}
}
