package mixing_test

import (
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// The verdict follows the charts from too little to too much; the manual comes before them.
func TestVerdicts(t *testing.T) {
	in := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(7)}
	want := map[float64]mixing.Fullness{300: mixing.TooLittle, 2000: mixing.Comfortable, 3500: mixing.Tight,
		5320: mixing.TooMuch}
	for g, v := range want {
		in.Dough = quantity.Grams(g)
		in.Flour = quantity.Grams(g / 1.75)
		in.Water = quantity.Grams(g / 1.75 * 0.72)
		r, err := in.Fit()
		if err != nil {
			t.Fatal(err)
		}
		if r.Fullness != v || r.String() == "" {
			t.Errorf("%v g: %v, want %v", g, r.Fullness, v)
		}
	}
	in.Rated = quantity.Kilograms(6)
	if r, err := in.Fit(); err != nil || r.Fullness == mixing.TooMuch || r.MostLow != quantity.Kilograms(6) {
		t.Errorf("rated: %v, %v", r, err)
	}
	// A limit may be reached: the manual's 6 kg, and 0.30 kg of flour for a liter of a household bowl, 1.5 kg in 5 L.
	in.Dough, in.Flour, in.Water = quantity.Kilograms(6), quantity.Kilograms(3.5), quantity.Kilograms(2.3)
	if r, err := in.Fit(); err != nil || r.Fullness != mixing.Comfortable || r.Batches != 1 {
		t.Errorf("as much as the manual allows: %v in %d batches, %v", r.Fullness, r.Batches, err)
	}
	household := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(5), Dough: quantity.Grams(2475),
		Flour: quantity.Grams(1500), Water: quantity.Grams(975)}
	if r, err := household.Fit(); err != nil || r.Fullness != mixing.LikelyToFit || r.Batches != 1 {
		t.Errorf("as much as a household bowl takes: %v in %d batches, %v", r.Fullness, r.Batches, err)
	}
	// So may the least that the hook catches, a fifth of the most; below it is too little.
	for grams, want := range map[float64]mixing.Fullness{1200: mixing.Comfortable, 1199: mixing.TooLittle} {
		in.Dough, in.Flour, in.Water = quantity.Grams(grams), quantity.Grams(600), quantity.Grams(400)
		if r, err := in.Fit(); err != nil || r.Fullness != want {
			t.Errorf("%v g where 6 kg are the most: %v, %v", grams, r.Fullness, err)
		}
	}
	// A tight dough is one batch, and one that is too much is told in how many.
	for grams, want := range map[float64]string{1350: "mix it in one batch", 3000: "mix 3 batches of 1000 g"} {
		r, err := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(2.5), Dough: quantity.Grams(grams),
			Flour: quantity.Grams(grams / 2), Water: quantity.Grams(grams / 2 * 0.55)}.Fit()
		if err != nil || !strings.Contains(r.String(), want) {
			t.Errorf("%v g: %q, want %q, %v", grams, r, want, err)
		}
	}
	unknown, err := mixing.Mix{Mixer: mixing.Processor, Dough: quantity.Grams(900), Flour: quantity.Grams(550),
		Water: quantity.Grams(340)}.Fit()
	if page := unknown.Report().Text(report.Options{Width: 80}); err != nil || strings.Contains(page, "most") {
		t.Errorf("%v, and of a processor nothing is published:\n%s", err, page)
	}
	// No second speed at an absorption ratio of exactly 50 %, but above.
	for water, second := range map[float64]bool{1000: false, 1001: true} {
		in := mixing.Mix{Mixer: mixing.Spiral, Bowl: quantity.Liters(20), Dough: quantity.Kilograms(4),
			Flour: quantity.Kilograms(2), Water: quantity.Grams(water)}
		if r, err := in.Fit(); err != nil || r.SecondSpeed != second {
			t.Errorf("second speed at %v g of water on 2 kg of flour: %v, %v", water, r.SecondSpeed, err)
		}
	}
	// What a limit rests on follows from the bowl, and nothing outside the charts is called comfortable.
	for _, c := range []struct {
		mixer    mixing.MixerKind
		liters   float64
		basis    mixing.LimitBasis
		fullness mixing.Fullness
	}{
		{mixing.Planetary, 3, mixing.HouseholdBowl, mixing.LikelyToFit}, {mixing.Planetary, 6.9, mixing.HouseholdBowl,
			mixing.LikelyToFit},
		{mixing.Planetary, 7, mixing.CapacityCharts, mixing.Comfortable}, {mixing.Planetary, 60, mixing.CapacityCharts,
			mixing.TooLittle},
		{mixing.Planetary, 65, mixing.CapacityCharts, mixing.TooLittle}, {mixing.Planetary, 66, mixing.OtherCharts,
			mixing.TooLittle},
		{mixing.Spiral, 10, mixing.OtherCharts, mixing.LikelyToFit}, {mixing.Fork, 10, mixing.OtherCharts,
			mixing.LikelyToFit},
		{mixing.Hand, 0, mixing.TradePractice, mixing.Comfortable}, {mixing.Processor, 2, 0, mixing.Unknown},
	} {
		in := mixing.Mix{Mixer: c.mixer, Bowl: quantity.Liters(c.liters), Dough: quantity.Kilograms(1),
			Flour: quantity.Grams(600), Water: quantity.Grams(360)}
		r, err := in.Fit()
		if err != nil || r.Basis != c.basis || r.Fullness != c.fullness {
			t.Errorf("%v of %v L: %v by %v, %v; want %v by %v", c.mixer, c.liters, r.Fullness, r.Basis, err, c.fullness,
				c.basis)
		}
		workcheck.Verify(t, r.Working())
	}
	var r mixing.BowlFit
	stiff := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(20), Kind: mixing.PizzaDough,
		Dough: quantity.Kilograms(3), Flour: quantity.Kilograms(2), Water: quantity.Grams(900)}
	r, err = stiff.Fit()
	if err != nil || r.SecondSpeed || !strings.Contains(working.Join(r.Kneading.Notes, "; ").String(),
		"at most 5 minutes") {
		t.Errorf("thin pizza dough: %+v, %v", r, err)
	}
}

