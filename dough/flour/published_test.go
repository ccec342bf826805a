package flour_test

import (
	"testing"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/published"
)

func TestPublishedFigures(t *testing.T) {
	published.Check(t, "testdata/published.csv", 38, map[string]published.Finder{
		"pearson": findPearson,
		"blend protein": func(in *published.Inputs) (float64, error) {
			p, err := flour.BlendProtein([]flour.WeighedFlour{
				{FlourLot: flour.FlourLot{Protein: in.Percent("a")}, Mass: in.Mass("mass a")},
				{FlourLot: flour.FlourLot{Protein: in.Percent("b")}, Mass: in.Mass("mass b")},
			})
			return p.Points(), err
		},
		"add gluten":          findGluten(flour.AddGluten),
		"replace with gluten": findGluten(flour.ReplaceWithGluten),
		"basis":               findBasis(flour.ConvertBasis),
		"absorption":          findBasis(flour.ConvertAbsorption),
		"type": func(in *published.Inputs) (float64, error) {
			return flour.FlourType(in.Percent("ash"), in.Percent("moisture"))
		},
		"strength": findStrength,
	})
}

func findPearson(in *published.Inputs) (float64, error) {
	var total quantity.Mass
	if in.Has("total") {
		total = in.Mass("total")
	}
	r, err := flour.PearsonSquare(flour.TwoFlours{
		A: flour.FlourLot{Protein: in.Percent("a")}, B: flour.FlourLot{Protein: in.Percent("b")},
		Target: in.Percent("target"), Total: total,
	})
	if err != nil {
		in.Skip("get", "unit")
		return 0, err
	}
	switch in.Text("get") {
	case "share a":
		return r.Flours[0].Share.Points(), nil
	case "share b":
		return r.Flours[1].Share.Points(), nil
	case "mass a":
		return r.Flours[0].Mass.In(in.Unit("unit")), nil
	case "mass b":
		return r.Flours[1].Mass.In(in.Unit("unit")), nil
	}
	return 100 * r.Flours[1].Share.Points() / r.Flours[0].Share.Points(), nil // b for 100 of a
}

func findGluten(boost func(flour.GlutenBoost) (flour.GlutenResult, error)) published.Finder {
	return func(in *published.Inputs) (float64, error) {
		b := flour.GlutenBoost{Protein: in.Percent("protein"), Target: in.Percent("target")}
		if in.Has("flour") {
			b.Flour = in.Mass("flour")
			r, err := boost(b)
			return r.ExtraWater.Grams() / r.Gluten.Grams(), err
		}
		r, err := boost(b)
		return r.PerFlour.Points(), err
	}
}

func findBasis(convert func(flour.FlourBasis) (flour.FlourBasisResult, error)) published.Finder {
	return func(in *published.Inputs) (float64, error) {
		r, err := convert(flour.FlourBasis{Value: in.Percent("value"), From: in.Percent("from"), To: in.Percent("to")})
		return r.Value.Points(), err
	}
}

func findStrength(in *published.Inputs) (float64, error) {
	r, err := flour.JudgeFlour(flour.FlourStrength{Hydration: quantity.MustPercent("65 %"), W: in.Number("w")})
	if err != nil {
		return 0, err
	}
	list := in.Text("list")
	for _, o := range r.Opinions {
		if o.Source.Key == list {
			return o.High.Points(), nil
		}
	}
	in.Fail("no such list as %q", list)
	return 0, nil
}
