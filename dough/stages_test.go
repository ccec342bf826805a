package dough_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/workcheck"

	"pgregory.net/rapid"
)

// A sour of three stages on rye: 40 g of ripe sour start the first stage, and 40 g of the last one are kept for the
// next bake. Everything between makes what the dough takes.
func threeStages() dough.Formula {
	rye := []dough.Part{{Name: "rye", Percent: pc("100 %")}}
	first := dough.Preferment{
		Name: "first stage", Kind: dough.RyeSour, Flour: pc("2 %"), Hydration: pc("120 %"), Blend: rye,
		Seed: dough.Seed{Percent: pc("40 %"), Account: dough.SeedRemovedAtEnd},
	}
	second := dough.Preferment{
		Name: "second stage", Kind: dough.RyeSour, Flour: pc("10 %"), Hydration: pc("60 %"), Blend: rye,
		Preferments: []dough.Preferment{first},
	}
	return dough.Formula{
		Flours: []dough.Part{{Name: "rye", Percent: pc("70 %"), Kind: dough.KindRye},
			{Name: "wheat", Percent: pc("30 %"), Kind: dough.KindWheat}},
		Liquids: []dough.Part{{Name: "water", Percent: pc("74 %"), Kind: dough.KindWater}},
		Salt:    pc("1.8 %"),
		Preferments: []dough.Preferment{{
			Name: "ripe sour", Kind: dough.RyeSour, Flour: pc("35 %"), Hydration: pc("90 %"), Blend: rye,
			Preferments: []dough.Preferment{second},
		}},
	}
}

// A starter that is taken back from the last stage stays in through the stages before it.
func ExampleSeedAccount() {
	batch := must(threeStages().For(dough.ByFlour{Mass: quantity.Kilograms(5)}))
	for _, b := range batch.Builds() {
		fmt.Print(b.Report().Text(report.Options{}))
	}
	// Output:
	// first stage (rye sour): 260 g
	//
	// Made beforehand: first stage
	//   100 g  100.0 %  rye
	//   120 g  120.0 %  water
	//    40 g   40.0 %  culture
	//   260 g           together
	//   · it goes into second stage
	// second stage (rye sour): 840 g
	//
	// Made beforehand: second stage
	//   400 g  100.0 %  rye
	//   180 g   45.0 %  water
	//   260 g   65.0 %  first stage
	//   840 g           together
	//   · it goes into ripe sour
	// ripe sour (rye sour): 3365 g
	//
	// Made beforehand: ripe sour
	//   1250 g  100.0 %  rye
	//   1275 g  102.0 %  water
	//    840 g   67.2 %  second stage
	//   3365 g           together
	//   · 40 g is taken away again before use, to be the next culture
}

// Of weights of which a part is used the bowl stays as it was weighed, and the dough has the part.
func ExamplePrefermentWeights() {
	batch := must(dough.Weights{
		Final: dough.Bowl{
			Flours:  []dough.Weight{{Name: "flour", Mass: quantity.Grams(850)}},
			Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(550)}},
			Salt:    quantity.Grams(20),
		},
		Preferments: []dough.PrefermentWeights{{
			Name: "levain",
			Bowl: dough.Bowl{
				Flours:  []dough.Weight{{Name: "flour", Mass: quantity.Grams(200)}},
				Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(200)}},
			},
			Used: quantity.Grams(300),
		}},
	}.Batch())
	levain, _ := batch.Build("levain")
	fmt.Print(levain.Report().Text(report.Options{}))
	fmt.Println("flour", batch.Flour(), "hydration", batch.Hydration())
	// Output:
	// levain (levain): 400 g
	//
	// Made beforehand: levain
	//   200 g  100.0 %  flour
	//   200 g  100.0 %  water
	//   400 g           together
	//   · 100 g of it is not used
	// flour 1000 g hydration 70 %
}

