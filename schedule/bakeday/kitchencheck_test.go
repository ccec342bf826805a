package bakeday

import (
	"context"
	"encoding/json"
	"os"
	"slices"
	"strconv"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// howMany random days of a kitchen are planned and judged: 24, or as many as MASLIN_DAYS says, from the seed
// MASLIN_DAYS_FROM on.
//
//	MASLIN_DAYS=10000 nice go test ./schedule/bakeday -run TestRandomDays -v -timeout 5h
func howMany(t *testing.T) (from, to int) {
	number := func(name string, otherwise int) int {
		text := os.Getenv(name)
		if text == "" {
			return otherwise
		}
		n, err := strconv.Atoi(text)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		return n
	}
	otherwise := 24
	if testing.Short() {
		otherwise = 8
	}
	from = number("MASLIN_DAYS_FROM", 0)
	return from, from + number("MASLIN_DAYS", otherwise)
}

// tally counts what became of the days drawn.
type tally struct {
	refused, risen, cut, possible, impossible, remedies, together, nearest int
	slowest                                                                time.Duration
	has                                                                    map[string]int
}

// Days of random breads in random kitchens: what the data form says breaks no rule, and where a day cannot be its
// conflict is a smallest one, and every remedy and every time that is named makes the day possible when it is planned
// again with the bake or the kitchen written so.
func TestRandomDays(t *testing.T) {
	from, to := howMany(t)
	n := tally{has: map[string]int{}}
	for seed := from; seed < to; seed++ {
		d := someDay(randomly(seed))
		ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
		begun := time.Now()
		k, err := d.Plan(ctx, d.clock(t))
		if took := time.Since(begun); took > time.Second {
			t.Logf("day %d: %v, possible %v, time ran out %v", seed, took, k.Possible(), k.TimeRanOut)
			n.slowest = max(n.slowest, took)
		}
		cancel()
		if len(quantity.InputErrors(err)) > 0 {
			n.refused++
			if os.Getenv("MASLIN_DAYS_REFUSED") != "" {
				t.Logf("day %d: %v", seed, err)
			}
			continue
		}
		if err != nil {
			t.Logf("day %d: %v", seed, err)
			n.cut++
			continue
		}
		for _, what := range d.has() {
			n.has[what]++
		}
		text, err := json.Marshal(k)
		if err != nil {
			t.Fatal(err)
		}
		ordered, err := json.Marshal(d.Order)
		if err != nil {
			t.Fatal(err)
		}
		if k.Possible() {
			n.possible++
			for _, b := range judged(ordered, text) {
				t.Errorf("day %d: %s", seed, b)
			}
			continue
		}
		n.impossible++
		n.waysOut(t, seed, d, k)
	}
	t.Logf("%+v", n)
	if n.possible == 0 || !testing.Short() && (n.impossible == 0 || n.remedies == 0) {
		t.Error("the days drawn are all alike")
	}
}

// waysOut plans a day that cannot be again with everything that its answer names.
func (n *tally) waysOut(t *testing.T, seed int, d drawnDay, k KitchenDay) {
	t.Helper()
	again := func(what any, o Order) {
		if next, err := o.Plan(context.Background(), d.clock(t)); err != nil || !next.Possible() || next.Missed != nil {
			t.Errorf("day %d: planned again with it, %v does not help (%v)", seed, what, err)
		}
	}
	for _, by := range []*quantity.Elapsed{k.Earlier, k.Later} {
		if by == nil {
			continue
		}
		if o, ok := shifted(d.Order, k, by.Duration()); ok {
			n.nearest++
			again(*by, o)
		}
	}
	c := k.Timetable.Conflict
	if c == nil {
		n.risen++ // a dough rises too far
		return
	}
	if !c.Minimal && !k.TimeRanOut && !k.Timetable.TimeRanOut {
		t.Errorf("day %d: a conflict that is not minimal: %v", seed, c)
	}
	w := k.whyNot()
	if len(w.Remedies) > 5 {
		t.Errorf("day %d: %d remedies", seed, len(w.Remedies))
	}
	for _, r := range w.Remedies {
		o, ok := moved1(d.Order, k, r)
		named := waysTried(k).remedies
		at := slices.IndexFunc(named, func(m schedule.Member) bool { return ruleData(m) == r })
		if !ok && at >= 0 {
			o, ok = written(d.Order, k, named[at])
		}
		if !ok {
			t.Errorf("day %d: nobody can write %v (%v)", seed, r.Words, r.Remedy)
			continue
		}
		n.remedies++
		again(r.Words.String()+" ("+r.Remedy.String()+")", o)
	}
	if len(w.Together) == 0 {
		return
	}
	o, ok := d.Order, true
	for _, m := range waysTried(k).together {
		if m.Wanted {
			o, ok = d.Order, false
			break
		}
		var one bool
		if o, one = written(o, k, m); !one {
			ok = false
		}
	}
	if ok {
		n.together++
		again(c.AllOf(), o)
	}
}
