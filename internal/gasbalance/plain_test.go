package gasbalance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// What is reckoned in plain arithmetic is what the standard library says by the formula.
func TestPlainArithmetic(t *testing.T) {
	l := Standard()
	rapid.Check(t, func(t *rapid.T) {
		between := func(label string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, label) }
		near := func(what string, got, want float64) {
			if !(math.Abs(got-want) <= 1e-14*math.Max(1, math.Abs(want))) {
				t.Errorf("%s: %v, want %v", what, got, want)
			}
		}
		if x := between("x", 1e-9, 0.999); !(math.Abs(artanh(x)/math.Atanh(x)-1) <= 1e-14) {
			t.Errorf("artanh %v is %v, want %v", x, artanh(x), math.Atanh(x))
		}
		f := Formula{
			Hydration: between("water", 0.3, 3), Salt: between("salt", 0, 15), Sugar: between("sugar", 0, 40),
			Whole: between("whole", 0, 1),
		}
		x := f.Solutes() / l.Halfway
		pace := 1 / (1 + x*x) * math.Pow(math.Min(f.Hydration, 1)/0.72, 0.4) * math.Exp(0.182*f.Whole)
		near("pace", l.Pace(f), pace)
		near("unusual", l.Unusual(f), math.Abs(math.Log(pace/l.Pace(plain))))
		z, sd := between("z", -1e4, 1e4), between("sd", 1e-3, 10)
		near("foretold", foretold(z, sd), -math.Log(sd)-4*math.Log(1+z*z/7))
	})
	if !math.IsInf(artanh(1), 1) || !math.IsNaN(artanh(1.5)) {
		t.Errorf("no dough holds %v or %v", artanh(1), artanh(1.5))
	}
}
