package quantity

import (
	"math"
	"math/big"
	"math/bits"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// invalid is the quantum count of a value that is not there; every limit excludes it.
const invalid = math.MinInt64

// A scale relates one unit to the quanta of its quantity: one unit is num/den quanta, and
// the unit's zero lies offset quanta above the quantity's zero.
type scale struct {
	symbol   string // as printed
	names    []string
	num, den int64
	offset   int64
	places   int  // decimals that print every value exactly, or the customary number
	rounds   bool // text in this unit may round to the quantum: its definition has more digits than a quantum
	most     int  // decimals that text may have and be rounded to the quantum; more are refused
}

// A kind is what is different between one quantity and another: its units, its limits and its names.
type kind struct {
	noun      string // "mass"
	accepted  Phrase // for errors: `a mass with its unit, such as "780 g" …`
	low       int64  // smallest valid quantum count
	high      int64
	above     bool // low itself is no value a person may give: the limit lies just below it
	fractions bool // text may say "2 1/4" and "½"
	optional  bool // zero quanta are a value that is not given
	scales    []scale
	show      int  // the scale that String prints; the canonical text is in the first
	letter    byte // in front of the binary form

	goMust, goInvalid string // for %#v: "MustMass", and a call that makes an invalid value

	hint func(unit string) Phrase // explains a unit of another quantity; may be nil

	// compound reads a text of two units; may be nil.
	compound func(k *kind, text string) (quanta int64, ok bool, err error)
}

const (
	maxText   = 64 // bytes of text that are looked at
	maxDigits = 40
)

func (k *kind) valid(q int64) bool { return q >= k.low && q <= k.high }

// keep returns q when it lies inside the limits and invalid otherwise.
func (k *kind) keep(q int64) int64 {
	if k.valid(q) {
		return q
	}
	return invalid
}

func (k *kind) add(a, b int64) int64 {
	if a == invalid || b == invalid {
		return invalid
	}
	// Limits stay below 2^62, so that one addition cannot overflow.
	return k.keep(a + b)
}

func (k *kind) neg(a int64) int64 {
	if a == invalid {
		return invalid
	}
	return k.keep(-a)
}

// mulDiv returns a·b/c rounded half to even, or invalid.
func (k *kind) mulDiv(a, b, c int64) int64 {
	if a == invalid || b == invalid || c == invalid {
		return invalid
	}
	q, ok := mulDiv(a, b, c)
	if !ok {
		return invalid
	}
	return k.keep(q)
}

// fromFloat rounds v units to the nearest quantum, half to even.
func (k *kind) fromFloat(v float64, s *scale) int64 {
	x := math.RoundToEven(v*float64(s.num)/float64(s.den)) + float64(s.offset)
	if math.IsNaN(x) || math.Abs(x) > 1<<62 {
		return invalid
	}
	return k.keep(int64(x))
}

func (k *kind) toFloat(q int64, s *scale) float64 {
	if q == invalid {
		return math.NaN()
	}
	return float64(q-s.offset) * float64(s.den) / float64(s.num)
}

func mulDiv(a, b, c int64) (int64, bool) {
	if c == 0 {
		return 0, false
	}
	negative := (a < 0) != (b < 0) != (c < 0)
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	d := magnitude(c)
	if hi >= d {
		return 0, false
	}
	q, r := bits.Div64(hi, lo, d)
	if r > d-r || (r == d-r && q&1 == 1) {
		q++
	}
	if q > math.MaxInt64 {
		return 0, false
	}
	if negative {
		return -int64(q), true
	}
	return int64(q), true
}

func magnitude(a int64) uint64 {
	if a < 0 {
		return uint64(-(a + 1)) + 1
	}
	return uint64(a)
}

// exact converts d units into quanta, refusing digits below the quantum.
func (k *kind) exact(d decimal.Decimal, s *scale, got string) (int64, error) {
	c, e := d.Coefficient(), int64(d.Exponent())
	if c.Sign() == 0 {
		e = 0
	}
	if c.BitLen() > 512 || e > 40 {
		return invalid, &InputError{Got: Excerpt(got), Want: k.limits(s), Err: ErrOutOfRange}
	}
	if e < -100 {
		return invalid, &InputError{Got: Excerpt(got), Want: k.precision(s), Err: ErrTooPrecise}
	}
	den := big.NewInt(s.den)
	c.Mul(c, big.NewInt(s.num))
	if e >= 0 {
		c.Mul(c, new(big.Int).Exp(big.NewInt(10), big.NewInt(e), nil))
	} else {
		den.Mul(den, new(big.Int).Exp(big.NewInt(10), big.NewInt(-e), nil))
	}
	q, r := new(big.Int).QuoRem(c, den, new(big.Int))
	if r.Sign() != 0 {
		if !s.rounds && (s.most == 0 || decimals(d) > s.most) {
			return invalid, &InputError{Got: Excerpt(got), Want: k.precision(s), Err: ErrTooPrecise}
		}
		up := big.NewInt(int64(r.Sign()))
		switch r.Abs(r).Lsh(r, 1).Cmp(den) {
		case 1:
			q.Add(q, up)
		case 0:
			if q.Bit(0) == 1 {
				q.Add(q, up)
			}
		}
	}
	q.Add(q, big.NewInt(s.offset))
	if !q.IsInt64() || !k.valid(q.Int64()) {
		return invalid, &InputError{Got: Excerpt(got), Want: k.limits(s), Err: ErrOutOfRange}
	}
	return q.Int64(), nil
}

// decimals counts the digits after the point, without zeros at the end.
func decimals(d decimal.Decimal) int {
	places := -int(d.Exponent())
	for c, ten := d.Coefficient(), big.NewInt(10); places > 0 && c.Sign() != 0; places-- {
		quotient, digit := new(big.Int).QuoRem(c, ten, new(big.Int))
		if digit.Sign() != 0 {
			break
		}
		c = quotient
	}
	return max(places, 0)
}

func (k *kind) limits(s *scale) Phrase {
	if k.above {
		return Tell("quantity.want_above_at_most", "above %s, at most %s", k.text(k.low-1, s, 2), k.text(k.high, s, 2))
	}
	return between(k.text(k.low, s, 0), k.text(k.high, s, 0))
}

func (k *kind) precision(s *scale) Phrase {
	return Tell("quantity.want_decimals", "at most %d decimals of %s", max(s.places, s.most), s.symbol)
}

// parse reads a number and a unit. Its errors carry no path: the caller knows the field.
func (k *kind) parse(text string) (int64, error) {
	if len(text) > maxText {
		return invalid, &InputError{
			Got:  Tell("quantity.got_text_bytes", "a text of %d bytes", len(text)),
			Want: k.accepted,
			Err:  ErrOutOfRange,
		}
	}
	t := strings.TrimSpace(text)
	if t == "" {
		return invalid, &InputError{Got: Tell("quantity.got_empty_text", "an empty text"), Want: k.accepted, Err: ErrRequired}
	}
	if k.fractions {
		if num, den, unit, ok := splitFraction(t); ok {
			if s := k.find(unit); s != nil {
				return k.fraction(num, den, s, text)
			}
		}
	}
	number, unit := splitNumber(t)
	if number == "" {
		return invalid, &InputError{Got: Excerpt(text), Want: k.accepted, Err: ErrUnit}
	}
	if unit == "" {
		return invalid, &InputError{Got: Tell("quantity.got_without_unit", "%s without a unit", Excerpt(text)),
			Want: k.accepted, Err: ErrUnit}
	}
	s := k.find(unit)
	if s == nil {
		want := k.accepted
		if k.hint != nil {
			if h := k.hint(unit); !h.IsZero() {
				want = Tell("quantity.want_and_hint", "%v; %v", want, h)
			}
		}
		return invalid, &InputError{Got: Excerpt(text), Want: want, Err: ErrUnit}
	}
	plain, err := plainNumber(number)
	if err != nil {
		return invalid, &InputError{Got: Excerpt(text), Want: wantOf(err), Err: ErrUnit}
	}
	d, err := decimal.NewFromString(plain)
	if err != nil {
		return invalid, &InputError{Got: Excerpt(text), Want: k.accepted, Err: ErrUnit}
	}
	return k.exact(d, s, text)
}

func (k *kind) find(unit string) *scale {
	for i := range k.scales {
		if k.scales[i].symbol == unit {
			return &k.scales[i]
		}
		for _, n := range k.scales[i].names {
			if n == unit {
				return &k.scales[i]
			}
		}
	}
	return nil
}

// splitNumber cuts "−12.5 °C" into "−12.5" and "°C"; any kind of space may stand between.
func splitNumber(t string) (number, unit string) {
	end := 0
	for i, r := range t {
		switch {
		case r >= '0' && r <= '9', r == '.', r == ',', r == '_':
		case i == 0 && (r == '+' || r == '-' || r == '−'):
		default:
			return t[:end], strings.TrimSpace(t[i:])
		}
		end = i + utf8.RuneLen(r)
	}
	return t[:end], ""
}

// A numberError says what a number has to look like.
type numberError struct{ want Phrase }

func (e numberError) Error() string { return e.want.String() }

func wantOf(err error) Phrase {
	if e, ok := err.(numberError); ok {
		return e.want
	}
	return Phrase{}
}

// plainNumber turns what people type into what a decimal parser reads: a true minus sign, a
// decimal comma where it cannot be a thousands separator, underscores between digits.
func plainNumber(n string) (string, error) {
	n = strings.Replace(n, "−", "-", 1)
	n = strings.TrimPrefix(n, "+")
	if strings.Contains(n, "_") {
		if strings.Contains(n, "__") || strings.HasPrefix(n, "_") || strings.HasSuffix(n, "_") {
			return "", numberError{Tell("quantity.want_underscores", "digits, with at most one underscore between two of them")}
		}
		n = strings.ReplaceAll(n, "_", "")
	}
	if c := strings.Count(n, ","); c > 0 {
		whole, frac, _ := strings.Cut(n, ",")
		if c > 1 || strings.Contains(n, ".") || (len(frac) == 3 &&
			strings.TrimLeft(strings.TrimPrefix(whole, "-"), "0") != "") {
			return "", numberError{Tell("quantity.want_no_thousands",
				"a number without thousands separators, its decimals after a point")}
		}
		n = whole + "." + frac
	}
	digits := strings.TrimPrefix(n, "-")
	if strings.Count(digits, ".") > 1 || strings.Trim(digits, ".") == "" || len(digits) > maxDigits ||
		strings.HasPrefix(digits, ".") || strings.HasSuffix(digits, ".") {
		return "", numberError{Tell("quantity.want_plain_decimal",
			"a plain decimal number such as 12.5 before the unit")}
	}
	return n, nil
}
