package dough_test

import (
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
)

// milkLoaf has 100 + 40 + 30 + 2 + 0.05 + 0.1 = 172.15 parts, so that 1721.5 g of dough have a kilogram of flour. Whole
// milk is 88.13 % water (USDA FoodData Central): 30 · 0.8813 + 40 = 66.4 %, and the salt is 20 ÷ 664.4 = 3.01 % of it.
func milkLoaf() dough.Formula {
	return dough.Formula{
		Name:   "milk loaf",
		Flours: []dough.Part{{Name: "bread flour", Percent: pc("100 %"), Kind: dough.KindWheat}},
		Liquids: []dough.Part{{Name: "water", Percent: pc("40 %")},
			{Name: "milk", Percent: pc("30 %"), Kind: dough.KindMilk}},
		Salt:   pc("2 %"),
		Others: []dough.Part{{Name: "dry yeast", Percent: pc("0.05 %")}, {Name: "malt", Percent: pc("0.1 %")}},
	}
}

func TestPageOfABatch(t *testing.T) {
	b, err := milkLoaf().For(dough.Pieces{Count: 5, Each: quantity.Grams(344.3)})
	if err != nil {
		t.Fatal(err)
	}
	page := report.Options{Width: 80}
	trial.Holds(t, b.Report().Text(page), "milk loaf: 1722 g of dough, 5 pieces of 344 g", "1000 g 100.0 % bread flour",
		"300 g 30.0 % milk", "0.5 g 0.050 % dry yeast", "1 g 0.10 % malt", "1721.5 g 172.2 % together",
		"hydration 40.0 % with the water in the other ingredients 66.4 %", "salt 2.00 %", "salt in the dough's water 3.01 %",
		"the water in milk is not stated and is taken as usual of its kind", "flour in all 1000 g water in all 400 g",
		"allergens: gluten, wheat and milk", "allergens are not stated for dry yeast and malt")

	coarse, err := b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(1)})
	if err != nil {
		t.Fatal(err)
	}
	// A list of 1721.5 g is 1722 g, half to even; the largest line takes what the yeast leaves.
	trial.Holds(t, coarse.Report().Text(page), "1001 g 100.0 % bread flour", "0 g 0.050 % dry yeast", "1722 g together",
		"rounding to the scale adds 0.5 g", "dry yeast: 0.5 g is too little for this scale: weigh it as part of a "+
			"larger amount, dissolved in water")
	// 111 times 9 g is the nearest to a kilogram.
	nines, err := b.Weigh(dough.Scales{Flour: quantity.Grams(9), Fine: quantity.Grams(0.1)})
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, nines.Report().Text(page), "999 g 100.0 % bread flour", "1720.5 g together",
		"rounding to the scale leaves out 1 g")
}

// A headline is in whole grams, and finer below 20 g.
func TestHeadlines(t *testing.T) {
	for _, c := range []struct {
		name string
		goal dough.Target
		want string
	}{
		{"", dough.ByFlour{Mass: quantity.Grams(5)}, "8.61 g of dough"}, // 5 g · 1.7215
		{"rolls", dough.ByFlour{Mass: quantity.Grams(1000)}, "rolls: 1722 g of dough"},
		{"", dough.Pieces{Count: 1, Each: quantity.Grams(344.3)}, "344 g of dough, 1 piece of 344 g"},
	} {
		f := milkLoaf()
		f.Name = c.name
		b, err := f.For(c.goal)
		if err != nil || b.String() != c.want || b.Report().Headline.String() != c.want {
			t.Errorf("%q, want %q (%v)", b, c.want, err)
		}
	}
	if got := (dough.Batch{}).Report().Text(report.Options{}); got != "no dough\n" {
		t.Errorf("%q", got)
	}
}

// 40 g too much of 400 g of water takes 100 g more flour; the loaf that is mended weighs all of it, and two half.
func TestPageOfARepairWeighsThePieces(t *testing.T) {
	for count, want := range map[int]string{1: "1 piece of it weighs 1862 g", 2: "2 pieces of it weigh 931 g each"} {
		b, err := milkLoaf().For(dough.Pieces{Count: count, Each: quantity.Grams(1721.5 / float64(count))})
		if err != nil {
			t.Fatal(err)
		}
		r, err := dough.Mishap{Batch: b, Restore: dough.RestoreHydration,
			Extra: []dough.Stock{{Name: "water", Mass: quantity.Grams(40)}}}.Repair()
		if err != nil {
			t.Fatal(err)
		}
		trial.Holds(t, r.Report().Text(report.Options{Width: 80}), want)
		trial.Holds(t, r.Working().Text(80), "D = 1861.5 g")
	}
}

// Flour and water in all are whole grams from 20 g on and finer below; of cultured cream nobody said the water.
func TestPageOfASmallDough(t *testing.T) {
	for grams, want := range map[float64]string{20.4: "flour in all 20 g", 19.94: "flour in all 19.9 g",
		20: "flour in all 20 g"} {
		f := milkLoaf()
		f.Others = append(f.Others, dough.Part{Name: "cultured cream", Percent: pc("10 %"), Kind: dough.KindDairy})
		b, err := f.For(dough.ByFlour{Mass: quantity.Grams(grams)})
		if err != nil {
			t.Fatal(err)
		}
		trial.Holds(t, b.Report().Text(report.Options{Width: 100}), want,
			"the water in cultured cream is not stated and counts as none")
	}
}
