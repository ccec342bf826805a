package planner

// Method is a way to rule out every timetable of a shop, from the cheapest to the dearest. Each sees more than the
// ones before it.
type Method int

// The methods.
const (
	ByNeed     Method = iota // the network, and whether some pool suffices for what must lie in a span of time
	ByBounds                 // bounds, orders that have one way left, what a pool is certain to be used for
	ByTrial                  // each of two orders tried in turn
	BySearch                 // everything
	MethodsEnd               // the number of methods
)

// Refuted answers whether a method rules out every timetable: Yes is proof, No is that it does not see it (or, by
// search, that there is a timetable), and Unsure that the watch was over first.
func (s *Shop) Refuted(w *Watch, by Method) Truth {
	if by == BySearch {
		switch s.Possible(w) {
		case Yes:
			return No
		case No:
			return Yes
		}
		return Unsure
	}
	e, clash := s.energy(w)
	switch {
	case clash != nil:
		return Yes
	case e == nil:
		return Unsure
	case by == ByNeed:
		short := e.worst() != nil
		if !short && w.Over() {
			return Unsure
		}
		return truth(short)
	}
	m := build(w, s, e.lo, e.hi)
	if m == nil {
		return Unsure
	}
	st := newState(w, m)
	if st == nil {
		return Unsure
	}
	for v := 0; v < m.n; v++ {
		st.enqueue(v)
	}
	ok := st.propagate() && !st.bankrupt()
	if ok && by == ByTrial {
		ok = st.probe()
	}
	if !ok && w.Over() {
		return Unsure
	}
	return truth(!ok)
}

// probe tries both orders of every pair that has both left and keeps what follows from one being impossible; false
// when some pair has none left or the watch is over. Method: singleton consistency on the disjunctions.
func (s *state) probe() bool {
	holds := func(i, j, setup int) bool {
		mark := s.mark()
		ok := s.precede(i, j, setup) && s.propagate() && !s.bankrupt()
		if !s.w.Over() {
			s.undo(mark)
		}
		return ok || s.w.Over()
	}
	for again := true; again; {
		again = false
		for _, p := range s.m.pairs {
			ij, must := s.before(p.i, p.j, p.ij)
			ji, mustJI := s.before(p.j, p.i, p.ji)
			if must || mustJI || !ij || !ji {
				continue
			}
			ij, ji = holds(p.i, p.j, p.ij), holds(p.j, p.i, p.ji)
			if s.w.Over() || !ij && !ji {
				return false
			}
			if ij && ji {
				continue
			}
			i, j, setup := p.i, p.j, p.ij
			if ji {
				i, j, setup = j, i, p.ji
			}
			if !s.precede(i, j, setup) || !s.propagate() || s.bankrupt() {
				return false
			}
			again = true
		}
	}
	return true
}
