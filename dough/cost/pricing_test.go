package cost_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

func used(name string, grams float64) cost.CostLine {
	return cost.CostLine{Name: name, Used: quantity.Grams(grams)}
}

func pays(name, price, pack string) cost.PackPrice {
	return cost.PackPrice{Name: name, Pays: decimal.RequireFromString(price), Pack: quantity.MustMass(pack)}
}

func ExamplePricing_Priced() {
	sheet, err := cost.Pricing{
		Sheet:  cost.CostSheet{Loaves: 2, Lines: []cost.CostLine{used("wheat", 800), used("salt", 20), used("wheat", 200)}},
		Prices: []cost.PackPrice{pays("Wheat", "20", "25 kg"), pays("salt", "0.90", "1 kg")},
	}.Priced()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sheet.Lines[0].Used, sheet.Lines[0].Pack, len(sheet.Lines))
	fmt.Println(sheet.Cost())
	// Output:
	// 1000 g 25000 g 2
	// 0.82 for 2 loaves, 0.41 each <nil>
}

// What is told of an ingredient finds its line or says which there are; all that is wrong is said at once.
func TestPricesFindTheirLines(t *testing.T) {
	water := used("water", 700)
	water.Pack = quantity.Kilograms(1)
	in := cost.Pricing{
		Sheet: cost.CostSheet{Lines: []cost.CostLine{used("bread flour", 1000), water, used("salt", 20), used("seeds", 50)}},
		Prices: []cost.PackPrice{pays("bred flour", "1", "1 kg"), pays("salt", "1", "1 kg"), pays("SALT", "2", "1 kg"),
			pays("seeds", "2", "0 g")},
		Yields: []cost.UsablePart{{Name: "walnuts", Of: quantity.NewPercent(95)}, {Name: "seeds"}},
	}
	_, err := in.Priced()
	var got []string
	for _, e := range quantity.InputErrors(err) {
		got = append(got, e.Error())
	}
	want := []string{
		`prices[0].name: inconsistent: got "bred flour", want one of bread flour, water, salt, seeds; ` +
			`did you mean bread flour?`,
		`prices[2].name: inconsistent: got a second price of "SALT", want one price for each ingredient`,
		`prices[3].pack: out of range: got 0 g, want a pack above 0 g`,
		`yields[0].name: inconsistent: got "walnuts", want one of bread flour, water, salt, seeds`,
		`yields[1].of: out of range: got 0 %, want 1 % to 100 %`,
		`prices: required: got no price of bread flour, want ` +
			`what a pack of each costs and weighs, such as 20 for 25 kg of bread flour`,
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	in.Prices = []cost.PackPrice{pays("bread flour", "1", "1 kg"), pays("salt", "1", "1 kg"), pays("seeds", "2", "1 kg"),
		pays("water", "0.002", "1 kg")}
	in.Yields = []cost.UsablePart{{Name: "Seeds", Of: quantity.NewPercent(95)}}
	sheet, err := in.Priced()
	if err != nil || sheet.Lines[3].Yield != quantity.NewPercent(95) || !sheet.Lines[1].Price.Equal(decimal.New(2, -3)) ||
		len(in.Sheet.Lines) != 4 || !in.Sheet.Lines[0].Price.IsZero() {
		t.Errorf("%+v, %v", sheet, err)
	}
	in.Prices = in.Prices[:2]
	if _, err := in.Priced(); !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
}
