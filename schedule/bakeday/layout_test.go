package bakeday

import (
	"context"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// Folds come at the interval asked for, counted from the start of the bulk.
func TestFoldsKeepTheirInterval(t *testing.T) {
	for _, every := range []int{30, 40, 45} {
		b := hall()
		b.Bulk.Folds, b.Bulk.FoldEvery = 3, quantity.Elapsed(time.Duration(every)*time.Minute)
		d := plan(t, b)
		bulk := step(t, d, "bulk")
		for i := range 3 {
			fold := step(t, d, nth(idFold, i))
			if got, want := fold.Start.Sub(bulk.Start), time.Duration((i+1)*every)*time.Minute; got != want {
				t.Errorf("every %d min: fold %d after %v, want %v", every, i+1, got, want)
			}
		}
		if d.foldsMoved() != 0 {
			t.Error("moved by", d.foldsMoved())
		}
	}
}

// A fold is moved only when another rule forces it, as little as that asks for, and the plan says so.
func TestAFoldGivesWayAndSaysSo(t *testing.T) {
	b := hall()
	plain := plan(t, b)
	at := step(t, plain, "fold-2").Start.In(plain.Zone)
	from := wallclock.ClockOf(at.Add(-20*time.Minute), plain.Zone)
	to := wallclock.ClockOf(at.Add(3*time.Minute), plain.Zone)
	b.Kitchen.Away = append(b.Kitchen.Away, wallclock.Habit{From: from, To: to, Days: wallclock.On(time.Friday)})
	// The plan can only be where it was: fed, mixed and shaped at the same times.
	p, err := b.withDefaultsAt(plain)
	if err != nil {
		t.Fatal(err)
	}
	moved := p.foldsMoved().Duration()
	if !p.Possible() || moved == 0 || moved > 10*time.Minute {
		t.Fatalf("moved by %v: %v", moved, p.Timetable)
	}
	said := 0
	for _, n := range p.notes() {
		if n.ID() == "bakeday.note_folds_moved" {
			said++
		}
	}
	if said != 1 {
		t.Errorf("said %d times", said)
	}
}

// alone is the company of a bread that has none.
func alone(b *Bake, zone *time.Location) company {
	return company{closed: (&planning{kitchen: &b.Kitchen, clock: KitchenClock{Zone: zone}}).closed}
}

// withDefaultsAt plans around the same moments with the bulk fixed where it was.
func (b Bake) withDefaultsAt(plain Day) (Day, error) {
	full := b.withDefaults()
	d := plain
	d.Bake = full
	bulk, _ := plain.Timetable.Step("bulk")
	for _, folds := range []int{0, 5, 10} {
		l := layout{folds: quantity.Elapsed(time.Duration(folds) * time.Minute)}
		n, err := full.network(d.Now, d.Wanted, d.Zone, d.times(), alone(&full, d.Zone))
		if err != nil {
			return d, err
		}
		p := n.layOut(l)
		p.Bounds = append(p.Bounds,
			schedule.Bound{Step: "bulk", Edge: schedule.Start, Earliest: bulk.Start, Latest: bulk.Start})
		if d.Timetable, err = p.Latest(context.Background()); err != nil || len(d.Timetable.Steps) > 0 {
			return d, err
		}
	}
	return d, nil
}

// Of the plans that fit, one with the most room for the dough is chosen before the latest.
func TestRoomBeforeLateness(t *testing.T) {
	for _, b := range []Bake{hall(), rolls(), sticks()} {
		d := plan(t, b)
		full := b.withDefaults()
		for i, l := range layouts(true) {
			l.folds = everFar
			n, err := full.network(d.Now, d.Wanted, d.Zone, d.times(), alone(&full, d.Zone))
			if err != nil {
				t.Fatal(err)
			}
			p := n.layOut(l)
			ok, err := p.Possible(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			if i < d.layout && ok {
				t.Errorf("%s: has room for %v, though %v was to be had", b.Name, d.Room, l)
			}
			if i == d.layout && (!ok || d.Room != quantity.NewPercent(100*l.share)) {
				t.Errorf("%s: says %v, has %v", b.Name, d.Room, l)
			}
		}
		// With poolish and scald on the same hands less is proven than there is room for.
		if d.Robust.Share+0.01 < d.Room.Fraction() && len(b.Preferments) == 0 || d.Robust.Share < 0.25 {
			t.Errorf("%s: room for %v, survives %v", b.Name, d.Room, d.Robust.Share)
		}
		if got := d.Data().Survives; got != quantity.NewPercent(100*d.Robust.Share) {
			t.Errorf("%s: the data say %v", b.Name, got)
		}
	}
}

// A wish by weekday that cannot be met any more says why, and what would be the nearest, before the next week.
func TestAMissedWeekdaySaysWhy(t *testing.T) {
	clock := KitchenClock{Now: time.Date(2026, 11, 28, 5, 0, 0, 0, time.UTC), Zone: zurich(t)}
	d, err := hall().Plan(context.Background(), clock)
	if err != nil {
		t.Fatal(err)
	}
	m := d.Data().Missed
	if m == nil || m.Why == nil || m.Why.Reason != Clash || m.Why.Short <= 0 || m.Why.Later == nil ||
		!m.Why.Later.Before(d.Wanted) {
		t.Fatalf("%+v", m)
	}
	if m.Why.Says.ID() != "bakeday.why_misses" {
		t.Error(m.Why.Says)
	}
}

// What is in the way is said in one sentence, once; the remedies are few, bend what a baker can bend, and the nearest
// times that work are in waking hours when there are such.
func TestWhyInABakersWords(t *testing.T) {
	b := hall()
	b.Wanted = OnDate(wallclock.MustMoment("2026-11-26 12:30"))
	d := plan(t, b)
	w := d.Data().Why
	if w == nil || len(w.Remedies) > 5 {
		t.Fatalf("%+v", w)
	}
	for _, r := range append(w.Rules, w.Remedies...) {
		if r.Remedy.IsZero() {
			continue
		}
		switch r.Rule {
		case schedule.Absence, schedule.FixedTime:
		case schedule.StepMin, schedule.StepMax:
			if r.Step != "retard" && r.Step != "cool" {
				t.Errorf("nobody can bend %v: %v", r.Words, r.Remedy)
			}
		default:
			t.Errorf("%v of %s: %v", r.Rule, r.Step, r.Remedy)
		}
	}
	if w.Later == nil {
		t.Fatal("no later time")
	}
	if h := w.Later.Hour(); h < 6 || h >= 23 {
		t.Errorf("the nearest time is %v, while asleep", w.Later)
	}
	b.Wanted = OnDate(wallclock.MomentOf(*w.Later, d.Zone))
	if again := plan(t, b); !again.Possible() {
		t.Errorf("%v was said to work", w.Later)
	}
}

// What is said of a dough that the cold alone brings too far fits its numbers.
func TestWhatTheColdDoesFitsItsNumbers(t *testing.T) {
	b := hall()
	for _, rise := range []float64{10, 12, 15, 20, 25} {
		b.Bulk.Rise = quantity.NewPercent(rise)
		b.Levain.Prefermented = quantity.NewPercent(20)
		d := plan(t, b)
		if d.Rising.Feasible {
			continue
		}
		more := d.Rising.Unrisen.Compare(b.Bulk.Rise) > 0
		if id := d.Data().Why.Says.ID(); more != (id == "bakeday.why_rises_too_far") {
			t.Errorf("%v of %v: %s", d.Rising.Unrisen, b.Bulk.Rise, id)
		}
	}
}
