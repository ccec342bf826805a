package dough_test

import (
	"slices"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

func TestSharesFollowTheKinds(t *testing.T) {
	f := dough.Formula{
		Flours: []dough.Part{
			{Name: "white", Percent: pc("50 %"), Kind: dough.KindWheat}, {Name: "sifted rye", Percent: pc("15 %"),
				Kind: dough.KindRye},
			{
				Name:    "whole rye",
				Percent: pc("10 %"),
				Kind:    dough.KindWholeRye,
			}, {Name: "whole wheat", Percent: pc("12 %"),
				Kind: dough.KindWholeWheat},
			{
				Name:    "spelt",
				Percent: pc("8 %"),
				Kind:    dough.KindWholeSpelt,
			}, {Name: "the miller's own", Percent: pc("5 %")},
		},
		Liquids: []dough.Part{{Name: "water", Percent: pc("60 %")},
			{Name: "ice", Percent: pc("10 %"), Kind: dough.KindWater}, {Name: "beer", Percent: pc("5 %"),
				Kind: dough.KindOther, Water: pc("92 %")}},
		Salt: pc("2 %"),
		Others: []dough.Part{{Name: "pickle salt", Percent: pc("0.3 %"), Kind: dough.KindSalt},
			{Name: "yeast", Percent: pc("0.2 %"), Kind: dough.KindInstantYeast}},
		Inclusions: []dough.Part{{Name: "chocolate", Percent: pc("6 %"), Kind: dough.KindOther,
			Contains: dough.Milk | dough.Soy, Water: pc("1 %")}, {Name: "trail mix", Percent: pc("4 %")}},
	}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	for what, got := range map[string][2]quantity.Percent{
		"whole grain":   {b.WholeGrain(), pc("30 %")},
		"rye":           {b.Rye(), pc("25 %")},
		"spelt":         {b.Share(dough.KindSpelt, dough.KindWholeSpelt), pc("8 %")},
		"no kind":       {b.Share(), pc("0 %")},
		"hydration":     {b.Hydration(), pc("70 %")},
		"salt":          {b.SaltShare(), pc("2.3 %")},
		"total":         {b.Total(), pc("187.5 %")},
		"water in all":  {quantity.Grams(700).PercentOf(b.Flour()), b.Water().PercentOf(b.Flour())},
		"final":         {b.FinalHydration(), pc("70 %")},
		"unknown share": {b.ShareOfDough("nothing"), pc("0 %")},
	} {
		if got[0] != got[1] {
			t.Errorf("%s: %v, want %v", what, got[0], got[1])
		}
	}
	if e := b.EffectiveHydration(); e.Hydration != pc("74.6 %") || len(e.Assumed)+len(e.Unknown) > 0 {
		t.Errorf("effective hydration %v", e)
	}
	if s := b.SaltInWater(); s != pc("2.3 %").Over(pc("74.6 %")) {
		t.Errorf("salt in water %v", s)
	}
	if u := b.Unstated(); !slices.Equal(u, []string{"the miller's own", "trail mix"}) {
		t.Errorf("nothing is stated of %v", u)
	}
	if a := b.Allergens(); !a.Has(dough.Gluten|dough.Milk|dough.Soy) || a.Has(dough.Egg) ||
		a.String() != "gluten, wheat, milk, soy" {
		t.Errorf("allergens %v", a)
	}
	if len(b.Cautions()) != 3 { // allergens, raw dough, ergot
		t.Errorf("cautions %v", b.Cautions())
	}
}

func TestAllergensOfKinds(t *testing.T) {
	for k, want := range map[dough.Kind]dough.Allergens{
		dough.KindOats: dough.Gluten, dough.KindMalt: dough.Gluten, dough.KindStarter: dough.Gluten,
		dough.KindWheatGluten: dough.Gluten | dough.Wheat, dough.KindWholeSpelt: dough.Gluten | dough.Wheat,
		dough.KindWholeRye:        dough.Gluten,
		dough.KindGlutenFreeFlour: 0, dough.KindWater: 0, dough.KindUnstated: 0, dough.KindOther: 0,
		dough.KindButter: dough.Milk, dough.KindDairy: dough.Milk, dough.KindEgg: dough.Egg, dough.KindNuts: dough.Nuts,
		dough.KindPeanuts: dough.Peanuts,
		dough.KindSesame:  dough.Sesame, dough.KindSoy: dough.Soy, dough.KindLupin: dough.Lupin,
	} {
		if got := k.Allergens(); got != want {
			t.Errorf("%v carries %v, want %v", k, got, want)
		}
	}
	if got := dough.Allergens(0).String(); got != "none stated" {
		t.Error(got)
	}
}

// Weights in odd shapes: water only in the starter, an ingredient only in the levain, a second water.
func TestWeightsInOddShapes(t *testing.T) {
	flour := []dough.Weight{{Name: "flour", Mass: quantity.Grams(100)}}
	b, err := dough.Weights{
		Final: dough.Bowl{Flours: flour, Liquids: []dough.Weight{{Name: "milk", Mass: quantity.Grams(50),
			Kind: dough.KindMilk}, {Name: "cream", Kind: dough.KindMilk}}},
		Preferments: []dough.PrefermentWeights{{
			Name: "levain", Bowl: dough.Bowl{Flours: flour, Liquids: []dough.Weight{{Name: "milk", Mass: quantity.Grams(60)}}},
			Seed: dough.SeedWeights{Mass: quantity.Grams(40), Hydration: pc("100 %"),
				Blend: []dough.Part{{Name: "rye", Percent: pc("100 %"), Kind: dough.KindRye}}},
		}},
	}.Batch()
	if err != nil {
		t.Fatal(err)
	}
	if b.Flour().String() != "220 g" || b.Water().String() != "20 g" || b.Dough().String() != "350 g" ||
		b.Rye() != quantity.Grams(20).PercentOf(quantity.Grams(220)) {
		t.Errorf("flour %v, water %v, dough %v, rye %v", b.Flour(), b.Water(), b.Dough(), b.Rye())
	}
	again, err := b.Formula().For(dough.ByFlour{Mass: b.Flour()})
	if err != nil {
		t.Fatal(err)
	}
	if d := again.Dough().Sub(b.Dough()).Grams(); d > 1e-4 || d < -1e-4 {
		t.Errorf("dough %v, from its formula %v", b.Dough(), again.Dough())
	}
}

func TestRepairOfWhatIsOnlyInTheLevain(t *testing.T) {
	f := maslin()
	f.Preferments[0].Flour = pc("20 %") // all of the rye
	f.Preferments[0].Seed = dough.Seed{}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	r, err := dough.Mishap{Batch: b, Extra: []dough.Stock{{Name: "water", Mass: quantity.Grams(36)}}}.Repair()
	if err != nil {
		t.Fatal(err)
	}
	// 5 % more of everything: 40 g of bread flour, 10 g of rye that is not weighed at mixing otherwise, 1 g of salt.
	want := []string{"40 g bread flour", "10 g whole rye", "1 g salt"}
	var got []string
	for _, l := range r.Add {
		got = append(got, l.Mass.String()+" "+l.Name)
	}
	if !slices.Equal(got, want) {
		t.Errorf("add %v, want %v", got, want)
	}
	// Half of the levain was left out: all of it comes back.
	r, err = dough.Mishap{Batch: b, Extra: []dough.Stock{{Name: "levain", Mass: quantity.Grams(-200)}},
		Restore: dough.RestoreAll}.Repair()
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Add) != 1 || r.Add[0].Name != "levain" || r.Add[0].Mass != quantity.Grams(200) ||
		r.After.Dough() != b.Dough() {
		t.Errorf("add %v", r.Add)
	}
	// Nothing wrong, nothing to add.
	r, err = dough.Mishap{Batch: b}.Repair()
	if err != nil || len(r.Add) != 0 || r.After.Dough() != b.Dough() {
		t.Errorf("add %v, %v", r.Add, err)
	}
}
