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

// The spread of the gas in words is what one σ of its logarithm makes, e^σ − 1, at the early and at the late end.
func TestSpreadsInWordsAreThoseOfTheLines(t *testing.T) {
	for _, celsius := range []float64{14, 23, 28} {
		b := good()
		b.History = ferment.Constant(quantity.Celsius(celsius))
		w := estimate(t, b).Working()
		parts := strings.Split(working.Telling{Level: working.InWords, Width: 4000}.Text(w),
			"The culture and the dough may make ")[1:]
		var said, want []float64
		for _, p := range parts {
			x, err := strconv.ParseFloat(strings.Fields(p)[0], 64)
			if err != nil {
				t.Fatal(p)
			}
			said = append(said, x)
		}
		for _, l := range w.Lines(working.Reader{}) {
			if l.Symbol == "σ_early" || l.Symbol == "σ_late" {
				sigma, err := strconv.ParseFloat(strings.Fields(l.Value)[0], 64)
				if err != nil {
					t.Fatal(l.Value)
				}
				want = append(want, 100*math.Expm1(sigma))
			}
		}
		if len(said) != 2 || len(want) != 2 || math.Abs(said[0]-want[0]) > 0.51 || math.Abs(said[1]-want[1]) > 0.51 {
			t.Errorf("at %v °C %v %% in words, %v by the lines", celsius, said, want)
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
