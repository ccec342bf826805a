package gasbalance

import (
	"math"
	"testing"
)

// What a reading moves the unknowns to is right for the slope that the rise has there, however far off the reading was:
// the law itself makes the rise that is told.
func TestAReadingIsTakenInWhereItLeads(t *testing.T) {
	l := Standard()
	start, h := Start(0.091*l.RipeLevain(), 0), []Knot{{0, 24}}
	b := Prior(ByLevain)
	c := l.Clock(plain, Vector{})
	for _, rise := range []float64{0.05, 0.4, 1.6} {
		at := c.Likely(start, h, l.Need(0.4, 0.72, 1), 100)
		after, taken := l.Observe(b, plain, Vessel{0.72, 1}, start, h, []Reading{{at, rise, 0.05}})
		k := l.Clock(plain, after.Mean)
		s := k.AdvanceAlong(start, h, 0, at)
		if got := l.Rise(k.Gas(&s), 24, 0.72, 1); !(math.Abs(got-taken[0].Rise) <= 1e-5) {
			t.Errorf("read %v: the law makes %v of it, told is %v", rise, got, taken[0].Rise)
		}
		// It lies between what was expected, 0.4, and what was read.
		if got := taken[0].Rise; rise < 0.4 && !(got > rise && got < 0.4) || rise > 0.4 && !(got < rise && got > 0.4) {
			t.Errorf("read %v: %v after", rise, got)
		}
	}
}

// A dough is followed no longer than until its late time.
func TestADoughIsFollowedUntilItsLateTime(t *testing.T) {
	l := Standard()
	b := Prior(ByLevain)
	o := l.Clock(plain, Vector{}).Times(Start(0.1, 0), []Knot{{0, 24}}, l.Need(0.75, 0.72, 1), &b, 720)
	if last := o.Path.moments[len(o.Path.moments)-1].hour; !(o.Early < o.Likely && o.Likely < o.Late) || last > 2*o.Late {
		t.Errorf("%v, %v, %v; followed until %v h", o.Early, o.Likely, o.Late, last)
	}
}

// How steeply the gas goes with the rise is the derivative of its log by the log of the rise; ripeness has none.
func TestSteepnessIsTheDerivative(t *testing.T) {
	l := Standard()
	for _, rise := range []float64{0.1, 0.75, 1.8} {
		gas := func(r float64) float64 { n := l.Need(r, 0.72, 0.9); return math.Log(n.Gas(20)) }
		const step = 1e-5
		want := (gas(rise*(1+step)) - gas(rise*(1-step))) / (math.Log(1+step) - math.Log(1-step))
		n := l.Need(rise, 0.72, 0.9)
		if got := n.Steepness(20); !(math.Abs(got-want) <= 1e-6) {
			t.Errorf("%v at a rise of %v, by differences %v", got, rise, want)
		}
	}
	if n := l.Ripeness(0.2); n.Steepness(24) != 0 {
		t.Errorf("ripeness has the steepness %v", n.Steepness(24))
	}
}

// Two leavenings in one long stride come to what a thousand short runs make of them, also where cells crowd and on a
// ramp; and far nearer than one long run without its mending.
func TestTwoLeaveningsInOneStride(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	for _, part := range []float64{0.05, 0.5, 0.8} { // of the capacity at the start
		for _, ramp := range [][2]float64{{14, 14}, {18, 18}, {26, 26}, {18, 21}, {24, 22}} {
			start := Start(0.5*part*l.Capacity, 0.5*part*l.Capacity)
			fine, mended, bare := start, start, start
			const hours, pieces = 1.5, 1000
			at := func(piece int) float64 { return ramp[0] + (ramp[1]-ramp[0])*float64(piece)/pieces }
			for i := range pieces {
				c.run(&fine, hours/pieces, at(i), at(i+1))
			}
			c.stride(&mended, hours, ramp[0], ramp[1])
			c.run(&bare, hours, ramp[0], ramp[1])
			off := func(s State) float64 { return math.Abs(s.Levain/fine.Levain - 1) }
			gas := func(s State) float64 { return math.Abs(s.Gas/fine.Gas - 1) }
			if ramp[0] == ramp[1] && !(off(mended) <= 0.2*off(bare)) || !(gas(mended) <= 2e-5) ||
				ramp[0] != ramp[1] && !(gas(mended) <= 0.02*gas(bare)) {
				t.Errorf("%v of the capacity at %v °C: off by %v, without mending by %v; gas off by %v and %v", part, ramp,
					off(mended), off(bare), gas(mended), gas(bare))
			}
		}
	}
}

// A stretch is cut as often as its limits ask for, and no oftener: no run spans more than 4 °C, or 1 °C where it is
// warm; none lets cells grow by more than e^1.5; two leavenings grow apart by no more than e^0.25.
func TestStretchesAreCutAtTheirLimits(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	pace := l.Pace(plain)
	for _, part := range [][2]float64{{0.1, 0}, {0, 0.1}, {0.1, 0.1}} {
		for _, h := range []float64{0.5, 3, 30} {
			for _, span := range [][2]float64{{20, 20}, {4, 26}, {28, 10}, {30, 36}} {
				limit := func(hours float64) float64 { // the largest part that one run makes of a limit
					at := max(math.Abs(span[1]-span[0])*hours/h/4, 0)
					if max(span[0], span[1]) > 34 {
						at *= 4
					}
					for _, celsius := range span {
						levain, yeast := l.mixed(l.rates(celsius)), l.rates(celsius).yeast
						grown := l.Growth * pace * hours
						if part[0] > 0 {
							at = max(at, grown*levain/1.5)
						}
						if part[1] > 0 {
							at = max(at, grown*yeast/1.5)
						}
						if part[0] > 0 && part[1] > 0 {
							at = max(at, grown*math.Abs(levain-yeast)/0.25)
						}
					}
					return at
				}
				s := Start(part[0], part[1])
				n := c.cuts(&s, h, span[0], span[1])
				if n < 1 || limit(h/float64(n)) > 1+1e-9 || n > 1 && limit(h/float64(n-1)) <= 1 {
					t.Errorf("%v h from %v to %v °C with %v: %d runs, one is %v of its limit", h, span[0], span[1], part, n,
						limit(h/float64(n)))
				}
			}
		}
	}
}
