package working_test

import (
	"fmt"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// One step of a derivation, as a result of the library gives it, printed for a terminal.
func Example() {
	d := working.Derive(working.Say("Dough for a loaf"))
	baked := working.Given("B", working.Say("baked and cool"), quantity.Grams(780))
	loss := working.Given("L", working.Say("loss in the oven"), quantity.MustPercent("12 %"))
	d.Find(working.Finding{
		Name: working.Say("scaling weight"), Symbol: "D", By: baked.Over(working.Num(1).Minus(loss.Share())),
		Unit: working.Gram, Decimals: 3, Source: working.Algebra(),
	})
	fmt.Print(d.Working().Text(80))
	// Output:
	// Dough for a loaf
	// ================
	//
	// 1. scaling weight
	//    D = B ÷ (1 − L ÷ 100)
	//    where
	//      B  780 g  baked and cool
	//      L  12 %  loss in the oven
	//    D = 780 ÷ (1 − 12 ÷ 100)
	//    D ≈ 886.364 g
	//    source: arithmetic on the values above [computed]
}
