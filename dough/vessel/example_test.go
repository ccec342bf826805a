package vessel_test

import (
	"fmt"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
)

func ExampleDoughVolume() {
	v, err := vessel.DoughVolume(quantity.Grams(2660), 0)
	fmt.Println(v, err)
	// Output:
	// 2375 mL (2217 to 2533 mL) <nil>
}

func ExampleFillLines() {
	r, err := vessel.FillLines(vessel.RiseContainer{Diameter: quantity.Centimeters(18), Height: quantity.Centimeters(20), Dough: quantity.Grams(2660)})
	fmt.Println(r, err)
	measured, err := vessel.FillLines(vessel.RiseContainer{Diameter: quantity.Centimeters(18), Height: quantity.Centimeters(20), Start: quantity.Centimeters(9)})
	fmt.Println(measured, err)
	// Output:
	// start at 9.3 cm, +30 % at 12.1 cm, +50 % at 14.0 cm, +75 % at 16.3 cm, +100 % at 18.7 cm <nil>
	// start at 9.0 cm, +30 % at 11.7 cm, +50 % at 13.5 cm, +75 % at 15.8 cm, +100 % at 18.0 cm <nil>
}

func ExampleFillSample() {
	r, err := vessel.FillSample(vessel.SampleJar{Diameter: quantity.Centimeters(5), Height: quantity.Centimeters(10)})
	fmt.Println(r, err)
	fmt.Println(r.Notes[0])
	// Output:
	// put in 98 g: start at 4.5 cm, +30 % at 5.8 cm, +50 % at 6.7 cm, +75 % at 7.8 cm, +100 % at 8.9 cm <nil>
	// keep the jar against the bulk: alone it follows the room much faster and tells another story
}

func ExampleProofVesselFor() {
	for _, v := range []vessel.ProofVessel{vessel.ProofBasket, vessel.LinedBowl} {
		r, err := vessel.ProofVesselFor(quantity.Grams(885), v)
		fmt.Println(r, err)
	}
	// Output:
	// a basket of 1996 mL (1850 to 2142 mL) for 885 g <nil>
	// a lined bowl of 1322 mL (1190 to 1455 mL) for 885 g <nil>
}

func ExampleDoughForVessel() {
	low, likely, high, err := vessel.DoughForVessel(quantity.MustVolume("1.5 qt"), vessel.LinedBowl)
	fmt.Printf("%.0f %.0f %.0f %v\n", low, likely, high, err)
	// Output:
	// 864 g 950 g 1056 g <nil>
}

func ExampleTinFactorOf() {
	f, err := vessel.TinFactorOf(vessel.WholesaleWhite)
	fmt.Printf("%.2f mL/g %v\n", f.Low, err)
	// Output:
	// 4.39 mL/g <nil>
}

func ExampleTinBox() {
	v, err := vessel.TinBox(quantity.MustLength("9 in"), quantity.MustLength("5 in"), quantity.MustLength("2.75 in"))
	fmt.Printf("%.0f %v\n", v, err)
	// Output:
	// 2028 mL <nil>
}

func ExampleDoughForTin() {
	r, err := vessel.DoughForTin(quantity.Milliliters(1900), vessel.RyeTin)
	fmt.Println(r, err)
	// Output:
	// 1000 to 1188 g of dough <nil>
}

func ExampleTinForDough() {
	v, err := vessel.TinForDough(quantity.Grams(885), vessel.OpenTinWhite)
	fmt.Println(v, err)
	// Output:
	// 2876 mL (2655 to 3098 mL) <nil>
}
