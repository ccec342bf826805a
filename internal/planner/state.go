package planner

import "slices"

// state is a model with decisions: bounds, differences and their closure, all undoable.
type state struct {
	m      *model
	lo, hi []int
	// d[u*n+v] is the greatest w for which x[v] ≥ x[u] + w is known; nil when nothing is shared.
	d []int

	out, in [][]link // arcs by node, those of the decisions at the ends
	trail   []undo
	added   []Arc // decisions and what they imply, for the flow

	queue  []int
	queued []bool
	cuts   []cut // blocks of the profile, scratch
	edges  []int
	dirty  bool // bounds or differences moved since pairs and crowds were looked at
	buf    []int
	sorted []int
	counts []int
	blamed []int64 // of each task, how often it was in what could not be
	w      *Watch  // once it is over nothing is proven any more
}

type link struct{ to, w int }

type undo struct {
	kind  int8
	index int
	old   int
}

const (
	undoLo int8 = iota
	undoHi
	undoD
	undoArc
)

type cut struct{ from, to, use int }

// newState returns nil when the watch is over before the paths are known.
func newState(w *Watch, m *model) *state {
	s := &state{w: w, m: m, lo: slices.Clone(m.lo), hi: slices.Clone(m.hi)}
	s.blamed = make([]int64, len(m.place)/2)
	s.out, s.in = make([][]link, m.n), make([][]link, m.n)
	s.queued = make([]bool, m.n)
	for _, a := range m.arcs {
		s.out[a.From] = append(s.out[a.From], link{a.To, a.W})
		s.in[a.To] = append(s.in[a.To], link{a.From, a.W})
	}
	if len(m.pairs) > 0 || len(m.crowds) > 0 {
		if !s.close() {
			return nil
		}
	}
	s.dirty = true
	return s
}

// close finds all longest paths; false when the watch is over.
func (s *state) close() bool {
	n := s.m.n
	if s.w.spend(n * n) {
		return false
	}
	s.d = make([]int, n*n)
	apart(s.d, n)
	for _, a := range s.m.arcs {
		s.d[a.From*n+a.To] = max(s.d[a.From*n+a.To], a.W)
	}
	return closure(s.w, s.d, n)
}

func (s *state) mark() int { return len(s.trail) }

func (s *state) undo(mark int) {
	for len(s.trail) > mark {
		u := s.trail[len(s.trail)-1]
		s.trail = s.trail[:len(s.trail)-1]
		switch u.kind {
		case undoLo:
			s.lo[u.index] = u.old
		case undoHi:
			s.hi[u.index] = u.old
		case undoD:
			s.d[u.index] = u.old
		case undoArc:
			a := s.added[len(s.added)-1]
			s.added = s.added[:len(s.added)-1]
			s.out[a.From] = s.out[a.From][:len(s.out[a.From])-1]
			s.in[a.To] = s.in[a.To][:len(s.in[a.To])-1]
		}
	}
	for _, v := range s.queue {
		s.queued[v] = false
	}
	s.queue = s.queue[:0]
}

func (s *state) enqueue(v int) {
	if !s.queued[v] {
		s.queued[v] = true
		s.queue = append(s.queue, v)
	}
}

// raise makes x[v] ≥ t, skipping gaps; false when nothing is left.
func (s *state) raise(v, t int) bool {
	if t <= s.lo[v] {
		return true
	}
	for _, g := range s.m.gaps[v] {
		if t <= g.a {
			break
		}
		if t < g.b {
			t = g.b
		}
	}
	if t > s.hi[v] {
		return false
	}
	s.trail = append(s.trail, undo{undoLo, v, s.lo[v]})
	s.lo[v] = t
	s.dirty = true
	s.enqueue(v)
	return true
}

// lower makes x[v] ≤ t, skipping gaps; false when nothing is left.
func (s *state) lower(v, t int) bool {
	if t >= s.hi[v] {
		return true
	}
	gaps := s.m.gaps[v]
	for k := len(gaps) - 1; k >= 0; k-- {
		if t >= gaps[k].b {
			break
		}
		if t > gaps[k].a {
			t = gaps[k].a
		}
	}
	if t < s.lo[v] {
		return false
	}
	s.trail = append(s.trail, undo{undoHi, v, s.hi[v]})
	s.hi[v] = t
	s.dirty = true
	s.enqueue(v)
	return true
}

