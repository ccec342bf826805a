package vessel

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// ParseSides reads the sides of a tin as they are said: "24x11x7cm", "9 x 5 x 3 in" or "19x9cm", two or three; the unit
// of the last is that of those without. Valid range: that of [quantity.ParseLength]. Errors: ErrUnit for another text.
func ParseSides(text string) ([]quantity.Length, error) {
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("xX×*", r) })
	const digits = "0123456789.,"
	unit := ""
	if len(parts) > 0 {
		unit = strings.TrimLeft(strings.TrimSpace(parts[len(parts)-1]), digits)
	}
	if len(parts) < 2 || len(parts) > 3 || unit == "" {
		return nil, &quantity.InputError{
			Got: quantity.Excerpt(text), Err: quantity.ErrUnit, Want: quantity.Tell("vessel.want_sides",
				`the sides inside with an x between them, such as "24x11x7cm" or "19x9cm"`),
		}
	}
	var sides []quantity.Length
	for _, part := range parts {
		if part = strings.TrimSpace(part); strings.TrimLeft(part, digits) == "" {
			part += unit
		}
		l, err := quantity.ParseLength(part)
		if err != nil {
			return nil, err
		}
		sides = append(sides, l)
	}
	return sides, nil
}
