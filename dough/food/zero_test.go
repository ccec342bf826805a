package food_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

func TestZeroResultsPrint(t *testing.T) {
	for _, r := range []fmt.Stringer{food.SwappedYeast{}, food.Food{}, food.FoodWeight{}, food.FillMethod(-3)} {
		if r.String() == "" {
			t.Errorf("%T prints nothing", r)
		}
	}
	for _, w := range []interface{ Working() working.Working }{food.SwappedYeast{}, food.FoodWeight{}} {
		if n := w.Working().Len(); n != 0 {
			t.Errorf("%T derives %d steps from nothing", w, n)
		}
	}
}

func TestNamesAreReadBack(t *testing.T) {
	for i := range 5 {
		text, err := food.FillMethod(i).MarshalText()
		var back food.FillMethod
		if err != nil || back.UnmarshalText(text) != nil || back != food.FillMethod(i) {
			t.Errorf("%v", food.FillMethod(i))
		}
	}
	for _, k := range quantity.Values[food.ChilledKind]() {
		trial.Travels(t, k)
	}
	if _, err := food.FillMethod(-1).MarshalText(); err == nil {
		t.Error("a value without a name was written")
	}
}
