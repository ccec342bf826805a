package ferment_test

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// logged is a log of a few bakes of one dough.
func logged(minutes ...int) (log []ferment.LoggedBulk) {
	for _, m := range minutes {
		log = append(log, ferment.LoggedBulk{Bulk: maslin(), Took: quantity.Elapsed(time.Duration(m) * time.Minute)})
	}
	return log
}

func ExampleHeld_Share() {
	share, ok := ferment.Held{Inside: 7, Ranges: 9}.Share()
	fmt.Printf("%v to %v, likely %v %v\n", share.Low, share.High, share.Likely, ok)
	// Output:
	// 56.61 % to 90.38 %, likely 77.78 % true
}

// Two persons learn apart; together they say what a third one starts from.
func ExampleCulture_Merge() {
	ada, err := ferment.Learning{Person: "Ada", Name: "rye", Bakes: logged(480, 470, 495)}.Learn()
	if err != nil {
		fmt.Println(err)
		return
	}
	bo, err := ferment.Learning{Person: "Bo", Name: "wheat", Bakes: logged(450, 465)}.Learn()
	if err != nil {
		fmt.Println(err)
		return
	}
	class, err := ada.Culture.Merge(bo.Culture)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range class.Members() {
		fmt.Println(m.Person, m.Name, m.Bakes)
	}
	fmt.Println(class.Pooled())
	b := maslin()
	b.Culture, err = class.Of("Cy", "first")
	fmt.Println(b.Estimate())
	fmt.Println(err)
	// Output:
	// Ada rye 3
	// Bo wheat 2
	// 5 of 5 ranges held their bakes: that speaks for 75 % to 100 %
	// 75 % rise after 4h59m to 10h12m (80 %), likely 7h03m <nil>
	// <nil>
}

func ExampleCulture_Score() {
	lesson, err := ferment.Learning{Bakes: logged(380, 360, 405, 350, 640)}.Learn()
	fmt.Println(lesson.Culture.Score(), err)
	// Output:
	// 4 of 5 ranges held their bakes: that speaks for 51 % to 94 % <nil>
}
