package quantity

import "encoding"

// Values lists the values of an enumeration, for a menu or a form: [Values][MassUnit]() is g, kg, mg, oz, lb.
// They are the consecutive values from zero that have a word; a zero value that means "not given" has
// none and is left out.
func Values[E interface {
	~int | ~int8 | ~uint8 | ~int16 | ~uint16 | ~int32
	encoding.TextMarshaler
}]() []E {
	var out []E
	for i := range 127 {
		word, err := E(i).MarshalText()
		if err != nil {
			break
		}
		if len(word) > 0 {
			out = append(out, E(i))
		}
	}
	return out
}
