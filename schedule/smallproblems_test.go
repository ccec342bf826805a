package schedule

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// drawnProblem draws a small day of two or three breads with a baker and an oven: steps of fixed and of living length,
// links with and without an upper limit, absences, changeovers, and wishes that often cannot be met.
func drawnProblem(seed uint64) Problem {
	r := rand.New(rand.NewPCG(seed, 20261129))
	p := Problem{Anchor: dawn, Horizon: mins(20 * 60), Grid: mins([]int{1, 5, 15}[r.IntN(3)])}
	long := func(least, most int) quantity.Elapsed { return mins(15 * (least + r.IntN(most-least+1))) }
	at := func(quarters int) time.Time { return dawn.Add(mins(15 * quarters).Duration()) }
	breads := 2 + r.IntN(2)
	for b := range breads {
		id := func(step string) string { return fmt.Sprintf("%s %d", step, b+1) }
		rise := long(4, 12)
		p.Steps = append(p.Steps,
			DayStep{ID: id("mix"), Min: long(1, 2), Needs: []Need{{Resource: "baker", Amount: 1}}},
			DayStep{ID: id("rise"), Min: rise, Max: rise + long(0, 4)},
			DayStep{ID: id("shape"), Min: long(1, 3), Needs: []Need{{Resource: "baker", Amount: 1}}},
			DayStep{ID: id("bake"), Min: long(2, 4), Needs: []Need{{Resource: "oven", Amount: 1, Program: quantity.Celsius(
				float64(220 + 10*r.IntN(2))).String()}}})
		most := NoLimit
		if r.IntN(2) == 0 {
			most = long(0, 4)
		}
		p.Links = append(p.Links, Link{From: id("mix"), To: id("rise")}, Link{From: id("rise"), To: id("shape"), Max: most},
			Link{From: id("shape"), To: id("bake"), Min: long(1, 3), Max: NoLimit})
		end := 12 + r.IntN(24)
		p.Bounds = append(p.Bounds, Bound{Step: id("bake"), Edge: End, Latest: at(end), Wanted: true,
			Words: working.Say("bread %d by %d", b+1, end)})
	}
	away := 8 + r.IntN(20)
	p.Resources = []Resource{{ID: "baker", Capacity: 1, Closed: []Span{{From: at(away), To: at(away + 4 + r.IntN(12)),
		Words: working.Say("away")}}}, {ID: "oven", Capacity: 1 + r.IntN(2), Changeover: mins(15 * r.IntN(2)),
		Awkward: []Awkward{{From: at(0), To: at(12), PerMinute: r.IntN(5)}}}}
	return p
}

// Small days drawn at random, planned late, early and cheaply, and what is in the way where they cannot be.
func TestSmallDays(t *testing.T) {
	ctx := context.Background()
	var b strings.Builder
	possible := 0
	for seed := range uint64(16) {
		p := drawnProblem(seed)
		name := fmt.Sprint("day ", seed)
		tt, err := p.Latest(ctx)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if tt.Bound != tt.Cost {
			t.Errorf("%s: a cost of %d with a bound of %d, where the latest is asked for", name, tt.Cost, tt.Bound)
		}
		b.WriteString(asKept(t, name+", latest", tt))
		if tt.Verdict == Infeasible {
			b.WriteString(working.Telling{Width: 110}.Text(tt.Working()) + "\n")
			continue
		}
		possible++
		early, err := p.Earliest(ctx)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		best, err := p.Best(ctx)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, one := range []Timetable{tt, early, best} {
			if broken := p.Check(one); len(broken) > 0 {
				t.Errorf("%s: %v", name, broken)
			}
		}
		for i, s := range early.Steps {
			if s.Start.After(tt.Steps[i].Start) {
				t.Errorf("%s: the earliest of %s is after the latest", name, s.ID)
			}
		}
		if best.Bound > best.Cost || best.Cost > tt.Cost || best.Cost > early.Cost {
			t.Errorf("%s: the best costs %d of %d and %d, with a bound of %d", name, best.Cost, tt.Cost, early.Cost, best.Bound)
		}
		for _, other := range []Timetable{early, best} {
			for _, s := range other.Steps {
				fmt.Fprintf(&b, "%s %s, ", s.ID, s.Start.Format("15:04"))
			}
			fmt.Fprintf(&b, "cost %d, bound %d\n", other.Cost, other.Bound)
		}
	}
	if possible < 4 || possible > 12 {
		t.Errorf("%d of 16 days are possible", possible)
	}
	trial.Kept(t, "smalldays.txt", b.String())
}
