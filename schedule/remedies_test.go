package schedule

import (
	"context"
	"testing"
	"time"
)

// Each kind of rule, in a conflict small enough to be worked out in the head: which way it gives, by how much, and to
// what. Anchor is 06:00.
func TestWhatEachRuleWouldHaveToBe(t *testing.T) {
	at := func(n int) time.Time { return dawn.Add(mins(n).Duration()) }
	hands := []Need{{Resource: "hands", Amount: 1}}
	steps := func(s ...DayStep) []DayStep { return s }
	for name, c := range map[string]struct {
		p      Problem
		rule   Rule
		easing Easing
		change int
		remedy string
	}{
		"a step of at least an hour in 40 minutes": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(60), Max: mins(90)}),
				Bounds: []Bound{{Step: "a", Edge: Start, Earliest: at(0)}, {Step: "a", Edge: End, Latest: at(40)}}},
			StepMin, Shorter, 20, "20m shorter: 40m"},
		"a step of at most half an hour over 45 minutes": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(10), Max: mins(30)}),
				Bounds: []Bound{{Step: "a", Edge: Start, Latest: at(0)}, {Step: "a", Edge: End, Earliest: at(45)}}},
			StepMax, Longer, 15, "15m longer: 45m"},
		"a step of exactly 50 minutes in 40": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(50)}), Bounds: []Bound{{Step: "a", Edge: End, Latest: at(40)}}},
			StepExact, Shorter, 10, "10m shorter: 40m"},
		"a step of exactly 50 minutes over 70": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(50)}),
				Bounds: []Bound{{Step: "a", Edge: Start, Latest: at(0)}, {Step: "a", Edge: End, Earliest: at(70)}}},
			StepExact, Longer, 20, "20m longer: 1h10m"},
		"half an hour between in 20 minutes": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(10)}, DayStep{ID: "b", Min: mins(10)}),
				Links:  []Link{{From: "a", To: "b", Min: mins(30), Max: NoLimit}},
				Bounds: []Bound{{Step: "b", Edge: End, Latest: at(40)}}},
			LinkMin, Shorter, 10, "10m less: 20m"},
		"at most half an hour between over 50 minutes": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(10)}, DayStep{ID: "b", Min: mins(10)}),
				Links:  []Link{{From: "a", To: "b", Min: 0, Max: mins(30)}},
				Bounds: []Bound{{Step: "a", Edge: Start, Latest: at(0)}, {Step: "b", Edge: Start, Earliest: at(60)}}},
			LinkMax, Longer, 20, "20m more: 50m"},
		"exactly half an hour between in 20 minutes": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(10)}, DayStep{ID: "b", Min: mins(10)}),
				Links:  []Link{{From: "a", To: "b", Min: mins(30), Max: mins(30)}},
				Bounds: []Bound{{Step: "b", Edge: End, Latest: at(40)}}},
			LinkExact, Shorter, 10, "10m less: 20m"},
		"exactly half an hour between over 50 minutes": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(10)}, DayStep{ID: "b", Min: mins(10)}),
				Links:  []Link{{From: "a", To: "b", Min: mins(30), Max: mins(30)}},
				Bounds: []Bound{{Step: "a", Edge: Start, Latest: at(0)}, {Step: "b", Edge: Start, Earliest: at(60)}}},
			LinkExact, Longer, 20, "20m more: 50m"},
		"not before 07:00, done by 07:10": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(30)}),
				Bounds: []Bound{{Step: "a", Edge: Start, Earliest: at(60)}, {Step: "a", Edge: End, Latest: at(70)}}},
			NotBefore, Earlier, 20, "20m earlier: Sat 06:40"},
		"done by 07:10, not before 07:00": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(30)}),
				Bounds: []Bound{{Step: "a", Edge: Start, Earliest: at(60)}, {Step: "a", Edge: End, Latest: at(70)}}},
			NotAfter, Later, 20, "20m later: Sat 07:30"},
		"at 06:20, though half an hour has to be before": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(30)}, DayStep{ID: "b", Min: mins(10)}),
				Links:  []Link{{From: "a", To: "b"}},
				Bounds: []Bound{{Step: "b", Edge: Start, Earliest: at(20), Latest: at(20)}}},
			FixedTime, Later, 10, "10m later: Sat 06:30"},
		"away from the 20th minute": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(30), Needs: hands}),
				Bounds:    []Bound{{Step: "a", Edge: End, Latest: at(60)}},
				Resources: []Resource{{ID: "hands", Closed: []Span{{From: at(20), To: at(100)}}}}},
			Absence, Begins, 10, "from Sat 06:30 instead of Sat 06:20"},
		"away until the 50th minute": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(30), Needs: hands}),
				Bounds:    []Bound{{Step: "a", Edge: End, Latest: at(60)}},
				Resources: []Resource{{ID: "hands", Closed: []Span{{From: at(5), To: at(50)}}}}},
			Absence, Ends, 20, "until Sat 06:30 instead of Sat 06:50"},
		"away for all of the only minutes there are": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(60), Needs: hands}),
				Bounds:    []Bound{{Step: "a", Edge: End, Latest: at(60)}},
				Resources: []Resource{{ID: "hands", Closed: []Span{{From: at(25), To: at(35)}}}}},
			Absence, Dropped, 10, "not at all"},
		"an hour's work after the anchor, done by 06:40": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(60)}), Bounds: []Bound{{Step: "a", Edge: End, Latest: at(40)}}},
			PlanStart, Earlier, 20, "20m earlier: Sat 05:40"},
		"two hours' work from 18 hours on": {
			Problem{Horizon: mins(60), Steps: steps(DayStep{ID: "a", Min: mins(30)}),
				Bounds: []Bound{{Step: "a", Edge: Start, Earliest: at(45)}}},
			PlanEnd, Later, 15, "15m later: Sat 07:15"},
		"two steps and one pair of hands": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(30), Needs: hands}, DayStep{ID: "b", Min: mins(30), Needs: hands}),
				Bounds:    []Bound{{Step: "a", Edge: End, Latest: at(30)}, {Step: "b", Edge: End, Latest: at(30)}},
				Resources: []Resource{{ID: "hands", Capacity: 1}}},
			Capacity, More, 0, "1 more: 2"},
		"in an order that cannot be": {
			Problem{Steps: steps(DayStep{ID: "a", Min: mins(30)}, DayStep{ID: "b", Min: mins(30)}),
				Alike:     [][]string{{"a", "b"}},
				Bounds:    []Bound{{Step: "a", Edge: Start, Earliest: at(60)}, {Step: "b", Edge: Start, Latest: at(0)}},
				Resources: []Resource{{ID: "hands"}}},
			InOrder, AnyOrder, 0, "in any order"},
	} {
		c.p.Anchor = dawn
		if c.p.Horizon == 0 {
			c.p.Horizon = mins(600)
		}
		tt, err := c.p.Latest(context.Background())
		if err != nil || tt.Verdict != Infeasible {
			t.Errorf("%s: %v, %v", name, tt.Verdict, err)
			continue
		}
		found := false
		for _, m := range tt.Conflict.Members {
			if m.Rule != c.rule {
				continue
			}
			found = true
			if closed := m.Closed; (closed != nil) != (c.rule == Absence) || closed != nil &&
				(!closed.From.Equal(c.p.Resources[0].Closed[0].From) || !closed.To.Equal(c.p.Resources[0].Closed[0].To)) {
				t.Errorf("%s: closed %v", name, closed)
			}
			if m.Easing != c.easing || m.Change != mins(c.change) || m.Remedy.String() != c.remedy ||
				m.Enough != (c.easing != 0) {
				t.Errorf("%s: %v by %v, %q; want %v by %dm, %q", name, m.Easing, m.Change, m.Remedy, c.easing,
					c.change, c.remedy)
			}
		}
		if !found {
			t.Errorf("%s: no %v in %v", name, c.rule, tt.Conflict)
		}
	}
}

