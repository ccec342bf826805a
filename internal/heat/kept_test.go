package heat

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/maslin/internal/numeric"
)

// A body of one axis keeps sixty exponentials and one for the rest. A long or flat one of several axes keeps fewer than
// it might: all 128 of its long axis but the last, since what lies beyond that is not known.
func TestHowManyExponentialsAreKept(t *testing.T) {
	for name, c := range map[string]struct {
		of   Geometry
		h    float64
		want int
	}{
		"ball": {Ball(0.06), 10, 60}, "plate": {Plate(0.02), 10, 60},
		"long cylinder": {LongCylinder(0.04), 10, 60},
		"stick":         {Block(2, 0.01, 0.01), 10, 127}, "disc": {ShortCylinder(9, 0.001), 10, 127},
		"wire": {ShortCylinder(0.001, 9), 10, 127},
	} {
		for setup, set := range map[string]func(Geometry, Material, float64) (*Body, error){
			"whole": NewBody, "followed": NewFollowed,
		} {
			b, err := set(c.of, plain, c.h)
			if err != nil {
				t.Fatal(err)
			}
			for _, of := range []Part{Middle, Average} {
				if got := len(b.modes(of).all) - 1; got != c.want {
					t.Errorf("%s, %s: %d exponentials, want %d", name, setup, got, c.want)
				}
			}
		}
	}
}

// A body set up to be followed finds few terms more than it uses: four to six of a cylinder's and a block's axes, and
// never fewer than four or more than a series has.
func TestFollowedFindsFewTermsMore(t *testing.T) {
	for _, g := range []Geometry{
		ShortCylinder(0.1, 0.2), ShortCylinder(0.1, 0.02), ShortCylinder(0.05, 0.4), ShortCylinder(0.01, 2),
		Block(0.3, 0.2, 0.12), Block(0.1, 0.1, 0.1), Block(0.4, 0.1, 0.05), Block(2, 0.01, 0.01), Ball(0.1), Plate(0.1),
	} {
		for _, h := range []float64{1, 10, 1000} {
			b, err := NewFollowed(g, plain, h)
			if err != nil {
				t.Fatal(err)
			}
			m := b.modes(Middle)
			for i := range b.count {
				found, used := len(b.factors[i].term), len(m.axes[i])
				if more := found - used; found < 4 || found > terms || more < 1 || more > 7 ||
					b.count == 1 && more != 1 {
					t.Errorf("%+v, h %v, axis %d: %d terms are found, %d used", g, h, i, found, used)
				}
			}
		}
	}
}

// The exponentials that a bend of the surroundings moves most come first, within a factor of two.
func TestThoseThatCountMostComeFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, err := NewBody(anyGeometry(t), plain, math.Exp(rapid.Float64Range(-1, 7).Draw(t, "ln h")))
		if err != nil {
			t.Fatal(err)
		}
		for _, of := range []Part{Middle, Average} {
			all := b.modes(of).all
			slowest := 1 / b.SlowestTime()
			least := math.Inf(1)
			for i, x := range all {
				counts := math.Abs(x.share) * slowest / x.rate
				if !(counts < 2*least) && least > 0x1p-50 {
					t.Fatalf("exponential %d counts %v after one of %v", i, counts, least)
				}
				least = math.Min(least, counts)
			}
		}
	})
}

// Exponentials are followed until all from there on come to no more than 1e-10 °C together.
func TestWhatIsAsGoodAsSteady(t *testing.T) {
	m := &modes{all: []mode{{share: 1}, {share: -2}, {share: 1}, {share: 1}}}
	for _, c := range []struct {
		away []float64
		want int
	}{
		{[]float64{0, 0, 0, 0}, 0}, {[]float64{1, 0, 0, 0}, 1}, {[]float64{0, 1, 0, 0}, 2}, {[]float64{1, 1, -1, 0}, 3},
		{[]float64{1, 1, 1, 1e-9}, 4}, {[]float64{1, 1, 1, 1e-11}, 3},
		{[]float64{0, 0, 0, settled}, 0}, {[]float64{0, 0, 0, -1.01 * settled}, 4},
		{[]float64{1, 0, 0.6 * settled, 0.6 * settled}, 3},  // together they count
		{[]float64{1, 0.6 * settled, 0, 0}, 2},              // by their shares
		{[]float64{0.6 * settled, 0.1 * settled, 0, 0}, 0},  // and these do not
		{[]float64{0.9 * settled, -0.1 * settled, 0, 0}, 1}, // whatever their signs
	} {
		if got := m.moving(c.away); got != c.want {
			t.Errorf("%v: %d move, want %d", c.away, got, c.want)
		}
	}
}

// From half a turn after the root before, Newton's steps find the next one at every Biot number; a start in another
// half turn, from which they lead to another root, is given up, and so is a root that no bracket holds.
func TestStepsToTheNextRoot(t *testing.T) {
	for shape := Slab; shape <= Sphere; shape++ {
		for power := -6.0; power <= 6; power += 0.25 {
			biot := math.Pow(10, power)
			before, err := bracketed(shape, biot, 0)
			if err != nil {
				t.Fatal(err)
			}
			for n := 1; n < terms; n++ {
				z, ok := newton(shape, biot, n, before+math.Pi)
				if !ok || !(z > float64(n)*math.Pi && z < float64(n+1)*math.Pi) {
					t.Fatalf("%v, Bi %v: root %d is %v, %v", shape, biot, n, z, ok)
				}
				before = z
			}
		}
	}
	for _, c := range []struct {
		shape Shape
		n     int
		start float64
	}{{Cylinder, 3, 20}, {Cylinder, 3, 5}, {Sphere, 3, -20}, {Slab, 2, math.NaN()}} {
		if z, ok := newton(c.shape, 1, c.n, c.start); z != 0 || ok {
			t.Errorf("root %d of the %v from %v: %v, %v", c.n, c.shape, c.start, z, ok)
		}
	}
	if z, err := bracketed(Slab, math.NaN(), 0); z != 0 || err == nil ||
		err.Error() != "eigenvalue 0 of the slab at Bi NaN: "+numeric.ErrDomain.Error() {
		t.Errorf("no Biot number: %v, %v", z, err)
	}
	for _, n := range []int{-1, 1_000_000} { // zeros of the Bessel functions are known for so many
		if z, err := bracketed(Cylinder, 1, n); z != 0 || !errors.Is(err, numeric.ErrDomain) {
			t.Errorf("root %d of the cylinder: %v, %v", n, z, err)
		}
	}
}
