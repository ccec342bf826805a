package dough_test

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

// Six loaves of the village hall's maslin, 780 g each when baked: what to make the evening before, and what to
// weigh at mixing.
func Example() {
	percent := quantity.MustPercent
	formula := dough.Formula{
		Flours: []dough.Part{
			{Name: "bread flour", Percent: percent("80 %"), Kind: dough.KindWheat},
			{Name: "whole rye", Percent: percent("20 %"), Kind: dough.KindWholeRye},
		},
		Liquids:     []dough.Part{{Name: "water", Percent: percent("72 %"), Kind: dough.KindWater}},
		Salt:        percent("2 %"),
		Preferments: []dough.Preferment{{Name: "levain", Flour: percent("15 %"), Hydration: percent("100 %")}},
	}
	batch, err := formula.For(dough.Baked{Pieces: 6, Each: quantity.Grams(780), Loss: percent("12 %")})
	if err != nil {
		fmt.Println(err)
		return
	}
	weighing, err := batch.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
	fmt.Print(weighing)
	fmt.Println("hydration", batch.Hydration().Text(0), "of the dough", batch.Dough().Text(quantity.Gram, 0), err)
	// Output:
	// levain (levain), 916.7 g
	//   367 g bread flour
	//   91.7 g whole rye
	//   458 g water
	// dough, 5317.8 g
	//   2078 g bread flour
	//   520 g whole rye
	//   1742 g water
	//   61.1 g salt
	//   916.7 g levain
	// rounding leaves out 0.382 g
	// hydration 72 % of the dough 5318 g <nil>
}
