package mixing_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
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
	stiff := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(20), Kind: mixing.PizzaDough,
		Dough: quantity.Kilograms(3), Flour: quantity.Kilograms(2), Water: quantity.Grams(900)}
	r, err := stiff.Fit()
	if err != nil || r.SecondSpeed || !strings.Contains(working.Join(r.Kneading.Notes, "; ").String(),
		"at most 5 minutes") {
		t.Errorf("thin pizza dough: %+v, %v", r, err)
	}
}
