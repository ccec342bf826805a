package bake

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A heatWord is what old recipes call an oven, with the span that cookery books mean by it.
type heatWord struct {
	words           string
	least, as, most float64 // °F
}

// Source: charts of home economics, from memory; they differ by one gas mark.
func heatWords() []heatWord {
	return []heatWord{
		{"very slow|very cool|sehr schwache hitze", 225, 250, 275},
		{"slow|cool|low|schwache hitze", 275, 300, 325},
		{"moderately slow|warm|fairly slow|gelinde hitze", 300, 325, 350},
		{"moderate|medium|mittlere hitze|mittelhitze", 325, 350, 375},
		{"moderately hot|fairly hot|quick|gute mittelhitze|gute hitze", 375, 400, 425},
		{"hot|starke hitze|heiß", 400, 425, 450},
		{"very hot|sehr starke hitze|sehr heiß", 450, 475, 500},
	}
}

// ReadOvenSetting reads what an oven is set to as recipes and dials give it: "230C", "450 °F", "gas 7", "mark 1/2",
// "a moderate oven", "hot".
//
// A mark is its temperature by [GasMark.Temperature]. A word is taken at the middle of what cookery books mean by it,
// and the Notes of the result say how far they reach (from memory). Errors: ErrRequired, ErrUnit.
func ReadOvenSetting(text string) (OvenSetting, error) {
	want := quantity.Tell("bake.want_oven_setting",
		`an oven temperature, such as "230C" or "450F", a gas mark from "gas 1/4" to "gas 10", or a word such as "moderate"`)
	t, err := quantity.ParseTemperature(text)
	if err == nil {
		return OvenSetting{Wanted: t}, nil
	}
	said := strings.ToLower(strings.TrimSpace(text))
	if said == "" {
		return OvenSetting{}, &quantity.InputError{Want: want, Err: quantity.ErrRequired}
	}
	if strings.HasPrefix(said, "gas") || strings.HasPrefix(said, "mark") {
		if mark, err := ParseGasMark(said); err == nil {
			return OvenSetting{Wanted: mark.Temperature()}, nil
		}
	}
	plain := strings.TrimPrefix(strings.TrimSuffix(strings.TrimSuffix(said, " oven"), " heat"), "a ")
	for _, h := range heatWords() {
		for word := range strings.SplitSeq(h.words, "|") {
			if plain == word {
				return OvenSetting{Wanted: quantity.Fahrenheit(h.as), Notes: []working.Message{working.Tell("bake.heat_word",
					"%q is read as %.0f; cookery books mean %05.0f to %05.0f by it (from memory)", plain,
					quantity.Fahrenheit(h.as), quantity.Fahrenheit(h.least), quantity.Fahrenheit(h.most))}}, nil
			}
		}
	}
	return OvenSetting{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrUnit}
}
