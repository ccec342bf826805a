package mixing_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// Where milk is poured and no water, what is told and what would help speak of milk, and nobody puts ice into it.
func TestWhatIsPouredIsNamed(t *testing.T) {
	in := mixing.Planned{
		Target: quantity.Celsius(24), Room: quantity.Celsius(33), Tap: quantity.Celsius(12), Mixer: mixing.Planetary,
		Ingredients: []mixing.Portion{{Name: "flour", Mass: quantity.Grams(1000), Substance: mixing.Flour}},
		Water:       quantity.Grams(600), Pours: mixing.Milk,
	}
	for want, names := range map[string][]string{
		"milk": nil, "whole milk": {"whole milk"}, "egg and milk": {"egg", "milk"}, "water": nil,
	} {
		in.Liquids = names
		if want == "water" {
			in.Pours = 0
		} else {
			in.Pours = mixing.Milk
		}
		for _, target := range []float64{10, 24, 26, 45} {
			in.Target = quantity.Celsius(target)
			r, err := in.Pour()
			if err != nil {
				t.Fatal(err)
			}
			if !strings.HasPrefix(r.String(), want+" at ") {
				t.Errorf("%q does not begin with %q", r, want)
			}
			ice := false
			for _, m := range append(r.Remedies, mixing.WaterRemedy{Text: r.Message()}) {
				ice = ice || m.Way == mixing.Ice
				if want != "water" && strings.Contains(m.String(), "water") {
					t.Errorf("%s is poured, and it says %q", want, m)
				}
			}
			if cold := r.Temperature.Compare(in.Tap) < 0; ice != (cold && want == "water") {
				t.Errorf("%s at %v: ice %v", want, r.Temperature, ice)
			}
		}
	}
}

// A plait with a little butter fills a bowl as bread does; a dough as rich as doughnuts does not. The charts' test
// doughs have 5 % and 15 % each of sugar and shortening; the capacities are those of published.csv.
func TestRichDoughAndPlait(t *testing.T) {
	mix := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(20), Kind: mixing.EnrichedDough,
		Dough: quantity.Kilograms(5), Flour: quantity.Kilograms(3), Water: quantity.Kilograms(1.65)}
	most := func(fat, sugar float64) float64 {
		mix.Fat, mix.Sugar = quantity.Kilograms(3*fat/100), quantity.Kilograms(3*sugar/100)
		fit, err := mix.Fit()
		if err != nil {
			t.Fatal(err)
		}
		return fit.MostLow.Kilograms()
	}
	bread, doughnut := most(5, 5), most(15, 15)
	if bread < 6.7 || doughnut > 4.5 {
		t.Errorf("%v kg of bread and %v kg of doughnut dough in 20 L", bread, doughnut)
	}
	for _, one := range []struct{ fat, sugar, want float64 }{
		{8, 2, bread}, {12, 7.9, bread}, {12, 8, doughnut}, {40, 10, doughnut}, {0, 0, doughnut}, // of nothing known
	} {
		if got := most(one.fat, one.sugar); got != one.want {
			t.Errorf("%v %% fat and %v %% sugar: %v kg", one.fat, one.sugar, got)
		}
	}
}
