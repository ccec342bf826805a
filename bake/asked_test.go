package bake_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

func ExampleAskedLoss_Answer() {
	weighed := []bake.WeighedLoaf{{Dough: quantity.Grams(897), Baked: quantity.Grams(781)}}
	a, err := bake.AskedLoss{Style: bake.LeanHearth, Bread: &bake.PromisedLoaf{Baked: quantity.Grams(780)},
		Loaves: weighed}.Answer()
	fmt.Println(a, err)
	fmt.Println(a.Usual)
	fmt.Println(a.Learned)
	// Output:
	// 888.5 g of dough for 780 g baked <nil>
	// 11.6 % of the dough (9.6 % to 16.6 %)
	// 12.2 % of the dough (next loaf 10.6 % to 13.8 %), from 1 loaf
}

func ExampleAskedOven_Answer() {
	a, err := bake.AskedOven{
		Setting: &bake.OvenSetting{Wanted: quantity.Celsius(230), Fan: true},
		Load:    &bake.OvenLoad{Style: bake.LeanHearth, Dough: quantity.Grams(900), Pieces: 2},
	}.Answer()
	fmt.Println(a, err)
	fmt.Println(a.Program.Oven, a.BakedOut != nil)
	// Output:
	// set 210 °C (advice 200 °C to 215 °C), dial 210 °C, gas mark 6 <nil>
	// 230 °C true
}

// Each answer is that of its own question; whose loss it is decides how much dough there must be: 10 % of 1,000 g of
// dough leave 900 g.
func TestEverythingThatIsAskedOfALoss(t *testing.T) {
	loaf := bake.PromisedLoaf{Baked: quantity.Grams(900), Loss: quantity.NewPercent(10)}
	asked := bake.AskedLoss{Style: bake.LeanHearth, Bread: &loaf, Known: true,
		Packed: &bake.PackedWeight{Nominal: quantity.Grams(400)}, Solids: &bake.Solids{Water: quantity.NewPercent(70)}}
	all, err := asked.Answer()
	if err != nil || all.Scaling.Dough != quantity.Grams(1000) || all.Average.Few != quantity.Grams(388) ||
		all.Learned != nil || all.Solids.Loss.Text(1) != "18.4 %" {
		t.Fatalf("%+v, %v", all, err)
	}
	guide, _ := bake.LeanHearth.LossOfBread(loaf.Baked)
	if all.Usual.Loss != guide.Loss {
		t.Errorf("%v, not %v", all.Usual, guide)
	}
	told := all.Report()
	if n := len(all.Workings()); n != 4 || told.Headline.String() != all.Scaling.String() || len(told.Sections) != 4 {
		t.Errorf("%d derivations, %v", n, all)
	}
	asked.Known, asked.Loaves = false, []bake.WeighedLoaf{{Dough: quantity.Grams(1000), Baked: quantity.Grams(800)}}
	learned, err := asked.Answer()
	if err != nil || learned.Scaling.Dough != loaf.Baked.Over(quantity.NewPercent(100).Sub(learned.Learned.Mean)) {
		t.Errorf("%v, %v", learned, err)
	}
	asked.Bread, asked.Piece = nil, &bake.ScaledPiece{Dough: quantity.Grams(1000), Loss: quantity.NewPercent(10)}
	asked.Loaves = nil
	usual, err := asked.Answer()
	left := quantity.NewPercent(100).Sub(usual.Usual.Loss.Likely)
	if err != nil || usual.Scaling.Baked != left.Of(quantity.Grams(1000)) {
		t.Errorf("%v, %v", usual, err)
	}
	text, err := json.Marshal(bake.LossAnswers{Average: all.Average})
	if err != nil || !strings.HasPrefix(string(text), `{"average_system":{"nominal":"400 g",`) {
		t.Errorf("%s, %v", text, err)
	}
}

// What is wrong is told at its field, all at once, and what is asked of nothing, or twice, is refused.
func TestRefusedQuestionsOfALossAndAnOven(t *testing.T) {
	paths := func(err error) (out []string) {
		for _, e := range quantity.InputErrors(err) {
			out = append(out, e.Path)
		}
		return out
	}
	tiny := quantity.Grams(1)
	_, err := bake.AskedLoss{Style: bake.LeanHearth, Bread: &bake.PromisedLoaf{Baked: tiny}, Piece: &bake.ScaledPiece{},
		Loaves: []bake.WeighedLoaf{{}}, Packed: &bake.PackedWeight{Nominal: tiny}, Solids: &bake.Solids{}}.Answer()
	want := "[piece bread.baked loaves[0].dough loaves[0].baked bread.baked packed.nominal solids.water]"
	if got := fmt.Sprint(paths(err)); got != want {
		t.Error(got)
	}
	_, err = bake.AskedLoss{Style: bake.LeanHearth, Piece: &bake.ScaledPiece{Dough: tiny}}.Answer()
	if got := fmt.Sprint(paths(err)); got != "[piece.dough piece.dough]" {
		t.Error(got)
	}
	if _, err = (bake.AskedLoss{}).Answer(); !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
	if _, err = (bake.AskedOven{}).Answer(); !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
	load := bake.OvenLoad{Style: bake.Pizza, Dough: quantity.Grams(250), Pieces: 1, Oven: quantity.Celsius(300)}
	all, err := bake.AskedOven{Setting: &bake.OvenSetting{Wanted: quantity.Celsius(900)}, Load: &load}.Answer()
	if got := fmt.Sprint(paths(err)); got != "[setting.wanted]" || all.Setting != nil || all.BakedOut != nil {
		t.Fatalf("%s: %+v", got, all)
	}
	if all.Program.Oven != quantity.Celsius(300) || len(all.Workings()) != 1 || all.String() != all.Program.String() {
		t.Errorf("%v", all)
	}
}
