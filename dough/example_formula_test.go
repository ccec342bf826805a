package dough_test

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// hall is the maslin bread of the village hall: wheat with a fifth of whole rye, all of it in the
// levain's flour that fits.
func hall() dough.Formula {
	p := quantity.MustPercent
	return dough.Formula{
		Flours: []dough.Part{
			{Name: "bread flour", Percent: p("80 %"), Kind: dough.KindWheat},
			{Name: "whole rye", Percent: p("20 %"), Kind: dough.KindWholeRye},
		},
		Liquids: []dough.Part{{Name: "water", Percent: p("72 %"), Kind: dough.KindWater}},
		Salt:    p("2 %"),
		Preferments: []dough.Preferment{{
			Name: "levain", Flour: p("15 %"), Hydration: p("100 %"), Blend: []dough.Part{{Name: "whole rye",
				Percent: p("100 %")}},
		}},
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func ExampleFormula_For() {
	batch, err := hall().For(dough.Baked{Pieces: 6, Each: quantity.Grams(780), Loss: quantity.MustPercent("12 %")})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("hydration", batch.Hydration(), "prefermented", batch.Prefermented(), "rye", batch.Rye())
	fmt.Print(batch.Report().Text(report.Options{}))
	// Output:
	// hydration 72 % prefermented 15 % rye 20 %
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
	//   458.5 g  100.0 %  whole rye
	//   458.5 g  100.0 %  water
	//   916.9 g           together
	//
	// Final dough, weighed at mixing
	//   2445.1 g  94.1 %  bread flour
	//    152.8 g   5.9 %  whole rye
	//   1742.2 g  67.1 %  water
	//     61.1 g   2.4 %  salt
	//    916.9 g  35.3 %  levain
	//   5318.2 g          together
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
}

func ExampleFormula_For_bakedLoaves() {
	// Bake loss is of the scaling weight, process loss of the dough that is mixed.
	batch := must(hall().For(dough.Baked{
		Pieces: 6, Each: quantity.Grams(780), Loss: quantity.MustPercent("12 %"), ProcessLoss: quantity.MustPercent("2 %"),
	}))
	fmt.Printf("mix %.1f, divide %.1f into %d pieces of %.1f\n", batch.Dough(), batch.Scaled(), batch.Pieces(),
		batch.ScalingWeight())
	// Output:
	// mix 5426.7 g, divide 5318.2 g into 6 pieces of 886.4 g
}

func ExampleFormula_Check() {
	f := hall()
	f.Flours[1].Percent = quantity.MustPercent("25 %")
	f.Salt = quantity.MustPercent("-2 %")
	fmt.Println(f.Check())
	// Output:
	// flours: inconsistent: got flours that add up to 105 %, want 100 %
	// salt: out of range: got −2 %, want 0 % to 100 %
}

func ExampleAtHand() {
	// 1.5 kg of bread flour, 300 g of rye and 500 g of ripe levain: what is the most that can be mixed?
	batch := must(hall().For(dough.AtHand{Stock: []dough.Stock{
		{Name: "bread flour", Mass: quantity.Grams(1500)},
		{Name: "whole rye", Mass: quantity.Grams(300)},
		{Name: "levain", Mass: quantity.Grams(500)},
	}}))
	fmt.Printf("%.0f of dough, then the %s runs out\n", batch.Dough(), batch.Limiting())
	// Output:
	// 2610 g of dough, then the whole rye runs out
}

func ExampleByLevain() {
	batch := must(hall().For(dough.ByLevain{Preferment: "levain", Mass: quantity.Grams(250)}))
	fmt.Printf("%.0f of dough from %.0f of flour\n", batch.Dough(), batch.Flour())
	// Output:
	// 1450 g of dough from 833 g of flour
}

func ExampleByVolume() {
	// A 10 L tub, to be full when the dough has risen by three quarters.
	batch := must(hall().For(dough.ByVolume{Volume: quantity.Liters(10), Density: 1.12,
		Rise: quantity.MustPercent("75 %")}))
	fmt.Printf("%.0f of dough\n", batch.Dough())
	// Output:
	// 6400 g of dough
}

func ExampleBatch_Weigh() {
	batch := must(hall().For(dough.Pieces{Count: 6, Each: quantity.Grams(886)}))
	weighing := must(batch.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)}))
	fmt.Print(weighing.Report().Text(report.Options{}))
	// Output:
	// 5316 g of dough, 6 pieces of 886 g
	//
	// Overall formula, in percent of all flour
	//   2444.1 g   80.0 %  bread flour
	//      611 g   20.0 %  whole rye
	//   2199.7 g   72.0 %  water
	//     61.1 g    2.0 %  salt
	//     5316 g  174.0 %  together
	//
	// Made beforehand: levain
	//   459 g  100.0 %  whole rye
	//   458 g  100.0 %  water
	//   917 g           together
	//
	// Final dough, weighed at mixing
	//     2444 g  94.1 %  bread flour
	//      153 g   5.9 %  whole rye
	//     1741 g  67.1 %  water
	//     61.1 g   2.4 %  salt
	//      917 g  35.3 %  levain
	//   5316.1 g          together
	//   · rounding to the scale adds 0.1 g
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
	//   flour in all                           3055 g
	//   water in all                           2200 g
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
}

