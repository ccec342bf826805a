package dough

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// ParseFeeding reads a feeding by parts, as bakers say it: "1:5:5" is one part of culture, five of flour and five of
// water, each part a gram. Valid range: parts above 0, up to 10,000. Errors: ErrUnit for another text. Source: common
// practice, no source.
func ParseFeeding(text string) (Feeding, error) {
	var f Feeding
	parts := strings.Split(text, ":")
	to := []*quantity.Mass{&f.Starter.Mass, &f.Flour, &f.Water}
	for i := range to {
		ok := len(parts) == len(to)
		if ok {
			m, err := quantity.ParseMass(strings.TrimSpace(parts[i]) + " g")
			*to[i], ok = m, err == nil && m.Sign() > 0 && m.Kilograms() <= 10
		}
		if !ok {
			want := quantity.Tell("dough.want_parts", "culture, flour and water as 1:5:5")
			return Feeding{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrUnit}
		}
	}
	return f, nil
}
