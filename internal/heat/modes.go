package heat

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// Part is the part of a body whose temperature is asked for.
type Part int

// The parts: the middle, and the whole volume on average.
const (
	Middle Part = iota
	Average
)

// mode is one exponential of a part of a body: its temperature follows Σ share·u, where each u decays with its rate
// and is driven by changes of the surroundings.
type mode struct {
	rate  float64 // 1/s
	share float64
	of    [3]uint8 // the term of each axis of which it is the product
	rest  bool     // no product: it stands for all that are not kept
}

// modes are the exponentials of a part, those that count most first.
type modes struct {
	all  []mode
	lag  float64      // Σ share/rate, s: the steady lag behind surroundings that change by 1 °C/s
	axes [3][]float64 // the rates of the terms of each axis, as far as they are used
}

// mostModes is how many exponentials a body of several axes keeps when its surroundings change, and
// singleModes how many a body of one axis.
const (
	mostModes   = 240
	singleModes = 60
)

// modes multiplies the series of the axes out into single exponentials and keeps the slowest. What
// the rest would add at t = 0 goes into one last mode at the rate where the list ends, so that a
// body starts exactly at its starting temperature.
func (b *Body) modes(of Part) *modes {
	m := &modes{}
	// No mode at or above the first omitted term of any axis may be kept, or the list would have gaps.
	limit := math.Inf(1)
	slowest := 1 / b.SlowestTime()
	for i := range b.count {
		term := b.factors[i].term
		m.axes[i] = make([]float64, len(term))
		for n, t := range term {
			m.axes[i][n] = t.Eigenvalue * t.Eigenvalue * b.rates[i]
		}
		limit = math.Min(limit, slowest+(m.axes[i][len(term)-1]-m.axes[i][0]))
	}
	var end float64
	if b.count == 1 {
		limit = m.axes[0][singleModes]
		end = limit
	} else {
		low, high := math.Log(slowest), math.Log(limit)
		for range 30 {
			mid := (low + high) / 2
			if m.below(math.Exp(mid), b.count) > mostModes {
				high = mid
			} else {
				low = mid
			}
		}
		limit, end = math.Exp(low), math.Exp(high)
	}
	b.multiply(m, of, limit)
	last := mode{rate: end, share: 1, rest: true}
	var used [3]int
	for _, x := range m.all {
		last.share -= x.share
		for i, n := range x.of {
			used[i] = max(used[i], int(n)+1)
		}
	}
	m.all = append(m.all, last)
	for i := range b.count {
		m.axes[i] = m.axes[i][:used[i]]
	}
	m.order()
	for _, x := range m.all {
		m.lag += x.share / x.rate
	}
	return m
}

// order puts those first that count most: a bend of the surroundings moves a mode by its share of the bend over its
// rate. Within a factor of two any order does.
func (m *modes) order() {
	slowest := m.all[0].rate    // products begin with it
	power := func(x mode) int { // 0 counts most
		_, exp := math.Frexp(x.share * slowest / x.rate)
		return min(max(0, 8-exp), mostPowers-1)
	}
	var starts [mostPowers + 1]int
	for _, x := range m.all {
		starts[power(x)+1]++
	}
	for i := range mostPowers {
		starts[i+1] += starts[i]
	}
	ordered := make([]mode, len(m.all))
	for _, x := range m.all {
		at := &starts[power(x)]
		ordered[*at] = x
		*at++
	}
	m.all = ordered
}

// mostPowers are the powers of two that order tells apart.
const mostPowers = 64

// below counts the products of terms whose rate is below a limit, or stops when they are too many.
func (m *modes) below(limit float64, count int) int {
	n := 0
	switch count {
	case 2:
		for _, first := range m.axes[0] {
			if first+m.axes[1][0] >= limit || n > mostModes {
				break
			}
			n += lower(m.axes[1], first, limit)
		}
	case 3:
		for _, first := range m.axes[0] {
			for _, second := range m.axes[1] {
				if first+second+m.axes[2][0] >= limit || n > mostModes {
					break
				}
				n += lower(m.axes[2], first+second, limit)
			}
		}
	}
	return n
}

// lower is how many of the rising rates stay below a limit when they are added to another.
func lower(rates []float64, to, limit float64) int {
	for n, rate := range rates {
		if to+rate >= limit {
			return n
		}
	}
	return len(rates)
}

// multiply lists the products of terms whose rate is below a limit.
func (b *Body) multiply(m *modes, of Part, limit float64) {
	var shares [3][]float64
	for i := range b.count {
		shares[i] = make([]float64, len(m.axes[i]))
		for n, t := range b.factors[i].term {
			if shares[i][n] = t.Coefficient; of == Average {
				shares[i][n] *= t.MeanFactor
			}
		}
	}
	m.all = make([]mode, 0, mostModes+1)
	var add func(i int, so mode)
	add = func(i int, so mode) {
		for n, rate := range m.axes[i] {
			next := so
			next.rate, next.share, next.of[i] = so.rate+rate, so.share*shares[i][n], uint8(n)
			least := next.rate
			for j := i + 1; j < b.count; j++ {
				least += m.axes[j][0]
			}
			switch {
			case least >= limit:
				return
			case i+1 < b.count:
				add(i+1, next)
			default:
				m.all = append(m.all, next)
			}
		}
	}
	add(0, mode{share: 1})
}

// sum is Σ share·u a time after the modes that move were away from where they go. An exponential of a product is
// the product of those of its axes, which are far fewer.
func (m *modes) sum(away []float64, dt float64) float64 {
	var left [3][terms]float64
	for i, rates := range m.axes {
		if len(rates) == 0 {
			left[i][0] = 1
		}
		for n, rate := range rates {
			x := rate * dt
			if x > cut {
				break
			}
			left[i][n] = numeric.Exp(-x)
		}
	}
	sum := 0.0
	for k, u := range away {
		x := &m.all[k]
		u *= x.share
		if x.rest {
			sum += u * numeric.Exp(-x.rate*dt)
			continue
		}
		sum += u * left[0][x.of[0]] * left[1][x.of[1]] * left[2][x.of[2]]
	}
	return sum
}
