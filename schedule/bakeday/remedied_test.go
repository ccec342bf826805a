package bakeday

import (
	"context"
	"errors"
	"slices"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
	"github.com/google/go-cmp/cmp"
)

// asPlanned is the order as the planner has it.
func (d drawnDay) asPlanned(t *testing.T) Order {
	t.Helper()
	whole, err := d.whole()
	for i := range whole.Bakes {
		b, wrong := whole.Bakes[i].inPercent()
		whole.Bakes[i] = b.withDefaults()
		err = errors.Join(err, wrong)
	}
	if err != nil {
		t.Fatal(err)
	}
	return whole
}

// planDrawn plans a random day that cannot be.
func planDrawn(t *testing.T, seed int) (drawnDay, KitchenDay) {
	t.Helper()
	d := someDay(randomly(seed))
	k, err := d.Plan(context.Background(), d.clock(t))
	if err != nil || k.Possible() {
		t.Fatalf("day %d: possible %v, %v", seed, k.Possible(), err)
	}
	return d, k
}

// What a timetable says would help, a shorter rest in the cold for one, moves the dough by as much, so that often it
// does not: that is no way out, and those that are named are.
func TestWaysOutThatHelpOnlyOnPaperAreNotNamed(t *testing.T) {
	none, more := 0, 0
	for _, seed := range []int{0, 5, 46, 77, 102} {
		d, k := planDrawn(t, seed)
		helps := func(m schedule.Member) bool {
			again, ok := written(d.Order, k, m)
			next, err := again.Plan(context.Background(), d.clock(t))
			return ok && err == nil && next.Possible()
		}
		named := waysTried(k).remedies
		for _, m := range k.Timetable.Conflict.Remedies() {
			if m.Wanted {
				continue
			}
			at := slices.IndexFunc(named, func(n schedule.Member) bool {
				return n.Rule == m.Rule && n.Step == m.Step &&
					n.Words == m.Words
			})
			switch {
			case at < 0:
				none++
				for _, by := range moreByEach {
					if wide, ok := m.Widened(by); ok && helps(wide) {
						t.Errorf("day %d: %v (%v) helps and is not named", seed, m.Words, wide.Remedy)
					}
				}
			case named[at].Change > m.Change:
				if more++; helps(m) {
					t.Errorf("day %d: %v helps, named is %v", seed, m.Remedy, named[at].Remedy)
				}
				fallthrough
			default:
				if !helps(named[at]) || !slices.Contains(k.Data().Why.Remedies, ruleData(named[at])) {
					t.Errorf("day %d: %v (%v) does not help, or is not told", seed, m.Words, named[at].Remedy)
				}
			}
		}
	}
	if none == 0 || more == 0 {
		t.Errorf("%d did not help at all, %d with more", none, more)
	}
	if _, k := planDrawn(t, 3); len(k.tried.together)+len(k.Data().Why.Together) > 0 ||
		len(k.Timetable.Conflict.Together) == 0 {
		t.Error("changes that do not help together are named")
	}
}

// waysTried are the ways out that were tried, of a day of one bread or of several.
func waysTried(k KitchenDay) tried {
	if len(k.Breads) == 1 {
		return k.Breads[0].tried
	}
	return k.tried
}

// What time ran out for is not named, and that time ran out is said.
func TestWaysOutThatWereNotTriedAreNotNamed(t *testing.T) {
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	for _, seed := range []int{0, 24} {
		d, k := planDrawn(t, seed)
		whole := d.asPlanned(t)
		k.TimeRanOut = false
		if got := whole.tries(ended, &k, d.clock(t)); !got.done || len(got.remedies) > 0 || !k.TimeRanOut {
			t.Errorf("%d are named; time ran out: %v", len(got.remedies), k.TimeRanOut)
		}
	}
}

