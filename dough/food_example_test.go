package dough_test

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"github.com/shopspring/decimal"
)

func ExampleSR28() {
	for _, f := range dough.SR28().Search("rye flour") {
		fmt.Println(f, f.Protein, "protein")
	}
	// Output:
	// 20065 Rye flour, light: 11.4 % water 9.82 % protein
	// 20064 Rye flour, medium: 10.97 % water 10.88 % protein
	// 20063 Rye flour, dark: 10.75 % water 15.91 % protein
}

func ExampleNewFoodTable() {
	t, err := dough.NewFoodTable([]dough.Food{{Code: "hall-1", Name: "Soaked rye", Water: quantity.MustPercent("55 %")}})
	f, ok := t.Find("hall-1")
	fmt.Println(f, ok, err)
	// Output:
	// hall-1 Soaked rye: 55 % water true <nil>
}

func ExampleFoodTable_With() {
	t, err := dough.SR28().With(dough.Food{Code: "01077", Name: "Milk from the neighbor", Water: quantity.MustPercent("87 %")})
	f, _ := t.Find("01077")
	fmt.Println(f, err)
	// Output:
	// 01077 Milk from the neighbor: 87 % water <nil>
}

func ExampleWaterIn() {
	table := dough.SR28()
	milk, _ := table.Find("01077")
	egg, _ := table.Find("01123")
	butter, _ := table.Find("01145")
	honey, _ := table.Find("19296")
	water, err := dough.WaterIn([]dough.FoodAmount{
		{Food: milk, Mass: quantity.Grams(150)}, {Food: egg, Mass: quantity.Grams(100)}, {Food: butter, Mass: quantity.Grams(75)}, {Food: honey, Mass: quantity.Grams(20)},
	})
	fmt.Println(water, water.PercentOf(quantity.Grams(500)), err)
	// Output:
	// 225.22 g 45.044 % <nil>
}

func ExampleMassOfVolume() {
	for _, m := range []dough.FillMethod{dough.Sifted, dough.Spooned, dough.Scooped, dough.MethodUnstated} {
		r, err := dough.MassOfVolume(dough.FoodVolume{Food: "bread flour", Volume: quantity.MustVolume("1 cup"), Method: m})
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(r)
	}
	// Output:
	// about 120 g (114 to 127 g, sifted)
	// about 128 g (121 to 134 g, spooned)
	// about 156 g (148 to 164 g, scooped)
	// Method: required: want sifted, spooned or scooped: by method alone a cup of flour differs by a quarter
}

func ExampleWaterMass() {
	m, err := dough.WaterMass(quantity.MustVolume("1 cup"), quantity.Celsius(20))
	fmt.Println(m, err)
	// Output:
	// 236.164057 g <nil>
}

func ExampleConvertYeast() {
	r, err := dough.ConvertYeast(dough.YeastSwap{Mass: quantity.Grams(20), From: dough.KindFreshYeast, To: dough.KindActiveDryYeast})
	fmt.Println(r, err)
	fmt.Print(r.Working().Text(90))
	// Output:
	// 8 g active dry yeast (published: 6.67 to 10.00 g) <nil>
	// Another form of yeast
	// =====================
	//
	// 1. active dry yeast
	//    m_to = m_from × e_to ÷ e_from
	//    where
	//      m_from  20 g  fresh yeast
	//      e_to    40 g  equivalent weight of active dry yeast
	//      e_from  100 g  equivalent weight of fresh yeast
	//    m_to = 20 × 40 ÷ 100
	//    m_to ≈ 8 g
	//    note: published tables give 6.667 g to 10.000 g
	//    source: Hamelman, Bread (2004), yeast conversions
}

func ExampleDoughVolume() {
	v, err := dough.DoughVolume(quantity.Grams(2660), 0)
	fmt.Println(v, err)
	// Output:
	// 2375 mL (2217 to 2533 mL) <nil>
}

func ExampleFillLines() {
	r, err := dough.FillLines(dough.RiseContainer{Diameter: quantity.Centimeters(18), Height: quantity.Centimeters(20), Dough: quantity.Grams(2660)})
	fmt.Println(r, err)
	measured, err := dough.FillLines(dough.RiseContainer{Diameter: quantity.Centimeters(18), Height: quantity.Centimeters(20), Start: quantity.Centimeters(9)})
	fmt.Println(measured, err)
	// Output:
	// start at 9.3 cm, +30 % at 12.1 cm, +50 % at 14.0 cm, +75 % at 16.3 cm, +100 % at 18.7 cm <nil>
	// start at 9.0 cm, +30 % at 11.7 cm, +50 % at 13.5 cm, +75 % at 15.8 cm, +100 % at 18.0 cm <nil>
}

