package flour_test

import (
	"fmt"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
)

func ExamplePearsonSquare() {
	r, err := flour.PearsonSquare(flour.TwoFlours{
		A: flour.FlourLot{Name: "strong flour", Protein: quantity.MustPercent("13.8 %")}, B: flour.FlourLot{Name: "village mill", Protein: quantity.MustPercent("10.2 %")},
		Target: quantity.MustPercent("12 %"), Total: quantity.Grams(2400),
	})
	fmt.Println(r, err)
	_, err = flour.PearsonSquare(flour.TwoFlours{
		A: flour.FlourLot{Protein: quantity.MustPercent("8 %")}, B: flour.FlourLot{Protein: quantity.MustPercent("14.2 %")}, Target: quantity.MustPercent("15 %"),
	})
	fmt.Println(err)
	// Output:
	// 50.00 % strong flour (1200 g), 50.00 % village mill (1200 g): 12.00 % protein <nil>
	// Target: inconsistent: got 15 %, want 8 % to 14.2 %, between the two flours
}

func ExampleBlendFlours() {
	lot := func(name, protein string) flour.FlourLot {
		return flour.FlourLot{Name: name, Protein: quantity.MustPercent(protein)}
	}
	r, err := flour.BlendFlours(flour.BlendGoal{
		Flours: []flour.FlourShare{
			{FlourLot: lot("bread flour", "12.6 %"), Share: quantity.MustPercent("70 %")},
			{FlourLot: lot("village mill", "10.2 %"), Share: quantity.MustPercent("10 %")},
			// The rye is what makes it maslin: it stays.
			{FlourLot: lot("whole rye", "9.8 %"), Share: quantity.MustPercent("20 %"), Least: quantity.MustPercent("20 %"), Most: quantity.MustPercent("20 %")},
		},
		Target: quantity.MustPercent("11.5 %"), Total: quantity.Grams(3055),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r)
	for _, f := range r.Flours {
		fmt.Printf("%s: %s [%s]\n", f.Name, f.Change.Text(2), f.Held)
	}
	// Output:
	// 57.50 % bread flour (1757 g), 22.50 % village mill (687 g), 20.00 % whole rye (611 g): 11.50 % protein
	// bread flour: −12.50 % []
	// village mill: 12.50 % []
	// whole rye: 0.00 % [both]
}

func ExampleBlendProtein() {
	p, err := flour.BlendProtein([]flour.WeighedFlour{
		{FlourLot: flour.FlourLot{Name: "cake flour", Protein: quantity.MustPercent("8 %")}, Mass: quantity.Grams(100)},
		{FlourLot: flour.FlourLot{Name: "hard flour", Protein: quantity.MustPercent("14.2 %")}, Mass: quantity.Grams(25)},
	})
	fmt.Println(p, err)
	// Output:
	// 9.24 % <nil>
}

func ExampleAddGluten() {
	r, err := flour.AddGluten(flour.GlutenBoost{Protein: quantity.MustPercent("10.2 %"), Target: quantity.MustPercent("12 %"), Flour: quantity.Grams(1000)})
	fmt.Println(r, err)
	// Output:
	// add 2.85 % of the flour's weight as dry gluten: 1000 g flour, 28.5 g gluten, about 43 g more water <nil>
}

func ExampleReplaceWithGluten() {
	r, err := flour.ReplaceWithGluten(flour.GlutenBoost{Protein: quantity.MustPercent("10.2 %"), Target: quantity.MustPercent("12 %"), Flour: quantity.Grams(1000)})
	fmt.Println(r, err)
	// Output:
	// replace 2.77 % of the flour with dry gluten: 972 g flour, 27.7 g gluten, about 42 g more water <nil>
}

func ExampleConvertBasis() {
	// A US bag at 14 % moisture against a European analysis of dry matter.
	r, err := flour.ConvertBasis(flour.FlourBasis{Value: quantity.MustPercent("12 %"), From: quantity.MustPercent("14 %"), To: quantity.MustPercent("0 %")})
	fmt.Println(r, err)
	fmt.Print(r.Working().Text(90))
	// Output:
	// 13.953488 % at 0 % moisture <nil>
	// Moisture basis
	// ==============
	//
	// 1. value on the new basis
	//    X_B = X_M × (100 − B) ÷ (100 − M)
	//    where
	//      X_M  12 %  value as measured
	//      M    14 %  moisture as measured
	//      B    0 %  moisture of the new basis
	//    X_B = 12 × (100 − 0) ÷ (100 − 14)
	//    X_B ≈ 13.953488 %
	//    source: Iowa State University Extension, Moisture Basis Conversions for Grain
	//      Composition Data, PM-1625
}

func ExampleConvertAbsorption() {
	r, err := flour.ConvertAbsorption(flour.FlourBasis{Value: quantity.MustPercent("62 %"), From: quantity.MustPercent("12.5 %"), To: quantity.MustPercent("14 %")})
	fmt.Println(r, err)
	// Output:
	// 59.222857 % at 14 % moisture <nil>
}

func ExampleFlourType() {
	n, err := flour.FlourType(quantity.MustPercent("0.47 %"), quantity.MustPercent("13.36 %"))
	fmt.Printf("%.0f %v\n", n, err)
	// Output:
	// 542 <nil>
}

func ExampleJudgeFlour() {
	r, err := flour.JudgeFlour(flour.FlourStrength{Hydration: quantity.MustPercent("72 %"), W: 280, Protein: quantity.MustPercent("12.5 %")})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r)
	for _, o := range r.Opinions {
		fmt.Println("-", o)
	}
	fmt.Println(r.Warn, r.Advice[0])
	// Output:
	// 0 for and 4 against a hydration of 72 %; by one figure this flour is used up to 60 %, by another up to 70 %
	// - W 280 (Sourdough Framework): strong, 60 % to 70 %, against
	// - W 280 (strength list 2017): strong, 60 % to 70 %, against
	// - W 280 (strength list, Italian): medium, 50 % to 60 %, against
	// - protein 12.5 % (strength list 2017): medium, 50 % to 60 %, against
	// true hold back 5 to 10 points of the water and add it when the dough has formed
}
