package food_test

import (
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
)

// A table of one's own: 3 g of seeds in a teaspoon are 6 g in two, within 15 % where nobody says how it was filled.
func TestMeasuresOfOnesOwn(t *testing.T) {
	spoon := quantity.MustVolume("1 tsp")
	seeds := food.FoodMeasure{Food: "seeds", Per: spoon, Mass: quantity.Grams(3)}
	oats := food.FoodMeasure{Food: "oats", Per: spoon, Mass: quantity.Grams(2), Method: food.Spooned}
	in := food.FoodVolume{Food: "Seeds", Volume: spoon.Times(2), Method: food.Scooped,
		Measures: []food.FoodMeasure{seeds, oats}}
	r, err := in.Weight()
	if err != nil {
		t.Fatal(err)
	}
	want := quantity.Range[quantity.Mass]{Low: quantity.Grams(5.1), Likely: quantity.Grams(6), High: quantity.Grams(6.9)}
	if r.Mass != want {
		t.Errorf("%v, want %v", r.Mass, want)
	}
	trial.Holds(t, r.Report().Text(report.Options{Width: 80}), "1 teaspoon of seeds",
		"the source does not say how its cup")
	in.Food = "oats"
	if _, err := in.Weight(); trial.Refused(err) != "method out of range" {
		t.Errorf("oats by a method that nobody weighed: %v", err)
	}
	in.Measures[1].Food, in.Measures[1].Per = "", quantity.Milliliters(0.09)
	if _, err := in.Weight(); trial.Refused(err) !=
		"measures[1].food required; measures[1].per out of range; food out of range" {
		t.Errorf("%s", trial.Refused(err))
	}
	light := food.FoodMeasure{Food: "air", Per: quantity.Liters(10), Mass: quantity.Grams(0.001), Method: food.Leveled}
	in = food.FoodVolume{Food: "air", Volume: quantity.Milliliters(0.001), Measures: []food.FoodMeasure{light}}
	if _, err := in.Weight(); trial.Refused(err) != "volume out of range" {
		t.Errorf("what weighs nothing: %v", err)
	}
}

// A table of two forms has one other form to each; of one form it has none.
func TestTablesOfYeastWithoutAForm(t *testing.T) {
	in := food.YeastSwap{Mass: quantity.Grams(30), From: dough.KindFreshYeast,
		Table: food.YeastTable{Fresh: quantity.Grams(3), Instant: quantity.Grams(1)}}
	r, err := in.Convert()
	if err != nil || len(r.To) != 1 || r.To[0].Kind != dough.KindInstantYeast || r.To[0].Mass != quantity.Grams(10) {
		t.Fatal(r, err)
	}
	if want := "10 g of instant yeast in place of 30 g of fresh yeast"; r.String() != want {
		t.Errorf("%q, want %q", r, want)
	}
	in.Table.Instant = quantity.Mass{}
	if _, err := in.Convert(); trial.Refused(err) != "table inconsistent" {
		t.Errorf("a table of one form: %v", err)
	}
}
