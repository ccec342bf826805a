package numeric

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The faster functions agree with the standard library's, which rests on the same sources, and with each other.
func TestElementary(t *testing.T) {
	near := func(t *rapid.T, what string, x, got, want float64) {
		t.Helper()
		same := got == want || math.IsNaN(got) && math.IsNaN(want)
		if !same && (math.IsInf(want, 0) || !(math.Abs(got-want) <= 1e-15*math.Abs(want))) {
			t.Fatalf("%s(%v) = %v, want %v", what, x, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.OneOf(rapid.Float64Range(-0.4, 0.4), rapid.Float64Range(-1e-6, 1e-6), rapid.Float64Range(-5, 5),
			rapid.Float64Range(-800, 800), rapid.Float64(), rapid.SampledFrom([]float64{0, math.Copysign(0, -1),
				math.Inf(1), math.Inf(-1), math.NaN(), 0.35, -0.35, math.Sqrt2 - 1, math.Sqrt2/2 - 1, 1, -1, -0.5,
				5e-324, 699, -699, 701, -701, 709.5, 710,
				-745, -746, 800, -800, 1e15, 1e16, 1e300, 1e301, 1e-300, 1e-301})).
			Draw(t, "x")
		near(t, "Exp", x, Exp(x), math.Exp(x))
		near(t, "Expm1", x, Expm1(x), math.Expm1(x))
		near(t, "Log1p", x, Log1p(x), math.Log1p(x))
		for _, y := range []float64{x, math.Abs(x), math.Exp(x)} {
			near(t, "Log", y, Log(y), math.Log(y))
		}
	})
}

func BenchmarkExp(b *testing.B) {
	x, s := 0.3, 0.0
	for b.Loop() {
		s += Exp(x)
		x = -x * 1.01
		if x > 20 || x < -20 {
			x = 0.3
		}
	}
	kept = s
}

func BenchmarkLog(b *testing.B) {
	x, s := 0.3, 0.0
	for b.Loop() {
		s += Log(x)
		if x *= 1.01; x > 20 {
			x = 0.3
		}
	}
	kept = s
}

func BenchmarkExpLibrary(b *testing.B) {
	x, s := 0.3, 0.0
	for b.Loop() {
		s += math.Exp(x)
		x = -x * 1.01
		if x > 20 || x < -20 {
			x = 0.3
		}
	}
	kept = s
}

var kept float64
