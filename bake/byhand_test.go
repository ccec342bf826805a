package bake

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// The tolerable negative errors of Directive 76/211/EEC, annex I, 2.4, at both ends of each of its bands, percentages
// rounded up to a tenth of a gram. From memory.
func TestTolerancesOfTheDirective(t *testing.T) {
	for nominal, want := range map[float64]float64{
		5: 0.5, 50: 4.5, 50.1: 4.5, 100: 4.5, 101: 4.6, 200: 9, 201: 9, 300: 9, 301: 9.1, 400: 12, 500: 15, 501: 15,
		1000: 15, 1001: 15.1, 2000: 30, 10_000: 150,
	} {
		l, err := PackedWeight{Nominal: quantity.Grams(nominal)}.Limits()
		if err != nil || l.Tolerance != quantity.Grams(want) || l.None != quantity.Grams(nominal-2*want) {
			t.Errorf("%v g: %v, %v, want %v g", nominal, l.Tolerance, err, want)
		}
	}
}

// What cookery books call an oven reaches from one gas mark below to one above, 25 °F each.
func TestWordsForOvens(t *testing.T) {
	for word, want := range map[string]float64{"very slow": 250, "slow": 300, "warm": 325, "moderate": 350,
		"fairly hot": 400, "hot": 425, "very hot": 475} {
		s, err := ReadOvenSetting("a " + word + " oven")
		if err != nil || s.Wanted != quantity.Fahrenheit(want) || len(s.Notes) != 1 {
			t.Errorf("%s: %v, %v, %v", word, s.Wanted, s.Notes, err)
		}
	}
	for _, h := range heatWords() {
		if h.as-h.least != 25 || h.most-h.as != 25 {
			t.Errorf("%s is %v to %v °F around %v", h.words, h.least, h.most, h.as)
		}
	}
}

// A pizza of 250 g takes 8 minutes, give or take two fifths: 4.8 to 11.2, told in minutes rounded up, at 275 °C.
func TestTheUsualTimeOfAThinBread(t *testing.T) {
	v, err := LoafReading{Goal: Goal{Style: Pizza}, InOven: quantity.Elapsed(7 * time.Minute)}.Judge()
	if err != nil {
		t.Fatal(err)
	}
	says(t, "pizza", page(v.Report()), "usual time 5m to 12m at 275 °C, for a piece of 250 g")
}

// More lost on the rack than bread can lose, and a shape that there is not, are refused.
func TestWhatACoolingLoafRefuses(t *testing.T) {
	loaf := CoolingLoaf{Style: Pan, Baked: quantity.Grams(720), Room: quantity.Celsius(22)}
	for path, change := range map[string]func(*CoolingLoaf){
		"loses": func(c *CoolingLoaf) { c.Loses = quantity.NewPercent(8.1) },
		"shape": func(c *CoolingLoaf) { c.Shape = 99 },
	} {
		c := loaf
		change(&c)
		_, err := c.Time()
		if in := quantity.InputErrors(err); len(in) != 1 || in[0].Path != path {
			t.Errorf("%s: %v", path, err)
		}
	}
	loaf.Loses = quantity.NewPercent(8)
	if _, err := loaf.Time(); err != nil {
		t.Errorf("8 %%: %v", err)
	}
}
