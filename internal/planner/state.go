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
	w      *Watch // once it is over nothing is proven any more
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

// resized is the row with room for n entries.
func resized[T any](row []T, n int) []T {
	if cap(row) < n {
		return make([]T, n)
	}
	return row[:n]
}
