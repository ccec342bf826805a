package flour_test

import (
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
)

func percent(x float64) quantity.Percent { return quantity.NewPercent(x) }

// By hand: added (12 − 10)/(75 − 12) = 3.1746 % of 1000 g and 1.5 times that of water, 47.6 g; in its place (12 −
// 10)/(75 − 10) = 3.0769 % of the mixture, 969.2 g of flour beside it, and 46.2 g of water.
func TestPageOfGluten(t *testing.T) {
	in := flour.GlutenBoost{
		Protein: percent(10), Target: percent(12), Gluten: percent(75), Flour: quantity.Grams(1000),
	}
	r, err := in.Doses()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, r.Report().Text(report.Options{Width: 80}),
		"from 10.0 % to 12.0 % protein: 3.17 % of the flour's weight",
		"gluten weight flour water more", "added 3.17 % 31.7 g 1000.0 g 48 g", "in its place 3.08 % 30.8 g 969.2 g 46 g",
		"1.5 times its weight of water", "gluten is wheat")
	trial.Holds(t, r.Working().Text(100), "s = 100 × (12 − 10) ÷ (75 − 10) s ≈ 3.08 %",
		"x = 100 × (12 − 10) ÷ (75 − 12) x ≈ 3.17 %",
		"m_in_place = 1000 × (3.08 ÷ 100) m_in_place = 30.8 g", "w_added = 1.5 × 31.7 w_added ≈ 47.6 g")
	in.Flour = quantity.Mass{}
	if r, err = in.Doses(); err != nil {
		t.Fatal(err)
	}
	if page := r.Report().Text(report.Options{Width: 80}); strings.Contains(page, " g ") {
		t.Errorf("weights of a flour that was not weighed:\n%s", page)
	}
	if a := r.Working().Answer(); !(math.Abs(a.Number-200.0/63) <= 1e-6) {
		t.Errorf("the derivation without weights ends with %v, want 3.1746 %%", a)
	}
	in.Target = percent(10)
	if r, err = in.Doses(); err != nil || len(r.Notes) != 1 {
		t.Errorf("no gluten is wanted: %v, %v", r.Notes, err)
	}
	in.Target = percent(17) // 7/58 = 12.1 % is more than the trade uses; 5.9/59.1 = 9.98 % is not
	if r, err = in.Doses(); err != nil || len(r.Notes) != 3 {
		t.Errorf("12 %% of gluten: %v, %v", r.Notes, err)
	}
	in.Target = percent(15.9)
	if r, err = in.Doses(); err != nil || len(r.Notes) != 2 {
		t.Errorf("10 %% of gluten: %v, %v", r.Notes, err)
	}
	// So near the gluten's own protein that the dose is beyond every number of grams.
	in = flour.GlutenBoost{
		Protein: percent(1), Target: percent(74.999999), Gluten: percent(75), Flour: quantity.Kilograms(100_000),
	}
	_, err = in.Doses()
	if bad := quantity.InputErrors(err); len(bad) != 1 || bad[0].GoPath != "Target" {
		t.Errorf("a dose without measure: %v", err)
	}
}

// Half of 10 % and half of 14 % make 12 %; the lists of the trade on W 180 (60 and 50 %) and 11 % of protein (60 %) all
// lie below a hydration of 75 %.
func TestPagesOfBlendAndStrength(t *testing.T) {
	b, err := flour.FlourBlend{
		Target: percent(12), Total: quantity.Grams(1000),
		Flours: []flour.FlourLot{{Name: "soft", Protein: percent(10)}, {Protein: percent(14)}},
	}.Shares()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, b.Report().Text(report.Options{Width: 80}), "A blend of 12.00 % protein", "share weight protein",
		"50.0 % 500.0 g soft 10.0 %", "50.0 % 500.0 g flour 2 14.0 %")
	trial.Holds(t, b.Working().Text(100), "share of soft", "x_1 = 100 × (12 − 14) ÷ (10 − 14) x_1 = 50.00 %",
		"P = (50.00 × 10 + 50.00 × 14) ÷ 100 P = 12.00 %")
	s, err := flour.FlourStrength{Hydration: percent(75), Protein: percent(11), W: 180, PL: 0.6}.Judge()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, s.Report().Text(report.Options{Width: 100}), "Hydration 75 %: 0 speak for it, 4 against",
		"W 180 weak 50 % against",
		"protein 11.0 % medium 60 % against", "P/L 0.6 balanced or near it silent",
		"used up to 50 %, by another up to 60 %", "P/L: height over length of the alveograph's curve",
		"protein: protein of the flour as it is in the bag")
	trial.Holds(t, s.Working().Text(100), "a_1 = 75 − 60 a_1 = 15 %", "a_3 = 75 − 50 a_3 = 25 %",
		"n_against = 5 − 1 n_against = 4")
}

// At most 60 % of 14 % and the least, 40 %, of 10 % make 12.4 %, which is the nearest to 13 %. Where the least shares
// add up to 100 % nothing can move.
func TestBlendsAtTheirBounds(t *testing.T) {
	soft := flour.FlourLot{Name: "soft", Protein: percent(10), Share: percent(50), Least: percent(40)}
	strong := flour.FlourLot{Name: strings.Repeat("s", 41), Protein: percent(14), Share: percent(50), Most: percent(60)}
	b, err := flour.FlourBlend{Target: percent(13), Flours: []flour.FlourLot{soft, strong}}.Shares()
	if err != nil || b.Feasible {
		t.Fatal(b, err)
	}
	trial.Holds(t, b.Report().Text(report.Options{Width: 110}),
		"The bounds do not allow 13 %; the nearest blend has 12.40 % protein", "40.0 % soft 10.0 % held at its least",
		"60.0 % \""+strings.Repeat("s", 32)+"\"… 14.0 % held at its most")
	strong.Name, strong.Least = strings.Repeat("s", 40), percent(60)
	b, err = flour.FlourBlend{Target: percent(12.4), Flours: []flour.FlourLot{soft, strong}}.Shares()
	if err != nil || !b.Feasible || b.Flours[0].Share != percent(40) || b.Flours[0].Change != percent(-10) ||
		b.Flours[1].Change != percent(10) {
		t.Fatal(b, err)
	}
	trial.Holds(t, b.Report().Text(report.Options{Width: 110}), "A blend of 12.40 % protein",
		"60.0 % "+strong.Name+" 14.0 % held where it is")
}

// P/L is read as a list of the trade reads it: extensible below 0.5, balanced from 0.6 to 0.7, tenacious above 0.9.
func TestBalanceByItsList(t *testing.T) {
	class := func(pl float64) string {
		s, err := flour.FlourStrength{Hydration: percent(70), PL: pl}.Judge()
		if err != nil || len(s.Opinions) != 1 {
			t.Fatalf("%v, %v", s, err)
		}
		return s.Opinions[0].Class.String()
	}
	edge, middle := class(0.5), class(0.65)
	if edge != middle || class(0.49) == edge || class(0.91) == middle || class(0.91) == class(0.49) {
		t.Errorf("P/L 0.49 %s, 0.5 %s, 0.65 %s, 0.91 %s", class(0.49), edge, middle, class(0.91))
	}
}