func ExampleBatch_FlourUp() {
	// 96 oz of dough at a total of 377.5 % takes 25.43 oz of flour; the trade weighs 26 oz.
	f := dough.Formula{
		Flours:  []dough.Part{{Name: "flour", Percent: quantity.MustPercent("100 %")}},
		Liquids: []dough.Part{{Name: "everything else", Percent: quantity.MustPercent("277.5 %")}},
	}
	batch := must(f.For(dough.ByDough{Mass: quantity.Ounces(96)}))
	up, more, err := batch.FlourUp(quantity.Ounces(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(batch.Flour().Text(quantity.Ounce, 2), "becomes", up.Flour().Text(quantity.Ounce, 2),
		"and the dough grows by", more.Text(quantity.Ounce, 2))
	// Output:
	// 25.43 oz becomes 26.00 oz and the dough grows by 2.15 oz
}

func ExampleBatch_Divide() {
	batch := must(hall().For(dough.ByDough{Mass: quantity.Grams(5000)}))
	n, left, err := batch.Divide(quantity.Grams(886))
	fmt.Println(n, "loaves and", left, "left over", err)
	// Output:
	// 5 loaves and 570 g left over <nil>
}

func ExampleBatch_EffectiveHydration() {
	p := quantity.MustPercent
	f := dough.Formula{
		Flours: []dough.Part{{Name: "bread flour", Percent: p("100 %"), Kind: dough.KindWheat}},
		Liquids: []dough.Part{
			{Name: "milk", Percent: p("30 %"), Kind: dough.KindMilk, Water: p("88.13 %")},
			{Name: "egg", Percent: p("20 %"), Kind: dough.KindEgg, Water: p("76.15 %")},
		},
		Salt: p("1.8 %"),
		Others: []dough.Part{
			{Name: "butter", Percent: p("15 %"), Kind: dough.KindButter, Water: p("17.94 %")},
			{Name: "honey", Percent: p("4 %"), Kind: dough.KindSyrup},
		},
	}
	batch := must(f.For(dough.ByFlour{Mass: quantity.Grams(500)}))
	wet := batch.EffectiveHydration()
	fmt.Println("water lines", batch.Hydration(), "all water", wet.Hydration, "assumed", wet.Assumed)
	fmt.Println(batch.DoughYield())
	fmt.Println(batch.Allergens())
	// Output:
	// water lines 0 % all water 45.044 % assumed [honey]
	// TA 130.0, gross 170.8
	// gluten, wheat, milk, egg
}

func ExampleBatch_SaltInWater() {
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	fmt.Println(batch.SaltInWater())
	// Output:
	// 2.777778 %
}

func ExampleBatch_Working() {
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	for _, line := range batch.Working().Lines(working.Reader{})[2:5] {
		fmt.Printf("%s: %s = %s = %s\n", line.Name, line.Symbol, line.Numbers, line.Value)
	}
	// Output:
	// water: m_3 = 72 ÷ 100 × 1000 = 720.0 g
	// salt: m_4 = 2 ÷ 100 × 1000 = 20.0 g
	// flour in levain: F_A = 15 ÷ 100 × 1000 = 150.0 g
}

func ExampleBatch_Cautions() {
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	for _, c := range batch.Cautions() {
		fmt.Println(c.Subject)
	}
	fmt.Println(batch.Allergens(), batch.Unstated())
	// Output:
	// allergens
	// raw dough
	// ergot
	// gluten, wheat []
}

func ExampleSoaker() {
	p := quantity.MustPercent
	f := hall()
	f.Liquids[0].Percent = p("78 %")
	f.Inclusions = []dough.Part{{Name: "linseed", Percent: p("6 %"), Kind: dough.KindSeeds}}
	f.Soakers = []dough.Soaker{{Name: "linseed soaker",
		Parts: []dough.Part{{Name: "linseed", Percent: p("6 %")}, {Name: "water", Percent: p("9 %")}}}}
	batch := must(f.For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	soaker, _ := batch.Build("linseed soaker")
	fmt.Println(soaker)
	fmt.Println(batch.FinalDough())
	// Output:
	// linseed soaker (cold soaker): 150 g
	// [800 g bread flour (94.12 %) 50 g whole rye (5.88 %) 540 g water (63.53 %) 20 g salt (2.35 %) 300 g levain (35.29 %) 150 g linseed soaker (17.65 %)]
}

func ExampleSeed() {
	// The same levain in three accounts: the culture counted, removed again before mixing, and on a
	// line of its own.
	for _, account := range []dough.SeedAccount{dough.SeedCounted, dough.SeedRemoved, dough.SeedSeparate} {
		f := hall()
		f.Preferments[0].Seed = dough.Seed{
			Percent:   quantity.MustPercent("20 %"),
			Hydration: quantity.MustPercent("100 %"),
			Account:   account,
		}
		batch := must(f.For(dough.ByFlour{Mass: quantity.Grams(1000)}))
		levain, _ := batch.Build("levain")
		fmt.Printf("%v: made %.1f, used %.1f, dough %.1f\n", account, levain.Made, levain.Used, batch.Dough())
	}
	// Output:
	// counted: made 300.0 g, used 300.0 g, dough 1740.0 g
	// removed: made 330.0 g, used 300.0 g, dough 1740.0 g
	// separate line: made 330.0 g, used 330.0 g, dough 1770.0 g
}

func ExamplePreferment() {
	// A rye sour in two stages: the second rests on the first.
	p := quantity.MustPercent
	rye := []dough.Part{{Name: "whole rye", Percent: p("100 %")}}
	f := hall()
	f.Preferments = []dough.Preferment{{
		Name: "full sour", Kind: dough.RyeSour, Flour: p("18 %"), Hydration: p("100 %"), Blend: rye,
		Preferments: []dough.Preferment{{Name: "basic sour", Kind: dough.RyeSour, Flour: p("9 %"), Hydration: p("65 %"),
			Blend: rye}},
	}}
	batch := must(f.For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	for _, build := range batch.Builds() {
		fmt.Print(build.Report().Text(report.Options{}))
	}
	// Output:
	// basic sour (rye sour): 148.5 g
	//
	// Made beforehand: basic sour
	//      90 g  100.0 %  whole rye
	//    58.5 g   65.0 %  water
	//   148.5 g           together
	//   · it goes into full sour
	// full sour (rye sour): 360 g
	//
	// Made beforehand: full sour
	//      90 g  100.0 %  whole rye
	//   121.5 g  135.0 %  water
	//   148.5 g  165.0 %  basic sour
	//     360 g           together
}

func ExampleWeighing_TooSmall() {
	f := hall()
	f.Others = []dough.Part{
		{Name: "instant yeast", Percent: quantity.MustPercent("0.03 %"), Kind: dough.KindInstantYeast},
	}
	batch := must(f.For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	weighing := must(batch.Weigh(dough.Scales{Flour: quantity.Grams(1)}))
	for _, l := range weighing.TooSmall() {
		fmt.Println(l.Exact, l.Name, "cannot be weighed in steps of", l.Step)
	}
	// Output:
	// 0.3 g instant yeast cannot be weighed in steps of 1 g
}

func ExamplePieces() {
	// Twelve rolls and what stays in the bowl and on the bench.
	batch := must(
		hall().For(dough.Pieces{Count: 12, Each: quantity.Grams(90), ProcessLoss: quantity.MustPercent("2 %")}))
	fmt.Printf("mix %.1f for %d pieces of %v\n", batch.Dough(), batch.Pieces(), batch.ScalingWeight())
	// Output:
	// mix 1102.0 g for 12 pieces of 90 g
}

func ExampleBatch_ShareOfDough() {
	batch := must(hall().For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	fmt.Println(batch.ShareOfDough("water").Text(2), "of the dough is water that was poured")
	// Output:
	// 41.38 % of the dough is water that was poured
}
