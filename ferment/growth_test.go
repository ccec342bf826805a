package ferment_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// A growth curve is reached between its start and its plateau, neither at the plateau nor above it; nothing lags at a
// rate of nothing.
func TestWhereGrowthCurvesEnd(t *testing.T) {
	b := ferment.Baranyi{Start: 2, Max: 9, Work: 1.5}
	for log, want := range map[float64]bool{1: true, 2: true, 8.999: true, 9: false, 10: false} {
		dose, reached, err := b.DoseTo(log)
		if err != nil || reached != want || !reached && dose != 0 || log <= 2 && dose != 0 {
			t.Errorf("ln N of %v: %v, %v, %v", log, dose, reached, err)
		}
		if back, err := b.After(dose); reached && log > 2 && (err != nil || !(math.Abs(back-log) <= 1e-9)) {
			t.Errorf("ln N of %v after the dose to %v, %v", back, log, err)
		}
	}
	for log, ok := range map[float64]bool{-1e6: true, 1e6: true, -1_000_001: false, 1_000_001: false, math.NaN(): false} {
		if _, _, err := b.DoseTo(log); (err == nil) != ok {
			t.Errorf("ln N of %v: %v", log, err)
		}
	}
	for rate, want := range map[float64]float64{0.5: 3, 0: math.NaN(), -0.5: math.NaN(), math.Inf(1): 0} {
		if got := b.LagAt(rate); got != want && !(math.IsNaN(got) && math.IsNaN(want)) {
			t.Errorf("a lag of %v at %v/h, want %v", got, rate, want)
		}
	}
	g := ferment.Gompertz{Start: 2, Rise: 7, Slope: 0.6, Lag: 4}
	for y, want := range map[float64]bool{1.9: false, 2: false, 2.001: true, 5: true, 8.999: true, 9: false, 9.1: false} {
		at, reached := g.TimeTo(y)
		if reached != want || !reached && at != 0 || reached && !(math.Abs(g.At(at)-y) <= 1e-9) {
			t.Errorf("%v after %v h, %v", y, at, reached)
		}
	}
}

