package mixing_test

import (
	"fmt"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// A hot day in the hall kitchen: the water that three factors ask for cannot be poured, and what to do instead.
func Example() {
	celsius := quantity.Celsius
	water, err := mixing.Factors{
		Target: celsius(24.5),
		Others: []mixing.Factor{{Kind: mixing.FlourFactor, Temperature: celsius(31)}, {Kind: mixing.RoomFactor,
			Temperature: celsius(32)}},
		Friction: quantity.DeltaCelsius(13),
		Pour:     quantity.Grams(1740), Tap: celsius(18),
	}.Water()
	fmt.Println(water.Temperature, water.Feasible, err)
	for _, way := range water.Remedies {
		fmt.Println("-", way)
	}
	// Output:
	// −2.5 °C false <nil>
	// - replace 365 g of the water with crushed ice and pour 1375 g of tap water
	// - chill the flour to 27.5 °C, with water at 1.0 °C
	// - mix less: a friction factor of 9.5 Δ°C instead of 13.0 Δ°C would do, and folds later
	// - take the water at 1.0 °C and expect a dough of 25.7 °C
}
