package mixing_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

func page(t *testing.T, a interface{ Report() report.Report }, units working.Units) string {
	t.Helper()
	return a.Report().Text(report.Options{Units: units, Width: 100})
}

// A report says what belongs to the answer, and nothing that does not.
func TestReportsSayWhatBelongs(t *testing.T) {
	must := func(x any, err error) any {
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	mix := hallMix()
	hand := mix
	hand.Mixer, hand.Bowl = mixing.Hand, quantity.Volume{}
	big := mix
	big.Bowl, big.Dough, big.Flour, big.Water = quantity.Liters(10), quantity.Grams(9000), quantity.Grams(5200),
		quantity.Grams(3600)
	cold := mixing.Scald{Flour: quantity.Grams(200), FlourTemperature: quantity.Celsius(5), Water: quantity.Grams(110)}
	for name, c := range map[string]struct {
		page     string
		has, not []string
	}{
		"household": {
			page(t, must(mix.Fit()).(mixing.BowlFit), working.Metric),
			[]string{"likely to fit", "household rule", "least, for the hook", "at speed 2 of 10", "Take care"},
			[]string{"batches of"},
		},
		"by hand": {
			page(t, must(hand.Fit()).(mixing.BowlFit), working.Metric),
			[]string{"2000 g to 4000 g", "common practice", "by hand"},
			[]string{"least, for the hook", "Take care", "batches of"},
		},
		"too much": {
			page(t, must(big.Fit()).(mixing.BowlFit), working.Metric),
			[]string{"too much", "3 batches of 3000 g", "by: charts"}, nil,
		},
		"US": {
			page(t, must(big.Fit()).(mixing.BowlFit), working.USCustomary), []string{"batches of", " lb "},
			[]string{" g;", " °C"},
		},
		"sticking": {
			page(t, must(mixing.Sticking{Mix: mix, Kneaded: 1 << 39, Rested: true}.Advise()).(mixing.Clearing), working.Metric),
			[]string{"add flour", "hydration", "prefermented", "0.0 g", "20.4 g"}, []string{"to be expected"},
		},
		"too early": {
			page(t, must(mixing.Sticking{Mix: mix}.Advise()).(mixing.Clearing), working.Metric),
			[]string{"to be expected", "8m"}, []string{"If flour is needed"},
		},
		"cold scald": {
			page(t, must(cold.Pour()).(mixing.ScaldWater), working.Metric),
			[]string{"with boiling water", "instead of 110 g would do", "burns"}, nil,
		},
		"planned": {
			page(t, must(hallPlan().Pour()).(mixing.PlannedWater), working.Metric),
			[]string{"What to expect", "given", "factors less balance", "believe the balance"},
			[]string{"Ways to get there\n\n"},
		},
		"guide": {
			page(t, must(ryePlan().Pour()).(mixing.PlannedWater), working.Metric),
			[]string{"guide value", "Ways to get there", "let the levain be at"}, nil,
		},
		"comparison": {
			page(t, must(hallBalance().Compare(hall())).(mixing.Comparison), working.Metric),
			[]string{"Two methods side by side", "26.0 °C", "18.2 °C"}, nil,
		},
		"stiff spiral": {
			page(t, must(mixing.Mix{
				Mixer: mixing.Spiral, Bowl: quantity.Liters(20), Flour: quantity.Grams(4000), Water: quantity.Grams(2000),
				Dough: quantity.Grams(6100),
			}.Kneading()).(mixing.Kneading), working.Metric),
			[]string{"slow (first speed)", "no second speed", "above 28 °C stop"},
			[]string{"fast (second speed)", "scale of ten"},
		},
		"rye": {
			page(t, must(mixing.Mix{
				Mixer: mixing.Hand, Kind: mixing.RyeDough, Flour: quantity.Grams(400), Water: quantity.Grams(320),
				Dough: quantity.Grams(730),
			}.Kneading()).(mixing.Kneading), working.Metric),
			[]string{"windowpane: none", "only swells"}, []string{"folds half an hour apart", "above 28 °C stop"},
		},
	} {
		for _, s := range c.has {
			if !strings.Contains(c.page, s) {
				t.Errorf("%s: %q is missing:\n%s", name, s, c.page)
			}
		}
		for _, s := range append(c.not, "NaN", "%!") {
			if strings.Contains(c.page, s) {
				t.Errorf("%s: says %q:\n%s", name, s, c.page)
			}
		}
	}
	// Two methods that agree have no reason to name.
	f := mixing.Factors{Target: quantity.Celsius(25),
		Others: []mixing.Factor{{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(20)}}}
	b := equalWeights(f)
	c := must(b.Compare(f)).(mixing.Comparison)
	if text := c.String(); strings.Contains(text, "most of it") {
		t.Error(text)
	}
	f.Friction = quantity.DeltaCelsius(0.06)
	if text := must(b.Compare(f)).(mixing.Comparison).String(); !strings.Contains(text,
		"most of it is the friction factor") {
		t.Error(text)
	}
}

// Each specific heat names who gives it: a handbook, the user, or memory.
func TestHeatsNameTheirSource(t *testing.T) {
	at := quantity.Celsius(20)
	part := func(s mixing.Substance, given mixing.SpecificHeat) mixing.Portion {
		return mixing.Portion{Mass: quantity.Grams(100), Temperature: at, Substance: s, SpecificHeat: given,
			Hydration: quantity.NewPercent(100)}
	}
	b := mixing.Balance{Water: quantity.Grams(500), WaterTemperature: at, Ingredients: []mixing.Portion{
		part(mixing.Flour,
			0), part(mixing.Flour, 1.9), part(mixing.Levain, 0), part(mixing.Sugar, 0), part(mixing.Salt, 0),
		part(mixing.Butter, 0),
	}}
	r, err := b.Final()
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"GNU units", "Geankoplis", "given", "mixture", "GNU units", "salt", "Geankoplis"}
	for i, s := range r.Working().Lines(working.Reader{})[:len(want)] {
		if s.Source.Key != want[i] {
			t.Errorf("part %d rests on %q, want %q", i, s.Source.Key, want[i])
		}
	}
}
