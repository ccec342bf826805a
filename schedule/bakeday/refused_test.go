package bakeday

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule"
)

// Whatever of a bake is refused is told in whole sentences at its place: each field just below what it takes and just
// above it, and what does not go together.
func TestRefusedBakesInWords(t *testing.T) {
	var out strings.Builder
	for _, x := range bounds() {
		for _, v := range []float64{x.least - x.step, x.most + x.step} {
			b := hall()
			b.Kitchen.Mixers = slices.Clone(b.Kitchen.Mixers)
			l := *b.Levain
			r := *b.Retard
			b.Levain, b.Retard = &l, &r
			b = b.withDefaults()
			x.set(&b, v)
			for _, e := range quantity.InputErrors(b.check()) {
				fmt.Fprintln(&out, e)
			}
		}
	}
	add := func(of *[]Ingredient, l Ingredient) { *of = append(slices.Clone(*of), l) }
	rye := "whole rye flour"
	for _, c := range []struct {
		name   string
		change func(*Bake)
	}{
		{"nothing at all", func(b *Bake) { *b = Bake{} }},
		{"a levain that is ripe, and fed", func(b *Bake) { b.Levain.RipeNow, b.Levain.FedAgo = true, inMinutes(60) }},
		{"a box that is a refrigerator", func(b *Bake) { b.Bulk.Box = celsius(9) }},
		{"mixers", func(b *Bake) {
			b.Kitchen.Mixers = []KitchenMixer{{Kind: mixing.Hand}, {}, {Kind: mixing.Spiral}, {Kind: mixing.Spiral}}
		}},
		{"more than there is", func(b *Bake) {
			b.Kitchen.Pots, b.Kitchen.Oven.Holds, b.Oven.Together, b.Kitchen.RefrigeratorPlaces = 1, 3, 4, 5
			b.Kitchen.Oven.Hottest = celsius(244)
		}},
		{"a fold in the lamination", func(b *Bake) { b.Bulk.Lamination = &Lamination{After: inMinutes(45)} }},
		{"a lamination before a fold", func(b *Bake) {
			b.Bulk.FoldEvery, b.Bulk.Lamination = inMinutes(100), &Lamination{After: inMinutes(60)}
		}},
		{"levers of one end", func(b *Bake) {
			one := []quantity.Percent{pct(5)}
			b.Levers = Levers{Prefermented: one, Inoculation: one, Temperature: []quantity.Temperature{celsius(20)},
				Box: []quantity.Temperature{celsius(20)}, Retard: []quantity.Elapsed{inMinutes(600)}}
		}},
		{"moments", func(b *Bake) {
			b.Flours[0].At = schedule.Shape
			b.Bulk.Folds = 2
			for _, l := range []Ingredient{{At: schedule.Laminate}, {At: schedule.Cool}, {At: schedule.Shape, Fold: 1},
				{Fold: 3}, {Fold: -1}, {At: schedule.Fold}} {
				l.Name, l.Percent, l.Kind = fmt.Sprintf("walnuts %d", len(b.Inclusions)+1), pct(1), dough.KindNuts
				add(&b.Inclusions, l)
			}
		}},
		{"folds that there are none of", func(b *Bake) {
			b.Bulk.Folds = 0
			add(&b.Inclusions, Ingredient{Name: "walnuts", Percent: pct(5), Kind: dough.KindNuts, Fold: 1})
		}},
		{"temperatures", func(b *Bake) {
			b.Liquids = []Ingredient{{Name: "water", Percent: pct(70), Kind: dough.KindWater, Temperature: celsius(61)}}
			add(&b.Others, Ingredient{Name: "butter", Percent: pct(5), Kind: dough.KindButter, Temperature: celsius(-26)})
		}},
		{"preferments", func(b *Bake) {
			b.Preferments = []PrefermentWork{
				{Name: "sour", Kind: dough.RyeSour, Prefermented: pct(10), Hydration: pct(100)},
				{Kind: dough.Poolish, Prefermented: pct(10), Hydration: pct(100), Liquid: "milk", Yeast: pct(0.1),
					Takes: inMinutes(0.5), Temperature: celsius(41)},
				{Name: "biga", Kind: dough.Biga, Prefermented: pct(10), Hydration: pct(55), AtLeast: inMinutes(4),
					AtMost: inMinutes(5761)},
			}
		}},
		{"soakers", func(b *Bake) {
			b.Soakers = []SoakerWork{{Name: "scald", Kind: dough.Scald, Parts: []SoakerPart{{Name: rye, Percent: pct(5)},
				{Name: "water", Percent: pct(10)}}, Takes: inMinutes(241), AtLeast: inMinutes(60), AtMost: inMinutes(59),
				Temperature: celsius(61)}}
		}},
		{"notes", func(b *Bake) {
			b.Notes = []StepNote{{}, {Step: "moon", Says: "a\nb"}, {Step: "fold-3", Says: strings.Repeat("x", 201)}}
		}},
		{"too many notes", func(b *Bake) { b.Notes = slices.Repeat([]StepNote{{Step: "fold", Says: "gently"}}, 51) }},
		{"names", func(b *Bake) { b.Name, b.Kitchen.Name = "a\u202eb", strings.Repeat("x", 201) }},
		{"weights beside percentages", func(b *Bake) {
			b.Flours[0].Weight, b.SaltWeight, b.PerLoaf = quantity.Grams(700), quantity.Grams(10), true
		}},
		{"a weight without that of the flour", func(b *Bake) {
			b.Salt, b.SaltWeight, b.PerLoaf = quantity.Percent{}, quantity.Grams(10), true
		}},
		{"a flour without weight", func(b *Bake) {
			b.Flours = []Ingredient{{Name: "wheat", Weight: quantity.Grams(700), Kind: dough.KindWheat}, {Name: "spelt"}}
		}},
	} {
		b := hall()
		b.Flours, b.Kitchen.Mixers = slices.Clone(b.Flours), slices.Clone(b.Kitchen.Mixers)
		l := *b.Levain
		b.Levain = &l
		c.change(&b)
		fmt.Fprintf(&out, "== %s\n%v\n", c.name, b.Check(wednesday(t)))
	}
	trial.Kept(t, "refused.txt", out.String())
}
