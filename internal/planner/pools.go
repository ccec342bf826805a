package planner

import "slices"

// bankrupt reports whether some pool cannot suffice; it may be wrong when the watch is over. It takes longer than
// propagate, so it is asked once at each node of the search.
func (s *state) bankrupt() bool {
	for k := range s.m.budgets {
		if s.overspent(&s.m.budgets[k]) {
			return true
		}
	}
	return false
}

// overspent reports whether the tasks that must lie in some span need more of a pool than
// there is of it in that span, or are more than fit into it one after the other: of stretches no shorter than p, a
// unit of the pool holds as many as p goes into the span.
//
// Source: for needs, Baptiste, Le Pape and Nuijten, Constraint-Based Scheduling (2001), section 3.3; the count is the
// dual feasible function of Lueker, "Bin packing with items uniformly distributed over intervals", FOCS 1983.
func (s *state) overspent(g *budget) bool {
	n := len(g.uses)
	begin := func(k int) int { a := s.m.start(g.uses[k].Task); return s.lo[a.node] + a.off }
	end := func(k int) int { b := s.m.end(g.uses[k].Task); return s.hi[b.node] + b.off }
	s.sorted, s.counts = resized(s.sorted, n), resized(s.counts, len(g.sizes))
	byEnd := s.sorted
	for k := range byEnd {
		byEnd[k] = k
	}
	slices.SortFunc(byEnd, func(a, b int) int { return end(a) - end(b) })
	for k := 0; k < n; k++ {
		if s.w.spend(n*(4+len(g.sizes)) + len(g.closed)) {
			return false
		}
		from, spent := begin(k), 0
		clear(s.counts)
		for _, j := range byEnd {
			if begin(j) < from || g.length[j] == 0 {
				continue
			}
			spent += g.length[j] * g.uses[j].Amount
			to := end(j)
			if spent > g.cap*(to-from) || len(g.closed) > 0 && spent > g.cap*g.open(from, to) {
				return true
			}
			for i, p := range g.sizes {
				if p <= g.length[j] {
					s.counts[i] += g.uses[j].Amount
				}
				if c := s.counts[i]; c > g.cap && c > g.cap*((to-from)/p) || c > g.cap && len(g.closed) > 0 &&
					c > g.cap*g.fit(from, to, p) {
					return true
				}
			}
		}
	}
	return false
}

// before reports whether the end of task i plus setup can lie at or before the start of j, and
// whether it must.
func (s *state) before(i, j, setup int) (can, must bool) {
	e, b := s.m.end(i), s.m.start(j)
	gap := setup + e.off - b.off // need x[b] − x[e] ≥ gap
	if e.node == b.node {
		return gap <= 0, gap <= 0
	}
	n := s.m.n
	if s.d[e.node*n+b.node] >= gap || s.hi[e.node]+gap <= s.lo[b.node] {
		return true, true
	}
	if s.lo[e.node]+gap > s.hi[b.node] {
		return false, false
	}
	if back := s.d[b.node*n+e.node]; back != none && back+gap > 0 {
		return false, false
	}
	return true, false
}

// precede decides that task i ends, plus setup, before j starts.
func (s *state) precede(i, j, setup int) bool {
	e, b := s.m.end(i), s.m.start(j)
	return s.connect(e.node, b.node, setup+e.off-b.off)
}

// notPrecede decides that task i does not end, plus setup, before j starts.
func (s *state) notPrecede(i, j, setup int) bool {
	e, b := s.m.end(i), s.m.start(j)
	// x[e] + e.off + setup ≥ x[b] + b.off + 1
	return s.connect(b.node, e.node, 1+b.off-e.off-setup)
}

// orders decides the pairs that have only one order left; false when one has none or the watch
// is over.
func (s *state) orders() bool {
	for _, p := range s.m.pairs {
		if s.w.spend(2) {
			return false
		}
		ij, mustIJ := s.before(p.i, p.j, p.ij)
		if mustIJ {
			continue
		}
		ji, mustJI := s.before(p.j, p.i, p.ji)
		if mustJI {
			continue
		}
		switch {
		case !ij && !ji:
			return false
		case !ij:
			if !s.precede(p.j, p.i, p.ji) {
				return false
			}
		case !ji:
			if !s.precede(p.i, p.j, p.ij) {
				return false
			}
		default:
			continue
		}
		if !s.bounds() {
			return false
		}
	}
	return true
}

// profile reasons with the parts of tasks that are certain: too many of them at once is a
// contradiction, and a task that does not fit beside them moves away. False also when the watch
// is over.
func (s *state) profile(c *crowd) bool {
	// Certain parts are from the latest start to the earliest end.
	s.edges = s.edges[:0]
	for _, u := range c.uses {
		a, b := s.m.start(u.Task), s.m.end(u.Task)
		if from, to := s.hi[a.node]+a.off, s.lo[b.node]+b.off; from < to {
			s.edges = append(s.edges, from, to)
		}
	}
	if len(s.edges) == 0 {
		return true
	}
	slices.Sort(s.edges)
	s.edges = slices.Compact(s.edges)
	s.cuts = s.cuts[:0]
	for k := 0; k+1 < len(s.edges); k++ {
		s.cuts = append(s.cuts, cut{s.edges[k], s.edges[k+1], 0})
	}
	for _, u := range c.uses {
		a, b := s.m.start(u.Task), s.m.end(u.Task)
		from, to := s.hi[a.node]+a.off, s.lo[b.node]+b.off
		if s.w.spend(len(s.cuts)) {
			return false
		}
		for k := range s.cuts {
			if from <= s.cuts[k].from && s.cuts[k].to <= to {
				s.cuts[k].use += u.Amount
				if s.cuts[k].use > c.cap {
					return false
				}
			}
		}
	}
	for _, u := range c.uses {
		a, b := s.m.start(u.Task), s.m.end(u.Task)
		from, to := s.hi[a.node]+a.off, s.lo[b.node]+b.off
		if s.w.spend(len(s.cuts)) {
			return false
		}
		for _, k := range s.cuts {
			if k.use+u.Amount <= c.cap || from <= k.from && k.to <= to {
				continue
			}
			// Not together with the block: the task ends before it or starts after it.
			if s.lo[b.node]+b.off > k.from && !s.raise(a.node, k.to-a.off) {
				return false
			}
			if s.hi[a.node]+a.off < k.to && !s.lower(b.node, k.from-b.off) {
				return false
			}
		}
	}
	return true
}
