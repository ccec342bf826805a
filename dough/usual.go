package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// usual hydrations in percent. Source: French Culinary Institute, The Fundamental Techniques of
// Classic Bread Baking, guide to preferments.
var usualHydrations = [...][2]int64{
	Levain: {50, 125}, Poolish: {100, 100}, Biga: {50, 100}, OldDough: {60, 75}, Sponge: {50, 85}, RyeSour: {50, 100},
}

// UsualHydration answers at which hydrations a kind of preferment is usually made. It is false for a kind
// of which nothing is published here. The range is a teaching school's; other schools make a biga of 45 % or
// a levain of 500 %, and Formula.For refuses neither. Source: French Culinary Institute, The Fundamental
// Techniques of Classic Bread Baking.
func (k PrefermentKind) UsualHydration() (low, high quantity.Percent, source working.Source, ok bool) {
	if int(k) >= len(usualHydrations) {
		return low, high, source, false
	}
	u := usualHydrations[k]
	return leastWater.Times(u[0]), leastWater.Times(u[1]), sources.ClassicBread, true
}
