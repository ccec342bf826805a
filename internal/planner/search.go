package planner

import (
	"math"
	"slices"
)

// Outcome is what a search found.
type Outcome struct {
	Times []int // of every event; nil when none was found
	Cost  int64
	Bound int64 // no timetable costs less
	Done  bool  // the search was complete: Times is proven best, or there is none
	Nodes int
}

// noBound is a cost above every cost.
const noBound = math.MaxInt64

// Options tune a search.
type Options struct {
	Effort int  // most nodes to look at; 0: no limit
	First  bool // any timetable will do
}

// Search looks for the timetable of least cost. The same shop, cost and options give the same
// outcome unless the watch ends the search.
func (s *Shop) Search(w *Watch, cost Cost, opt Options) Outcome {
	stopped := Outcome{Bound: math.MinInt64}
	lo, c := s.Net.Earliest(w)
	if c != nil {
		return Outcome{Done: true, Bound: noBound}
	}
	hi, _, _ := s.Net.Latest(w)
	if lo == nil || hi == nil {
		return stopped
	}
	m := build(w, s, lo, hi)
	if m == nil {
		return stopped
	}
	st := newState(w, m)
	if st == nil {
		return stopped
	}
	b := newBounder(w, st, cost)
	if b == nil {
		return stopped
	}
	r := &search{w: w, shop: s, m: m, s: st, b: b, opt: opt, best: noBound, lost: noBound}
	for v := 0; v < m.n; v++ {
		st.enqueue(v)
	}
	switch {
	case st.propagate():
		r.run()
	case w.Over():
		r.lost = math.MinInt64
	}
	out := Outcome{Times: r.times, Cost: r.best, Nodes: r.nodes, Done: r.lost == noBound}
	switch {
	case !out.Done:
		out.Bound = min(r.lost, r.best)
	default:
		out.Bound = r.best
	}
	return out
}

// quickNodes bounds the first pass, which looks for some timetable without judging how to go
// on.
const quickNodes = 300

// run searches twice: first quickly, for a timetable to measure others by, then with care.
func (r *search) run() {
	r.quick = true
	r.visit(math.MinInt64)
	r.quick = false
	if r.lost == noBound || r.stopped() {
		return // the quick pass saw everything, or the time is up
	}
	r.lost, r.over = noBound, false
	r.visit(math.MinInt64)
}

type search struct {
	quick bool
	w     *Watch
	shop  *Shop
	m     *model
	s     *state
	b     *bounder
	opt   Options
	best  int64 // cost of the best timetable so far
	times []int
	lost  int64 // least bound of what was left out because the search was stopped
	nodes int
	evals int
	over  bool
}

// stopped reports whether to give up.
func (r *search) stopped() bool {
	if !r.over {
		if r.quick && r.nodes > quickNodes {
			return true
		}
		r.over = r.w.Over() || r.opt.Effort > 0 && r.nodes >= r.opt.Effort || r.opt.First && r.times != nil
	}
	return r.over
}

// move is one way out of a difficulty: a bound or an order.
type move struct {
	kind    moveKind
	a, b, w int // node and time, or tasks and setup
}

type moveKind int8

const (
	atMost  moveKind = iota // x[a] ≤ w
	atLeast                 // x[a] ≥ w
	ordered                 // task a ends, plus w, before task b starts
)

// choice is a difficulty of the relaxed solution and all ways out of it.
type choice struct {
	moves []move
	rank  int64
}

func (r *search) apply(v move) bool {
	switch v.kind {
	case atMost:
		return r.s.lower(v.a, v.w)
	case atLeast:
		return r.s.raise(v.a, v.w)
	default:
		return r.s.precede(v.a, v.b, v.w)
	}
}

// eval measures the state: by the lower bound of its cost, or, when any timetable will do, by how little room is
// left to its events. The times looked at next are those of the bound, or the earliest ones. The measure of the
// room is that of Smith and Cheng, "Slack-based heuristics for constraint satisfaction scheduling", AAAI 1993.
func (r *search) eval() int64 {
	if !r.opt.First {
		return r.b.eval()
	}
	var room int64
	for v, t := range r.s.lo {
		r.b.f.x[v] = int64(t)
		room += int64(r.s.hi[v] - t)
	}
	r.w.spend(len(r.s.lo))
	return -room
}

