package bakeday_test

import (
	"context"
	"encoding/json"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// Two loaves for Saturday noon, written down as JSON: what to pour, and when to do what.
func Example() {
	const written = `{
		"name": "Hall loaf", "wanted": "Saturday 12:00", "salt": "2 %",
		"loaves": {"pieces": 2, "baked": "700 g", "style": "lean hearth"},
		"flour":  [{"name": "bread flour", "percent": "80 %", "kind": "wheat"}, {"name": "whole rye", "percent": "20 %", "kind": "whole rye"}],
		"liquid": [{"name": "water", "percent": "70 %"}],
		"levain": {"prefermented": "10 %", "hydration": "100 %", "inoculation": "50 %"},
		"mixing": {"temperature": "25 °C", "mixer": "hand"},
		"bulk":   {"rise": "75 %"},
		"retard": {"at_least": "8 h", "at_most": "14 h"},
		"oven":   {"temperature": "240 °C", "pots": 2, "preheat": "45 min", "covered": "20 min", "uncovered": "18 min"},
		"kitchen": {"zone": "Europe/Zurich", "asleep": ["22:30 to 06:30"], "altitude": "1150 m",
			"day": "21 °C", "refrigerator": "4 °C", "tap": "10 °C"}
	}`
	var bake bakeday.Bake
	if err := json.Unmarshal([]byte(written), &bake); err != nil {
		fmt.Println(err)
		return
	}
	zone, err := time.LoadLocation(bake.Kitchen.Zone)
	if err != nil {
		fmt.Println(err)
		return
	}
	now := time.Date(2026, 11, 25, 19, 0, 0, 0, zone)
	day, err := bake.Plan(context.Background(), bakeday.KitchenClock{Now: now, Zone: zone})
	if err != nil {
		fmt.Println(err)
		return
	}
	sheet := day.Data()
	fmt.Println("pour water of", sheet.Water.Temperature.Text(quantity.CelsiusScale, 0))
	for _, s := range sheet.Steps {
		if s.Hands {
			fmt.Println(s.Start.Format("Mon 15:04"), s.Name)
		}
	}
	// Output:
	// pour water of 27 °C
	// Fri 06:31 feed the levain
	// Fri 15:28 mix the dough
	// Fri 19:54 divide and shape
	// Sat 09:04 bake
	// Sat 09:24 lid off, away from you
}
