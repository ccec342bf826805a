package planner

import "math"

// bounder finds the lower bound of a state's cost: the cost with every node's cost replaced
// by its convex envelope over the times left to the node, and shortage ignored. Without
// shortage and where the envelope touches the cost, the bound is the cost itself.
type bounder struct {
	s     *state
	f     *flow
	scale int64 // slopes are whole numbers of 1/scale points
	step  int64 // all costs are Constant plus a multiple of step
	off   int64 // constant of the cost by node offsets

	linear []int64   // by node
	curves [][]Point // by node: the sum of its curves, at node time
	bends  [][]int   // arcs of the flow for the bends of the envelope
	envLo  []int     // bounds for which the envelope was made
	envHi  []int
	base   []int64 // constant of the envelope, scaled
	static int     // arcs of the flow that are not decisions
	points []Point
	try    []int64
}

// newBounder returns nil when the watch is over.
func newBounder(w *Watch, s *state, c Cost) *bounder {
	m := s.m
	b := &bounder{s: s, f: newFlow(w, m.n), off: c.Constant}
	b.linear = make([]int64, m.n)
	b.bends = make([][]int, m.n)
	b.envLo, b.envHi = make([]int, m.n), make([]int, m.n)
	b.base = make([]int64, m.n)
	for v, k := range c.Linear {
		if k != 0 && v != 0 {
			p := m.place[v]
			b.linear[p.node] += k
			b.off += k * int64(p.off)
		}
	}
	if !b.byNode(w, c.Curves) {
		return nil
	}
	b.units()
	b.network()
	return b
}

// byNode moves the curves to the nodes and adds those of each; false when the watch is over.
func (b *bounder) byNode(w *Watch, curves []Curve) bool {
	m := b.s.m
	lists := make([][]Curve, m.n)
	for _, k := range curves {
		p := m.place[k.Event]
		moved := Curve{Sign: k.Sign, Points: make([]Point, 0, len(k.Points))}
		for _, q := range k.Points {
			moved.Points = append(moved.Points, Point{q.T - p.off, q.V})
		}
		if w.spend(len(k.Points)) {
			return false
		}
		lists[p.node] = append(lists[p.node], moved)
	}
	b.curves = make([][]Point, m.n)
	for v, list := range lists {
		var ok bool
		if b.curves[v], ok = sum(w, list); !ok {
			return false
		}
	}
	return true
}

// units finds step, of which all costs are multiples, and a scale for which sums of slopes stay
// far from what an int64 holds.
func (b *bounder) units() {
	var gcd, slopes int64
	curved := false
	for v, k := range b.linear {
		gcd = divisor(gcd, k)
		slopes += abs64(k)
		var steep int64
		for i, q := range b.curves[v] {
			curved = true
			gcd = divisor(gcd, q.V)
			if i > 0 {
				d := q.V - b.curves[v][i-1].V
				gcd = divisor(gcd, d/int64(q.T-b.curves[v][i-1].T))
				steep = max(steep, abs64(d))
			}
		}
		slopes += steep
	}
	b.step, b.scale = max(1, gcd), 1
	if curved {
		b.scale = 1 << 20
	}
	for b.scale > 1 && slopes > (1<<40)/b.scale {
		b.scale /= 2
	}
}

// network lays the arcs of the flow: two of each node for its bounds, those of the model, and
// those for the bends of the costs.
func (b *bounder) network() {
	m, origin := b.s.m, b.s.m.n
	for v := 0; v < m.n; v++ {
		b.f.add(origin, v, 0, endless)
		b.f.add(v, origin, 0, endless)
	}
	for _, a := range m.arcs {
		b.f.add(a.From, a.To, int64(a.W), endless)
	}
	for v := 0; v < m.n; v++ {
		b.envLo[v], b.envHi[v] = 1, 0
		if len(b.curves[v]) > 0 {
			for k := 0; k < len(b.curves[v])+2*len(m.gaps[v]); k++ {
				b.bends[v] = append(b.bends[v], b.f.add(v, origin, 0, 0))
			}
		}
	}
	b.static = len(b.f.from)
	for v := 0; v < m.n; v++ {
		b.f.x[v] = int64(b.s.lo[v])
	}
}

func abs64(x int64) int64 {
	if x < 0 {
		return -x
	}
	return x
}

