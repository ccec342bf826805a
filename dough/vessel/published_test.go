package vessel_test

import (
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/internal/published"
)

func TestPublishedFigures(t *testing.T) {
	published.Check(t, "testdata/published.csv", 80, map[string]published.Finder{
		"tin factor": func(*published.Inputs) (float64, error) {
			f, err := vessel.WholesaleWhite.Factor()
			return f.Low, err
		},
		"tin box": func(in *published.Inputs) (float64, error) {
			v, err := vessel.TinBox{
				Length: in.Length("length"),
				Width:  in.Length("width"),
				Height: in.Length("height"),

				BaseLength: ifGiven(in, "base_length"), BaseWidth: ifGiven(in, "base_width"),
			}.Volume()
			if in.Has("dough") {
				return v.Milliliters() / in.Mass("dough").Grams(), err
			}
			return v.Milliliters(), err
		},
		"lined bowl": func(in *published.Inputs) (float64, error) {
			r, err := vessel.Proofing{Volume: in.Volume("volume"), Vessel: vessel.LinedBowl}.Fill()
			return one(in, r.Dough).Grams(), err
		},
		"basket": findBasket,
		"sized dough": func(in *published.Inputs) (float64, error) {
			r, err := sized(in).Dough()
			return one(in, r.Dough).Grams(), err
		},
		"sized dough holds": func(in *published.Inputs) (float64, error) {
			r, err := sized(in).Dough()
			return holds(r.Dough, in.Mass("dough")), err
		},
		"sized size": func(in *published.Inputs) (float64, error) {
			r, err := sized(in).Size()
			return r.Across.Likely.Centimeters(), err
		},
		"sheet thickness": func(in *published.Inputs) (float64, error) {
			r, err := sized(in).Dough()
			return 10 * r.Thickness.Likely.Centimeters(), err
		},
		"hollow": func(in *published.Inputs) (float64, error) {
			r, err := basket(in).Fill()
			return r.Volume.Milliliters(), err
		},
		"basket dough": func(in *published.Inputs) (float64, error) {
			r, err := basket(in).Fill()
			return r.Dough.Likely.Grams() / 1000, err
		},
		"basket holds": func(in *published.Inputs) (float64, error) {
			r, err := basket(in).Fill()
			return holds(r.Dough, in.Mass("dough")), err
		},
		"bowl over basket": func(in *published.Inputs) (float64, error) {
			basket, err := vessel.Proofing{Dough: in.Mass("dough")}.Size()
			if err != nil {
				return 0, err
			}
			bowl, err := vessel.Proofing{Dough: in.Mass("dough"), Vessel: vessel.LinedBowl}.Size()
			return bowl.Volume.Likely.Liters() / basket.Volume.Likely.Liters(), err
		},
		"box holds": func(in *published.Inputs) (float64, error) {
			box := vessel.TinBox{
				Length: in.Length("length"), Width: in.Length("width"), Height: in.Length("height"),
				BaseLength: ifGiven(in, "base_length"), BaseWidth: ifGiven(in, "base_width"),
			}
			r, err := box.Fill(loaf(in))
			return holds(r.Dough, in.Mass("dough")), err
		},
		"tin dough": func(in *published.Inputs) (float64, error) {
			f, err := loaf(in).Factor()
			if err != nil {
				return 0, err
			}
			r, err := f.Fill(in.Volume("volume"))
			return one(in, r.Dough).Grams(), err
		},
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

func ifGiven(in *published.Inputs, key string) quantity.Length {
	if in.Has(key) {
		return in.Length(key)
	}
	return quantity.Length{}
}

func sized(in *published.Inputs) vessel.SizedPiece {
	p := vessel.SizedPiece{Length: ifGiven(in, "length"), Width: ifGiven(in, "width"), Diameter: ifGiven(in, "diameter")}
	in.Word("bread", &p.Bread)
	if in.Has("mass") {
		p.Mass = in.Mass("mass")
	}
	return p
}

func basket(in *published.Inputs) vessel.Proofing {
	return vessel.Proofing{Diameter: in.Length("diameter"), Depth: in.Length("depth")}
}

func loaf(in *published.Inputs) (t vessel.TinLoaf) {
	in.Word("loaf", &t)
	return t
}

// one of the three of a range.
func one(in *published.Inputs, r quantity.Range[quantity.Mass]) quantity.Mass {
	switch in.Text("get") {
	case "low":
		return r.Low
	case "high":
		return r.High
	}
	return r.Likely
}

// holds is 1 when the mass lies in the range as it is printed, to a gram.
func holds(r quantity.Range[quantity.Mass], m quantity.Mass) float64 {
	if m.Grams() >= math.Floor(r.Low.Grams()) && m.Grams() <= math.Ceil(r.High.Grams()) {
		return 1
	}
	return 0
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
