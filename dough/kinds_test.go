package dough_test

import (
	"encoding"
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// What is known of every kind of ingredient, what its name is, and what is said of a word that names none.
func TestWhatIsKnownOfEveryKind(t *testing.T) {
	var page strings.Builder
	for _, k := range quantity.Values[dough.Kind]() {
		var is []string
		for name, ok := range map[string]bool{"rye": k.Rye(), "whole grain": k.WholeGrain(), "yeast": k.Yeast()} {
			if ok {
				is = append(is, name)
			}
		}
		if len(is) > 1 { // whole rye is both
			is = []string{"rye, whole grain"}
		}
		fmt.Fprintf(&page, "%v: %s; carries %v\n", k, strings.Join(is, ""), k.Allergens().List())
	}
	for _, into := range []encoding.TextUnmarshaler{new(dough.Kind), new(dough.PrefermentKind), new(dough.SeedAccount),
		new(dough.InoculationBasis), new(dough.SoakerKind), new(dough.Role), new(dough.LevainReading), new(dough.Restore)} {
		fmt.Fprintf(&page, "%v\n", into.UnmarshalText([]byte("stone")))
	}
	trial.Kept(t, "kinds.txt", page.String())
}

// Refusals of what cannot be one dough, one levain or one repair, said whole: what was given, what is wanted, where.
func TestRefusalsAreSaidWhole(t *testing.T) {
	var page strings.Builder
	said := func(what string, err error) {
		text := "taken"
		if err != nil {
			text = strings.ReplaceAll(err.Error(), "\n", "\n  ")
		}
		fmt.Fprintf(&page, "%s\n  %s\n", what, text)
	}
	kilo := dough.ByFlour{Mass: quantity.Grams(1000)}
	change := func(what string, f dough.Formula, with func(f *dough.Formula)) {
		with(&f)
		said(what, trial.Err(f.For(kilo)))
	}
	change("a flour twice", maslin(), func(f *dough.Formula) { f.Flours[1].Name = "bread flour" })
	change("a levain called as the water", maslin(), func(f *dough.Formula) { f.Preferments[0].Name = "water" })
	change("two levains", maslin(), func(f *dough.Formula) {
		f.Preferments = append(f.Preferments, f.Preferments[0])
		f.Preferments[0].Flour = pc("5 %")
	})
	change("a soaker of 201", maslin(), func(f *dough.Formula) {
		f.Soakers = []dough.Soaker{{Name: "soaker", Parts: make([]dough.Part, 201)}}
	})
	change("a soaker of what is not there", maslin(), func(f *dough.Formula) {
		f.Soakers = []dough.Soaker{{Name: "soaker", Parts: []dough.Part{{Name: "seeds", Percent: pc("5 %")},
			{Name: "water", Percent: pc("1001 %")}, {Name: "whole rye", Percent: pc("6 %")}}}}
	})
	change("a culture with all the water", maslin(), func(f *dough.Formula) {
		f.Preferments[0].Hydration, f.Preferments[0].Seed = pc("20 %"), dough.Seed{Percent: pc("100 %"),
			Hydration: pc("900 %")}
	})
	change("names that hide", maslin(), func(f *dough.Formula) {
		f.Flours[0].Name, f.Flours[1].Name, f.Liquids[0].Name = "", "a\u202eb", strings.Repeat("w", 201)
	})
	b := must(milkLoaf().For(kilo))
	for _, extra := range [][]dough.Stock{
		{{Name: "salt", Mass: quantity.Grams(-20.1)}}, {{Name: "salt", Mass: quantity.Grams(-20)}},
		{{Name: "water", Mass: quantity.Grams(-400.1)}}, {{Name: "water", Mass: quantity.Kilograms(100_001)}},
		{{Name: "water", Mass: quantity.Kilograms(-100_001)}}, {{Name: "stones", Mass: quantity.Grams(1)}},
		{{Name: "bread flour", Mass: quantity.Grams(-1000)}},
	} {
		said(fmt.Sprint(extra), trial.Err(dough.Mishap{Batch: b, Extra: extra}.Repair()))
	}
	h := must(maslin().For(kilo))
	for _, m := range []string{"-290 g", "-299 g", "-300 g", "-301 g"} {
		said("levain "+m, trial.Err(dough.Mishap{Batch: h, Extra: []dough.Stock{{Name: "levain",
			Mass: quantity.MustMass(m)}}}.Repair()))
	}
	other := maslin()
	other.Preferments[0].Hydration = pc("98.7654 %")
	two := []dough.Batch{h, must(other.For(kilo)), b}
	said("levains apart", trial.Err(dough.OneLevain{Preferment: "levain", Doughs: two}.Plan()))
	seeds := dough.SeedWeights{Mass: quantity.Grams(10), Hydration: pc("100 %"), Blend: make([]dough.Part, 201)}
	for _, seed := range []dough.SeedWeights{seeds, {Mass: quantity.Grams(10)}, {Mass: quantity.Grams(-1)},
		{Mass: quantity.Grams(10), Hydration: pc("1001 %"), Blend: []dough.Part{{Name: "rye", Percent: pc("101 %")}}}} {
		w := dough.Weights{Final: dough.Bowl{Flours: []dough.Weight{{Name: "rye", Mass: quantity.Grams(500)}},
			Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(400)}}},
			Preferments: []dough.PrefermentWeights{{Name: "sour", Seed: seed, Bowl: dough.Bowl{
				Flours:  []dough.Weight{{Name: "rye", Mass: quantity.Grams(100)}},
				Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(100)}}}}}}
		said(fmt.Sprintf("weighed with a culture of %v", seed.Mass), trial.Err(w.Batch()))
	}
	levain := dough.LevainBuild{Want: quantity.Grams(300), Hydration: pc("100 %"), Starter: dough.Starter{
		Mass: quantity.Grams(30), Hydration: pc("100 %")}}
	crossed, much := levain, levain
	crossed.Least, crossed.Most = pc("50 %"), pc("40 %")
	much.Want, much.Stages, much.Inoculation, much.Of = quantity.Grams(0.09), 100, pc("90.1 %"), dough.OfMix
	said("a levain crossed", trial.Err(crossed.Plan()))
	said("a levain of too much", trial.Err(much.Plan()))
	trial.Kept(t, "refusals.txt", page.String())
}