// A change is written into a bake as far as a bake can say it.
func TestWhatABakerMayAllow(t *testing.T) {
	hours := func(h float64) quantity.Elapsed { return quantity.Elapsed(h * float64(time.Hour)) }
	step := func(kind schedule.StepKind, thing string) schedule.DayStep {
		return schedule.DayStep{Kind: kind, Thing: thing}
	}
	b := hall()
	b.Retard = &Retard{AtLeast: hours(8), AtMost: hours(14)}
	b.Preferments = []PrefermentWork{{Name: "biga", AtLeast: hours(10), AtMost: hours(16)}}
	b.Soakers = []SoakerWork{{Name: "seeds", AtLeast: hours(1), AtMost: hours(1)}}
	shorter := func(h float64) schedule.Member { return schedule.Member{Easing: schedule.Shorter, Change: hours(h)} }
	longer := func(h float64) schedule.Member { return schedule.Member{Easing: schedule.Longer, Change: hours(h)} }
	for _, c := range []struct {
		step schedule.DayStep
		m    schedule.Member
		ok   bool
		want func(*Bake) // what the bake is then
	}{
		{step(schedule.Retard, ""), shorter(7.5), true,
			func(b *Bake) { b.Retard = &Retard{AtLeast: hours(0.5), AtMost: hours(14)} }},
		{step(schedule.Retard, ""), shorter(7.6), false, nil},
		{step(schedule.Retard, ""), longer(82), true, func(b *Bake) {
			b.Retard = &Retard{AtLeast: hours(8),
				AtMost: hours(96)}
		}},
		{step(schedule.Retard, ""), longer(82.1), false, nil},
		{step(schedule.Ripen, "biga"), shorter(2), true, func(b *Bake) { b.Preferments[0].AtLeast = hours(8) }},
		{step(schedule.Ripen, "biga"), longer(2), true, func(b *Bake) { b.Preferments[0].AtMost = hours(18) }},
		{step(schedule.Stand, "seeds"), shorter(0.95), false, nil},
		{step(schedule.Stand, "seeds"), longer(3), true, func(b *Bake) { b.Soakers[0].AtMost = hours(4) }},
		{step(schedule.Stand, "nothing"), longer(3), false, nil},
		{step(schedule.Bulk, ""), longer(3), false, nil},
		{step(schedule.Cool, ""), longer(3), true, func(b *Bake) { b.Loaves.FreshWithin = hours(15) }},
		{step(schedule.Cool, ""), longer(7 * 24), false, nil},
	} {
		planned, got := b, b
		planned.Loaves.FreshWithin = hours(12)
		if ok := got.allow(planned, c.step, c.m); ok != c.ok {
			t.Errorf("%v by %v %v: %v", c.step.Kind, c.m.Easing, c.m.Change, ok)
			continue
		}
		if !c.ok {
			continue
		}
		want := b
		want.Preferments, want.Soakers = slices.Clone(b.Preferments), slices.Clone(b.Soakers)
		c.want(&want)
		if diff := cmp.Diff(asText(t, want), asText(t, got)); diff != "" {
			t.Errorf("%v by %v %v:\n%s", c.step.Kind, c.m.Easing, c.m.Change, diff)
		}
	}
	if b.Retard.AtLeast != hours(8) || b.Preferments[0].AtLeast != hours(10) || b.Soakers[0].AtMost != hours(1) {
		t.Error("the bake as it was written was changed")
	}
}

