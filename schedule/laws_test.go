package schedule

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/internal/planner"
	"pgregory.net/rapid"
)

// somehow places the steps of a problem without regard to any rule.
func somehow(t *rapid.T, p Problem) (Timetable, []int) {
	h := int(p.Horizon / minute)
	tt, times := Timetable{}, []int{0}
	for _, s := range p.Steps {
		from := rapid.IntRange(0, h).Draw(t, "from")
		to := min(h, from+int(s.Min/minute)+rapid.IntRange(-1, 1).Draw(t, "longer"))
		times = append(times, from, to)
		at := func(n int) time.Time { return dawn.Add(mins(n).Duration()) }
		tt.Steps = append(tt.Steps, Timed{Label: s.label(), Start: at(from), End: at(to)})
	}
	return tt, times
}

// What the checker reads from the problem is what the network and the pools made from it say: it finds nothing exactly
// where they keep every rule.
func TestTheCheckerAndTheNetworkAgree(t *testing.T) {
	kept, broken := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t, rapid.Bool().Draw(t, "shared"))
		c, err := p.compile()
		if err != nil {
			t.Fatal(err)
		}
		shop := c.shop()
		for range 60 {
			tt, times := somehow(t, p)
			found := p.Check(tt)
			if shop.Keeps(nil, times) != (len(found) == 0) {
				t.Fatalf("%v: the checker finds %v", times, found)
			}
			if len(found) == 0 {
				kept++
			} else {
				broken++
			}
		}
	})
	if kept == 0 || broken == 0 {
		t.Errorf("%d kept and %d broken", kept, broken)
	}
}

// In the middle of a day that goes as planned what is left is what can still happen: the timetables of the problem that
// is left are those of the whole problem in which what is past is as it was.
func TestMidwayLeavesWhatCanStillHappen(t *testing.T) {
	days := 0
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t, rapid.Bool().Draw(t, "shared"))
		var all []Timetable
		every(p, func(tt Timetable) { all = append(all, Timetable{Steps: slices.Clone(tt.Steps)}) })
		if len(all) == 0 {
			return
		}
		days++
		so := rapid.SampledFrom(all).Draw(t, "so far")
		now := dawn.Add(mins(rapid.IntRange(0, int(p.Horizon/minute)-1).Draw(t, "now")).Duration())
		m := Midway{Now: now}
		for _, s := range so.Steps {
			switch {
			case !s.End.After(now):
				m.Done = append(m.Done, Done{Step: s.ID, Start: s.Start, End: s.End})
			case s.Start.Before(now):
				m.Done = append(m.Done, Done{Step: s.ID, Start: s.Start})
			}
		}
		left, err := p.Midway(m)
		if err != nil {
			t.Fatal(err)
		}
		say := func(tt Timetable) string {
			var b strings.Builder
			for _, s := range tt.Steps {
				fmt.Fprintf(&b, "%s %v to %v, ", s.ID, s.Start.Sub(dawn), s.End.Sub(dawn))
			}
			return b.String()
		}
		want := map[string]bool{}
		for _, tt := range all {
			same := true
			for k, s := range tt.Steps {
				was := so.Steps[k]
				switch {
				case !was.End.After(now):
					same = same && s.Start.Equal(was.Start) && s.End.Equal(was.End)
				case was.Start.Before(now):
					same = same && s.Start.Equal(was.Start) && !s.End.Before(now)
				default:
					same = same && !s.Start.Before(now)
				}
			}
			if same {
				want[say(tt)] = true
			}
		}
		every(left, func(tt Timetable) {
			if !want[say(tt)] {
				t.Fatalf("%s cannot happen any more, after %v of %s", say(tt), now.Sub(dawn), say(so))
			}
			delete(want, say(tt))
		})
		for s := range want {
			t.Fatalf("%s can still happen, after %v of %s", s, now.Sub(dawn), say(so))
		}
	})
	if days == 0 {
		t.Error("no day")
	}
}

