package planner

import "slices"

// descend looks, where the cost is the time of one node alone, for a timetable in which that node is earlier (or
// later) than in the best one, until there is none, and reports whether that was proven. Questions of whether
// anything fits are answered better by what failed before than by bounds, and what failed for one time fails for the
// next. Method: destructive bounds. Source: Klein and Scholl, "Computing lower bounds by destructive improvement",
// European Journal of Operational Research 112 (1999).
func (r *search) descend() bool {
	v, ok := r.b.single()
	if !ok || r.times == nil || r.stopped() {
		return false
	}
	event := slices.IndexFunc(r.m.place, func(p place) bool { return p.node == v })
	l := newLearner(r.w, r.shop)
	for l != nil && !r.stopped() {
		if r.b.linear[v] > 0 {
			l.bound(event, r.times[event]-1, false)
		} else {
			l.bound(event, r.times[event]+1, true)
		}
		found := r.learnt(l)
		if found.truth != Yes {
			return found.truth == No
		}
		r.take(found.times)
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
