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
	Effort int // most nodes to look at; 0: no limit
}

// Search looks for the timetable of least cost. The same shop, cost and options give the same
// outcome unless the watch ends the search.
func (s *Shop) Search(w *Watch, cost Cost, opt Options) Outcome {
	lo, c := s.Net.Earliest(w)
	if c != nil {
		return Outcome{Done: true, Bound: noBound}
	}
	hi, _, _ := s.Net.Latest(w)
	if lo == nil || hi == nil {
		return Outcome{Bound: math.MinInt64}
	}
	return s.searchWithin(w, lo, hi, cost, opt)
}

// searchWithin searches between the earliest and the latest times of the network.
func (s *Shop) searchWithin(w *Watch, lo, hi []int, cost Cost, opt Options) Outcome {
	r := s.search(w, lo, hi, cost, opt)
	if r == nil {
		return Outcome{Bound: math.MinInt64}
	}
	switch {
	case r.s.propagate():
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

// search prepares a search between the earliest and the latest times of the network; nil when the watch is over.
func (s *Shop) search(w *Watch, lo, hi []int, cost Cost, opt Options) *search {
	m := build(w, s, lo, hi)
	if m == nil {
		return nil
	}
	st := newState(w, m)
	if st == nil {
		return nil
	}
	b := newBounder(w, st, cost)
	if b == nil {
		return nil
	}
	for v := range m.n {
		st.enqueue(v)
	}
	return &search{w: w, shop: s, m: m, s: st, b: b, opt: opt, best: noBound, lost: noBound}
}

// quickNodes bounds the first pass, which looks for some timetable without judging how to go
// on.
const quickNodes = 300

// run searches three times: quickly, for a timetable to measure others by, and by learning from failures where that
// finds none; around that one, for better ones; then everything.
func (r *search) run() {
	r.quick, r.until = true, quickNodes
	r.visit(math.MinInt64)
	r.quick, r.until = false, 0
	if r.lost == noBound || r.stopped() {
		return // the quick pass saw everything, or the time is up
	}
	if r.times == nil && r.none() {
		r.lost = noBound
		return
	}
	r.improve()
	if r.descend() {
		r.lost = noBound
		return
	}
	if r.p = newPrices(r.w, r.s, r.b); r.stopped() {
		return
	}
	r.lost = noBound
	r.explore()
}

// anyWork bounds the search for any timetable where the quick pass found none: some seconds' worth.
const anyWork = 1 << 30

// none looks for any timetable and reports whether there is none.
func (r *search) none() bool {
	found := r.learnt(newLearner(r.w.Within(anyWork), r.shop))
	if found.truth == Yes {
		r.take(found.times)
	}
	return found.truth == No
}

// learnt lets a learner look for a timetable, whose failures count as nodes.
func (r *search) learnt(l *learner) (found learned) {
	if l == nil || r.stopped() {
		return found
	}
	if r.opt.Effort > 0 {
		l.most = max(1, r.opt.Effort-r.nodes)
	}
	found = l.run()
	r.nodes += found.fails
	return found
}

// take keeps a timetable that is better than the best one.
func (r *search) take(times []int) {
	x := r.b.f.x
	kept := slices.Clone(x)
	for v := 1; v < len(times); v++ {
		p := r.m.place[v]
		x[p.node] = int64(times[v] - p.off)
	}
	r.accept()
	copy(x, kept)
}

type search struct {
	quick   bool
	w       *Watch
	shop    *Shop
	m       *model
	s       *state
	b       *bounder
	p       *prices // nil: nothing is shared, or it would take too much memory
	charged int     // how often prices were looked for
	far     bool    // the state is far from the one for which prices were looked for last
	opt     Options
	best    int64 // cost of the best timetable so far
	times   []int // by event
	found   []int // the same by node
	lost    int64 // least bound of what was left out because the search was stopped
	open    frontier
	nodes   int
	until   int // number of nodes at which this pass ends; 0: it goes on
	evals   int
	over    bool
}

// stopped reports whether to give up.
func (r *search) stopped() bool {
	if !r.over {
		if r.until > 0 && r.nodes > r.until {
			return true
		}
		r.over = r.w.Over() || r.opt.Effort > 0 && r.nodes >= r.opt.Effort
	}
	return r.over
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
		relaxed := r.b.eval()
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
		} else if r.priced() {
			var moved, open bool
			if bound, moved, open = r.charge(bound); !open {
				return
			}
			if moved {
				continue
			}
		}
		if !r.quick {
			choices = r.few(choices)
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

// accept keeps the relaxed solution, which satisfies everything.
func (r *search) accept() {
	cost := r.b.cost()
	if cost >= r.best {
		return
	}
	r.best = cost
	r.times, r.found = make([]int, len(r.m.place)), make([]int, r.m.n)
	for v := range r.found {
		r.found[v] = int(r.b.f.x[v])
	}
	for v := 1; v < len(r.m.place); v++ {
		p := r.m.place[v]
		r.times[v] = int(r.b.f.x[p.node]) + p.off
	}
}
