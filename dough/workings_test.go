package dough_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"
)

// From 720 g of water at 72 %, a kilogram of flour, of which the levain holds 150 g and as much water; its culture is
// 150 · 0.2 · 200/220 = 27.3 g, half flour.
func TestDerivationFromStock(t *testing.T) {
	f := maslin()
	f.Liquids = []dough.Part{{Name: "water", Percent: pc("60 %")},
		{Name: "ice", Percent: pc("12 %"), Kind: dough.KindWater}}
	for name, c := range map[string]struct {
		grams float64
		first string
	}{
		"water": {600, "F = 600 ÷ (60.00 ÷ 100) F = 1000.0 g"}, "levain": {300, "F = 300 ÷ (30.00 ÷ 100) F = 1000.0 g"},
		"salt": {20, "F = 20 ÷ (2.00 ÷ 100) F = 1000.0 g"},
	} {
		b, err := f.For(dough.AtHand{Stock: []dough.Stock{{Name: name, Mass: quantity.Grams(c.grams)}}})
		if err != nil {
			t.Fatal(err)
		}
		trial.Holds(t, b.Working().Text(100), c.first, "m_2 = 20 ÷ 100 × 1000.0 m_2 = 200.0 g",
			"F_A = 15 ÷ 100 × 1000.0 F_A = 150.0 g",
			"c_A = 150.0 × (20 ÷ 100) × (100 + 100) ÷ (100 + 100 + 20) c_A ≈ 27.3 g",
			"g_A = 27.3 ÷ (1 + 100 ÷ 100) g_A ≈ 13.6 g",
			"x_2 = 200.0 − 150.0 x_2 = 50.0 g", "whole rye to feed levain with x_A2 = F_A − g_A",
			"water to feed levain with x_A3 = m_A3 − (c_A − g_A)", "D_mix = 1740.0 g", "water in levain m_A3 =",
			"q_A3 100 % water in levain, of its flour",
			"hydration h = p_3 + p_4", "h = 60 + 12 h = 72.00 %")
	}
}

// Percentages of a bowl of weights: 800 of 1000 g of flour are 80 %, and 700 g of water 70 %.
func TestDerivationFromWeights(t *testing.T) {
	w, err := dough.ParseWeights("800 g wheat, 200 g whole rye, 700 g water")
	if err != nil {
		t.Fatal(err)
	}
	b, err := w.Batch()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, b.Working().Text(100), "F = m_1 + m_2", "F = 800 + 200 F = 1000.0 g",
		"p_1 = 100 × 800 ÷ 1000.0 p_1 = 80.00 %", "p_3 = 100 × 700 ÷ 1000.0 p_3 = 70.00 %")
	if text := b.Working().Text(100); strings.Contains(text, "millionth") {
		t.Errorf("a rounding that nobody sees is told:\n%s", text)
	}
	// With 200 g of levain, half flour, there is a ninth of 900 g of flour in it; wheat and water are added up.
	if w, err = dough.ParseWeights("800 g wheat, 500 g water, 10.5 g salt, 200 g levain of rye"); err != nil {
		t.Fatal(err)
	}
	if b, err = w.Batch(); err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, b.Working())
	trial.Holds(t, b.Working().Text(100), "water in all m_", "= 500 + 100", "= 600.0 g", "p_1 = 100 × 800.0 ÷ 900.0",
		"10.5 g salt at mixing")
}

