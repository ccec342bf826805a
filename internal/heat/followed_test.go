package heat

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func anyGeometry(t *rapid.T) Geometry {
	size := func(what string) float64 {
		return math.Exp(rapid.Float64Range(math.Log(0.01), math.Log(0.5)).Draw(t, what))
	}
	switch rapid.IntRange(0, 4).Draw(t, "form") {
	case 0:
		return Ball(size("radius"))
	case 1:
		return Plate(size("half"))
	case 2:
		return LongCylinder(size("radius"))
	case 3:
		return ShortCylinder(size("radius"), size("height"))
	}
	return Block(size("length"), size("width"), size("height"))
}

// A body set up to be followed keeps the same exponentials as one with all its terms, and the slowest of all.
func TestFollowedKeepsTheSlowest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, h := anyGeometry(t), math.Exp(rapid.Float64Range(math.Log(0.5), math.Log(1000)).Draw(t, "ln h"))
		whole, err1 := NewBody(g, Material{0.41, 1100, 2800}, h)
		few, err2 := NewFollowed(g, Material{0.41, 1100, 2800}, h)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		for _, of := range []Part{Middle, Average} {
			all, kept := whole.modes(of).all, few.modes(of).all
			if len(all) != len(kept) {
				t.Fatalf("%d exponentials, %d with all terms", len(kept), len(all))
			}
			sum, slowest := 0.0, math.Inf(1)
			for i, m := range kept {
				sum += m.share
				slowest = math.Min(slowest, m.rate)
				if m.rest && all[i].rest && math.Abs(m.rate-all[i].rate) < 1e-6*m.rate {
					continue // where the list ends is found by halving
				}
				if m != all[i] {
					t.Fatalf("exponential %d is %+v, %+v with all terms", i, m, all[i])
				}
			}
			if !(math.Abs(sum-1) <= 1e-12) || !(math.Abs(slowest*whole.SlowestTime()-1) <= 1e-12) {
				t.Fatalf("shares add up to %v, slowest %v", sum, slowest)
			}
			for _, m := range kept { // nothing slower than the last is left out
				if !m.rest && m.rate > last(kept).rate {
					t.Fatalf("%v is faster than where the list ends, %v", m.rate, last(kept).rate)
				}
			}
		}
	})
}

// A body of several axes keeps 240 exponentials and one for the rest, or a few less where some are equally slow.
func TestFollowedKeepsSoMany(t *testing.T) {
	for i := range 40 {
		height := 0.02 * float64(i+1)
		for _, g := range []Geometry{ShortCylinder(0.1, height), Block(0.2, 0.25, height)} {
			b, err := NewFollowed(g, plain, 10)
			if err != nil {
				t.Fatal(err)
			}
			if n := len(b.modes(Average).all) - 1; n > mostModes || n < mostModes-10 {
				t.Errorf("%d axes, %v m high: %d exponentials", g.count, height, n)
			}
		}
	}
}

func last(all []mode) mode {
	for _, m := range all {
		if m.rest {
			return m
		}
	}
	return mode{}
}

// The roots stand where the condition at the surface holds, each in its own half turn.
func TestEigenvaluesSolveTheirEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		biot := math.Exp(rapid.Float64Range(math.Log(1e-6), math.Log(1e6)).Draw(t, "ln Bi"))
		shape := Shape(rapid.IntRange(0, 2).Draw(t, "shape"))
		before := 0.0
		for n := range terms {
			z, err := eigenvalue(shape, biot, n, before)
			if err != nil {
				t.Fatal(err)
			}
			inside, err := bracketed(shape, biot, n)
			if err != nil || !(math.Abs(z-inside) <= 1e-15*inside*4) {
				t.Fatalf("%v, Bi %v: root %d is %v, %v in its bracket (%v)", shape, biot, n, z, inside, err)
			}
			before = z
		}
	})
}

func BenchmarkNewFollowed(b *testing.B) {
	for b.Loop() {
		body, err := NewFollowed(ShortCylinder(0.1, 0.2), Material{0.41, 1100, 2800}, 5)
		if err != nil {
			b.Fatal(err)
		}
		sink = float64(len(body.modes(Average).all))
	}
}
