package dough_test

import (
	"os"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

// The numbers of the guide in the package documentation are computed here.
func TestGuideNumbers(t *testing.T) {
	text, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	_, guide, ok := strings.Cut(string(text), "# From percentages to water temperature")
	if !ok {
		t.Fatal("no guide")
	}
	guide = strings.ReplaceAll(guide, "\n//", "")
	b, err := hall().For(dough.Baked{Pieces: 6, Each: quantity.Grams(780), Loss: pc("12 %")})
	if err != nil {
		t.Fatal(err)
	}
	levain, _ := b.Build("levain")
	target, others, friction := quantity.Celsius(24.5), []quantity.Temperature{quantity.Celsius(21),
		quantity.Celsius(23), quantity.Celsius(22)}, quantity.DeltaCelsius(12)
	water := target.Add(friction.Neg())
	for _, o := range others {
		water = water.Add(target.Sub(o))
	}
	for what, number := range map[string]string{
		"piece":              b.ScalingWeight().Text(quantity.Gram, 1),
		"dough":              "six of them " + b.Dough().Text(quantity.Gram, 1),
		"total":              "The sum is " + b.Total().String(),
		"flour":              "= " + b.Flour().Text(quantity.Gram, 1),
		"water":              "that, " + b.Water().Text(quantity.Gram, 1),
		"levain's rye":       "with as much water: " + lineOf(levain.Lines, "whole rye").Mass.Text(quantity.Gram, 1),
		"rye at mixing":      lineOf(b.FinalDough(), "whole rye").Mass.Text(quantity.Gram, 1) + " of rye",
		"water at mixing":    lineOf(b.FinalDough(), "water").Mass.Text(quantity.Gram, 1) + " of water",
		"wetness at mixing":  "as wet as " + b.FinalHydration().Text(0),
		"water temperature":  "− 12 = " + water.String(),
		"the factors' lacks": "24.5 + 3.5 + 1.5 + 2.5 − 12",
	} {
		if !strings.Contains(guide, number) {
			t.Errorf("%s: the guide does not say %q", what, number)
		}
	}
}

// A sponge may be wetted with milk alone.
func TestMilkSponge(t *testing.T) {
	f := dough.Formula{
		Flours:  []dough.Part{{Name: "bread flour", Percent: pc("100 %"), Kind: dough.KindWheat}},
		Liquids: []dough.Part{{Name: "milk", Percent: pc("62 %"), Kind: dough.KindMilk, Water: pc("88.13 %")}},
		Others:  []dough.Part{{Name: "fresh yeast", Percent: pc("3 %"), Kind: dough.KindFreshYeast}},
		Salt:    pc("1.8 %"),
		Preferments: []dough.Preferment{{
			Name: "sponge", Kind: dough.Sponge, Flour: pc("40 %"),
			Others: []dough.Part{{Name: "milk", Percent: pc("100 %")}, {Name: "fresh yeast", Percent: pc("7.5 %")}},
		}},
	}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	sponge, _ := b.Build("sponge")
	if got := total(sponge.Lines).String(); got != "830 g" {
		t.Errorf("sponge of %v", sponge)
	}
	for _, l := range b.FinalDough() {
		if l.Name == "fresh yeast" {
			t.Errorf("all of the yeast is in the sponge, and yet %v", l)
		}
	}
	if got := lineOf(b.FinalDough(), "milk").Mass.String(); got != "220 g" {
		t.Errorf("milk at mixing %s", got)
	}
	workcheck.Verify(t, b.Working())
	if e := b.EffectiveHydration(); e.Hydration != pc("54.6406 %") || len(e.Assumed)+len(e.Unknown) > 0 ||
		!b.Hydration().IsZero() {
		t.Errorf("hydration %v, effective %v", b.Hydration(), e)
	}
	f.Preferments[0].Others = f.Preferments[0].Others[1:]
	_, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	refused(t, "a dry sponge", err)
	f.Preferments[0].Hydration = pc("60 %")
	_, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	refused(t, "a sponge with water that the formula does not have", err)
	f.Liquids[0].Water = quantity.Percent{}
	f.Preferments = nil
	b, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	if e := b.EffectiveHydration(); e.Hydration != pc("54.6406 %") || len(e.Assumed) != 1 || e.Assumed[0] != "milk" {
		t.Errorf("milk of unstated content gave %v", e)
	}
	f.Liquids[0].Kind = dough.KindOther
	b = must(f.For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	if e := b.EffectiveHydration(); !e.Hydration.IsZero() || len(e.Unknown) != 1 || e.Unknown[0] != "milk" {
		t.Errorf("a liquid of unknown content gave %v", e)
	}
	if b.SaltInWater().IsValid() {
		t.Errorf("salt in no water is %v", b.SaltInWater())
	}
}

// Yeast too little for the scale is pointed out, and a line that rounds to nothing does not vanish.
func TestTooSmallForTheScale(t *testing.T) {
	f := maslin()
	f.Others = []dough.Part{{Name: "instant yeast", Percent: pc("0.004 %"), Kind: dough.KindInstantYeast}}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	w, err := b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
	if err != nil {
		t.Fatal(err)
	}
	small := w.TooSmall()
	if len(small) != 1 || small[0].Name != "instant yeast" || small[0].Exact.String() != "0.04 g" {
		t.Errorf("too small: %v", small)
	}
	fine, err := b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.01)})
	if err != nil {
		t.Fatal(err)
	}
	if len(fine.TooSmall()) != 0 {
		t.Errorf("too small for 0.01 g: %v", fine.TooSmall())
	}
	// Below 100 steps of the large scale a line goes on the fine one, at 100 steps no longer.
	f.Others = []dough.Part{{Name: "honey", Percent: pc("10 %"), Kind: dough.KindSweetener},
		{Name: "malt", Percent: pc("9.99 %"), Kind: dough.KindMalt}}
	if b, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)}); err != nil {
		t.Fatal(err)
	}
	if w, err = b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)}); err != nil {
		t.Fatal(err)
	}
	for _, l := range w.Lines {
		want := map[string]string{"honey": "1 g", "malt": "0.1 g", "salt": "0.1 g", "bread flour": "1 g",
			"levain": "0 g"}[l.Name]
		if want != "" && l.Step.String() != want {
			t.Errorf("%v of %s is weighed in steps of %v, not %s", l.Exact, l.Name, l.Step, want)
		}
	}
	// A scale for all: 20 g of salt and 800 g of flour on 5 g.
	one, err := b.Weigh(dough.Scales{Flour: quantity.Grams(5)})
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range one.Lines {
		if _, odd := l.Mass.RoundTo(quantity.Grams(5)); !odd.IsZero() {
			t.Errorf("%v on a scale of 5 g", l.Mass)
		}
	}
}
