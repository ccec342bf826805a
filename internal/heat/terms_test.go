package heat

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/numeric"
)

// plain is a material whose numbers are easy: a diffusivity of 1e-6 m²/s, and a conductivity of 0.5 W/(m K).
var plain = Material{Conductivity: 0.5, Density: 500, HeatCapacity: 1000}

// The first terms of each axis at Bi = 1 are those of Çengel, Heat and Mass Transfer, table 4-2: 0.8603 and 1.1191 of a
// plate, 1.2558 and 1.2071 of a cylinder, 1.5708 and 1.2732 of a ball. From them comes the time constant, and no axis
// has a term twice.
func TestFirstTermsOfABody(t *testing.T) {
	type term struct{ shape, root, factor float64 }
	for name, c := range map[string]struct {
		of   Geometry
		want []term
		tau  float64 // s: R²/(α·Σz₁²)
	}{
		"plate":    {Plate(0.05), []term{{float64(Slab), 0.8603, 1.1191}}, 0.0025 / 1e-6 / (0.8603 * 0.8603)},
		"cylinder": {LongCylinder(0.05), []term{{float64(Cylinder), 1.2558, 1.2071}}, 0.0025 / 1e-6 / (1.2558 * 1.2558)},
		"ball":     {Ball(0.05), []term{{float64(Sphere), 1.5708, 1.2732}}, 0.0025 / 1e-6 / (1.5708 * 1.5708)},
		"short cylinder": {ShortCylinder(0.05, 0.1), []term{{float64(Cylinder), 1.2558, 1.2071}, {float64(Slab), 0.8603,
			1.1191}}, 0.0025 / 1e-6 / (1.2558*1.2558 + 0.8603*0.8603)},
		"block": {Block(0.1, 0.1, 0.1), []term{{float64(Slab), 0.8603, 1.1191}, {float64(Slab), 0.8603, 1.1191},
			{float64(Slab), 0.8603, 1.1191}}, 0.0025 / 1e-6 / (3 * 0.8603 * 0.8603)},
	} {
		b, err := NewBody(c.of, plain, 10) // Bi = 10·0.05/0.5
		if err != nil {
			t.Fatal(name, err)
		}
		got := b.FirstTerms()
		if len(got) != len(c.want) {
			t.Fatalf("%s has %d axes", name, len(got))
		}
		for i, w := range c.want {
			g := got[i]
			if float64(g.Shape) != w.shape || !(math.Abs(g.Eigenvalue-w.root) <= 1e-4) ||
				!(math.Abs(g.Coefficient-w.factor) <= 1e-4) || !(math.Abs(g.Biot-1) <= 1e-12) || g.Radius != 0.05 {
				t.Errorf("%s, axis %d: %+v, want %+v", name, i, g, w)
			}
			last := g.Eigenvalue
			for _, next := range g.Later { // one in each stretch of π
				if d := next.Eigenvalue - last; d < 2 || d > 3.6 {
					t.Errorf("%s, axis %d: %v after %v", name, i, next.Eigenvalue, last)
				}
				last = next.Eigenvalue
			}
		}
		if tau := b.SlowestTime(); !(math.Abs(tau/c.tau-1) <= 3e-4) {
			t.Errorf("%s: time constant %v s, want %v", name, tau, c.tau)
		}
		// Late, the middle falls by e in each time constant; and a time that is asked for comes back.
		one, two := b.Center(3*c.tau), b.Center(4*c.tau)
		if !(math.Abs(one/two/math.E-1) <= 2e-3) {
			t.Errorf("%s: the middle falls from %v to %v in one time constant", name, one, two)
		}
		if at, err := b.CenterTime(one); err != nil || !(math.Abs(at/(3*c.tau)-1) <= 1e-6) {
			t.Errorf("%s: %v s, %v; want %v", name, at, err, 3*c.tau)
		}
		if at, err := b.MeanTime(b.Mean(c.tau)); err != nil || !(math.Abs(at/c.tau-1) <= 1e-6) {
			t.Errorf("%s: on average %v s, %v; want %v", name, at, err, c.tau)
		}
		if _, err := b.CenterTime(0); !errors.Is(err, ErrUnreachable) {
			t.Errorf("%s reaches its surroundings: %v", name, err)
		}
		if _, err := b.CenterTime(1); !errors.Is(err, quantity.ErrOutOfRange) ||
			!strings.Contains(err.Error(), "got 1 , want 0 to 1") {
			t.Errorf("%s: %v", name, err)
		}
		if at, want := b.At(c.tau), b.Center(c.tau); !(math.Abs(at-want) <= 1e-12) { // no position is the middle
			t.Errorf("%s: %v at no position, %v in the middle", name, at, want)
		}
	}
}

