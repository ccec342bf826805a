package cost

import (
	"strings"

	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

// ParseMoney reads an amount of money without its currency: "20", "0.90" or, with a decimal comma, "0,90".
//
// Digits and at most one point or comma between them; a comma before three digits may be a thousands separator and is
// refused. 0 to 1,000,000,000, at most 12 decimals. Errors: ErrRequired (empty text), ErrUnit (not such a
// number), ErrOutOfRange, ErrTooPrecise.
func ParseMoney(text string) (decimal.Decimal, error) {
	bad := func(reason error) (decimal.Decimal, error) {
		return decimal.Decimal{}, &quantity.InputError{Got: quantity.Excerpt(text),
			Want: quantity.Tell("cost.want_amount_money_without_currency_0",
				"an amount of money without its currency, such as 0.90"), Err: reason}
	}
	if len(text) > 64 {
		return bad(quantity.ErrOutOfRange)
	}
	plain := strings.TrimSpace(text)
	if plain == "" {
		return bad(quantity.ErrRequired)
	}
	comma := strings.Contains(plain, ",")
	plain = strings.Replace(plain, ",", ".", 1)
	whole, part, cut := strings.Cut(plain, ".")
	if whole == "" || cut && part == "" || strings.Trim(whole+part, "0123456789") != "" || comma && len(part) == 3 &&
		strings.Trim(whole, "0") != "" {
		return bad(quantity.ErrUnit)
	}
	d, err := decimal.NewFromString(plain)
	if err != nil {
		return bad(quantity.ErrUnit)
	}
	var p quantity.Problems
	checkMoney(&p, "", d)
	if err := p.ErrFor(nil); err != nil {
		return decimal.Decimal{}, err
	}
	return d, nil
}

// checkMoney bounds a price before anything is done with it: a decimal may hold an exponent of a
// million digits.
func checkMoney(p *quantity.Problems, path string, d decimal.Decimal) bool {
	want := quantity.Tell("cost.want_0_to_1000000000_at_most", "0 to 1000000000, with at most 12 decimals")
	if e := d.Exponent(); e > 9 || e < -40 || d.NumDigits() > 60 {
		p.Add(path, quantity.Tell("cost.got_decimal_extreme_size", "a decimal of extreme size"), want, quantity.ErrOutOfRange)
		return false
	}
	if d.Sign() < 0 || d.GreaterThan(decimal.NewFromInt(mostPrice)) {
		p.Add(path, d, want, quantity.ErrOutOfRange)
		return false
	}
	if !d.Equal(d.Truncate(12)) {
		p.Add(path, d, want, quantity.ErrTooPrecise)
		return false
	}
	return true
}