// The fastest temperature of a curve is where its formula has it, at an end where it only rises or falls, and at the
// cool end of a plateau.
func TestWhereCurvesAreFastest(t *testing.T) {
	own := func(rate func(float64) float64) ferment.Curve {
		c, err := ferment.NewCurve(ferment.About{Name: "own", Low: 2, High: 42}, rate)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	for name, c := range map[string]struct {
		curve ferment.Curve
		at    float64
	}{
		"yeast":                {ferment.GanzleYeast(), 36 - 2.981/0.3355},
		"yeast held to 30 °C":  {ferment.GanzleYeastHeld(), 36 - 2.981/0.3355},
		"lactobacilli":         {ferment.GanzleLactobacilli(), 41 - 1.5404/0.1931},
		"cardinal":             {ferment.SaccharomycesCardinal(), 32.3},
		"rule of the trade":    {ferment.TradeQ10(), 35},
		"plateau":              {own(func(c float64) float64 { return math.Min(math.Max(c-10, 0), 11.3) }), 21.3},
		"plateau to its end":   {own(func(c float64) float64 { return math.Min(math.Max(c, 0), 41.99) }), 41.99},
		"the same everywhere":  {own(func(float64) float64 { return 0.3 }), 2},
		"falling":              {own(func(c float64) float64 { return 60 - c }), 2},
		"two, the later lower": {own(func(c float64) float64 { return 2 + math.Sin((c-7.5)/4) - 0.001*c }), 13.767},
	} {
		at, rate := c.curve.Optimum()
		if !(math.Abs(at.Celsius()-c.at) <= 1e-3) || !(math.Abs(rate-c.curve.Rate(c.at)) <= 1e-6*rate) {
			t.Errorf("%s: %v at %v, want %v at %v °C", name, rate, at, c.curve.Rate(c.at), c.at)
		}
	}
}

// power is ∫ x^b·e^(−c·x) dx from 0 to x, by the series of its exponential.
func power(x, b, c float64) float64 {
	sum, term := 0.0, 1.0
	for n := 0.0; n < 200; n++ {
		sum += term / (n + b + 1)
		term *= -c * x / (n + 1)
	}
	return math.Pow(x, b+1) * sum
}

// simpson is ∫ f dx by Simpson's rule in 2000 steps.
func simpson(f func(float64) float64, from, to float64) float64 {
	const n = 2000
	h := (to - from) / n
	sum := f(from) + f(to)
	for i := 1; i < n; i++ {
		sum += float64(2+2*(i%2)) * f(from+float64(i)*h)
	}
	return sum * h / 3
}

// The dose of dough that warms or cools evenly is the integral of its curve over temperature, by the series of the
// incomplete gamma function up to the very end of growth, or stretch by stretch between the corners of a curve.
func TestDosesAlongAStraightRun(t *testing.T) {
	dose := func(c ferment.Curve, from, to float64) float64 {
		got, err := c.Dose(corners(t, 0, from, 10, to), 0, 10*time.Hour)
		back, err2 := c.Dose(corners(t, 0, to, 10, from), 0, 10*time.Hour)
		if err != nil || err2 != nil || !(math.Abs(got-back) <= 1e-12*got) {
			t.Errorf("%v from %v to %v °C: %v, back %v, %v, %v", c, from, to, got, back, err, err2)
		}
		return got
	}
	for _, run := range [][2]float64{{24, 36}, {30, 41}, {33, 35.9}, {31.6, 40}, {20, 20.5}} {
		for _, c := range []struct {
			curve      ferment.Curve
			a, b, c, m float64
		}{{ferment.GanzleYeast(), 0.0124, 2.981, 0.3355, 36}, {ferment.GanzleLactobacilli(), 0.1267, 1.5404, 0.1931, 41}} {
			until := func(x float64) float64 { return power(math.Max(0, c.m-x), c.b, c.c) }
			want := 10 * c.a * (until(run[0]) - until(run[1])) / (run[1] - run[0])
			if got := dose(c.curve, run[0], run[1]); !(math.Abs(got-want) <= 1e-10*want) {
				t.Errorf("%v from %v to %v °C: %.12f, want %.12f", c.curve, run[0], run[1], got, want)
			}
		}
	}
	cardinal, err := ferment.Cardinal{Name: "mine", Min: 4, Opt: 30, Max: 40, Rate: 0.4}.Curve()
	if err != nil {
		t.Fatal(err)
	}
	root, err := ferment.SquareRoot{Name: "mine", Min: 4, Max: 40, B: 0.03, C: 0.2}.Curve()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []ferment.Curve{cardinal, root} {
		for _, run := range [][2]float64{{4, 20}, {-5, 20}, {4, 40}, {20, 40}, {30, 55}, {-10, 50}, {40, 50}, {4, 5}} {
			low, high := math.Max(4, run[0]), math.Min(40, run[1])
			want := 0.0
			if low < high {
				want = 10 * simpson(c.Rate, low, high) / (run[1] - run[0])
			}
			if got := dose(c, run[0], run[1]); !(math.Abs(got-want) <= 1e-8*want) {
				t.Errorf("%v from %v to %v °C: %v, want %v", c, run[0], run[1], got, want)
			}
		}
	}
}

// A curve that cannot be added up is refused and gives no dose.
func TestCurvesThatCannotBeAddedUp(t *testing.T) {
	wild, err := ferment.NewCurve(ferment.About{Name: "wild", Low: 2, High: 42}, func(c float64) float64 {
		return 1 + math.Sin(1e9*c*c)
	})
	if err != nil {
		t.Fatal(err)
	}
	_, err = wild.Dose(corners(t, 0, 20, 1, 30), 0, time.Hour)
	const want = "curve: out of range: got a dose of NaN, want a curve with finite rates that are not negative"
	if err == nil || err.Error() != want {
		t.Errorf("%v, want %v", err, want)
	}
}

// What a place does to a piece of dough is its surface coefficient, W/(m² K): those of the places, 2 more on metal, and
// three quarters of it close among others.
func TestPlacesByTheirSurfaceCoefficients(t *testing.T) {
	cool := func(change func(*ferment.Piece)) []ferment.Knot {
		p := ferment.Piece{Mass: quantity.Grams(800), Form: ferment.Round, Start: quantity.Celsius(25),
			Into: ferment.Room{Night: quantity.Celsius(4)}, For: quantity.Elapsed(8 * time.Hour)}
		change(&p)
		h, err := p.History()
		if err != nil {
			t.Fatal(err)
		}
		return h.Knots()
	}
	same := func(name string, a, b []ferment.Knot) {
		if len(a) != len(b) {
			t.Errorf("%s: %d and %d corners", name, len(a), len(b))
			return
		}
		for i := range a {
			if d := a[i].Temperature.Celsius() - b[i].Temperature.Celsius(); a[i].At != b[i].At || !(math.Abs(d) <= 1e-6) {
				t.Errorf("%s: %v and %v", name, a[i], b[i])
				return
			}
		}
	}
	for place, h := range map[ferment.Exposure]float64{ferment.Covered: 5, ferment.Open: 9, ferment.Refrigerator: 8,
		ferment.Fan: 20, ferment.RefrigeratorBasket: 5, ferment.RefrigeratorBag: 4, ferment.RefrigeratorTub: 5} {
		by := func(h float64) []ferment.Knot { return cool(func(p *ferment.Piece) { p.Surface = h }) }
		same(place.String(), cool(func(p *ferment.Piece) { p.Exposure = place }), by(h))
		same(place.String()+" on metal", cool(func(p *ferment.Piece) { p.Exposure, p.Metallic = place, true }), by(h+2))
		same(place.String()+" in a crowd", cool(func(p *ferment.Piece) { p.Exposure, p.Crowded = place, true }), by(0.75*h))
	}
}

// Forms and places are written and read by their words, and no others.
func TestWordsOfFormsAndPlaces(t *testing.T) {
	for f, want := range map[ferment.Form]string{ferment.Round: "round", ferment.Log: "log", ferment.SlabOfDough: "slab",
		ferment.Tub: "tub"} {
		text, err := f.MarshalText()
		back := ferment.Form(-1)
		err2 := back.UnmarshalText([]byte(want))
		if string(text) != want || f.String() != want || back != f || err != nil || err2 != nil {
			t.Errorf("%s, %v, %v, %v; want %s", text, back, err, err2, want)
		}
	}
	for e, want := range map[ferment.Exposure]string{ferment.Covered: "covered", ferment.Open: "open",
		ferment.Refrigerator: "in a refrigerator", ferment.Fan: "in moving air",
		ferment.RefrigeratorBasket: "in a basket in a refrigerator", ferment.RefrigeratorBag: "in a bagged basket in a " +
			"refrigerator", ferment.RefrigeratorTub: "in a closed tub in a refrigerator"} {
		text, err := e.MarshalText()
		back := ferment.Exposure(-1)
		err2 := back.UnmarshalText([]byte(want))
		if string(text) != want || e.String() != want || back != e || err != nil || err2 != nil {
			t.Errorf("%s, %v, %v, %v; want %s", text, back, err, err2, want)
		}
	}
	var f ferment.Form
	var e ferment.Exposure
	if f.UnmarshalText([]byte("cube")) == nil || e.UnmarshalText([]byte("outside")) == nil {
		t.Errorf("a cube is %v, outside is %v", f, e)
	}
}
