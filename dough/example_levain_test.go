package dough_test

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

func ExamplePrintedLevain_Flour() {
	// "20 % levain" at 100 % hydration, in a formula of 174 %.
	for _, reading := range []dough.LevainReading{dough.FlourOfTotalFlour, dough.LevainOfAddedFlour,
		dough.LevainOfTotalFlour, dough.LevainOfDough} {
		x, err := dough.PrintedLevain{
			Percent: quantity.MustPercent("20 %"), Reading: reading, Hydration: quantity.MustPercent("100 " +
				"%"), Total: quantity.MustPercent("174 %"),
		}.Flour()
		fmt.Println(reading, "is prefermented flour of", x.Text(2), err)
	}
	// Output:
	// flour of total flour is prefermented flour of 20.00 % <nil>
	// levain of added flour is prefermented flour of 9.09 % <nil>
	// levain of total flour is prefermented flour of 10.00 % <nil>
	// levain of dough is prefermented flour of 17.40 % <nil>
}

func ExampleBatch_LevainPercent() {
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	for _, reading := range []dough.LevainReading{dough.FlourOfTotalFlour, dough.LevainOfAddedFlour,
		dough.LevainOfTotalFlour, dough.LevainOfDough} {
		p, _ := batch.LevainPercent("levain", reading)
		fmt.Println(p.Text(2), reading)
	}
	// Output:
	// 15.00 % flour of total flour
	// 35.29 % levain of added flour
	// 30.00 % levain of total flour
	// 17.24 % levain of dough
}

func ExampleLevainBuild_Plan() {
	// 12 g of culture in the refrigerator, 300 g of levain for the dough, 30 g to keep.
	plan, err := dough.LevainBuild{
		Want: quantity.Grams(300), KeepBack: quantity.Grams(30), Hydration: quantity.MustPercent("100 %"),
		Starter:     dough.Starter{Mass: quantity.Grams(12), Hydration: quantity.MustPercent("60 %")},
		Inoculation: quantity.MustPercent("20 %"),
	}.Plan()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(plan.Report().Text(report.Options{}))
	// Output:
	// Levain: 300 g at 100 %, and 30 g to keep
	//
	// Stage 1 of 2
	//   9.23 g  culture
	//   9.23 g  flour
	//   11.5 g  water
	//     30 g  together, at 100 %
	//   · inoculation 100.0 % of the new flour, 30.8 % of the mix
	//
	// Stage 2 of 2
	//    30 g  culture
	//   150 g  flour
	//   150 g  water
	//   330 g  together, at 100 %
	//   · inoculation 20.0 % of the new flour, 9.1 % of the mix
	//
	// Then
	//   · 300 g for the dough
	//   · 30 g to keep: take it before you mix the dough
	//   · 2.77 g of the culture at hand is left over: feed it and keep it, or bake
	//     with it
}

func ExampleLevainBuild_Plan_tooLittle() {
	// What cannot be reached is an answer.
	plan := must(dough.LevainBuild{
		Want: quantity.Grams(900), Hydration: quantity.MustPercent("100 %"), Stages: 1,
		Starter: dough.Starter{Mass: quantity.Grams(10), Hydration: quantity.MustPercent("100 %")},
	}.Plan())
	fmt.Println(plan.Reached, plan.Missing)
	fmt.Print(plan.Report().Text(report.Options{}))
	// Output:
	// false 32.857143 g
	// Levain: 900 g at 100 %
	//
	// It cannot be done
	//   · 10 g of culture is too little for 900 g of levain in 1 feeding: it takes
	//     42.9 g
	//   · missing: 32.9 g of culture
}

func ExampleLevainPlan_Weigh() {
	plan := must(dough.LevainBuild{
		Want: quantity.Grams(917), Hydration: quantity.MustPercent("100 %"), Inoculation: quantity.MustPercent("20 %"),
		Starter: dough.Starter{Mass: quantity.Grams(100), Hydration: quantity.MustPercent("100 %")},
	}.Plan())
	rounded, residue, err := plan.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
	fmt.Print(rounded.Report().Text(report.Options{}))
	fmt.Println("residue", residue, err)
	// Output:
	// Levain: 917 g at 100 %
	//
	// Feed
	//    83.4 g  culture
	//     417 g  flour
	//     417 g  water
	//   917.4 g  together, at 100 %
	//   · inoculation 20.0 % of the new flour, 9.1 % of the mix
	//
	// Then
	//   · 917.4 g for the dough
	//   · 16.6 g of the culture at hand is left over: feed it and keep it, or bake
	//     with it
	// residue −0.4 g <nil>
}

func ExampleFeeding() {
	// 1:5:2.5 by weight.
	f := dough.Feeding{
		Starter: dough.Starter{Mass: quantity.Grams(20),
			Hydration: quantity.MustPercent("100 %")}, Flour: quantity.Grams(100), Water: quantity.Grams(50),
	}
	fmt.Println(f.Hydration().Text(1), f.Inoculation(dough.OfNewFlour), f.Inoculation(dough.OfMix).Text(1), f.Result())
	// Output:
	// 54.5 % 20 % 11.8 % 170 g at 54.55 %
}

