package food_test

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
)

func ExampleSR28() {
	for _, f := range food.SR28().Search("rye flour") {
		fmt.Println(f, f.Protein, "protein")
	}
	// Output:
	// 20065 Rye flour, light: 11.4 % water 9.82 % protein
	// 20064 Rye flour, medium: 10.97 % water 10.88 % protein
	// 20063 Rye flour, dark: 10.75 % water 15.91 % protein
}

func ExampleNewFoodTable() {
	t, err := food.NewFoodTable([]food.Food{{Code: "hall-1", Name: "Soaked rye", Water: quantity.MustPercent("55 %")}})
	f, ok := t.Find("hall-1")
	fmt.Println(f, ok, err)
	// Output:
	// hall-1 Soaked rye: 55 % water true <nil>
}

func ExampleFoodTable_With() {
	t, err := food.SR28().With(food.Food{Code: "01077", Name: "Milk from the neighbor", Water: quantity.MustPercent("87 %")})
	f, _ := t.Find("01077")
	fmt.Println(f, err)
	// Output:
	// 01077 Milk from the neighbor: 87 % water <nil>
}

func ExampleWaterIn() {
	table := food.SR28()
	milk, _ := table.Find("01077")
	egg, _ := table.Find("01123")
	butter, _ := table.Find("01145")
	honey, _ := table.Find("19296")
	water, err := food.WaterIn([]food.FoodAmount{
		{Food: milk, Mass: quantity.Grams(150)}, {Food: egg, Mass: quantity.Grams(100)}, {Food: butter, Mass: quantity.Grams(75)}, {Food: honey, Mass: quantity.Grams(20)},
	})
	fmt.Println(water, water.PercentOf(quantity.Grams(500)), err)
	// Output:
	// 225.22 g 45.044 % <nil>
}

func ExampleMassOfVolume() {
	for _, m := range []food.FillMethod{food.Sifted, food.Spooned, food.Scooped, food.MethodUnstated} {
		r, err := food.MassOfVolume(food.FoodVolume{Food: "bread flour", Volume: quantity.MustVolume("1 cup"), Method: m})
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
	m, err := food.WaterMass(quantity.MustVolume("1 cup"), quantity.Celsius(20))
	fmt.Println(m, err)
	// Output:
	// 236.164057 g <nil>
}

func ExampleConvertYeast() {
	r, err := food.ConvertYeast(food.YeastSwap{Mass: quantity.Grams(20), From: dough.KindFreshYeast, To: dough.KindActiveDryYeast})
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
