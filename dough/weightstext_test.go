package dough_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

func TestParseWeights(t *testing.T) {
	got, err := dough.ParseWeights("800,5 g wheat flour,1 lb 4 oz water; 20 g salt, 2 g salt,30 g walnuts, 5 g instant " +
		"yeast," +
		" 50 g whole rye,250 g levain at 80 % of rye, 10 g levain")
	if err == nil || !strings.Contains(err.Error(), `"walnuts"`) {
		t.Errorf("walnuts are no kind: %v", err)
	}
	grams := quantity.Grams
	want := dough.Weights{
		Final: dough.Bowl{
			Flours: []dough.Weight{
				{Name: "wheat flour", Mass: grams(800.5), Kind: dough.KindWheat},
				{Name: "whole rye", Mass: grams(50), Kind: dough.KindWholeRye},
			},
			Liquids: []dough.Weight{{Name: "water", Mass: quantity.MustMass("1 lb 4 oz"), Kind: dough.KindWater}},
			Salt:    grams(22),
			Others:  []dough.Weight{{Name: "instant yeast", Mass: grams(5), Kind: dough.KindInstantYeast}},
		},
	}
	if len(got.Preferments) != 2 {
		t.Fatalf("%+v", got.Preferments)
	}
	levain, plain := got.Preferments[0].Bowl, got.Preferments[1].Bowl
	if f := levain.Flours[0]; f.Kind != dough.KindRye || f.Name != "rye" ||
		!f.Mass.Add(levain.Liquids[0].Mass).Equal(grams(250)) ||
		f.Mass.Compare(grams(138)) < 0 || f.Mass.Compare(grams(139)) > 0 {
		t.Errorf("levain: %+v", levain)
	}
	if f := plain.Flours[0]; f.Kind != dough.KindUnstated || !f.Mass.Equal(grams(5)) {
		t.Errorf("plain levain: %+v", plain)
	}
	got.Preferments = nil
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	// A comma between any two digits is a decimal comma.
	got, err = dough.ParseWeights("9,0 g salt, 0,9 g salt")
	if err != nil || got.Final.Salt != grams(9.9) {
		t.Errorf("%v of salt, %v", got.Final.Salt, err)
	}
	got, err = dough.ParseWeights("30 g nuts, 3 g butter, 100 g milk")
	if err != nil || len(got.Final.Inclusions) != 1 || len(got.Final.Others) != 1 || len(got.Final.Liquids) != 1 {
		t.Errorf("%v %+v", err, got)
	}
}

func TestWeightsThatCannotBeRead(t *testing.T) {
	for text, want := range map[string]string{
		"20g":                    "a weight and what it is of",
		"-5 g salt":              "a weight above 0 g",
		"5 g unstated":           "flour, wheat",
		"5 g  flour of":          "flour, wheat",
		"100 g levain at 80":     "percentage",
		"100 g levain of gravel": "flour, wheat",
		"5 g levainish":          "flour, wheat",
		"10 salt":                "a weight and what it is of",
	} {
		if _, err := dough.ParseWeights(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
	if w, err := dough.ParseWeights(" , ;"); err != nil || len(w.Final.Flours) > 0 {
		t.Errorf("nothing: %v", err)
	}
	if _, err := dough.ParseWeights("x, 5 g gravel"); len(quantity.InputErrors(err)) != 2 {
		t.Errorf("not both: %v", err)
	}
}

func FuzzParseWeights(f *testing.F) {
	f.Add("800 g wheat, 700 g water, 20 g salt, 250 g levain at 100 % of rye")
	f.Add("1,5 kg flour;,;,\x00 levain")
	f.Fuzz(func(t *testing.T, text string) {
		w, err := dough.ParseWeights(text)
		if err == nil {
			_, _ = w.Batch()
		}
	})
}

func ExampleParseWeights() {
	w, err := dough.ParseWeights("800 g wheat, 200 g whole rye, 700 g water, 20 g salt")
	if err != nil {
		fmt.Println(err)
		return
	}
	b, err := w.Batch()
	fmt.Println(b.Hydration(), err)
	// Output: 70 % <nil>
}

func ExampleParseStock() {
	s, err := dough.ParseStock("40 g water")
	fmt.Println(s.Name, s.Mass, err)
	// Output: water 40 g <nil>
}
