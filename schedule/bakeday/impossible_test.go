package bakeday

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// Of a bread that could not be there by itself it is said what is in its way, and no time by which all are missed.
func TestBreadsThatCouldNotBeByThemselvesMissNothingTogether(t *testing.T) {
	now := wednesday(t)
	now.Now = time.Date(2026, 11, 26, 6, 0, 0, 0, now.Zone)
	o := wantedTooSoon()
	k, err := o.Plan(context.Background(), now)
	if err != nil || k.Possible() || len(k.alone) != 1 || k.Timetable.Conflict.Short <= 0 {
		t.Fatal(k.Possible(), len(k.alone), err)
	}
	if w := k.Data().Why; w.Short != 0 || w.Reason != Clash {
		t.Errorf("%v, missed by %v", w.Reason, w.Short)
	}
}

// What all breads may do together is a way out only where no one of them is moved, and where each could be by itself.
func TestWhenAllMayWaitLonger(t *testing.T) {
	ctx := context.Background()
	o := sunday()
	o.Bakes = slices.Concat(o.Bakes, o.Bakes[1:])
	for i := range o.Bakes {
		o.Bakes[i].Name = fmt.Sprint("Bread ", i+1)
		o.Bakes[i].Wanted = OnDate(wallclock.MustMoment("2026-11-29 15:00"))
		o.Bakes[i].Loaves.FreshWithin, o.Bakes[i].Loaves.Warm = minutes(5), false
		o.Bakes[i].Loaves.Style = bake.LeanHearth
	}
	k := planAll(t, o)
	if all := k.oneMoved(ctx); len(k.alone) > 0 || len(all) != 1 || all[0].Wanted || all[0].Rule != schedule.StepMax {
		t.Errorf("%d could not be by themselves; %v", len(k.alone), all)
	}
	k.alone = k.Breads[:1]
	if all := k.oneMoved(ctx); len(all) > 0 {
		t.Errorf("one of them could not be by itself; %v", all)
	}
	_, moved := planDrawn(t, movedAlone)
	moved.alone = nil
	all := moved.oneMoved(ctx)
	for _, m := range all {
		if !m.Wanted || m.Rule != schedule.FixedTime {
			t.Errorf("beside breads that are moved: %v", m)
		}
	}
	if len(all) == 0 {
		t.Error("no bread is moved")
	}
}
