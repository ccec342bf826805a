package mixing_test

import (
	"fmt"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

func ExampleWaterTable_Water() {
	c := quantity.Celsius
	table := mixing.WaterTable{
		Target: c(25), Warming: quantity.DeltaCelsius(4),
		Flour: []quantity.Temperature{c(18), c(22)}, Room: []quantity.Temperature{c(18), c(24)},
	}
	water, err := table.Water()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(water.Report().Text(report.Options{Width: 100}))
	// Output:
	// how warm the water must be by the factor method, for a dough of 25.0 °C, which mixing warms by
	//   4.0 Δ°C (given)
	//
	//   rows: temperature of the flour; columns: of the room
	//   flour    18.0 °C  24.0 °C
	//   18.0 °C  27.0 °C  21.0 °C
	//   22.0 °C  23.0 °C  17.0 °C
	//   the factor method counts each temperature alike, whatever is weighed; a plan of a bake balances
	//     the heat of what is weighed, and its water may differ from this by some degrees, most in cold
	//     and in hot rooms
}
