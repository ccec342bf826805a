package mixing_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

func hallDough() mixing.Balance {
	return mixing.Balance{
		Ingredients: []mixing.Portion{
			{Name: "flour", Mass: quantity.Grams(2752), Temperature: quantity.Celsius(21), Substance: mixing.Flour},
			{Name: "levain", Mass: quantity.Grams(750), Temperature: quantity.Celsius(22), Substance: mixing.Levain, Hydration: quantity.NewPercent(100)},
		},
		Water: quantity.Grams(1813),
	}
}

func ExampleBalance_WorkFor() {
	dough := hallDough()
	work, err := dough.WorkFor(quantity.DeltaCelsius(5)) // what the mixer does to this dough
	dough.Mixing = work
	water, _ := dough.WaterFor(quantity.Celsius(26))
	fmt.Printf("%.1f kJ/kg, water at %.1f, %v\n", float64(work), water.Water, err)
	// Output: 14.1 kJ/kg, water at 20.7 °C, <nil>
}

// The work put into the balance warms the dough by what it was asked for, whatever it is made of.
func TestWorkWarmsByTheRise(t *testing.T) {
	for _, rise := range []float64{-3, 0, 1, 5, 12} {
		b := hallDough()
		b.Bowl, b.BowlTemperature = 1.5, quantity.Celsius(18)
		b.WaterTemperature = quantity.Celsius(15)
		cold, err := b.Final()
		if err != nil {
			t.Fatal(err)
		}
		if b.Mixing, err = b.WorkFor(quantity.DeltaCelsius(rise)); err != nil {
			t.Fatal(err)
		}
		if rise < 0 { // a balance takes no negative work
			if b.Mixing >= 0 {
				t.Errorf("a cooling by %v gave work of %v", rise, b.Mixing)
			}
			continue
		}
		warm, err := b.Final()
		if err != nil {
			t.Fatal(err)
		}
		if got := warm.Dough.Sub(cold.Dough).Celsius(); math.Abs(got-rise) > 2.0/9000 { // two roundings to the quantum
			t.Errorf("got a rise of %v, want %v", got, rise)
		}
	}
	if _, err := hallDough().WorkFor(quantity.DeltaCelsius(math.NaN())); err == nil {
		t.Error("no number was accepted as a warming")
	}
	if _, err := (mixing.Balance{}).WorkFor(quantity.DeltaCelsius(2)); err == nil {
		t.Error("an empty dough was accepted")
	}
}