// Of 900 g of a levain 600 g are used, two thirds of its flour, its water and its culture. With the culture's flour
// counted or set aside, every line of the derivation is true.
func TestDerivationOfWhatIsUsedInPart(t *testing.T) {
	for _, seed := range []dough.SeedWeights{
		{}, {Mass: quantity.Grams(100), Hydration: pc("60 %"), Account: dough.SeedCounted},
		{Mass: quantity.Grams(100), Account: dough.SeedRemoved}, {Mass: quantity.Grams(100), Account: dough.SeedSeparate},
	} {
		w := dough.Weights{
			Final: dough.Bowl{Flours: []dough.Weight{{Name: "wheat", Mass: quantity.Grams(1000)}},
				Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(600), Kind: dough.KindWater}}},
			Preferments: []dough.PrefermentWeights{{Name: "levain", Used: quantity.Grams(600), Seed: seed,
				Bowl: dough.Bowl{Flours: []dough.Weight{{Name: "rye", Mass: quantity.Grams(450)}},
					Liquids: []dough.Weight{{Name: "water", Mass: quantity.Grams(450), Kind: dough.KindWater}}}}},
		}
		b, err := w.Batch()
		if err != nil {
			t.Fatal(err)
		}
		if b.Dough() != quantity.Grams(2200) {
			t.Errorf("%v of dough", b.Dough())
		}
		workcheck.Verify(t, b.Working())
		if seed.Mass.IsZero() {
			trial.Holds(t, b.Working().Text(100), "450 g rye in levain, as weighed", "600 g levain used", "900 g levain made",
				"= 450 × 600 ÷ 900", "= 300.0 g")
		}
	}
}

// A culture of two flours brings its share of each: of 27.27 g half is flour, and of that three quarters wheat.
func TestDerivationOfAMixedCulture(t *testing.T) {
	f := maslin()
	pf := &f.Preferments[0]
	pf.Blend = []dough.Part{{Name: "bread flour", Percent: pc("50 %")}, {Name: "whole rye", Percent: pc("50 %")}}
	pf.Seed.Blend = []dough.Part{{Name: "bread flour", Percent: pc("75 %")}, {Name: "whole rye", Percent: pc("25 %")}}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, b.Working())
	trial.Holds(t, b.Working().Text(100), "b_A1 75 % bread flour in the culture of levain",
		"b_A2 25 % whole rye in the culture of levain", "x_A1 = m_A1 − b_A1 ÷ 100 × g_A")
	// As weights it says so itself, and one that has the flours of its levain says these.
	for _, account := range []dough.SeedAccount{dough.SeedCounted, dough.SeedRemoved} {
		f = maslin()
		f.Preferments[0].Seed.Account = account
		if b, err = f.For(dough.ByFlour{Mass: quantity.Grams(1000)}); err != nil {
			t.Fatal(err)
		}
		blend := b.Weights().Preferments[0].Seed.Blend
		if rye := len(blend) == 1 && blend[0].Name == "whole rye" && blend[0].Percent == pc("100 %"); rye !=
			(account == dough.SeedCounted) {
			t.Errorf("%v: a culture of %v", account, blend)
		}
	}
}

// 330 g of levain in two stages: 165 g of flour, and a culture of 165 · 0.2 · 200/220 = 30 g, half flour.
func TestDerivationOfALevain(t *testing.T) {
	plan, err := dough.LevainBuild{
		Want: quantity.Grams(300), KeepBack: quantity.Grams(30), Hydration: pc("100 %"), Inoculation: pc("20 %"),
		Starter: dough.Starter{Mass: quantity.Grams(12), Hydration: pc("60 %")},
	}.Plan()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, plan.Working().Text(100), "M_2 = 300 + 30 M_2 = 330.0 g", "all flour of stage 2 F_2 =", "F_2 = 165.0 g",
		"culture of stage 2 c_2 =", "c_2 = 30.0 g", "flour in the culture of stage 2 g_2 =", "g_2 = 15.0 g",
		"new flour of stage 2 f_2 = F_2 − g_2", "f_2 = 150.0 g", "new water of stage 2 w_2 =", "w_2 = 150.0 g",
		"all flour of stage 1 F_1 =", "F_1 = 15.0 g", "flour in the culture of stage 1", "new water of stage 1")
	weighed, _, err := plan.Weigh(dough.Scales{Flour: quantity.Grams(1)})
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, weighed.Working().Text(100), "made in stage 1, on the scale M_scale_1",
		"new flour of stage 1, on the scale f_scale_1", "new water of stage 1, on the scale w_scale_1",
		"inoculation of stage 1 as weighed, of new flour s_scale_1", "made in stage 2, on the scale M_scale_2",
		"inoculation of stage 2 as weighed, of new flour s_scale_2 = 100 × M_scale_1 ÷ f_scale_2")
}

