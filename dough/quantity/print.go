package quantity

import (
	"bytes"
	"fmt"
	"math/big"
	"math/bits"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// text prints q in the unit with at most `places` decimals, trailing zeros removed.
func (k *kind) text(q int64, s *scale, places int) string {
	return string(k.append(nil, q, s, places, true))
}

func (k *kind) append(b []byte, q int64, s *scale, places int, trim bool) []byte {
	if q == invalid {
		return append(append(b, "invalid "...), k.noun...)
	}
	b = appendNumber(b, q-s.offset, s, places, trim)
	b = append(b, ' ')
	return append(b, s.symbol...)
}

func appendNumber(b []byte, q int64, s *scale, places int, trim bool) []byte {
	if places < 0 {
		places = 0
	}
	if places > 12 {
		places = 12
	}
	var room [40]byte
	digits, negative := scaled(room[:0], q, s, places)
	if len(digits) <= places {
		digits = slices.Insert(digits, 0, []byte("0000000000000")[:places-len(digits)+1]...)
	}
	if negative {
		b = append(b, "−"...)
	}
	whole, frac := digits[:len(digits)-places], digits[len(digits)-places:]
	if trim {
		frac = bytes.TrimRight(frac, "0")
	}
	b = append(b, whole...)
	if len(frac) > 0 {
		b = append(append(b, '.'), frac...)
	}
	return b
}

// scaled are the digits of |q|·den·10^places/num, rounded half to even, and whether q is below nothing and rounds to
// something. Products of more than 64 bits go by way of big integers.
func scaled(b []byte, q int64, s *scale, places int) (digits []byte, negative bool) {
	ten := uint64(1)
	for range places {
		ten *= 10
	}
	size := uint64(q)
	if q < 0 {
		size = -size
	}
	over, low := bits.Mul64(size, uint64(s.den))
	high, low := bits.Mul64(low, ten)
	if num := uint64(s.num); over == 0 && high < num && num < 1<<62 {
		n, r := bits.Div64(high, low, num)
		if 2*r > num || 2*r == num && n%2 == 1 {
			n++
		}
		return strconv.AppendUint(b, n, 10), q < 0 && n > 0
	}
	n := new(big.Int).Mul(big.NewInt(q), big.NewInt(s.den))
	n.Mul(n, new(big.Int).SetUint64(ten)).Abs(n)
	d := big.NewInt(s.num)
	n, r := n.QuoRem(n, d, new(big.Int))
	if c := r.Lsh(r, 1).Cmp(d); c > 0 || c == 0 && n.Bit(0) == 1 {
		n.Add(n, big.NewInt(1))
	}
	return n.Append(b, 10), q < 0 && n.Sign() != 0
}

// back reports whether q, rounded to that many decimals of the unit, is nearer to q than to its neighbors.
func (k *kind) back(q int64, s *scale, places int) bool {
	// |rounded − q| < 1/2 quantum, in units of 10^−places/num: the remainder of (q−offset)·10^places by num.
	ten := int64(1)
	for range places {
		ten *= 10
	}
	r := (q - s.offset) % s.num * ten % s.num
	r = max(r, -r)
	return 2*min(r, s.num-r) < ten
}

// decimalOf returns q in the unit; exact whenever the unit's ratio ends in decimals.
func decimalOf(q int64, s *scale, places int32) decimal.Decimal {
	if q == invalid {
		return decimal.Decimal{}
	}
	n := decimal.NewFromBigInt(new(big.Int).Mul(big.NewInt(q-s.offset), big.NewInt(s.den)), 0)
	unit := decimal.NewFromInt(s.num)
	quo, rem := n.QuoRem(unit, places)
	// What is left is compared with half of the last place: a digit more, rounded again, would lose the rest behind it.
	half := unit.Shift(-places)
	if c := rem.Abs().Add(rem.Abs()).Cmp(half); c > 0 || c == 0 && quo.Shift(places).BigInt().Bit(0) == 1 {
		quo = quo.Add(decimal.New(int64(n.Sign()), -places))
	}
	return quo
}

// format implements fmt.Formatter for all quantities: %v and %s print the canonical text,
// %.1f prints one decimal with the unit, %#v prints Go syntax.
func format(f fmt.State, verb rune, plain string, withPlaces func(int) string, goSyntax string) {
	out := plain
	switch {
	case verb == 'v' && f.Flag('#'):
		out = goSyntax
	case verb == 'v' || verb == 's':
		if p, ok := f.Precision(); ok {
			out = withPlaces(p)
		}
	case verb == 'f':
		p, ok := f.Precision()
		if !ok {
			p = 3
		}
		out = withPlaces(p)
	case verb == 'q':
		out = strconv.Quote(plain)
	default:
		out = "%!" + string(verb) + "(" + plain + ")"
	}
	if w, ok := f.Width(); ok {
		if pad := w - utf8.RuneCountInString(out); pad > 0 {
			if f.Flag('-') {
				out += strings.Repeat(" ", pad)
			} else {
				out = strings.Repeat(" ", pad) + out
			}
		}
	}
	_, _ = f.Write([]byte(out))
}
