package dough_test

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

// points draws a percentage between two numbers of points, to a hundredth or to the last digit.
func points(t *rapid.T, label string, low, high int64) quantity.Percent {
	step := rapid.SampledFrom([]int64{1_000_000, 10_000, 1}).Draw(t, label+" step")
	return quantity.MustPercent("0.000001 %").Times(rapid.Int64Range(low*1_000_000/step, high*1_000_000/step).Draw(t, label) * step)
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

var flourKinds = []dough.Kind{dough.KindWheat, dough.KindWholeRye, dough.KindWholeWheat, dough.KindRye}

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
		f.Liquids = append(f.Liquids, dough.Part{Name: "milk", Percent: points(t, "milk share", 1, 40), Kind: dough.KindMilk, Water: pc("88.13 %")})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "others") {
		f.Others = append(f.Others, dough.Part{Name: fmt.Sprintf("other %d", i), Percent: points(t, "other", 1, 20), Kind: dough.KindOther})
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
		f.Soakers = []dough.Soaker{{Name: "soaker", Parts: []dough.Part{{Name: "other 0", Percent: pc("0.5 %")}, {Name: "water", Percent: pc("1.5 %")}}}}
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
			Percent: points(t, "seed", 1, 20), Of: rapid.SampledFrom([]dough.InoculationBasis{dough.OfNewFlour, dough.OfMix}).Draw(t, "basis"),
			Hydration: points(t, "hydration of the seed", 50, 125),
			Account:   rapid.SampledFrom([]dough.SeedAccount{dough.SeedCounted, dough.SeedRemoved, dough.SeedSeparate, dough.SeedRemovedAtEnd}).Draw(t, "account"),
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
		return dough.Pieces{Count: rapid.IntRange(1, 50).Draw(t, "count"), Each: mass, ProcessLoss: points(t, "process loss", 0, 5)}
	case 3:
		return dough.Baked{Pieces: rapid.IntRange(1, 50).Draw(t, "count"), Each: mass, Loss: points(t, "bake loss", 0, 25), ProcessLoss: points(t, "process loss", 0, 5)}
	case 4:
		if len(f.Preferments) > 0 {
			return dough.ByLevain{Preferment: f.Preferments[0].Name, Mass: mass}
		}
		return dough.ByVolume{Volume: quantity.Milliliters(float64(rapid.IntRange(500, 50_000).Draw(t, "mL"))), Density: 1.1, Rise: pc("80 %")}
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

func total(lines []dough.Line) quantity.Mass {
	var sum quantity.Mass
	for _, l := range lines {
		sum = sum.Add(l.Mass)
	}
	return sum
}

// Parts add to the whole to the microgram, and the three views reconcile, for any formula.
func TestViewsReconcile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		checkViews(t, b)
	})
}

func checkViews(t *rapid.T, b dough.Batch) {
	t.Helper()
	if got := total(b.Overall()); got != b.Dough() {
		t.Errorf("overall lines add up to %v, dough is %v", got, b.Dough())
	}
	if got := total(b.FinalDough()); got != b.Dough() {
		t.Errorf("final dough adds up to %v, dough is %v", got, b.Dough())
	}
	var flour, water quantity.Mass
	sums := map[string]quantity.Mass{}
	uses := map[string]quantity.Mass{}
	count := func(lines []dough.Line) {
		for _, l := range lines {
			if l.Mass.Sign() <= 0 {
				t.Errorf("a line of %v %s", l.Mass, l.Name)
			}
			switch l.Role {
			case dough.RolePreferment:
				uses[l.Name] = l.Mass
			default:
				sums[l.Name] = sums[l.Name].Add(l.Mass)
			}
		}
	}
	seeds := quantity.Mass{}
	for _, build := range b.Builds() {
		if got := total(build.Lines); got != build.Made {
			t.Errorf("%s adds up to %v, made is %v", build.Name, got, build.Made)
		}
		if build.Made.Sub(build.Removed).Sub(build.Left) != build.Used || !build.Left.IsZero() {
			t.Errorf("%s: made %v, removed %v, used %v", build.Name, build.Made, build.Removed, build.Used)
		}
		for _, l := range build.Lines {
			if l.Name == "starter" {
				seeds = seeds.Add(l.Mass)
			}
		}
		seeds = seeds.Sub(build.Removed)
		count(build.Lines)
	}
	count(b.FinalDough())
	for _, build := range b.Builds() {
		if uses[build.Name] != build.Used {
			t.Errorf("%s: %v goes in, %v is used", build.Name, uses[build.Name], build.Used)
		}
	}
	delete(sums, "starter")
	for _, l := range b.Overall() {
		if l.Role == dough.RoleFlour {
			flour = flour.Add(l.Mass)
		}
		if l.Kind == dough.KindWater {
			water = water.Add(l.Mass)
		}
		// What is weighed in all bowls is the overall line, less what counted starters bring.
		if got := sums[l.Name]; got != l.Mass {
			if seeds.IsZero() || got.Compare(l.Mass) > 0 {
				t.Errorf("%s: weighed %v in all, overall %v", l.Name, got, l.Mass)
			}
			seeds = seeds.Sub(l.Mass.Sub(got))
		}
	}
	if !seeds.IsZero() {
		t.Errorf("starters differ by %v from what is missing of flour and water", seeds)
	}
	if flour != b.Flour() || water != b.Water() {
		t.Errorf("flour %v and %v, water %v and %v", flour, b.Flour(), water, b.Water())
	}
}

