package vessel_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
)

func ExampleReadTin() {
	tin, err := vessel.ReadTin("24x11x7.5cm", "22x9cm")
	fmt.Println(tin.Length, tin.Width, tin.Height, tin.BaseLength, tin.BaseWidth, err)
	tin, err = vessel.ReadTin("9 in × 5 in x 3in", "")
	fmt.Println(tin.Length, tin.Width, tin.Height, tin.BaseLength, err)
	// Output:
	// 0.24 m 0.11 m 0.075 m 0.22 m 0.09 m <nil>
	// 0.2286 m 0.127 m 0.0762 m 0 m <nil>
}

func TestReadTin(t *testing.T) {
	for _, text := range []string{"", "24", "24x11", "24cm", "24x11cm", "1x2x3x4cm", "ax11x7cm", "24x11x7furlong"} {
		if got, err := vessel.ReadTin(text, ""); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	for _, base := range []string{"24cm", "1x2x3cm", "9x8"} {
		_, err := vessel.ReadTin("24x11x7cm", base)
		found := quantity.InputErrors(err)
		if len(found) != 1 || found[0].GoPath != "Base" || !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q: %v", base, err)
		}
	}
	if _, err := vessel.ReadTin("24", "9"); len(quantity.InputErrors(err)) != 2 {
		t.Error(err)
	}
}
