package quantity_test

import (
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
)

// Fractions as people type them are what their decimals are.
func TestFractions(t *testing.T) {
	for text, want := range map[string]string{
		"1/2 cup": "0.5 cup", "½ cup": "0.5 cup", "2 1/4 tsp": "2.25 tsp", "2¼tsp": "2.25 tsp", "2 ¼ tsp": "2.25 tsp",
		"3/4cup": "0.75 cup", "1⁄8 tsp": "0.125 tsp", "0 1/2 L": "0.5 L", "10/4 L": "2.5 L", "1 3/8 qt": "1.375 qt",
		"⅞ cup": "0.875 cup", "⅝ cup": "0.625 cup", "⅗ L": "0.6 L", "¾ L": "0.75 L", "⅘ L": "0.8 L", "⅜ L": "0.375 L",
		"⅖ L": "0.4 L", "⅕ L": "0.2 L", "⅛ L": "0.125 L",
	} {
		got, err := quantity.ParseVolume(text)
		if err != nil || got != quantity.MustVolume(want) {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	for text, want := range map[string]float64{"⅓ L": 1000.0 / 3, "⅔ L": 2000.0 / 3, "1/3 L": 1000.0 / 3,
		"⅙ L": 1000.0 / 6, "⅚ L": 5000.0 / 6} {
		if got, err := quantity.ParseVolume(text); err != nil || got != quantity.Milliliters(want) {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	if got, err := quantity.ParseLength("8 1/2 in"); err != nil || got != quantity.Inches(8.5) {
		t.Error(got, err)
	}
	if got, err := quantity.ParseMass("1/2 lb"); err != nil || got != quantity.Pounds(0.5) {
		t.Error(got, err)
	}
	for _, text := range []string{"1/0 cup", "1/ cup", "/2 cup", "1/2", "1/2 furlong", "1/1234 L", "1 2 cup", "1 2/ cup",
		"1.5 1/2 cup", "1234567 1/2 L", "½", "1234/5 L", "1 / 2 cup"} {
		if got, err := quantity.ParseVolume(text); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	if _, err := quantity.ParseMass("999999 1/2 kg"); err != nil {
		t.Error(err)
	}
	if got, err := quantity.ParseLength("999999 1/2 km"); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Error(got, err)
	}
	if _, err := quantity.ParsePercent("1/2 %"); err == nil {
		t.Error("a percentage is no fraction")
	}
}

// n/d of a unit, d times, is n units, to within half a quantum of each.
func TestFractionsAddUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		whole, over, under := rapid.Int64Range(0, 99).Draw(rt, "whole"), rapid.Int64Range(0, 99).Draw(rt, "over"),
			rapid.Int64Range(1, 64).Draw(rt, "under")
		v, err := quantity.ParseVolume(fmt.Sprintf("%d %d/%d cup", whole, over, under))
		if err != nil {
			rt.Fatal(err)
		}
		sum, _ := v.Times(under).Sub(quantity.MustVolume("1 cup").Times(whole*under + over)).Picoliters()
		if 2*max(sum, -sum) > under+1 {
			rt.Fatalf("%v is %d pL off", v, sum)
		}
	})
}
