package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

// A shaped dough of rye that lies in the cold longer than it keeps its strength is told for how long it does, and for
// how long it lies: all rye four hours, half rye twelve. In a tin it is held.
func TestHowLongADoughKeepsItsStrengthInTheCold(t *testing.T) {
	told := func(rye float64, shape bake.Shape) string {
		b := hall()
		b.Flours = []Ingredient{
			{Name: "wheat bread flour", Percent: quantity.NewPercent(100 - rye), Kind: dough.KindWheat},
			{Name: "whole rye flour", Percent: quantity.NewPercent(rye), Kind: dough.KindWholeRye},
		}
		b.Loaves.Style, b.Loaves.Shape, b.Loaves.Loss = bake.Rye, shape, quantity.Percent{}
		b.Retard = &Retard{AtLeast: quantity.Elapsed(16 * time.Hour), AtMost: quantity.Elapsed(16 * time.Hour)}
		d := plan(t, b)
		d.Rising.Retard = quantity.Elapsed(16 * time.Hour)
		for _, n := range d.risingNotes() {
			if text := n.String(); strings.Contains(text, "keeps its strength") {
				return text
			}
		}
		return ""
	}
	for rye, want := range map[float64]string{90: "about 6h in the cold", 60: "about 10h in the cold", 20: ""} {
		got := told(rye, bake.Round)
		right := strings.Contains(got, want) && strings.Contains(got, "here it lies 16h")
		if want == "" {
			right = got == ""
		}
		if !right {
			t.Errorf("%v %% rye: %q, wanted %q", rye, got, want)
		}
	}
	if got := told(90, bake.Tin); got != "" {
		t.Errorf("in a tin: %q", got)
	}
}
