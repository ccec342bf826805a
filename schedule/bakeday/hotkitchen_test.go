package bakeday

import (
	"context"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// A kitchen in which bread does not cool is refused at its temperature, and not at the loaves.
func TestAKitchenTooHotToCoolBread(t *testing.T) {
	b := hall()
	b.Kitchen.Day, b.Kitchen.Night = quantity.Celsius(44), quantity.Celsius(44)
	_, err := b.Plan(context.Background(), wednesday(t))
	if got := trial.Refused(err); got != "kitchen.day "+quantity.ErrOutOfRange.Error() {
		t.Errorf("%v, refused are %q", err, got)
	}
}
