package numeric

import (
	"errors"
	"math"
	"testing"
)

// With one degree of freedom Student's distribution is Cauchy's, ½ + atan(t)/π; with two it is ½ + t/(2√(2 + t²)). Near
// the middle, in the tails, and at the ends.
func TestStudentInClosedForm(t *testing.T) {
	for _, x := range []float64{-1e9, -40, -3, -0.5, -1e-9, 0, 0.02, 0.7, 5, 1e4} {
		for nu, want := range map[float64]float64{1: 0.5 + math.Atan(x)/math.Pi, 2: 0.5 + x/(2*math.Sqrt(2+x*x))} {
			if x < -1 { // the same, without losing the tail
				want = map[float64]float64{1: math.Atan(-1/x) / math.Pi, 2: 1 / (2 + x*x - x*math.Sqrt(2+x*x))}[nu]
			}
			if got, err := StudentCDF(x, nu); err != nil || !(math.Abs(got-want) <= 1e-13*want) {
				t.Errorf("below %v with %v: %v, %v, want %v", x, nu, got, err, want)
			}
		}
	}
	for _, nu := range []float64{0.1, 3, 1e5, 1e9} {
		low, err := StudentCDF(math.Inf(-1), nu)
		high, err2 := StudentCDF(math.Inf(1), nu)
		if low != 0 || high != 1 || err != nil || err2 != nil {
			t.Errorf("with %v: %v and %v, %v, %v", nu, low, high, err, err2)
		}
	}
	for _, bad := range [][2]float64{{math.NaN(), 1}, {1, 0}, {1, -1}, {1, math.NaN()}} {
		if got, err := StudentCDF(bad[0], bad[1]); got != 0 || !errors.Is(err, ErrDomain) {
			t.Errorf("%v: %v, %v", bad, got, err)
		}
	}
}

// Quantiles in closed form: −cot(πp) with one degree of freedom, (2p − 1)/√(2p(1 − p)) with two.
func TestStudentQuantilesInClosedForm(t *testing.T) {
	for _, p := range []float64{1e-12, 0.01, 0.3, 0.495, 0.505, 0.7, 0.999} {
		for nu, want := range map[float64]float64{1: -1 / math.Tan(math.Pi*p), 2: (2*p - 1) / math.Sqrt(2*p*(1-p))} {
			if got, err := StudentQuantile(p, nu); err != nil || !(math.Abs(got/want-1) <= 1e-12) {
				t.Errorf("%v with %v: %v, %v, want %v", p, nu, got, err, want)
			}
			// What is not quite one or two goes by another way.
			got, err := StudentQuantile(p, nu*(1+1e-10))
			if err != nil || !(math.Abs(got/want-1) <= 1e-7) {
				t.Errorf("%v with nearly %v: %v, %v, want %v", p, nu, got, err, want)
			}
		}
	}
	for _, nu := range []float64{0.1, 1, 2, 2.5, 5, 100, 1e9} {
		if got, err := StudentQuantile(0.5, nu); got != 0 || err != nil {
			t.Errorf("the middle with %v: %v, %v", nu, got, err)
		}
		for _, p := range []float64{0, 1, -1, 2, math.NaN(), math.Inf(1)} {
			if got, err := StudentQuantile(p, nu); got != 0 || !errors.Is(err, ErrDomain) {
				t.Errorf("%v with %v: %v, %v", p, nu, got, err)
			}
		}
	}
	for _, nu := range []float64{0, 0.099, -1, math.NaN()} {
		if got, err := StudentQuantile(0.3, nu); got != 0 || !errors.Is(err, ErrDomain) {
			t.Errorf("with %v: %v, %v", nu, got, err)
		}
	}
}

// The heavier the tail, the farther out: a tenth of a degree of freedom puts p = 1e-10 at about −1e99.
func TestStudentQuantilesFarOut(t *testing.T) {
	for _, c := range [][2]float64{{1e-10, 0.1}, {1e-6, 0.1}, {0.4, 0.1}, {1e-30, 0.3}, {1e-280, 3}, {1e-250, 40},
		{1e-100, 1000}, {0.4999999, 7}} {
		x, err := StudentQuantile(c[0], c[1])
		if err != nil || !(x < 0) {
			t.Errorf("%v: %v, %v", c, x, err)
			continue
		}
		if back, err := StudentCDF(x, c[1]); err != nil || !(math.Abs(back/c[0]-1) <= 1e-9) {
			t.Errorf("%v: at %v it is %v, %v", c, x, back, err)
		}
	}
	// Beyond a hundred million degrees of freedom the normal distribution stands in.
	for _, p := range []float64{1e-9, 0.025, 0.8} {
		student, err := StudentQuantile(p, 1.5e8)
		normal, err2 := NormalQuantile(p)
		if student != normal || err != nil || err2 != nil {
			t.Errorf("%v: %v and %v, %v, %v", p, student, normal, err, err2)
		}
		below, err := StudentCDF(normal, 1.5e8)
		if err != nil || below != NormalCDF(normal) {
			t.Errorf("%v: %v, %v", p, below, err)
		}
	}
}

