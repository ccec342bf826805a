package dough_test

import (
	"slices"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// The starter on the weighing list is the inoculation asked for, in every account and on both
// bases, and the account decides where its flour and water are counted.
func TestSeedIsTheInoculationAskedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := maslin()
		pf := &f.Preferments[0]
		pf.Flour, pf.Hydration = points(t, "flour", 5, 18), points(t, "hydration", 60, 150)
		pf.Seed = dough.Seed{
			Percent: points(t, "seed", 1, 25), Hydration: points(t, "seed's hydration", 60, 100),
			Of: rapid.SampledFrom([]dough.InoculationBasis{dough.OfNewFlour, dough.OfMix}).Draw(t, "basis"),
			Account: rapid.SampledFrom([]dough.SeedAccount{dough.SeedCounted, dough.SeedRemoved, dough.SeedSeparate}).
				Draw(t,
					"account"),
		}
		b, err := f.For(dough.ByFlour{Mass: quantity.Kilograms(10)})
		if err != nil {
			t.Fatal(err)
		}
		build, _ := b.Build("levain")
		var starter, flour quantity.Mass
		for _, l := range build.Lines {
			switch l.Role {
			case dough.RoleStarter:
				starter = l.Mass
			case dough.RoleFlour:
				flour = flour.Add(l.Mass)
			}
		}
		got := starter.PercentOf(flour)
		if pf.Seed.Of == dough.OfMix {
			got = starter.PercentOf(build.Made)
		}
		// A line of its own is rounded to a millionth of a point of total flour.
		if !near(got, pf.Seed.Percent, 1e-5+1e-6/pf.Flour.Fraction()*(1+pf.Hydration.Fraction())) {
			t.Errorf("starter %v, %v %v, asked for %v", starter, got, pf.Seed.Of, pf.Seed.Percent)
		}
		levain := pf.Flour.Of(b.Flour())
		levain = levain.Add(pf.Hydration.Of(levain))
		wantMade, wantUsed := levain, levain
		switch pf.Seed.Account {
		case dough.SeedRemoved:
			wantMade = levain.Add(starter)
		case dough.SeedSeparate:
			wantMade, wantUsed = levain.Add(starter), levain.Add(starter)
		}
		if build.Made != wantMade || build.Used != wantUsed {
			t.Errorf("%v: made %v, used %v, want %v and %v", pf.Seed.Account, build.Made, build.Used, wantMade,
				wantUsed)
		}
		if got := b.Prefermented(); got != pf.Flour {
			t.Errorf("prefermented %v, not %v", got, pf.Flour)
		}
	})
}

func TestSeedOfOtherFlour(t *testing.T) {
	f := maslin()
	pf := &f.Preferments[0]
	pf.Blend = []dough.Part{{Name: "bread flour", Percent: pc("90 %")}, {Name: "whole rye", Percent: pc("10 %")}}
	pf.Seed = dough.Seed{Percent: pc("10 %"), Hydration: pc("100 %"),
		Blend: []dough.Part{{Name: "whole rye", Percent: pc("100 %")}}}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1050 / 0.15)})
	if err != nil {
		t.Fatal(err)
	}
	// 1050 g of flour in the levain: 100 g of starter bring 50 g, so that 1000 g are new; of the 105 g of
	// rye, 50 g came with the starter.
	build, _ := b.Build("levain")
	for name, want := range map[string]string{"bread flour": "945 g", "whole rye": "55 g", "water": "1000 g",
		"culture": "100 g"} {
		if got := lineOf(build.Lines, name).Mass.String(); got != want {
			t.Errorf("%s %s, want %s", name, got, want)
		}
	}
	pf.Blend = []dough.Part{{Name: "bread flour", Percent: pc("100 %")}}
	_, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	refused(t, "a rye starter in a levain without rye", err)
}

