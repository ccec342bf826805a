package bakeday

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

// That the oven calls while the hands are busy is said of a day of several breads that can be.
func TestWhichDaysAreInterruptedByTheOven(t *testing.T) {
	k := planAll(t, sunday())
	load, _ := k.Timetable.Step("Loaf/bake-1")
	mix := schedule.Timed{Label: schedule.Label{ID: "Buns/mix-9", Bread: "Buns", Kind: schedule.Mix,
		Name: working.Say("mix")}, Start: load.Start.Add(-10 * time.Minute), End: load.Start.Add(10 * time.Minute)}
	k.Timetable.Steps = []schedule.Timed{load, mix}
	got := k.ovenCalls()
	if len(got) != 1 || !strings.Contains(got[0].String(), "is interrupted at the oven: Loaf goes in at ") {
		t.Errorf("%v", got)
	}
	one := k
	one.Breads = k.Breads[:1]
	if got := one.ovenCalls(); len(got) > 0 {
		t.Errorf("a bread interrupts itself: %v", got)
	}
	k.worked = false
	if got := k.ovenCalls(); k.Possible() || len(got) > 0 {
		t.Errorf("a day that cannot be: %v, %v", k.Possible(), got)
	}
}

// A step of the day goes on only after the clock of its plan, when it began as when it was seen.
func TestNothingHappensBeforeTheClockOfThePlan(t *testing.T) {
	k := planAll(t, sunday())
	shape, _ := k.Timetable.Step("Loaf/shape")
	d := midday{first: k.Timetable, timetable: k.Timetable, problem: k.problem, wanted: k.Breads[0].Wanted}
	before := k.problem.Anchor.Add(-time.Minute)
	gone := shape
	gone.ID = "Loaf/shape-9"
	for name, c := range map[string]struct {
		b  begun
		ok bool
	}{
		"as planned":          {begun{step: shape, at: shape.Start}, true},
		"seen in time":        {begun{step: shape, at: shape.Start, seen: shape.Start.Add(-5 * time.Minute)}, true},
		"no step of the day":  {begun{step: gone, at: shape.Start}, false},
		"begun before":        {begun{step: shape, at: before}, false},
		"seen before":         {begun{step: shape, at: shape.Start, seen: before}, false},
		"begun before, ended": {begun{step: shape, at: before, ended: shape.Start}, false},
	} {
		_, err := d.replan(context.Background(), c.b, nil)
		var wrong *quantity.InputError
		if c.ok && err != nil || !c.ok && (!errors.As(err, &wrong) || wrong.GoPath != "By" ||
			!errors.Is(err, quantity.ErrOutOfRange)) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A setting that costs as much as the best that is known, beside what the others cost, is not tried.
func TestSettingsThatCostTooMuchAreNotTried(t *testing.T) {
	o := early()
	o.Bakes[1].Levers = o.Bakes[0].Levers
	f, err := newFitting(o, planAll(t, o), wednesday(t))
	if err != nil {
		t.Fatal(err)
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	at := func(celsius float64, i int) Bake {
		b := f.written[i]
		b.Mixing.Temperature = quantity.Celsius(celsius)
		return b
	}
	for _, c := range []struct {
		name         string
		first, other float64 // their doughs: the whole way of a lever costs 20 points
		best         float64
		tried        bool
	}{
		{"the other costs it all", 26, 30, 20.1, false},
		{"what the bread itself costs now does not count", 30, 26, 20.1, true},
		{"nothing can be better than none", 26, 26, 0, false},
	} {
		f.now = []Bake{at(c.first, 0), at(c.other, 1)}
		f.best.Points, f.out.TimeRanOut = c.best, false
		f.move(ended, 0)
		if f.out.TimeRanOut != c.tried {
			t.Errorf("%s: tried %v", c.name, f.out.TimeRanOut)
		}
	}
}

// Wishes that lie two days apart are of one occasion, and no farther.
func TestTwoDaysAreOneOccasion(t *testing.T) {
	now := KitchenClock{Now: time.Date(2026, 11, 28, 8, 0, 0, 0, time.UTC), Zone: time.UTC} // a Saturday
	for second, day := range map[string]int{"Sunday 12:00": 6, "Sunday 12:01": 29, "Sunday 12:59": 29} {
		got, err := occasions(wished(t, "Friday 12:00", second), now)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff([]int{4, day}, []int{got[0][0].Day(), got[1][0].Day()}); diff != "" {
			t.Errorf("Friday 12:00 and %s:\n%s", second, diff)
		}
	}
}
