package ferment

import (
	"math"
	"testing"

	"example.org/maslin/internal/numeric"
)

// Wherever the pieces of a curve meet, in the middle of a cell too, the tabulated antiderivative is the integral of the
// rate, and its slope the rate.
func TestTheTableIsTheIntegralOfItsPieces(t *testing.T) {
	up, top := 0.05, ganzleYeast.optimum()
	pieces := []piece{
		{low: math.Inf(-1), line: true},
		{low: 8.2, line: true, slope: up},
		{low: 14.1, form: ganzleYeast},
		{low: top, flat: true, form: ganzleYeast},
		{low: 29.9, shift: 29.9 - top, form: ganzleYeast},
	}
	corners := []float64{8.2, 14.1, top, 29.9, 29.9 + ganzleYeast.max - top}
	rate := func(c float64) float64 {
		switch {
		case c < 8.2:
			return 0
		case c < 14.1:
			return up * (c - 8.2)
		case c < top:
			return ganzleYeast.rate(c)
		case c < 29.9:
			return ganzleYeast.rate(top)
		}
		return ganzleYeast.rate(c - 29.9 + top)
	}
	table := newTable(pieces)
	last, sum := -25.0, 0.0
	for _, x := range []float64{-24.75, -3, 8, 8.1, 8.2, 8.3, 8.45, 8.5, 9, 11.25, 14, 14.05, 14.1, 14.2, 14.5, 20.25,
		27, top, 27.3, 28, 29.75, 29.9, 29.95, 30, 33, 35.1, 36.5, 38.7, 38.9, 45, 59.75} {
		from := last
		for _, to := range append(corners, x) {
			if to = min(to, x); to <= from {
				continue
			}
			v, err := numeric.Integrate(rate, from, to, 1e-13)
			if err != nil && v.Bound > 1e-11 {
				t.Fatal(err)
			}
			sum, from = sum+v.Value, to
		}
		if got := table.at(x) - table.at(-25); !(math.Abs(got-sum) < 1e-9) {
			t.Errorf("up to %v °C the table has %v, the integral is %v", x, got, sum)
		}
		if got, want := table.rate(x), rate(x); !(math.Abs(got-want) < 1e-9) {
			t.Errorf("at %v °C the table has the rate %v, want %v", x, got, want)
		}
		last = x
	}
}
