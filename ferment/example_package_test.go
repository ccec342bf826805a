package ferment_test

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// A dough with 15 % of its flour in the levain, kept at 25 °C: when has it risen by 75 %? And with how much
// levain would it be ready in five hours?
func Example() {
	percent := quantity.MustPercent
	bulk := ferment.Bulk{
		Inoculation: percent("15 %"), Salt: percent("2 %"), Hydration: percent("72 %"), Rise: percent("75 %"),
		History: ferment.Constant(quantity.Celsius(25)), Law: ferment.GasBalance(),
	}
	estimate, err := bulk.Estimate()
	fmt.Println(estimate, err)

	amount, err := bulk.AmountFor(5 * time.Hour)
	fmt.Println(amount, err)
	// Output:
	// 75 % rise after 3h08m to 6h30m (80 %), likely 4h30m <nil>
	// 12.3 % of the flour prefermented: 75 % rise after 3h31m to 7h11m (80 %), likely 5h <nil>
}