func ExampleOneLevain_Plan() {
	wheat := hall()
	wheat.Liquids[0].Percent = quantity.MustPercent("68 %")
	loaves := must(hall().For(dough.Pieces{Count: 6, Each: quantity.Grams(886)}))
	rolls := must(wheat.For(dough.Pieces{Count: 24, Each: quantity.Grams(60)}))
	shared := must(dough.OneLevain{Preferment: "levain", Doughs: []dough.Batch{loaves, rolls},
		AtHand: quantity.Grams(1000)}.Plan())
	fmt.Print(shared.Report().Text(report.Options{}))
	// Output:
	// 1170.7 g of levain for 2 doughs
	//
	// Made beforehand: levain
	//    585.3 g  100.0 %  whole rye
	//    585.3 g  100.0 %  water
	//   1170.7 g           together
	//
	// Then
	//   for dough 1  782.9 g
	//   for dough 2  217.1 g
	//   too little by 170.7 g
}

func ExampleWeights_Batch() {
	// 500 g flour, 300 g water and 150 g of culture at 100 %: what is the true hydration?
	batch := must(dough.Weights{
		Final: dough.Bowl{
			Flours:  []dough.Weight{{Name: "bread flour", Mass: quantity.Grams(500)}},
			Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(300)}},
			Salt:    quantity.Grams(10),
		},
		Preferments: []dough.PrefermentWeights{{Name: "starter", Bowl: dough.Bowl{
			Flours:  []dough.Weight{{Name: "bread flour", Mass: quantity.Grams(75)}},
			Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(75)}},
		}}},
	}.Batch())
	fmt.Println("hydration", batch.Hydration().Text(2), "salt", batch.SaltShare().Text(2), "prefermented flour",
		batch.Prefermented().Text(2))
	// Output:
	// hydration 65.22 % salt 1.74 % prefermented flour 13.04 %
}

func ExampleBatch_Weights() {
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	weights := batch.Weights()
	weights.Final.Salt = quantity.Grams(18) // it was 20 g by the formula
	fmt.Println(must(weights.Batch()).SaltShare())
	// Output:
	// 1.8 %
}

func ExampleMishap_Repair() {
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	repair, err := dough.Mishap{Batch: batch, Extra: []dough.Stock{{Name: "water", Mass: quantity.Grams(40)}}}.Repair()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(repair.Report().Text(report.Options{}))
	// Output:
	// The dough has 76.0 % hydration and 2.00 % salt; add 44.4 g of bread flour,
	//   11.1 g of whole rye and 1.11 g of salt
	//
	// What is different from the plan
	//   · 40 g too much water
	//
	// To bring back hydration and salt, add
	//   44.4 g  bread flour
	//   11.1 g  whole rye
	//   1.11 g  salt
	//
	// The dough
	//                       planned     now  mended
	//   dough                1740 g  1780 g  1837 g
	//   hydration            72.0 %  76.0 %  72.0 %
	//   salt                 2.00 %  2.00 %  2.00 %
	//   prefermented flour   15.0 %  15.0 %  14.2 %
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
}

func ExampleMishap_Repair_all() {
	// The dough did not clear the bowl, and 50 g of flour went in. Everything else follows, the ripe
	// levain too.
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	repair := must(dough.Mishap{
		Batch: batch, Extra: []dough.Stock{{Name: "bread flour", Mass: quantity.Grams(50)}}, Restore: dough.RestoreAll,
	}.Repair())
	fmt.Print(repair.Report().Text(report.Options{}))
	// Output:
	// The dough has 68.6 % hydration and 1.90 % salt; add 3.12 g of whole rye, 35.6 g
	//   of water, 1.25 g of salt and 18.8 g of levain
	//
	// What is different from the plan
	//   · 50 g too much bread flour
	//
	// To bring back every line, the levain too, add
	//   3.12 g  whole rye
	//   35.6 g  water
	//   1.25 g  salt
	//   18.8 g  levain
	//
	// The dough
	//                       planned     now  mended
	//   dough                1740 g  1790 g  1849 g
	//   hydration            72.0 %  68.6 %  72.0 %
	//   salt                 2.00 %  1.90 %  2.00 %
	//   prefermented flour   15.0 %  14.3 %  15.0 %
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
}

func ExampleDoughYield_Net() {
	net, err := dough.DoughYield{Flour: quantity.Grams(525), Liquid: quantity.Grams(310)}.Net()
	fmt.Println("TA", net.Text(0), err)
	// Output:
	// TA 159 % <nil>
}

func ExampleDoughYield_Gross() {
	gross, err := dough.DoughYield{Flour: quantity.Kilograms(10), Rest: quantity.Kilograms(4.5)}.Gross()
	fmt.Println("gross TA", gross.Text(0), err)
	// Output:
	// gross TA 145 % <nil>
}

func ExamplePrefermentKind_UsualHydration() {
	for _, k := range []dough.PrefermentKind{dough.Levain, dough.Poolish, dough.OldDough} {
		usual, _ := k.UsualHydration()
		fmt.Println(k, usual)
	}
	// Output:
	// levain 50 % to 125 %
	// poolish 100 % to 100 %
	// old dough 60 % to 75 %
}
