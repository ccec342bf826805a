package planner

import "slices"

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

// envelope sets the slopes and bends of node v's cost over the times left to it.
func (b *bounder) envelope(v int) {
	lo, hi := b.s.lo[v], b.s.hi[v]
	if b.envLo[v] == lo && b.envHi[v] == hi {
		return
	}
	b.envLo[v], b.envHi[v] = lo, hi
	curve := b.curves[v]
	b.f.watch.spend(8 * (len(curve) + len(b.s.m.gaps[v])))
	hull := lowerHull(b.corners(v, lo, hi))
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

// corners lists the points at which the cost of node v, over its times from lo to hi outside
// its gaps, can touch the envelope.
func (b *bounder) corners(v, lo, hi int) []Point {
	curve := b.curves[v]
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
	b.points = pts
	return pts
}

// lowerHull keeps, of points in order of time, those on their lower convex hull.
func lowerHull(pts []Point) []Point {
	hull := pts[:0]
	for _, p := range pts {
		if k := len(hull); k > 0 && hull[k-1].T == p.T {
			continue
		}
		for len(hull) >= 2 {
			a, c := hull[len(hull)-2], hull[len(hull)-1]
			if (c.V-a.V)*int64(p.T-c.T) < (p.V-c.V)*int64(c.T-a.T) {
				break
			}
			hull = hull[:len(hull)-1]
		}
		hull = append(hull, p)
	}
	return hull
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