// Every line is within a microgram of its exact share (the parts of preferments within a few).
func TestLinesAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFormula(t)
		mass := quantity.Micrograms(rapid.Int64Range(1_000_000, 1_000_000_000_000).Draw(t, "mass"))
		b, err := f.For(dough.ByDough{Mass: mass})
		if err != nil {
			t.Fatal(err)
		}
		if b.Dough() != mass {
			t.Fatalf("dough %v, asked for %v", b.Dough(), mass)
		}
		for _, l := range b.Overall() {
			off := new(big.Rat).Sub(ratMass(l.Mass), share(ratMass(mass), l.Percent, b.Total()))
			if off.Abs(off).Cmp(big.NewRat(1, 1)) >= 0 {
				t.Errorf("%v is %v µg off", l, off.FloatString(3))
			}
		}
		for _, pf := range f.Preferments {
			build, _ := b.Build(pf.Name)
			off := new(big.Rat).Sub(ratMass(build.Flour), share(ratMass(b.Flour()), pf.Flour, pc("100 %")))
			if off.Abs(off).Cmp(big.NewRat(5, 1)) >= 0 {
				t.Errorf("flour in %s is %v µg off", pf.Name, off.FloatString(3))
			}
		}
	})
}

func ratMass(m quantity.Mass) *big.Rat {
	n, _ := m.Micrograms()
	return big.NewRat(n, 1)
}

func share(whole *big.Rat, p, total quantity.Percent) *big.Rat {
	a, _ := p.Millionths()
	b, _ := total.Millionths()
	return new(big.Rat).Mul(whole, big.NewRat(a, b))
}

// Scaling is linear: n times the dough is n times every line, but for the rounding of a microgram.
func TestScalingIsLinear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFormula(t)
		mass := quantity.Micrograms(rapid.Int64Range(1_000_000, 1_000_000_000).Draw(t, "mass"))
		n := rapid.Int64Range(2, 50).Draw(t, "n")
		small, err := f.For(dough.ByDough{Mass: mass})
		if err != nil {
			t.Fatal(err)
		}
		large, err := f.For(dough.ByDough{Mass: mass.Times(n)})
		if err != nil {
			t.Fatal(err)
		}
		other := large.Overall()
		for i, l := range small.Overall() {
			off := other[i].Mass.Sub(l.Mass.Times(n))
			if d, _ := off.Micrograms(); d > n || d < -n {
				t.Errorf("%s: %v times %d is %v", l.Name, l.Mass, n, other[i].Mass)
			}
		}
		if small.Hydration() != large.Hydration() || small.Prefermented() != large.Prefermented() {
			t.Error("shares depend on the size")
		}
	})
}

// From weights to the formula and back: the weights come back exactly.
func TestWeightsRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		back, err := b.Weights().Batch()
		if err != nil {
			t.Fatalf("%v\n%v", err, b)
		}
		checkViews(t, back)
		if back.Dough() != b.Dough() || back.Flour() != b.Flour() {
			t.Fatalf("dough %v and %v, flour %v and %v", b.Dough(), back.Dough(), b.Flour(), back.Flour())
		}
		for _, l := range b.FinalDough() {
			if got := lineOf(back.FinalDough(), l.Name); got.Mass != l.Mass {
				t.Errorf("%v came back as %v", l, got)
			}
		}
		for _, build := range b.Builds() {
			again, ok := back.Build(build.Name)
			if !ok || again.Used != build.Used || again.Made != build.Made || again.Flour != build.Flour {
				t.Errorf("%v came back as %v", build, again)
			}
		}
		if d := back.Hydration().Sub(b.Hydration()).Points(); d > 1e-5 || d < -1e-5 {
			t.Errorf("hydration %v came back as %v", b.Hydration(), back.Hydration())
		}
		again, err := back.Formula().For(dough.ByFlour{Mass: b.Flour()})
		if err != nil {
			t.Fatalf("%v\n%+v", err, back.Formula())
		}
		if d := again.Dough().Sub(b.Dough()).Grams(); d > 1e-6*b.Dough().Grams()+1e-4 || -d > 1e-6*b.Dough().Grams()+1e-4 {
			t.Errorf("dough %v, from the formula of its weights %v", b.Dough(), again.Dough())
		}
	})
}

