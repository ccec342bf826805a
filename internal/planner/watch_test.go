package planner

import (
	"context"
	"testing"
)

// counted is a context that counts how often it is asked, and ends after so many times.
type counted struct {
	context.Context
	asked, end int
}

func (c *counted) Err() error {
	if c.asked++; c.asked > c.end {
		return context.Canceled
	}
	return nil
}

func TestWatch(t *testing.T) {
	var none *Watch
	if none.spend(1<<30) || none.Over() || NewWatch(nil, 0).Over() { //nolint:staticcheck // a nil context is allowed here
		t.Error("a watch of nothing is over")
	}
	c := &counted{Context: context.Background(), end: 3}
	w := NewWatch(c, 0) // asks once
	for i := 0; i < 3*lookEvery-1; i++ {
		if w.spend(1) {
			t.Fatalf("over after %d units, asked %d times", i, c.asked)
		}
	}
	if c.asked != 3 {
		t.Errorf("asked %d times in three spells of work, not at the start and twice", c.asked)
	}
	if !w.spend(1) || !w.Over() || !w.spend(0) {
		t.Error("not over when the context has ended, or not for good")
	}
	g := NewWatch(&counted{Context: context.Background()}, 5*lookEvery)
	for i := 0; i < 4; i++ {
		if g.spend(lookEvery) {
			t.Fatalf("over after %d spells of grace, not 5", i)
		}
	}
	if g.spend(lookEvery); !g.Over() {
		t.Error("grace has no end")
	}
}

// Wherever a large search is cut off it says that it is not complete, and does not go on asking:
// a shop of 300 tasks with every kind of rule, cut off at many of its looks at the context.
func TestSearchStopsAtOnce(t *testing.T) {
	const tasks = 300
	s := &Shop{Net: &Net{Events: 1 + 2*tasks, Limit: 20000}, Tasks: tasks}
	p := Pool{Capacity: 1, Changeover: 3}
	q := Pool{Capacity: 5}
	for i := 0; i < tasks; i++ {
		a, b := StartOf(i), EndOf(i)
		s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: a, Rule: -1}, Arc{From: b, To: 0, W: -20000, Rule: -1, Upper: true},
			Arc{From: a, To: b, W: 5 + i%9, Rule: -1}, Arc{From: b, To: a, W: -20, Rule: -1, Upper: true})
		p.Uses = append(p.Uses, Use{Task: i, Amount: 1})
		q.Uses = append(q.Uses, Use{Task: i, Amount: 1 + i%4})
		s.Net.Holes = append(s.Net.Holes, Hole{Task: i, From: 100, To: 300, Rule: -1},
			Hole{Task: i, From: 900, To: 1000, Rule: -1})
	}
	s.Pools = []Pool{p, q}
	cost := Cost{Linear: make([]int64, s.Net.Events)}
	for i := 0; i < tasks; i++ {
		cost.Linear[EndOf(i)] = int64(1 + i%3)
	}
	for end := 0; end < 400; end += 1 + end/3 {
		c := &counted{Context: context.Background(), end: end}
		out := s.Search(NewWatch(c, 0), cost, Options{})
		if out.Done {
			t.Fatalf("after %d looks a search of %d tasks is complete", end, tasks)
		}
		if more := c.asked - end; more > 3 {
			t.Errorf("after %d looks the context was asked %d times more", end, more)
		}
		if out.Times != nil && out.Bound > out.Cost {
			t.Errorf("after %d looks: cost %d, bound %d", end, out.Cost, out.Bound)
		}
	}
}