// The charts' rows for bread end at 60 %: a softer dough is given the same room as one of 60 %.
func TestSofterDoughsHaveTheRoomOfTheLastRow(t *testing.T) {
	for _, liters := range []float64{8, 10, 20, 40, 60} {
		most := func(ratio float64) [2]quantity.Mass {
			r, err := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(liters), Dough: quantity.Kilograms(2),
				Flour: quantity.Kilograms(1), Water: quantity.Grams(10 * ratio)}.Fit()
			if err != nil {
				t.Fatal(err)
			}
			return [2]quantity.Mass{r.MostLow, r.MostHigh}
		}
		for _, ratio := range []float64{60.5, 62, 64.9} {
			if got, want := most(ratio), most(60); got != want {
				t.Errorf("%v L: %v at %v %%, %v at 60 %%", liters, got, ratio, want)
			}
		}
	}
}

// Between two rows of the charts a capacity lies on the straight line between them: 4.5 kg at 50 % and 6.8 kg at 55 %
// in 20 L, 6 lb at 55 % and 8 lb at 60 % in 8 quarts, all as printed.
func TestCapacityBetweenTwoRows(t *testing.T) {
	for _, c := range []struct{ liters, ratio, want float64 }{
		{20, 50, 4.5}, {20, 52.5, 5.65}, {20, 55, 6.8}, {7.570823568, 57.5, 7 * 0.45359237},
	} {
		r, err := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(c.liters), Dough: quantity.Kilograms(4),
			Flour: quantity.Kilograms(2), Water: quantity.Grams(20 * c.ratio)}.Fit()
		if off := r.MostLow.Kilograms() - c.want; err != nil || !(math.Abs(off) <= 1e-3) {
			t.Errorf("%v L at %v %%: %v, %v, want %v kg", c.liters, c.ratio, r.MostLow, err, c.want)
		}
	}
}
