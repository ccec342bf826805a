package bake

import "example.org/maslin/dough/quantity"

// within is a number of minutes as an elapsed time.
func within(m float64) quantity.Elapsed { return quantity.Elapsed(minutes(m)) }
