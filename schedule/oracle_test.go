package schedule

import (
	"context"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

var dawn = time.Date(2026, 3, 14, 6, 0, 0, 0, time.UTC)

func mins(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }

// tiny draws a problem small enough to try every timetable.
func tiny(t *rapid.T, shared bool) Problem {
	horizon := rapid.IntRange(4, 7).Draw(t, "horizon")
	at := func(n int) time.Time { return dawn.Add(mins(n).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(horizon)}
	hands := Resource{ID: "hands"}
	oven := Resource{ID: "oven"}
	if shared {
		hands.Capacity = rapid.IntRange(1, 2).Draw(t, "hands")
		oven.Capacity = rapid.IntRange(0, 2).Draw(t, "oven")
		oven.Changeover = mins(rapid.IntRange(0, 1).Draw(t, "changeover"))
	}
	if shared && rapid.Bool().Draw(t, "changes") {
		for _, c := range [][2]string{{"rye", "wheat"}, {"wheat", "rye"}, {"rye", "rye"}} {
			takes := mins(rapid.IntRange(0, 2).Draw(t, "change"))
			oven.Changes = append(oven.Changes, Changeover{From: c[0], To: c[1], Takes: takes})
		}
	}
	for i := rapid.IntRange(0, 2).Draw(t, "closed"); i > 0; i-- {
		from := rapid.IntRange(-1, horizon).Draw(t, "from")
		hands.Closed = append(
			hands.Closed,
			Span{
				From:  at(from),
				To:    at(from + rapid.IntRange(1, 3).Draw(t, "long")),
				Words: working.Say(fmt.Sprintf("away %d", i)),
			},
		)
	}
	for i := rapid.IntRange(0, 2).Draw(t, "awkward"); i > 0; i-- {
		from := rapid.IntRange(0, horizon).Draw(t, "from")
		hands.Awkward = append(
			hands.Awkward,
			Awkward{
				From:      at(from),
				To:        at(from + rapid.IntRange(1, 3).Draw(t, "long")),
				PerMinute: rapid.IntRange(0, 4).Draw(t, "price"),
			},
		)
	}
	p.Resources = []Resource{hands, oven}
	n := rapid.IntRange(1, 3).Draw(t, "steps")
	for i := 0; i < n; i++ {
		s := DayStep{ID: string(rune('a' + i)), Min: mins(rapid.IntRange(1, 3).Draw(t, "min"))}
		s.Max = s.Min + mins(rapid.SampledFrom([]int{0, 0, 1}).Draw(t, "spread"))
		s.PerMinute = rapid.IntRange(-1, 3).Draw(t, "per minute")
		for _, r := range p.Resources {
			if rapid.Bool().Draw(t, "needs "+r.ID) {
				need := Need{Resource: r.ID, Amount: 1}
				if r.Capacity > 1 {
					need.Amount = rapid.IntRange(1, r.Capacity).Draw(t, "amount")
				}
				if r.ID == "oven" && shared {
					need.Program = rapid.SampledFrom([]string{"", "rye", "wheat"}).Draw(t, "program")
				}
				s.Needs = append(s.Needs, need)
			}
		}
		p.Steps = append(p.Steps, s)
	}
	for i := rapid.IntRange(0, 3).Draw(t, "links"); i > 0 && n > 1; i-- {
		a, b := rapid.IntRange(0, n-1).Draw(t, "a"), rapid.IntRange(0, n-1).Draw(t, "b")
		if a == b {
			continue
		}
		l := Link{From: p.Steps[a].ID, To: p.Steps[b].ID, Kind: LinkKind(rapid.IntRange(0, 3).Draw(t, "kind"))}
		lo := rapid.IntRange(-2, 2).Draw(t, "lag")
		l.Min, l.Max = mins(lo), mins(lo+rapid.IntRange(0, 2).Draw(t, "play"))
		switch rapid.IntRange(0, 2).Draw(t, "open") {
		case 0:
			l.Max = NoLimit
		case 1:
			l.Min = -NoLimit
		}
		l.MinWords, l.MaxWords = working.Say("link %d min", i), working.Say("link %d max", i)
		p.Links = append(p.Links, l)
	}
	for i := rapid.IntRange(0, 2).Draw(t, "bounds"); i > 0; i-- {
		b := Bound{
			Step:  p.Steps[rapid.IntRange(0, n-1).Draw(t, "step")].ID,
			Edge:  Edge(rapid.IntRange(0, 1).Draw(t, "edge")),
			Words: working.Say(fmt.Sprintf("bound %d", i)),
		}
		when := rapid.IntRange(0, horizon).Draw(t, "when")
		if rapid.Bool().Draw(t, "late") {
			b.Latest = at(when)
			b.EarlyPerMinute = rapid.IntRange(0, 2).Draw(t, "stale")
			b.Wanted = rapid.Bool().Draw(t, "wanted")
		} else {
			b.Earliest = at(when)
			b.LatePerMinute = rapid.IntRange(0, 2).Draw(t, "late price")
		}
		p.Bounds = append(p.Bounds, b)
	}
	return p
}

// price is the objective of Best, read from its description.
func price(p Problem, t Timetable) int {
	sum := 0
	at := map[string]Timed{}
	for _, s := range t.Steps {
		at[s.ID] = s
	}
	for _, s := range p.Steps {
		d := at[s.ID]
		sum += s.PerMinute * int(d.End.Sub(d.Start)/time.Minute)
		for _, n := range s.Needs {
			for _, r := range p.Resources {
				if r.ID != n.Resource {
					continue
				}
				for m := d.Start; m.Before(d.End); m = m.Add(time.Minute) {
					for _, a := range r.Awkward {
						if !m.Before(a.From) && m.Before(a.To) {
							sum += a.PerMinute
						}
					}
				}
			}
		}
	}
	for _, b := range p.Bounds {
		e := at[b.Step].Start
		if b.Edge == End {
			e = at[b.Step].End
		}
		if b.EarlyPerMinute != 0 {
			sum += b.EarlyPerMinute * int(b.Latest.Sub(e)/time.Minute)
		}
		if b.LatePerMinute != 0 {
			sum += b.LatePerMinute * int(e.Sub(b.Earliest)/time.Minute)
		}
	}
	return sum
}

// every calls f with each timetable that keeps all rules.
func every(p Problem, f func(Timetable)) {
	h := int(p.Horizon / minute)
	t := Timetable{Steps: make([]Timed, len(p.Steps))}
	// The rules among the first steps alone, to give up early.
	parts := make([]Problem, len(p.Steps)+1)
	for k := range parts {
		q := Problem{Anchor: p.Anchor, Horizon: p.Horizon, Steps: p.Steps[:k], Resources: p.Resources}
		known := map[string]bool{}
		for _, s := range q.Steps {
			known[s.ID] = true
		}
		for _, l := range p.Links {
			if known[l.From] && known[l.To] {
				q.Links = append(q.Links, l)
			}
		}
		for _, b := range p.Bounds {
			if known[b.Step] {
				q.Bounds = append(q.Bounds, b)
			}
		}
		parts[k] = q
	}
	var place func(i int)
	place = func(i int) {
		if i > 0 && len(parts[i].Check(Timetable{Steps: t.Steps[:i]})) > 0 {
			return
		}
		if i == len(p.Steps) {
			f(t)
			return
		}
		s := p.Steps[i]
		most := s.Max
		if most == 0 {
			most = s.Min
		}
		for d := int(s.Min / minute); d <= h && mins(d) <= most; d++ {
			for b := 0; b+d <= h; b++ {
				t.Steps[i] = Timed{
					Label: s.label(),
					Start: p.Anchor.Add(mins(b).Duration()),
					End:   p.Anchor.Add(mins(b + d).Duration()),
				}
				place(i + 1)
			}
		}
	}
	place(0)
}

func exists(p Problem) bool {
	found := false
	every(p, func(Timetable) { found = true })
	return found
}

// The planner agrees with trying everything: the least cost, feasibility, the earliest and
// latest times and the windows of every step.
func TestAgreesWithTryingEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shared := rapid.Bool().Draw(t, "shared")
		p := tiny(t, shared)
		best, found := math.MaxInt, false
		starts := make([]map[int]bool, len(p.Steps))
		for i := range starts {
			starts[i] = map[int]bool{}
		}
		every(p, func(tt Timetable) {
			found = true
			best = min(best, price(p, tt))
			for i, s := range tt.Steps {
				starts[i][int(s.Start.Sub(dawn)/time.Minute)] = true
			}
		})
		got, err := p.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		if found != (got.Verdict == Optimal) || !found != (got.Verdict == Infeasible) {
			t.Fatalf("verdict %v, but trying everything finds %v", got.Verdict, found)
		}
		if !found {
			conflictIsRight(t, p, got)
			return
		}
		if broken := p.Check(got); len(broken) > 0 {
			t.Fatalf("the timetable breaks %v", broken)
		}
		if price(p, got) != got.Cost || got.Cost != best || got.Bound != best {
			t.Fatalf("cost %d (priced %d), bound %d, want %d", got.Cost, price(p, got), got.Bound, best)
		}
		late, err := p.Latest(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		if broken := p.Check(late); len(broken) > 0 {
			t.Fatalf("the latest timetable breaks %v", broken)
		}
		if shared {
			return
		}
		early, _ := p.Earliest(context.Background())
		for i, s := range late.Steps {
			h := int(p.Horizon / minute)
			for m := 0; m <= h; m++ {
				when := dawn.Add(mins(m).Duration())
				inside := false
				for _, w := range s.Windows {
					inside = inside || !when.Before(w.From) && !when.After(w.To)
				}
				if inside != starts[i][m] {
					t.Fatalf("%s may start at %d: windows say %v, trying says %v", s.ID, m, inside, starts[i][m])
				}
				if starts[i][m] && (when.After(s.Start) || when.Before(early.Steps[i].Start)) {
					t.Fatalf("%s may start at %d, outside earliest and latest", s.ID, m)
				}
			}
		}
	})
}

