package bench_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

func ExampleKitchenNow_Expected() {
	zone, err := time.LoadLocation("Europe/Zurich")
	if err != nil {
		fmt.Println(err)
		return
	}
	now, err := bench.KitchenUnder{Order: bakeday.Order{Bakes: []bakeday.Bake{hall(new(testing.T))}}}.At(
		context.Background(), bakeday.KitchenClock{Now: time.Date(2026, 12, 3, 18, 0, 0, 0, zone), Zone: zone})
	for _, e := range now.Expected() {
		fmt.Println(e.Says, "-", e.Observation)
	}
	fmt.Println(err)
	// Output:
	// to keep to this plan - following the plan for Saturday 5 December 2026, 12:30
	// <nil>
}

// What there is to write down follows the day of both breads, and says what a loaf of the bake weighs.
func TestExpectedFollowsTheDay(t *testing.T) {
	made := at(4, 6, 0)
	kinds := func(k bench.KitchenNow) string {
		var out []string
		for _, e := range k.Expected() {
			if err := e.Observation.Check(); err != nil && e.Observation.Kind != bench.SawStep {
				t.Errorf("%v cannot be written down: %v", e.Observation, err)
			}
			if e.Says.IsZero() {
				t.Errorf("%v is told in no words", e.Observation)
			}
			out = append(out, strings.Trim(e.Observation.Bread+" "+e.Observation.Kind.String(), " "))
		}
		return strings.Join(out, ", ")
	}
	start := together(t, made)
	if got := kinds(start); got != "hall plan, rolls plan" {
		t.Errorf("before it is followed: %s", got)
	}
	start = together(t, made, following(made)...)
	if got := kinds(start); got != "step" {
		t.Errorf("at first: %s", got)
	}
	bulk := begins(t, start, "hall", "bulk").Add(5 * time.Minute)
	if got := kinds(together(t, bulk, following(made)...)); !strings.Contains(got, "hall mix, hall rise, hall ready") {
		t.Errorf("in bulk: %s", got)
	}
	// An hour later the dough still was mixed when it was mixed; how far it has risen is of now.
	for _, later := range []time.Duration{5 * time.Minute, time.Hour} {
		for _, e := range together(t, begins(t, start, "hall", "bulk").Add(later), following(made)...).Expected() {
			o, want := e.Observation, begins(t, start, "hall", "bulk")
			if o.Kind != bench.SawMixed {
				want = want.Add(later)
			}
			if o.Bread == "hall" && !o.At.Equal(want) {
				t.Errorf("%v after mixing, %v is of %v, not of %v", later, o.Kind, o.At, want)
			}
			if later == time.Hour && o.Bread == "hall" && o.Rise != nil && o.Rise.Rise.Points() > 10 {
				t.Errorf("a levain dough is said to have risen by %v in an hour", o.Rise.Rise)
			}
		}
	}
	over := together(t, at(5, 13, 0), following(made)...).Expected()
	for _, e := range over {
		w := e.Observation.Weights
		if w == nil || e.Observation.Bread != "hall" {
			continue
		}
		if w.Out != quantity.Grams(780) || w.In.Compare(quantity.Grams(850)) < 0 || w.In.Compare(quantity.Grams(950)) > 0 {
			t.Errorf("a loaf is said to weigh %v, and %v when cool", w.In, w.Out)
		}
		return
	}
	t.Errorf("nothing is weighed at the end: %v", over)
}

// A wish by weekday that can no longer be met is planned for the week after; the bench says so too.
func TestTheWeekAfterIsSaid(t *testing.T) {
	wish, err := bakeday.ParseWish("Saturday 12:30")
	if err != nil {
		t.Fatal(err)
	}
	b := hall(t)
	b.Wanted = wish
	k, err := bench.KitchenUnder{Order: bakeday.Order{Bakes: []bakeday.Bake{b}}}.At(context.Background(),
		clock(at(5, 9, 0)))
	if err != nil {
		t.Fatal(err)
	}
	if !k.Day.Possible() || len(k.Report().Section("missed").Blocks) == 0 ||
		len(k.Breads[0].Report().Section("missed").Blocks) == 0 {
		t.Errorf("the plan for %v says %v", k.Breads[0].Wanted, k.Report())
	}
}

// Whatever goes on at once, raw dough is warned of once: every room has the caution in words of its own.
func TestRawDoughIsWarnedOfOnce(t *testing.T) {
	made, warned := at(4, 6, 0), 0
	for now := made; now.Before(at(5, 18, 0)); now = now.Add(20 * time.Minute) {
		n := 0
		for _, c := range together(t, now, following(made)...).Report().Cautions {
			if c.Subject == "raw dough" {
				n++
			}
		}
		if n > 1 {
			t.Fatalf("%v: warned of %d times", now, n)
		}
		warned += n
	}
	if warned == 0 {
		t.Error("never warned of")
	}
}
