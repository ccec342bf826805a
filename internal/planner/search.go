package planner

import "math"

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

// run searches three times: quickly, for a timetable to measure others by, and with more care where that finds none;
// around that one, for better ones; then everything.
func (r *search) run() {
	r.quick, r.until = true, quickNodes
	r.visit(math.MinInt64)
	r.quick, r.until = false, 0
	if r.lost == noBound || r.stopped() {
		return // the quick pass saw everything, or the time is up
	}
	if !r.opt.First {
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
	}
	r.lost = noBound
	r.explore()
}

// anyNodes bounds the search for any timetable where the quick pass found none.
const anyNodes = 20_000

// none looks for any timetable and reports whether there is none.
func (r *search) none() bool {
	lost := r.lost
	r.opt.First, r.lost, r.until = true, noBound, r.nodes+anyNodes
	r.visit(math.MinInt64)
	proven := r.lost == noBound && r.times == nil
	r.opt.First, r.over, r.until, r.lost = false, false, 0, lost
	return proven && !r.stopped()
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
		r.over = r.w.Over() || r.opt.Effort > 0 && r.nodes >= r.opt.Effort || r.opt.First && r.times != nil
	}
	return r.over
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
