package flour_test

import (
	"fmt"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

// Two flours are blended by their proteins.
func ExampleFlourBlend_Shares() {
	blend, err := flour.FlourBlend{
		Flours: []flour.FlourLot{
			{Name: "bread flour", Protein: quantity.MustPercent("13 %")}, {Name: "flour of the valley",
				Protein: quantity.MustPercent("10 %")},
		},
		Target: quantity.MustPercent("11.5 %"), Total: quantity.Kilograms(2),
	}.Shares()
	fmt.Println(blend, err)
	for _, f := range blend.Flours {
		fmt.Println(f.Name, f.Share, f.Mass)
	}
	// Output:
	// A blend of 11.50 % protein <nil>
	// bread flour 50 % 1000 g
	// flour of the valley 50 % 1000 g
}

// More flours change their shares as little as possible; the rye stays where it is.
func ExampleFlourBlend_Shares_leastChange() {
	p := quantity.MustPercent
	blend, err := flour.FlourBlend{
		Flours: []flour.FlourLot{
			{Name: "bread flour", Protein: p("13 %"), Share: p("50 %")},
			{Name: "flour of the valley", Protein: p("10 %"), Share: p("30 %")},
			{Name: "whole rye", Protein: p("9 %"), Share: p("20 %"), Least: p("20 %"), Most: p("20 %")},
		},
		Target: p("11 %"),
	}.Shares()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(blend.Report().Text(report.Options{}))
	fmt.Println(blend.Working().Answer())
	// Output:
	// A blend of 11.00 % protein
	//
	//    share                       protein
	//   40.0 %  bread flour           13.0 %
	//   40.0 %  flour of the valley   10.0 %
	//   20.0 %  whole rye              9.0 %  held where it is
	// 11.00 %
}

func ExampleFlourBlend_Protein() {
	p := quantity.MustPercent
	fmt.Println(flour.FlourBlend{Flours: []flour.FlourLot{
		{Name: "cake flour", Protein: p("8 %"), Share: p("80 %")}, {Name: "strong flour", Protein: p("14.2 %"),
			Share: p("20 %")},
	}}.Protein())
	// Output:
	// 9.24 % <nil>
}

func ExampleGlutenBoost_Doses() {
	r, err := flour.GlutenBoost{Protein: quantity.MustPercent("10.5 %"), Target: quantity.MustPercent("12.5 %"),
		Flour: quantity.Kilograms(1)}.Doses()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("add", r.Added.Gluten.Text(quantity.Gram, 1), "or replace", r.InPlace.Gluten.Text(quantity.Gram, 1))
	// Output:
	// add 31.9 g or replace 30.9 g
}

// Protein of a European data sheet, on dry matter, for a reader in the US.
func ExampleFlourBasis_Protein() {
	fmt.Println(flour.FlourBasis{Value: quantity.MustPercent("14 %"), From: quantity.MustPercent("0 %"),
		To: quantity.MustPercent("14 %")}.Protein())
	// Output:
	// 12.04 % at 14 % moisture <nil>
}

// A drier flour takes more water than its label says.
func ExampleFlourBasis_Absorption() {
	fmt.Println(flour.FlourBasis{Value: quantity.MustPercent("62 %"), From: quantity.MustPercent("12.5 %"),
		To: quantity.MustPercent("14 %")}.Absorption())
	// Output:
	// 59.22 % at 14 % moisture <nil>
}

func ExampleFlourAsh_Type() {
	n, err := flour.FlourAsh{Ash: quantity.MustPercent("0.47 %"), Moisture: quantity.MustPercent("13.36 %")}.Type()
	fmt.Printf("%.0f %v\n", n, err)
	// Output:
	// 542 <nil>
}

// Is a flour of W 240 strong enough for a dough of 65 % water?
func ExampleFlourStrength_Judge() {
	advice, err := flour.FlourStrength{Hydration: quantity.MustPercent("65 %"), W: 240}.Judge()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(advice)
	fmt.Println(advice.Disagreement)
	fmt.Println(advice.Advice[0])
	// Output:
	// Hydration 65 %: 1 speaks for it, 2 against
	// by one figure this flour is used up to 60 %, by another up to 70 %
	// hold back 5 to 10 points of the water and add it when the dough has formed
}