// without removes the rule with the given words.
func without(p Problem, m Member) (Problem, bool) {
	q := p
	q.Steps = append([]DayStep(nil), p.Steps...)
	q.Links = append([]Link(nil), p.Links...)
	q.Bounds = append([]Bound(nil), p.Bounds...)
	q.Resources = append([]Resource(nil), p.Resources...)
	switch m.Rule {
	case StepMin, StepMax, StepExact:
		for i := range q.Steps {
			s := &q.Steps[i]
			if s.ID != m.Step {
				continue
			}
			if s.Max == 0 {
				s.Max = s.Min
			}
			if m.Rule != StepMax {
				if len(s.Needs) > 0 {
					return p, false // a step of no length and a resource: not comparable
				}
				s.Min = 0
			}
			if m.Rule != StepMin {
				s.Max = NoLimit
			}
		}
	case LinkMin, LinkMax, LinkExact:
		for i := range q.Links {
			l := &q.Links[i]
			if m.Rule == LinkExact && (l.MinWords == m.Words) {
				l.Min, l.Max = -NoLimit, NoLimit
			} else if m.Rule == LinkMin && l.MinWords == m.Words {
				l.Min = -NoLimit
			} else if m.Rule == LinkMax && l.MaxWords == m.Words {
				l.Max = NoLimit
			}
		}
	case NotBefore, NotAfter, FixedTime:
		for i := range q.Bounds {
			if q.Bounds[i].Words == m.Words {
				q.Bounds[i].Earliest, q.Bounds[i].Latest = time.Time{}, time.Time{}
			}
		}
	case Absence:
		for i := range q.Resources {
			r := &q.Resources[i]
			var left []Span
			for _, c := range r.Closed {
				if c.Words != m.Words {
					left = append(left, c)
				}
			}
			r.Closed = left
		}
	case Capacity:
		for i := range q.Resources {
			if q.Resources[i].ID == m.Other {
				q.Resources[i].Capacity = 0
				q.Steps = append([]DayStep(nil), q.Steps...)
				for k := range q.Steps {
					q.Steps[k].Needs = append([]Need(nil), q.Steps[k].Needs...)
					for n := range q.Steps[k].Needs {
						if q.Steps[k].Needs[n].Resource == m.Other {
							q.Steps[k].Needs[n].Program = ""
						}
					}
				}
			}
		}
	case PlanStart, PlanEnd:
		const room = 8 * minute // more than the steps of these problems can need
		q.Horizon += room
		if m.Rule == PlanStart {
			q.Anchor = q.Anchor.Add(-room.Duration())
		}
	case InOrder:
		return p, false
	}
	return q, true
}

