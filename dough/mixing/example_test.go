package mixing_test

import (
	"fmt"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// The hall kitchen at 1,150 m: flour from the store room, a cool hall, a levain from the shelf.
func hall() mixing.Factors {
	return mixing.Factors{
		Target: quantity.Celsius(25),
		Others: []mixing.Factor{
			{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(18)},
			{Kind: mixing.RoomFactor, Temperature: quantity.Celsius(21)},
			{Kind: mixing.LevainFactor, Temperature: quantity.Celsius(23)},
		},
		Friction: quantity.DeltaCelsius(12),
	}
}

func ExampleFactors_Water() {
	r, err := hall().Water()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r)
	fmt.Print(r.Working().Text(96))
	// Output:
	// water at 26.0 °C
	// Water temperature
	// =================
	//
	// 1. water temperature by the factor method
	//    T_water = T + (T − T_flour) + (T − T_room) + (T − T_levain) − F
	//    where
	//      T         25 °C  dough temperature wanted
	//      T_flour   18 °C  temperature of flour
	//      T_room    21 °C  temperature of room
	//      T_levain  23 °C  temperature of levain
	//      F         12 Δ°C  friction factor for 4 factors
	//    T_water = 25 + (25 − 18) + (25 − 21) + (25 − 23) − 12
	//    T_water = 26.0 °C
	//    source: San Francisco Baking Institute, Artisan I course text, desired dough temperature,
	//      read second-hand
	//
	// In other words
	//   F  how much mixing warms the dough, as a difference of temperatures, counted once for every
	//     factor
	//   desired dough temperature  How warm the dough is to be when it leaves the mixer. Everything
	//     after that is timed by it.
	//   friction factor  How much mixing warms the dough, put as a difference of temperatures. It is a
	//     difference: 24 °F of it are 13.3 °C, not −4.4 °C.
	//   factor  What something is multiplied by: a factor of 2 doubles it. In the factor method for
	//     water each thermometer is a factor.
}

func ExampleFactors_Water_tooCold() {
	in := hall()
	in.Others = []mixing.Factor{
		{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(31)},
		{Kind: mixing.RoomFactor, Temperature: quantity.Celsius(33)},
	}
	in.Friction = quantity.DeltaCelsius(14)
	in.Pour, in.Tap = quantity.Kilograms(1.9), quantity.Celsius(17)
	in.Mixing = quantity.Elapsed(10 * time.Minute)
	r, err := in.Water()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Temperature, r.Feasible)
	for _, m := range r.Remedies {
		fmt.Println("-", m)
	}
	// Output:
	// −3 °C false
	// - replace 393 g of the water with crushed ice and pour 1507 g of tap water
	// - chill the flour to 27.0 °C, with water at 1.0 °C
	// - mix less: a friction factor of 10.0 Δ°C instead of 14.0 Δ°C would do, and folds later, about 7m09s of mixing
	// - take the water at 1.0 °C and expect a dough of 26.3 °C
}

func ExampleMeasured_Friction() {
	r, err := mixing.Measured{
		Dough: quantity.Fahrenheit(75), Water: quantity.Fahrenheit(87),
		Others: []mixing.Factor{
			{Kind: mixing.FlourFactor, Temperature: quantity.Fahrenheit(65)},
			{Kind: mixing.RoomFactor, Temperature: quantity.Fahrenheit(65)},
		},
	}.Friction()
	fmt.Println(r, err)
	// Output:
	// friction factor 4.4 Δ°C for 3 factors (the dough warms by 1.5 Δ°C) <nil>
}

func ExampleFriction_For() {
	four, err := mixing.Friction{Factor: quantity.DeltaFahrenheit(24), Factors: 3}.For(4)
	fmt.Printf("%s %v\n", four.Factor.Text(quantity.FahrenheitScale, 1), err)
	// Output:
	// 32.0 Δ°F <nil>
}

func ExampleIceWater_Replace() {
	r, err := mixing.IceWater{Water: quantity.Kilograms(40), Tap: quantity.Celsius(20),
		Need: quantity.Celsius(10)}.Replace()
	fmt.Println(r, err)
	// Output:
	// replace 4012 g of the water with crushed ice and pour 35988 g of tap water <nil>
}

func ExampleIceWater_Add() {
	r, err := mixing.IceWater{Water: quantity.Kilograms(40), Tap: quantity.Celsius(20),
		Need: quantity.Celsius(10)}.Add()
	fmt.Println(r, err)
	// Output:
	// add 4460 g of crushed ice to 40000 g of tap water <nil>
}

func ExampleMixerKind_Prior() {
	p, err := mixing.Planetary.Prior()
	fmt.Println(p, err)
	fmt.Println(p.Evidence)
	// Output:
	// planetary: friction factor about 12 Δ°C for 3 factors, published from 3 Δ°C to 19 Δ°C <nil>
	// trade figures from 3.3 Δ°C to 19.4 Δ°C, none measured in public; 0.3 Δ°C to 0.5 Δ°C a minute
}

func ExampleMix_Fit() {
	r, err := mixing.Mix{
		Mixer: mixing.Planetary, Bowl: quantity.Liters(7), Dough: quantity.Grams(5320),
		Flour: quantity.Grams(3055), Water: quantity.Grams(2200),
	}.Fit()
	fmt.Println(r, err)
	fmt.Println(r.Absorption.Text(0), r.SecondSpeed, r.Basis)
	for _, n := range r.Notes {
		fmt.Println("-", n)
	}
	// Output:
	// 5320 g of dough is too much: the most is 2800 g to 3990 g; mix 2 batches of 2660 g <nil>
	// 72 % true charts
	// - the charts end at 70 %; a wetter dough is lighter work but splashes and rides up the hook
}
