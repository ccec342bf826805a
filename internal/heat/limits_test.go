package heat

import (
	"errors"
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/numeric"
)

// Each property of a body is taken to its very ends, and just beyond them refused by its name with the ends as told.
func TestPropertiesAtTheirEnds(t *testing.T) {
	own := plain
	for _, c := range []struct {
		what      string
		low, high float64
		told      string
		check     func(x float64) error
	}{
		{"conductivity", 1e-6, 1e6, "W/(m K), want 1e-06 to 1e+06 W/(m K)", func(x float64) error {
			m := own
			m.Conductivity = x
			return Ball(0.05).Check(m, 20*math.Max(1e-6, math.Min(x, 1e6)))
		}},
		{"density", 1e-3, 1e6, "kg/m³, want 0.001 to 1e+06 kg/m³", func(x float64) error {
			m := own
			m.Density = x
			return Ball(0.05).Check(m, 10)
		}},
		{"heat capacity", 1, 1e6, "J/(kg K), want 1 to 1e+06 J/(kg K)", func(x float64) error {
			m := own
			m.HeatCapacity = x
			return Ball(0.05).Check(m, 10)
		}},
		{"half thickness or radius", 1e-4, 10, "m, want 0.0001 to 10 m", func(x float64) error {
			return Plate(x).Check(own, 10)
		}},
		{"Biot number", 1e-6, 1e6, ", want 1e-06 to 1e+06 ", func(x float64) error {
			_, err := NewSeries(Slab, x)
			return err
		}},
		{"starting temperature", -100, 500, "°C, want -100 to 500 °C", func(x float64) error {
			_, err := breadBall(t).Follow(Middle, x, []Knot{{0, 20}})
			return err
		}},
		{"temperature of the surroundings", -100, 500, "°C, want -100 to 500 °C", func(x float64) error {
			_, err := breadBall(t).Follow(Middle, 20, []Knot{{0, 20}, {60, x}})
			return err
		}},
		{"porosity", 0, 0.95, ", want 0 to 0.95 ", func(x float64) error {
			alpha, err := CrumbDiffusivity(x)
			if err != nil && alpha != 0 {
				t.Errorf("porosity %v is refused with a diffusivity of %v", x, alpha)
			}
			return err
		}},
	} {
		step := 1e-9 * (c.high - c.low)
		for _, x := range []float64{c.low, c.high, c.low + step, c.high - step} {
			if err := c.check(x); err != nil {
				t.Errorf("%s of %v: %v", c.what, x, err)
			}
		}
		for _, x := range []float64{c.low - 1e-3*math.Abs(c.low) - 1e-12, c.high + 1e-3*c.high, math.NaN()} {
			err := c.check(x)
			want := c.what + " out of range: got " + shortest(x) + " " + c.told
			if !errors.Is(err, quantity.ErrOutOfRange) || err.Error() != want {
				t.Errorf("%v, want %q", err, want)
			}
		}
	}
	if err := Ball(0.05).Check(own, 0); err == nil ||
		err.Error() != "surface coefficient out of range: got 0 W/(m² K), want 0 to +Inf W/(m² K)" {
		t.Errorf("no surface coefficient: %v", err)
	}
	if err := Plate(10).Check(own, 1e5); err == nil ||
		err.Error() != "Biot number out of range: got 2e+06 , want 1e-06 to 1e+06 " {
		t.Errorf("a large body that is cooled hard: %v", err)
	}
	if err := (Geometry{}).Check(own, 10); err == nil ||
		err.Error() != "size out of range: got 0 m, want 0.0001 to 10 m" {
		t.Errorf("no form: %v", err)
	}
}

// Times of the surroundings never fall, and lie within 1e12 s of the clock's zero; two may be the same.
func TestTimesThatAreFollowed(t *testing.T) {
	b := breadBall(t)
	for _, c := range []struct {
		knots []Knot
		ok    bool
	}{
		{[]Knot{{-1e12, 20}, {1e12, 20}}, true}, {[]Knot{{5, 20}, {5, 30}, {6, 30}}, true},
		{[]Knot{{-1.001e12, 20}}, false}, {[]Knot{{1.001e12, 20}}, false},
		{[]Knot{{0, 20}, {10, 20}, {9.99, 20}}, false}, {nil, false}, {[]Knot{{math.NaN(), 20}}, false},
	} {
		if tr, err := b.Follow(Middle, 20, c.knots); (err == nil) != c.ok || (tr != nil) != c.ok ||
			!c.ok && !errors.Is(err, numeric.ErrDomain) {
			t.Errorf("%v: %v", c.knots, err)
		}
	}
}

// A body never gets as warm as its surroundings, nor warmer, and is as it was at the start only then.
func TestSharesThatAreNeverReached(t *testing.T) {
	s, err := NewSeries(Cylinder, 2)
	if err != nil {
		t.Fatal(err)
	}
	b := breadBall(t)
	for name, time := range map[string]func(float64) (float64, error){
		"center of a series": s.CenterTime, "mean of a series": s.MeanTime,
		"center of a body": b.CenterTime, "mean of a body": b.MeanTime,
	} {
		for _, theta := range []float64{0, -1, math.Inf(-1)} {
			if at, err := time(theta); at != 0 || !errors.Is(err, ErrUnreachable) {
				t.Errorf("%s at %v: %v, %v", name, theta, at, err)
			}
		}
		for _, theta := range []float64{1, 1.5, math.Inf(1), math.NaN()} {
			want := "share of the temperature difference out of range: got " + shortest(theta) + " , want 0 to 1 "
			if at, err := time(theta); at != 0 || err == nil || err.Error() != want {
				t.Errorf("%s at %v: %v, %v, want %q", name, theta, at, err, want)
			}
		}
		for _, theta := range []float64{1e-12, 1 - 1e-9} {
			if at, err := time(theta); !(at > 0) || err != nil {
				t.Errorf("%s at %v: %v, %v", name, theta, at, err)
			}
		}
	}
}

// What is no place in a body, or no time, has no temperature; the other way round it has one.
func TestPlacesOutsideTheBody(t *testing.T) {
	s, err := NewSeries(Sphere, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ fo, place float64 }{
		{0.1, -0.01}, {0.1, 1.01}, {0.1, math.NaN()}, {math.NaN(), 0.5}, {math.NaN(), 2}, {1e-5, 1.01}, {-1, 1.01},
	} {
		if got := s.At(c.fo, c.place); !math.IsNaN(got) {
			t.Errorf("at %v after %v: %v", c.place, c.fo, got)
		}
	}
	for _, place := range []float64{0, 0.5, 1} {
		if got := s.At(0, place); got != 1 {
			t.Errorf("%v at the start: %v", place, got)
		}
		if got := s.At(0.1, place); !(got > 0 && got < 1) {
			t.Errorf("%v later: %v", place, got)
		}
	}
	for name, of := range map[string]func(float64) float64{"center": s.Center, "mean": s.Mean} {
		if a, b, c := of(0), of(-3), of(math.NaN()); a != 1 || b != 1 || !math.IsNaN(c) {
			t.Errorf("%s: %v at the start, %v before, %v at no time", name, a, b, c)
		}
	}
	for shape, want := range map[Shape]string{
		Slab: "slab", Cylinder: "cylinder", Sphere: "sphere", -1: "unknown shape", 3: "unknown shape",
	} {
		if got := shape.String(); got != want {
			t.Errorf("shape %d is a %q, want %q", int(shape), got, want)
		}
	}
	if _, err := NewSeries(3, 1); err == nil || err.Error() != "unknown shape 3" {
		t.Errorf("a fourth shape: %v", err)
	}
}
