package food_test

import (
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/published"
	"example.org/maslin/internal/workcheck"
)

func TestPublishedFigures(t *testing.T) {
	published.Check(t, "testdata/published.csv", 140, map[string]published.Finder{
		"food":      findFood,
		"effective": findWater, "water share": findWater,
		"milk for water": func(in *published.Inputs) (float64, error) {
			m, err := food.InPlaceOfWater(in.Mass("water"), fromTable(in, in.Text("ndb")).Water)
			return m.Grams(), err
		},
		"milk by content": func(in *published.Inputs) (float64, error) {
			m, err := food.InPlaceOfWater(in.Mass("water"), in.Percent("content"))
			return m.In(in.Unit("unit")), err
		},
		"volume":             findVolume,
		"density of measure": findDensity,
		"water mass": func(in *published.Inputs) (float64, error) {
			m, err := food.WaterMass(in.Volume("volume"), in.Temperature("at"))
			return m.Grams(), err
		},
		"yeast": findYeast,
	})
}

func TestMisprints(t *testing.T) {
	published.Misprints(t, "testdata/misprints.csv", true, func(line string) (float64, error) {
		_, v, err := workcheck.Evaluate(line)
		return v, err
	})
}

func fromTable(in *published.Inputs, ndb string) food.Food {
	f, ok := food.SR28().Find(ndb)
	if !ok {
		in.Fail("%s is not in the table", ndb)
	}
	return f
}

func findFood(in *published.Inputs) (float64, error) {
	f := fromTable(in, in.Text("ndb"))
	switch in.Text("get") {
	case "protein":
		return f.Protein.Points(), nil
	case "ash":
		return f.Ash.Points(), nil
	}
	return f.Water.Points(), nil
}

// findWater is the water that foods bring, in grams or of the flour.
func findWater(in *published.Inputs) (float64, error) {
	names, values := in.List("foods")
	var amounts []food.FoodAmount
	for i, ndb := range names {
		m, err := quantity.ParseMass(values[i])
		if err != nil {
			in.Fail("%v", err)
		}
		amounts = append(amounts, food.FoodAmount{Food: fromTable(in, ndb), Mass: m})
	}
	water, err := food.WaterIn(amounts)
	if in.Has("plus") {
		water = water.Add(in.Mass("plus"))
	}
	if in.Text("find") == "effective" {
		return water.PercentOf(in.Mass("flour")).Points(), err
	}
	return water.Grams(), err
}

func findVolume(in *published.Inputs) (float64, error) {
	v := food.FoodVolume{Food: in.Text("of"), Volume: in.Volume("volume")}
	if in.Has("method") {
		in.Word("method", &v.Method)
	}
	r, err := food.MassOfVolume(v)
	return r.Likely.Grams(), err
}

func findDensity(in *published.Inputs) (float64, error) {
	of := in.Text("of")
	for _, m := range food.FoodMeasures() {
		if m.Food == of && m.Source.Key == "SR28 weights" {
			return m.Mass.Grams() / m.Per.Milliliters(), nil
		}
	}
	in.Fail("no measure of %s", of)
	return 0, nil
}

func findYeast(in *published.Inputs) (float64, error) {
	var from, to dough.Kind
	in.Word("from", &from)
	in.Word("to", &to)
	swap := food.YeastSwap{Mass: in.Mass("mass"), From: from, To: to}
	if in.Has("table") {
		for _, table := range food.PublishedYeast() {
			if table.Name == in.Text("table") {
				swap.Table = table
			}
		}
	}
	r, err := food.ConvertYeast(swap)
	if !in.Has("get") {
		return r.Mass.Grams(), err
	}
	if in.Text("get") == "low" {
		return r.Low.Grams(), err
	}
	return r.High.Grams(), err
}
