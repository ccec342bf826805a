package planner

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
	const far = 1 << 29
	k := n.Events
	d := make([]int, k*k) // d[u*k+v]: x[v] − x[u] is at most this
	for i := range d {
		d[i] = far
	}
	for v := 0; v < k; v++ {
		d[v*k+v] = 0
	}
	set := func(u, v, w int) { d[u*k+v] = min(d[u*k+v], w) }
	for _, a := range n.Arcs { // x[To] ≥ x[From] + W is x[From] − x[To] ≤ −W
		set(a.To, a.From, -a.W)
	}
	for _, c := range list {
		set(c.A, c.C, c.Hi)
		set(c.C, c.A, -c.Lo)
	}
	if !shortest(watch, d, k) {
		return false
	}
	wait := make([][]int, len(list)) // wait[c][P]: P comes this much (negative) after A, or after C
	for c := range wait {
		wait[c] = make([]int, k)
		for p := range wait[c] {
			wait[c][p] = far
		}
		wait[c][list[c].C] = -list[c].Hi
	}
	all := make([]int, k*k)
	for {
		changed := false
		add := func(u, v, w int) bool {
			if w >= d[u*k+v] {
				return true
			}
			changed = true
			return tighten(watch, d, k, u, v, w)
		}
		for c, l := range list {
			w := wait[c]
			// Upper case: a path to a waiting event waits too.
			for p := 0; p < k; p++ {
				if watch.spend(k) {
					return false
				}
				for q := 0; q < k; q++ {
					if w[q] < far && d[p*k+q] < far && d[p*k+q]+w[q] < w[p] {
						w[p] = d[p*k+q] + w[q]
						changed = true
					}
				}
			}
			// Cross case: an end that cannot be foreseen may come at its earliest.
			for e, o := range list {
				if e != c && w[o.C] < 0 && o.Lo+w[o.C] < w[o.A] {
					w[o.A] = o.Lo + w[o.C]
					changed = true
				}
			}
			// A wait that is over before the end can come is no wait but a rule.
			for p := 0; p < k; p++ {
				if p != l.C && w[p] < far && w[p] >= -l.Lo && !add(p, l.A, w[p]) {
					return false
				}
			}
			// Lower case.
			for v := 0; v < k; v++ {
				if x := d[l.C*k+v]; x < 0 && !add(l.A, v, l.Lo+x) {
					return false
				}
			}
		}
		copy(all, d)
		for c, l := range list {
			for p := 0; p < k; p++ {
				if w := wait[c][p]; w < all[p*k+l.A] && !tighten(watch, all, k, p, l.A, w) {
					return false
				}
			}
		}
		if !changed {
			return true
		}
	}
}

// shortest finds all shortest paths; false when there is a negative cycle or the watch is over.
func shortest(w *Watch, d []int, k int) bool {
	const far = 1 << 29
	for m := 0; m < k; m++ {
		for u := 0; u < k; u++ {
			um := d[u*k+m]
			if w.spend(1) {
				return false
			}
			if um >= far {
				continue
			}
			w.spend(k)
			row, via := d[u*k:u*k+k], d[m*k:m*k+k]
			for v, mv := range via {
				if mv < far && um+mv < row[v] {
					row[v] = um + mv
				}
			}
		}
		if d[m*k+m] < 0 {
			return false
		}
	}
	for v := 0; v < k; v++ {
		if d[v*k+v] < 0 {
			return false
		}
	}
	return true
}

// tighten adds one difference to shortest paths; false when it closes a negative cycle or the
// watch is over.
func tighten(watch *Watch, d []int, k, u, v, w int) bool {
	const far = 1 << 29
	if u == v {
		return w >= 0
	}
	if back := d[v*k+u]; back < far && back+w < 0 {
		return false
	}
	for p := 0; p < k; p++ {
		pu := d[p*k+u]
		if pu >= far {
			continue
		}
		pu += w
		if watch.spend(k) {
			return false
		}
		for q := 0; q < k; q++ {
			if vq := d[v*k+q]; vq < far && pu+vq < d[p*k+q] {
				d[p*k+q] = pu + vq
			}
		}
	}
	return true
}
