package bench

import (
	"slices"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// Of a line that is mixed in two batches each gets its own part, and whoever asks for no batch the whole.
func TestPortionsOfABatch(t *testing.T) {
	g := quantity.Grams
	l := bakeday.WeighLine{Mass: g(1500), Portions: []quantity.Mass{g(800), g(700)}}
	got := []quantity.Mass{portion(l, 0), portion(l, 1), portion(l, 2), portion(l, 3)}
	if want := []quantity.Mass{g(1500), g(800), g(700), g(1500)}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
