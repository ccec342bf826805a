package planner

import "slices"

// Contingent is a duration that nature chooses between Lo and Hi, from event A to event C.
type Contingent struct {
	A, C, Lo, Hi int
}

// Controllable reports whether the events other than the ends of contingent durations can be
// timed, seeing only what has happened so far, so that every arc of the network is kept
// whatever nature chooses. Whoever times them may act in the moment in which an end is seen.
// Holes are not looked at. The answer is no when the watch is over.
//
// The rules are those of Morris and Muscettola, "Temporal dynamic controllability revisited",
// AAAI 2005: besides sums of differences, a wait (upper case), what must be done before an
// end that cannot be foreseen (lower case), and both together (cross case).
func (n *Net) Controllable(watch *Watch, list []Contingent) bool {
	return n.Differences(watch).Controllable(watch, list)
}

// Differences are the longest paths of a network, to which contingent durations are added again and again.
type Differences struct {
	events int
	d      []int // nil when the network cannot be kept, or the watch was over
}

// Differences works out the longest paths of the network.
func (n *Net) Differences(watch *Watch) Differences {
	k := n.Events
	d := make([]int, k*k)
	apart(d, k)
	for _, a := range n.Arcs {
		d[a.To*k+a.From] = max(d[a.To*k+a.From], a.W)
	}
	if !closure(watch, d, k) {
		return Differences{}
	}
	return Differences{k, d}
}

// Controllable answers as [Net.Controllable] of the network.
func (n Differences) Controllable(watch *Watch, list []Contingent) bool {
	if n.d == nil {
		return false
	}
	g := newDispatch(watch, n, list)
	for _, c := range list {
		if !g.add(c.A, c.C, -c.Hi) || !g.add(c.C, c.A, c.Lo) {
			return false
		}
	}
	for {
		g.changed = false
		for c := range list {
			if !g.reduce(c) {
				return false
			}
		}
		if !g.possible() {
			return false
		}
		if !g.changed {
			return true
		}
	}
}

// dispatch is what is known of the differences and waits of a network with contingent durations.
type dispatch struct {
	watch   *Watch
	k       int   // events
	d       []int // d[u*k+v]: x[u] is at least this much after x[v]
	list    []Contingent
	wait    [][]int // wait[c][P]: P comes this much after A, or after C
	all     []int   // scratch: the differences with the waits as if they were rules
	changed bool
}

func newDispatch(watch *Watch, n Differences, list []Contingent) *dispatch {
	k := n.events
	g := &dispatch{watch: watch, k: k, list: list, d: slices.Clone(n.d), all: make([]int, k*k)}
	for _, c := range list {
		w := make([]int, k)
		for p := range w {
			w[p] = none
		}
		w[c.C] = c.Hi
		g.wait = append(g.wait, w)
	}
	return g
}

// add tightens a difference; false when that closes a positive cycle or the watch is over.
func (g *dispatch) add(u, v, w int) bool {
	if w <= g.d[u*g.k+v] {
		return true
	}
	g.changed = true
	return tighten(g.watch, g.d, g.k, u, v, w)
}

// reduce applies the rules once to contingent duration c; false as add.
func (g *dispatch) reduce(c int) bool {
	l, w, k := g.list[c], g.wait[c], g.k
	// Upper case: a path to a waiting event waits too.
	for p := 0; p < k; p++ {
		if g.watch.spend(k) {
			return false
		}
		for q, via := range g.d[p*k : p*k+k] {
			if w[q] != none && via != none && via+w[q] > w[p] {
				w[p] = via + w[q]
				g.changed = true
			}
		}
	}
	// Cross case: an end that cannot be foreseen may come at its earliest.
	for e, o := range g.list {
		if e != c && w[o.C] > 0 && w[o.C]-o.Lo > w[o.A] {
			w[o.A] = w[o.C] - o.Lo
			g.changed = true
		}
	}
	// A wait that is over before the end can come is no wait but a rule.
	for p := 0; p < k; p++ {
		if p != l.C && w[p] != none && w[p] <= l.Lo && !g.add(p, l.A, w[p]) {
			return false
		}
	}
	// Lower case.
	for v := 0; v < k; v++ {
		if x := g.d[l.C*k+v]; x > 0 && !g.add(l.A, v, x-l.Lo) {
			return false
		}
	}
	return true
}

// possible reports whether the network has a solution in which every wait is waited for.
func (g *dispatch) possible() bool {
	copy(g.all, g.d)
	for c, l := range g.list {
		for p, w := range g.wait[c] {
			if w > g.all[p*g.k+l.A] && !tighten(g.watch, g.all, g.k, p, l.A, w) {
				return false
			}
		}
	}
	return true
}
