package bakeday

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// Breads that cannot be there by themselves are said to, each by what it misses alone; of more than three how many.
func TestBreadsThatCannotBeByThemselves(t *testing.T) {
	for n, more := range map[int]string{1: "", 3: "", 4: "; and so it is with 1 more bread",
		5: "; and so it is with 2 more breads"} {
		o := Order{Kitchen: hall().Kitchen}
		o.Kitchen.Away = nil
		for i := range 6 {
			b := rolls()
			b.Kitchen, b.Name, b.Loaves.Pieces = Kitchen{}, fmt.Sprint("Rolls ", i+1), 2
			b.Wanted = OnDate(wallclock.MustMoment("2026-11-29 15:00"))
			if i < n { // before anybody is up
				b.Wanted, b.Loaves.Warm = OnDate(wallclock.MustMoment("2026-11-28 07:00")), true
			}
			o.Bakes = append(o.Bakes, b)
		}
		k := planAll(t, o)
		says := k.Data().Why.Says.String()
		if k.Possible() || len(k.alone) != n || strings.Count(says, "is missed by") != min(n, 3) ||
			!strings.HasSuffix(says, more) ||
			more == "" && strings.Contains(says, "more bread") {
			t.Errorf("%d: %d alone, %s", n, len(k.alone), says)
		}
		if k.Data().Why.Short != 0 {
			t.Error("what all of them miss together is said of one")
		}
		first := o.Bakes[0]
		first.Kitchen = o.Kitchen
		d := plan(t, first)
		if want := "Rolls 1: " + d.Data().Why.Says.String(); !strings.HasPrefix(says, want) {
			t.Errorf("%s\nby itself: %s", says, want)
		}
	}
}

// The only bread that cannot be by itself is moved as far as it has to be, where the day then can be.
func TestTheOnlyOneIsMovedFar(t *testing.T) {
	for _, seed := range []int{18, 24, 38} {
		d, k := planDrawn(t, seed)
		far := 0
		for _, m := range k.Data().Why.Remedies {
			if m.Wanted && m.Change > moveMost {
				far++
				again, ok := moved1(d.Order, k, m)
				if next, err := again.Plan(context.Background(), d.clock(t)); !ok || err != nil || !next.Possible() {
					t.Errorf("day %d: %v does not help (%v)", seed, m.Remedy, err)
				}
			}
		}
		if far == 0 || len(k.alone) != 1 {
			t.Errorf("day %d: %d alone, %d moved far", seed, len(k.alone), far)
		}
	}
}

// The nearest times of a bread by itself are a way out of the day where nothing within two hours is, both ways.
func TestOneBreadIsMovedFar(t *testing.T) {
	o := sunday()
	k := planAll(t, o)
	d := k.Breads[1]
	at := func(h time.Duration) *time.Time { x := d.Wanted.Add(h * time.Hour); return &x }
	for _, c := range []struct {
		earlier, later *time.Time
		want           string
	}{
		{at(-3), at(4), "[4h later: Sun 17:00 3h earlier: Sun 10:00]"},
		{at(-2), at(2), "[]"},
		{nil, at(3), "[3h later: Sun 16:00]"},
		{at(-5), nil, "[5h earlier: Sun 08:00]"},
	} {
		d.Earlier, d.Later = c.earlier, c.later
		k.alone = []Day{d}
		var got []string
		for _, m := range k.aloneMoved() {
			if got = append(got, m.Remedy.String()); m.Step != "Focaccia/cool" || !m.Wanted {
				t.Error(m)
			}
		}
		if fmt.Sprint(got) != c.want {
			t.Errorf("%v, want %s", got, c.want)
		}
		if k.alone = append(k.alone, d); k.aloneMoved() != nil {
			t.Error("one of two is moved")
		}
	}
}

// The least move of a bread is the same as if every distance had been tried.
func TestTheLeastMove(t *testing.T) {
	moved := 0
	for _, seed := range []int{18, 24, 67, 96, 106, 116} {
		_, k := planDrawn(t, seed)
		var want []string
		for i, b := range k.problem.Bounds {
			for by := moveStep; b.Wanted && by <= moveMost; by += moveStep {
				if way, ok := k.movedBy(context.Background(), i, by); ok {
					want = append(want, k.wantedBy(b, way, by).Remedy.String())
					break
				}
			}
		}
		var got []string
		for _, m := range k.oneMoved(context.Background()) {
			if m.Wanted {
				got = append(got, m.Remedy.String())
			}
		}
		moved += len(got)
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("day %d: %v, one by one %v", seed, got, want)
		}
	}
	if moved < 3 {
		t.Errorf("%d moves", moved)
	}
}