func divisor(a, b int64) int64 {
	a, b = abs64(a), abs64(b)
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// undo follows the state after it undid decisions.
func (b *bounder) undo() {
	for len(b.f.from) > b.static+len(b.s.added) {
		b.f.drop()
	}
}

// eval returns a lower bound of the cost of every timetable of the state; the times it comes
// from are those of the flow. When the watch is over the bound is the lowest number.
func (b *bounder) eval() int64 {
	s, f, n := b.s, b.f, b.s.m.n
	for k := len(f.from) - b.static; k < len(s.added); k++ {
		a := s.added[k]
		f.add(a.From, a.To, int64(a.W), endless)
	}
	for v := 0; v < n; v++ {
		f.w[2*v] = int64(s.lo[v])
		f.w[2*v+1] = -int64(s.hi[v])
		if len(b.curves[v]) > 0 {
			b.envelope(v)
		} else {
			f.base[v] = b.linear[v] * b.scale
		}
	}
	f.watch.spend(n)
	if !b.start() {
		return math.MinInt64
	}
	f.solve()
	if f.watch.Over() {
		return math.MinInt64
	}
	var total int64
	for v := 0; v < n; v++ {
		x := f.x[v]
		total += f.base[v]*x + b.base[v]
		for _, id := range b.bends[v] {
			if f.cap[id] > 0 && x > -f.w[id] {
				total += f.cap[id] * (x + f.w[id])
			}
		}
	}
	q := total / b.scale
	if total%b.scale > 0 {
		q++
	}
	// Round up to what a cost can be.
	q0 := q / b.step * b.step
	if q0 < q {
		q0 += b.step
	}
	return q0 + b.off
}

// start makes the times of the last solution satisfy the state, moving as little as is easy:
// later, else earlier, else to the earliest times, which always do. False when the watch is
// over.
func (b *bounder) start() bool {
	s, f, n := b.s, b.f, b.s.m.n
	if cap(b.try) < n {
		b.try = make([]int64, n)
	}
	x := b.try[:n]
	for v := range x {
		x[v] = max(f.x[v], int64(s.lo[v]))
	}
	if !b.later(x) {
		for v := range x {
			x[v] = min(f.x[v], int64(s.hi[v]))
		}
		if !b.earlier(x) {
			for v := range x {
				x[v] = int64(s.lo[v])
			}
		}
	}
	if f.watch.Over() {
		return false
	}
	copy(f.x, x)
	f.x[n] = 0
	return true
}

// later moves times that are not before the earliest later until all arcs hold; false when some
// time would be too late.
func (b *bounder) later(x []int64) bool {
	s, f := b.s, b.f
	for v, t := range x {
		if t > int64(s.hi[v]) {
			return false
		}
	}
	for moved := true; moved; {
		moved = false
		if f.watch.spend(len(f.from)) {
			return false
		}
		for a := 2 * len(x); a < len(f.from); a++ {
			if f.cap[a] != endless {
				continue
			}
			if u := f.to[a]; x[f.from[a]]+f.w[a] > x[u] {
				x[u] = x[f.from[a]] + f.w[a]
				moved = true
				if x[u] > int64(s.hi[u]) {
					return false
				}
			}
		}
	}
	return true
}

// earlier is the mirror image of later.
func (b *bounder) earlier(x []int64) bool {
	s, f := b.s, b.f
	for v, t := range x {
		if t < int64(s.lo[v]) {
			return false
		}
	}
	for moved := true; moved; {
		moved = false
		if f.watch.spend(len(f.from)) {
			return false
		}
		for a := 2 * len(x); a < len(f.from); a++ {
			if f.cap[a] != endless {
				continue
			}
			if u := f.from[a]; x[f.to[a]]-f.w[a] < x[u] {
				x[u] = x[f.to[a]] - f.w[a]
				moved = true
				if x[u] < int64(s.lo[u]) {
					return false
				}
			}
		}
	}
	return true
}

// cost is the true cost of the times in the solution, when they satisfy everything.
func (b *bounder) cost() int64 {
	c := b.off
	for v := range b.linear {
		c += b.linear[v]*b.f.x[v] + valueAt(b.curves[v], int(b.f.x[v]))
	}
	return c
}
