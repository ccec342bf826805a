package bakeday

import (
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
	"pgregory.net/rapid"
)

// A temperature in the data is shown as the temperature itself is.
func TestDataRoundToWhatIsShown(t *testing.T) {
	for _, c := range []struct{ is, goesOut float64 }{{21.25031, 21.2503}, {21.34567, 21.346}, {21.25, 21.25}} {
		if got := thousandths(quantity.Celsius(c.is)).Celsius(); !(math.Abs(got-c.goesOut) <= 1.0/18000) { // half a quantum
			t.Errorf("%v °C goes out as %v", c.is, got)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		near := float64(rapid.IntRange(-400, 3000).Draw(t, "twentieths")) / 20
		c := quantity.Celsius(near + float64(rapid.IntRange(-900, 900).Draw(t, "off"))*1e-6)
		for places := range 2 {
			got, want := thousandths(c).Text(quantity.CelsiusScale, places), c.Text(quantity.CelsiusScale, places)
			if got != want {
				t.Fatalf("%v is shown as %s, its data as %s", c, want, got)
			}
		}
	})
}
