package cost_test

import (
	"fmt"

	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

func ExampleCostSheet_Cost() {
	d := decimal.RequireFromString
	c, err := cost.CostSheet{
		Lines: []cost.CostLine{
			{Name: "bread flour", Used: quantity.Grams(2444), Price: d("24.50"), Pack: quantity.Kilograms(25)},
			{Name: "whole rye", Used: quantity.Grams(611), Price: d("9.80"), Pack: quantity.Kilograms(5)},
			{Name: "salt", Used: quantity.Grams(61), Price: d("0.89"), Pack: quantity.Kilograms(1)},
		},
		Other: d("3.20"), Loaves: 6, Sold: 5, Unit: quantity.Kilogram, Places: 2,
	}.Cost()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c)
	for _, l := range c.Lines {
		fmt.Println(l.Name, l.UnitCost.StringFixed(2), l.Cost.StringFixed(2))
	}
	// Output:
	// 6.85 for 6 loaves, 1.14 each
	// bread flour 0.98 2.40
	// whole rye 1.96 1.20
	// salt 0.89 0.05
}

// The trade rounds unit costs up: 20.00 for 45 kg is 0.45 a kilogram, exactly 0.444. Over a year of flour that is not
// small.
func ExampleMoneyRounding() {
	sheet := cost.CostSheet{
		Lines: []cost.CostLine{{Name: "flour", Used: quantity.Kilograms(1), Price: decimal.NewFromInt(20),
			Pack: quantity.Kilograms(45)}},
		Loaves: 1, Unit: quantity.Kilogram,
	}
	for _, how := range []cost.MoneyRounding{cost.MoneyExact, cost.MoneyUp, cost.MoneyHalfUp} {
		sheet.UnitRounding = how
		c, err := sheet.Cost()
		fmt.Println(how, c.Lines[0].UnitCost, err)
	}
	// Output:
	// exact 0.444444 <nil>
	// up 0.45 <nil>
	// half up 0.44 <nil>
}

func ExampleTrimming_UsableYield() {
	y, err := cost.Trimming{Usable: quantity.Grams(5000), Bought: quantity.Grams(7750)}.UsableYield()
	fmt.Println(y.Text(1), err)
	// Output:
	// 64.5 % <nil>
}

func ExampleTrimming_ToBuy() {
	m, err := cost.Trimming{Usable: quantity.MustMass("10 lb"), Yield: quantity.MustPercent("75 %")}.ToBuy()
	fmt.Println(m.Text(quantity.Pound, 2), err)
	// Output:
	// 13.33 lb <nil>
}

// A price list is read without its currency.
func ExampleParseMoney() {
	price, err := cost.ParseMoney("28,50")
	fmt.Println(price.StringFixed(2), err)
	// Output: 28.50 <nil>
}
