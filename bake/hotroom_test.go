package bake

import (
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// A room too hot to cool bread in is one fault: where it would be cut there is not asked as well.
func TestARoomTooHotIsOneFault(t *testing.T) {
	hot := quantity.Celsius(44)
	for what, err := range map[string]error{
		"a loaf":  trial.Err(CoolingLoaf{Baked: quantity.Grams(780), Room: hot}.Time()),
		"a probe": trial.Err(CoolingProbe{Room: hot, Samples: readingsFrom(20, 20, 80, 60)}.TimeLeft()),
	} {
		if got := trial.Refused(err); got != "room "+quantity.ErrOutOfRange.Error() {
			t.Errorf("%s: %v, refused are %q", what, err, got)
		}
	}
}
