package quantity

import (
	"strings"

	"github.com/shopspring/decimal"
)

const ouncesInPound = 16

// poundsAndOunces reads "2 lb 3.5 oz"; ok is false when nothing follows the pounds. The two are added before they are
// rounded, once. Pounds with a fraction and ounces that make another pound are refused: one of the two numbers was
// meant otherwise.
func poundsAndOunces(k *kind, text string) (quanta int64, ok bool, err error) {
	if len(text) > maxText {
		return 0, false, nil
	}
	pounds, units := splitNumber(strings.TrimSpace(text))
	end := strings.IndexFunc(units, func(r rune) bool { return r < 'a' || r > 'z' })
	if pounds == "" || end < 0 || k.find(units[:end]) != &k.scales[Pound] {
		return 0, false, nil
	}
	quanta, err = parsePoundsAndOunces(k, text, pounds, strings.TrimSpace(units[end:]))
	return quanta, true, err
}

func parsePoundsAndOunces(k *kind, text, pounds, rest string) (int64, error) {
	refuse := func(want Phrase, reason error) (int64, error) {
		return invalid, &InputError{Got: Excerpt(text), Want: want, Err: reason}
	}
	number, unit := splitNumber(rest)
	if number == "" || k.find(unit) != &k.scales[Ounce] {
		return refuse(k.accepted, ErrUnit)
	}
	if strings.ContainsAny(number, "+-−") {
		return refuse(Tell("quantity.want_one_sign_front_pounds", "one sign, in front of the pounds"), ErrUnit)
	}
	if strings.ContainsAny(pounds, ".,") {
		return refuse(Tell("quantity.want_whole_pounds_before_ounces_or", "whole pounds before ounces, or pounds alone"),
			ErrUnit)
	}
	whole, err := plainNumber(pounds)
	if err != nil {
		return refuse(wantOf(err), ErrUnit)
	}
	part, err := plainNumber(number)
	if err != nil {
		return refuse(wantOf(err), ErrUnit)
	}
	lb, err := decimal.NewFromString(whole)
	if err != nil {
		return refuse(k.accepted, ErrUnit)
	}
	oz, err := decimal.NewFromString(part)
	if err != nil {
		return refuse(k.accepted, ErrUnit)
	}
	sixteen := decimal.NewFromInt(ouncesInPound)
	if oz.GreaterThanOrEqual(sixteen) {
		return refuse(Tell("quantity.want_less_than_16_oz_beside", "less than 16 oz beside the pounds"), ErrOutOfRange)
	}
	if strings.HasPrefix(whole, "-") {
		oz = oz.Neg()
	}
	return k.exact(lb.Mul(sixteen).Add(oz), &k.scales[Ounce], text)
}
