package ferment_test

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"
)

// derived keeps whole derivations as they are told: in words and with numbers, the first with everything there is to
// say of it. Each line is worked out again from what it prints.
func derived(t *testing.T, file string, all map[string]working.Working) {
	t.Helper()
	var b strings.Builder
	level := working.Everything
	for _, name := range slices.Sorted(maps.Keys(all)) {
		w := all[name]
		if !testing.Short() { // what is kept is what was checked
			for _, fault := range workcheck.Faults(w) {
				t.Errorf("%s: %s", name, fault)
			}
		}
		b.WriteString("== " + name + "\n\n" + working.Telling{Level: working.InWords, Width: 110}.Text(w) + "\n" +
			working.Telling{Level: level, Width: 110}.Text(w) + "\n")
		level = working.WithNumbers
	}
	trial.Kept(t, "derived/"+file, b.String())
}

// corners is a history of hours and temperatures.
func corners(t *testing.T, hoursAndCelsius ...float64) ferment.History {
	t.Helper()
	var knots []ferment.Knot
	for i := 0; i < len(hoursAndCelsius); i += 2 {
		knots = append(knots, ferment.Knot{At: quantity.Elapsed(hoursAndCelsius[i] * float64(time.Hour)),
			Temperature: quantity.Celsius(hoursAndCelsius[i+1])})
	}
	h, err := ferment.FromKnots(knots...)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// with is a dough changed in some way.
func with(b ferment.Bulk, change func(*ferment.Bulk)) ferment.Bulk {
	change(&b)
	return b
}

// yeasted is a dough of commercial yeast alone.
func yeasted(kind ferment.YeastKind, amount float64) ferment.Bulk {
	return with(good(), func(b *ferment.Bulk) {
		b.Inoculation, b.Yeast = quantity.Percent{}, ferment.Yeast{Kind: kind, Amount: pct(amount)}
	})
}

// Doughs held at one temperature are derived in closed form, each part of the formula and of the culture by its line.
func TestSteadyDoughsAreDerived(t *testing.T) {
	all := map[string]working.Working{}
	for name, b := range map[string]ferment.Bulk{
		"levain at 23 °C": good(),
		"cold levain in a stiff whole grain dough": with(good(), func(b *ferment.Bulk) {
			b.ColdLevain, b.WholeGrain, b.Hydration = true, pct(37.5), pct(58)
		}),
		"sweet yeast dough up on a mountain": with(yeasted(ferment.OsmotolerantYeast, 1.25), func(b *ferment.Bulk) {
			b.Sugar, b.Altitude, b.History = pct(12), quantity.Meters(1200), ferment.Constant(quantity.Celsius(27.5))
		}),
		"wet dough of active dry yeast": with(yeasted(ferment.ActiveDryYeast, 0.3), func(b *ferment.Bulk) {
			b.Hydration, b.Salt = pct(112), pct(1.8)
		}),
		"fresh yeast at 0.4 °C, where growth ends": with(yeasted(ferment.FreshYeast, 4), func(b *ferment.Bulk) {
			b.History = ferment.Constant(quantity.Celsius(0.4))
		}),
		"fresh yeast just above where growth ends": with(yeasted(ferment.FreshYeast, 4), func(b *ferment.Bulk) {
			b.History = ferment.Constant(quantity.Celsius(0.402))
		}),
		"levain at 36 °C, where one of its yeasts ends": with(good(), func(b *ferment.Bulk) {
			b.History = ferment.Constant(quantity.Celsius(36))
		}),
		"yeast as crowded as it can be": yeasted(ferment.InstantYeast, 1.7),
		"never ready": with(good(), func(b *ferment.Bulk) {
			b.History = ferment.Constant(quantity.Celsius(0))
		}),
		"late end not within thirty days": with(good(), func(b *ferment.Bulk) {
			b.Inoculation, b.History = pct(20), ferment.Constant(quantity.Celsius(2))
		}),
		"rival curve of gas": with(good(), func(b *ferment.Bulk) {
			b.Law = ferment.GasBalance().With(ferment.Rivals{Gas: ferment.SaccharomycesCardinal()})
		}),
		"old dough handed on": with(good(), func(b *ferment.Bulk) {
			b.Inoculation = quantity.Percent{}
			b.Preferments = []ferment.HandedOn{{Flour: pct(20), Ripened: quantity.Elapsed(14 * time.Hour),
				Of: ferment.Ripening{Yeast: ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)},
					Hydration: pct(65), History: ferment.Constant(quantity.Celsius(18))}}}
		}),
	} {
		all[name] = estimate(t, b).Working()
	}
	derived(t, "steady.txt", all)
}
