package bakeday

import (
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

// saysOf is what the list of a bowl says, in English.
func saysOf(t *testing.T, b Bake, name string) []string {
	t.Helper()
	for _, l := range plan(t, b).Data().Weigh {
		if l.Name == name {
			out := []string{}
			for _, m := range l.Says {
				out = append(out, m.String())
			}
			return out
		}
	}
	t.Fatalf("no list for the %s", name)
	return nil
}

// Nobody weighs 0 g: where the scale shows nothing of a line, the list of its bowl says how to get so little.
//
// Six loaves of 780 g that lose 13 % are 5379.31 g of dough. Of poolished, without a levain, the flour is 5379.31 g ÷
// 1.725 = 3118 g, and a poolish of 30 % holds 935.5 g, with 0.02 % of yeast 0.187 g. Of the maslin with 0.02 % of
// yeast it is 5379.31 g ÷ 1.7212 = 3125 g, with 0.625 g of yeast: 0.3125 g in each of two batches.
func TestWhatTheScaleDoesNotShowIsToldOtherwise(t *testing.T) {
	rest := "the last batch takes what is left of the levain: ripe it weighs a little less than what was fed"
	poolish := poolished(0.02)
	leavened := hall()
	leavened.Others = append(leavened.Others,
		Ingredient{Name: "yeast", Percent: quantity.NewPercent(0.02), Kind: dough.KindInstantYeast})
	for _, c := range []struct {
		name string
		bake Bake
		bowl string
		fine float64
		want []string
	}{
		{"less than half a step", poolish, "poolish", 0,
			[]string{"0.19 g of instant yeast is too little for the scale: weigh it as part of a solution"}},
		{"two steps of a fine scale", poolish, "poolish", 0.1, []string{}},
		{"nothing for one of the batches", leavened, "dough", 0,
			[]string{"0.31 g of yeast is too little for the scale: weigh it as part of a solution", rest}},
		{"three steps for each batch", leavened, "dough", 0.1, []string{rest}},
	} {
		c.bake.Kitchen.FineScale = quantity.Grams(c.fine)
		if diff := cmp.Diff(c.want, saysOf(t, c.bake, c.bowl)); diff != "" {
			t.Errorf("%s:\n%s", c.name, diff)
		}
	}
}
