package vessel_test

import (
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/internal/published"
)

func TestPublishedFigures(t *testing.T) {
	published.Check(t, "testdata/published.csv", 16, map[string]published.Finder{
		"tin factor": func(*published.Inputs) (float64, error) {
			f, err := vessel.WholesaleWhite.Factor()
			return f.Low, err
		},
		"tin box": func(in *published.Inputs) (float64, error) {
			v, err := vessel.TinBox{
				Length: in.Length("length"),
				Width:  in.Length("width"),
				Height: in.Length("height"),
			}.Volume()
			if in.Has("dough") {
				return v.Milliliters() / in.Mass("dough").Grams(), err
			}
			return v.Milliliters(), err
		},
		"lined bowl": func(in *published.Inputs) (float64, error) {
			r, err := vessel.Proofing{Volume: in.Volume("volume"), Vessel: vessel.LinedBowl}.Fill()
			return r.Dough.Likely.Grams(), err
		},
		"basket": findBasket,
		"own tin": func(in *published.Inputs) (float64, error) {
			f, err := vessel.OwnTin{Volume: in.Volume("volume"), Dough: in.Mass("dough")}.Factor()
			return f.Likely, err
		},
		"fill": func(in *published.Inputs) (float64, error) {
			f := in.Number("factor")
			r, err := vessel.TinFactor{Low: f, Likely: f, High: f}.Fill(in.Volume("volume"))
			return r.Dough.Likely.Grams(), err
		},
	})
}

func findBasket(in *published.Inputs) (float64, error) {
	r, err := vessel.Proofing{Dough: quantity.Grams(700)}.Size()
	if err != nil {
		return 0, err
	}
	d := in.Length("diameter")
	for _, b := range r.Round {
		if b.Diameter != d {
			continue
		}
		if in.Text("get") == "low" {
			return b.Dough.Low.In(quantity.Pound), nil
		}
		return b.Dough.High.In(quantity.Pound), nil
	}
	in.Fail("no basket of %v", d)
	return 0, nil
}