// Φ at its quantiles, in the tails to their own size; what stands in is told with an error and nothing else.
func TestNormalTails(t *testing.T) {
	for _, p := range []float64{1e-300, 1e-100, 1e-20, 9e-9, 1e-8, 1.1e-8, 1e-4, 0.3, 0.5} {
		low, err := NormalQuantile(p)
		if err != nil || !(math.Abs(NormalCDF(low)/p-1) <= 1e-12) {
			t.Errorf("%v: %v, at which it is %v, %v", p, low, NormalCDF(low), err)
		}
		if high, err := NormalQuantile(1 - p); p > 1e-4 && (err != nil || !(math.Abs(low+high) <= 1e-12)) {
			t.Errorf("%v and %v are at %v and %v, %v", p, 1-p, low, high, err)
		}
	}
	for _, p := range []float64{0, 1, -0.1, 1.1, math.NaN()} {
		if z, err := NormalQuantile(p); z != 0 || !errors.Is(err, ErrDomain) {
			t.Errorf("%v: %v, %v", p, z, err)
		}
	}
	if !math.IsNaN(NormalCDF(math.NaN())) || NormalCDF(math.Inf(1)) != 1 || NormalCDF(math.Inf(-1)) != 0 {
		t.Error("ends of the normal distribution")
	}
}

// Beta quantiles mirror each other, and those of shapes 2 and 2 solve 3x² − 2x³ = p.
func TestBetaInClosedForm(t *testing.T) {
	for _, p := range []float64{1e-9, 0.02, 0.3, 0.5, 0.8, 0.9999} {
		x, err := BetaQuantile(p, 2, 2)
		if err != nil || !(math.Abs(3*x*x-2*x*x*x-p) <= 1e-12) {
			t.Errorf("%v: %v, %v", p, x, err)
		}
		for _, shapes := range [][2]float64{{0.3, 4}, {30, 2}, {500, 700}} {
			x, err := BetaQuantile(p, shapes[0], shapes[1])
			y, err2 := BetaQuantile(1-p, shapes[1], shapes[0])
			if err != nil || err2 != nil || !(math.Abs(x+y-1) <= 1e-7) {
				t.Errorf("%v of %v: %v and %v, %v, %v", p, shapes, x, y, err, err2)
			}
		}
	}
	for _, end := range []float64{0, 1} {
		if x, err := BetaQuantile(end, 0.3, 4); x != end || err != nil {
			t.Errorf("%v: %v, %v", end, x, err)
		}
	}
	for _, bad := range [][3]float64{{-0.1, 1, 1}, {1.1, 1, 1}, {0.5, -1, 1}, {0.5, 1, -1}, {math.NaN(), 1, 1}} {
		if x, err := BetaQuantile(bad[0], bad[1], bad[2]); x != 0 || err == nil {
			t.Errorf("%v: %v, %v", bad, x, err)
		}
	}
}

// An integral that takes more than its share of halvings is told as far as it came; calls are counted as they are made.
func TestIntegralsThatDoNotConverge(t *testing.T) {
	calls := 0
	got, err := Integrate(func(x float64) float64 { calls++; return math.Abs(math.Sin(1e6 * x)) }, 0, 1, 1e-15)
	if !errors.Is(err, ErrNoConvergence) || got.Calls != calls || calls != 15+30*1999 || !(got.Bound > 1e-15) ||
		!(math.Abs(got.Value-2/math.Pi) <= 0.05) {
		t.Errorf("%+v after %d calls, %v", got, calls, err)
	}
	calls = 0
	got, err = Integrate(func(x float64) float64 { calls++; return math.Sqrt(x) }, 0, 1, 1e-9)
	if err != nil || got.Calls != calls || calls <= 45 {
		t.Errorf("%+v after %d calls, %v", got, calls, err)
	}
	for _, bad := range [][3]float64{{math.NaN(), 1, 0}, {0, math.Inf(1), 0}, {0, 1, math.NaN()}, {0, 1, -1e-9}} {
		if got, err := Integrate(math.Exp, bad[0], bad[1], bad[2]); !errors.Is(err, ErrDomain) || got != (Integral{}) {
			t.Errorf("%v: %+v, %v", bad, got, err)
		}
	}
}

// What is asked for is the looser of the two accuracies: 1e-14 of the value when it is large, whatever the tolerance.
func TestAccuracyOfAnIntegralIsRelativeToo(t *testing.T) {
	for _, scale := range []float64{1e-8, 1, 1e12} {
		got, err := Integrate(func(x float64) float64 { return scale * math.Sqrt(x) }, 0, 1, 0)
		if err != nil || !(math.Abs(got.Value/(scale*2/3)-1) <= 2e-14) || got.Bound > 1e-14*got.Value {
			t.Errorf("%v: %+v, %v", scale, got, err)
		}
	}
}

// However wild a function, the bound of one part is at most the integral of its size.
func TestBoundOfAPartIsAtMostItsSize(t *testing.T) {
	for _, often := range []float64{1, 10, 50, 300} {
		f := func(x float64) float64 { return math.Sin(often*x + 1) }
		p, ok := kronrod(f, 0, 20)
		q, ok2 := kronrod(func(x float64) float64 { return math.Abs(f(x)) }, 0, 20)
		if !ok || !ok2 || p.bound > q.value*(1+1e-12) || !(math.Abs(p.value) <= q.value*(1+1e-12)) {
			t.Errorf("%v waves: %+v of %+v", often, p, q)
		}
	}
	if !finite(math.MaxFloat64, -math.MaxFloat64, 0) || finite(1, math.Inf(-1)) || finite(math.NaN(), 1) {
		t.Error("what is finite")
	}
}
