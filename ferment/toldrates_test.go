package ferment_test

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/gasbalance"
)

// What a working prints of a rate is the rate that the law reckons with, at every temperature: of gas, of both yeasts
// of a levain, and of their mixture.
func TestRatesAreToldAsTheyAreUsed(t *testing.T) {
	law := gasbalance.Standard()
	met := map[string]bool{}
	for _, celsius := range []float64{3, 8, 14, 19, 24, 27, 31, 34} {
		levain, yeast := good(), good()
		yeast.Inoculation, yeast.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(1)}
		for _, b := range []ferment.Bulk{levain, yeast} {
			b.History = ferment.Constant(quantity.Celsius(celsius))
			b.Extrapolate = true
			want := map[string]float64{
				"r": law.GasCurve.Rate(celsius), "g_y": law.YeastCurve.Rate(celsius), "g_h": law.HumilisCurve.Rate(celsius),
				"g": law.LevainGrowth(celsius),
			}
			for _, l := range estimate(t, b).Working().Lines(working.Reader{}) {
				w, ok := want[l.Symbol]
				if !ok {
					continue
				}
				got, err := strconv.ParseFloat(strings.Fields(l.Value)[0], 64)
				if err != nil || !(math.Abs(got-w) <= 1e-4*w+1e-6) { // it is printed with five digits
					t.Errorf("at %v °C %s is told as %s, and reckoned with %.6g", celsius, l.Symbol, l.Value, w)
				}
				met[l.Symbol] = true
			}
		}
	}
	if len(met) != 4 {
		t.Errorf("only %v were told", met)
	}
}

// Of a dough whose warmth goes along a history all three times are derived, and none twice.
func TestEveryTimeIsDerived(t *testing.T) {
	b := good()
	var err error
	if b.History, err = (ferment.Relaxing{Start: quantity.Celsius(27), Room: ferment.Room{
		Night: quantity.Celsius(20)}}).History(); err != nil {
		t.Fatal(err)
	}
	named := map[string]int{}
	for _, l := range estimate(t, b).Working().Lines(working.Reader{}) {
		named[l.Name]++
	}
	for _, name := range []string{"early time", "likely time", "late time"} {
		if named[name] == 0 {
			t.Errorf("no %s in %v", name, named)
		}
	}
}

// The curve that stops in the cold is the one held at its optimum from 14 °C on, and a straight line from 8 °C to
// there; both come down 2.9 °C later than the plain one, which has its optimum at 27.1 °C.
func TestCurvesOfOneYeast(t *testing.T) {
	plain, held, cold := ferment.GanzleYeast(), ferment.GanzleYeastHeld(), ferment.GanzleYeastColdStop()
	same := func(what string, at, a, b float64) {
		t.Helper()
		if !(math.Abs(a-b) <= 5e-6) { // an optimum is told to a nine-thousandth of a degree
			t.Errorf("%s at %v °C: %v and %v", what, at, a, b)
		}
	}
	peak, _ := plain.Optimum()
	lag := 30 - peak.Celsius()
	for x := 14.25; x < 38; x += 0.5 {
		same("stopping in the cold", x, cold.Rate(x), held.Rate(x))
		switch {
		case x < 27:
			same("before the optimum", x, held.Rate(x), plain.Rate(x))
		case x > 30.25:
			same("beyond the plateau", x, held.Rate(x), plain.Rate(x-lag))
		}
	}
	for x := 8.0; x < 14; x += 0.5 {
		same("the line in the cold", x, cold.Rate(x), (x-8)/6*plain.Rate(14))
	}
	same("no growth", 7.5, cold.Rate(7.5), 0)
}

// At one temperature a dose is rate times hours, so that of two steady curves the one that is twice as fast needs half
// the time.
func TestDosesOfSteadyCurves(t *testing.T) {
	curve := func(rate float64) ferment.Curve {
		c, err := ferment.ConstantQ10{Name: "steady", Q: 1, Rate: rate, Reference: 24, Low: 0, High: 40}.Curve()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	likely := func(rate float64) float64 {
		b := good()
		b.History = ferment.Constant(quantity.Celsius(24))
		r, err := ferment.DoseLaw{Levain: curve(rate)}.Ready(b)
		if err != nil {
			t.Fatal(err)
		}
		return r.Likely.Hours()
	}
	if a, b := likely(0.2), likely(0.4); !(math.Abs(a/b-2) <= 1e-3) {
		t.Errorf("%v h at 0.2/h and %v h at 0.4/h", a, b)
	}
}

// A curve of a rule has a rate from a millionth to ten an hour.
func TestRatesOfARule(t *testing.T) {
	for rate, ok := range map[float64]bool{1e-6: true, 0.999e-6: false, 10: true, 10.01: false} {
		_, err := ferment.ConstantQ10{Name: "x", Q: 2, Rate: rate, Reference: 24, Low: 0, High: 40}.Curve()
		if (err == nil) != ok {
			t.Errorf("%v/h: %v", rate, err)
		}
	}
}

// A slab is 6 cm thick and a log 30 cm long unless it is said otherwise.
func TestSizesThatAreNotSaid(t *testing.T) {
	for _, c := range []struct {
		form  ferment.Form
		usual quantity.Length
	}{{ferment.SlabOfDough, quantity.Centimeters(6)}, {ferment.Log, quantity.Centimeters(30)}} {
		p := ferment.Piece{Mass: quantity.Grams(900), Form: c.form, Start: quantity.Celsius(25),
			Into: ferment.Room{Night: quantity.Celsius(4)}, Exposure: ferment.Refrigerator,
			For: quantity.Elapsed(6 * time.Hour)}
		at := func(p ferment.Piece) float64 {
			h, err := p.History()
			if err != nil {
				t.Fatal(err)
			}
			return h.At(2 * time.Hour).Celsius()
		}
		left := at(p)
		p.Height = c.usual
		if said := at(p); left != said {
			t.Errorf("%v: %v °C and %v °C", c.form, left, said)
		}
	}
}
