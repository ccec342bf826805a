package numeric

import (
	"errors"
	"math"
	"testing"
)

// 300 halvings of 10³⁰⁸ leave 10³⁰⁸/2³⁰⁰, about 5·10²¹⁷: a step at 10⁻³⁰⁰ is not found, and the best value is told.
func TestARootTooManyPowersAway(t *testing.T) {
	calls := 0
	x, err := Root(func(x float64) float64 { calls++; return math.Copysign(1, x-1e-300) }, -1, 1e308, 0)
	if !errors.Is(err, ErrNoConvergence) || calls != 302 || !(x > 1e217 && x < 1e218) {
		t.Errorf("%v after %d calls, %v", x, calls, err)
	}
}

// Signs are judged, and values looked at, at both ends and between them.
func TestWhatHasNoRoot(t *testing.T) {
	line := func(x float64) float64 { return x }
	for name, c := range map[string]struct {
		f         func(float64) float64
		a, b, tol float64
		want      error
	}{
		"above":          {line, 1, 2, 0, ErrNoRoot},
		"below":          {line, -2, -1, 0, ErrNoRoot},
		"no low end":     {line, math.NaN(), 1, 0, ErrDomain},
		"no high end":    {line, -1, math.Inf(1), 0, ErrDomain},
		"no tolerance":   {line, -1, 2, math.NaN(), ErrDomain},
		"below nothing":  {line, -1, 2, -1e-9, ErrDomain},
		"low undefined":  {math.Log, -1, 2, 0, ErrDomain},
		"high undefined": {func(x float64) float64 { return math.Sqrt(1-x) - 2 }, -1, 2, 0, ErrDomain},
		"middle undefined": {func(x float64) float64 {
			if math.Abs(x) < 0.9 {
				return math.Inf(1)
			}
			return math.Copysign(1, x)
		}, -1, 1, 0, ErrDomain},
	} {
		if x, err := Root(c.f, c.a, c.b, c.tol); !errors.Is(err, c.want) || x != 0 {
			t.Errorf("%s: %v, %v", name, x, err)
		}
	}
	for name, c := range map[string][3]float64{"low": {3, 7, 3}, "high": {-4, 3, 3}} {
		calls := 0
		x, err := Root(func(x float64) float64 { calls++; return x - 3 }, c[0], c[1], 0)
		if err != nil || x != c[2] || calls != 2 {
			t.Errorf("%s end is the root: %v after %d calls, %v", name, x, calls, err)
		}
	}
}

// Where c·x is beyond every number the continued fraction has no value, at one point or at both.
func TestExponentsBeyondAllNumbers(t *testing.T) {
	for _, c := range [][4]float64{{1, 1e308, 0, 100}, {1, 1e305, 1e-300, 1e5}, {1, 1e308, 50, 100}} {
		if v, err := PowerExp(1, c[0], c[1], c[2], c[3]); !errors.Is(err, ErrNoConvergence) || v != 0 {
			t.Errorf("%v: %v, %v", c, v, err)
		}
	}
	if v, err := PowerExpFrom0(1, 1e308, 100); !errors.Is(err, ErrNoConvergence) || v != 0 {
		t.Errorf("from 0: %v, %v", v, err)
	}
	// e¹⁰⁰⁰ is beyond all numbers too.
	if v, err := PowerExp(1, 0, -1000, 0, 1); !errors.Is(err, ErrDomain) {
		t.Errorf("e^1000: %v, %v", v, err)
	}
	for _, c := range [][3]float64{{-1, 1, 1}, {101, 1, 1}, {1, -1, 1}, {1, 1, -1}, {math.NaN(), 1, 1},
		{1, math.Inf(1), 1}, {1, 1, math.NaN()}} {
		if v, err := PowerExpFrom0(c[0], c[1], c[2]); !errors.Is(err, ErrDomain) || v != 0 {
			t.Errorf("from 0, %v: %v, %v", c, v, err)
		}
	}
}

