package bakeday

import (
	"context"
	"errors"
	"slices"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// polled is a context that ends after it was asked a number of times.
type polled struct {
	context.Context
	left int
}

func (p *polled) Err() error {
	if p.left <= 0 {
		return context.DeadlineExceeded
	}
	p.left--
	return nil
}

// A context that ends is never an impossible bake: either its own error, or a day that says that the time ran out and
// keeps all its rules.
func TestTimeThatRanOutIsNoAnswer(t *testing.T) {
	late := hall()
	late.Wanted = OnDate(wallclock.MustMoment("2026-11-26 12:30"))
	for name, c := range map[string]struct {
		bake     Bake
		possible bool
	}{"possible": {hall(), true}, "impossible": {late, false}} {
		none, cut, whole := 0, 0, 0
		step := 4 // looks at about 30 moments; when short at about 15
		if testing.Short() {
			step = 2
		}
		for polls := 0; polls < 4000; polls += 1 + polls/step {
			d, err := c.bake.Plan(&polled{context.Background(), polls}, wednesday(t))
			if err != nil {
				if !errors.Is(err, context.DeadlineExceeded) || d.Possible() {
					t.Fatalf("%s after %d: %v", name, polls, err)
				}
				none++
				continue
			}
			if d.Possible() != c.possible || !c.possible && d.Data().Why == nil {
				t.Fatalf("%s after %d: possible %v, %v", name, polls, d.Possible(), d.Timetable.Verdict)
			}
			if d.Possible() {
				if broken := d.problem.Check(d.Timetable); len(broken) > 0 && !d.Careful {
					t.Errorf("%s after %d: %v", name, polls, broken)
				}
			}
			if d.TimeRanOut {
				cut++
			} else {
				whole++
			}
			if d.Data().TimeRanOut != d.TimeRanOut {
				t.Error("the data do not say that the time ran out")
			}
		}
		if none == 0 || cut == 0 || whole == 0 {
			t.Errorf("%s: no answer %d times, cut %d times, whole %d times", name, none, cut, whole)
		}
	}
}

func TestFitSaysThatTheTimeRanOut(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := slow().Fit(ctx, wednesday(t), nil); !errors.Is(err, context.Canceled) {
		t.Errorf("nothing is known, but: %v", err)
	}
	whole, err := slow().Fit(context.Background(), wednesday(t), nil)
	if err != nil || whole.TimeRanOut {
		t.Fatal(err, whole.TimeRanOut)
	}
	cut := 0
	for _, polls := range []int{200, 400, 800, 1600} {
		f, err := slow().Fit(&polled{context.Background(), polls}, wednesday(t), nil)
		if err == nil && f.TimeRanOut {
			if cut++; f.Tried >= whole.Tried || f.Best.Points > f.AsWritten.Points {
				t.Errorf("after %d: tried %d of %d", polls, f.Tried, whole.Tried)
			}
		}
	}
	if cut == 0 {
		t.Error("no search was cut short")
	}
}

// A clock in another zone than the bake's is refused, and so is a bake without a zone.
func TestZonesMustAgree(t *testing.T) {
	now := wednesday(t).Now
	york, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Fatal(err)
	}
	nowhere := hall()
	nowhere.Kitchen.Zone = ""
	for name, c := range map[string]struct {
		bake Bake
		zone *time.Location
		want error
	}{
		"another": {hall(), york, quantity.ErrInconsistent}, "local": {hall(), time.Local, quantity.ErrInconsistent},
		"none":         {hall(), nil, quantity.ErrRequired},
		"bake without": {nowhere, zurich(t), quantity.ErrRequired}, "neither": {nowhere, nil, quantity.ErrRequired},
	} {
		_, err := c.bake.Plan(context.Background(), KitchenClock{Now: now, Zone: c.zone})
		at := slices.IndexFunc(quantity.InputErrors(err),
			func(e *quantity.InputError) bool { return e.Path == "kitchen.zone" && errors.Is(e, c.want) })
		if at < 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
}
