package dough_test

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"

	"pgregory.net/rapid"
)

// points draws a percentage between two numbers of points, to a hundredth or to the last digit.
func points(t *rapid.T, label string, low, high int64) quantity.Percent {
	step := rapid.SampledFrom([]int64{1_000_000, 10_000, 1}).Draw(t, label+" step")
	return quantity.MustPercent("0.000001 %").Times(rapid.Int64Range(low*1_000_000/step, high*1_000_000/step).Draw(t,
		label) * step)
}

func split(t *rapid.T, label string, names []string) []dough.Part {
	weights := make([]quantity.Mass, len(names))
	for i := range weights {
		weights[i] = quantity.Micrograms(rapid.Int64Range(1, 1000).Draw(t, label))
	}
	parts, err := quantity.ApportionLike(quantity.Micrograms(100_000_000), weights)
	if err != nil {
		t.Fatal(err)
	}
	out := make([]dough.Part, len(names))
	for i, m := range parts {
		n, _ := m.Micrograms()
		out[i] = dough.Part{Name: names[i], Percent: quantity.MustPercent("0.000001 %").Times(n)}
	}
	return out
}

// anyFormula draws a formula whose preferments fit into it.
func anyFormula(t *rapid.T) dough.Formula {
	names := []string{"white", "rye", "whole wheat", "sifted rye"}[:rapid.IntRange(1, 4).Draw(t, "flours")]
	f := dough.Formula{
		Flours:  split(t, "flour", names),
		Liquids: []dough.Part{{Name: "water", Percent: points(t, "water", 60, 110), Kind: dough.KindWater}},
		Salt:    points(t, "salt", 1, 3),
	}
	for i := range f.Flours {
		f.Flours[i].Kind = flourKinds[i]
	}
	if rapid.Bool().Draw(t, "milk") {
		f.Liquids = append(f.Liquids, dough.Part{Name: "milk", Percent: points(t, "milk share", 1, 40),
			Kind: dough.KindMilk, Water: pc("88.13 %")})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "others") {
		f.Others = append(f.Others, dough.Part{Name: fmt.Sprintf("other %d", i), Percent: points(t, "other", 1, 20),
			Kind: dough.KindOther})
	}
	if rapid.Bool().Draw(t, "inclusion") {
		f.Inclusions = []dough.Part{{Name: "walnuts", Percent: points(t, "walnuts", 0, 30), Kind: dough.KindNuts}}
	}
	room := int64(40)
	for i := range rapid.IntRange(0, 3).Draw(t, "preferments") {
		pf := anyPreferment(t, fmt.Sprintf("build %d", i), room, len(f.Others) > 0, 1)
		points := pf.Flour.Points() * max(1, pf.Hydration.Fraction()) // a wet build uses up the water
		if room -= int64(points) + 1; room < 2 {
			break
		}
		f.Preferments = append(f.Preferments, pf)
	}
	if len(f.Others) > 0 && rapid.Bool().Draw(t, "soaker") {
		f.Soakers = []dough.Soaker{{Name: "soaker", Parts: []dough.Part{{Name: "other 0", Percent: pc("0.5 %")},
			{Name: "water", Percent: pc("1.5 %")}}}}
	}
	return f
}

func anyPreferment(t *rapid.T, name string, room int64, others bool, depth int) dough.Preferment {
	pf := dough.Preferment{
		Name: name, Kind: rapid.SampledFrom([]dough.PrefermentKind{dough.Levain, dough.Poolish, dough.Biga}).Draw(t, "kind"),
		Flour: points(t, "flour of "+name, 1, max(1, room/3)), Hydration: points(t, "hydration of "+name, 50, 125),
	}
	if depth == 1 && rapid.Bool().Draw(t, "salt in "+name) {
		pf.Kind, pf.Salt = dough.OldDough, pc("0.85 %")
	}
	if others && rapid.Bool().Draw(t, "others of "+name) {
		pf.Others = []dough.Part{{Name: "other 0", Percent: pc("0.12 %")}}
	}
	if rapid.Bool().Draw(t, "seed of "+name) {
		pf.Seed = dough.Seed{
			Percent: points(t, "seed", 1, 20), Of: rapid.SampledFrom([]dough.InoculationBasis{dough.OfNewFlour,
				dough.OfMix}).Draw(t, "basis"),
			Hydration: points(t, "hydration of the seed", 50, 125),
			Account: rapid.SampledFrom([]dough.SeedAccount{dough.SeedCounted, dough.SeedRemoved, dough.SeedSeparate,
				dough.SeedRemovedAtEnd}).Draw(t, "account"),
		}
	}
	if pf.Seed.Hydration.Compare(pf.Hydration) > 0 {
		pf.Seed.Hydration = pf.Hydration
	}
	if depth < 3 && rapid.IntRange(0, 3).Draw(t, "nested") == 0 {
		in := anyPreferment(t, name+"'", room, false, depth+1)
		// Less flour and no wetter, so that it fits.
		shrink(&in, pf.Flour.OfPercent(pc("50 %")).Over(pc("100 %")), pf.Hydration)
		pf.Preferments = []dough.Preferment{in}
	}
	return pf
}

// shrink makes a preferment, and what is nested in it, fit into another.
func shrink(pf *dough.Preferment, by, hydration quantity.Percent) {
	pf.Flour = by.OfPercent(pf.Flour)
	if pf.Hydration.Compare(hydration) > 0 {
		pf.Hydration = hydration
	}
	if pf.Seed.Hydration.Compare(pf.Hydration) > 0 {
		pf.Seed.Hydration = pf.Hydration
	}
	for i := range pf.Preferments {
		shrink(&pf.Preferments[i], by, pf.Hydration)
	}
}

func anyTarget(t *rapid.T, f dough.Formula) dough.Target {
	mass := quantity.Micrograms(rapid.Int64Range(100_000_000, 200_000_000_000).Draw(t, "mass"))
	switch rapid.IntRange(0, 5).Draw(t, "target") {
	case 0:
		return dough.ByDough{Mass: mass}
	case 1:
		return dough.ByFlour{Mass: mass}
	case 2:
		return dough.Pieces{Count: rapid.IntRange(1, 50).Draw(t, "count"), Each: mass,
			ProcessLoss: points(t, "process loss", 0, 5)}
	case 3:
		return dough.Baked{
			Pieces:      rapid.IntRange(1, 50).Draw(t, "count"),
			Each:        mass,
			Loss:        points(t, "bake loss", 0, 25),
			ProcessLoss: points(t, "process loss", 0, 5),
		}
	case 4:
		if len(f.Preferments) > 0 {
			return dough.ByLevain{Preferment: f.Preferments[0].Name, Mass: mass}
		}
		return dough.ByVolume{Volume: quantity.Milliliters(float64(rapid.IntRange(500, 50_000).Draw(t, "mL"))),
			Density: 1.1, Rise: pc("80 %")}
	default:
		return dough.AtHand{Stock: []dough.Stock{{Name: "water", Mass: mass}, {Name: f.Flours[0].Name, Mass: mass}}}
	}
}

func anyBatch(t *rapid.T) dough.Batch {
	f := anyFormula(t)
	b, err := f.For(anyTarget(t, f))
	if err != nil {
		t.Fatalf("%v\n%+v", err, f)
	}
	return b
}