func lineOf(lines []dough.Line, name string) dough.Line {
	for _, l := range lines {
		if l.Name == name {
			return l
		}
	}
	return dough.Line{}
}

// Every printed line of every working is re-evaluated.
func TestWorkingsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		back, err := b.Weights().Batch()
		if err != nil {
			t.Fatal(err)
		}
		again, err := back.Formula().For(dough.ByFlour{Mass: b.Flour()}) // its percentages are rounded
		if err != nil {
			t.Fatal(err)
		}
		for _, batch := range []dough.Batch{b, back, again} {
			for _, f := range workcheck.Faults(batch.Working()) {
				t.Error(f)
			}
		}
		for _, s := range append(b.Working().Steps, back.Working().Steps...) {
			if strings.HasPrefix(strings.TrimSpace(s.Formula), "+") || strings.HasPrefix(strings.TrimSpace(s.Numbers), "+") {
				t.Errorf("%s begins with a plus: %s, %s", s.Name, s.Formula, s.Numbers)
			}
		}
		for _, f := range workcheck.Faults(b.DoughYield().Working()) {
			t.Error(f)
		}
	})
}

// What a scale can weigh adds up on every list, and its residue is shown.
func TestWeighingAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		s := dough.Scales{
			Flour: rapid.SampledFrom([]quantity.Mass{quantity.Grams(1), quantity.Grams(5), quantity.Ounces(0.25)}).Draw(t, "scale"),
			Fine:  rapid.SampledFrom([]quantity.Mass{{}, quantity.Grams(0.1), quantity.Grams(0.01)}).Draw(t, "fine scale"),
		}
		w, err := b.Weigh(s)
		if err != nil {
			t.Fatal(err)
		}
		if w.Dough.Add(w.Residue) != b.Dough() {
			t.Errorf("dough %v, residue %v, exact %v", w.Dough, w.Residue, b.Dough())
		}
		uses := map[string]quantity.Mass{}
		list := func(lines []dough.Weighed, want quantity.Mass) {
			var sum quantity.Mass
			for _, l := range lines {
				sum = sum.Add(l.Mass)
				if l.Mass.Add(l.Residue) != l.Exact || l.Mass.Sign() < 0 {
					t.Errorf("%s: %v and residue %v of %v", l.Name, l.Mass, l.Residue, l.Exact)
				}
				if _, odd := l.Mass.RoundTo(l.Step); l.Role != dough.RolePreferment && !odd.IsZero() {
					t.Errorf("%s: %v is not a multiple of %v", l.Name, l.Mass, l.Step)
				}
				if l.Role == dough.RolePreferment {
					uses[l.Name] = l.Mass
				} else if off := math.Abs(l.Residue.Grams()) / l.Step.Grams(); l.Exact.Compare(l.Step.Times(20)) < 0 && off > 0.5 {
					t.Errorf("%s, a small line, is off by more than half a step: %v", l.Name, l.Residue)
				} else if off > 1+0.5*float64(len(lines)) {
					t.Errorf("%s is off by more than the small lines leave: %v", l.Name, l.Residue)
				}
				if _, odd := l.Mass.RoundTo(w.Scales.Fine); w.Scales.Flour != quantity.Ounces(0.25) && !odd.IsZero() {
					t.Errorf("%s: no scale weighs %v", l.Name, l.Mass)
				}
			}
			if sum != want {
				t.Errorf("lines add up to %v, not %v", sum, want)
			}
		}
		for _, build := range w.Builds {
			list(build.Lines, build.Made)
		}
		list(w.Lines, w.Dough)
		for _, build := range w.Builds {
			if uses[build.Build.Name] != build.Used {
				t.Errorf("%s: %v goes in, %v is used", build.Build.Name, uses[build.Build.Name], build.Used)
			}
		}
	})
}
