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
			a, b := in.Mass("mass a"), in.Mass("mass b")
			p, err := flour.FlourBlend{Flours: []flour.FlourLot{
				{
					Protein: in.Percent("a"),
					Share:   a.PercentOf(a.Add(b)),
				}, {Protein: in.Percent("b"), Share: b.PercentOf(a.Add(b))},
			}}.Protein()
			return p.Points(), err
		},
		"add gluten":          findGluten(func(r flour.GlutenDoses) flour.GlutenDose { return r.Added }),
		"replace with gluten": findGluten(func(r flour.GlutenDoses) flour.GlutenDose { return r.InPlace }),
		"basis":               findBasis(flour.FlourBasis.Protein),
		"absorption":          findBasis(flour.FlourBasis.Absorption),
		"type": func(in *published.Inputs) (float64, error) {
			return flour.FlourAsh{Ash: in.Percent("ash"), Moisture: in.Percent("moisture")}.Type()
		},
		"strength": findStrength,
	})
}

func findPearson(in *published.Inputs) (float64, error) {
	var total quantity.Mass
	if in.Has("total") {
		total = in.Mass("total")
	}
	r, err := flour.FlourBlend{
		Flours: []flour.FlourLot{{Protein: in.Percent("a")},
			{Protein: in.Percent("b")}}, Target: in.Percent("target"), Total: total,
	}.Shares()
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

func findGluten(way func(flour.GlutenDoses) flour.GlutenDose) published.Finder {
	return func(in *published.Inputs) (float64, error) {
		b := flour.GlutenBoost{Protein: in.Percent("protein"), Target: in.Percent("target")}
		if in.Has("flour") {
			b.Flour = in.Mass("flour")
			r, err := b.Doses()
			return way(r).ExtraWater.Grams() / way(r).Gluten.Grams(), err
		}
		r, err := b.Doses()
		return way(r).Percent.Points(), err
	}
}

func findBasis(convert func(flour.FlourBasis) (flour.OnBasis, error)) published.Finder {
	return func(in *published.Inputs) (float64, error) {
		r, err := convert(flour.FlourBasis{Value: in.Percent("value"), From: in.Percent("from"), To: in.Percent("to")})
		return r.Value.Points(), err
	}
}

func findStrength(in *published.Inputs) (float64, error) {
	r, err := flour.FlourStrength{Hydration: quantity.MustPercent("65 %"), W: in.Number("w")}.Judge()
	if err != nil {
		return 0, err
	}
	list := in.Text("list")
	for _, o := range r.Opinions {
		if o.Source.Key == list {
			return o.Used.High.Points(), nil
		}
	}
	in.Fail("no such list as %q", list)
	return 0, nil
}