// conflictIsRight checks by trying everything that no timetable exists with the members alone,
// that one exists without any of them, and that the nearest wanted times are right.
func conflictIsRight(t *rapid.T, p Problem, got Timetable) {
	if got.Conflict == nil || len(got.Conflict.Members) == 0 || !got.Conflict.Minimal {
		t.Fatalf("no minimal conflict: %v", got.Conflict)
	}
	if w := got.Working(); w.Len() > 0 {
		for _, fault := range workcheck.Faults(w) {
			t.Fatal(fault)
		}
	} else if got.After != nil {
		t.Fatal("the nearest time is not derived")
	}
	// Everything that is not a member goes: what is left must still be impossible.
	only := p
	keep := map[working.Message]bool{}
	for _, m := range got.Conflict.Members {
		keep[m.Words] = true
	}
	if len(p.Steps) > 2 {
		return // trying everything would take too long
	}
	c, err := p.compile()
	if err != nil {
		t.Fatal(err)
	}
	all := true // everything could be taken away
	for _, r := range c.rules {
		if !keep[r.words()] {
			q, ok := without(only, Member{Breach: Breach{Words: r.words(), Rule: r.kind, Step: r.step, Other: r.other}})
			if ok {
				only = q
			}
			all = all && ok
		}
	}
	if exists(only) {
		t.Fatalf("the members can be kept together: %v", got.Conflict)
	}
	for _, m := range got.Conflict.Members {
		if q, ok := without(only, m); all && ok && !exists(q) {
			t.Fatalf("not needed: %q in %v", m.Words, got.Conflict)
		}
	}
	wanted := false
	for _, b := range p.Bounds {
		wanted = wanted || b.Wanted
	}
	if !wanted {
		return
	}
	try := func(by int) bool {
		q := p
		q.Bounds = append([]Bound(nil), p.Bounds...)
		for i := range q.Bounds {
			if q.Bounds[i].Wanted {
				q.Bounds[i].Latest = q.Bounds[i].Latest.Add(mins(by).Duration())
			}
		}
		return exists(q)
	}
	h := int(p.Horizon / minute)
	for by := 1; by <= h; by++ {
		if try(by) {
			if got.After == nil {
				if p.firstWanted().Add(mins(by).Duration()).After(p.Anchor.Add(p.Horizon.Duration())) {
					break // outside the plan
				}
				t.Fatalf("%d later works, none found", by)
			}
			if got.After.By != mins(by) {
				t.Fatalf("%d later works, found %v", by, got.After)
			}
			break
		}
	}
}

