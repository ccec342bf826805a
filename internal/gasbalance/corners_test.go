package gasbalance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A law is one at the very ends of what its parameters may be, and none just beyond.
func TestParametersAtTheirEnds(t *testing.T) {
	for name, c := range map[string]struct {
		set       func(p *Parameters, x float64)
		low, high float64
	}{
		"stiffness": {func(p *Parameters, x float64) { p.Stiffness = x }, 0, 5},
		"mixture":   {func(p *Parameters, x float64) { p.Mixture = x }, 0, 1},
		"whole":     {func(p *Parameters, x float64) { p.Whole = x }, -5, 5},
	} {
		for x, want := range map[float64]bool{
			c.low: true, c.high: true, c.low - 1e-9: false, c.high + 1e-9: false, math.Inf(1): false,
		} {
			p := Standing()
			c.set(&p, x)
			if l, ok := New(p); ok != want || (l != nil) != want {
				t.Errorf("%s of %v is taken: %v", name, x, ok)
			}
		}
		p := Standing()
		c.set(&p, math.NaN())
		if _, ok := New(p); ok {
			t.Errorf("%s that is no number is taken", name)
		}
	}
	l := Standard()
	if c := l.Clock(plain, Vector{}); c.Law() != l {
		t.Error("a clock goes by another law than its own")
	}
}

// Colder and warmer than its table goes, a rate is that at its end.
func TestRatesBeyondTheTable(t *testing.T) {
	p := Standing()
	p.GasCurve, _ = Custom("straight", -100, 100, func(t float64) float64 { return t + 40 })
	p.YeastCurve, p.HumilisCurve = p.GasCurve, p.GasCurve
	l, ok := New(p)
	if !ok {
		t.Fatal("a straight curve is refused")
	}
	for celsius, want := range map[float64]float64{
		-30: 10, -30.001: 10, -200: 10, 60: 100, 60.001: 100, 300: 100, 0: 40, -29.9: 10.1, 59.9: 99.9,
	} {
		got := l.rates(celsius)
		for _, x := range []float64{got.gas, got.yeast, got.humilis} {
			if !(math.Abs(x-want/67) <= 1e-9) {
				t.Errorf("at %v °C %v, want %v", celsius, x, want/67)
			}
		}
	}
	mean, apart := l.means(55, 65) // half of it beyond the end
	if !(math.Abs(apart.gas-5.0/67) <= 1e-9) || mean.gas <= 0 {
		t.Errorf("from 55 to 65 °C: %v, from end to end %v", mean.gas, apart.gas)
	}
}

// Integrals of a caller's curve are those of its form, over parts of a degree as well as many, forward and backward.
func TestIntegralsOfACallersCurve(t *testing.T) {
	c, _ := Custom("bent", 0, 60, func(t float64) float64 { return math.Max(0, t-10) * 27 / 17 })
	for _, r := range [][2]float64{{12, 12.1}, {12, 12.3}, {8, 12}, {9.9, 10.1}, {30, 5}, {20, 20}} {
		square := func(x float64) float64 { return math.Pow(math.Max(0, x-10), 2) / 2 / 17 }
		if got, want := c.Integral(r[0], r[1]), square(r[1])-square(r[0]); !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("from %v to %v: %v, want %v", r[0], r[1], got, want)
		}
	}
}

