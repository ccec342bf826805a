package ferment_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/numeric"
	"example.org/maslin/internal/trial"
)

// The full square root is fastest where the slope of its logarithm is 0: 1/(T − Tmin) = c·e^x/(1 − e^x), x = c·(T −
// Tmax); its gamma is 1 there, 0 at both ends and its rate over the greatest between. The short form has no optimum.
func TestTheOptimumOfASquareRoot(t *testing.T) {
	for _, m := range []ferment.SquareRoot{{Min: 4, Max: 36, B: 0.03, C: 0.2}, {Min: -20, Max: 60, B: 1, C: 1e-4},
		{Min: 2, Max: 40, B: 0.02, C: 0.01}, {Min: 3, Max: 45, B: 0.5, C: 1}, {Min: 10, Max: 12, B: 2, C: 100},
		{Min: -25, Max: 60, B: 2, C: 100}} {
		at := m.Optimum()
		x := m.C * (at - m.Max)
		if slope := 1/(at-m.Min) + m.C*math.Exp(x)/math.Expm1(x); !(math.Abs(slope) <= 1e-8/(at-m.Min)) {
			t.Errorf("%+v: at %v °C the log of the root rises by %v a degree", m, at, slope)
		}
		c, err := m.Curve()
		if err != nil {
			t.Fatal(err)
		}
		for _, celsius := range []float64{m.Min - 1, m.Min, (m.Min + at) / 2, at, (at + m.Max) / 2, m.Max, m.Max + 1} {
			root := m.B * (celsius - m.Min) * (1 - math.Exp(m.C*(celsius-m.Max)))
			want := root * root
			if celsius <= m.Min || celsius >= m.Max {
				want = 0
			}
			if got := c.Rate(celsius); !(math.Abs(got-want) <= 1e-9*want) {
				t.Errorf("%+v: at %v °C %v/h, want %v", m, celsius, got, want)
			}
			if got, want := m.Gamma(celsius), want/c.Rate(at); !(math.Abs(got-want) <= 1e-9) || got > 1 {
				t.Errorf("%+v: gamma at %v °C is %v, want %v", m, celsius, got, want)
			}
		}
	}
	if short := (ferment.SquareRoot{Min: 4, B: 0.03}); !math.IsNaN(short.Optimum()) || !math.IsNaN(short.Gamma(20)) {
		t.Errorf("the short form has an optimum at %v", short.Optimum())
	}
}

// The cardinal form by its definition, 1 at the optimum and 0 from either end on; for pH the power is 1.
func TestTheCardinalFormIsItsFormula(t *testing.T) {
	m := ferment.Cardinal{Name: "c", Min: 3, Opt: 31, Max: 44, Rate: 0.4}
	c, err := m.Curve()
	if err != nil {
		t.Fatal(err)
	}
	for celsius, want := range map[float64]float64{-5: 0, 3: 0, 31: 1, 44: 0, 50: 0,
		// (T − 44)·(T − 3)²/(28·(28·(T − 31) + 13·(34 − 2T))), by hand
		10: -34 * 49 / (28 * (28*-21 + 13*14.0)), 24: -20 * 441 / (28 * (28*-7 + 13*-14.0)),
		40: -4 * 1369 / (28 * (28*9 + 13*-46.0))} {
		if got := m.Gamma(celsius); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("at %v °C gamma is %v, want %v", celsius, got, want)
		}
		if got := c.Rate(celsius); !(math.Abs(got-0.4*want) <= 1e-12) {
			t.Errorf("at %v °C the rate is %v, want %v", celsius, got, 0.4*want)
		}
	}
	// (pH − 8)·(pH − 4)/((pH − 4)·(pH − 8) − (pH − 6)²), the form of Rosso et al. 1995 with its optimum at 6
	for ph, want := range map[float64]float64{3.9: 0, 4: 0, 5: -3.0 / -4, 6: 1, 7.5: -0.5 * 3.5 / (-0.5*3.5 - 2.25), 8: 0,
		8.1: 0} {
		if got := ferment.CardinalGamma(ph, 4, 6, 8, 1); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("at pH %v gamma is %v, want %v", ph, got, want)
		}
	}
}

