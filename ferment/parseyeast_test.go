package ferment_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

func ExampleParseYeast() {
	y, err := ferment.ParseYeast("0.6 % instant")
	fmt.Println(y.Amount, y.Kind, err)
	// Output: 0.6 % instant yeast <nil>
}

func TestParseYeast(t *testing.T) {
	for text, want := range map[string]ferment.Yeast{
		"2%fresh":                {Kind: ferment.FreshYeast, Amount: quantity.NewPercent(2)},
		" 0.8 %  Active-Dry ":    {Kind: ferment.ActiveDryYeast, Amount: quantity.NewPercent(0.8)},
		"0.8 % active dry yeast": {Kind: ferment.ActiveDryYeast, Amount: quantity.NewPercent(0.8)},
		"3 % pressed":            {Kind: ferment.FreshYeast, Amount: quantity.NewPercent(3)},
		"3 % compressed yeast":   {Kind: ferment.FreshYeast, Amount: quantity.NewPercent(3)},
		"1 % dry":                {Kind: ferment.ActiveDryYeast, Amount: quantity.NewPercent(1)},
	} {
		if got, err := ferment.ParseYeast(text); err != nil || got != want {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "2 %", "0.6 instant", "x % fresh", "1 % wild", "fresh 1 %", "%", "instant",
		"1 % instant % fresh"} {
		if got, err := ferment.ParseYeast(text); !errors.Is(err, quantity.ErrUnit) || got != (ferment.Yeast{}) {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}
