package bakeday

import (
	"context"
	"fmt"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

func ExampleBake_KneadedBy() {
	clock := KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: time.FixedZone("Europe/Zurich", 3600)}
	two, err := hall().KneadedBy(context.Background(), clock, mixing.Hand)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(two)
	fmt.Println(two.Changes[1])
	// Output:
	// Maslin for the Saturday lunch, kneaded in two ways
	// for the same dough of 26.0 °C the water must be 28.4 °C instead of 20.4 °C; bulk and timetable stay much the same
}

func ExampleDay_Beside() {
	clock := KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: time.FixedZone("Europe/Zurich", 3600)}
	day, err := hall().Plan(context.Background(), clock)
	if err != nil {
		fmt.Println(err)
		return
	}
	sea := hall()
	sea.Name = "A loaf at the sea"
	sea.Kitchen.Altitude = quantity.Meters(0)
	other, err := sea.Plan(context.Background(), clock)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(day.Beside(other))
	// Output:
	// Maslin for the Saturday lunch beside A loaf at the sea
}
