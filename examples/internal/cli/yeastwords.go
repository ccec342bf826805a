package cli

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// yeastOf reads "0.6 % instant".
func yeastOf(text string) (y ferment.Yeast, kind string, err error) {
	const want = `an amount and a kind, such as "0.6 % instant", "0.8 % active dry" or "2 % fresh"`
	amount, rest, found := strings.Cut(strings.TrimSpace(text), "%")
	kind = strings.TrimSuffix(strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(rest, "-", " ")), " ")), " yeast")
	if kind == "dry" {
		kind = "active dry"
	}
	kinds := map[string]ferment.YeastKind{"fresh": ferment.FreshYeast, "active dry": ferment.ActiveDryYeast, "instant": ferment.InstantYeast}
	if found {
		y.Amount, err = quantity.ParsePercent(amount + "%")
	}
	if y.Kind = kinds[kind]; !found || err != nil || y.Kind == ferment.NoYeast {
		return y, kind, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrUnit}
	}
	return y, kind, nil
}
