package dough_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

func TestImpossibleLevainsAreRefused(t *testing.T) {
	good := dough.LevainBuild{Want: quantity.Grams(300), Hydration: pc("100 %"),
		Starter: dough.Starter{Mass: quantity.Grams(50), Hydration: pc("100 %")}}
	if _, err := good.Plan(); err != nil {
		t.Fatal(err)
	}
	spoil := map[string]func(*dough.LevainBuild){
		"five stages":       func(l *dough.LevainBuild) { l.Stages = 5 },
		"minus one stage":   func(l *dough.LevainBuild) { l.Stages = -1 },
		"bounds crossed":    func(l *dough.LevainBuild) { l.Least, l.Most = pc("50 %"), pc("20 %") },
		"unknown basis":     func(l *dough.LevainBuild) { l.Of = 9 },
		"hydration of 10 %": func(l *dough.LevainBuild) { l.Hydration = pc("10 %") },
		"wetter than wanted": func(l *dough.LevainBuild) {
			l.Hydration, l.Starter.Hydration, l.Inoculation, l.Stages = pc("50 %"), pc("500 %"), pc("200 %"), 1
		},
	}
	for i, m := range badMasses {
		spoil[fmt.Sprint("want ", i)] = func(l *dough.LevainBuild) { l.Want = m }
		spoil[fmt.Sprint("keep ", i)] = func(l *dough.LevainBuild) { l.KeepBack = m }
		spoil[fmt.Sprint("starter ", i)] = func(l *dough.LevainBuild) { l.Starter.Mass = m }
	}
	for i, p := range badPercents {
		spoil[fmt.Sprint("hydration ", i)] = func(l *dough.LevainBuild) { l.Hydration = p }
		spoil[fmt.Sprint("starter's hydration ", i)] = func(l *dough.LevainBuild) { l.Starter.Hydration = p }
		spoil[fmt.Sprint("inoculation ", i)] = func(l *dough.LevainBuild) { l.Inoculation = p }
		spoil[fmt.Sprint("least ", i)] = func(l *dough.LevainBuild) { l.Least = p }
		spoil[fmt.Sprint("most ", i)] = func(l *dough.LevainBuild) { l.Most = p }
	}
	for name, f := range spoil {
		l := good
		f(&l)
		_, err := l.Plan()
		refused(t, name, err)
	}
	_, err := dough.DoughYield{Flour: quantity.Micrograms(1000), Liquid: quantity.Kilograms(100_000)}.Gross()
	refused(t, "a yield of ten billion", err)
	for i, m := range badMasses {
		_, err := dough.DoughYield{Flour: m, Liquid: m}.Net()
		refused(t, fmt.Sprint("yield ", i), err)
	}
	for i, p := range badPercents {
		for _, r := range []dough.LevainReading{dough.FlourOfTotalFlour, dough.LevainOfAddedFlour, dough.LevainOfTotalFlour,
			dough.LevainOfDough, 99} {
			_, err := dough.PrintedLevain{Percent: p, Reading: r, Hydration: pc("100 %"), Total: pc("170 %")}.Flour()
			refused(t, fmt.Sprint("share ", i, r), err)
		}
		_, err := dough.PrintedLevain{Percent: pc("20 %"), Reading: dough.LevainOfDough, Hydration: p, Total: p}.Flour()
		refused(t, fmt.Sprint("share ", i), err)
	}
}

