package bakeday

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// What a kitchen hardly means, from where on it is asked back. Judgment: home ovens and deck ovens for bread end near
// 300 °C, a loaf that is not thin bakes longer than ten minutes, and a kitchen of one baker makes no hundreds at once.
const (
	hottestForBread = 300 // °C
	shortestBake    = 10 * time.Minute
	manyLoaves      = 200
)

// meant asks back what can be, and is hardly meant: an oven in the wrong unit, no salt, a bake of minutes, a thousand
// loaves.
func (d Day) meant() []working.Message {
	var out []working.Message
	b := d.Bake
	thin := b.Loaves.Style == bake.Pizza || b.Loaves.Style == bake.FlatBread
	for _, t := range []quantity.Temperature{b.Oven.Temperature, b.Oven.Then} {
		if !thin && !t.IsZero() && t.Compare(quantity.Celsius(hottestForBread)) > 0 {
			out = append(out, working.Tell("bakeday.meant_oven", "the oven is to be at %s: %s would be %s; was it °F?",
				t.Text(quantity.CelsiusScale, 0), quantity.Fahrenheit(t.Celsius()).Text(quantity.FahrenheitScale, 0),
				quantity.Fahrenheit(t.Celsius()).Text(quantity.CelsiusScale, 0)))
			break
		}
	}
	if d.Batch.SaltShare().IsZero() {
		out = append(out, working.Tell("bakeday.meant_salt",
			"there is no salt in it: is that meant? Most bread has 1.8 %% to 2.2 %% of the flour, and a dough without "+
				"salt is slack and rises fast"))
	}
	if oven := b.Oven.Covered + b.Oven.Uncovered; !thin && oven > 0 && oven.Duration() < shortestBake {
		out = append(out, working.Tell("bakeday.meant_short", "the loaves are in the oven for %v in all: is that meant?",
			oven))
	}
	if n := d.Batch.Pieces(); n >= manyLoaves {
		out = append(out, working.Tell("bakeday.meant_many", "%d loaves are to be made: is that meant?", n))
	}
	return out
}
