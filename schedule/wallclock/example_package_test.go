package wallclock_test

import (
	"fmt"
	"time"

	"example.org/maslin/schedule/wallclock"
)

// The night the clocks go back: half past two comes twice, and the rule says which one is meant.
func Example() {
	zone, err := time.LoadLocation("Europe/Zurich")
	if err != nil {
		fmt.Println(err)
		return
	}
	m, err := wallclock.ParseMoment("2026-10-25 02:30")
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := wallclock.Resolve(m, zone, wallclock.RFC5545)
	fmt.Println(r, err)
	// Output:
	// Sun 2026-10-25 02:30 +02:00 (shown twice) <nil>
}