func TestSoakerInsideAPreferment(t *testing.T) {
	f := maslin()
	f.Preferments[0].Seed = dough.Seed{}
	f.Preferments[0].Soakers = []dough.Soaker{{Name: "scald", Kind: dough.Scald,
		Parts: []dough.Part{{Name: "whole rye", Percent: pc("5 %")}, {Name: "water", Percent: pc("10 %")}}}}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	builds := b.Builds()
	if len(builds) != 2 || builds[0].Name != "scald" || builds[0].Into != "levain" || builds[0].Fermented ||
		builds[0].Soaker != dough.Scald {
		t.Fatalf("builds %v", builds)
	}
	for name, want := range map[string]string{"whole rye": "100 g", "water": "50 g", "scald": "150 g"} {
		if got := lineOf(builds[1].Lines, name).Mass.String(); got != want {
			t.Errorf("%s %s, want %s", name, got, want)
		}
	}
	if b.Prefermented() != pc("15 %") || builds[1].Hydration() != pc("100 %") {
		t.Errorf("prefermented %v, levain at %v", b.Prefermented(), builds[1].Hydration())
	}
	if !slices.ContainsFunc(b.Cautions(), func(c working.Caution) bool { return c.Code() == "dough.caution_scald" }) {
		t.Errorf("a soaker that may spoil has no caution: %v", b.Cautions())
	}
}

// A soaker holds 50 g of rye and 100 g of water for a kilogram of flour, so 150 g of it go with a kilogram; one that
// takes more rye than the formula has is refused.
func TestSoakersSayHowMuchTheyTake(t *testing.T) {
	f := maslin()
	f.Soakers = []dough.Soaker{{Name: "scald", Kind: dough.Scald,
		Parts: []dough.Part{{Name: "whole rye", Percent: pc("5 %")}, {Name: "water", Percent: pc("10 %")}}}}
	b, err := f.For(dough.AtHand{Stock: []dough.Stock{{Name: "scald", Mass: quantity.Grams(150)}}})
	if err != nil || b.Flour() != quantity.Grams(1000) {
		t.Errorf("flour for 150 g of the scald: %v, %v", b.Flour(), err)
	}
	f.Soakers[0].Parts[0].Percent = pc("6 %") // with the levain's 15 % one more than there are
	_, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	refused(t, "21 % of 20 % of rye", err)
	f.Soakers[0].Parts[0] = dough.Part{Name: "water", Percent: pc("5 %")}
	_, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	refused(t, "water twice in one soaker", err)
}

// A culture on a line of its own is a part of the flour that is new in its own stage, to a millionth of a point: of the
// levain's flour the stage before it brings some, and as much culture as new flour weighs what is left.
func TestSeparateSeedOfALaterStage(t *testing.T) {
	for first, want := range map[string]float64{"5 %": 150, "3.123456 %": 168.76544, "10.000001 %": 99.99999,
		"10.000002 %": 99.99998} {
		f := maslin()
		blend := []dough.Part{{Name: "bread flour", Percent: pc("75 %")}, {Name: "whole rye", Percent: pc("25 %")}}
		f.Preferments = []dough.Preferment{{
			Name: "levain", Flour: pc("20 %"), Hydration: pc("100 %"), Blend: blend,
			Seed:        dough.Seed{Percent: pc("100 %"), Account: dough.SeedSeparate},
			Preferments: []dough.Preferment{{Name: "first stage", Flour: pc(first), Hydration: pc("100 %"), Blend: blend}},
		}}
		b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
		if err != nil {
			t.Fatal(err)
		}
		levain, _ := b.Build("levain")
		if got := lineOf(levain.Lines, "culture of levain").Mass; got != quantity.Grams(want) {
			t.Errorf("%v of culture where the first stage has %s of the flour, want %v g", got, first, want)
		}
	}
}

// A formula and a batch may be used from everywhere at once; run with -race.
func TestConcurrentUse(t *testing.T) {
	f := twelveFormula()
	b, err := maslin().For(dough.ByDough{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	want := b.String()
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			if _, err := f.For(dough.ByDough{Mass: quantity.Grams(1000)}); err != nil {
				t.Error(err)
			}
			_, _ = b.Weigh(dough.Scales{Flour: quantity.Grams(1)})
			_, _ = b.Weights().Batch()
			_, _, _ = b.FlourUp(quantity.Grams(10))
			_, _ = dough.Mishap{Batch: b, Extra: []dough.Stock{{Name: "water", Mass: quantity.Grams(9)}}}.Repair()
			if b.String() != want || b.Working().Len() == 0 {
				t.Error("a batch changed")
			}
		})
	}
	wait.Wait()
}
