package working_test

import (
	"fmt"

	"example.org/maslin/dough/working"
)

// One step of a derivation, as a result of the library gives it, printed for a terminal.
func Example() {
	w := working.Working{Title: "Dough for a loaf", Steps: []working.Step{{
		Name: "scaling weight", Symbol: "D", Formula: "B ÷ (1 − L ÷ 100)",
		Where: []working.Binding{
			{Symbol: "B", Meaning: "baked and cool", Value: "780 g"},
			{Symbol: "L", Meaning: "loss in the oven", Value: "12 %"},
		},
		Numbers: "780 ÷ (1 − 12 ÷ 100)", Value: "886.364 g", Source: working.Algebra(),
	}}}
	fmt.Print(w.Text(80))
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
