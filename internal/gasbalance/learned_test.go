package gasbalance

import "math"

// learned is the belief after two bakes, with the luck known.
func (r row) learned() float64 {
	l := Standard()
	var s Sums
	v := r.numbers("bakes")
	for ; len(v) >= 3; v = v[3:] {
		b := Logged{
			Start: r.start(), Formula: r.formula(), History: []Knot{{0, v[0]}},
			Hours: v[1], Rise: v[2], Error: 0.05, Pressure: 1,
		}
		row, ok := l.Row(ByLevain, &b)
		if !ok {
			r.t.Fatalf("%s: no row", r.id)
		}
		s.Add(&row, 1)
	}
	// The reference has no pace of its own for ways of kneading.
	before := unknown(ByLevain)
	for k := Unknowns; k < effects; k++ {
		before.cov[k][k] = 0
	}
	e := s.evidence(r.f("luck") * r.f("luck"))
	g := before.seen(&e.precision, &e.moment)
	which, unknown := r.in["out"][:len(r.in["out"])-2], r.in["out"][len(r.in["out"])-1:]
	i := map[string]int{"a": Amplitude, "b": Pace, "d": Slope, "c": ColdEnd, "w": Mixture}[unknown]
	if which == "mean" {
		return g.mean[i]
	}
	return math.Sqrt(g.cov[i][i])
}
