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
)

// The spread of the gas in words is what one σ of its logarithm makes, e^σ − 1 more and 1 − e^(−σ) less, at the early
// and at the late end.
func TestSpreadsInWordsAreThoseOfTheLines(t *testing.T) {
	for _, celsius := range []float64{14, 23, 28} {
		b := good()
		b.History = ferment.Constant(quantity.Celsius(celsius))
		w := estimate(t, b).Working()
		parts := strings.Split(working.Telling{Level: working.InWords, Width: 4000}.Text(w),
			"The culture and the dough may make ")[1:]
		var said, want []float64
		for _, p := range parts {
			words := strings.Fields(p)
			for _, number := range []string{words[0], words[4]} {
				x, err := strconv.ParseFloat(number, 64)
				if err != nil {
					t.Fatal(p)
				}
				said = append(said, x)
			}
		}
		for _, l := range w.Lines(working.Reader{}) {
			if l.Symbol == "σ_early" || l.Symbol == "σ_late" {
				sigma, err := strconv.ParseFloat(strings.Fields(l.Value)[0], 64)
				if err != nil {
					t.Fatal(l.Value)
				}
				want = append(want, 100*math.Expm1(sigma), -100*math.Expm1(-sigma))
			}
		}
		if len(said) != 4 || len(want) != 4 {
			t.Fatalf("at %v °C %v %% in words, %v by the lines", celsius, said, want)
		}
		for i := range said {
			if !(math.Abs(said[i]-want[i]) <= 0.51) {
				t.Errorf("at %v °C %v %% in words, %v by the lines", celsius, said, want)
			}
		}
	}
}

// A bake is dated from 1900 to 2200, both years included.
func TestYearsOfBakes(t *testing.T) {
	for year, ok := range map[int]bool{1899: false, 1900: true, 2200: true, 2201: false} {
		log := bakeLog(t, 1)
		log[0].On = time.Date(year, 6, 1, 0, 0, 0, 0, time.UTC)
		if _, err := (ferment.Learning{Bakes: log}).Learn(); (err == nil) != ok {
			t.Errorf("%d: %v", year, err)
		}
	}
}

// A dough that must go on standing as warm as it is for all but half an hour of its time is shaped after half an hour,
// however soon that is.
func TestShapingSoonAfterMixing(t *testing.T) {
	b := good()
	b.Inoculation, b.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(1.5)}
	b.History = ferment.Constant(quantity.Celsius(28))
	likely := estimate(t, b).Ready().Likely
	p := ferment.Proof{Bulk: b, Total: b.Rise, Stages: []ferment.Piece{{Mass: quantity.Grams(900), Form: ferment.Round,
		Into: ferment.Room{Night: quantity.Celsius(28)}, Exposure: ferment.Covered,
		For: quantity.Elapsed((likely - 30*time.Minute).Round(time.Second))}}}
	got, err := p.RiseBeforeShaping()
	if err != nil || !got.Feasible {
		t.Fatalf("%v, %v", got, err)
	}
	if at := got.Shape.Ready().Likely; at < 29*time.Minute || at > 31*time.Minute {
		t.Errorf("shaped after %v, want half an hour of %v", at, likely)
	}
}

// A cardinal curve has a rate from a millionth to ten an hour.
func TestRatesOfACardinalCurve(t *testing.T) {
	for rate, ok := range map[float64]bool{1e-6: true, 0.999e-6: false, 10: true, 10.01: false} {
		_, err := ferment.Cardinal{Name: "x", Min: 2, Opt: 30, Max: 40, Rate: rate}.Curve()
		if (err == nil) != ok {
			t.Errorf("%v/h: %v", rate, err)
		}
	}
	for b, ok := range map[float64]bool{1e-6: true, 0.999e-6: false, 10: true, 10.01: false} {
		_, err := ferment.SquareRoot{Name: "x", Min: 2, Max: 40, B: b}.Curve()
		if (err == nil) != ok {
			t.Errorf("b of %v: %v", b, err)
		}
	}
}

// The named curves may be used up to where they end (those held at their optimum end 2 °C later, a judgment), the short
// square root below its optimum and the rule of the trade where doughs are (judgments); and a square root with an upper
// end says so in its formula.
func TestWhereTheNamedCurvesMayBeUsed(t *testing.T) {
	want := map[string][2]float64{"ganzle-yeast": {0, 36}, "ganzle-yeast-held": {0, 38}, "ganzle-yeast-cold-stop": {0, 38},
		"ganzle-lactobacilli": {0, 41}, "saccharomyces": {0, 45.4}, "square-root-cold": {0, 25}, "square-root-full": {0, 36},
		"trade-q10": {15, 35}}
	for _, c := range ferment.Curves() {
		a := c.About()
		if w, ok := want[a.Key]; !ok || a.Low != w[0] || a.High != w[1] {
			t.Errorf("%s from %v to %v °C, want %v", a.Key, a.Low, a.High, w)
		}
	}
	full, cold := ferment.SquareRootFull().About().Formula, ferment.SquareRootCold().About().Formula
	if !strings.Contains(full, "Tmax") || !strings.Contains(full, "exp") || strings.Contains(cold, "Tmax") {
		t.Errorf("%s and %s", full, cold)
	}
}

// The flavor of a time at which the dough has become too warm for the curve of the yeast, or froze, is not told.
func TestFlavorEndsWithItsCurve(t *testing.T) {
	for later, ok := range map[float64]bool{20: true, 36: true, 40: false, 0: true, -2: false} {
		b := good()
		var err error
		b.History, err = ferment.FromKnots(ferment.Knot{Temperature: quantity.Celsius(24)},
			ferment.Knot{At: quantity.Elapsed(30 * time.Hour), Temperature: quantity.Celsius(24)},
			ferment.Knot{At: quantity.Elapsed(31 * time.Hour), Temperature: quantity.Celsius(later)})
		if err != nil {
			t.Fatal(err)
		}
		e := estimate(t, b)
		if _, err := e.Flavor(29 * time.Hour); err != nil {
			t.Errorf("before: %v", err)
		}
		if _, err := e.Flavor(32 * time.Hour); (err == nil) != ok {
			t.Errorf("%v °C: %v", later, err)
		}
	}
}
