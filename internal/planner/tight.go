package planner

import "slices"

// Tightest is where a pool is nearest to being short: the span in which the tasks that must lie in it need most of
// what there is. It is for a shop without a timetable of which no shortage is the reason. Nil when the watch is over
// before anything is known, or when no two tasks must share a span.
//
// How far each task can move is shaved, so that what must lie in a span is seen although only trying tells; and no
// further than until some span is nearly full, since from what has no timetable anything follows in the end.
// Method: singleton consistency on bounds. Source: Martin and Shmoys, "A new approach to computing optimal schedules
// for the job-shop scheduling problem", IPCO 1996.
func (s *Shop) Tightest(w *Watch) (best *Shortage) {
	e, _ := s.energy(w)
	if e == nil {
		return nil
	}
	m := build(w, s, e.lo, e.hi)
	if m == nil {
		return nil
	}
	for k := range m.budgets {
		m.budgets[k].closed = joined(slices.Concat(m.budgets[k].closed, m.idle(&m.budgets[k])))
	}
	st := newState(w, m)
	if st == nil {
		return nil
	}
	for v := range m.n {
		st.enqueue(v)
	}
	left := st.propagate() && !st.bankrupt()
	for moved := true; moved && (best == nil || nearlyFull*best.Room > (nearlyFull+1)*best.Need); {
		for i := range s.Tasks {
			a, b := m.start(i), m.end(i)
			e.lo[StartOf(i)], e.hi[EndOf(i)] = st.lo[a.node]+a.off, st.hi[b.node]+b.off
		}
		for k := range s.Pools {
			p := &s.Pools[k]
			g := budget{cap: p.Capacity, uses: p.Uses, closed: p.closed()}
			for _, u := range p.Uses {
				g.length = append(g.length, e.length[u.Task].least)
			}
			g.closed = joined(slices.Concat(g.closed, m.idle(&g)))
			if x := e.fullest(&g); x != nil && (best == nil || x.worse(best)) {
				x.Pool, best = k, x
				x.Tasks = e.within(x)
			}
		}
		if !left {
			break
		}
		moved, left = st.shave()
	}
	return best
}

// nearlyFull says from when on a span is: ten in eleven parts of it are used.
const nearlyFull = 10

// fullest is the span in which at least two tasks need most of what there is, and no more; nil when there is none.
func (e *energy) fullest(g *budget) (best *Shortage) {
	if g.cap == 0 {
		return nil
	}
	uses := slices.Clone(g.uses)
	slices.SortStableFunc(uses, func(a, b Use) int { return e.hi[EndOf(a.Task)] - e.hi[EndOf(b.Task)] })
	for _, first := range uses {
		if e.w.spend(len(uses) * (2 + len(g.closed))) {
			return best
		}
		from, need, tasks := e.lo[StartOf(first.Task)], 0, 0
		for k, u := range uses {
			long, to := e.length[u.Task].least, e.hi[EndOf(u.Task)]
			if e.lo[StartOf(u.Task)] >= from && long > 0 {
				need, tasks = need+long*u.Amount, tasks+1
			}
			if k+1 < len(uses) && e.hi[EndOf(uses[k+1].Task)] == to {
				continue // that one lies in the span too
			}
			x := Shortage{From: from, To: to, Need: need, Room: g.cap * g.open(from, to)}
			if tasks > 1 && x.Need <= x.Room && (best == nil || x.worse(best)) {
				best = &x
			}
		}
	}
	return best
}

// joined are spans in order, those that touch made one.
func joined(spans [][2]int) (out [][2]int) {
	slices.SortFunc(spans, func(a, b [2]int) int { return a[0] - b[0] })
	for _, c := range spans {
		if k := len(out) - 1; k >= 0 && c[0] <= out[k][1] {
			out[k][1] = max(out[k][1], c[1])
		} else {
			out = append(out, c)
		}
	}
	return out
}

// idle is when none of the tasks of a budget can be under way, because each is kept out: an oven that nobody can load
// at night is no use at night. Only tasks of fixed length tell.
func (m *model) idle(g *budget) (spans [][2]int) {
	first := true
	for k, u := range g.uses {
		if g.length[k] == 0 {
			continue
		}
		var own [][2]int
		if a, b := m.start(u.Task), m.end(u.Task); a.node == b.node {
			for _, gap := range m.gaps[a.node] {
				if from, to := gap.a+b.off, gap.b+a.off; from < to {
					own = append(own, [2]int{from, to})
				}
			}
		}
		if first {
			spans, first = own, false
			continue
		}
		spans = common(spans, own)
	}
	return spans
}

// common is what lies in a span of each of two lists.
func common(a, b [][2]int) (out [][2]int) {
	for _, x := range a {
		for _, y := range b {
			if from, to := max(x[0], y[0]), min(x[1], y[1]); from < to {
				out = append(out, [2]int{from, to})
			}
		}
	}
	return out
}

// shaveParts is how finely the times of a node are shaved: into so many parts.
const shaveParts = 32

// shave takes from the ends of the times of each node what propagation refutes; left is false when nothing is left or
// the watch is over.
func (s *state) shave() (moved, left bool) {
	for v := range s.m.n {
		least := max(1, (s.m.hi[v]-s.m.lo[v])/shaveParts)
		for step := (s.hi[v] - s.lo[v]) / 2; step >= least; step /= 2 {
			for s.lo[v]+step < s.hi[v] && s.refutes(func() bool { return s.lower(v, s.lo[v]+step) }) {
				if moved = true; !s.keep(func() bool { return s.raise(v, s.lo[v]+step+1) }) {
					return true, false
				}
			}
			for s.lo[v]+step < s.hi[v] && s.refutes(func() bool { return s.raise(v, s.hi[v]-step) }) {
				if moved = true; !s.keep(func() bool { return s.lower(v, s.hi[v]-step-1) }) {
					return true, false
				}
			}
		}
	}
	return moved, !s.w.Over()
}

// refutes reports whether propagation rules out what a move leaves, and takes the move back; false when the watch is
// over.
func (s *state) refutes(move func() bool) bool {
	if s.w.Over() {
		return false
	}
	mark := s.mark()
	ok := s.keep(move)
	if s.w.Over() {
		return false
	}
	s.undo(mark)
	return !ok
}

// keep makes a move and propagates; false when that leaves nothing or the watch is over.
func (s *state) keep(move func() bool) bool { return move() && s.propagate() && !s.bankrupt() }