func TestImpossibleWeightsAreRefused(t *testing.T) {
	good := func() dough.Weights {
		b, err := maslin().For(dough.ByDough{Mass: quantity.Grams(1000)})
		if err != nil {
			t.Fatal(err)
		}
		return b.Weights()
	}
	if _, err := good().Batch(); err != nil {
		t.Fatal(err)
	}
	spoil := map[string]func(*dough.Weights){
		"no flour": func(w *dough.Weights) { w.Final.Flours = nil; w.Preferments = nil },
		"water in two roles": func(w *dough.Weights) {
			w.Final.Others = []dough.Weight{{Name: "water",
				Mass: quantity.Grams(1)}}
		},
		"rye of two kinds": func(w *dough.Weights) { w.Preferments[0].Bowl.Flours[0].Kind = dough.KindRye },
		"no name":          func(w *dough.Weights) { w.Final.Flours[0].Name = "" },
		"long name":        func(w *dough.Weights) { w.Final.Flours[0].Name = long },
		"many lines":       func(w *dough.Weights) { w.Final.Others = make([]dough.Weight, 100_000) },
		"many levains":     func(w *dough.Weights) { w.Preferments = make([]dough.PrefermentWeights, 100_000) },
		"inside itself":    func(w *dough.Weights) { w.Preferments[0].Preferments = w.Preferments },
		"levain of nothing": func(w *dough.Weights) {
			w.Preferments[0].Bowl = dough.Bowl{}
			w.Preferments[0].Seed = dough.SeedWeights{}
		},
		"levain of water": func(w *dough.Weights) {
			w.Preferments[0].Bowl.Flours = nil
			w.Preferments[0].Seed = dough.SeedWeights{}
		},
		"more used than made": func(w *dough.Weights) { w.Preferments[0].Used = quantity.Kilograms(10) },
		"starter not split":   func(w *dough.Weights) { w.Preferments[0].Seed.Hydration = quantity.Percent{} },
		"starter only":        func(w *dough.Weights) { w.Preferments[0].Bowl = dough.Bowl{} },
		"unnamed levain":      func(w *dough.Weights) { w.Preferments[0].Name = "" },
		"unknown kind":        func(w *dough.Weights) { w.Final.Flours[0].Kind = 222 },
		"unknown levain":      func(w *dough.Weights) { w.Preferments[0].Kind = 222 },
		"unknown account":     func(w *dough.Weights) { w.Preferments[0].Seed.Account = 222 },
		"soaker of nothing":   func(w *dough.Weights) { w.Soakers = []dough.SoakerWeights{{Name: "soaker"}} },
	}
	for i, m := range badMasses {
		spoil[fmt.Sprint("flour ", i)] = func(w *dough.Weights) { w.Final.Flours[0].Mass = m }
		spoil[fmt.Sprint("salt ", i)] = func(w *dough.Weights) { w.Final.Salt = m }
		spoil[fmt.Sprint("used ", i)] = func(w *dough.Weights) { w.Preferments[0].Used = m }
		spoil[fmt.Sprint("starter ", i)] = func(w *dough.Weights) { w.Preferments[0].Seed.Mass = m }
	}
	for i, p := range badPercents {
		spoil[fmt.Sprint("content ", i)] = func(w *dough.Weights) { w.Final.Flours[0].Water = p }
		spoil[fmt.Sprint("starter's hydration ", i)] = func(w *dough.Weights) { w.Preferments[0].Seed.Hydration = p }
		spoil[fmt.Sprint("starter's blend ", i)] = func(w *dough.Weights) {
			w.Preferments[0].Seed.Blend = []dough.Part{{Name: "whole rye", Percent: p}}
		}
	}
	for name, f := range spoil {
		w := good()
		f(&w)
		_, err := w.Batch()
		refused(t, name, err)
	}
}

func TestImpossibleRepairsAreRefused(t *testing.T) {
	b, err := maslin().For(dough.ByDough{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []dough.Stock{
		{Name: "milk", Mass: quantity.Grams(1)}, {Name: long, Mass: quantity.Grams(1)}, {Name: "", Mass: quantity.Grams(1)},
		{Name: "water", Mass: quantity.Grams(-5000)}, {Name: "salt", Mass: quantity.Grams(-500)}, {Name: "levain",
			Mass: quantity.Grams(-500)},
		{Name: "water", Mass: badMasses[0]}, {Name: "water", Mass: quantity.Kilograms(1e6)}, {Name: "levain",
			Mass: badMasses[0]},
	} {
		for _, r := range []dough.Restore{dough.RestoreHydration, dough.RestoreHydrationAndSalt, dough.RestoreAll} {
			_, err := dough.Mishap{Batch: b, Extra: []dough.Stock{e}, Restore: r}.Repair()
			refused(t, fmt.Sprintf("%.40s", e.Name+" "+e.Mass.String()), err)
		}
	}
	_, err = dough.Mishap{Batch: b, Restore: 77}.Repair()
	refused(t, "unknown restore", err)
	for _, s := range []dough.Scales{
		{Flour: quantity.Grams(-1)}, {Flour: badMasses[0]}, {Flour: quantity.Grams(1),
			Fine: quantity.Grams(2)}, {Flour: quantity.Kilograms(2)},
		{Flour: quantity.Grams(1), FineBelow: quantity.Grams(-1)}, {Flour: quantity.Micrograms(1)},
	} {
		_, err := b.Weigh(s)
		refused(t, fmt.Sprint(s), err)
	}
}