// A dough made with cells handed on from a preferment goes with the unknowns as differences say, also where nothing
// grows any more but gas is made, in the warm, or where cells fill the dough.
func TestDerivativesOfCellsHandedOn(t *testing.T) {
	l := Standard()
	rapid.Check(t, func(t *rapid.T) {
		celsius := rapid.SampledFrom([]float64{12, 26, 37, 44}).Draw(t, "celsius")
		share := rapid.SampledFrom([]float64{0.1, 0.9, 3}).Draw(t, "share") // 3 is beyond what cells grow to
		kind := rapid.SampledFrom([]State{Start(0.15, 0), Start(0, 0.15), Start(0.1, 0.08)}).Draw(t, "cells")
		dough := func(u Vector) (State, float64) {
			c := l.Clock(plain, u)
			ripe := kind
			for range 12 {
				c.run(&ripe, 0.5, 24, 24)
			}
			s := ripe.HandOn(share)
			for range 8 {
				c.run(&s, 0.25, celsius, celsius)
			}
			return s, math.Log(c.Gas(&s))
		}
		s, _ := dough(Vector{})
		e := s.LogGas()
		for i := range e {
			const step = 1e-5
			up, down := Vector{}, Vector{}
			up[i], down[i] = step, -step
			_, hi := dough(up)
			_, lo := dough(down)
			near(t, "derivative", e[i], (hi-lo)/(2*step), 5e-6)
		}
	})
}

// A dough that makes no gas, or that needs none or without bound, is no row; one that hardly rises is.
func TestWhatIsNoRow(t *testing.T) {
	l := Standard()
	for name, c := range map[string]struct {
		start State
		rise  float64
		at    float64
		ok    bool
	}{
		"plain": {Start(0.1, 0), 0.5, 24, true}, "hardly": {Start(0.001, 0.001), 0.01, 4, true},
		"both": {Start(0.02, 0.02), 0.05, 20, true}, "no cells": {Start(0, 0), 0.5, 24, false},
		"no rise": {Start(0.1, 0), 0, 24, false}, "beyond bounds": {Start(0.1, 0), 3.5, 24, false},
		"frozen": {Start(0.1, 0), 0.5, -25, false}, "too warm to grow": {Start(0.4, 0), 0.3, 45, true},
	} {
		b := Logged{Start: c.start, Formula: plain, History: []Knot{{0, c.at}}, Hours: 4, Rise: c.rise, Error: 0.05,
			Pressure: 1}
		r, ok := l.Row(ByBoth, &b)
		own, ok2 := l.RowAtOwnPace(ByBoth, &b)
		if ok != c.ok || ok2 != c.ok || !ok && (r != Row{} || own != Row{}) {
			t.Errorf("%s: %+v, %v; at its own pace %+v, %v", name, r, ok, own, ok2)
		}
		if ok && (math.IsInf(r.Y, 0) || math.IsNaN(r.Y) || !(math.Abs(r.H[Pace]-1) <= 1e-12)) {
			t.Errorf("%s: %+v", name, r)
		}
	}
	// The pace is looked for by no more than e at a time.
	for _, c := range [][3]float64{{1e9, 1, 1}, {1e-9, 1, -1}, {math.Exp(0.5), 1, 0.5}, {math.Exp(0.5), 2, 0.25},
		{math.Exp(1.8), 2, 0.9}, {math.Exp(-3), 2, -1}} {
		if got := ownPaceStep(c[0], c[1]); !(math.Abs(got-c[2]) <= 1e-12) {
			t.Errorf("%v times the gas, a slope of %v: a step of %v, want %v", c[0], c[1], got, c[2])
		}
	}
}

// A reading of a dough that has not begun to rise teaches nothing, but the luck and the formula's doubt are its pace's.
func TestAReadingBeforeTheDoughRises(t *testing.T) {
	l := Standard()
	b := Prior(ByLevain).For(0.3)
	start, history := Start(0.1, 0), []Knot{{0, 24}}
	got, taken := l.Observe(b, plain, Vessel{0.72, 1}, start, history, []Reading{{0, 0, 0.05}})
	want := b
	want.Cov[Pace][Pace] += b.Luck + b.Formula
	want.Luck, want.Formula = 0, 0
	if got != want || taken[0].Surprise != 0 || taken[0].Expected != 0 || !(math.Abs(taken[0].Rise) <= 1e-12) {
		t.Errorf("%+v, want %+v; taken %+v", got, want, taken[0])
	}
	// Later, what is expected is the rise of the law for what was believed before, of each reading in turn.
	readings := []Reading{{3, 0.35, 0.05}, {4, 0.6, 0.05}}
	_, taken = l.Observe(b, plain, Vessel{0.72, 1}, start, history, readings)
	for i, r := range readings {
		c := l.Clock(plain, taken[i].Before.Mean)
		s := c.AdvanceAlong(start, history, 0, r.Hour)
		if rise := l.Rise(c.Gas(&s), 24, 0.72, 1); !(math.Abs(taken[i].Expected-rise) <= 1e-12) {
			t.Errorf("reading %d: %v expected, by the law %v", i, taken[i].Expected, rise)
		}
	}
}