func ExampleFillSample() {
	r, err := dough.FillSample(dough.SampleJar{Diameter: quantity.Centimeters(5), Height: quantity.Centimeters(10)})
	fmt.Println(r, err)
	fmt.Println(r.Notes[0])
	// Output:
	// put in 98 g: start at 4.5 cm, +30 % at 5.8 cm, +50 % at 6.7 cm, +75 % at 7.8 cm, +100 % at 8.9 cm <nil>
	// keep the jar against the bulk: alone it follows the room much faster and tells another story
}

func ExampleProofVesselFor() {
	for _, v := range []dough.ProofVessel{dough.ProofBasket, dough.LinedBowl} {
		r, err := dough.ProofVesselFor(quantity.Grams(885), v)
		fmt.Println(r, err)
	}
	// Output:
	// a basket of 1996 mL (1850 to 2142 mL) for 885 g <nil>
	// a lined bowl of 1322 mL (1190 to 1455 mL) for 885 g <nil>
}

func ExampleDoughForVessel() {
	low, likely, high, err := dough.DoughForVessel(quantity.MustVolume("1.5 qt"), dough.LinedBowl)
	fmt.Printf("%.0f %.0f %.0f %v\n", low, likely, high, err)
	// Output:
	// 864 g 950 g 1056 g <nil>
}

func ExampleTinFactorOf() {
	f, err := dough.TinFactorOf(dough.WholesaleWhite)
	fmt.Printf("%.2f mL/g %v\n", f.Low, err)
	// Output:
	// 4.39 mL/g <nil>
}

func ExampleTinBox() {
	v, err := dough.TinBox(quantity.MustLength("9 in"), quantity.MustLength("5 in"), quantity.MustLength("2.75 in"))
	fmt.Printf("%.0f %v\n", v, err)
	// Output:
	// 2028 mL <nil>
}

func ExampleDoughForTin() {
	r, err := dough.DoughForTin(quantity.Milliliters(1900), dough.RyeTin)
	fmt.Println(r, err)
	// Output:
	// 1000 to 1188 g of dough <nil>
}

func ExampleTinForDough() {
	v, err := dough.TinForDough(quantity.Grams(885), dough.OpenTinWhite)
	fmt.Println(v, err)
	// Output:
	// 2876 mL (2655 to 3098 mL) <nil>
}

func ExampleCost() {
	d := decimal.RequireFromString
	c, err := dough.Cost(dough.CostSheet{
		Lines: []dough.CostLine{
			{Name: "bread flour", Used: quantity.Grams(2444), Price: d("24.50"), Pack: quantity.Kilograms(25)},
			{Name: "whole rye", Used: quantity.Grams(611), Price: d("9.80"), Pack: quantity.Kilograms(5)},
			{Name: "salt", Used: quantity.Grams(61), Price: d("0.89"), Pack: quantity.Kilograms(1)},
		},
		Other: d("3.20"), Loaves: 6, Sold: 5, Unit: quantity.Kilogram, Places: 2,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c)
	for _, l := range c.Lines {
		fmt.Println(l.Name, l.UnitCost.StringFixed(2), l.Cost.StringFixed(2))
	}
	// Output:
	// 6.85 for the batch, 1.14 a loaf, 1.37 for each of the 5 sold
	// bread flour 0.98 2.40
	// whole rye 1.96 1.20
	// salt 0.89 0.05
}

func ExampleUnitCost() {
	flour := dough.UnitPrice{Price: decimal.NewFromInt(20), Pack: quantity.Kilograms(45), Unit: quantity.Kilogram, Places: 2}
	for _, how := range []dough.MoneyRounding{dough.MoneyExact, dough.MoneyUp, dough.MoneyHalfUp} {
		flour.Rounding = how
		d, err := dough.UnitCost(flour)
		fmt.Println(how, d, err)
	}
	// Output:
	// exact 0.444444 <nil>
	// up 0.45 <nil>
	// half up 0.44 <nil>
}

func ExampleUsableYield() {
	y, err := dough.UsableYield(quantity.Grams(5000), quantity.Grams(7750))
	fmt.Println(y.Text(1), err)
	// Output:
	// 64.5 % <nil>
}

func ExampleToBuy() {
	m, err := dough.ToBuy(quantity.MustMass("10 lb"), quantity.MustPercent("75 %"))
	fmt.Println(m.Text(quantity.Pound, 2), err)
	// Output:
	// 13.33 lb <nil>
}