// Half of what two equal doughs need is shared in halves.
func TestDerivationOfASharedLevain(t *testing.T) {
	b, err := maslin().For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	s, err := dough.OneLevain{Preferment: "levain", Doughs: []dough.Batch{b, b}, AtHand: quantity.Grams(300)}.Plan()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, s.Working().Text(100), "levain needed L = L_1 + L_2", "for dough 1", "for dough 2",
		"L = 300 + 300 L = 600.0 g",
		"part of dough 1 x_1 = A × L_1 ÷ L", "part of dough 2 x_2 = A × L_2 ÷ L", "x_2 = 300 × 300 ÷ 600.0 x_2 = 150.0 g")
}

// A microgram that equal flours do not share goes to the first of them; one too many is taken from the last.
func TestEqualFloursShareByOrder(t *testing.T) {
	var f dough.Formula
	for i := range 4 {
		f.Flours = append(f.Flours, dough.Part{Name: fmt.Sprint("flour ", i+1), Percent: pc("25 %")})
	}
	f.Liquids = []dough.Part{{Name: "water", Percent: pc("60 %")}}
	for more, want := range map[int64][4]int64{0: {0, 0, 0, 0}, 1: {1, 0, 0, 0}, 2: {1, 1, 0, 0}, 3: {1, 1, 1, 0}} {
		b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000).Add(quantity.Micrograms(more))})
		if err != nil {
			t.Fatal(err)
		}
		for i, n := range want {
			if got := b.Overall()[i].Mass; got != quantity.Grams(250).Add(quantity.Micrograms(n)) {
				t.Errorf("%d µg more: %v of flour %d", more, got, i+1)
			}
		}
	}
}

// Fifty preferments are as many as there may be, in a formula and in the weights that it becomes.
func TestMostPreferments(t *testing.T) {
	f := maslin()
	f.Preferments = nil
	add := func() {
		f.Preferments = append(f.Preferments, dough.Preferment{Name: fmt.Sprint("levain ", len(f.Preferments)),
			Flour:     pc("1 %"),
			Hydration: pc("100 %")})
	}
	for range 50 {
		add()
	}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	// Their letters go on after Z as the columns of a sheet do: the 27th is AA, the 50th AX.
	trial.Holds(t, b.Working().Text(200), "in levain 25 m_Z1 =", "in levain 26 m_AA1 =", "in levain 49 m_AX1 =",
		"x_pre = 50.00 %")
	w := b.Weights()
	if again, err := w.Batch(); err != nil || again.Dough() != b.Dough() {
		t.Errorf("%v, %v", again, err)
	}
	w.Preferments = append(w.Preferments, w.Preferments[0])
	if _, err := w.Batch(); trial.Refused(err) != "preferments out of range" {
		t.Errorf("51 preferments by weight: %v", trial.Refused(err))
	}
	add()
	if _, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)}); trial.Refused(err) != "preferments out of range" {
		t.Errorf("51 preferments: %v", trial.Refused(err))
	}
}

// What is a whole number of steps already is weighed as it is.
func TestWholeStepsAreWeighedAsTheyAre(t *testing.T) {
	b, err := maslin().For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []float64{1, 2} {
		w, err := b.Weigh(dough.Scales{Flour: quantity.Grams(step)})
		if err != nil {
			t.Fatal(err)
		}
		workcheck.Verify(t, w.Working())
		if w.Lines[0].Mass != quantity.Grams(800) || w.Lines[0].Residue.Sign() != 0 {
			t.Errorf("%v", w.Lines[0])
		}
	}
}

