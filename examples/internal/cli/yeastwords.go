package cli

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// yeastOf reads "0.6 % instant".
func yeastOf(text string) (y ferment.Yeast, kind string, err error) {
	want := quantity.Tell("cli.want_amount_and_kind_0_6", `an amount and a kind, such as "0.6 %% instant", "0.8 %% active dry" or "2 %% fresh"`)
	amount, rest, found := strings.Cut(strings.TrimSpace(text), "%")
	kind = strings.TrimSuffix(strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(rest, "-", " ")), " ")), " yeast")
	if kind == "dry" {
		kind = "active dry"
	}
	if found {
		y.Amount, err = quantity.ParsePercent(amount + "%")
	}
	if !found || err != nil || yeastWord(&y.Kind).UnmarshalText([]byte(kind)) != nil {
		return y, kind, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrUnit}
	}
	return y, kind, nil
}
