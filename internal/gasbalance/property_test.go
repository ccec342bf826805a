package gasbalance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawn is a dough with a goal.
type drawn struct {
	f       Formula
	levain  float64
	yeast   float64
	rise    float64
	atm     float64
	celsius float64
}

func draw(t *rapid.T, warmest float64) (d drawn) {
	d.f = Formula{
		Hydration: rapid.Float64Range(0.45, 1.1).Draw(t, "hydration"), Salt: rapid.Float64Range(0, 3).Draw(t, "salt"),
		Sugar: rapid.Float64Range(0, 20).Draw(t, "sugar"), Whole: rapid.Float64Range(0, 1).Draw(t, "whole"),
	}
	switch rapid.IntRange(0, 2).Draw(t, "kind") {
	case 0:
		d.levain = rapid.Float64Range(0.005, 0.5).Draw(t, "levain")
	case 1:
		d.yeast = rapid.Float64Range(0.01, 3).Draw(t, "yeast")
	default:
		d.levain = rapid.Float64Range(0.005, 0.5).Draw(t, "levain")
		d.yeast = rapid.Float64Range(0.01, 3).Draw(t, "yeast")
	}
	d.rise = rapid.Float64Range(0.1, 2.5).Draw(t, "rise")
	d.atm = rapid.Float64Range(0.6, 1.05).Draw(t, "atm")
	d.celsius = rapid.Float64Range(8, warmest).Draw(t, "celsius")
	return d
}

func (d drawn) kind() Leavening {
	switch {
	case d.yeast == 0:
		return ByLevain
	case d.levain == 0:
		return ByYeast
	}
	return ByBoth
}

func (d drawn) start() State { return Start(d.levain*Standard().RipeLevain(), d.yeast) }

func (d drawn) times() Outcome {
	l := Standard()
	b := Prior(d.kind()).For(l.Unusual(d.f))
	need := l.Need(d.rise, d.f.Hydration, d.atm)
	return l.Clock(d.f, Vector{}).Times(d.start(), []Knot{{0, d.celsius}}, need, &b, 720)
}

const rounding = 1e-6

func later(t *rapid.T, what string, a, b Outcome) {
	for _, v := range [][2]float64{{a.Early, b.Early}, {a.Likely, b.Likely}, {a.Late, b.Late}} {
		if v[1] < v[0]*(1-rounding) {
			t.Fatalf("%s: %v before %v", what, v[1], v[0])
		}
	}
}

func TestMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t, 37)
		o := d.times()
		if !(o.Early <= o.Likely && o.Likely <= o.Late) {
			t.Fatalf("out of order: %v %v %v", o.Early, o.Likely, o.Late)
		}
		higher := d
		higher.rise *= rapid.Float64Range(1.01, 1.2).Draw(t, "higher")
		later(t, "a higher rise", o, higher.times())
		more := d
		more.levain *= 1.2
		more.yeast *= 1.2
		later(t, "more leavening", more.times(), o)
		thin := d
		thin.atm *= 0.9
		later(t, "less air pressure", thin.times(), o)
		salty := d
		salty.f.Salt += 0.5
		if a, b := d.times().Likely, salty.times().Likely; b < a*(1-rounding) {
			t.Fatalf("more salt is earlier: %v, %v", a, b)
		}
	})
}

// Never slower when warmer: below 30 °C for a levain, 37 °C for yeast.
func TestWarmerIsNeverSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t, 29)
		limit := 30.0
		if d.kind() == ByYeast {
			d.celsius = rapid.Float64Range(2, 36).Draw(t, "warm")
			limit = 37
		}
		if d.kind() == ByLevain && d.rise > 0.75 || d.kind() == ByBoth {
			// A levain to a high rise is fastest near 29 °C: it must grow further, and growth ends earlier than gas.
			limit = 28
		}
		warm := d
		warm.celsius = math.Min(limit, d.celsius+rapid.Float64Range(0.1, 3).Draw(t, "warmer"))
		if warm.celsius <= d.celsius {
			return
		}
		a, b := d.times().Likely, warm.times().Likely
		if b > a*(1+rounding) {
			t.Fatalf("%+v: %v h at %v °C, %v h at %v °C", d, a, d.celsius, b, warm.celsius)
		}
	})
}

// A dough with none of one leavening is the other's, and a trace of the second changes next to nothing.
func TestZeroOfOneIsTheOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t, 30)
		l := Standard()
		c := l.Clock(d.f, Vector{0, 0.1, 0.01, 0.3, 0.2})
		for _, traces := range [][2]State{
			{Start(d.levain+0.05, 0), Start(d.levain+0.05, 1e-12)},
			{Start(0, d.yeast+0.1), Start(1e-12, d.yeast+0.1)},
		} {
			a, b := traces[0], traces[1]
			for range 10 { // the same runs for both: where they are cut depends on what is in the dough
				c.run(&a, 0.5, d.celsius, d.celsius-2)
				c.run(&b, 0.5, d.celsius, d.celsius-2)
			}
			near(t, "gas", a.Gas, b.Gas, 1e-9)
			ea, eb := a.LogGas(), b.LogGas()
			for i := range ea {
				near(t, "derivative", ea[i], eb[i], 1e-7)
			}
		}
	})
}

func near(t *rapid.T, what string, a, b, tolerance float64) {
	t.Helper()
	if !(math.Abs(a-b) <= tolerance*(1+math.Abs(a))) {
		t.Fatalf("%s: %v and %v", what, a, b)
	}
}

