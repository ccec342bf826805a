package quantity_test

import (
	"encoding/json"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/shopspring/decimal"
)

func ExampleParseTemperature() {
	warm, _ := quantity.ParseTemperature("77 °F")
	fmt.Println(warm, warm == quantity.Celsius(25))
	_, err := quantity.ParseTemperature("77")
	fmt.Println(err)
	// Output:
	// 25 °C true
	// unit: got "77" without a unit, want a temperature with its scale, such as "24.5 °C", "76 °F" or "297.65 K"
}

// A friction factor is a difference: it converts by 5/9, with no offset.
func ExampleDeltaFahrenheit() {
	friction := quantity.DeltaFahrenheit(24)
	fmt.Println(friction)
	fmt.Println(quantity.Celsius(20).Add(friction))
	// Output:
	// 13.333 Δ°C
	// 33.333 °C
}

func ExampleApportion() {
	shares := []quantity.Percent{
		quantity.MustPercent("100 %"), quantity.MustPercent("70 %"),
		quantity.MustPercent("2 %"), quantity.MustPercent("0.2 %"),
	}
	parts, _ := quantity.Apportion(quantity.Grams(900), shares)
	fmt.Println(parts, quantity.Sum(parts...))
	// Output: [522.648084 g 365.853658 g 10.452962 g 1.045296 g] 900 g
}

func ExampleApportionLike() {
	parts, _ := quantity.ApportionLike(quantity.Grams(1000), []quantity.Mass{quantity.Grams(2), quantity.Grams(1)})
	fmt.Println(parts)
	// Output: [666.666667 g 333.333333 g]
}

func ExampleMass_RoundTo() {
	rounded, residue := quantity.MustMass("522.648 g").RoundTo(quantity.Grams(1))
	fmt.Println(rounded, residue)
	// Output: 523 g −0.352 g
}

func ExamplePercent_Of() {
	fmt.Println(quantity.MustPercent("2 %").Of(quantity.Kilograms(3)))
	// Output: 60 g
}

// The flour in 3 kg of dough whose percentages add up to 377.5 %.
func ExampleMass_Over() {
	fmt.Println(quantity.Grams(3000).Over(quantity.MustPercent("377.5 %")))
	// Output: 794.701987 g
}

func ExampleMass_PercentOf() {
	fmt.Println(quantity.Grams(350).PercentOf(quantity.Grams(525)))
	// Output: 66.666667 %
}

func ExampleMassOf() {
	m, err := quantity.MassOf(decimal.New(1234567, -6), quantity.Kilogram)
	fmt.Println(m, err)
	_, err = quantity.MassOf(decimal.New(1, -9), quantity.Gram)
	fmt.Println(err)
	// Output:
	// 1234.567 g <nil>
	// too precise: got "0.000000001", want at most 6 decimals of g
}

func ExampleProblems() {
	var problems quantity.Problems
	quantity.Check(&problems, "Room", quantity.Celsius(400), quantity.Celsius(-40), quantity.Celsius(60))
	problems.Required("Flours", quantity.Tell("test.want_at_least_one_flour", "at least one flour"))
	fmt.Println(problems.Err())
	// Output:
	// Room: out of range: got 400 °C, want −40 °C to 60 °C
	// Flours: required: want at least one flour
}

func Example_json() {
	type note struct {
		Loaf quantity.Mass
		Core quantity.Temperature
		Bulk quantity.Elapsed
	}
	text, _ := json.Marshal(note{quantity.Grams(780), quantity.Fahrenheit(203), quantity.Elapsed(5_400_000_000_000)})
	fmt.Println(string(text))
	// Output: {"Loaf":"780 g","Core":"95 °C","Bulk":"1h30m"}
}

// What goes into a file or a message comes back exactly, whatever unit it was read in.
func ExampleTemperature_marshal() {
	core := quantity.Fahrenheit(75)
	text, _ := core.MarshalText()
	back, _ := quantity.ParseTemperature(string(text))
	fmt.Println(core, string(text), back == core)
	// Output: 23.889 °C 23.8889 °C true
}

func ExampleRange() {
	core := quantity.Range[quantity.Temperature]{Low: quantity.Celsius(93), High: quantity.Celsius(96)}
	text, _ := json.Marshal(core)
	fmt.Println(core, string(text), core.Contains(quantity.Celsius(94.5)))
	// Output: 93 °C to 96 °C {"low":"93 °C","high":"96 °C"} true
}

func ExampleWindow() {
	six := time.Date(2026, 11, 28, 6, 0, 0, 0, time.UTC)
	w := quantity.Window{From: six, To: six.Add(40 * time.Minute)}
	fmt.Println(w, w.Contains(six.Add(time.Hour)))
	// Output: Sat 2026-11-28 06:00 to 06:40 false
}

func ExampleTimeRange() {
	ready := quantity.TimeRange{
		Early: 310 * time.Minute, Likely: 370 * time.Minute, Late: 445 * time.Minute, Probability: quantity.NewPercent(80),
	}
	text, _ := json.Marshal(ready)
	fmt.Println(ready)
	fmt.Println(string(text))
	// Output:
	// 5h10m to 7h25m (80 %), likely 6h10m
	// {"early":"5h10m","likely":"6h10m","late":"7h25m","probability":"80 %"}
}

func ExampleValues() {
	fmt.Println(quantity.Values[quantity.MassUnit]())
	// Output: [g kg mg oz lb]
}

// A store that keeps the exact integer loses nothing either.
func ExampleMillionths() {
	n, ok := quantity.MustPercent("68.5 %").Millionths()
	fmt.Println(n, ok, quantity.Millionths(n))
	// Output: 68500000 true 68.5 %
}
