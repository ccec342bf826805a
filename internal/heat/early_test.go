package heat

import (
	"math"
	"testing"

	"example.org/maslin/internal/numeric"
)

// Soon after the start each body is a half space below its surface: θ = erf η + e^(−η²)·erfcx(η + h) with η = x/(2√Fo)
// and h = Bi·√Fo (Carslaw and Jaeger, 2.7), where erfcx(y) = (2/√π)·∫₀^∞ e^(−t² − 2yt) dt.
func TestSoonAfterTheStart(t *testing.T) {
	erfcx := func(y float64) float64 { // with t = u/(y + 1) the integrand is as wide for every y
		v, err := numeric.Integrate(func(u float64) float64 {
			s := u / (y + 1)
			return math.Exp(-s*s - 2*y*s)
		}, 0, 30, 1e-11)
		if err != nil {
			t.Fatal(err)
		}
		return 2 / math.Sqrt(math.Pi) / (y + 1) * v.Value
	}
	for _, biot := range []float64{1e-6, 0.1, 10, 1e3, 2e4, 1e6, math.Inf(1)} {
		s, err := newSeries(Slab, biot, 4)
		if err != nil {
			t.Fatal(err)
		}
		for _, fo := range []float64{1e-9, 1e-7, 1e-5, 2.4e-4} {
			for _, widths := range []float64{0, 0.3, 1, 2.5, 9} {
				depth := math.Sqrt(fo) * widths
				eta, h := depth/(2*math.Sqrt(fo)), biot*math.Sqrt(fo)
				want := math.Erf(eta)
				if !math.IsInf(h, 1) {
					want += math.Exp(-eta*eta) * erfcx(eta+h)
				}
				got := s.At(fo, 1-depth)
				// Beyond h = 20 the first term of erfcx stands for it, which is off by 1/(2h²) of at most 0.03.
				if !(math.Abs(got-want) <= 4e-5) || h < 20 && !(math.Abs(got-want) <= 1e-9) || got > 1 {
					t.Errorf("Bi %v, %v below the surface at Fo %v: %v, want %v", biot, depth, fo, got, want)
				}
			}
		}
	}
}

// Held at the surroundings' temperature, the means of a slab and a ball are 1 − 2√(Fo/π) and 1 − 6√(Fo/π) + 3·Fo but
// for what comes through from the other side. What the omitted terms add is told to a part in ten million.
func TestWhatTheOmittedTermsAdd(t *testing.T) {
	for shape, form := range map[Shape]func(fo float64) float64{
		Slab:   func(fo float64) float64 { return 1 - 2*math.Sqrt(fo/math.Pi) },
		Sphere: func(fo float64) float64 { return 1 - 6*math.Sqrt(fo/math.Pi) + 3*fo },
	} {
		s, err := NewSeries(shape, math.Inf(1))
		if err != nil {
			t.Fatal(err)
		}
		for fo := 1e-8; fo < 1e-2; fo *= 1.5 {
			if got, want := s.Mean(fo), form(fo); !(math.Abs(got-want) <= 1e-7) {
				t.Errorf("%v at Fo %v: mean %.10f, want %.10f", shape, fo, got, want)
			}
		}
	}
	// With a surface that lets heat through slowly, heat leaves at first as Bi of the surface's own difference, so that
	// the mean falls by (1, 2 or 3)·Bi·Fo, less what the surface has cooled: 4/3·Bi·√(Fo/π) of it soon after the start.
	for shape := Slab; shape <= Sphere; shape++ {
		const biot = 0.5
		s, err := NewSeries(shape, biot)
		if err != nil {
			t.Fatal(err)
		}
		for _, fo := range []float64{1e-7, 1e-6, 1e-5} {
			want := 1 - float64(shape+1)*biot*fo*(1-4.0/3*biot*math.Sqrt(fo/math.Pi))
			if got := s.Mean(fo); !(math.Abs(got-want) <= 2e-3*(1-want)) {
				t.Errorf("%v at Fo %v: the mean fell by %v, want %v", shape, fo, 1-got, 1-want)
			}
		}
	}
}

// The first term of a ball with little heat through its surface: the power series of C = 4(sin z − z cos z)/(2z −
// sin 2z) and of the mean of sin(z·x)/(z·x), 3(sin z − z cos z)/z³, by their factorials.
func TestTermsOfABallThatHardlyCools(t *testing.T) {
	series := func(z float64) (coefficient, mean float64) {
		top, bottom, factorial, sign, power := 0.0, 0.0, 1.0, 1.0, 1.0 // both over z³
		for k := 1; k < 12; k++ {
			n := float64(2*k + 1)
			factorial *= n * (n - 1)
			top += sign * power * (n - 1) / factorial
			bottom += sign * power * math.Pow(2, n) / factorial
			sign, power = -sign, power*z*z
		}
		return 4 * top / bottom, 3 * top
	}
	for _, z := range []float64{1e-3, 0.005, 0.01, 0.015, 0.0199, 0.0201, 0.03, 0.1, 0.5, 1, 1.5} {
		coefficient, mean := series(z)
		got := term(Sphere, z)
		tol := 1.2e-13
		if z > 0.02 { // differences leave fewer digits
			tol += 1e-15 / (z * z)
		}
		if got.Eigenvalue != z || !(math.Abs(got.Coefficient-coefficient) <= tol) ||
			!(math.Abs(got.MeanFactor-mean) <= tol) {
			t.Errorf("z = %v: %+v, want %v and %v", z, got, coefficient, mean)
		}
	}
}

// The first root of a ball with little heat through its surface solves 1 − z·cot z = Bi by its power series, z²/3 +
// z⁴/45 + 2z⁶/945 + z⁸/4725 + 2z¹⁰/93555 (Abramowitz and Stegun, 4.3.70).
func TestFirstRootOfABallThatHardlyCools(t *testing.T) {
	for biot := 1e-6; biot < 0.005; biot *= 1.1 {
		z, err := eigenvalue(Sphere, biot, 0, 0)
		x := z * z
		if got := x * (1.0/3 + x*(1.0/45+x*(2.0/945+x*(1.0/4725+x*2/93555)))); err != nil ||
			!(math.Abs(got/biot-1)*z/2 <= 1e-14) {
			t.Errorf("Bi %v: root %v, %v, is off by %v", biot, z, err, (got/biot-1)*z/2)
		}
	}
}