// ∫ u^b·e^(−u) from x on, by parts for whole b: b! · e^(−x) · Σ xᵏ/k!. Powers to the hundredth, and far tails.
func TestWholePowersByParts(t *testing.T) {
	upper := func(b int, x float64) float64 {
		term, sum := 1.0, 1.0
		for k := 1; k <= b; k++ {
			term *= x / float64(k)
			sum += term
		}
		return math.Gamma(float64(b)+1) * math.Exp(-x) * sum
	}
	for _, b := range []int{0, 1, 2, 5, 10, 11, 40, 100} {
		for _, x := range []float64{0.3, 2, 12, 41, 101.5, 102.5, 150, 300} {
			to := x + 30
			got, err := PowerExp(1, float64(b), 1, x, to)
			want := upper(b, x) - upper(b, to)
			// The difference of the two sums loses what they have in common.
			loss := 1e-15 * (upper(b, x) + math.Gamma(float64(b)+1))
			if err != nil || !(math.Abs(got-want) <= 1e-11*want+40*loss) {
				t.Errorf("u^%d from %v to %v: %v, %v, want %v", b, x, to, got, err, want)
			}
			if got, err = PowerExpFrom0(float64(b), 1, x); err != nil ||
				!(math.Abs(got+upper(b, x)-math.Gamma(float64(b)+1)) <= 1e-11*math.Gamma(float64(b)+1)) {
				t.Errorf("u^%d from 0 to %v: %v, %v", b, x, got, err)
			}
		}
	}
	// To 0 and from 0: ∫ e^(−u) from 0 to 3 is 1 − e⁻³; from 3 to 0 it is what is taken away.
	for _, c := range [][3]float64{{0, 3, 1 - math.Exp(-3)}, {3, 0, math.Exp(-3) - 1}, {0, 0, 0}} {
		if got, err := PowerExp(1, 0, 1, c[0], c[1]); err != nil || !(math.Abs(got-c[2]) <= 1e-15) {
			t.Errorf("from %v to %v: %v, %v", c[0], c[1], got, err)
		}
	}
	// A tail is told to its own size, not to that of the whole: ∫ u·e^(−u) from 60 to 80 is 61·e^−60 − 81·e^−80. A growing
	// exponential: ∫ u·e^u from 2 to 30 is 29·e³⁰ − e².
	for _, c := range [][4]float64{{1, 60, 80, 61*math.Exp(-60) - 81*math.Exp(-80)},
		{-1, 2, 30, 29*math.Exp(30) - math.Exp(2)}} {
		if got, err := PowerExp(1, 1, c[0], c[1], c[2]); err != nil || !(math.Abs(got/c[3]-1) <= 1e-12) {
			t.Errorf("%v: %v, %v", c, got, err)
		}
	}
}

// Points close together keep their digits: over a width w ∫ u² is ((x + w)³ − x³)/3 = w·(x² + x·w + w²/3).
func TestClosePointsKeepTheirDigits(t *testing.T) {
	for _, w := range []float64{1e-12, 1e-6, 0.1, 0.49, 0.51} {
		to := 1 + w
		w = to - 1
		if got, err := PowerExp(1, 2, 0, 1, to); err != nil || !(math.Abs(got/(w*(1+w+w*w/3))-1) <= 1e-13) {
			t.Errorf("width %v: %v, %v", w, got, err)
		}
	}
}

// Bessel's zeros end at a million, where the functions are those of a cosine: the zeros lie π apart.
func TestTheLastZeros(t *testing.T) {
	for name, zero := range map[string]func(int) (float64, error){"J0": BesselZero0, "J1": BesselZero1} {
		for _, n := range []int{1_000_001, -1} {
			if x, err := zero(n); !errors.Is(err, ErrDomain) || x != 0 {
				t.Errorf("%s, %d: %v, %v", name, n, x, err)
			}
		}
		last, err := zero(1_000_000)
		before, err2 := zero(999_999)
		if err != nil || err2 != nil || !(math.Abs(last-before-math.Pi) <= 1e-8) {
			t.Errorf("%s: %v and %v, %v, %v", name, before, last, err, err2)
		}
		for n := 1; n < 40; n++ {
			x, err := zero(n)
			value := math.J0(x)
			if name == "J1" {
				value = math.J1(x)
			}
			if err != nil || !(math.Abs(value) <= 1e-15*(1+x/8)) {
				t.Errorf("%s at its zero %d, %v, is %v, %v", name, n, x, value, err)
			}
		}
	}
	if x, err := BesselZero1(0); x != 0 || err != nil {
		t.Errorf("J1 is 0 at 0, not at %v, %v", x, err)
	}
	if x, err := BesselZero0(0); x != 0 || !errors.Is(err, ErrDomain) {
		t.Errorf("zeroth zero of J0: %v, %v", x, err)
	}
}
