package vessel_test

import (
	"fmt"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
)

func ExampleMixedDough_Volume() {
	fmt.Println(vessel.MixedDough{Mass: quantity.Grams(2660)}.Volume())
	// Output:
	// 2660 g of dough takes about 2375 mL as it leaves the mixer (2217 mL to 2533 mL) <nil>
}

func ExampleRiseContainer_Marks() {
	tub := vessel.RiseContainer{Diameter: quantity.Centimeters(18), Height: quantity.Centimeters(20),
		Dough: quantity.Grams(2660)}
	marks, err := tub.Marks()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range marks.Marks {
		fmt.Println(m.Rise, m.Height.Text(quantity.Centimeter, 1), m.Above)
	}
	tub.Start = quantity.Centimeters(9) // measured
	fmt.Println(tub.Marks())
	// Output:
	// 30 % 12.1 cm false
	// 50 % 14.0 cm false
	// 75 % 16.3 cm false
	// 100 % 18.7 cm false
	// From the floor: start at 9.0 cm, +100 % at 18.0 cm <nil>
}

func ExampleSampleJar_Sample() {
	r, err := vessel.SampleJar{Diameter: quantity.Centimeters(5), Height: quantity.Centimeters(10)}.Sample()
	fmt.Println(r, err)
	fmt.Println(r.Notes[0])
	// Output:
	// Put 99 g of dough into the jar <nil>
	// keep the jar against the bulk: alone it follows the room much faster and tells another story
}

func ExampleProofing_Size() {
	for _, v := range []vessel.ProofVessel{vessel.ProofBasket, vessel.LinedBowl} {
		fmt.Println(vessel.Proofing{Vessel: v, Dough: quantity.Grams(885)}.Size())
	}
	// Output:
	// A proofing basket of about 1770 mL for 885 g of dough (1416 mL to 2301 mL) <nil>
	// A bowl lined with a cloth of about 1593 mL for 885 g of dough (1322 mL to 2301 mL) <nil>
}

func ExampleProofing_Fill() {
	fmt.Println(vessel.Proofing{Vessel: vessel.LinedBowl, Volume: quantity.MustVolume("1.5 qt")}.Fill())
	// Output:
	// About 789 g of dough for a bowl, lined with a cloth, of 1420 mL (546 g to 950 g) <nil>
}

// A round basket by its sides.
func ExampleProofing_Fill_basket() {
	cm := quantity.Centimeters
	fmt.Println(vessel.Proofing{Diameter: cm(22), Depth: cm(8.5)}.Fill())
	// Output:
	// About 969 g of dough for a proofing basket of 1937 mL (745 g to 1211 g) <nil>
}

func ExampleSizedPiece_Dough() {
	cm := quantity.Centimeters
	fmt.Println(vessel.SizedPiece{Bread: vessel.TallFocaccia, Length: cm(40), Width: cm(30)}.Dough())
	fmt.Println(vessel.SizedPiece{Bread: vessel.NeapolitanPizza, Diameter: cm(32)}.Dough())
	fmt.Println(vessel.SizedPiece{Bread: vessel.Baguette, Length: cm(40)}.Dough())
	// Output:
	// About 1080 g of dough for a tall focaccia of 40.0 cm × 30.0 cm (960 g to 1200 g) <nil>
	// About 225 g of dough for a Neapolitan pizza of 32.0 cm (185 g to 249 g) <nil>
	// About 216 g of dough for a baguette of 40.0 cm (192 g to 240 g) <nil>
}

func ExampleSizedPiece_Size() {
	fmt.Println(vessel.SizedPiece{Bread: vessel.NeapolitanPizza, Mass: quantity.Grams(250)}.Size())
	// Output:
	// 250 g of dough makes a Neapolitan pizza about 33.7 cm across (32.0 cm to 37.2 cm) <nil>
}

// As the trade fills a shallow home tin.
func ExampleTinBox_Fill() {
	in := quantity.MustLength
	fmt.Println(vessel.TinBox{Length: in("9 in"), Width: in("5 in"), Height: in("2.75 in")}.Fill(vessel.OpenTinWhite))
	// Output:
	// About 845 g of dough for a tin of 2028 mL (634 g to 922 g) <nil>
}

func ExampleTinLoaf_Factor() {
	f, err := vessel.WholesaleWhite.Factor()
	fmt.Printf("%.2f mL/g %v\n", f.Likely, err)
	// Output:
	// 4.39 mL/g <nil>
}

// Mine takes 450 g: what does the other one take?
func ExampleOwnTin_Factor() {
	mine, err := vessel.OwnTin{Volume: quantity.Milliliters(1440), Dough: quantity.Grams(450)}.Factor()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(mine.Fill(quantity.Milliliters(2360)))
	// Output:
	// 738 g of dough for a tin of 2360 mL <nil>
}

func ExampleTinBox_Volume() {
	in := quantity.MustLength
	box := vessel.TinBox{Length: in("8.5 in"), Width: in("4.5 in"), Height: in("2.6 in")}
	straight, err := box.Volume()
	fmt.Printf("%.0f %v\n", straight, err)
	box.BaseLength, box.BaseWidth = in("7.5 in"), in("3.5 in")
	tapered, err := box.Volume()
	fmt.Printf("%.0f %v\n", tapered, err)
	// Output:
	// 1630 mL <nil>
	// 1367 mL <nil>
}

func ExampleTinFactor_Fill() {
	f, err := vessel.RyeTin.Factor()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Fill(quantity.Milliliters(1900)))
	// Output:
	// About 1118 g of dough for a tin of 1900 mL (950 g to 1357 g) <nil>
}

func ExampleTinFactor_Tin() {
	f, err := vessel.OpenTinWhite.Factor()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Tin(quantity.Grams(885)))
	// Output:
	// A tin of about 2655 mL for 885 g of dough (2124 mL to 3098 mL) <nil>
}