// What goes on from each bowl is what the next one lists, whatever part of it is used, and the starter that went in
// comes out at the end.
func TestStagesCarryTheStarter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := threeStages()
		seed := &f.Preferments[0].Preferments[0].Preferments[0].Seed
		seed.Percent = points(t, "seed", 1, 50)
		seed.Of = rapid.SampledFrom([]dough.InoculationBasis{dough.OfNewFlour, dough.OfMix}).Draw(t, "basis")
		b, err := f.For(dough.ByDough{Mass: anyMass(t, "dough", 500, 50_000)})
		if err != nil {
			t.Fatal(err)
		}
		first, _ := b.Build("first stage")
		last, _ := b.Build("ripe sour")
		if starter := lineOf(first.Lines, "culture").Mass; starter.IsZero() || last.Removed != starter ||
			!first.Removed.IsZero() {
			t.Errorf("%v of starter went in, %v came out of the last stage and %v of the first", starter, last.Removed,
				first.Removed)
		}
		if seed.Of == dough.OfMix &&
			!near(lineOf(first.Lines, "culture").Mass.PercentOf(first.Made), seed.Percent, 1e-4) {
			t.Errorf("starter %v of %v, asked for %v", lineOf(first.Lines, "culture").Mass, first.Made, seed.Percent)
		}
		checkViews(t, b)
		faults(t, b.Working())
		again, err := b.Weights().Batch()
		if err != nil {
			t.Fatal(err)
		}
		for i, build := range again.Builds() {
			if want := b.Builds()[i]; build.String() != want.String() || build.Made != want.Made ||
				build.Removed != want.Removed {
				t.Errorf("back from weights:\n%v\nwas\n%v", build, want)
			}
		}
		byStage, err := f.For(dough.ByLevain{Preferment: "second stage", Mass: quantity.Grams(840)})
		if err != nil {
			t.Fatal(err)
		}
		if used, _ := byStage.Build("second stage"); !near(used.Used.PercentOf(quantity.Grams(840)), pc("100 %"),
			1e-5) {
			t.Errorf("840 g of the second stage at hand, %v used", used.Used)
		}
	})
}

// Whatever part of each preferment is used, the bowls read back as they were weighed.
func TestPartlyUsedKeepsItsWeights(t *testing.T) {
	accounts := []dough.SeedAccount{dough.SeedCounted, dough.SeedRemoved, dough.SeedSeparate, dough.SeedRemovedAtEnd}
	rapid.Check(t, func(t *rapid.T) {
		bowl := func(flour, water float64) dough.Bowl {
			return dough.Bowl{
				Flours:  []dough.Weight{{Name: "flour", Mass: quantity.Grams(flour)}},
				Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(water)}},
			}
		}
		inner := dough.PrefermentWeights{Name: "first", Bowl: bowl(40, 40), Seed: dough.SeedWeights{
			Mass: quantity.Grams(20), Hydration: pc("100 %"), Account: rapid.SampledFrom(accounts).Draw(t, "account"),
		}}
		outer := dough.PrefermentWeights{
			Name:        "second",
			Bowl:        bowl(200, 150),
			Preferments: []dough.PrefermentWeights{inner},
		}
		if rapid.Bool().Draw(t, "part of the first") {
			outer.Preferments[0].Used = anyMass(t, "first used", 30, 79)
		}
		outer.Used = anyMass(t, "second used", 100, 370)
		w := dough.Weights{Final: bowl(700, 450), Preferments: []dough.PrefermentWeights{outer}}
		b, err := w.Batch()
		if err != nil {
			t.Fatal(err)
		}
		if lineOf(b.FinalDough(), "second").Mass != outer.Used || b.Dough() != quantity.Grams(1150).Add(outer.Used) {
			t.Errorf("%v used of the second, the dough of %v lists %v", outer.Used, b.Dough(),
				lineOf(b.FinalDough(), "second"))
		}
		for _, build := range b.Builds() {
			want := bowl(200, 150)
			if build.Name == "first" {
				want = bowl(40, 40)
			}
			if lineOf(build.Lines, "flour").Mass != want.Flours[0].Mass ||
				lineOf(build.Lines, "water").Mass != want.Liquids[0].Mass {
				t.Errorf("weighed %v, shown\n%v", want, build)
			}
			if build.Made != build.Used.Add(build.Left).Add(build.Removed) || build.Left.Sign() < 0 {
				t.Errorf("%v: made %v, used %v, left %v, removed %v", build.Name, build.Made, build.Used, build.Left,
					build.Removed)
			}
		}
		first, _ := b.Build("first")
		second, _ := b.Build("second")
		if lineOf(second.Lines, "first").Mass != first.Used {
			t.Errorf("%v goes on, the second stage lists %v", first.Used, lineOf(second.Lines, "first").Mass)
		}
		back, err := b.Weights().Batch()
		if err != nil || back.String() != b.String() {
			t.Errorf("%v\n%v\n%v", err, back, b)
		}
		weighing, err := b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
		if err != nil {
			t.Fatal(err)
		}
		for _, wb := range weighing.Builds {
			if wb.Made != wb.Used.Add(wb.Left).Add(wb.Removed) {
				t.Errorf("rounded %v: made %v, used %v, left %v, removed %v", wb.Build.Name, wb.Made, wb.Used,
					wb.Left, wb.Removed)
			}
		}
	})
}

