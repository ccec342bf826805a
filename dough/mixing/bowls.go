package mixing

import (
	"math"

	"example.org/maslin/dough/quantity"
)

// A bowl is one published capacity chart: kilograms of dough by absorption ratio, of one machine.
// Source: operators' manuals of planetary mixers; basis flour at 12 % moisture and water at 70 °F.
type bowl struct {
	liters     float64
	lean       []knot // stiff (thin and medium pizza) to soft (bread, light to medium)
	pan        float64
	wholeGrain float64 // at 70 %; 0: not in the chart
	sweet      float64 // doughnut dough at 65 %
}

type knot struct{ ratio, kilograms float64 }

const pound = 0.45359237

func bowls() [4]bowl {
	const quarts8 = 8 * 0.946352946
	return [4]bowl{
		{liters: quarts8, lean: []knot{{40, 4 * pound}, {50, 6 * pound}, {55, 6 * pound}, {60, 8 * pound}},
			pan: 8 * pound, sweet: 4 * pound},
		{liters: 10, lean: []knot{{40, 2}, {50, 2.3}, {55, 3.4}, {60, 5.7}}, pan: 4.5, wholeGrain: 4, sweet: 2},
		{liters: 20, lean: []knot{{40, 4}, {50, 4.5}, {55, 6.8}, {60, 11.3}}, pan: 9, wholeGrain: 9, sweet: 4},
		{liters: 60, lean: []knot{{40, 18}, {50, 32}, {55, 30}, {60, 26}}, pan: 31.7, wholeGrain: 31.7, sweet: 17},
	}
}

// leanAt interpolates the chart; below 40 % it falls in proportion, above 60 % it stays.
func (b bowl) leanAt(ratio float64) float64 {
	first, last := b.lean[0], b.lean[len(b.lean)-1]
	switch {
	case ratio <= first.ratio:
		return first.kilograms * math.Max(ratio, 0) / first.ratio
	case ratio >= last.ratio:
		return last.kilograms
	}
	for i := 1; i < len(b.lean); i++ {
		if lo, hi := b.lean[i-1], b.lean[i]; ratio <= hi.ratio {
			return lo.kilograms + (hi.kilograms-lo.kilograms)*(ratio-lo.ratio)/(hi.ratio-lo.ratio)
		}
	}
	return last.kilograms
}

// perLiter is the least and most dough per liter of bowl that the chart gives.
func (b bowl) perLiter(kind DoughKind, ratio float64) (low, high float64) {
	lean := b.leanAt(ratio)
	low, high = lean, lean
	add := func(kg float64) {
		if kg > 0 {
			low, high = math.Min(low, kg), math.Max(high, kg)
		}
	}
	switch kind {
	case EnrichedDough: // the charts' doughnut dough: fat, eggs and sugar are not in the absorption ratio
		low, high = b.sweet, b.sweet
	case WholeGrainDough, RyeDough, SpeltDough, GlutenFreeDough:
		if b.wholeGrain > 0 {
			low, high = math.Min(lean, b.wholeGrain), math.Min(lean, b.wholeGrain)
		}
	default:
		// Thick pizza at 60 % and whole wheat at 70 % bound a soft white dough from below.
		if ratio >= 58 {
			add(b.pan)
		}
		if ratio >= 65 {
			add(b.wholeGrain)
		}
	}
	return low / b.liters, high / b.liters
}

// capacityOf is the range that the two charts nearest in size give for a bowl.
func capacityOf(v quantity.Volume, kind DoughKind, ratio float64) (low, high quantity.Mass, first, second bowl) {
	all := bowls()
	x := math.Log(v.Liters())
	distance := func(b bowl) float64 { return math.Abs(math.Log(b.liters) - x) }
	a, c := 0, 1
	if distance(all[1]) < distance(all[0]) {
		a, c = 1, 0
	}
	for i := 2; i < len(all); i++ {
		switch d := distance(all[i]); {
		case d < distance(all[a]):
			a, c = i, a
		case d < distance(all[c]):
			c = i
		}
	}
	l1, h1 := all[a].perLiter(kind, ratio)
	l2, h2 := all[c].perLiter(kind, ratio)
	liters := v.Liters()
	return quantity.Kilograms(math.Min(l1, l2) * liters), quantity.Kilograms(math.Max(h1, h2) * liters), all[a], all[c]
}
