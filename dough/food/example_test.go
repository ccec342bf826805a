package food_test

import (
	"fmt"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

func ExampleSearch() {
	for _, f := range food.Search("rye flour") {
		fmt.Println(f, f.Protein, "protein")
	}
	// Output:
	// 20065 Rye flour, light: 11.4 % water 9.82 % protein
	// 20064 Rye flour, medium: 10.97 % water 10.88 % protein
	// 20063 Rye flour, dark: 10.75 % water 15.91 % protein
}

func ExampleFood_InPlaceOfWater() {
	milk, _ := food.Find("Milk, whole")
	m, err := milk.InPlaceOfWater(quantity.Grams(150))
	fmt.Println(m.Text(quantity.Gram, 1), err)
	// Output:
	// 170.2 g <nil>
}

func ExampleFoodVolume_Weight() {
	for _, m := range []food.FillMethod{food.Sifted, food.Spooned, food.Scooped, 0} {
		r, err := food.FoodVolume{Food: "bread flour", Volume: quantity.MustVolume("1 cup"), Method: m}.Weight()
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v: %.0f to %.0f, likely %.0f\n", m, r.Mass.Low, r.Mass.High, r.Mass.Likely)
	}
	// Output:
	// sifted: 114 g to 127 g, likely 120 g
	// spooned: 121 g to 134 g, likely 128 g
	// scooped: 148 g to 164 g, likely 156 g
	// method: required: want sifted, spooned or scooped: by method alone a cup of flour differs by a quarter
}

func ExampleYeastSwap_Convert() {
	r, err := food.YeastSwap{Mass: quantity.Grams(20), From: dough.KindFreshYeast}.Convert()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(r.Report().Text(report.Options{}))
	// Output:
	// In place of 20 g of fresh yeast
	//
	//   weight  form              published tables
	//      8 g  active dry yeast  6.67 g to 10 g
	//    6.6 g  instant yeast     6.6 g to 8.33 g
	//   · yeasts differ as much as the tables do: watch the dough
	//   · fresh yeast is two thirds water, dry yeast has next to none
}

func ExampleReadVolume() {
	for _, text := range []string{"2 1/4 tsp instant yeast", "½ cup of honey", "a pinch of salt", "3 large eggs"} {
		v, err := food.ReadVolume(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(v.Weight())
	}
	// Output:
	// 11 mL of instant yeast weighs about 7 g (6.9 g to 7.1 g) <nil>
	// 118 mL of honey weighs about 170 g (163 g to 173 g) <nil>
	// 0.31 mL of salt weighs about 0.38 g (0.37 g to 0.39 g) <nil>
	// 146 mL of egg weighs about 150 g (147 g to 153 g) <nil>
}

// A custard off the heat at two in the afternoon.
func ExampleChilledFood_Limits() {
	made := time.Date(2026, 11, 28, 14, 0, 0, 0, time.UTC)
	plan, err := food.ChilledFood{Kind: food.Cooked, Made: made}.Limits()
	fmt.Println(plan, err)
	for _, l := range plan.Limits {
		fmt.Println(l.By.Format("Mon 15:04"), l.To)
	}
	// Output:
	// down to 21 °C within 2h and to 5 °C within 6h in all <nil>
	// Sat 16:00 21 °C
	// Sat 20:00 5 °C
	// Wed 14:00 no temperature
}
