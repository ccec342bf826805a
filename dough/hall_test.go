package dough_test

import (
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

func pc(s string) quantity.Percent { return quantity.MustPercent(s) }

func maslin() dough.Formula {
	return dough.Formula{
		Flours: []dough.Part{
			{Name: "bread flour", Percent: pc("80 %"), Kind: dough.KindWheat},
			{Name: "whole rye", Percent: pc("20 %"), Kind: dough.KindWholeRye},
		},
		Liquids: []dough.Part{{Name: "water", Percent: pc("72 %"), Kind: dough.KindWater}},
		Salt:    pc("2 %"),
		Preferments: []dough.Preferment{{
			Name: "levain", Flour: pc("15 %"), Hydration: pc("100 %"),
			Blend: []dough.Part{{Name: "whole rye", Percent: pc("100 %")}},
			Seed:  dough.Seed{Percent: pc("20 %"), Hydration: pc("100 %")},
		}},
	}
}

func TestViewsReconcileForTheHallKitchen(t *testing.T) {
	b, err := maslin().For(dough.Baked{Pieces: 6, Each: quantity.Grams(780), Loss: pc("12 %")})
	if err != nil {
		t.Fatal(err)
	}
	var sum quantity.Mass
	for _, l := range b.FinalDough() {
		sum = sum.Add(l.Mass)
	}
	if sum != b.Dough() || b.Dough().String() != "5318.181818 g" {
		t.Errorf("final dough %v, dough %v", sum, b.Dough())
	}
	workcheck.Verify(t, b.Working())
}
