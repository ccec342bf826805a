package quantity

import (
	"math/big"
	"strings"
	"unicode/utf8"
)

// vulgar are the numerator and the denominator of a fraction that has a sign of its own; zero for other signs.
func vulgar(sign rune) (over, under int64) {
	const signs, parts = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞", "121323143415253545165618385878"
	for i, r := range []rune(signs) {
		if r == sign {
			return int64(parts[2*i] - '0'), int64(parts[2*i+1] - '0')
		}
	}
	return 0, 0
}

// splitFraction cuts "2 1/4 tsp", "1/2 cup" or "2½ in" into numerator, denominator and unit; not ok when the text
// does not begin with a fraction. Whole numbers have at most six digits, the parts of a fraction three.
func splitFraction(t string) (num, den int64, unit string, ok bool) {
	whole, rest, _ := digits(t, 6)
	sign, size := utf8.DecodeRuneInString(strings.TrimSpace(rest))
	if over, under := vulgar(sign); under > 0 {
		return whole*under + over, under, strings.TrimSpace(strings.TrimSpace(rest)[size:]), true
	}
	over, after, found := whole, rest, whole > 0
	if spaced := strings.TrimLeft(rest, " \u00a0\u2009"); spaced != rest { // "2 1/4"
		over, after, found = digits(spaced, 3)
	} else {
		whole = 0 // "1/4"
	}
	slash, size := utf8.DecodeRuneInString(after)
	if !found || slash != '/' && slash != '⁄' {
		return 0, 0, "", false
	}
	under, after, found := digits(after[size:], 3)
	if !found || under == 0 || over > 999 {
		return 0, 0, "", false
	}
	return whole*under + over, under, strings.TrimSpace(after), true
}

// digits reads a whole number of at most so many digits.
func digits(t string, most int) (n int64, rest string, ok bool) {
	i := 0
	for i < len(t) && t[i] >= '0' && t[i] <= '9' {
		if i == most {
			return 0, t, false
		}
		n = 10*n + int64(t[i]-'0')
		i++
	}
	return n, t[i:], i > 0
}

// fraction converts num/den units into quanta, rounded half to even to the quantum.
func (k *kind) fraction(num, den int64, s *scale, got string) (int64, error) {
	over := new(big.Int).Mul(big.NewInt(num), big.NewInt(s.num))
	under := new(big.Int).Mul(big.NewInt(den), big.NewInt(s.den))
	q, r := new(big.Int).QuoRem(over, under, new(big.Int))
	if c := r.Lsh(r, 1).Cmp(under); c > 0 || c == 0 && q.Bit(0) == 1 {
		q.Add(q, big.NewInt(1))
	}
	if !q.IsInt64() || !k.valid(q.Int64()) {
		return invalid, &InputError{Got: Excerpt(got), Want: k.limits(s), Err: ErrOutOfRange}
	}
	return q.Int64(), nil
}
