package bakeday

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

func ExampleDay_Replan() {
	zone := time.FixedZone("Europe/Zurich", 3600)
	day, err := hall().Plan(context.Background(), KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC),
		Zone: zone})
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := day.Replan(context.Background(), Late{Step: "shape", By: quantity.Elapsed(40 * time.Minute)})
	fmt.Println(r, err)
	for _, c := range r.Changes {
		fmt.Println(c)
	}
	// Output:
	// divide and shape begins at Fri 21:04 <nil>
	// bulk fermentation 40m longer
	// divide and shape moves to Fri 21:04
	// cold retard 40m shorter, from Fri 21:44
}

func TestReplanKeepsWhatHappenedAndTheWantedTime(t *testing.T) {
	d := plan(t, hall())
	for _, by := range []time.Duration{0, 40 * time.Minute, -20 * time.Minute, 80 * time.Minute} {
		r, err := d.Replan(context.Background(), Late{Step: "shape", By: quantity.Elapsed(by)})
		if err != nil {
			t.Fatal(by, err)
		}
		if len(r.Timetable.Steps) == 0 {
			t.Fatalf("%v: %v", by, r)
		}
		shape, _ := r.Timetable.Step(idShape)
		was, _ := d.Timetable.Step(idShape)
		if got := shape.Start.Sub(was.Start); got != by {
			t.Errorf("late by %v: shaping moved by %v", by, got)
		}
		for _, name := range []string{idFeed, nth(idMix, 0)} {
			a, _ := d.Timetable.Step(name)
			b, _ := r.Timetable.Step(name)
			if !a.Start.Equal(b.Start) {
				t.Errorf("late by %v: %s moved although it was done", by, name)
			}
		}
		if r.Moved != 0 || !r.Wanted.Equal(d.Wanted) {
			t.Errorf("late by %v: the retard can give way, but the wanted time moved by %v", by, r.Moved)
		}
		if r.Risen.IsZero() || r.Allowed.IsZero() {
			t.Errorf("late by %v: no word about the rise", by)
		}
	}
}

func TestReplanMovesTheWantedTimeWhenItMust(t *testing.T) {
	d := plan(t, hall())
	r, err := d.Replan(context.Background(), Late{Step: "bake-3", By: quantity.Elapsed(50 * time.Minute)})
	if err != nil {
		t.Fatal(err)
	}
	if r.Moved <= 0 || r.Why == nil || len(r.Timetable.Steps) == 0 {
		t.Errorf("moved %v: %v", r.Moved, r)
	}
}

func TestReplanRefuses(t *testing.T) {
	d := plan(t, hall())
	for name, late := range map[string]Late{
		"no such step": {Step: "knit"}, "many": {Step: "bake"}, "nothing": {},
		"far":  {Step: "shape", By: quantity.Elapsed(1000 * time.Hour)},
		"past": {Step: "feed", By: quantity.Elapsed(-47 * time.Hour)},
	} {
		if _, err := d.Replan(context.Background(), late); len(quantity.InputErrors(err)) == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := (Day{}).Replan(context.Background(), Late{Step: "shape"}); !errors.Is(err, quantity.ErrInconsistent) {
		t.Errorf("an empty day: %v", err)
	}
}
