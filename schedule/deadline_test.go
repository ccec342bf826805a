package schedule

import (
	"context"
	"errors"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// polled is a context that ends after it has been asked a number of times, so that a test can
// end a search at every place where it looks, on any machine.
type polled struct {
	context.Context
	left int
}

var errPolled = errors.New("asked often enough")

func (p *polled) Err() error {
	if p.left <= 0 {
		return errPolled
	}
	p.left--
	return nil
}

// Wherever a context ends, the answer is right as far as it goes: a timetable keeps all rules
// and costs no less than the bound, the bound is no more than the optimum, and nothing is
// called infeasible that is not.
func TestEndsAnywhere(t *testing.T) {
	crowded := crowd(30)
	crowded.Grid = quantity.Elapsed(time.Minute)
	for name, c := range map[string]struct {
		p        Problem
		optimum  int // of Best; 0: not known
		possible bool
	}{
		"home8":     {loadKitchen(t, "home8"), 5 * 429, true},
		"home12":    {loadKitchen(t, "home12"), 5 * 766, true},
		"two":       {loadKitchen(t, "two-doughs-by-1500"), 0, false},
		"noon":      {loadKitchen(t, "same-day-by-noon"), 0, false},
		"crowd":     {crowded, 0, true},
		"too early": {tooEarly(crowd(20), time.Hour), 0, false},
	} {
		seen := map[Verdict]bool{}
		for polls := 0; polls < 1000; polls += 1 + polls {
			for call, solve := range map[string]func(Problem, context.Context) (Timetable, error){"Best": Problem.Best,
				"Latest": Problem.Latest, "Earliest": Problem.Earliest} {
				tt, err := solve(c.p, &polled{context.Background(), polls})
				if unknown := tt.Verdict == Unknown; unknown != errors.Is(err, errPolled) || !unknown && err != nil {
					t.Fatalf("%s %s after %d: %v, %v", name, call, polls, tt.Verdict, err)
				}
				if tt.Verdict == Feasible && !tt.TimeRanOut ||
					tt.Conflict != nil && !tt.Conflict.Complete && !tt.TimeRanOut {
					t.Errorf("%s %s after %d: not finished, and not said so", name, call, polls)
				}
				seen[tt.Verdict] = true
				switch tt.Verdict {
				case Optimal, Feasible:
					if broken := c.p.Check(tt); !c.possible || len(broken) > 0 {
						t.Errorf("%s %s after %d: breaks %v", name, call, polls, broken)
					}
					if tt.Bound > tt.Cost ||
						call == "Best" && c.optimum > 0 && (tt.Bound > c.optimum || tt.Cost < c.optimum) {
						t.Errorf("%s %s after %d: cost %d, bound %d, optimum %d", name, call, polls, tt.Cost,
							tt.Bound, c.optimum)
					}
					for _, s := range tt.Steps {
						if s.Start.Before(s.EarliestStart) || s.Start.After(s.LatestStart) || s.Slack < 0 {
							t.Errorf("%s %s after %d: %s lies outside its limits", name, call, polls, s.ID)
						}
					}
				case Infeasible:
					if c.possible || tt.Conflict == nil || len(tt.Conflict.Members) == 0 {
						t.Errorf("%s %s after %d: no timetable: %v", name, call, polls, tt.Conflict)
					}
				}
				if tt.String() == "" {
					t.Errorf("%s %s after %d: says nothing", name, call, polls)
				}
			}
		}
		if !seen[Unknown] || len(seen) < 2 {
			t.Errorf("%s: only %v seen", name, seen)
		}
	}
}

// A conflict that was cut short says of every change only what was seen: it is enough, it is the least only where
// that is proven, and nothing is far more than the whole plan.
func TestConflictsThatAreCutShort(t *testing.T) {
	p := loadKitchen(t, "two-doughs-by-1500")
	whole, err := p.Latest(context.Background())
	if err != nil || whole.After == nil || !whole.After.Nearest || !whole.Conflict.ShortProven {
		t.Fatal(whole.Message(), err)
	}
	later := func(by quantity.Elapsed) bool { // whether the bread can be had so much later
		q := p
		q.Bounds = append([]Bound(nil), p.Bounds...)
		for i := range q.Bounds {
			q.Bounds[i].Latest = q.Bounds[i].Latest.Add(by.Duration())
		}
		ok, err := q.Possible(context.Background())
		return ok && err == nil
	}
	named := 0
	complete := false
	for polls := 2; !complete && polls < 1e6; polls += 1 + polls/3 {
		tt, err := p.Latest(&polled{context.Background(), polls})
		if err != nil && tt.Verdict != Unknown {
			t.Fatal(err)
		}
		if tt.Conflict == nil {
			continue
		}
		complete = tt.Conflict.Complete
		for _, m := range tt.Conflict.Members {
			if m.Change > p.Horizon {
				t.Errorf("after %d: %v changed by %v", polls, m.Words, m.Change)
			}
			if m.Wanted && m.Enough {
				named++
				if !later(m.Change) || m.Least && m.Change != whole.After.By {
					t.Errorf("after %d: %v, proven %v", polls, m.Change, m.Least)
				}
			}
		}
		if s := tt.After; s != nil && (s.By < whole.After.By || s.Nearest && s.By != whole.After.By || !later(s.By)) {
			t.Errorf("after %d: %v, nearest %v", polls, s.Message(), s.Nearest)
		}
		if tt.Conflict.ShortProven && tt.Conflict.Short != whole.Conflict.Short {
			t.Errorf("after %d: short by %v, proven", polls, tt.Conflict.Short)
		}
	}
	if named == 0 {
		t.Error("no change was named however long it took")
	}
}

// Looking at the dough is asked for with a context too.
func TestRobustEndsAnywhere(t *testing.T) {
	tt := plan(t, hall())
	whole, err := tt.Robust(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for polls := 0; polls < 200; polls++ {
		r, err := tt.Robust(&polled{context.Background(), polls})
		if err != nil || r.Share > whole.Share || r.Survives || r.ByMoving && !whole.ByMoving {
			t.Fatalf("after %d: %v, %v; in the end %v", polls, r, err, whole)
		}
	}
}

// A deadline holds for problems far too large to search. These took half a minute when the
// context was asked too seldom; the limit here is generous because the machine may be busy.
// BenchmarkDeadline measures.
func TestDeadlineOfLargeProblems(t *testing.T) {
	for name, p := range map[string]Problem{"1000 steps": crowd(1000),
		"1000 steps too early": tooEarly(crowd(1000), 48*time.Hour), "60 doughs": doughs(60)} {
		ctx, cancel := context.WithTimeout(context.Background(), 100*time.Millisecond)
		start := time.Now()
		tt, err := p.Best(ctx)
		cancel()
		unknown := tt.Verdict == Unknown && errors.Is(err, context.DeadlineExceeded)
		if took := time.Since(start); !unknown && (err != nil || !tt.TimeRanOut) || took > 10*time.Second {
			t.Errorf("%s: %v after %v, %v", name, tt.Verdict, took, err)
		}
	}
}

// A context that ended says so; it is no answer that there is no timetable, and one that ends late changes nothing.
func TestCanceledIsNotImpossible(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	tt, err := hall().Latest(ctx)
	if !errors.Is(err, context.Canceled) || tt.Verdict != Unknown || tt.Conflict != nil {
		t.Errorf("%v, %v", tt.Verdict, err)
	}
	if tt, err = hall().Latest(context.Background()); err != nil || tt.TimeRanOut {
		t.Errorf("%v, %v", tt.TimeRanOut, err)
	}
	r, err := tt.Robust(ctx)
	if err != nil || !r.TimeRanOut {
		t.Errorf("%v, %v", r, err)
	}
}

// A timetable that was cut, changed or never found is refused, not reckoned with.
func TestRobustOnlyOfWhatWasFound(t *testing.T) {
	found := plan(t, hall())
	for name, change := range map[string]func(*Timetable){
		"nothing": func(t *Timetable) { *t = Timetable{} }, "cut": func(t *Timetable) { t.Steps = t.Steps[:3] },
		"moved":    func(t *Timetable) { t.Steps[2].Start = t.Steps[2].Start.Add(time.Minute) },
		"no watch": func(t *Timetable) { t.Steps[3].Watch = nil }, "renamed": func(t *Timetable) { t.Steps[0].ID = "knead" },
		"only steps": func(t *Timetable) { *t = Timetable{Steps: t.Steps} },
	} {
		cut := found
		cut.Steps = append([]Timed(nil), found.Steps...)
		change(&cut)
		if r, err := cut.Robust(context.Background()); len(quantity.InputErrors(err)) != 1 || r.Survives {
			t.Errorf("%s: %v, %v", name, r, err)
		}
		if w := cut.Working(); w.Len() != 0 {
			t.Errorf("%s: a working of %d steps", name, w.Len())
		}
	}
}

// A context that is nil never ends.
func TestNilContext(t *testing.T) {
	var none context.Context
	tt, err := loadKitchen(t, "home4").Best(none)
	if err != nil || tt.Verdict != Optimal || tt.Cost != 5*309 {
		t.Fatal(tt.Verdict, tt.Cost, err)
	}
	if _, err := tt.Robust(none); err != nil {
		t.Fatal(err)
	}
	tt, err = loadKitchen(t, "two-doughs-by-1500").Latest(none)
	if err != nil || tt.Verdict != Infeasible || !tt.Conflict.Minimal {
		t.Fatal(tt.Verdict, err)
	}
}