// The nearest wanted times are those that trying every shift finds.
func TestNearestWantedTimes(t *testing.T) {
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t, rapid.Bool().Draw(t, "shared"))
		h := int(p.Horizon / minute)
		at := func(n int) time.Time { return dawn.Add(mins(n).Duration()) }
		for k := range p.Bounds {
			p.Bounds[k].Wanted = false
		}
		b := Bound{Step: p.Steps[0].ID, Edge: Edge(rapid.IntRange(0, 1).Draw(t, "edge")), Wanted: true}
		wanted := at(rapid.IntRange(0, h).Draw(t, "wanted"))
		set := [][2]time.Time{{wanted, wanted}, {{}, wanted}, {wanted, {}}, {wanted.Add(-time.Minute), wanted}}
		limits := rapid.SampledFrom(set).Draw(t, "limits")
		moveTo := func(by int) {
			for side, to := range []*time.Time{&b.Earliest, &b.Latest} {
				if *to = limits[side]; !to.IsZero() {
					*to = to.Add(time.Duration(by) * time.Minute)
				}
			}
			p.Bounds[len(p.Bounds)-1] = b
		}
		p.Bounds = append(p.Bounds, b)
		moveTo(0)
		tt, err := p.Latest(context.Background())
		if err != nil || tt.Conflict == nil {
			return
		}
		moved++
		for sign, got := range map[int]*Shift{1: tt.After, -1: tt.Before} {
			var want *time.Time
			for by := 1; by <= 2*h && want == nil; by++ {
				if moveTo(sign * by); exists(p) {
					to := wanted.Add(time.Duration(sign*by) * time.Minute)
					want = &to
				}
			}
			if (got == nil) != (want == nil) || got != nil && (!got.To.Equal(*want) || !got.Nearest ||
				got.By.Duration() != want.Sub(wanted)) {
				t.Fatalf("side %d of %v: %v, want %v", sign, limits, got, want)
			}
		}
	})
	if moved == 0 {
		t.Error("nothing was moved")
	}
}

// The oracle says the least change that is enough, whatever else there is to change.
func TestOracleAgreesWithTrying(t *testing.T) {
	asked := 0
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t, true)
		c, err := p.compile()
		if err != nil {
			t.Fatal(err)
		}
		o := c.oracle(planner.NewWatch(context.Background(), 0), c.shop())
		rule := rapid.IntRange(0, len(c.rules)-1).Draw(t, "rule")
		side := planner.Side(rapid.IntRange(0, 1).Draw(t, "side"))
		if c.rules[rule].kind == InOrder {
			return
		}
		change := func(by int) planner.Relax { return planner.Relax{Rules: []int{rule}, By: by, Side: side} }
		const most = 6
		first := rapid.SampledFrom([]int{questionWork, leverWork}).Draw(t, "first")
		got := o.least(first, questionWork, most, change)
		want := 0
		for by := most; by >= 1; by-- {
			if o.feasible(change(by)) == planner.Yes {
				want = by
			}
		}
		if got.by != want || !got.proven {
			t.Fatalf("%v of %v: %+v, want %d", side, c.rules[rule].words(), got, want)
		}
		if want > 0 {
			asked++
			times, _ := o.any(questionWork, change(want))
			if times != nil && (!o.relaxed(change(want)).Keeps(nil, times) || want > 1 && o.relaxed(change(want-1)).Keeps(nil,
				times)) {
				t.Fatalf("%v of %v by %d: %v", side, c.rules[rule].words(), want, times)
			}
		}
	})
	if asked == 0 {
		t.Error("nothing was enough")
	}
}

// What is left of a time outside closed spans is each of its minutes that lies in none.
func TestFreeTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(n int) time.Time { return dawn.Add(mins(n).Duration()) }
		from := rapid.IntRange(0, 6).Draw(t, "from")
		to := from + rapid.IntRange(1, 8).Draw(t, "long")
		var closed []Span
		in := map[int]bool{}
		for range rapid.IntRange(0, 3).Draw(t, "closed") {
			a := rapid.IntRange(-2, 12).Draw(t, "a")
			b := a + rapid.IntRange(1, 4).Draw(t, "b")
			closed = append(closed, Span{From: at(a), To: at(b)})
			for m := a; m < b; m++ {
				in[m] = true
			}
		}
		left := map[int]bool{}
		last := at(from - 1)
		for _, s := range free(at(from), at(to), closed) {
			if s.From.Before(last) || s.To.Before(s.From) || s.From.Before(at(from)) || s.To.After(at(to)) {
				t.Fatalf("%v out of order", s)
			}
			last = s.To
			for m := s.From; m.Before(s.To); m = m.Add(time.Minute) {
				left[int(m.Sub(dawn)/time.Minute)] = true
			}
		}
		for m := from; m < to; m++ {
			if left[m] == in[m] {
				t.Fatalf("minute %d of %d to %d around %v: %v", m, from, to, closed, left)
			}
		}
	})
}
