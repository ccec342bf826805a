package dough_test

import (
	"math/bits"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/published"
	"example.org/maslin/internal/trial"
)

// The cautions that an ingredient brings stand there when it is in the dough, and only then; each has a short form and
// names a body.
func TestCautionsFollowTheIngredients(t *testing.T) {
	always := []string{"dough.caution_allergens", "dough.caution_raw"}
	for kind, more := range map[dough.Kind]string{
		dough.KindWater: "", dough.KindRye: "", dough.KindCookedFilling: "dough.caution_cooked_filling",
		dough.KindInfusedOil: "dough.caution_infused_oil", dough.KindImprover: "dough.caution_enzymes",
		dough.KindMalt: "dough.caution_enzymes", dough.KindWholeRye: "dough.caution_ergot",
		dough.KindEgg: "dough.caution_spoilage", dough.KindFat: "",
	} {
		b, err := dough.Formula{
			Flours:  []dough.Part{{Name: "flour", Percent: pc("100 %"), Kind: dough.KindWheat}},
			Liquids: []dough.Part{{Name: "water", Percent: pc("70 %")}},
			Others:  []dough.Part{{Name: "part", Percent: pc("3 %"), Kind: kind}},
		}.For(dough.ByFlour{Mass: quantity.Grams(1000)})
		if err != nil {
			t.Fatal(err)
		}
		want := always
		if more != "" {
			want = append(want[:2:2], more)
		}
		var got []string
		for _, c := range b.Cautions() {
			got = append(got, c.Code())
			if c.Source.Author == "" && c.Code() != "dough.caution_allergens" {
				t.Errorf("%s: says who?", c.Code())
			}
			if c.Short.IsZero() && c.Code() != "dough.caution_allergens" && c.Code() != "dough.caution_spoilage" {
				t.Errorf("%s has no short form", c.Code())
			}
			if text := c.Text.String(); strings.Contains(text, "is safe") || strings.Contains(text, "are safe") {
				t.Errorf("a promise: %s", text)
			}
		}
		if strings.Join(got, " ") != strings.Join(want, " ") {
			t.Errorf("%v: %v, want %v", kind, got, want)
		}
	}
}

// The lists of the law: how many there are, and which allergens stand on which.
func checkAllergens(in *published.Inputs) float64 {
	lists := map[string]dough.Allergens{"EU": dough.AllergensEU, "US": dough.AllergensUS}
	list := lists[in.Text("list")]
	if in.Has("kind") {
		var k dough.Kind
		in.Word("kind", &k)
		if k.Allergens()&list != 0 {
			return 1
		}
		return 0
	}
	return float64(bits.OnesCount16(uint16(list)))
}

// Every allergen stands on one of the lists, and has its own word.
func TestAllergenLists(t *testing.T) {
	all := dough.AllergensEU | dough.AllergensUS
	if n := len(all.List()); n != 15 || all.String() == "" {
		t.Error(n)
	}
	seen := map[string]bool{}
	for _, a := range all.List() {
		if seen[a.String()] || a&all == 0 {
			t.Error(a)
		}
		seen[a.String()] = true
	}
}

// What is cooked passes from 57 to 21 °C within two hours and to 5 °C within six (Food Code, 3-501.14); the one
// ingredient of which nothing is stated is named.
func TestCautionsSayHowMuchAndOfWhat(t *testing.T) {
	b, err := dough.Formula{
		Flours:  []dough.Part{{Name: "flour", Percent: pc("100 %"), Kind: dough.KindWheat}},
		Liquids: []dough.Part{{Name: "water", Percent: pc("70 %"), Kind: dough.KindWater}},
		Others: []dough.Part{{Name: "porridge", Percent: pc("20 %"), Kind: dough.KindCookedFilling},
			{Name: "mixed spice", Percent: pc("1 %")}},
	}.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	var text string
	for _, c := range b.Cautions() {
		text += c.Text.String() + "\n" + c.Short.String() + "\n"
	}
	trial.Holds(t, text, "from 57 °C to 21 °C within 2 hours and to 5 °C within 6 in all",
		"to 21 °C within 2 hours, to 5 °C within 6 in all", "nothing is stated about mixed spice;")
}

// A dough of gluten-free flour says what such a claim takes, and with any wheat in it no longer does.
func TestGlutenFreeIsCautioned(t *testing.T) {
	f := dough.Formula{
		Flours: []dough.Part{{Name: "rice flour", Percent: pc("90 %"), Kind: dough.KindGlutenFreeFlour},
			{Name: "other flour", Percent: pc("10 %"), Kind: dough.KindGlutenFreeFlour}},
		Liquids: []dough.Part{{Name: "water", Percent: pc("90 %")}},
	}
	for kinds, want := range map[[2]dough.Kind]bool{
		{dough.KindGlutenFreeFlour, dough.KindGlutenFreeFlour}: true,
		{dough.KindGlutenFreeFlour, dough.KindWheat}:           false,
		{}: false, // of flour that is not stated nobody claims anything
	} {
		f.Flours[0].Kind, f.Flours[1].Kind = kinds[0], kinds[1]
		b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
		if err != nil {
			t.Fatal(err)
		}
		told := false
		for _, c := range b.Cautions() {
			told = told || c.Code() == "dough.caution_gluten_free"
		}
		if told != want {
			t.Errorf("with %v the caution stands there: %v", kinds, told)
		}
	}
}
