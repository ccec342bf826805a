package bakeday_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

func halls() bakeday.Bake {
	percent := quantity.MustPercent
	return bakeday.Bake{
		Flours: []bakeday.Ingredient{
			{Name: "wheat bread flour", Percent: percent("75 %"), Kind: dough.KindWheat},
			{Name: "whole rye flour", Percent: percent("25 %"), Kind: dough.KindWholeRye},
		},
		Liquids: []bakeday.Ingredient{{Name: "water", Percent: percent("70 %")}},
		Salt:    percent("2 %"),
		Levain:  &bakeday.Levain{Prefermented: percent("12 %"), Hydration: percent("100 %"), Flour: "whole rye flour"},
	}
}

func ExampleBake_Batch() {
	bread := halls() // only its formula is filled in
	batch, err := bread.Batch(dough.ByDough{Mass: quantity.Kilograms(1.72)})
	fmt.Println(batch.Flour(), batch.Water(), batch.Hydration(), err)
	// Output: 1000 g 700 g 70 % <nil>
}

func TestBatchErrorsNameTheBake(t *testing.T) {
	bread := halls()
	bread.Levain.Flour = "emmer"
	bread.Flours[0].Percent = quantity.MustPercent("70 %")
	for _, target := range []dough.Target{nil, dough.ByDough{Mass: quantity.Kilograms(2)}} {
		_, err := bread.Batch(target)
		var paths []string
		for _, e := range quantity.InputErrors(err) {
			paths = append(paths, e.GoPath)
		}
		want := []string{"Loaves.Pieces", "Loaves.Baked", "Flours", "Levain.Flour"}
		if target != nil {
			want = want[2:]
		}
		if fmt.Sprint(paths) != fmt.Sprint(want) {
			t.Errorf("target %v: got %v, want %v", target, paths, want)
		}
	}
	if _, err := halls().Batch(dough.ByDough{}); err == nil {
		t.Error("no dough at all was accepted")
	}
	if (bakeday.Bake{}).Scales().Flour != quantity.Grams(1) {
		t.Error("the usual scale is not 1 g")
	}
	for rye, want := range map[string]mixing.DoughKind{"25 %": mixing.WheatDough, "60 %": mixing.RyeDough} {
		bread := halls()
		bread.Flours[1].Percent = quantity.MustPercent(rye)
		bread.Flours[0].Percent = quantity.NewPercent(100).Sub(bread.Flours[1].Percent)
		batch, err := bread.Batch(dough.ByDough{Mass: quantity.Kilograms(2)})
		if err != nil || bakeday.DoughKind(batch) != want {
			t.Errorf("%s of rye: got a %v dough (%v), want %v", rye, bakeday.DoughKind(batch), err, want)
		}
	}
	if got := len(halls().Formula().Preferments); got != 1 {
		t.Errorf("got %d preferments, want the levain", got)
	}
}
