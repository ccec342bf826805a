package vessel_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
)

func ExampleParseSides() {
	fmt.Println(vessel.ParseSides("24x11x7.5cm"))
	fmt.Println(vessel.ParseSides("9 in × 5 in"))
	// Output:
	// [0.24 m 0.11 m 0.075 m] <nil>
	// [0.2286 m 0.127 m] <nil>
}

func TestParseSides(t *testing.T) {
	for _, text := range []string{"", "24", "24x11", "24cm", "1x2x3x4cm", "ax11cm", "24x11x7furlong"} {
		if got, err := vessel.ParseSides(text); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}