// asText is a bake as its text, for a comparison.
func asText(t *testing.T, b Bake) string {
	t.Helper()
	text, err := b.MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// One absence of several gives way, as it is said, and no other one.
func TestOneAbsenceGivesWay(t *testing.T) {
	at := func(h int) time.Time { return time.Date(2026, 11, 27, h, 0, 0, 0, time.UTC) }
	words := absence(wallclock.MustHabit("away 09:00 to 15:00"))
	other := absence(wallclock.MustHabit("closed 09:00 to 15:00"))
	all := []schedule.Span{{From: at(1), To: at(5), Words: words}, {From: at(9), To: at(15), Words: other},
		{From: at(9), To: at(15), Words: words}, {From: at(9), To: at(16), Words: words}}
	m := schedule.Member{Closed: &schedule.Span{From: at(9), To: at(15)}, Change: quantity.Elapsed(time.Hour)}
	m.Rule, m.Other, m.Words = schedule.Absence, baker, words
	for easing, want := range map[schedule.Easing][]schedule.Span{
		schedule.Dropped: {all[0], all[1], all[3]},
		schedule.Begins:  {all[0], all[1], {From: at(10), To: at(15), Words: words}, all[3]},
		schedule.Ends:    {all[0], all[1], {From: at(9), To: at(14), Words: words}, all[3]},
	} {
		m.Easing = easing
		p := schedule.Problem{Resources: []schedule.Resource{{ID: "oven", Closed: all}, {ID: baker, Closed: all}}}
		got := reliefOf([]schedule.Member{m})(p)
		if diff := cmp.Diff(want, got.Resources[1].Closed, sameWords, sameTimes); diff != "" {
			t.Errorf("%v: %s", easing, diff)
		}
		if diff := cmp.Diff(all, got.Resources[0].Closed, sameWords, sameTimes); diff != "" ||
			len(p.Resources[1].Closed) != 4 {
			t.Errorf("%v: another one gave way too: %s", easing, diff)
		}
	}
}

// Wanted times move together with the changes, hands are added, and what nobody can write is no way out: an absence
// from a time of day that comes twice.
func TestWhatIsChangedWithTheDay(t *testing.T) {
	o := sunday()
	k := planAll(t, o)
	whole, err := o.whole()
	if err != nil {
		t.Fatal(err)
	}
	change := quantity.Elapsed(20 * time.Minute)
	for _, c := range []struct {
		m    schedule.Member
		want time.Duration
	}{
		{schedule.Member{Wanted: true, Easing: schedule.Earlier, Change: change}, -20 * time.Minute},
		{schedule.Member{Wanted: true, Easing: schedule.Later, Change: change}, 20 * time.Minute},
		{schedule.Member{Easing: schedule.Later, Change: change}, 0},
	} {
		if got := wantedElse([]schedule.Member{{}, c.m}); got != c.want {
			t.Errorf("%v: %v", c.m, got)
		}
	}
	hand := schedule.Member{More: 2}
	hand.Rule, hand.Other = schedule.Capacity, hands
	wanted := schedule.Member{Wanted: true, Easing: schedule.Later, Change: change}
	again, _, ok := whole.allowing(&k, []schedule.Member{hand, wanted})
	if !ok || again.Kitchen.Hands != 3 || again.Bakes[1].Kitchen.Hands != 3 || o.Kitchen.Hands != 0 {
		t.Errorf("%v, %d pairs of hands", ok, again.Kitchen.Hands)
	}
	hand.Other = sharedOven
	if _, _, ok := whole.allowing(&k, []schedule.Member{hand}); ok {
		t.Error("another oven is bought")
	}
	nobody := schedule.Member{Easing: schedule.Longer, Change: change}
	nobody.Rule, nobody.Step = schedule.StepMax, "Nobody/cool"
	if _, _, ok := whole.allowing(&k, []schedule.Member{nobody}); ok {
		t.Error("a bread that is not there was changed")
	}
	nobody.Step = "Buns/cool"
	again, _, ok = whole.allowing(&k, []schedule.Member{nobody})
	if !ok || again.Bakes[2].Loaves.FreshWithin != quantity.Elapsed(12*time.Hour)+change ||
		again.Bakes[0].Loaves.FreshWithin != 0 {
		t.Errorf("%v, fresh within %v", ok, again.Bakes[2].Loaves.FreshWithin)
	}
	// The clocks of Zurich are put back at 03:00 on 25 October 2026.
	asleep := schedule.Member{Closed: &schedule.Span{From: time.Date(2026, 10, 24, 21, 30, 0, 0, time.UTC),
		To: time.Date(2026, 10, 25, 4, 0, 0, 0, time.UTC)}}
	asleep.Rule = schedule.Absence
	for _, c := range []struct {
		easing schedule.Easing
		change time.Duration
		ok     bool
	}{
		{schedule.Begins, 2 * time.Hour, true}, {schedule.Begins, 3 * time.Hour, false},
		{schedule.Begins, 4*time.Hour + 29*time.Minute, false}, {schedule.Begins, 270 * time.Minute, true},
		{schedule.Ends, 150 * time.Minute, false}, {schedule.Ends, 3 * time.Hour, false},
		{schedule.Ends, 241 * time.Minute, true},
	} {
		asleep.Easing, asleep.Change = c.easing, quantity.Elapsed(c.change)
		if _, _, ok := whole.allowing(&k, []schedule.Member{asleep}); ok != c.ok {
			t.Errorf("an absence that %v by %v can be written: %v", c.easing, c.change, ok)
		}
	}
}

// What is changed together gives more together, as far as each part of it can.
func TestGivingMoreTogether(t *testing.T) {
	longer := schedule.Member{Enough: true, Easing: schedule.Longer, Change: quantity.Elapsed(time.Hour)}
	longer.Rule = schedule.StepMax
	wanted := schedule.Member{Enough: true, Wanted: true, Easing: schedule.Later, Change: quantity.Elapsed(time.Hour)}
	got, ok := giving([]schedule.Member{longer, wanted}, moreByEach[1])
	if !ok || len(got) != 2 || got[0].Change != quantity.Elapsed(75*time.Minute) || got[1].Change != wanted.Change {
		t.Error(got, ok)
	}
	if _, ok := giving([]schedule.Member{wanted}, moreByEach[1]); ok {
		t.Error("nothing of it gives more")
	}
	if _, ok := giving([]schedule.Member{wanted}, 0); !ok {
		t.Error("it helps as it is")
	}
}
