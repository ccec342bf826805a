package dough_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

func ExampleParsePercents() {
	weights, err := dough.ParsePercents("75 % wheat, 25% whole rye, 68,5 % water, 2 % salt, 24 % levain at 100 %")
	if err != nil {
		fmt.Println(err)
		return
	}
	batch, err := weights.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	batch, err = batch.Formula().For(dough.ByFlour{Mass: quantity.Grams(1120)})
	fmt.Printf("%.0f g, %v\n", batch.Dough().Grams(), err)
	// Output: 1945 g, <nil>
}

func TestParsePercents(t *testing.T) {
	for _, text := range []string{"% wheat", "x % wheat", "75 wheat", "75 % unobtainium", "0 % salt, 100 % wheat"} {
		if _, err := dough.ParsePercents(text); len(quantity.InputErrors(err)) == 0 {
			t.Errorf("%q: %v", text, err)
		}
	}
	if _, err := dough.ParsePercents("100 % wheat, 70 water"); !errors.Is(err, quantity.ErrUnit) {
		t.Error(err)
	}
	// What cannot be read is shown as it was written.
	if _, err := dough.ParsePercents("wheat 100 %"); err == nil || !strings.Contains(err.Error(), `"wheat 100 %"`) {
		t.Error(err)
	}
}
