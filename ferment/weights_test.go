package ferment

import (
	"testing"

	"example.org/maslin/dough/quantity"
)

// What a log of bakes is weighed with when it is weighed as a whole leaves a wild bake out, and without that only lets
// it count less.
func TestAWholeLogLeavesAWildBakeOut(t *testing.T) {
	weight := func(robust bool) float64 {
		var log []LoggedBulk
		b := Bulk{Law: GasBalance(), Hydration: percent(0.7), Salt: percent(0.02), Inoculation: percent(0.15),
			Rise: percent(0.75), History: Constant(degrees(24))}
		e, err := b.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		for k := range 20 {
			took := e.Ready().Likely
			if k == 7 {
				took *= 4
			}
			log = append(log, LoggedBulk{Bulk: b, Took: quantity.Elapsed(took)})
		}
		l, err := Learning{Bakes: log, Robust: robust}.Learn()
		if err != nil {
			t.Fatal(err)
		}
		return l.weights[7]
	}
	if plain, robust := weight(false), weight(true); !(robust == 0 && plain > 0 && plain < 0.5) {
		t.Errorf("a bake that took four times as long counts %v, and %v in a log weighed as a whole", plain, robust)
	}
}