// A step of no length asks for no rule, and one whose longest duration is all of the plan for no upper one.
func TestOnlyRulesThatBind(t *testing.T) {
	p := Problem{
		Anchor:  dawn,
		Horizon: mins(60),
		Steps: []DayStep{
			{ID: "a", Min: 0, Max: mins(60)},
			{ID: "b", Min: mins(1), Max: mins(59)},
			{ID: "c", Min: 0, Max: mins(59)},
		},
	}
	c, err := p.compile()
	if err != nil {
		t.Fatal(err)
	}
	got := map[string][]Rule{}
	for _, r := range c.rules {
		got[r.step] = append(got[r.step], r.kind)
	}
	for id, want := range map[string]int{"a": 0, "b": 2, "c": 1} {
		if len(got[id]) != want {
			t.Errorf("%s has the rules %v", id, got[id])
		}
	}
}

// Possible says the same as Latest, without the reasons.
func TestPossibleAgreesWithLatest(t *testing.T) {
	for _, name := range []string{"home4", "home8", "same-day-by-noon", "two-doughs-by-1500"} {
		p := loadKitchen(t, name)
		tt, err := p.Latest(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		if ok, err := p.Possible(context.Background()); err != nil ||
			ok != (tt.Verdict == Optimal || tt.Verdict == Feasible) {
			t.Errorf("%s: %v, %v; %v", name, ok, err, tt.Verdict)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if ok, err := loadKitchen(t, "home8").Possible(ctx); ok || err == nil {
		t.Errorf("after the end: %v, %v", ok, err)
	}
	if _, err := (Problem{}).Possible(context.Background()); err == nil {
		t.Error("nothing is possible")
	}
}
