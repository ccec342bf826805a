package food_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
)

// A stick of butter names its wrapper's weight, and a packet of yeast weighs what it is filled with, though so many
// spoons of active dry yeast may weigh a third more.
func TestWhatIsPackedWeighsWhatItIsFilledWith(t *testing.T) {
	weigh := func(text string) food.FoodWeight {
		v, err := food.ReadVolume(text)
		if err != nil {
			t.Fatal(err)
		}
		w, err := v.Weight()
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	stick := weigh("1 stick butter")
	if len(stick.Notes) != 1 || !strings.Contains(stick.Notes[0].String(), "113.4 g") {
		t.Error(stick.Notes)
	}
	// It weighs what it is sold as, however much of it there is, and not half of a published cup.
	for text, grams := range map[string]float64{"1 stick butter": 113.398, "½ stick of butter": 56.699,
		"3 sticks unsalted butter": 340.194} {
		if m := weigh(text).Mass.Likely.Grams(); m < grams-0.001 || m > grams+0.001 {
			t.Errorf("%s: %v", text, m)
		}
	}
	for text, grams := range map[string]float64{"1 packet active dry yeast": 7, "2 packets dry yeast": 14,
		"1 packet instant yeast": 7} {
		m := weigh(text).Mass
		if m.Likely.Grams() != grams || m.High.Grams() > 1.05*grams || m.Low.Grams() < 0.95*grams {
			t.Errorf("%s: %v", text, m)
		}
	}
	if spoons := weigh("2.25 tsp active dry yeast"); spoons.Mass.High.Grams() < 9 {
		t.Errorf("spoons: %v", spoons.Mass)
	}
}

// Instant yeast for fresh: a third by one table, and five twelfths by the packet that stands for a cake of 0.6 oz.
func TestTablesOfInstantYeastDisagree(t *testing.T) {
	y, err := food.YeastSwap{Mass: quantity.Grams(20), From: dough.KindFreshYeast, To: dough.KindInstantYeast}.Convert()
	if err != nil {
		t.Fatal(err)
	}
	p := y.To[0].Published
	if low, high := p.Low.Grams(), p.High.Grams(); low != 6.6 || high < 8.33 || high > 8.34 {
		t.Errorf("%v to %v", low, high)
	}
}
