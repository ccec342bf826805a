package numeric

import (
	"math"
	"testing"
)

// A root comes as fast as by interpolation, not by halving: 52 halvings would be as many calls and more. The cubic is
// Wallis's of 1685, its root is in every history of Newton's method.
func TestRootsTakeFewCalls(t *testing.T) {
	for name, c := range map[string]struct {
		f         func(float64) float64
		low, high float64
		want      float64
		most      int
	}{
		"Wallis's cubic": {func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3, 2.0945514815423265915, 10},
		"cosine":         {math.Cos, 1, 2, math.Pi / 2, 8},
		"logarithm":      {math.Log, 0.2, 4, 1, 12},
		"reciprocal":     {func(x float64) float64 { return 1/x - 3 }, 0.05, 1, 1.0 / 3, 14},
		"a line":         {func(x float64) float64 { return 3*x - 1 }, 0, 1, 1.0 / 3, 4},
	} {
		calls := 0
		got, err := Root(func(x float64) float64 { calls++; return c.f(x) }, c.low, c.high, 1e-15)
		if err != nil || !(math.Abs(got-c.want) <= 2e-15) || calls > c.most {
			t.Errorf("%s: %v after %d calls, %v; want %v after at most %d", name, got, calls, err, c.want, c.most)
		}
	}
}

// The bound of an integral is never below what rounding makes of its values: 4 units of 2⁻⁵³ of ∫|f|. That of a sine
// over its period is 4, where the integral itself is 0.
func TestBoundsOfIntegralsHoldRounding(t *testing.T) {
	unit := math.Ldexp(1, -53)
	for name, c := range map[string]struct {
		f                     func(float64) float64
		low, high, want, size float64
	}{
		"sine":        {math.Sin, 0, 2 * math.Pi, 0, 4},
		"exponential": {math.Exp, 0, 1, math.E - 1, math.E - 1},
		"fifth power": {func(x float64) float64 { return math.Pow(x, 5) }, -1, 1, 0, 1.0 / 3},
		"constant":    {func(float64) float64 { return -2 }, 1, 4, -6, 6},
	} {
		got, err := Integrate(c.f, c.low, c.high, 1e-12)
		if err != nil || !(math.Abs(got.Value-c.want) <= got.Bound) || got.Bound > 1e-12 || got.Bound < 3.8*unit*c.size {
			t.Errorf("%s: %+v, %v; want %v, bound at least %v", name, got, err, c.want, 4*unit*c.size)
		}
	}
}

// Shapes of a beta distribution end at a million.
func TestShapesOfABetaDistribution(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		ok   bool
	}{{1e6, 1e6, true}, {1.001e6, 2, false}, {2, 1.001e6, false}, {0, 2, false}, {2, 0, false}, {math.NaN(), 2, false}} {
		got, err := BetaQuantile(0.5, c.a, c.b)
		if (err == nil) != c.ok || c.ok && !(math.Abs(got-0.5) <= 1e-9) {
			t.Errorf("Beta(%v, %v): %v, %v", c.a, c.b, got, err)
		}
	}
}
