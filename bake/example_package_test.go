package bake_test

import (
	"fmt"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// Two readings of a loaf in a kitchen at 1,150 m: how long still, and later, is it done?
func Example() {
	goal := bake.Goal{Style: bake.LeanHearth, Place: bake.At(quantity.Meters(1150))}
	left, err := bake.Probe{Goal: goal, Samples: []bake.Sample{
		{At: minute(20), Core: quantity.Celsius(71)},
		{At: minute(26), Core: quantity.Celsius(83)},
	}}.TimeLeft()
	fmt.Println(left, err)

	verdict, err := bake.LoafReading{
		Goal:  goal,
		Core:  quantity.Celsius(94.5),
		Dough: quantity.Grams(886),
		Loaf:  quantity.Grams(785),
	}.Judge()
	fmt.Println(verdict, err)
	// Output:
	// 13m to 19m (80 %), likely 16m, to a core of 94.1 °C; baked out in 13m to 39m (80 %), likely 25m <nil>
	// done: core 94.5 °C, 11.4 % lighter. The color of the crust is yours to judge. <nil>
}
