package mixing

import (
	"errors"
	"testing"

	"example.org/maslin/dough/quantity"
)

// What is wrong with one value is not said of another that is right.
func TestFaultsStayWhereTheyAre(t *testing.T) {
	_, err := Balance{
		Ingredients: []Portion{
			{Name: "flour", Mass: quantity.Grams(1000), Temperature: quantity.Celsius(20), Substance: Flour},
		},
		Water: quantity.Grams(-1), WaterTemperature: quantity.Celsius(20), Ice: quantity.Grams(10),
	}.Final()
	var at []string
	for _, e := range quantity.InputErrors(err) {
		at = append(at, e.Path)
	}
	if len(at) != 1 || at[0] != "water" {
		t.Errorf("%q are wrong, want water alone: %v", at, err)
	}
}

// A mixer that there is not is refused also where nothing is asked of it.
func TestTableOfAnUnknownMixer(t *testing.T) {
	table := WaterTable{Target: quantity.Celsius(25), Mixer: 9, Warming: quantity.DeltaCelsius(3), Flour: degrees(20),
		Room: degrees(22)}
	if _, err := table.Water(); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Errorf("mixer 9: %v", err)
	}
	table.Mixer = 0
	if _, err := table.Water(); err != nil {
		t.Errorf("a given warming needs no mixer: %v", err)
	}
}
