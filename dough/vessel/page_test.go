package vessel_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/internal/trial"
)

// A liter of dough on a floor of 100 cm² stands 10 cm high, so that half as much again passes a rim at 14 cm.
func TestPageOfMarks(t *testing.T) {
	cm := quantity.Centimeters
	r, err := vessel.RiseContainer{Width: cm(10), Depth: cm(10), Height: cm(14), Dough: quantity.Grams(1120)}.Marks()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, r.Report().Text(report.Options{Width: 100}), "From the floor: start at 10.0 cm, +100 % at 20.0 cm",
		"start 10.0 cm 30 % 13.0 cm 50 % 15.0 cm above the rim 75 % 17.5 cm above the rim",
		"the start is reckoned from the weight, within about 7 %")
}

// Backwards through the factors of the published tables: 216 g at 5.4 g/cm of baguette (4.8 to 6.0), and 1080 g at
// 0.9 g/cm² of focaccia (0.8 to 1.0).
func TestHeadlinesOfSizes(t *testing.T) {
	g, cm := quantity.Grams, quantity.Centimeters
	own, err := vessel.OwnTin{Volume: quantity.Milliliters(1440), Dough: g(450)}.Factor()
	if err != nil {
		t.Fatal(err)
	}
	for want, ask := range map[string]func() (fmt.Stringer, error){
		"216 g of dough makes a baguette about 40.0 cm long (36.0 cm to 45.0 cm)": func() (fmt.Stringer, error) {
			return vessel.SizedPiece{Bread: vessel.Baguette, Mass: g(216)}.Size()
		},
		"1080 g of dough fills a tall focaccia 30.0 cm wide and about 40.0 cm long (36.0 cm to 45.0 cm)": func() (
			fmt.Stringer, error) {
			return vessel.SizedPiece{Bread: vessel.TallFocaccia, Width: cm(30), Mass: g(1080)}.Size()
		},
		"1000 g of dough takes 800 mL as it leaves the mixer": func() (fmt.Stringer, error) {
			return vessel.MixedDough{Mass: g(1000), Density: 1.25}.Volume()
		},
		"A tin of 2880 mL for 900 g of dough": func() (fmt.Stringer, error) { return own.Tin(g(900)) },
	} {
		if got, err := ask(); err != nil || got.String() != want {
			t.Errorf("%q (%v), want %q", got, err, want)
		}
	}
}
