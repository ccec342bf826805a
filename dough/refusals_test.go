package dough_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// A set of allergens travels as a list of its words; a word that is none of them is refused where it stands.
func TestAllergensTravel(t *testing.T) {
	for _, a := range []dough.Allergens{0, dough.Milk, dough.AllergensEU, dough.AllergensUS,
		dough.AllergensEU | dough.AllergensUS} {
		trial.Travels(t, a)
	}
	if text, err := json.Marshal(dough.Milk | dough.Gluten); string(text) != `["gluten","milk"]` {
		t.Errorf("%s, %v", text, err)
	}
	if _, err := json.Marshal(dough.Sulphites << 1); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Errorf("an allergen that has no word: %v", err)
	}
	set := dough.Egg
	err := json.Unmarshal([]byte(`["milk","stones"]`), &set)
	if !errors.Is(err, quantity.ErrOutOfRange) || !strings.Contains(err.Error(), `got "stones"`) || set != dough.Egg {
		t.Errorf("%v, and %v", err, set)
	}
}

// Yeast that was left out, and milk of which there is a tenth too much: all else grows by a tenth, and the yeast, of
// which there is none, is added whole.
func TestRepairOfWhatIsMissing(t *testing.T) {
	b, err := milkLoaf().For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	r, err := dough.Mishap{Batch: b, Restore: dough.RestoreAll, Extra: []dough.Stock{
		{Name: "dry yeast", Mass: quantity.Grams(-0.5)}, {Name: "milk", Mass: quantity.Grams(30)}}}.Repair()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]quantity.Mass{"bread flour": quantity.Grams(100), "water": quantity.Grams(40),
		"salt": quantity.Grams(2), "dry yeast": quantity.Grams(0.55), "malt": quantity.Grams(0.1)}
	for _, l := range r.Add {
		if l.Mass != want[l.Name] {
			t.Errorf("%v of %s, want %v", l.Mass, l.Name, want[l.Name])
		}
	}
	if len(r.Add) != len(want) || r.After.Dough() != quantity.Grams(1893.65) {
		t.Errorf("%v, and then %v", r.Add, r.After.Dough())
	}
	// A tenth too much water takes a tenth more flour and salt; milk, which is no water, is left as it is.
	for restore, add := range map[dough.Restore]string{
		dough.RestoreHydrationAndSalt: "[100 g bread flour (100 %) 2 g salt (2 %)]",
		dough.RestoreHydration:        "[100 g bread flour (100 %)]",
	} {
		r, err = dough.Mishap{Batch: b, Restore: restore,
			Extra: []dough.Stock{{Name: "water", Mass: quantity.Grams(40)}}}.Repair()
		if got := fmt.Sprint(r.Add); err != nil || got != add {
			t.Errorf("%v: %s, want %s (%v)", restore, got, add, err)
		}
	}
	_, err = dough.Mishap{Batch: b, Extra: []dough.Stock{{Name: "salt", Mass: quantity.Grams(-21)}}}.Repair()
	if !strings.Contains(trial.Refused(err), "mass inconsistent") {
		t.Errorf("more salt left out than there was: %v", trial.Refused(err))
	}
}

// One levain for two doughs has to be the same in both: its flours, their number, its kind, and its water.
func TestLevainsThatAreNotOne(t *testing.T) {
	plan := func(change func(*dough.Preferment)) error {
		other := maslin()
		change(&other.Preferments[0])
		var batches []dough.Batch
		for _, f := range []dough.Formula{maslin(), other} {
			b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
			if err != nil {
				t.Fatal(err)
			}
			batches = append(batches, b)
		}
		_, err := dough.OneLevain{Preferment: "levain", Doughs: batches}.Plan()
		return err
	}
	for name, change := range map[string]func(*dough.Preferment){
		"another flour":         func(p *dough.Preferment) { p.Blend[0].Name = "bread flour" },
		"two flours":            func(p *dough.Preferment) { p.Blend = nil },
		"another kind":          func(p *dough.Preferment) { p.Kind = dough.Poolish },
		"wetter by a hundredth": func(p *dough.Preferment) { p.Hydration = pc("100.01 %") },
	} {
		if got := trial.Refused(plan(change)); got != "doughs[1] inconsistent" {
			t.Errorf("%s: %q", name, got)
		}
	}
	if err := plan(func(p *dough.Preferment) { p.Flour = pc("10 %") }); err != nil {
		t.Errorf("less of the same levain: %v", err)
	}
}

