package food_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
)

func ExampleSaidAmount_OtherUnits() {
	said, err := food.ReadAmount("1 lb 4 oz")
	if err != nil {
		fmt.Println(err)
		return
	}
	in, err := said.OtherUnits()
	fmt.Println(in.Units, err)
	// Output: [{grams 566.99 g} {kilograms 0.5670 kg} {ounces 20.000 oz} {pounds 1.2500 lb}] <nil>
}

func ExampleSaidAmount_Yeast() {
	said, _ := food.ReadAmount("20 g fresh yeast")
	swap, yes := said.Yeast()
	fmt.Println(swap.Mass, swap.From, yes)
	// Output: 20 g fresh yeast true
}

func TestReadAmount(t *testing.T) {
	for text, want := range map[string]food.SaidAmount{
		"2cups":                    {Amount: "2cups"},
		"2 1/4 tsp instant yeast":  {Amount: "2 1/4 tsp", Of: "instant yeast"},
		"  375F ":                  {Amount: "375F"},
		"1 lb 4 oz fresh yeast":    {Amount: "1 lb 4 oz", Of: "fresh yeast"},
		"10 dC":                    {Amount: "10 dC"},
		"250 mL of buttermilk":     {Amount: "250 mL", Of: "of buttermilk"},
		"9 in":                     {Amount: "9 in"},
		"1 1/2 cups sifted flours": {Amount: "1 1/2 cups", Of: "sifted flours"},
	} {
		got, err := food.ReadAmount(text)
		if err != nil || got != want {
			t.Errorf("%q: %+v, %v", text, got, err)
			continue
		}
		_, err = got.OtherUnits()
		if bare := got.Of == ""; (err == nil) != bare || !bare && !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q: %v", text, err)
		}
	}
	for _, text := range []string{"", "honey", "3", "a b c d e f 3 g"} {
		if got, err := food.ReadAmount(text); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
	}
	if _, err := (food.SaidAmount{Amount: "much"}).OtherUnits(); !errors.Is(err, quantity.ErrUnit) {
		t.Error(err)
	}
}

func TestSaidYeast(t *testing.T) {
	for of, want := range map[string]dough.Kind{
		"dry": dough.KindActiveDryYeast, "Active-Dry  yeast": dough.KindActiveDryYeast, "instant": dough.KindInstantYeast,
		"honey": 0, "": 0, "yeast": 0,
	} {
		swap, yes := food.SaidAmount{Amount: "5 g", Of: of}.Yeast()
		if yes != (want != 0) || swap.From != want {
			t.Errorf("%q: %+v, %v", of, swap, yes)
		}
	}
	if _, yes := (food.SaidAmount{Amount: "2 tsp", Of: "fresh yeast"}).Yeast(); yes {
		t.Error("a volume is no weight")
	}
}
