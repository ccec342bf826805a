package flour

import (
	"math"
	"slices"
	"sort"

	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

// blendSolver finds x = clip(s + λ + μ·(p − mean)) by bisection for μ, with the λ that belongs to
// it: the protein only grows with μ, and the sum with λ. Shares are in points, 0 to 100.
type blendSolver struct {
	p, s, low, high []float64
	feasible        bool
}

func (b *blendSolver) add(f FlourLot) {
	b.p, b.s = append(b.p, f.Protein.Points()), append(b.s, f.Share.Points())
	b.low, b.high = append(b.low, f.Least.Points()), append(b.high, f.Most.Points())
}

func (b *blendSolver) solve(target float64) []float64 {
	const whole = 100.0
	mean, spread := 0.0, 0.0
	for _, p := range b.p {
		mean += p / float64(len(b.p))
	}
	for _, p := range b.p {
		spread = math.Max(spread, math.Abs(p-mean))
	}
	least, most := b.extreme(-1), b.extreme(1)
	protein := func(x []float64) float64 {
		sum := 0.0
		for i := range x {
			sum += x[i] * b.p[i]
		}
		return sum / whole
	}
	lowest, highest := protein(least), protein(most)
	const slack = 1e-9
	switch {
	case target < lowest-slack:
		return least
	case target > highest+slack:
		return most
	}
	b.feasible = true
	x := make([]float64, len(b.s))
	breaks := make([]float64, 0, 2*len(x))
	// at fills x for a μ, with the λ that makes the shares a whole. Their sum grows with λ along straight lines between
	// the points where a share meets a bound.
	at := func(mu float64) {
		fill := func(l float64) float64 {
			sum := 0.0
			for i := range x {
				x[i] = math.Min(math.Max(b.s[i]+l+mu*(b.p[i]-mean), b.low[i]), b.high[i])
				sum += x[i]
			}
			return sum
		}
		breaks = breaks[:0]
		for i := range x {
			a := b.s[i] + mu*(b.p[i]-mean)
			breaks = append(breaks, b.low[i]-a, b.high[i]-a)
		}
		slices.Sort(breaks)
		k := sort.Search(len(breaks), func(k int) bool { return fill(breaks[k]) >= whole })
		if k == 0 || k == len(breaks) {
			return // all at their least, or all at their most: the search has filled x last so
		}
		lo, hi := fill(breaks[k-1]), fill(breaks[k])
		fill(breaks[k-1] + (whole-lo)/(hi-lo)*(breaks[k]-breaks[k-1]))
	}
	if spread == 0 {
		at(0)
		return x
	}
	// Differences of protein down to a millionth of a point can decide: μ may be large.
	lo, hi := -1.0, 1.0
	for at(lo); protein(x) > target && lo > -1e12; at(lo) {
		lo *= 4
	}
	for at(hi); protein(x) < target && hi < 1e12; at(hi) {
		hi *= 4
	}
	for range 200 {
		mid := lo + (hi-lo)/2
		if mid == lo || mid == hi {
			break
		}
		at(mid)
		p := protein(x)
		if math.Abs(p-target) < 1e-13 {
			hi = mid
			break
		}
		if p < target {
			lo = mid
		} else {
			hi = mid
		}
	}
	at(hi)
	return x
}

// extreme is the blend with the least (sign −1) or most (+1) protein that the bounds allow.
func (b *blendSolver) extreme(sign float64) []float64 {
	x := append([]float64(nil), b.low...)
	left := 100.0
	for _, v := range x {
		left -= v
	}
	used := make([]bool, len(x))
	for range x {
		best := -1
		for i := range x {
			if !used[i] && (best < 0 || sign*b.p[i] > sign*b.p[best]) {
				best = i
			}
		}
		used[best] = true
		more := math.Min(left, b.high[best]-x[best])
		x[best] += more
		left -= more
	}
	return x
}

// roundShares rounds points to millionths so that they add up to 100 %, by largest remainder.
func roundShares(x []float64) []quantity.Percent {
	units := make([]int64, len(x))
	rest := make([]float64, len(x))
	left := int64(one)
	for i, v := range x {
		q := v * 1e6
		f := math.Floor(q) // a value a hair below a whole unit gets it back: its remainder is the largest
		units[i], rest[i] = int64(f), q-f
		left -= units[i]
	}
	for ; left > 0; left-- {
		best := 0
		for i := range rest {
			if rest[i] > rest[best] {
				best = i
			}
		}
		units[best]++
		rest[best] -= 1
	}
	out := make([]quantity.Percent, len(x))
	for i, u := range units {
		out[i], _ = quantity.PercentOfDecimal(decimal.New(u, -6))
	}
	return out
}