// A tiny line is weighed to its own nearest step; the others take what it leaves.
func TestTinyLinesKeepTheirOwnRounding(t *testing.T) {
	f := dough.Formula{
		Flours:  []dough.Part{{Name: "flour", Percent: pc("100 %"), Kind: dough.KindWheat}},
		Liquids: []dough.Part{{Name: "water", Percent: pc("70.03 %"), Kind: dough.KindWater}},
		Salt:    pc("2.004 %"),
		Others:  []dough.Part{{Name: "instant yeast", Percent: pc("0.0127 %"), Kind: dough.KindInstantYeast}},
	}
	b := must(f.For(dough.ByFlour{Mass: quantity.Grams(1000)}))
	w := must(b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)}))
	got := map[string]string{}
	for _, l := range w.Lines {
		got[l.Name] = l.Mass.String()
	}
	// Salt 20.04 g and yeast 0.127 g are 20.167 g: 20.2 g on the fine scale, of which the yeast is 0.1 g.
	if got["instant yeast"] != "0.1 g" || got["salt"] != "20.1 g" {
		t.Errorf("%v", got)
	}
}

// With 300 g of rye at 20 % the dough is exactly five times that and what belongs to it.
func TestAtHandUsesAllThereIs(t *testing.T) {
	b := must(maslin().For(dough.AtHand{Stock: []dough.Stock{
		{Name: "bread flour", Mass: quantity.Grams(1500)}, {Name: "whole rye", Mass: quantity.Grams(300)},
	}}))
	if b.Dough() != quantity.Grams(2610) || b.Limiting() != "whole rye" {
		t.Errorf("%v, %s runs out", b.Dough(), b.Limiting())
	}
}

// A name shows as it is and changes nothing around it.
func TestNamesAreText(t *testing.T) {
	for _, name := range []string{"a\nb", "\x1b[31mred", "abc\u202edef", "\u2066x", "\xff", "\u200fx", "tab\there"} {
		f := maslin()
		f.Flours[0].Name = name
		refused(t, fmt.Sprintf("a flour named %q", name), f.Check())
		f = maslin()
		f.Preferments[0].Name = name
		refused(t, fmt.Sprintf("a levain named %q", name), f.Check())
		w := must(maslin().For(dough.ByDough{Mass: quantity.Kilograms(1)})).Weights()
		w.Final.Flours[0].Name = name
		_, err := w.Batch()
		refused(t, fmt.Sprintf("a weight named %q", name), err)
	}
	for _, name := range []string{"Dinkelmehl 630", "seigle T130 ✓", "ржаная мука", "قمح", "全粒粉"} {
		f := maslin()
		f.Liquids[0].Name = name
		if err := f.Check(); err != nil {
			t.Error(err)
		}
	}
}

// The second stage of five kilograms weighs 840 g with the culture that goes through it, and the first, where the
// culture is put in, 260 g: so much of either at hand is good for as much dough.
func TestStagesAtHandCountTheCultureInThem(t *testing.T) {
	for name, grams := range map[string]float64{"first stage": 260, "second stage": 840} {
		for _, target := range []dough.Target{dough.ByLevain{Preferment: name, Mass: quantity.Grams(grams)},
			dough.AtHand{Stock: []dough.Stock{{Name: name, Mass: quantity.Grams(grams)}}}} {
			b, err := threeStages().For(target)
			if off := b.Flour().Sub(quantity.Kilograms(5)).Grams(); err != nil || off > 0.001 || off < -0.001 {
				t.Errorf("%v of flour by %T of the %s, %v", b.Flour(), target, name, err)
			}
			workcheck.Verify(t, b.Working())
		}
	}
}
