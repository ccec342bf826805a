package gasbalance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// What a reading moves the unknowns to is settled if it is off by up to eight standard deviations and the dough was not
// expected to be all but full: the law makes of them the rise that is told, to two points. However wild it is, and
// where on the way the dough would be as full as can be, the answer is a number.
func TestAWildReadingSettles(t *testing.T) {
	l := Standard()
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t, 33)
		b := Prior(d.kind()).For(l.Unusual(d.f))
		history := []Knot{{0, d.celsius}}
		r := Reading{rapid.Float64Range(0.2, 20).Draw(t, "hour"), rapid.Float64Range(0, 2.5).Draw(t, "read"),
			rapid.Float64Range(0.01, 0.2).Draw(t, "error")}
		v := Vessel{d.f.Hydration, d.atm}
		after, taken := l.Observe(b, d.f, v, d.start(), history, []Reading{r})
		c := l.Clock(d.f, after.Mean)
		s := c.AdvanceAlong(d.start(), history, 0, r.Hour)
		got := l.Rise(c.Gas(&s), d.celsius, v.Hydration, v.Pressure)
		wild := math.Abs(taken[0].Surprise) > 8 || taken[0].Expected > 3
		if off := math.Abs(got - taken[0].Rise); !wild && !(off <= 0.02) || math.IsNaN(off) {
			t.Fatalf("%+v of %+v: the law makes %v of it, told is %v", r, d, got, taken[0].Rise)
		}
	})

	// At 8 °C a dough is said to have risen by half again its volume within the hour.
	b, start := Prior(ByLevain), Start(0.1*l.RipeLevain(), 0)
	after, taken := l.Observe(b, plain, Vessel{0.72, 1}, start, []Knot{{0, 8}}, []Reading{{1, 1.5, 0.1}})
	if rise := taken[0].Rise; !(rise > 1 && rise < 1.5) || !(after.Mean[Pace] > 0.5) || !(taken[0].Surprise > 30) {
		t.Errorf("read 1.5 after an hour in the cold: %+v, taken %+v", after, taken[0])
	}
	// To the ends of what is let in, everything stays a number.
	for _, at := range []float64{1.0 / 3600, 0.25, 8, 720} {
		for _, rise := range []float64{-0.2, 0, 1, 3} {
			for _, off := range []float64{0.001, 0.05, 0.5} {
				for _, celsius := range []float64{0, 12, 30, 45} {
					after, taken := l.Observe(b, plain, Vessel{0.72, 1}, start, []Knot{{0, celsius}},
						[]Reading{{at, rise, off}})
					sum := taken[0].Surprise + taken[0].Rise
					for i := range after.Mean {
						sum += after.Mean[i] + after.Cov[i][i]
						if !(after.Cov[i][i] >= 0) || !(after.Cov[i][i] <= 2*b.Cov[i][i]+0.1) {
							t.Errorf("unknown %d has the variance %v, before %v", i, after.Cov[i][i], b.Cov[i][i])
						}
					}
					if math.IsNaN(sum) || math.IsInf(sum, 0) {
						t.Fatalf("%v read after %v h at %v °C ± %v: %+v", rise, at, celsius, off, after)
					}
				}
			}
		}
	}
}