// Four spices of 0.6 g are a gram each on a scale of whole grams, so heavier lines give what the sum has too much: of
// 162.4 g flour and water a gram each, of 34.4 g the flour alone two, since 12 g are too few steps. The derivation
// takes them off too. A list without a line of 20 g stays as rounded.
func TestHeavyLinesGiveWholeSteps(t *testing.T) {
	f := dough.Formula{Flours: []dough.Part{{Name: "flour", Percent: pc("100 %")}},
		Liquids: []dough.Part{{Name: "water", Percent: pc("60 %")}}}
	for grams, want := range map[float64][3]float64{100: {99, 59, 162}, 20: {18, 12, 34}, 19: {19, 11, 34}} {
		f.Others = nil
		for i := range 4 {
			f.Others = append(f.Others, dough.Part{Name: fmt.Sprint("spice ", i+1),
				Percent: quantity.Grams(0.6).PercentOf(quantity.Grams(grams))})
		}
		b, err := f.For(dough.ByFlour{Mass: quantity.Grams(grams)})
		if err != nil {
			t.Fatal(err)
		}
		w, err := b.Weigh(dough.Scales{Flour: quantity.Grams(1)})
		if err != nil {
			t.Fatal(err)
		}
		if got := [3]float64{w.Lines[0].Mass.Grams(), w.Lines[1].Mass.Grams(), w.Dough.Grams()}; got != want {
			t.Errorf("flour, water and dough of %v g: %v, want %v", grams, got, want)
		}
		workcheck.Verify(t, w.Working())
	}
}

// What is off by a tenth can just be weighed, up or down: 10 g on a scale of 9 g or of 11 g, and on no coarser one.
func TestOffByATenth(t *testing.T) {
	for step, want := range map[float64]int{9: 0, 11: 0, 8.9: 1, 11.1: 1} {
		b, err := milkSalt().For(dough.ByFlour{Mass: quantity.Grams(1000)})
		if err != nil {
			t.Fatal(err)
		}
		w, err := b.Weigh(dough.Scales{Flour: quantity.Grams(step)})
		if err != nil {
			t.Fatal(err)
		}
		if got := w.TooSmall(); len(got) != want {
			t.Errorf("10 g of salt on a scale of %v g: %v", step, got)
		}
	}
}

// milkSalt is a dough with 1 % of salt.
func milkSalt() dough.Formula {
	return dough.Formula{Flours: []dough.Part{{Name: "flour", Percent: pc("100 %")}},
		Liquids: []dough.Part{{Name: "milk", Percent: pc("65 %")}}, Salt: pc("1 %")}
}

// Preferments rest on each other in eight levels at most, in weights as in a formula.
func TestMostLevelsByWeight(t *testing.T) {
	f := maslin()
	p := &f.Preferments[0]
	p.Seed = dough.Seed{}
	for level := 2; level <= 8; level++ {
		p.Preferments = []dough.Preferment{{Name: fmt.Sprint("stage ", level), Flour: pc("1 %"), Hydration: pc("100 %"),
			Blend: p.Blend}}
		p = &p.Preferments[0]
		if level == 2 {
			f.Preferments[0].Flour = pc("15 %")
		}
	}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	w := b.Weights()
	if _, err := w.Batch(); err != nil {
		t.Errorf("eight levels: %v", err)
	}
	deepest := &w.Preferments[0]
	for len(deepest.Preferments) > 0 {
		deepest = &deepest.Preferments[0]
	}
	deepest.Preferments = []dough.PrefermentWeights{{Name: "stage 9", Bowl: deepest.Bowl}}
	if _, err := w.Batch(); err == nil || !strings.Contains(trial.Refused(err), "preferments out of range") {
		t.Errorf("nine levels: %v", err)
	}
}