// At one temperature one leavening is exact, so that it does not matter where a run is cut; and a history joined of
// two is that of both.
func TestRunsJoin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t, 35)
		c := Standard().Clock(d.f, Vector{})
		cut := rapid.Float64Range(0.1, 9.9).Draw(t, "cut")
		s := d.start()
		if d.kind() != ByBoth {
			whole, parts := s, s
			c.run(&whole, 10, d.celsius, d.celsius)
			c.run(&parts, cut, d.celsius, d.celsius)
			c.run(&parts, 10-cut, d.celsius, d.celsius)
			near(t, "gas", whole.Gas, parts.Gas, 1e-9)
			near(t, "cells", whole.Cells(), parts.Cells(), 1e-9)
			for i, e := range whole.LogGas() {
				near(t, "derivative", e, parts.LogGas()[i], 1e-8)
			}
		}
		// Followed to any time and on from there, along corners and a jump.
		h := []Knot{{0, d.celsius}, {3, 12}, {3, 25}, {6, 20}}
		p := c.Follow(s, h, 5)
		at, _ := p.At(cut)
		on := c.AdvanceAlong(at, h, cut, 10)
		end, _ := p.At(10)
		near(t, "gas along a history", end.Gas, on.Gas, 1e-3) // the cuts fall elsewhere: the scheme's own error
		// The same history begun later is the same.
		shifted := make([]Knot, len(h))
		for i, k := range h {
			shifted[i] = Knot{k.Hour + 2, k.Celsius}
		}
		again := c.AdvanceAlong(s, shifted, 2, 12)
		straight := c.AdvanceAlong(s, h, 0, 10)
		near(t, "shifted", straight.Gas, again.Gas, 1e-9)
	})
}

// The derivatives that ride along against differences.
func TestDerivatives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t, 33)
		at := Vector{}
		for i := 1; i < Unknowns; i++ {
			at[i] = rapid.Float64Range(-0.02, 0.02).Draw(t, "unknown")
		}
		h := []Knot{{0, d.celsius}, {2, 16}, {2, 25}, {7, 21.5}}
		l := Standard()
		gas := func(u Vector) (State, float64) {
			c := l.Clock(d.f, u)
			s := d.start()
			for i := 1; i < len(h); i++ {
				n := 8.0
				for k := 0.0; k < n; k++ {
					a, b := h[i-1], h[i]
					dc := (b.Celsius - a.Celsius) / n
					c.run(&s, (b.Hour-a.Hour)/n, a.Celsius+dc*k, a.Celsius+dc*(k+1))
				}
			}
			return s, math.Log(c.Gas(&s))
		}
		s, _ := gas(at)
		e := s.LogGas()
		for i := range at {
			const step = 1e-5
			up, down := at, at
			up[i] += step
			down[i] -= step
			_, hi := gas(up)
			_, lo := gas(down)
			near(t, "derivative", e[i], (hi-lo)/(2*step), 2e-6)
		}
	})
}

// Gas for a rise and the rise of that gas are inverses.
func TestRiseInvertsNeed(t *testing.T) {
	l := Standard()
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(1e-6, 3.49).Draw(t, "rise")
		h := rapid.Float64Range(0.3, 3).Draw(t, "hydration")
		atm, c := rapid.Float64Range(0.4, 1.1).Draw(t, "atm"), rapid.Float64Range(-5, 45).Draw(t, "celsius")
		n := l.Need(r, h, atm)
		near(t, "rise", r, l.Rise(n.Gas(c), c, h, atm), 1e-9)
		up, down := l.Need(r*1.0001, h, atm), l.Need(r/1.0001, h, atm)
		by := math.Log(up.Gas(c)/down.Gas(c)) / (2 * math.Log(1.0001))
		near(t, "steepness", n.Steepness(c), by, 1e-3*(1+n.Steepness(c)))
	})
}

// No input that ferment lets through, and none that it does not, makes what is not a number out of numbers.
func TestHostile(t *testing.T) {
	l := Standard()
	b := Prior(ByBoth)
	for _, x := range []float64{0, 1e-12, 0.5, 3, 50, 1e6} {
		for _, c := range []float64{-273, -25, -1.2, 0, 0.4, 27, 36, 49, 60, 200} {
			for _, hours := range []float64{0, 1e-9, 1, 720} {
				clock := l.Clock(plain, Vector{0.1, 0.1, 0.01, 0.1, 0.1})
				s := clock.Advance(Start(x, x/3), hours, c, c/2)
				for _, v := range []float64{s.Levain, s.Yeast, s.Gas, s.LogGas()[1], s.LogGas()[4]} {
					if v != v {
						t.Fatalf("%v cells, %v °C, %v h: %+v", x, c, hours, s)
					}
				}
				r := l.Rise(s.Gas, 25, 0.7, 1)
				if !(r >= 0 && r <= l.Fullest) {
					t.Fatalf("rise %v", r)
				}
			}
			o := l.Clock(plain, Vector{}).Times(Start(x, 0), []Knot{{0, c}}, l.Need(1, 0.7, 1), &b, 720)
			if !(o.Early <= o.Likely && o.Likely <= o.Late) {
				t.Fatalf("%v cells at %v °C: %v %v %v", x, c, o.Early, o.Likely, o.Late)
			}
		}
	}
}