// Shares may differ by a thousandth of a point, 10 mg in a kilogram, and not by more; what two doughs share is the sum
// of both, its flour too.
func TestLevainsThatAreNearlyOne(t *testing.T) {
	batch := func(more quantity.Mass) dough.Batch {
		b, err := dough.Weights{
			Final: dough.Bowl{Flours: []dough.Weight{{Name: "wheat", Mass: quantity.Grams(2000)}}},
			Preferments: []dough.PrefermentWeights{{Name: "levain", Bowl: dough.Bowl{
				Flours: []dough.Weight{{Name: "wheat", Mass: quantity.Grams(500).Add(more)}},
				Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(250).Sub(more.Divide(2))},
					{Name: "milk", Mass: quantity.Grams(250).Sub(more.Divide(2))}},
			}}},
		}.Batch()
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	plan := func(more float64) (dough.SharedLevain, error) {
		return dough.OneLevain{Preferment: "levain",
			Doughs: []dough.Batch{batch(quantity.Mass{}), batch(quantity.Grams(more))}}.Plan()
	}
	s, err := plan(0.00999)
	if err != nil || s.Build.Used != quantity.Kilograms(2) || s.Build.Flour != quantity.Grams(1000.00999) ||
		s.Build.Water != quantity.Grams(999.99001) {
		t.Errorf("%v of flour and %v of liquids in %v, %v", s.Build.Flour, s.Build.Water, s.Build.Used, err)
	}
	for _, more := range []float64{0.01, -0.01} {
		if _, err := plan(more); err != nil {
			t.Errorf("%v g more flour, a thousandth of a point: %v", more, err)
		}
	}
	for _, more := range []float64{0.01005, -0.01005} {
		if _, err := plan(more); trial.Refused(err) != "doughs[1] inconsistent" {
			t.Errorf("%v g more flour: %v", more, err)
		}
	}
}

// 300 % of levain at 100 % hydration of all the flour would be 150 % of the flour; 200 % are all of it. Read as of the
// dough it takes the formula's total: 40 % of 175 % are 70 parts, half of them flour.
func TestPrintedLevainsAtTheirLimits(t *testing.T) {
	l := dough.PrintedLevain{Percent: pc("200 %"), Reading: dough.LevainOfTotalFlour, Hydration: pc("100 %")}
	if x, err := l.Flour(); err != nil || x != pc("100 %") {
		t.Errorf("all of the flour: %v, %v", x, err)
	}
	l.Percent = pc("300 %")
	if _, err := l.Flour(); !errors.Is(err, quantity.ErrInconsistent) || !strings.Contains(err.Error(), "150 %") {
		t.Errorf("more than all of the flour: %v", err)
	}
	l.Percent, l.Reading = pc("40 %"), dough.LevainOfDough
	if _, err := l.Flour(); trial.Refused(err) != "total required" {
		t.Errorf("without a total: %v", err)
	}
	l.Total = pc("175 %")
	if x, err := l.Flour(); err != nil || x != pc("35 %") {
		t.Errorf("of the dough: %v, %v", x, err)
	}
	l.Total = pc("99 %")
	if _, err := l.Flour(); trial.Refused(err) != "total out of range" {
		t.Errorf("a total without its flour: %v", err)
	}
}

