package schedule

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"pgregory.net/rapid"
)

// dearer is a problem in which everything costs so many times as much.
func dearer(p Problem, by int) Problem {
	p.Steps = append([]DayStep(nil), p.Steps...)
	p.Bounds = append([]Bound(nil), p.Bounds...)
	p.Resources = append([]Resource(nil), p.Resources...)
	for i := range p.Steps {
		p.Steps[i].PerMinute *= by
	}
	for i := range p.Bounds {
		p.Bounds[i].EarlyPerMinute *= by
		p.Bounds[i].LatePerMinute *= by
	}
	for i := range p.Resources {
		p.Resources[i].Awkward = append([]Awkward(nil), p.Resources[i].Awkward...)
		for k := range p.Resources[i].Awkward {
			p.Resources[i].Awkward[k].PerMinute *= by
		}
	}
	return p
}

// Where everything costs a quarter of a million times as much the best plan costs that much more.
func TestDearPlansAreTheSamePlans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t, rapid.Bool().Draw(t, "shared"))
		a, err := p.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		b, err := dearer(p, 250_000).Best(context.Background())
		if err != nil || a.Verdict != b.Verdict || 250_000*a.Cost != b.Cost || 250_000*a.Bound != b.Bound {
			t.Fatalf("%v at %d, bound %d; dear: %v at %d, bound %d; %v", a.Verdict, a.Cost, a.Bound, b.Verdict, b.Cost,
				b.Bound, err)
		}
	})
}

// The longest plan with the highest prices, by the minute: two loads share an oven for a while, and each wants to be
// last. Both end within the last hours of ninety days, one an hour before the other.
func TestDearestLongestPlan(t *testing.T) {
	p := Problem{Anchor: dawn, Horizon: maxHorizon, Resources: []Resource{{ID: "oven", Capacity: 1,
		Awkward: []Awkward{{From: dawn, To: dawn.Add(time.Hour), PerMinute: maxPoints}}}}}
	last := dawn.Add(maxHorizon.Duration())
	for _, id := range []string{"a", "b"} {
		p.Steps = append(p.Steps, DayStep{ID: id, Min: mins(60), Max: mins(90), PerMinute: maxPoints,
			Needs: []Need{{Resource: "oven", Amount: 1}}})
		p.Bounds = append(p.Bounds, Bound{Step: id, Edge: End, Latest: last, EarlyPerMinute: maxPoints})
	}
	tt, err := p.Best(context.Background())
	if err != nil || tt.Verdict != Optimal || tt.Cost != 180*maxPoints || len(p.Check(tt)) > 0 {
		t.Fatalf("%v at %d, %v: %v", tt.Verdict, tt.Cost, err, tt)
	}
	p.Bounds[0].EarlyPerMinute, p.Bounds[1].EarlyPerMinute = 0, 0
	for k := range p.Bounds { // the price of being late begins with the plan
		p.Bounds[k].Earliest, p.Bounds[k].LatePerMinute = dawn, maxPoints
	}
	if tt, err = p.Best(context.Background()); err != nil || tt.Verdict != Optimal || len(p.Check(tt)) > 0 {
		t.Fatal(tt.Verdict, err)
	}
	// 60 and 120 minutes late, 120 minutes of work, and an hour of it awkward.
	if want := (60 + 120 + 120 + 60) * maxPoints; tt.Cost != want {
		t.Errorf("costs %d, want %d", tt.Cost, want)
	}
}

// Prices above the limit are refused by name.
func TestTooDear(t *testing.T) {
	p := loaf()
	p.Steps[0].PerMinute, p.Bounds[0].EarlyPerMinute = 1_000_000_000, 1_000_000_000
	_, err := p.Best(context.Background())
	if got := quantity.InputErrors(err); len(got) != 2 || !errors.Is(got[0], quantity.ErrOutOfRange) {
		t.Error(err)
	}
}

// Steps of no length, and bounds of a minute: what has no length takes no hands, and follows and precedes at once.
func TestNoLengthAndWindowsOfAMinute(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(600), Resources: []Resource{{ID: "hands", Capacity: 1}}}
	for k := range 80 {
		s := DayStep{ID: fmt.Sprint("step ", k), Needs: []Need{{Resource: "hands", Amount: 1}}}
		if k%2 == 0 {
			s.Min = mins(1)
		}
		p.Steps = append(p.Steps, s)
		from := at(k / 2)
		p.Bounds = append(p.Bounds, Bound{Step: s.ID, Edge: Start, Earliest: from, Latest: from.Add(time.Minute)})
	}
	solvers := []func(Problem, context.Context) (Timetable, error){Problem.Latest, Problem.Earliest, Problem.Best}
	for _, solve := range solvers {
		tt, err := solve(p, context.Background())
		if err != nil || tt.Verdict != Optimal || len(p.Check(tt)) > 0 {
			t.Fatal(tt.Verdict, err, p.Check(tt))
		}
	}
	// Forty minutes of work that all have to begin in the same minute.
	for k := range p.Bounds {
		p.Bounds[k].Earliest, p.Bounds[k].Latest = at(5), at(6)
	}
	tt, err := p.Latest(context.Background())
	if err != nil || tt.Verdict != Infeasible || tt.Conflict.Shortage == nil {
		t.Fatal(tt.Message(), err)
	}
	if x := tt.Conflict.Shortage; x.Need != mins(40) || x.Room != mins(2) || !x.From.Equal(at(5)) || !x.To.Equal(at(7)) {
		t.Error(x)
	}
}

// Two hundred steps for one pair of hands are explained in one sentence, and nobody is advised to get two hundred.
func TestWhatNobodyHasIsNotOffered(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds")
	}
	p := thousand()
	p.Links, p.Steps, p.Horizon = nil, p.Steps[:200], mins(900)
	tt, err := p.Latest(context.Background())
	if err != nil || tt.Conflict == nil || tt.Conflict.Shortage == nil {
		t.Fatal(tt.Message(), err)
	}
	for _, m := range tt.Conflict.Members {
		if m.Rule == Capacity && m.More > 2 {
			t.Errorf("%v", m.Help())
		}
	}
}

// A thousand steps that one pair of hands cannot do in time are refused within the time given, or the best that is
// known then is said.
func TestAThousandStepsForOnePairOfHands(t *testing.T) {
	p := thousand()
	p.Links = nil
	for _, hours := range []int{84, 83} { // a thousand times five minutes are 83 hours and 20 minutes
		p.Horizon = quantity.Elapsed(time.Duration(hours) * time.Hour)
		ctx, cancel := context.WithTimeout(context.Background(), 300*time.Millisecond)
		tt, err := p.Latest(ctx)
		cancel()
		if err != nil && !errors.Is(err, context.DeadlineExceeded) {
			t.Fatal(err)
		}
		if hours < 84 && tt.Verdict == Optimal || hours == 84 && tt.Verdict == Infeasible || len(tt.Steps) > 0 &&
			len(p.Check(tt)) > 0 {
			t.Errorf("%d hours: %v", hours, tt.Verdict)
		}
	}
}