func (p Problem) firstWanted() time.Time {
	for _, b := range p.Bounds {
		if b.Wanted {
			return b.Latest
		}
	}
	return time.Time{}
}

// Shifting every time shifts the timetable; the same problem gives the same timetable.
func TestShiftAndRepeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t, rapid.Bool().Draw(t, "shared"))
		a, err := p.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		b, _ := p.Best(context.Background())
		if a.String() != b.String() {
			t.Fatalf("twice the same problem:\n%v\n%v", a, b)
		}
		by := mins(rapid.IntRange(-5000, 5000).Draw(t, "by")).Duration()
		q := p
		q.Anchor = q.Anchor.Add(by)
		q.Resources = append([]Resource(nil), p.Resources...)
		for i := range q.Resources {
			r := &q.Resources[i]
			r.Closed = append([]Span(nil), r.Closed...)
			for k := range r.Closed {
				r.Closed[k].From, r.Closed[k].To = r.Closed[k].From.Add(by), r.Closed[k].To.Add(by)
			}
			r.Awkward = append([]Awkward(nil), r.Awkward...)
			for k := range r.Awkward {
				r.Awkward[k].From, r.Awkward[k].To = r.Awkward[k].From.Add(by), r.Awkward[k].To.Add(by)
			}
		}
		q.Bounds = append([]Bound(nil), p.Bounds...)
		for i := range q.Bounds {
			if !q.Bounds[i].Earliest.IsZero() {
				q.Bounds[i].Earliest = q.Bounds[i].Earliest.Add(by)
			}
			if !q.Bounds[i].Latest.IsZero() {
				q.Bounds[i].Latest = q.Bounds[i].Latest.Add(by)
			}
		}
		c, err := q.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		if a.Verdict != c.Verdict || a.Cost != c.Cost {
			t.Fatalf("shifted: %v %d, not %v %d", c.Verdict, c.Cost, a.Verdict, a.Cost)
		}
		for i := range a.Steps {
			if !a.Steps[i].Start.Add(by).Equal(c.Steps[i].Start) || !a.Steps[i].End.Add(by).Equal(c.Steps[i].End) {
				t.Fatalf("shifted: %v\n%v", a, c)
			}
		}
	})
}

