package numeric

import (
	"errors"
	"math"
	"testing"
)

// A line through 0, 1 and 3 at 0, 1 and 2, by hand: slope 3/2, at 0 −1/6; the squares left over are 1/36, 4/36 and
// 1/36, together 1/6, over one. Two points leave nothing to judge by.
func TestALineByHand(t *testing.T) {
	l, err := FitLine([]float64{0, 1, 2}, []float64{0, 1, 3}, nil)
	if err != nil || !(math.Abs(l.Slope-1.5) <= 1e-12) || !(math.Abs(l.Intercept+1.0/6) <= 1e-12) ||
		!(math.Abs(l.Variance-1.0/6) <= 1e-12) || l.N != 3 {
		t.Errorf("%+v, %v", l, err)
	}
	fit, err := LeastSquares([][]float64{{1, 0}, {1, 1}, {1, 2}}, []float64{0, 1, 3}, nil)
	if err != nil || !(math.Abs(fit.Variance-1.0/6) <= 1e-12) || !(math.Abs(fit.Coefficients[1]-1.5) <= 1e-12) {
		t.Errorf("%+v, %v", fit, err)
	}
	if l, err = FitLine([]float64{0, 1}, []float64{2, 5}, nil); err != nil || !math.IsNaN(l.Variance) || l.Slope != 3 {
		t.Errorf("two points: %+v, %v", l, err)
	}
	if fit, err = LeastSquares([][]float64{{1, 0}, {1, 1}}, []float64{2, 5}, nil); err != nil ||
		!math.IsNaN(fit.Variance) {
		t.Errorf("two points: %+v, %v", fit, err)
	}
	if _, err = FitLine([]float64{4, 4, 4}, []float64{1, 2, 3}, nil); !errors.Is(err, ErrSingular) {
		t.Errorf("three times at one place: %v", err)
	}
}

// Without an exponential the integral is that of a power: of u² from 1 to 4, 21; backward, −21; from a place to
// itself, nothing; of e^−u from 0 to 2, 1 − e⁻².
func TestPowersByHand(t *testing.T) {
	for _, c := range []struct{ a, b, c, from, to, want float64 }{
		{1, 2, 0, 1, 4, 21}, {1, 2, 0, 4, 1, -21}, {1, 2, 0, 3, 3, 0}, {2, 2, 0, 1, 4, 42}, {0, 2, 0, 1, 4, 0},
		{1, 0, 1, 0, 2, 1 - math.Exp(-2)}, {1, 0, -1, 0, 2, math.Exp(2) - 1},
	} {
		got, err := PowerExp(c.a, c.b, c.c, c.from, c.to)
		if err != nil || !(math.Abs(got-c.want) <= 1e-12*(1+math.Abs(c.want))) {
			t.Errorf("%+v: %v, %v", c, got, err)
		}
	}
	if got, err := PowerExpFrom0(2, 0, 3); err != nil || !(math.Abs(got-9) <= 1e-12) {
		t.Errorf("u² from 0 to 3 is %v, %v", got, err)
	}
	for _, c := range [][5]float64{{math.NaN(), 1, 1, 0, 1}, {1, 1, 1, -1, 1}, {1, 1, 1, 0, -1}, {1, -1, 1, 0, 1},
		{1, 101, 1, 0, 1}, {1, 1, math.Inf(1), 0, 1}} {
		if got, err := PowerExp(c[0], c[1], c[2], c[3], c[4]); !errors.Is(err, ErrDomain) || got != 0 {
			t.Errorf("%v: %v, %v", c, got, err)
		}
	}
}

// A root is told to the tolerance asked for, and not beyond; quantiles on both sides of the middle mirror each other.
func TestRootsAndQuantilesByHand(t *testing.T) {
	for _, tol := range []float64{1e-3, 1e-9} {
		x, err := Root(func(x float64) float64 { return x*x - 2 }, 0, 2, tol)
		if err != nil || !(math.Abs(x-math.Sqrt2) <= tol) {
			t.Errorf("√2 within %v is %v, %v", tol, x, err)
		}
	}
	for _, p := range []float64{0.001, 0.1, 0.25, 0.4999, 0.5} {
		low, err := StudentQuantile(p, 5)
		high, err2 := StudentQuantile(1-p, 5)
		if err != nil || err2 != nil || !(math.Abs(low+high) <= 1e-9) || p == 0.5 && !(math.Abs(low) <= 1e-12) {
			t.Errorf("t at %v is %v and %v, %v, %v", p, low, high, err, err2)
		}
	}
}
