package quantity_test

import (
	"fmt"

	"example.org/maslin/dough/quantity"
)

// A dough of a kilogram of flour is split by its percentages; the parts add up to the microgram. A
// friction factor is a difference of temperatures, and no temperature.
func Example() {
	dough := quantity.Kilograms(1.74)
	shares := []quantity.Percent{quantity.NewPercent(100), quantity.NewPercent(72), quantity.NewPercent(2)}
	parts, err := quantity.Apportion(dough, shares)
	fmt.Println(parts, quantity.Sum(parts...) == dough, err)

	room, err := quantity.ParseTemperature("72 °F")
	friction := quantity.DeltaFahrenheit(24)
	fmt.Printf("%.1f, warmed by %.1f: %.1f, %v\n", room, friction, room.Add(friction), err)

	_, err = quantity.ParseMass("500")
	fmt.Println(err)
	// Output:
	// [1000 g 720 g 20 g] true <nil>
	// 22.2 °C, warmed by 13.3 Δ°C: 35.6 °C, <nil>
	// unit: got "500" without a unit, want a mass with its unit, such as "780 g", "1.2 kg", "500 mg", "4 oz", "1 lb" or "1 lb 4 oz"
}