// connect adds x[v] ≥ x[u] + w; false when that contradicts what is known.
func (s *state) connect(u, v, w int) bool {
	n := s.m.n
	if u == v {
		return w <= 0
	}
	if s.d != nil {
		if s.d[u*n+v] >= w {
			return true
		}
		if s.w.spend(n) {
			return false
		}
		if back := s.d[v*n+u]; back != none && back+w > 0 {
			return false
		}
		if cap(s.buf) < n {
			s.buf = make([]int, n)
		}
		heads := s.buf[:0]
		for j := 0; j < n; j++ {
			if s.d[v*n+j] != none && w+s.d[v*n+j] > s.d[u*n+j] {
				heads = append(heads, j)
			}
		}
		for i := 0; i < n; i++ {
			iu := s.d[i*n+u]
			if iu == none {
				continue
			}
			iu += w
			if s.w.spend(len(heads)) {
				return false
			}
			for _, j := range heads {
				if t := iu + s.d[v*n+j]; t > s.d[i*n+j] {
					s.trail = append(s.trail, undo{undoD, i*n + j, s.d[i*n+j]})
					s.d[i*n+j] = t
				}
			}
		}
	}
	s.trail = append(s.trail, undo{kind: undoArc})
	s.added = append(s.added, Arc{From: u, To: v, W: w})
	s.out[u] = append(s.out[u], link{v, w})
	s.in[v] = append(s.in[v], link{u, w})
	s.dirty = true
	return s.raise(v, s.lo[u]+w) && s.lower(u, s.hi[v]-w)
}

// bounds moves bounds along arcs and across splits until nothing moves; false when nothing is
// left or the watch is over.
func (s *state) bounds() bool {
	for len(s.queue) > 0 {
		v := s.queue[len(s.queue)-1]
		s.queue = s.queue[:len(s.queue)-1]
		s.queued[v] = false
		lo, hi := s.lo[v], s.hi[v]
		if s.w.spend(1 + len(s.out[v]) + len(s.in[v]) + len(s.m.splitsOf[v])) {
			return false
		}
		for _, l := range s.out[v] {
			if lo+l.w > s.lo[l.to] && !s.raise(l.to, lo+l.w) {
				return false
			}
		}
		for _, l := range s.in[v] {
			if hi-l.w < s.hi[l.to] && !s.lower(l.to, hi-l.w) {
				return false
			}
		}
		for _, k := range s.m.splitsOf[v] {
			p := s.m.splits[k]
			if s.lo[p.e] > p.a && !s.raise(p.s, p.b) {
				return false
			}
			if s.hi[p.s] < p.b && !s.lower(p.e, p.a) {
				return false
			}
		}
	}
	return true
}

// propagate moves bounds and decides orders that have only one way left; false when nothing
// is left or the watch is over.
func (s *state) propagate() bool {
	for {
		if !s.bounds() {
			return false
		}
		if !s.dirty {
			return true
		}
		s.dirty = false
		if !s.orders() {
			return false
		}
		if s.dirty {
			continue
		}
		for k := range s.m.crowds {
			if !s.profile(&s.m.crowds[k]) {
				return false
			}
		}
	}
}

// bankrupt reports whether some pool cannot suffice; it may be wrong when the watch is over. It takes longer than propagate, so it is
// asked once at each node of the search.
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
				s.blameSpan(g, from, to)
				return true
			}
			for i, p := range g.sizes {
				if p <= g.length[j] {
					s.counts[i] += g.uses[j].Amount
				}
				if c := s.counts[i]; c > g.cap && c > g.cap*((to-from)/p) || c > g.cap && len(g.closed) > 0 && c > g.cap*g.fit(from, to, p) {
					s.blameSpan(g, from, to)
					return true
				}
			}
		}
	}
	return false
}

// blame counts that tasks were in what could not be.
func (s *state) blame(tasks ...int) {
	for _, i := range tasks {
		s.blamed[i]++
	}
}

// blameSpan blames the tasks that must lie in a span.
func (s *state) blameSpan(g *budget, from, to int) {
	for _, u := range g.uses {
		a, b := s.m.start(u.Task), s.m.end(u.Task)
		if s.lo[a.node]+a.off >= from && s.hi[b.node]+b.off <= to {
			s.blamed[u.Task]++
		}
	}
}

// resized is the row with room for n entries.
func resized[T any](row []T, n int) []T {
	if cap(row) < n {
		return make([]T, n)
	}
	return row[:n]
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
			s.blame(p.i, p.j)
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
					s.blame(u.Task)
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