// The path of a dough has its start before time 0; where it is followed ready is where the gas is what its goal takes.
func TestTimesAreWhereTheGasIsTheNeed(t *testing.T) {
	l := Standard()
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t, 35)
		c, need := l.Clock(d.f, Vector{}), l.Need(d.rise, d.f.Hydration, d.atm)
		history := []Knot{{0, d.celsius}, {3, d.celsius - 4}, {3, d.celsius}, {9, d.celsius - 2}}
		p := c.Follow(d.start(), history, 700)
		if s, celsius := p.At(-1); s != d.start() || celsius != d.celsius {
			t.Fatalf("before its start %+v at %v °C", s, celsius)
		}
		b := Prior(d.kind())
		o := c.Times(d.start(), history, need, &b, 700)
		likely := c.Likely(d.start(), history, need, 700)
		if math.IsInf(likely, 1) {
			return
		}
		near(t, "alone", likely, o.Likely, 1e-6)
		for side, at := range map[int]float64{-1: o.Early, 0: o.Likely, 1: o.Late} {
			if math.IsInf(at, 1) || math.Abs(at-3) < 1e-6 {
				continue // at a jump the need may be met by more
			}
			s, celsius := p.At(at)
			e := s.LogGas()
			off := math.Log(c.Gas(&s)/need.Gas(celsius)) - float64(side)*b.margin(&e)
			if !(math.Abs(off) <= 1e-3) {
				t.Fatalf("side %d: the log of the gas is off by %v at %v h", side, off, at)
			}
		}
	})
}

// Ranges are as much wider as they have been too narrow; a luck that is known from less reaches further; and a belief
// that was not learned from bakes opens nowhere.
func TestHowWideRangesAre(t *testing.T) {
	s := Standard().Clock(plain, Vector{}).Advance(Start(0.07, 0), 8, 18, 18)
	e := s.LogGas()
	b := Prior(ByLevain)
	plainly := b.margin(&e)
	if want := b.Reach(b.variance(&e), e[Pace]*e[Pace]*0.12*0.12) * math.Sqrt(b.variance(&e)); !(math.Abs(
		plainly/want-1) <= 1e-12) {
		t.Errorf("a margin of %v, want %v", plainly, want)
	}
	for _, stretch := range []float64{0.7, 1, 2} {
		b.Stretch = stretch
		if got := b.margin(&e); !(math.Abs(got/plainly-stretch) <= 1e-12) {
			t.Errorf("stretched by %v: %v times as wide", stretch, got/plainly)
		}
	}
	last := math.Inf(1)
	for _, freedom := range []float64{0.5, 0.9, 1.1, 3, 12, 1e6} {
		got := (&Belief{Freedom: freedom}).Reach(0.02, 0.02)
		if !(got < last && got > z80) {
			t.Errorf("%v degrees of freedom: a reach of %v after %v", freedom, got, last)
		}
		last = got
	}
	for _, none := range [][3]float64{{0, 1, 1}, {12, 0, 0.1}, {12, 0.1, 0}} {
		if got := reach(none[0], none[1], none[2]); got != z80 {
			t.Errorf("freedom, variance and luck %v: a reach of %v", none, got)
		}
	}
	cold := Standard().Clock(plain, Vector{}).Advance(Start(0.07, 0), 30, 10, 10)
	b = Prior(ByLevain)
	b.Coldest = 20
	if got := b.Spread(cold.LogGas()).Opening; got != 0 {
		t.Errorf("a belief that rests on no bake opens by %v", got)
	}
}

