package bakeday

import (
	"context"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// atEight is a loaf from a levain that is ripe at 08:00, wanted the next day.
func atEight() (Bake, KitchenClock) {
	b := hall()
	b.Kitchen.Away, b.Loaves.Pieces = nil, 2
	b.Levain = &Levain{Prefermented: quantity.NewPercent(10), Hydration: quantity.NewPercent(100), RipeNow: true}
	b.Retard = &Retard{AtLeast: quantity.Elapsed(8 * time.Hour), AtMost: quantity.Elapsed(20 * time.Hour)}
	b.Wanted = OnDate(wallclock.MustMoment("2026-11-26 12:00"))
	return b, KitchenClock{Now: time.Date(2026, 11, 25, 7, 0, 0, 0, time.UTC)}
}

// A levain that is ripe now needs no feed: the day begins with it, and it is used while it is good.
func TestARipeLevainNow(t *testing.T) {
	b, clock := atEight()
	clock.Zone = zurich(t)
	d, err := b.Plan(context.Background(), clock)
	if err != nil {
		t.Fatal(err)
	}
	if !d.Possible() {
		t.Fatal(d.Data().Why.Says)
	}
	s := d.Data()
	if first := s.Steps[0]; first.ID != "ripen" || !first.Start.Equal(clock.Now) {
		t.Errorf("begins with %s at %v", first.ID, first.Start)
	}
	for _, step := range s.Steps {
		if step.ID == "feed" {
			t.Error("it is fed")
		}
	}
	for _, l := range s.Weigh {
		if l.Name == levainName {
			t.Error("it is weighed out of flour and water")
		}
	}
	mix := step(t, d, "mix-1")
	if good := d.Levain.Fed.Add(d.Levain.Ripeness.Until.Likely); mix.Start.After(good.Add(time.Minute)) ||
		mix.Start.Before(clock.Now) {
		t.Errorf("mixed at %v, good until %v", mix.Start, good)
	}
	// Wanted in four days it is past its best by then, and the answer says so.
	b.Wanted = OnDate(wallclock.MustMoment("2026-11-29 12:00"))
	late, err := b.Plan(context.Background(), clock)
	if err != nil || late.Possible() {
		t.Fatal(late.Possible(), err)
	}
	said := false
	for _, r := range late.Data().Why.Rules {
		said = said || r.Step == "ripen"
	}
	if !said {
		t.Error(late.Data().Why.Says)
	}
}

// A levain fed some hours ago ripens on from then; one fed long ago is past its best, which is said.
func TestALevainFedAgo(t *testing.T) {
	b, clock := atEight()
	clock.Zone = zurich(t)
	b.Levain.RipeNow, b.Levain.Inoculation = false, quantity.NewPercent(50)
	peak := time.Duration(0)
	for _, hours := range []int{2, 5} {
		b.Levain.FedAgo = quantity.Elapsed(time.Duration(hours) * time.Hour)
		d, err := b.Plan(context.Background(), clock)
		if err != nil || !d.Possible() {
			t.Fatal(hours, err, d.Timetable)
		}
		if got := clock.Now.Sub(d.Levain.Fed); got != time.Duration(hours)*time.Hour {
			t.Errorf("fed %v ago", got)
		}
		mix := step(t, d, "mix-1")
		if ripe := d.Levain.Fed.Add(d.Levain.Ripeness.Peak.Likely); mix.Start.Before(ripe.Add(-2 * time.Minute)) {
			t.Errorf("mixed at %v, ripe at %v", mix.Start, ripe)
		}
		peak = d.Levain.Ripeness.Peak.Likely
	}
	b.Levain.FedAgo = quantity.Elapsed(60 * time.Hour)
	d, err := b.Plan(context.Background(), clock)
	if err != nil {
		t.Fatal(err)
	}
	said := false
	for _, n := range d.Notes {
		said = said || n.ID() == "bakeday.note_levain_past"
	}
	if !said || peak <= 0 {
		t.Error("nobody says that it is past its best:", d.Notes)
	}
	b.Levain.CultureAtHand, b.Levain.FedAgo, b.Levain.RipeNow = quantity.Grams(20), 0, true
	if d, err = b.Plan(context.Background(), clock); err != nil ||
		d.Levain.Short != d.Levain.Build.Made.Sub(quantity.Grams(20)) {
		t.Errorf("short by %v, %v", d.Levain.Short, err)
	}
	b.Levain.FedAgo = quantity.Elapsed(time.Hour)
	if err := b.Check(clock); len(quantity.InputErrors(err)) != 1 {
		t.Error("ripe now and fed an hour ago:", err)
	}
}
