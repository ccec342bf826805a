package dough_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// As much as a formula may hold is taken, and one more is refused: lines, letters of a name, builds of both sorts.
func TestLimitsOfAFormula(t *testing.T) {
	for name, c := range map[string]struct {
		most   int
		with   func(f *dough.Formula, n int)
		beyond string
	}{
		"lines": {200, func(f *dough.Formula, n int) { // three of them are the formula's
			for i := range n - 3 {
				f.Others = append(f.Others, dough.Part{Name: fmt.Sprint("spice ", i), Percent: pc("0.1 %")})
			}
		}, "flours out of range"},
		"letters": {200, func(f *dough.Formula, n int) { f.Liquids[0].Name = strings.Repeat("w", n) },
			"liquids[0].name out of range"},
		"builds": {50, func(f *dough.Formula, n int) {
			f.Preferments = nil
			for i := range n - 20 {
				f.Preferments = append(f.Preferments, dough.Preferment{Name: fmt.Sprint("levain ", i), Flour: pc("1 %"),
					Hydration: pc("100 %")})
			}
			for i := range 20 {
				f.Soakers = append(f.Soakers, dough.Soaker{Name: fmt.Sprint("soaker ", i),
					Parts: []dough.Part{{Name: "water", Percent: pc("1 %")}}})
			}
		}, "preferments out of range"},
		"water of a levain": {1000, func(f *dough.Formula, n int) {
			f.Liquids[0].Percent = pc("900 %")
			f.Preferments[0].Hydration = quantity.NewPercent(float64(n))
		}, "preferments[0].hydration out of range"},
	} {
		for n, want := range map[int]string{c.most: "", c.most + 1: c.beyond} {
			f := maslin()
			c.with(&f, n)
			_, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
			if got := trial.Refused(err); got != want {
				t.Errorf("%d %s: %q, want %q", n, name, got, want)
			}
			if n == 51 && !strings.Contains(err.Error(), "got 51 preferments and soakers") {
				t.Errorf("%v", err)
			}
		}
	}
	f := maslin()
	f.Preferments[0].Hydration, f.Preferments[0].Seed = pc("1 %"), dough.Seed{}
	if _, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)}); err != nil {
		t.Errorf("the stiffest that may be, of 1 %%: %v", err)
	}
	f.Preferments[0].Blend = make([]dough.Part, 201)
	_, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err == nil || !strings.Contains(err.Error(), "got 201 flours, want at most 200") {
		t.Errorf("201 flours of a levain: %.300v", err)
	}
	b, err := maslin().For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	for n, want := range map[int]string{200: "", 201: "extra out of range"} {
		extra := make([]dough.Stock, n)
		for i := range extra {
			extra[i] = dough.Stock{Name: "water", Mass: quantity.Grams(0.1)}
		}
		_, err := dough.Mishap{Batch: b, Extra: extra}.Repair()
		if got := trial.Refused(err); got != want {
			t.Errorf("%d mishaps: %q, want %q", n, got, want)
		}
	}
}

// A target that is too small, too large or beyond what a dough weighs is refused at the field that says so.
func TestTargetsAreRefusedWhereTheyStand(t *testing.T) {
	stock := func(grams float64) dough.Target {
		return dough.AtHand{Stock: []dough.Stock{{Name: "salt", Mass: quantity.Grams(grams)}}}
	}
	for _, c := range []struct {
		target dough.Target
		want   string
	}{
		{dough.ByVolume{Volume: quantity.Milliliters(1), Density: 0.1}, "volume out of range"}, // a tenth of a gram
		{dough.ByVolume{Volume: quantity.Liters(1), Density: 2}, ""},
		{dough.ByVolume{Volume: quantity.Liters(1), Density: 2.001}, "density out of range"},
		{dough.ByLevain{Preferment: "levain", Mass: quantity.Grams(0.9)}, "mass out of range"},
		{dough.ByLevain{Preferment: "levain", Mass: quantity.Grams(1)}, ""},
		{stock(0.019), "stock out of range"}, // of less than a gram of flour, at 2 %
		{stock(0.02), ""},
		{stock(-1), "stock[0].mass out of range"},
	} {
		_, err := maslin().For(c.target)
		if got := trial.Refused(err); (got == "") != (c.want == "") || !strings.HasSuffix(got, c.want) ||
			strings.Contains(got, ";") {
			t.Errorf("%+v: %q, want %q", c.target, got, c.want)
		}
	}
}

// Of weights too: a bowl with nothing in it is refused at its own place, a nested one too.
func TestEmptyBowlsAreRefused(t *testing.T) {
	b, err := maslin().For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	w := b.Weights()
	w.Soakers = []dough.SoakerWeights{{Name: "soaker"}}
	if _, err := w.Batch(); trial.Refused(err) != "soakers[0] inconsistent" {
		t.Errorf("an empty soaker: %v", err)
	}
	w = b.Weights()
	bowl := dough.Bowl{Flours: []dough.Weight{{Name: "whole rye", Mass: quantity.Grams(10)}}}
	w.Preferments[0].Preferments = []dough.PrefermentWeights{{Name: "first", Bowl: bowl}, {Name: "", Bowl: bowl}}
	if _, err := w.Batch(); trial.Refused(err) != "preferments[0].preferments[1].name required" {
		t.Errorf("a nested bowl without a name: %v", err)
	}
}

// A dough yield counts what is poured, its gross everything; what is less than nothing is refused.
func TestDoughYieldsThatAreNone(t *testing.T) {
	y := dough.DoughYield{Flour: quantity.Grams(1000), Liquid: quantity.Grams(700), Rest: quantity.Grams(-1)}
	if _, err := y.Gross(); trial.Refused(err) != "rest out of range" || y.String() != "no dough yield" {
		t.Errorf("%v, %v", y, err)
	}
	if r, ok := dough.OtherPreferment.UsualHydration(); ok || !r.Low.IsZero() || !r.High.IsZero() {
		t.Errorf("of other preferments nothing is usual: %v", r)
	}
}

// The words of roles, as data has them; a list of allergens is a list.
func TestWordsOfLines(t *testing.T) {
	for role, want := range map[dough.Role]string{dough.RoleFlour: "flour", dough.RoleLiquid: "liquid",
		dough.RoleSalt: "salt", dough.RoleOther: "other", dough.RoleInclusion: "inclusion", dough.RoleStarter: "starter",
		dough.RolePreferment: "preferment"} {
		if text, err := role.MarshalText(); string(text) != want || err != nil {
			t.Errorf("%d is written %q, want %q", role, text, want)
		}
	}
	var a dough.Allergens
	if err := json.Unmarshal([]byte(`5`), &a); err == nil {
		t.Error("5 is no list of allergens")
	}
}

// Pieces and what is left to divide are told beside the flour only where the flour was rounded up.
func TestOnlyARoundedBatchTellsItsPieces(t *testing.T) {
	plain, err := maslin().For(dough.ByFlour{Mass: quantity.Grams(995)})
	if err != nil {
		t.Fatal(err)
	}
	pieces, err := maslin().For(dough.Pieces{Count: 2, Each: quantity.Grams(800)})
	if err != nil {
		t.Fatal(err)
	}
	up, _, err := pieces.FlourUp(quantity.Grams(10))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		b    dough.Batch
		want bool
	}{{plain, false}, {up, true}} {
		if text, err := json.Marshal(c.b); err != nil || strings.Contains(string(text), `"scaled":`) != c.want {
			t.Errorf("%s, %v", text, err)
		}
	}
}
