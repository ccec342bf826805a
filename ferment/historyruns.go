package ferment

import (
	"math"
	"sort"
)

func (h History) celsius(t float64) float64 {
	i := h.after(t)
	switch i {
	case 0:
		return h.knots[0].Celsius
	case len(h.knots):
		return h.knots[i-1].Celsius
	}
	return between(h.knots[i-1], h.knots[i], t)
}

// endingAt is the temperature just before a time, where a jump has not yet happened.
func (h History) endingAt(t float64) float64 {
	i := sort.Search(len(h.knots), func(i int) bool { return h.knots[i].Hour >= t })
	switch i {
	case 0:
		return h.knots[0].Celsius
	case len(h.knots):
		return h.knots[i-1].Celsius
	}
	return between(h.knots[i-1], h.knots[i], t)
}

func between(p, q knot, t float64) float64 {
	return p.Celsius + (q.Celsius-p.Celsius)*(t-p.Hour)/(q.Hour-p.Hour)
}

// segments visits the straight runs between two times, the held end included.
func (h History) segments(from, to float64, visit func(p, q knot)) {
	i := h.after(from)
	p := knot{Hour: from, Celsius: h.celsius(from)}
	for ; i < len(h.knots) && h.knots[i].Hour < to; i++ {
		q := h.knots[i]
		if q.Hour > p.Hour {
			visit(p, q)
		}
		p = q
	}
	q := knot{Hour: to, Celsius: p.Celsius}
	if i < len(h.knots) {
		q.Celsius = between(p, h.knots[i], to)
		if h.knots[i].Hour == to {
			q.Celsius = h.knots[i].Celsius
		}
	}
	if q.Hour > p.Hour {
		visit(p, q)
	}
}

// extremes are the lowest and highest temperatures until a time, °C.
func (h History) extremes(until float64) (lo, hi float64) {
	lo = h.celsius(0)
	hi = lo
	if len(h.knots) == 1 {
		return lo, hi
	}
	h.segments(0, until, func(p, q knot) {
		lo, hi = min(lo, p.Celsius, q.Celsius), max(hi, p.Celsius, q.Celsius)
	})
	return lo, hi
}

// follow makes the knots of a history of a function by halving steps until straight lines are within tolerance
// of it, °C. Marks are times where it may have corners, in order.
func follow(f func(hour float64) float64, marks []float64, tolerance float64) []knot {
	var out []knot
	emit := func(k knot) {
		k = exact(k.Hour, k.Celsius)
		if n := len(out); n == 0 || out[n-1].Hour < k.Hour {
			out = append(out, k)
		}
	}
	// The middle of a run is known where it was a quarter of the run that was halved.
	var split func(p, q knot, middle float64, depth int)
	split = func(p, q knot, middle float64, depth int) {
		span := q.Hour - p.Hour
		half := p.Hour + 0.5*span
		off := func(t, celsius float64) bool { return math.Abs(celsius-between(p, q, t)) > tolerance }
		fits := !off(half, middle)
		if !fits && depth == 0 {
			emit(q)
			return
		}
		before, after := p.Hour+0.25*span, p.Hour+0.75*span
		quarter, last := f(before), f(after)
		if fits && !off(before, quarter) && !off(after, last) || depth == 0 {
			emit(q)
			return
		}
		mid := knot{Hour: half, Celsius: middle}
		split(p, mid, quarter, depth-1)
		split(mid, q, last, depth-1)
	}
	p := knot{Hour: marks[0], Celsius: f(marks[0])}
	emit(p)
	for _, m := range marks[1:] {
		q := knot{Hour: m, Celsius: f(m)}
		split(p, q, f(p.Hour+0.5*(q.Hour-p.Hour)), 14)
		p = q
	}
	return out
}
