package planner

import (
	"math"
	"slices"
)

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
	b.curves = make([][]Point, m.n)
	b.bends = make([][]int, m.n)
	b.envLo, b.envHi = make([]int, m.n), make([]int, m.n)
	b.base = make([]int64, m.n)
	gcd := int64(0)
	var slopes int64 // sum of steepest slopes
	for v, k := range c.Linear {
		if k == 0 || v == 0 {
			continue
		}
		p := m.place[v]
		b.linear[p.node] += k
		b.off += k * int64(p.off)
	}
	for _, k := range b.linear {
		gcd = divisor(gcd, k)
		slopes += abs64(k)
	}
	byNode := make([][]Curve, m.n)
	for _, k := range c.Curves {
		p := m.place[k.Event]
		moved := Curve{Sign: k.Sign}
		for _, q := range k.Points {
			moved.Points = append(moved.Points, Point{q.T - p.off, q.V})
		}
		if w.spend(len(k.Points)) {
			return nil
		}
		byNode[p.node] = append(byNode[p.node], moved)
	}
	for v, list := range byNode {
		var ok bool
		if b.curves[v], ok = sum(w, list); !ok {
			return nil
		}
		steep := int64(0)
		for i, q := range b.curves[v] {
			gcd = divisor(gcd, q.V)
			if i > 0 {
				d := b.curves[v][i].V - b.curves[v][i-1].V
				k := d / int64(q.T-b.curves[v][i-1].T)
				gcd = divisor(gcd, k)
				steep = max(steep, abs64(d))
			}
		}
		slopes += steep
	}
	b.step = max(1, gcd)
	b.scale = 1
	for v := range b.curves {
		if len(b.curves[v]) > 0 {
			b.scale = 1 << 20
		}
	}
	for b.scale > 1 && slopes > (1<<40)/b.scale {
		b.scale /= 2
	}
	origin := m.n
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
		b.f.x[v] = int64(s.lo[v])
	}
	return b
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

// sum adds curves; false when the watch is over.
func sum(w *Watch, list []Curve) ([]Point, bool) {
	var ts []int
	for _, c := range list {
		for _, q := range c.Points {
			ts = append(ts, q.T)
		}
	}
	slices.Sort(ts)
	ts = slices.Compact(ts)
	var out []Point
	for _, t := range ts {
		if w.spend(8 * len(list)) {
			return nil, false
		}
		var v int64
		for _, c := range list {
			v += c.Sign * valueAt(c.Points, t)
		}
		out = append(out, Point{t, v})
	}
	return out, true
}

// undo follows the state after it undid decisions.
func (b *bounder) undo() {
	for len(b.f.from) > b.static+len(b.s.added) {
		b.f.drop()
	}
}

// envelope sets the slopes and bends of node v's cost over the times left to it.
func (b *bounder) envelope(v int) {
	lo, hi := b.s.lo[v], b.s.hi[v]
	if b.envLo[v] == lo && b.envHi[v] == hi {
		return
	}
	b.envLo[v], b.envHi[v] = lo, hi
	curve := b.curves[v]
	b.f.watch.spend(8 * (len(curve) + len(b.s.m.gaps[v])))
	pts := b.points[:0]
	add := func(t int) {
		if t >= lo && t <= hi {
			pts = append(pts, Point{t, valueAt(curve, t)})
		}
	}
	add(lo)
	gaps := b.s.m.gaps[v]
	g := 0
	for _, q := range curve {
		for g < len(gaps) && gaps[g].a <= q.T {
			add(gaps[g].a)
			add(gaps[g].b)
			g++
		}
		if g > 0 && q.T < gaps[g-1].b {
			continue // in a gap
		}
		add(q.T)
	}
	for ; g < len(gaps); g++ {
		add(gaps[g].a)
		add(gaps[g].b)
	}
	add(hi)
	slices.SortFunc(pts, func(a, b Point) int { return a.T - b.T })
	// The lower hull.
	hull := pts[:0]
	for _, p := range pts {
		if k := len(hull); k > 0 && hull[k-1].T == p.T {
			continue
		}
		for len(hull) >= 2 {
			a, c := hull[len(hull)-2], hull[len(hull)-1]
			if (c.V-a.V)*int64(p.T-c.T) >= (p.V-c.V)*int64(c.T-a.T) {
				hull = hull[:len(hull)-1]
				continue
			}
			break
		}
		hull = append(hull, p)
	}
	b.points = pts
	slope := func(k int) int64 {
		d, t := (hull[k+1].V-hull[k].V)*b.scale, int64(hull[k+1].T-hull[k].T)
		q := d / t
		if d%t < 0 {
			q--
		}
		return q
	}
	first := int64(0)
	if len(hull) > 1 {
		first = slope(0)
	}
	b.f.base[v] = b.linear[v]*b.scale + first
	b.base[v] = hull[0].V*b.scale - first*int64(hull[0].T)
	used := 0
	for k := 1; k+1 < len(hull); k++ {
		id := b.bends[v][used]
		used++
		b.f.w[id], b.f.cap[id] = -int64(hull[k].T), slope(k)-slope(k-1)
	}
	for _, id := range b.bends[v][used:] {
		b.f.cap[id], b.f.w[id] = 0, 0
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
	ok := true
	for v := 0; v < n; v++ {
		x[v] = max(f.x[v], int64(s.lo[v]))
	}
	for moved := true; moved && ok; {
		moved = false
		if f.watch.spend(len(f.from)) {
			return false
		}
		for a := 2 * n; a < len(f.from); a++ {
			if f.cap[a] != endless {
				continue
			}
			if t := x[f.from[a]] + f.w[a]; t > x[f.to[a]] {
				x[f.to[a]] = t
				moved = true
				if t > int64(s.hi[f.to[a]]) {
					ok = false
					break
				}
			}
		}
	}
	for v := 0; v < n && ok; v++ {
		ok = x[v] <= int64(s.hi[v])
	}
	if !ok {
		ok = true
		for v := 0; v < n; v++ {
			x[v] = min(f.x[v], int64(s.hi[v]))
		}
		for moved := true; moved && ok; {
			moved = false
			if f.watch.spend(len(f.from)) {
				return false
			}
			for a := 2 * n; a < len(f.from); a++ {
				if f.cap[a] != endless {
					continue
				}
				if t := x[f.to[a]] - f.w[a]; t < x[f.from[a]] {
					x[f.from[a]] = t
					moved = true
					if t < int64(s.lo[f.from[a]]) {
						ok = false
						break
					}
				}
			}
		}
		for v := 0; v < n && ok; v++ {
			ok = x[v] >= int64(s.lo[v])
		}
	}
	if !ok {
		for v := 0; v < n; v++ {
			x[v] = int64(s.lo[v])
		}
	}
	copy(f.x, x)
	f.x[n] = 0
	return true
}

// excess is by how much the cost of node v at its time in the solution is above its envelope.
func (b *bounder) excess(v int) int64 {
	if len(b.curves[v]) == 0 {
		return 0
	}
	x := b.f.x[v]
	env := (b.f.base[v]-b.linear[v]*b.scale)*x + b.base[v]
	for _, id := range b.bends[v] {
		if b.f.cap[id] > 0 && x > -b.f.w[id] {
			env += b.f.cap[id] * (x + b.f.w[id])
		}
	}
	return valueAt(b.curves[v], int(x))*b.scale - env
}

// cost is the true cost of the times in the solution, when they satisfy everything.
func (b *bounder) cost() int64 {
	c := b.off
	for v := range b.linear {
		c += b.linear[v]*b.f.x[v] + valueAt(b.curves[v], int(b.f.x[v]))
	}
	return c
}
