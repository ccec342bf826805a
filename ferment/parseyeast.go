package ferment

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// ParseYeast reads commercial yeast in percent of the flour, with its kind: "0.6 % instant", "0.8 % active-dry yeast",
// "2 % fresh"; "dry" is active dry, "pressed" and "compressed" are fresh. Valid range: any percentage; what a dough
// takes is for [Bulk.Estimate]. Errors: ErrUnit for another text.
func ParseYeast(text string) (Yeast, error) {
	amount, kind, found := strings.Cut(text, "%")
	kind = strings.TrimSuffix(strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(kind, "-", " ")), " ")),
		" yeast")
	switch kind {
	case "dry":
		kind = "active dry"
	case "pressed", "compressed":
		kind = "fresh"
	}
	var y Yeast
	of, err := quantity.ParsePercent(amount + "%")
	if !found || err != nil || y.Kind.UnmarshalText([]byte(kind+" yeast")) != nil {
		return Yeast{}, &quantity.InputError{
			Got: quantity.Excerpt(text), Err: quantity.ErrUnit,
			Want: quantity.Tell("ferment.want_amount_and_kind",
				`an amount and a kind, such as "0.6 %% instant", "0.8 %% active dry" or "2 %% fresh"`),
		}
	}
	y.Amount = of
	return y, nil
}