// A body that cannot be is refused for the first thing that is wrong with it.
func TestBodiesThatAreNone(t *testing.T) {
	with := func(change func(*Material)) Material {
		m := plain
		change(&m)
		return m
	}
	for name, c := range map[string]struct {
		of Geometry
		m  Material
		h  float64
	}{
		"conductivity":  {Ball(0.05), with(func(m *Material) { m.Conductivity = 9e-7 }), 10},
		"density":       {Ball(0.05), with(func(m *Material) { m.Density = 9e-4 }), 10},
		"heat capacity": {Ball(0.05), with(func(m *Material) { m.HeatCapacity = 0.9 }), 10},
		"no surface":    {Ball(0.05), plain, 0},
		"no number":     {Ball(0.05), plain, math.NaN()},
		"no form":       {Geometry{}, plain, 10},
		"too small":     {Ball(0.9e-4), plain, 10},
		"too large":     {Plate(10.1), plain, 10},
		"one axis":      {Block(0.1, 0.1, 1e-6), plain, 10},
	} {
		if _, err := NewBody(c.of, c.m, c.h); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := NewFollowed(c.of, c.m, c.h); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("%s, followed: %v", name, err)
		}
	}
	_, biot := NewSeries(Slab, 2e6)
	s, _ := NewSeries(Slab, 1)
	_, all := s.CenterTime(1)
	for want, err := range map[string]error{
		"Biot number out of range: got 2e+06 , want 1e-06 to 1e+06 ":             biot,
		"share of the temperature difference out of range: got 1 , want 0 to 1 ": all,
		"half thickness or radius out of range: got 11 m, want 0.0001 to 10 m":   Ball(11).Check(plain, 10),
		"heat capacity out of range: got 0.5 J/(kg K), want 1 to 1e+06 J/(kg K)": Ball(0.05).Check(
			with(func(m *Material) { m.HeatCapacity = 0.5 }), 10),
	} {
		if err == nil || err.Error() != want {
			t.Errorf("%v, want %q", err, want)
		}
	}
	for _, ok := range []Geometry{Ball(1e-4), Plate(10)} {
		if _, err := NewBody(ok, plain, 10); err != nil {
			t.Errorf("%+v: %v", ok, err)
		}
	}
	for _, ok := range []Material{{1e-6, 500, 1000}, {0.5, 1e-3, 1000}, {0.5, 500, 1}} {
		if err := Ball(0.05).Check(ok, 20*ok.Conductivity); err != nil {
			t.Errorf("%+v: %v", ok, err)
		}
	}
}

// The mean of a body is the mean of its places: ∫θ dx of a plate, ∫2x·θ dx of a cylinder, ∫3x²·θ dx of a ball.
func TestTheMeanIsThatOfAllPlaces(t *testing.T) {
	for shape, weight := range map[Shape]func(x float64) float64{
		Slab: func(float64) float64 { return 1 }, Cylinder: func(x float64) float64 { return 2 * x },
		Sphere: func(x float64) float64 { return 3 * x * x },
	} {
		s, err := NewSeries(shape, 3)
		if err != nil {
			t.Fatal(err)
		}
		for _, fo := range []float64{0.01, 0.1, 0.5} {
			got, err := numeric.Integrate(func(x float64) float64 { return weight(x) * s.At(fo, x) }, 0, 1, 1e-10)
			if err != nil || !(math.Abs(got.Value-s.Mean(fo)) <= 1e-9) {
				t.Errorf("%v after %v: the places have %v, %v; the mean is %v", shape, fo, got.Value, err, s.Mean(fo))
			}
		}
	}
}

// Crumb without pores has the diffusivity e^−15.25 = 2.382e-7 m²/s, and one of 0.95 has e^0.95 = 2.5857 times that.
func TestDiffusivityOfCrumb(t *testing.T) {
	dense, err := CrumbDiffusivity(0)
	loose, err2 := CrumbDiffusivity(0.95)
	if err != nil || err2 != nil || !(math.Abs(dense/2.382e-7-1) <= 1e-3) || !(math.Abs(loose/dense-2.5857) <= 1e-4) {
		t.Errorf("%v, %v; %v, %v", dense, err, loose, err2)
	}
	for _, porosity := range []float64{-1e-9, 0.951} {
		got, err := CrumbDiffusivity(porosity)
		if want := fmt.Sprintf("porosity out of range: got %v , want 0 to 0.95 ", porosity); err == nil ||
			err.Error() != want || !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("porosity %v: %v, %v; want %q", porosity, got, err, want)
		}
	}
}

// Temperatures are followed from −100 to 500 °C.
func TestLimitsOfWhatIsFollowed(t *testing.T) {
	b, err := NewFollowed(Ball(0.05), plain, 10)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		start, around float64
		ok            bool
	}{{-100, 500, true}, {500, -100, true}, {-100.5, 20, false}, {500.5, 20, false}, {20, -100.5, false}, {20, 500.5,
		false}} {
		if _, err := b.Follow(Middle, c.start, []Knot{{0, c.around}}); (err == nil) != c.ok {
			t.Errorf("from %v in %v: %v", c.start, c.around, err)
		}
	}
}
