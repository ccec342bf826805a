package numeric

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s = %.17g, want %.17g within %g", what, got, want, relative)
	}
}

func TestRoot(t *testing.T) {
	cases := []struct {
		name string
		f    func(float64) float64
		a, b float64
		want float64
	}{
		{"cos", math.Cos, 0, 3, math.Pi / 2},
		{"x³ − 2", func(x float64) float64 { return x*x*x - 2 }, 0, 100, math.Cbrt(2)},
		{"steep", func(x float64) float64 { return math.Expm1(50 * (x - 0.3)) }, -5, 5, 0.3},
		{"flat", func(x float64) float64 { return math.Pow(x-1, 9) }, -3, 4, 1},
		{"step", func(x float64) float64 { return math.Copysign(1, x-0.123) }, -9, 7, 0.123},
		{"at an end", func(x float64) float64 { return x }, 0, 7, 0},
	}
	for _, c := range cases {
		x, err := Root(c.f, c.a, c.b, 1e-13)
		if err != nil || !(math.Abs(x-c.want) <= 1e-12) && !(c.name == "flat" && math.Abs(x-1) < 1e-3) {
			t.Errorf("%s: %v, %v", c.name, x, err)
		}
	}
	if _, err := Root(math.Exp, 0, 1, 0); !errors.Is(err, ErrNoRoot) {
		t.Errorf("no root: %v", err)
	}
	nan := func(float64) float64 { return math.NaN() }
	if _, err := Root(nan, 0, 1, 0); !errors.Is(err, ErrDomain) {
		t.Errorf("NaN: %v", err)
	}
	if _, err := Root(math.Cos, math.Inf(-1), 3, 0); !errors.Is(err, ErrDomain) {
		t.Errorf("infinite: %v", err)
	}
}

func TestIntegrate(t *testing.T) {
	cases := []struct {
		name string
		f    func(float64) float64
		a, b float64
		want float64
		tol  float64
	}{
		{"x²", func(x float64) float64 { return x * x }, 0, 3, 9, 1e-12},
		{"backward", func(x float64) float64 { return x * x }, 3, 0, -9, 1e-12},
		{"exp", math.Exp, 0, 1, math.E - 1, 1e-12},
		{"√x", math.Sqrt, 0, 1, 2.0 / 3, 1e-11},
		{"kink", func(x float64) float64 { return math.Abs(x - 0.3) }, 0, 1, 0.29, 1e-10},
		{"peak", func(x float64) float64 { return 1 / (1e-4 + x*x) }, -1, 1, 200 * math.Atan(100), 1e-8},
		{"empty", math.Exp, 2, 2, 0, 1e-12},
	}
	for _, c := range cases {
		got, err := Integrate(c.f, c.a, c.b, c.tol)
		if err != nil || !(math.Abs(got.Value-c.want) <= math.Max(c.tol, got.Bound)+1e-15) ||
			got.Bound > math.Max(c.tol, 1e-14*math.Abs(c.want)) {
			t.Errorf("%s: %+v, %v, want %v", c.name, got, err, c.want)
		}
	}
	if _, err := Integrate(func(x float64) float64 { return 1 / x }, 0, 1, 1e-12); err == nil {
		t.Error("a divergent integral has an answer")
	}
	if _, err := Integrate(math.Sqrt, -1, 1, 1e-12); !errors.Is(err, ErrDomain) {
		t.Errorf("√ of negative: %v", err)
	}
}