// A feeding without flour has no hydration, and its result says none.
func TestFeedingWithoutFlour(t *testing.T) {
	water := dough.Feeding{Water: quantity.Grams(100)}
	if water.Hydration().IsValid() || water.Result() != (dough.Starter{Mass: quantity.Grams(100)}) {
		t.Errorf("%v of %v", water.Result(), water)
	}
}

// Weights that no bowl holds are refused where they stand, all at once.
func TestWeightsThatAreRefused(t *testing.T) {
	b, err := maslin().For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	w := b.Weights()
	water := &w.Final.Liquids[0]
	water.Water = pc("100 %")
	if _, err := w.Batch(); err != nil {
		t.Errorf("water that is all water: %v", err)
	}
	soaker := dough.SoakerWeights{Name: "soaker", Bowl: dough.Bowl{Others: []dough.Weight{{Name: "seeds",
		Mass: quantity.Grams(50)}}}}
	for _, used := range []float64{-1, 2e8} {
		wrong := w
		soaker.Used = quantity.Grams(used)
		wrong.Soakers = []dough.SoakerWeights{soaker}
		if _, err := wrong.Batch(); !strings.Contains(trial.Refused(err), "soakers[0].used out of range") {
			t.Errorf("%v g of the soaker used: %v", used, trial.Refused(err))
		}
	}
	water.Water, water.Mass, water.Kind = pc("100.000001 %"), quantity.Grams(-1), 99
	_, err = w.Batch()
	if got := trial.Refused(err); got != "final.liquids[0].mass out of range; final.liquids[0].kind out of range; "+
		"final.liquids[0].water out of range; preferments[0].bowl.liquids[0].kind inconsistent" {
		t.Error(got)
	}
}

// The water that is stated of milk in one bowl holds for the same milk in another.
func TestWaterIsStatedOnce(t *testing.T) {
	for _, first := range []bool{true, false} {
		var water [2]quantity.Percent
		water[1] = pc("80 %")
		if first {
			water[0], water[1] = water[1], water[0]
		}
		milk := func(i int) []dough.Weight {
			return []dough.Weight{{Name: "milk", Mass: quantity.Grams(100), Kind: dough.KindMilk, Water: water[i]}}
		}
		flour := []dough.Weight{{Name: "wheat", Mass: quantity.Grams(100)}}
		b, err := dough.Weights{Final: dough.Bowl{Flours: flour, Liquids: milk(0)}, Preferments: []dough.PrefermentWeights{
			{Name: "sponge", Bowl: dough.Bowl{Flours: flour, Liquids: milk(1)}}}}.Batch()
		if e := b.EffectiveHydration(); err != nil || e.Hydration != pc("80 %") || len(e.Assumed) > 0 {
			t.Errorf("%+v, %v", e, err)
		}
	}
}

// A microgram that rounding shares out otherwise in a levain than in the dough is borne by the levain, which has all of
// one flour: 1000.000002 g are 333.333331, 333.333330 and 333.333341 g.
func TestALevainOfAllOfAFlour(t *testing.T) {
	f := dough.Formula{
		Flours: []dough.Part{{Name: "a", Percent: pc("33.333333 %")}, {Name: "b", Percent: pc("33.333333 %")},
			{Name: "c", Percent: pc("33.333334 %")}},
		Liquids: []dough.Part{{Name: "water", Percent: pc("70 %")}},
		Preferments: []dough.Preferment{{Name: "levain", Flour: pc("33.333333 %"), Hydration: pc("100 %"),
			Blend: []dough.Part{{Name: "b", Percent: pc("100 %")}}}},
	}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000.000002)})
	if err != nil {
		t.Fatal(err)
	}
	levain, _ := b.Build("levain")
	if got, all := lineOf(levain.Lines, "b").Mass, lineOf(b.Overall(), "b").Mass; got != all ||
		all != quantity.Grams(333.33333) {
		t.Errorf("%v of %v is in the levain", got, all)
	}
	if left := total(b.FinalDough()); left != b.Dough() {
		t.Errorf("the final dough adds up to %v of %v", left, b.Dough())
	}
}
