package dough_test

import (
	"math"
	"math/big"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"

	"pgregory.net/rapid"
)

var flourKinds = []dough.Kind{dough.KindWheat, dough.KindWholeRye, dough.KindWholeWheat, dough.KindRye}

func total(lines []dough.DoughLine) quantity.Mass {
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
	count := func(lines []dough.DoughLine) {
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
			if l.Name == "culture" {
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
	delete(sums, "culture")
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
		if d := again.Dough().Sub(b.Dough()).Grams(); d > 1e-6*b.Dough().Grams()+1e-4 ||
			-d > 1e-6*b.Dough().Grams()+1e-4 {
			t.Errorf("dough %v, from the formula of its weights %v", b.Dough(), again.Dough())
		}
	})
}

func lineOf(lines []dough.DoughLine, name string) dough.DoughLine {
	for _, l := range lines {
		if l.Name == name {
			return l
		}
	}
	return dough.DoughLine{}
}

// Every printed line of every working is re-evaluated.
func TestWorkingsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		if rapid.IntRange(0, 3).Draw(t, "derive") > 0 {
			return // a derivation of two preferments takes some tenths of a second to be checked
		}
		switch rapid.IntRange(0, 2).Draw(t, "what") {
		case 0:
			weighed, err := b.Weights().Batch()
			if err != nil {
				t.Fatal(err)
			}
			b = weighed
		case 1:
			w, err := b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
			if err != nil {
				t.Fatal(err)
			}
			derivation := w.Working()
			trial.Sound(t, derivation)
			if got := quantity.MustMass(derivation.Answer().Text(working.Reader{})); got != w.Dough {
				t.Errorf("the derivation ends with %v, the dough weighs %v", got, w.Dough)
			}
			return
		}
		derivation := b.Working()
		trial.Sound(t, derivation)
		if got := quantity.MustMass(derivation.Answer().Text(working.Reader{})); got.Sub(b.Dough()).
			Grams() >
			0.0500001 ||
			b.Dough().Sub(got).Grams() > 0.0500001 {
			t.Errorf("the derivation ends with %v, the dough is %v", got, b.Dough())
		}
		trial.Sound(t, b.DoughYield().Working())
	})
}

// What a scale can weigh adds up on every list, and its residue is shown.
func TestWeighingAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		s := dough.Scales{
			Flour: rapid.SampledFrom([]quantity.Mass{quantity.Grams(1), quantity.Grams(5), quantity.Ounces(0.25)}).
				Draw(t,
					"scale"),
			Fine: rapid.SampledFrom([]quantity.Mass{{}, quantity.Grams(0.1), quantity.Grams(0.01)}).
				Draw(t, "fine scale"),
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