// The cardinal form names the article it comes from unless its values have a source of their own.
func TestTheSourceOfACardinalCurve(t *testing.T) {
	m := ferment.Cardinal{Name: "c", Min: 3, Opt: 31, Max: 44, Rate: 0.4}
	plain, err := m.Curve()
	if err != nil {
		t.Fatal(err)
	}
	m.Source = ferment.SaccharomycesCardinal().About().Source
	own, err := m.Curve()
	if err != nil || own.About().Source != m.Source ||
		!strings.Contains(plain.About().Source.Title, "cardinal temperatures") {
		t.Errorf("%+v and %+v, %v", plain.About().Source, own.About().Source, err)
	}
}

// What of a form is out of order is refused: at the very place where the form breaks off, and not beside it.
func TestFormsOutOfOrder(t *testing.T) {
	cardinal := func(opt float64) error {
		return trial.Err(ferment.Cardinal{Min: 2, Opt: opt, Max: 42, Rate: 1}.Curve())
	}
	root := func(high float64) error { return trial.Err(ferment.SquareRoot{Min: 4, Max: high, B: 0.1}.Curve()) }
	rule := func(high float64) error {
		return trial.Err(ferment.ConstantQ10{Q: 2, Rate: 1, Reference: 24, Low: 4, High: high}.Curve())
	}
	for _, c := range []struct {
		err  error
		want string
	}{
		{cardinal(22.01), ""}, {cardinal(41.99), ""}, {root(4.01), ""}, {rule(4.01), ""},
		{cardinal(22), "opt: out of range: got 22 °C, want above the middle of the least and the greatest, and below the " +
			"greatest"},
		{cardinal(42), "opt: out of range: got 42 °C, want above the middle of the least and the greatest, and below the " +
			"greatest"},
		{cardinal(1), "opt: out of range: got 1 °C, want above the middle of the least and the greatest, and below the " +
			"greatest"},
		{root(4), "max: out of range: got 4 °C, want above the least"},
		{rule(4), "high: out of range: got 4 °C, want above the low end"},
	} {
		got := ""
		if c.err != nil {
			got = c.err.Error()
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Error(d)
		}
	}
}

// The square roots for teaching go through the rates they are said to: those of the Gänzle yeast at 12 and 22 °C, and
// its optimum and greatest rate, with no growth from the same least temperature and from 36 °C on.
func TestTheSquareRootsForTeaching(t *testing.T) {
	same := func(what string, a, b, within float64) {
		t.Helper()
		if !(math.Abs(a-b) <= within) {
			t.Errorf("%s: %v and %v", what, a, b)
		}
	}
	yeast, cold, full := ferment.GanzleYeast(), ferment.SquareRootCold(), ferment.SquareRootFull()
	same("at 12 °C", cold.Rate(12), yeast.Rate(12), 1e-12)
	same("at 22 °C", cold.Rate(22), yeast.Rate(22), 1e-12)
	r12, r22 := math.Sqrt(yeast.Rate(12)), math.Sqrt(yeast.Rate(22))
	least := 12 - 10*r12/(r22-r12)
	for _, c := range []ferment.Curve{cold, full} {
		same(c.String()+" just below its least", c.Rate(least-1e-6), 0, 0)
		same(c.String()+" just above it", c.Rate(least+1e-3), 0, 1e-6)
		if c.Rate(least+1e-3) <= 0 {
			t.Errorf("%v does not grow from %v °C on", c, least)
		}
	}
	peak, best := yeast.Optimum()
	at, most := full.Optimum()
	same("optimum", at.Celsius(), peak.Celsius(), 2e-4)
	same("greatest rate", most, best, 1e-9)
	same("at 36 °C", full.Rate(36), 0, 0)
	if full.Rate(35.99) <= 0 {
		t.Error("the full form ends below 36 °C")
	}
}

