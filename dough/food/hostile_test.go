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
		"yeast, zero": {trial.Err(food.YeastSwap{}.Convert()), "from required"},
		"yeast": {trial.Err(food.YeastSwap{Mass: quantity.Grams(math.NaN()), From: dough.KindSalt, To: 99,
			Table: food.YeastTable{Fresh: quantity.Grams(-2)}}.Convert()), "mass out of range; from out of range; to out of " +
			"range; table.fresh out of range"},
		"yeast, no such": {trial.Err(food.YeastSwap{Mass: quantity.Grams(1), From: dough.KindFreshYeast,
			To: dough.KindInstantYeast, Table: food.YeastTable{Name: "half", Fresh: quantity.Grams(2),
				ActiveDry: quantity.Grams(1)}}.Convert()), "table inconsistent"},
		"yeast, absurd": {trial.Err(food.YeastSwap{Mass: quantity.Kilograms(1e5), From: dough.KindFreshYeast,
			To: dough.KindInstantYeast, Table: food.YeastTable{Fresh: quantity.Micrograms(1),
				Instant: quantity.Kilograms(1)}}.Convert()), "table out of range"},
		"volume, zero": {trial.Err(food.FoodVolume{}.Weight()), "volume required; food required"},
		"volume, unknown": {trial.Err(food.FoodVolume{Food: huge, Volume: quantity.Liters(1), Method: 77}.Weight()),
			"method out of range; food out of range"},
		"volume, no method": {trial.Err(food.FoodVolume{Food: "bread flour", Volume: quantity.Liters(1)}.Weight()),
			"method required"},
		"volume, leveled": {trial.Err(food.FoodVolume{Food: "bread flour", Volume: quantity.Liters(1),
			Method: food.Leveled}.Weight()), "method out of range"},
		"volume, own list": {trial.Err(food.FoodVolume{Food: "x", Volume: quantity.Liters(1), Method: food.Sifted,
			Measures: []food.FoodMeasure{{Food: "x",
				Method: 9}}}.Weight()), "measures[0].method out of range; measures[0].per required; measures[0].mass " +
			"required"},
		"milk": {trial.Err(food.Food{Water: nan}.InPlaceOfWater(quantity.Grams(-1))),
			"water out of range; water out of range"},
		"milk, more than a mass can be": {trial.Err(food.Food{Water: quantity.MustPercent("2 %")}.InPlaceOfWater(
			quantity.Kilograms(99_999))), "water out of range"},
	} {
		if got := trial.Refused(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
		if c.err != nil && len(c.err.Error()) > 4000 {
			t.Errorf("%s: an error of %d bytes", name, len(c.err.Error()))
		}
	}
}
