package food_test

import (
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/handcheck"
	"example.org/maslin/internal/published"
)

func TestPublishedFigures(t *testing.T) {
	published.Check(t, "testdata/published.csv", 130, map[string]published.Finder{
		"food":      findFood,
		"effective": findWater, "water share": findWater,
		"milk for water": func(in *published.Inputs) (float64, error) {
			m, err := fromTable(in, in.Text("ndb")).InPlaceOfWater(in.Mass("water"))
			return m.Grams(), err
		},
		"milk by content": func(in *published.Inputs) (float64, error) {
			m, err := food.Food{Water: in.Percent("content")}.InPlaceOfWater(in.Mass("water"))
			return m.In(in.Unit("unit")), err
		},
		"volume":             findVolume,
		"density of measure": findDensity,
		"yeast":              findYeast,
		"typed":              findTyped,
		"chill":              findChill,
	})
}

func TestMisprints(t *testing.T) {
	published.Misprints(t, "testdata/misprints.csv", true, func(line string) (float64, error) {
		_, v, err := handcheck.Evaluate(line)
		return v, err
	})
}

func fromTable(in *published.Inputs, ndb string) food.Food {
	f, ok := food.Find(ndb)
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
	var water quantity.Mass
	for i, ndb := range names {
		m, err := quantity.ParseMass(values[i])
		if err != nil {
			in.Fail("%v", err)
		}
		water = water.Add(fromTable(in, ndb).Water.Of(m))
	}
	if in.Has("plus") {
		water = water.Add(in.Mass("plus"))
	}
	if in.Text("find") == "effective" {
		return water.PercentOf(in.Mass("flour")).Points(), nil
	}
	return water.Grams(), nil
}

func findVolume(in *published.Inputs) (float64, error) {
	v := food.FoodVolume{Food: in.Text("of"), Volume: in.Volume("volume")}
	if in.Has("method") {
		in.Word("method", &v.Method)
	}
	r, err := v.Weight()
	return r.Mass.Likely.Grams(), err
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
	r, err := swap.Convert()
	if err != nil {
		return 0, err
	}
	if !in.Has("get") {
		return r.To[0].Mass.Grams(), nil
	}
	if in.Text("get") == "low" {
		return r.To[0].Published.Low.Grams(), nil
	}
	return r.To[0].Published.High.Grams(), nil
}

// findTyped is the likely weight, or another of the range, of an amount as people type it.
func findTyped(in *published.Inputs) (float64, error) {
	v, err := food.ReadVolume(in.Text("text"))
	if err != nil {
		return 0, err
	}
	if in.Text("get") == "mL" {
		return v.Volume.Milliliters(), nil
	}
	r, err := v.Weight()
	switch in.Text("get") {
	case "low":
		return r.Mass.Low.Grams(), err
	case "high":
		return r.Mass.High.Grams(), err
	}
	return r.Mass.Likely.Grams(), err
}

// findChill is the hour of the day, or the hours from then on, by which a limit falls.
func findChill(in *published.Inputs) (float64, error) {
	var kind food.ChilledKind
	in.Word("kind", &kind)
	made, err := time.Parse("2006-01-02 15:04", in.Text("made"))
	if err != nil {
		return 0, err
	}
	plan, err := food.ChilledFood{Kind: kind, Made: made}.Limits()
	if err != nil {
		return 0, err
	}
	for _, l := range plan.Limits {
		if in.Text("to") == "away" && l.To.IsZero() || in.Has("celsius") && l.To == quantity.Celsius(in.Number("celsius")) {
			in.Skip("celsius")
			return l.By.Sub(made.Truncate(24 * time.Hour)).Hours(), nil
		}
	}
	in.Fail("no such limit")
	return 0, nil
}