// A dose is the integral of the rate over the time, for every curve and through every corner of it: warming, cooling,
// held, and at the ends of what a dough may have.
func TestDosesThroughEveryCorner(t *testing.T) {
	form := func(c ferment.Curve, err error) ferment.Curve {
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	curves := append(ferment.Curves(), form(ferment.SquareRoot{Name: "short", Min: 7, Max: 33, B: 0.03}.Curve()),
		form(ferment.SquareRoot{Name: "full", Min: 7, Max: 33, B: 0.03, C: 0.2}.Curve()),
		form(ferment.Cardinal{Name: "cardinal", Min: 7, Opt: 25, Max: 33, Rate: 0.5}.Curve()),
		form(ferment.ConstantQ10{Name: "steady", Q: 1, Rate: 0.3, Reference: 24, Low: 0, High: 40}.Curve()))
	peak, _ := ferment.GanzleYeast().Optimum()
	r12, r22 := math.Sqrt(ferment.GanzleYeast().Rate(12)), math.Sqrt(ferment.GanzleYeast().Rate(22))
	corners := []float64{2.8, 12 - 10*r12/(r22-r12), 7, 8, 14, peak.Celsius(), 30, 33, 36, 66 - peak.Celsius(), 41, 45.4}
	for _, c := range curves {
		for _, ends := range [][2]float64{{-25, 60}, {60, -25}, {-25, -24.75}, {60, 59.75}, {3, 50}, {45, 1}, {6.5, 7.25},
			{7.25, 6.5}, {32.5, 33.5}, {28, 28 + 2.0/9000}, {12, 12}, {-25, -25}, {60, 60}, {35.5, 45.5}} {
			h := inThreeHours(t, ends[0], ends[1])
			low, high := min(ends[0], ends[1]), max(ends[0], ends[1])
			want, from := 3*c.Rate(low), low
			if high > low {
				want = 0
				for _, to := range append(corners, high) {
					if to = min(to, high); to <= from {
						continue
					}
					v, err := numeric.Integrate(c.Rate, from, to, 1e-14)
					if err != nil && v.Bound > 1e-12 {
						t.Fatal(err)
					}
					want, from = want+v.Value*3/(high-low), to
				}
			}
			got, err := c.Dose(h, 0, 3*time.Hour)
			if err != nil || !(math.Abs(got-want) <= 2e-9*want+1e-11) {
				t.Errorf("%v from %v to %v °C: %v, want %v (%v)", c, ends[0], ends[1], got, want, err)
			}
		}
	}
}

// inThreeHours goes from one temperature to another in three hours.
func inThreeHours(t *testing.T, from, to float64) ferment.History {
	t.Helper()
	return bends(t, 0, from, 3, to)
}

// Beyond the temperatures of a dough a curve is still its formula: none of yeast in boiling water, next to none in a
// deep freezer, and nothing of no number.
func TestRatesBeyondADough(t *testing.T) {
	for key, want := range map[string]float64{"ganzle-yeast": 0.0124 * math.Pow(76, 2.981) * math.Exp(-0.3355*76),
		"ganzle-yeast-held":      0.0124 * math.Pow(76, 2.981) * math.Exp(-0.3355*76),
		"ganzle-yeast-cold-stop": 0, "saccharomyces": 0, "square-root-cold": 0, "square-root-full": 0,
		"ganzle-lactobacilli": 0.1267 * math.Pow(81, 1.5404) * math.Exp(-0.1931*81)} {
		c, ok := ferment.CurveNamed(key)
		if got := c.Rate(-40); !ok || !(math.Abs(got-want) <= 1e-12*want) {
			t.Errorf("%s at −40 °C: %v, want %v", key, got, want)
		}
		for _, hot := range []float64{60, 60.25, 100, 1e6} {
			if got := c.Rate(hot); got != 0 {
				t.Errorf("%s at %v °C: %v", key, hot, got)
			}
		}
		if about := c.About(); about.Low < -25 || about.High > 60 {
			t.Errorf("%s from %v to %v °C", key, about.Low, about.High)
		}
	}
	if _, ok := ferment.GanzleYeast().DoublingTime(quantity.Celsius(60)); ok {
		t.Error("yeast doubles at 60 °C")
	}
}
