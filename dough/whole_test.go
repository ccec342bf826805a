package dough_test

import (
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// One answer of each kind as it is told today, page and derivation. Where the figures come from, and that each line of
// arithmetic holds, the other tests know; here stands that nothing is lost, and that no number moves unseen.
func TestWholeAnswers(t *testing.T) {
	g, p := quantity.Grams, quantity.MustPercent
	loaves := must(hall().For(dough.Baked{Pieces: 6, Each: g(780), Loss: p("12 %")}))
	stages := must(threeStages().For(dough.Pieces{Count: 20, Each: g(950)}))
	milk := must(milkLoaf().For(dough.Pieces{Count: 5, Each: g(344.3)}))
	small := must(hall().For(dough.ByFlour{Mass: g(1000)}))
	drier := hall()
	drier.Liquids[0].Percent = p("68 %")
	soaked := milkLoaf()
	soaked.Flours = []dough.Part{{Name: "bread flour", Percent: p("90 %"), Kind: dough.KindWheat},
		{Name: "whole rye", Percent: p("10 %"), Kind: dough.KindWholeRye}}
	soaked.Soakers = []dough.Soaker{{Name: "scalded rye", Kind: dough.Scald, Parts: []dough.Part{
		{Name: "whole rye", Percent: p("10 %")}, {Name: "water", Percent: p("20 %")}}}}
	removed := hall()
	removed.Preferments[0].Seed = dough.Seed{Percent: p("20 %"), Hydration: p("100 %"), Account: dough.SeedRemoved}
	back := must(removed.For(dough.ByFlour{Mass: g(2000)}))
	weighed := must(dough.Weights{
		Final: dough.Bowl{Flours: []dough.Weight{{Name: "wheat", Mass: g(800), Kind: dough.KindWheat}},
			Liquids: []dough.Weight{{Name: "water", Mass: g(500)}}, Salt: g(20),
			Others: []dough.Weight{{Name: "yeast", Mass: g(0.05), Kind: dough.KindInstantYeast}}},
		Preferments: []dough.PrefermentWeights{{Name: "poolish", Kind: dough.Poolish, Used: g(390), Bowl: dough.Bowl{
			Flours:  []dough.Weight{{Name: "wheat", Mass: g(200)}},
			Liquids: []dough.Weight{{Name: "water", Mass: g(200)}}}}},
	}.Batch())
	scales := dough.Scales{Flour: g(1), Fine: g(0.1)}
	for name, a := range map[string]trial.Told{
		"loaves": loaves, "stages": stages, "milk": milk,
		"loaves-weighed": must(loaves.Weigh(scales)), "stages-weighed": must(stages.Weigh(scales)),
		"scald": must(soaked.For(dough.ByDough{Mass: g(2500)})), "removed": back, "weighed": weighed,
		"by-levain": must(threeStages().For(dough.ByLevain{Preferment: "ripe sour", Mass: g(2000)})),
		"by-stage":  must(threeStages().For(dough.ByLevain{Preferment: "second stage", Mass: g(500)})),
		"at-hand": must(hall().For(dough.AtHand{Stock: []dough.Stock{{Name: "bread flour", Mass: g(1700)},
			{Name: "water", Mass: g(1200)}, {Name: "levain", Mass: g(900)}}})),
		"by-volume": must(milkLoaf().For(dough.ByVolume{Volume: quantity.Liters(4), Density: 1.1,
			Rise: p("150 %")})),
		"one-levain-removed": must(dough.OneLevain{Preferment: "levain", Doughs: []dough.Batch{back, back}}.Plan()),
		"too-little-yeast": must(dough.Mishap{Batch: milk, Extra: []dough.Stock{{Name: "dry yeast", Mass: g(-0.1)},
			{Name: "water", Mass: g(25)}}}.Repair()),
		"levain": must(dough.LevainBuild{Want: g(300), KeepBack: g(30), Hydration: p("100 %"),
			Starter: dough.Starter{Mass: g(12), Hydration: p("60 %")}, Inoculation: p("20 %")}.Plan()),
		"stiff-levain": must(dough.LevainBuild{Want: g(800), Hydration: p("50 %"),
			Starter: dough.Starter{Mass: g(200), Hydration: p("100 %")}, Inoculation: p("30 %")}.Plan()),
		"one-levain": must(dough.OneLevain{Preferment: "levain", AtHand: g(1000), Doughs: []dough.Batch{loaves,
			must(drier.For(dough.Pieces{Count: 24, Each: g(60)}))}}.Plan()),
		"too-much-water": must(dough.Mishap{Batch: small, Extra: []dough.Stock{{Name: "water", Mass: g(40)}}}.Repair()),
		"more-flour": must(dough.Mishap{Batch: small, Extra: []dough.Stock{{Name: "bread flour", Mass: g(50)}},
			Restore: dough.RestoreAll}.Repair()),
	} {
		trial.KeptAnswer(t, name, a, 2500)
	}
}
