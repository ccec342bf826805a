package working_test

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A range whose ends are shown alike is shown as one value.
func TestARangeOfNothingIsOneValue(t *testing.T) {
	quarter := 15 * time.Minute
	c := quantity.Celsius
	for _, x := range []struct {
		v    any
		want string
	}{
		{quantity.TimeRange{Early: quarter, Likely: quarter, Late: quarter, Probability: quantity.NewPercent(80)}, "15m"},
		{quantity.TimeRange{Early: quarter, Likely: quarter, Late: 2 * quarter, Probability: quantity.NewPercent(80)},
			"15m to 30m (80 %), likely 15m"},
		{quantity.Range[quantity.Temperature]{Low: c(25.21), High: c(25.24)}, "25.2 °C"},
		{quantity.Range[quantity.Temperature]{Low: c(25.21), High: c(26)}, "25.2 °C to 26.0 °C"},
	} {
		verb := "%v"
		if r, ok := x.v.(quantity.TimeRange); ok {
			if r.String() != x.want {
				t.Errorf("%q, want %q", r.String(), x.want)
			}
		} else {
			verb = "%.1f"
		}
		if got := working.Say(verb, x.v).String(); got != x.want {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
}
