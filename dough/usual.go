package dough

import "example.org/maslin/dough/quantity"

// usual hydrations in percent. Source: French Culinary Institute, The Fundamental Techniques of
// Classic Bread Baking, guide to preferments.
func (k PrefermentKind) usual() (low, high int64) {
	switch k {
	case Levain:
		return 50, 125
	case Poolish:
		return 100, 100
	case Biga, RyeSour:
		return 50, 100
	case OldDough:
		return 60, 75
	case Sponge:
		return 50, 85
	case OtherPreferment:
	}
	return 0, 0
}

// UsualHydration answers at which hydrations a kind of preferment is usually made. It is false for a kind
// of which nothing is published here. The range is a teaching school's; other schools make a biga of 45 % or
// a levain of 500 %, and Formula.For refuses neither. Source: French Culinary Institute, The Fundamental
// Techniques of Classic Bread Baking.
func (k PrefermentKind) UsualHydration() (quantity.Range[quantity.Percent], bool) {
	low, high := k.usual()
	return quantity.Range[quantity.Percent]{Low: leastWater.Times(low), High: leastWater.Times(high)}, high > 0
}