// A way of kneading that no bake has used does not take part, whichever it is; a matrix times one is itself.
func TestOnlyTheUsedTakePart(t *testing.T) {
	g := unknown(ByBoth)
	for _, used := range [][kneadings]bool{{false, true, false}, {true, false, false}, {}, {false, false, true}} {
		l := g.live(&used)
		for _, i := range l.of[:l.n] {
			if i >= Unknowns && !used[i-Unknowns] {
				t.Errorf("of %v effect %d takes part", used, i)
			}
		}
	}
	var one, two, a effectMatrix
	for i := range a {
		one[i][i], two[i][(i+1)%effects] = 1, 1
		for j := range a {
			a[i][j] = float64(i*effects + j)
		}
	}
	if one.multiply(&a) != a || a.multiply(&one) != a {
		t.Error("a matrix times one is another")
	}
	turned := two.multiply(&a)
	for i := range a {
		if turned[i] != a[(i+1)%effects] {
			t.Errorf("row %d of the turned matrix: %v", i, turned[i])
		}
	}
}

// A stage on the way to ripeness needs its share of the gas at ripeness: of 5.85·(1 − s) L/kg by the standing law.
func TestStagesOnTheWayToRipeness(t *testing.T) {
	l := Standard()
	for _, c := range [][3]float64{{0.2, 1, 4.68}, {0.2, 0.5, 2.34}, {0, 1.5, 8.775}, {0.5, 0, 0}} {
		n := l.RipenessShare(c[0], c[1])
		if got := n.Gas(24); !(math.Abs(got-c[2]) <= 1e-12) || n.Steepness(24) != 0 {
			t.Errorf("a share of %v with %v of seed: %v L/kg, want %v", c[1], c[0], got, c[2])
		}
		whole := l.Ripeness(c[0])
		if gas, steepness := n.at(24); !(math.Abs(gas-c[1]*whole.Gas(24)) <= 1e-12) || steepness != 0 {
			t.Errorf("a share of %v with %v of seed: %v L/kg, steepness %v", c[1], c[0], gas, steepness)
		}
	}
}

// A row that is made at the typical kitchen has the temperature of its dough, and near its own pace the scale and the
// derivatives of the row made there. A path was followed for as long as was asked.
func TestARowAtTheTypicalKitchen(t *testing.T) {
	l := Standard()
	for _, at := range []float64{18, 24, 29} {
		b := Logged{
			Start: Start(0.1, 0), Formula: Formula{Hydration: 0.65, Salt: 1.5, Sugar: 6, Whole: 0.5},
			History: []Knot{{0, at}}, Rise: 0.6, Error: 0.08, Pressure: 0.95,
		}
		c := l.Clock(b.Formula, Vector{})
		b.Hours = c.Likely(b.Start, b.History, l.Need(b.Rise, 0.65, 0.95), 200)
		r, ok := l.Row(ByLevain, &b)
		own, ok2 := l.RowAtOwnPace(ByLevain, &b)
		if !ok || !ok2 || !(math.Abs(r.Celsius-at) <= 1e-6) || !(math.Abs(r.Scale/own.Scale-1) <= 1e-3) ||
			!(math.Abs(r.Y) <= 1e-5) || !(math.Abs(own.Y) <= 1e-5) {
			t.Errorf("at %v °C: %+v, at its own pace %+v", at, r, own)
		}
		for i := range r.H {
			if !(math.Abs(r.H[i]-own.H[i]) <= 1e-4*(1+math.Abs(own.H[i]))) {
				t.Errorf("at %v °C, unknown %d: %v, at its own pace %v", at, i, r.H[i], own.H[i])
			}
		}
		if p := c.Follow(b.Start, []Knot{{0, 20}, {4, 25}}, 7.5); p.Hours() != 7.5 {
			t.Errorf("followed for %v h", p.Hours())
		}
	}
}