// refuse applies the opposite of a move, where that is a single difference.
func (r *search) refuse(v move) bool {
	switch v.kind {
	case atMost:
		return r.s.raise(v.a, v.w+1)
	case atLeast:
		return r.s.lower(v.a, v.w-1)
	default:
		return r.s.notPrecede(v.a, v.b, v.w)
	}
}

func (r *search) undo(mark int) {
	if r.w.Over() {
		return // nobody looks at the state again
	}
	r.s.undo(mark)
	r.b.undo()
}

type scored struct {
	move  move
	bound int64
}

// visit searches the state, which has been propagated; bound is what its parent knew.
func (r *search) visit(bound int64) {
	r.nodes++
	if r.stopped() {
		r.lost = min(r.lost, bound)
		return
	}
	for {
		if r.s.bankrupt() {
			return
		}
		relaxed := r.eval()
		if r.w.Over() {
			r.lost = min(r.lost, bound)
			return
		}
		if bound = max(bound, relaxed); bound >= r.best {
			return
		}
		choices := r.choices()
		if r.w.Over() { // some may be missing
			r.lost = min(r.lost, bound)
			return
		}
		if len(choices) == 0 {
			r.accept()
			return
		}
		if r.quick {
			choices = choices[:1]
		}
		open, closed := r.judge(choices, bound)
		if r.stopped() { // the judgment may be incomplete
			r.lost = min(r.lost, bound)
			return
		}
		if closed {
			if len(open) == 0 {
				return
			}
			// One way is left, or orders were fixed: go on from here.
			if len(open) == 1 {
				if !r.apply(open[0].move) || !r.s.propagate() {
					if r.stopped() {
						r.lost = min(r.lost, bound)
					}
					return
				}
				continue
			}
		}
		r.branch(open, bound)
		return
	}
}

// branch visits the state after each move, those before it refused.
func (r *search) branch(open []scored, bound int64) {
	for k, o := range open {
		mark := r.s.mark()
		ok := true
		for _, earlier := range open[:k] {
			if ok = r.refuse(earlier.move); !ok {
				break
			}
		}
		switch {
		case ok && r.apply(o.move) && r.s.propagate():
			if o.bound < r.best {
				r.visit(max(bound, o.bound))
			}
		case r.stopped():
			r.lost = min(r.lost, bound)
		}
		r.undo(mark)
	}
}

// judge tries every way out of every choice and returns the ways of the choice that raises the
// bound most, cheapest first. closed says that the choice has at most one way left.
func (r *search) judge(choices []choice, bound int64) (open []scored, closed bool) {
	var bestLow, bestHigh int64 = -1, -1
	bestCount := 0
	for _, c := range choices {
		var ways []scored
		for _, v := range c.moves {
			mark := r.s.mark()
			if r.apply(v) && r.s.propagate() {
				e := r.eval()
				r.evals++
				if e < r.best {
					ways = append(ways, scored{v, max(bound, e)})
				}
			}
			r.undo(mark)
			if r.w.Over() {
				return nil, false
			}
		}
		if len(ways) <= 1 {
			return ways, true
		}
		slices.SortStableFunc(ways, func(a, b scored) int {
			switch {
			case a.bound < b.bound:
				return -1
			case a.bound > b.bound:
				return 1
			}
			return 0
		})
		var low, high int64
		if len(ways) > 0 {
			low, high = ways[0].bound, ways[len(ways)-1].bound
		}
		better := open == nil || low > bestLow || low == bestLow && (len(ways) < bestCount || len(ways) == bestCount && high > bestHigh)
		if better {
			open, bestLow, bestHigh, bestCount = ways, low, high, len(ways)
		}
	}
	return open, false
}

// accept keeps the relaxed solution, which satisfies everything.
func (r *search) accept() {
	cost := r.b.cost()
	if cost >= r.best {
		return
	}
	r.best = cost
	r.times = make([]int, len(r.m.place))
	for v := 1; v < len(r.m.place); v++ {
		p := r.m.place[v]
		r.times[v] = int(r.b.f.x[p.node]) + p.off
	}
}
