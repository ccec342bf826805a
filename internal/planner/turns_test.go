package planner

import (
	"testing"

	"pgregory.net/rapid"
)

// loads draws a shop of a few tasks that share one oven, some with a task of their own before, and perhaps with one
// task that comes before all of them and one that comes after.
func loads(t *rapid.T) *Shop {
	limit := rapid.IntRange(6, 12).Draw(t, "limit")
	s := &Shop{Net: &Net{Events: 1, Limit: limit}}
	task := func(long, lo, hi int) int {
		i := s.Tasks
		s.Tasks++
		s.Net.Events += 2
		s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: StartOf(i), W: lo, Rule: -1},
			Arc{From: EndOf(i), To: 0, W: -hi, Rule: -1},
			Arc{From: StartOf(i), To: EndOf(i), W: long, Rule: -1}, Arc{From: EndOf(i), To: StartOf(i), W: -long, Rule: -1})
		return i
	}
	oven := Pool{Capacity: rapid.IntRange(1, 3).Draw(t, "capacity"), Rule: 1}
	if oven.Capacity == 1 {
		oven.Changeover = rapid.IntRange(0, 1).Draw(t, "changeover")
	}
	need := oven.Capacity/2 + 1
	enter, exit := -1, -1
	if rapid.IntRange(0, 3).Draw(t, "enter") > 0 {
		enter = task(1, 0, limit)
	}
	if rapid.IntRange(0, 3).Draw(t, "exit") > 0 {
		exit = task(1, 0, limit)
	}
	for range rapid.IntRange(2, 3).Draw(t, "loads") {
		i := task(rapid.IntRange(1, 3).Draw(t, "long"), rapid.IntRange(0, 3).Draw(t, "lo"),
			limit-rapid.IntRange(0, 3).Draw(t, "early"))
		oven.Uses = append(oven.Uses, Use{Task: i, Amount: need})
		arc := func(a, b, w int) { s.Net.Arcs = append(s.Net.Arcs, Arc{From: a, To: b, W: w, Rule: -1}) }
		if rapid.IntRange(0, 3).Draw(t, "own") == 0 {
			j := task(1, 0, limit)
			arc(StartOf(j), StartOf(i), rapid.IntRange(0, 2).Draw(t, "lag"))
			arc(StartOf(i), StartOf(j), -3)
		}
		if enter >= 0 {
			arc(StartOf(enter), StartOf(i), rapid.IntRange(0, 1).Draw(t, "in"))
		}
		if exit >= 0 {
			arc(EndOf(i), StartOf(exit), rapid.IntRange(-1, 1).Draw(t, "out"))
		}
	}
	s.Pools = []Pool{oven}
	return s
}

// The least cost of what keeps its turn is exact for any costs, and so is the least cost with each event at each of its
// times; the times found keep all differences that are not left to prices.
func TestTurnsAreExact(t *testing.T) {
	seen, entered := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := loads(t)
		if _, clash := s.Net.Earliest(nil); clash != nil {
			return
		}
		r := within(s, Cost{Linear: make([]int64, s.Net.Events)}, Options{})
		if !r.s.propagate() {
			return
		}
		f := plant(r.m)
		c := f.turns
		if c == nil {
			return
		}
		seen++
		if c.enter != nil && c.exit != nil {
			entered++
		}
		n := r.m.n
		q := newReckoner(f, n)
		for v := range n {
			q.lo[v], q.hi[v] = r.s.lo[v], r.s.hi[v]
			for range q.hi[v] - q.lo[v] + 1 {
				q.own[v] = append(q.own[v], rapid.Int64Range(-9, 9).Draw(t, "cost"))
			}
		}
		c.order(q, r.s)
		keeps := func(x []int) bool {
			for v, p := range f.parent {
				if p >= 0 && (x[v]-x[p] < f.near[v] || x[v]-x[p] > f.far[v]) {
					return false
				}
			}
			for i, a := range c.links {
				start := x[a.node] + a.off
				if c.enter != nil && start < x[c.enter.node]+c.enter.off || c.exit != nil &&
					x[c.exit.node] < start+a.long-c.exit.off {
					return false
				}
				for _, b := range c.links[:i] {
					if other := x[b.node] + b.off; start < other+b.long && other < start+a.long {
						return false
					}
				}
			}
			return true
		}
		want, at, x := endless, map[[2]int]int64{}, make([]int, n)
		var try func(v int, cost int64)
		try = func(v int, cost int64) {
			if v == n {
				if keeps(x) {
					want = min(want, cost)
					for u, t := range x {
						if old, ok := at[[2]int{u, t}]; !ok || cost < old {
							at[[2]int{u, t}] = cost
						}
					}
				}
				return
			}
			for i, cost1 := range q.own[v] {
				x[v] = q.lo[v] + i
				try(v+1, cost+cost1)
			}
		}
		if n > 5 {
			return // trying everything would take too long
		}
		try(0, 0)
		if got := q.least(); got != want {
			t.Fatalf("least cost %d, want %d", got, want)
		}
		if want == endless {
			return
		}
		var sum int64
		for v := range n {
			sum += q.own[v][q.x[v]-q.lo[v]]
		}
		if !keeps(q.x) || sum != want {
			t.Fatalf("%v costs %d, want %d", q.x, sum, want)
		}
		q.marginals()
		linked := want
		for v, p := range f.parent { // trees beside the turns
			if p < 0 && !f.tied[v] {
				least := endless
				for _, cost := range q.all[v] {
					least = min(least, cost)
				}
				linked -= least
			}
		}
		for _, v := range c.nodes() {
			for i, cost := range q.all[v] {
				known, ok := at[[2]int{v, q.lo[v] + i}]
				if ok != (cost < endless) || ok && known-want != cost-linked {
					t.Fatalf("node %d at %d costs %d more, want %d more", v, q.lo[v]+i, cost-linked, known-want)
				}
			}
		}
	})
	if seen == 0 || entered == 0 {
		t.Errorf("%d times turns, %d between two others", seen, entered)
	}
}

// What needs more than half of a pool is put in turn; nothing new is said where it needs all of it.
func TestHalved(t *testing.T) {
	for _, c := range []struct {
		capacity int
		amounts  []int
		want     int
	}{{3, []int{2, 2, 1}, 2}, {3, []int{3, 3, 1}, 0}, {4, []int{2, 2, 3}, 0}, {5, []int{3, 5, 4}, 3}, {1, []int{1, 1},
		0}} {
		g := budget{cap: c.capacity}
		for i, a := range c.amounts {
			g.uses, g.length = append(g.uses, Use{Task: i, Amount: a}), append(g.length, 10+i)
		}
		got := 0
		for _, h := range g.halved() {
			got = len(h.uses)
			for k, u := range h.uses {
				if h.cap != 1 || u.Amount != 1 || 2*c.amounts[u.Task] <= c.capacity || h.length[k] != 10+u.Task {
					t.Errorf("%v of %d: %+v", c.amounts, c.capacity, h)
				}
			}
		}
		if got != c.want {
			t.Errorf("%v of %d: %d tasks, want %d", c.amounts, c.capacity, got, c.want)
		}
	}
}
