package food_test

import (
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

func TestHostileFood(t *testing.T) {
	nan := quantity.NewPercent(math.NaN())
	huge := strings.Repeat("x", 1<<20)
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"yeast, zero":       {trial.Err(food.ConvertYeast(food.YeastSwap{})), "From required; To required"},
		"yeast":             {trial.Err(food.ConvertYeast(food.YeastSwap{Mass: quantity.Grams(math.NaN()), From: dough.KindSalt, To: 99, Table: food.YeastTable{Fresh: quantity.Grams(-2)}})), "Mass out of range; From out of range; To out of range; Table.Fresh out of range"},
		"yeast, no such":    {trial.Err(food.ConvertYeast(food.YeastSwap{Mass: quantity.Grams(1), From: dough.KindFreshYeast, To: dough.KindInstantYeast, Table: food.YeastTable{Name: "half", Fresh: quantity.Grams(2), ActiveDry: quantity.Grams(1)}})), "Table inconsistent"},
		"yeast, absurd":     {trial.Err(food.ConvertYeast(food.YeastSwap{Mass: quantity.Kilograms(1e5), From: dough.KindFreshYeast, To: dough.KindInstantYeast, Table: food.YeastTable{Fresh: quantity.Micrograms(1), Instant: quantity.Kilograms(1)}})), "Table out of range"},
		"foods":             {trial.Err(food.NewFoodTable([]food.Food{{}, {Name: huge}, {Name: "a", Code: huge}, {Name: "b", Water: nan}, {Name: "B", Water: quantity.MustPercent("90 %"), Protein: quantity.MustPercent("20 %")}})), "foods[0].Name required; foods[1].Name out of range; foods[2].Code out of range; foods[3].Water out of range; foods[4] inconsistent; foods[4] inconsistent"},
		"foods, many":       {trial.Err(food.NewFoodTable(make([]food.Food, 10_001))), "foods out of range"},
		"water in":          {trial.Err(food.WaterIn([]food.FoodAmount{{Mass: quantity.Grams(-1), Food: food.Food{Water: nan}}})), "amounts[0].Mass out of range; amounts[0].Food.Water out of range"},
		"water in, many":    {trial.Err(food.WaterIn(make([]food.FoodAmount, 201))), "amounts out of range"},
		"volume, zero":      {trial.Err(food.MassOfVolume(food.FoodVolume{})), "Volume out of range; Food required"},
		"volume, unknown":   {trial.Err(food.MassOfVolume(food.FoodVolume{Food: huge, Volume: quantity.Liters(1), Method: 77})), "Method out of range; Food out of range"},
		"volume, no method": {trial.Err(food.MassOfVolume(food.FoodVolume{Food: "bread flour", Volume: quantity.Liters(1)})), "Method required"},
		"volume, leveled":   {trial.Err(food.MassOfVolume(food.FoodVolume{Food: "bread flour", Volume: quantity.Liters(1), Method: food.Leveled})), "Method out of range"},
		"volume, own list":  {trial.Err(food.MassOfVolume(food.FoodVolume{Food: "x", Volume: quantity.Liters(1), Method: food.Sifted, Measures: []food.FoodMeasure{{Food: "x", Method: 9}}})), "Measures[0].Method out of range; Measures[0].Per out of range; Measures[0].Mass out of range"},
		"water mass":        {trial.Err(food.WaterMass(quantity.Liters(math.NaN()), quantity.Temperature{})), "v out of range; t required"},
	} {
		if got := trial.Refused(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
		if c.err != nil && len(c.err.Error()) > 4000 {
			t.Errorf("%s: an error of %d bytes", name, len(c.err.Error()))
		}
	}
}
