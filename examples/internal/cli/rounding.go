package cli

import (
	"example.org/maslin/dough/quantity"
)

func rounded(m quantity.Mass) quantity.Mass {
	r, _ := m.RoundTo(quantity.Grams(1))
	return r
}
