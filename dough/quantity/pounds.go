package quantity

import (
	"strings"

	"github.com/shopspring/decimal"
)

const ouncesInPound = 16

// poundsAndOunces cuts "2 lb 3.5 oz" into "2" and "3.5 oz"; false when nothing follows the pounds.
func poundsAndOunces(text string) (pounds, rest string, ok bool) {
	if len(text) > maxText {
		return "", "", false
	}
	number, unit := splitNumber(strings.TrimSpace(text))
	end := strings.IndexFunc(unit, func(r rune) bool { return r < 'a' || r > 'z' })
	if number == "" || end < 0 || masses.find(unit[:end]) != Pound.scale() {
		return "", "", false
	}
	return number, strings.TrimSpace(unit[end:]), true
}

// parsePoundsAndOunces adds the two before it rounds, once. Pounds with a fraction and ounces that make another
// pound are refused: one of the two numbers was meant otherwise.
func parsePoundsAndOunces(text, pounds, rest string) (Mass, error) {
	refuse := func(want string, reason error) (Mass, error) {
		return Mass{invalid}, &InputError{Got: Excerpt(text), Want: want, Err: reason}
	}
	number, unit := splitNumber(rest)
	if number == "" || masses.find(unit) != Ounce.scale() {
		return refuse(masses.accepted, ErrUnit)
	}
	if strings.ContainsAny(number, "+-−") {
		return refuse("one sign, in front of the pounds", ErrUnit)
	}
	if strings.ContainsAny(pounds, ".,") {
		return refuse("whole pounds before ounces, or pounds alone", ErrUnit)
	}
	whole, err := plainNumber(pounds)
	if err != nil {
		return refuse(err.Error(), ErrUnit)
	}
	part, err := plainNumber(number)
	if err != nil {
		return refuse(err.Error(), ErrUnit)
	}
	lb, err := decimal.NewFromString(whole)
	if err != nil {
		return refuse(masses.accepted, ErrUnit)
	}
	oz, err := decimal.NewFromString(part)
	if err != nil {
		return refuse(masses.accepted, ErrUnit)
	}
	sixteen := decimal.NewFromInt(ouncesInPound)
	if oz.GreaterThanOrEqual(sixteen) {
		return refuse("less than 16 oz beside the pounds", ErrOutOfRange)
	}
	if strings.HasPrefix(whole, "-") {
		oz = oz.Neg()
	}
	q, err := masses.exact(lb.Mul(sixteen).Add(oz), Ounce.scale(), text)
	if err != nil {
		return Mass{invalid}, err
	}
	return Mass{q}, nil
}
