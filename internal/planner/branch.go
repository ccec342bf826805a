package planner

import (
	"cmp"
	"slices"
)

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
	split bool // it parts the times of a node without being in the way
}

// nearBest is the share of the cost below which a gap is small. Then only what raises the bound at once brings the
// search to an end; while it is wide, parting times lets the prices work.
const nearBest = 100

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
	if r.p != nil {
		r.p.undo()
	}
}

type scored struct {
	move  move
	bound int64
}

// branch visits the state after each move, those before it refused. Once the stretch of the frontier is over what is
// left is kept for later.
func (r *search) branch(open []scored, bound int64) {
	here := r.open.here
	moves := make([]move, len(open))
	for k, o := range open {
		moves[k] = o.move
	}
	for k, o := range open {
		mark := r.s.mark()
		ok := true
		for _, earlier := range moves[:k] {
			if ok = r.refuse(earlier); !ok {
				break
			}
		}
		switch {
		case ok && r.apply(o.move) && r.s.propagate():
			if o.bound < r.best {
				r.open.here = &path{here, moves[:k], o.move}
				if r.open.full(r.nodes) {
					r.open.push(max(bound, o.bound))
				} else {
					r.visit(max(bound, o.bound))
				}
			}
		case r.stopped():
			r.lost = min(r.lost, bound)
		}
		r.undo(mark)
	}
	r.open.here = here
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
				e := r.b.eval()
				r.evals++
				if e < r.best && r.priced() {
					e = max(e, r.p.now())
				}
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
		slices.SortStableFunc(ways, func(a, b scored) int { return cmp.Compare(a.bound, b.bound) })
		low, high := ways[0].bound, ways[len(ways)-1].bound
		if c.split && open != nil && low <= bound && (r.best-bound) < r.best/nearBest {
			continue
		}
		better := open == nil || low > bestLow || low == bestLow &&
			(len(ways) < bestCount || len(ways) == bestCount && high > bestHigh)
		if better {
			open, bestLow, bestHigh, bestCount = ways, low, high, len(ways)
		}
	}
	return open, false
}