// A nearest time at which somebody sleeps is moved on to when nobody does, for all breads.
func TestNearestTimesAreAwake(t *testing.T) {
	k := Kitchen{Asleep: []wallclock.Habit{wallclock.MustHabit("22:00 to 06:00")}}
	at := func(clock string) time.Time {
		x, err := time.ParseInLocation("2006-01-02 15:04", "2026-11-28 "+clock, zurich(t))
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	hours := func(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }
	for _, c := range []struct {
		wanted []string
		by     float64
		later  bool
		want   float64
	}{
		{[]string{"12:00"}, 5, true, 5},
		{[]string{"12:00"}, 11, true, 18},            // 23:00 becomes 06:00
		{[]string{"12:00"}, 10, true, 18},            // at bedtime
		{[]string{"12:00"}, -9, false, -14},          // 03:00 becomes 22:00
		{[]string{"12:00"}, -14, false, -14},         // at bedtime
		{[]string{"12:00"}, 18, true, 18},            // at getting up
		{[]string{"12:00", "15:00"}, 8, true, 18},    // the second would be at 23:00, then both are up
		{[]string{"12:00", "20:00"}, 3, true, 18},    // 06:00 and 14:00
		{[]string{"09:00", "20:00"}, -4, false, -11}, // 05:00 becomes 22:00, and 09:00
		{[]string{"08:00", "20:00"}, -1, false, -1},
	} {
		var wanted []time.Time
		for _, w := range c.wanted {
			wanted = append(wanted, at(w))
		}
		if got := k.awakeBy(wanted, hours(c.by), c.later, zurich(t)); got != hours(c.want) {
			t.Errorf("%v by %v: %v, want %v", c.wanted, hours(c.by), got, hours(c.want))
		}
	}
	k.Asleep = []wallclock.Habit{wallclock.MustHabit("00:00 to 12:00"), wallclock.MustHabit("12:00 to 00:00")}
	if got := k.awakeBy([]time.Time{at("12:00")}, hours(1), true, zurich(t)); got != hours(1) {
		t.Errorf("nobody is ever up: %v", got)
	}
}

// The nearest times of a day are told awake: nobody is asleep when a bread is wanted.
func TestTheDayMovesToWakingHours(t *testing.T) {
	o := sunday()
	for i := range o.Bakes {
		o.Bakes[i].Wanted = OnDate(wallclock.MustMoment("2026-11-28 06:45"))
		o.Bakes[i].Loaves.Warm, o.Bakes[i].Loaves.FreshWithin = false, quantity.Elapsed(2*time.Hour)
	}
	k := planAll(t, o)
	if k.Possible() || k.Earlier == nil || k.Later == nil {
		t.Fatal(k.Possible(), k.Earlier, k.Later)
	}
	for _, by := range []*quantity.Elapsed{k.Earlier, k.Later} {
		at := k.Breads[0].Wanted.Add(by.Duration()).In(k.Zone)
		if h := at.Hour()*60 + at.Minute(); h > 22*60+30 || h < 6*60+30 {
			t.Errorf("moved to %v", at)
		}
		if again, ok := shifted(o, k, by.Duration()); !ok || !planAll(t, again).Possible() {
			t.Errorf("%v does not help", *by)
		}
	}
}

// A day that ran out of time while its ways out were looked for says so.
func TestRunningOutWhileExplaining(t *testing.T) {
	d, k := planDrawn(t, 24)
	whole := d.asPlanned(t)
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	k.TimeRanOut = false
	if whole.explain(ended, &k, d.clock(t)); !k.TimeRanOut || len(k.moves) > 0 || k.Earlier != nil || k.Later != nil {
		t.Errorf("time ran out: %v; %v", k.TimeRanOut, k.moves)
	}
	k.TimeRanOut = false
	if whole.explain(context.Background(), &k, d.clock(t)); k.TimeRanOut {
		t.Error("time did not run out")
	}
	if over(nil) { //nolint:staticcheck // a nil context never ends
		t.Error("a nil context has ended")
	}
}

// A move that helps only on paper is named a little larger, of the same bread and the same way.
func TestMovesThatFallShort(t *testing.T) {
	larger := 0
	for _, seed := range []int{32, 275} {
		d, k := planDrawn(t, seed)
		onPaper := map[string]RuleData{}
		for _, m := range k.oneMoved(context.Background()) {
			onPaper[m.Step] = m
		}
		for _, m := range k.moves {
			was, ok := onPaper[m.Step]
			if !ok || m.Change > moveMost {
				continue
			}
			if m.Easing != was.Easing || m.Change < was.Change || (m.Change-was.Change)%moveStep != 0 || m.Words != was.Words {
				t.Errorf("day %d: %v %v, on paper %v", seed, m.Words, m.Remedy, was.Remedy)
			}
			for by := was.Change; by < m.Change; by += moveStep {
				larger++
				short := was
				short.Change = by
				again, _ := moved1(d.Order, k, short)
				if next, err := again.Plan(context.Background(), d.clock(t)); err != nil || next.Possible() {
					t.Errorf("day %d: %v by %v is enough (%v)", seed, m.Words, by, err)
				}
			}
		}
	}
	if larger == 0 {
		t.Error("all that helps on paper helps")
	}
}