// One more rule never makes a timetable cheaper, and the plan lies between earliest and latest.
func TestMoreRulesCostMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t, rapid.Bool().Draw(t, "shared"))
		a, err := p.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range a.Steps {
			if s.Start.Before(s.EarliestStart) || s.Start.After(s.LatestStart) || s.End.Before(s.EarliestEnd) ||
				s.End.After(s.LatestEnd) ||
				s.Slack < 0 {
				t.Fatalf("%s starts outside its own limits", s.ID)
			}
		}
		q := p
		q.Bounds = append(
			append([]Bound(nil), p.Bounds...),
			Bound{
				Step:     "a",
				Edge:     Start,
				Earliest: dawn.Add(mins(rapid.IntRange(0, 3).Draw(t, "not before")).Duration()),
			},
		)
		b, err := q.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		if a.Verdict == Infeasible && b.Verdict != Infeasible || b.Verdict == Optimal && b.Cost < a.Cost {
			t.Fatalf("with one rule more: %v %d, without %v %d", b.Verdict, b.Cost, a.Verdict, a.Cost)
		}
	})
}

func TestConflictWordsAreTheUsers(t *testing.T) {
	p := Problem{Anchor: dawn, Horizon: quantity.Elapsed(12 * time.Hour),
		Steps: []DayStep{
			{
				ID:       "retard",
				Min:      quantity.Elapsed(8 * time.Hour),
				Max:      quantity.Elapsed(24 * time.Hour),
				MinWords: working.Say("retard at least 8 h"),
			},
			{ID: "bake", Min: quantity.Elapsed(time.Hour)},
		},
		Links: []Link{{From: "retard", To: "bake", Max: NoLimit}},
		Bounds: []Bound{
			{
				Step:   "bake",
				Edge:   End,
				Latest: dawn.Add(6*time.Hour + 30*time.Minute),
				Wanted: true,
				Words:  working.Say("lunch at 12:30"),
			},
		}}
	tt, err := p.Latest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	text := tt.String()
	for _, w := range []string{"retard at least 8 h (2h30m shorter: 5h30m)", "lunch at 12:30 (2h30m later: Sat 15:00)",
		"miss each other by 2h30m", "would work: Sat 15:00, 2h30m later"} {
		if !strings.Contains(text, w) {
			t.Errorf("%q is missing in:\n%s", w, text)
		}
	}
}
