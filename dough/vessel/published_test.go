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
			f, err := vessel.TinFactorOf(vessel.WholesaleWhite)
			return f.Low, err
		},
		"tin box": func(in *published.Inputs) (float64, error) {
			v, err := vessel.TinBox(in.Length("length"), in.Length("width"), in.Length("height"))
			if in.Has("dough") {
				return v.Milliliters() / in.Mass("dough").Grams(), err
			}
			return v.Milliliters(), err
		},
		"lined bowl": func(in *published.Inputs) (float64, error) {
			_, m, _, err := vessel.DoughForVessel(in.Volume("volume"), vessel.LinedBowl)
			return m.Grams(), err
		},
		"basket": findBasket,
	})
}

func findBasket(in *published.Inputs) (float64, error) {
	r, err := vessel.ProofVesselFor(quantity.Grams(700), vessel.ProofBasket)
	if err != nil {
		return 0, err
	}
	d := in.Length("diameter")
	for _, b := range r.Round {
		if b.Diameter != d {
			continue
		}
		if in.Text("get") == "low" {
			return b.Low.In(quantity.Pound), nil
		}
		return b.High.In(quantity.Pound), nil
	}
	in.Fail("no basket of %v", d)
	return 0, nil
}
