package planner

// descend looks, where the cost is the time of one node alone, for a timetable in which that node is earlier (or later)
// than in the best one, until there is none, and reports whether that was proven. Questions of whether anything fits
// are answered better by what failed before than by bounds. Method: destructive bounds. Source: Klein and Scholl,
// "Computing lower bounds by destructive improvement", European Journal of Operational Research 112 (1999).
func (r *search) descend() bool {
	v, ok := r.b.single()
	for ok && r.times != nil && !r.stopped() {
		mark, best, times := r.s.mark(), r.best, r.times
		if r.b.linear[v] > 0 {
			ok = r.s.lower(v, r.found[v]-1)
		} else {
			ok = r.s.raise(v, r.found[v]+1)
		}
		proven := !ok || !r.s.propagate()
		if !proven {
			r.times, r.best = nil, noBound
			if proven = r.none(); r.times == nil {
				r.times, r.best = times, best
			}
		}
		if r.w.Over() {
			return false
		}
		r.undo(mark)
		if proven || r.best == best {
			return proven
		}
	}
	return false
}

// single is the only node with a cost, which is a slope; false when there is none or another.
func (b *bounder) single() (node int, ok bool) {
	for v, slope := range b.linear {
		if len(b.curves[v]) > 0 || slope != 0 && ok {
			return 0, false
		}
		if slope != 0 {
			node, ok = v, true
		}
	}
	return node, ok
}
