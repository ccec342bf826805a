package vessel

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// ReadTin reads the sides of a tin as they are said: "24x11x7cm" or "9 x 5 x 3 in" inside at the rim, and "19x9cm" for
// the floor of one that tapers, or nothing. The unit of the last side is that of those without. Valid range: that of
// [quantity.ParseLength]; whether it is a tin is for [TinBox.Volume]. Errors: ErrUnit for another text, at Rim or Base.
func ReadTin(rim, base string) (TinBox, error) {
	var p quantity.Problems
	var b TinBox
	p.Join("Rim", readSides(rim, quantity.Tell("vessel.want_three_sides",
		`length, width and height inside with an x between them, such as "24x11x7cm" or "9x5x3in"`),
		&b.Length, &b.Width, &b.Height))
	if base != "" {
		p.Join("Base", readSides(base, quantity.Tell("vessel.want_two_sides",
			`length and width inside with an x between them, such as "19x9cm"`), &b.BaseLength, &b.BaseWidth))
	}
	return b, p.ErrFor(b)
}

func readSides(text string, want quantity.Phrase, into ...*quantity.Length) error {
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("xX×*", r) })
	const digits = "0123456789.,"
	unit := ""
	if len(parts) > 0 {
		unit = strings.TrimLeft(strings.TrimSpace(parts[len(parts)-1]), digits)
	}
	if len(parts) != len(into) || unit == "" {
		return &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrUnit}
	}
	for i, part := range parts {
		if part = strings.TrimSpace(part); strings.TrimLeft(part, digits) == "" {
			part += unit
		}
		var err error
		if *into[i], err = quantity.ParseLength(part); err != nil {
			return err
		}
	}
	return nil
}
