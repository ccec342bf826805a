package dough_test

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
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
	fmt.Print(weighing.Report().Text(report.Options{}))
	fmt.Println("hydration", batch.Hydration().Text(0), "of the dough", batch.Dough().Text(quantity.Gram, 0), err)
	// Output:
	// 5318 g of dough, 6 pieces of 886 g
	//
	// Overall formula, in percent of all flour
	//   2445.1 g   80.0 %  bread flour
	//    611.3 g   20.0 %  whole rye
	//   2200.6 g   72.0 %  water
	//     61.1 g    2.0 %  salt
	//   5318.2 g  174.0 %  together
	//
	// Made beforehand: levain
	//     367 g   80.0 %  bread flour
	//    91.7 g   20.0 %  whole rye
	//     458 g  100.0 %  water
	//   916.7 g           together
	//
	// Final dough, weighed at mixing
	//     2078 g  80.0 %  bread flour
	//      520 g  20.0 %  whole rye
	//     1742 g  67.1 %  water
	//     61.1 g   2.4 %  salt
	//    916.7 g  35.3 %  levain
	//   5317.8 g          together
	//   · rounding to the scale leaves out 0.4 g
	//
	// What it is
	//   hydration                              72.0 %
	//   of what is weighed at mixing           67.1 %
	//   dough yield                            TA 172.0, gross 174.0
	//   prefermented flour                     15.0 %
	//   levain, read as levain of added flour  35.3 %
	//   levain, read as levain of total flour  30.0 %
	//   levain, read as levain of dough        17.2 %
	//   salt                                   2.00 %
	//   salt in the dough's water              2.78 %
	//   whole grain                            20 %
	//   rye                                    20 %
	//   flour in all                           3056 g
	//   water in all                           2201 g
	//   · allergens: gluten and wheat
	//
	// Take care
	//   allergens: the ingredients carry gluten by the EU's list of 14, wheat by the
	//     US list of 9; traces from the kitchen are not counted, and local labeling
	//     law decides what must be named
	//   raw dough: raw flour may carry germs: do not taste it; wash hands and tools;
	//     no dough for pets
	//   ergot: rye you mill yourself: pick out purple-black, horn-like grains first
	//   Local food and workplace rules and licensed professionals decide, not these
	//     words.
	// hydration 72 % of the dough 5318 g <nil>
}