// For whole b the integral is elementary; for others quadrature is an independent way.
func TestPowerExp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.Float64Range(1.5, 3).Draw(t, "b")
		c := rapid.Float64Range(0.001, 2).Draw(t, "c")
		x0 := rapid.Float64Range(0, 20/c).Draw(t, "x0")
		x1 := x0 + math.Exp(rapid.Float64Range(-20, 3).Draw(t, "ln width"))
		got, err := PowerExp(1, b, c, x0, x1)
		if err != nil {
			t.Fatal(err)
		}
		// Tanh-sinh in plain form, independent of Gauss nodes and of the gamma function.
		want := tanhSinh(func(x float64) float64 { return math.Pow(x, b) * math.Exp(-c*x) }, x0, x1)
		if !(math.Abs(got-want) <= 1e-12*want) {
			t.Fatalf("b=%v c=%v %v..%v: %.16g, want %.16g (%g)", b, c, x0, x1, got, want, got/want-1)
		}
		from0, err := PowerExpFrom0(b, c, x1)
		all, err2 := PowerExp(1, b, c, 0, x1)
		if err != nil || err2 != nil || !(math.Abs(from0-all) <= 1e-12*all) {
			t.Fatalf("antiderivative %v, integral %v", from0, all)
		}
		back, err := PowerExp(-2, b, c, x1, x0)
		if err != nil || !(math.Abs(back-2*got) <= 1e-12*got) {
			t.Fatalf("backward %v, forward %v", back, got)
		}
	})
	near(t, "∫ x e^x, 0..1", must(t)(PowerExp(1, 1, -1, 0, 1)), 1, 1e-14)
	near(t, "∫ x², 1..4", must(t)(PowerExp(3, 2, 0, 1, 4)), 63, 1e-14)
	near(t, "∫ x² e^(−x), 0..∞-ish", must(t)(PowerExp(1, 2, 1, 0, 700)), 2, 1e-14)
}

func must(t *testing.T) func(float64, error) float64 {
	return func(x float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
}

func tanhSinh(f func(float64) float64, a, b float64) float64 {
	const h = 1.0 / 64
	sum := 0.0
	for i := -256; i <= 256; i++ {
		u := float64(i) * h
		s := math.Pi / 2 * math.Sinh(u)
		w := math.Pi / 2 * math.Cosh(u) / (math.Cosh(s) * math.Cosh(s))
		// Distance from the nearer end, so that points close to it keep their digits.
		x := b - (b-a)/(1+math.Exp(2*s))
		if s < 0 {
			x = a + (b-a)/(1+math.Exp(-2*s))
		}
		if w > 0 {
			sum += w * f(x)
		}
	}
	return sum * h * (b - a) / 2
}

// The zeros of J0 and J1 interlace.
func TestBesselZeros(t *testing.T) {
	for n := 1; n < 300; n++ {
		a, _ := BesselZero0(n)
		b, _ := BesselZero1(n)
		c, _ := BesselZero0(n + 1)
		if !(a < b && b < c) {
			t.Errorf("zeros %d do not interlace: %v %v %v", n, a, b, c)
		}
	}
	if _, err := BesselZero0(0); err == nil {
		t.Error("zeroth zero of J0")
	}
	if _, err := BesselZero1(-1); err == nil {
		t.Error("negative zero of J1")
	}
}

func TestQuantiles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(1e-12, 1-1e-12).Draw(t, "p")
		nu := rapid.Float64Range(0.5, 500).Draw(t, "nu")
		z, err := NormalQuantile(p)
		if err != nil || !(math.Abs(NormalCDF(z)-p) <= 1e-14) {
			t.Fatalf("normal %v -> %v -> %v", p, z, NormalCDF(z))
		}
		x, err := StudentQuantile(p, nu)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := StudentCDF(x, nu); err != nil || !(math.Abs(back-p) <= 1e-12) {
			t.Fatalf("student %v, %v -> %v -> %v, %v", p, nu, x, back, err)
		}
	})
	z, err := NormalQuantile(1e-200)
	if err != nil || !(math.Abs(NormalCDF(z)/1e-200-1) <= 1e-10) {
		t.Errorf("far tail %v %v", z, err)
	}
	for _, p := range []float64{0, 1, -1, 2, math.NaN(), math.Inf(1)} {
		if _, err := NormalQuantile(p); err == nil {
			t.Errorf("quantile of %v", p)
		}
		if _, err := StudentQuantile(p, 3); err == nil {
			t.Errorf("t quantile of %v", p)
		}
		if _, err := StudentQuantile(0.3, p); err == nil && !(p > 0) {
			t.Errorf("ν = %v", p)
		}
	}
}

func TestFitLineAndLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(t, "n")
		a := rapid.Float64Range(-50, 50).Draw(t, "a")
		b := rapid.Float64Range(-5, 5).Draw(t, "b")
		x, y, w := make([]float64, n), make([]float64, n), make([]float64, n)
		rows := make([][]float64, n)
		for i := range x {
			x[i] = float64(i) + rapid.Float64Range(-0.4, 0.4).Draw(t, "x")
			y[i] = a + b*x[i] + rapid.Float64Range(-1, 1).Draw(t, "e")
			w[i] = rapid.Float64Range(0.1, 9).Draw(t, "w")
			rows[i] = []float64{1, x[i]}
		}
		line, err := FitLine(x, y, w)
		if err != nil {
			t.Fatal(err)
		}
		fit, err := LeastSquares(rows, y, w)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range [][2]float64{
			{line.Intercept, fit.Coefficients[0]}, {line.Slope, fit.Coefficients[1]}, {line.Variance, fit.Variance},
			{line.Cov[0][0], fit.Cov[0][0]}, {line.Cov[0][1], fit.Cov[1][0]}, {line.Cov[1][1], fit.Cov[1][1]},
		} {
			if !(math.Abs(p[0]-p[1]) <= 1e-9*(1+math.Abs(p[0]))) {
				t.Fatalf("value %d: line %v, general %v", i, p[0], p[1])
			}
		}
		// Residuals stand at right angles to the columns.
		r0, r1 := 0.0, 0.0
		for i := range x {
			r := y[i] - line.At(x[i])
			r0 += w[i] * r
			r1 += w[i] * r * x[i]
		}
		if !(math.Abs(r0) <= 1e-8) || !(math.Abs(r1) <= 1e-7) {
			t.Fatalf("residuals not orthogonal: %v %v", r0, r1)
		}
	})
	nan, inf := math.NaN(), math.Inf(1)
	for _, x := range [][]float64{nil, {1}, {1, 1}, {1, nan}, {1, inf}, {1, 1, 1}} {
		if _, err := FitLine(x, make([]float64, len(x)), nil); err == nil {
			t.Errorf("line through %v", x)
		}
	}
	if _, err := FitLine([]float64{1, 2}, []float64{1, 2}, []float64{1, -1}); err == nil {
		t.Error("negative weight")
	}
	if _, err := FitLine([]float64{1, 2}, []float64{1}, nil); err == nil {
		t.Error("lengths differ")
	}
	for _, rows := range [][][]float64{nil, {{1}, {1, 2}}, {{1, 2}}, {{1, 2}, {2, 4}}, {{nan}}, {{0}}} {
		if _, err := LeastSquares(rows, make([]float64, len(rows)), nil); err == nil {
			t.Errorf("least squares on %v", rows)
		}
	}
}

func TestHostileArguments(t *testing.T) {
	bad := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e308, 1e308, 5e-324, 0, -1}
	for _, a := range bad {
		for _, b := range bad {
			_, _ = StudentCDF(a, b)
			_, _ = Root(math.Tan, a, b, 0)
			_, _ = Integrate(math.Tan, a, b, 0)
			for _, c := range bad {
				if v, err := PowerExp(1, a, b, c, 1); err == nil && !finite(v) {
					t.Errorf("PowerExp(%v, %v, %v) = %v", a, b, c, v)
				}
				if v, err := PowerExpFrom0(a, b, c); err == nil && !finite(v) {
					t.Errorf("PowerExpFrom0(%v, %v, %v) = %v", a, b, c, v)
				}
			}
		}
	}
}

func BenchmarkPowerExpFrom0(b *testing.B) {
	for b.Loop() {
		if _, err := PowerExpFrom0(2.3, 0.2, 14); err != nil {
			b.Fatal(err)
		}
	}
}
