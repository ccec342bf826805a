package quantity

import (
	"cmp"

	"github.com/shopspring/decimal"
)

// Length is a distance, exact to a micrometer, within ±1,000 km: the diameter of a basket, the
// height of a dough in its container, the altitude of a kitchen. The zero value is 0 m.
type Length struct{ exact[lengthKind] }

type lengthKind struct{}

func (lengthKind) kind() *kind { return &lengths }

func newLength(quanta int64) Length { return Length{exact[lengthKind]{quanta}} }

// LengthUnit names a unit that lengths are read and shown in.
type LengthUnit int

// The units of length; an inch is 2.54 cm and a foot twelve inches, by definition.
const (
	Meter LengthUnit = iota
	Centimeter
	Millimeter
	Inch
	Foot
	Kilometer
)

// lengths: 1 in = 25.4 mm by definition. Source: NIST SP 811 (2008), appendix B.8.
var lengths = kind{
	noun:      "length",
	fractions: true,
	letter:    'l', goMust: "MustLength", goInvalid: "quantity.Meters(math.NaN())",
	accepted: Tell("quantity.want_length",
		`a length with its unit, such as "24 cm", "110 mm", "1150 m", "9 in" or "3000 ft"`),
	low: -1e12, high: 1e12,
	scales: []scale{
		{symbol: "m", names: []string{"meter", "meters", "metre", "metres"}, num: 1e6, den: 1, places: 6},
		{symbol: "cm", names: []string{"centimeter", "centimeters"}, num: 1e4, den: 1, places: 4},
		{symbol: "mm", names: []string{"millimeter", "millimeters"}, num: 1e3, den: 1, places: 3},
		{symbol: "in", names: []string{"inch", "inches"}, num: 25400, den: 1, places: 6, rounds: true},
		{symbol: "ft", names: []string{"foot", "feet"}, num: 304800, den: 1, places: 6, rounds: true},
		{symbol: "km", names: []string{"kilometer", "kilometers"}, num: 1e9, den: 1, places: 9},
	},
}

func (u LengthUnit) scale() *scale {
	if u < 0 || int(u) >= len(lengths.scales) {
		u = Meter
	}
	return &lengths.scales[u]
}

// Meters returns m meters, rounded to the micrometer; NaN and infinities give an invalid length.
func Meters(m float64) Length { return newLength(lengths.fromFloat(m, Meter.scale())) }

// Centimeters returns cm centimeters; see [Meters].
func Centimeters(cm float64) Length { return newLength(lengths.fromFloat(cm, Centimeter.scale())) }

// Inches returns in inches; see [Meters].
func Inches(in float64) Length { return newLength(lengths.fromFloat(in, Inch.scale())) }

// Micrometers returns exactly n micrometers, or an invalid length beyond the limits.
func Micrometers(n int64) Length { return newLength(lengths.keep(n)) }

// ParseLength reads a number and a unit: "24 cm", "110 mm", "1150 m", "8 1/2 in", "3000 ft". The unit is
// required. Errors: ErrUnit, ErrTooPrecise, ErrOutOfRange, ErrRequired (empty text).
func ParseLength(text string) (Length, error) {
	q, err := lengths.parse(text)
	if err != nil {
		return newLength(invalid), err
	}
	return newLength(q), nil
}

// MustLength is [ParseLength] for literals; it panics on an error.
func MustLength(text string) Length { return must(ParseLength(text)) }

// In returns the length in the unit; NaN if invalid.
func (l Length) In(u LengthUnit) float64 { return lengths.toFloat(l.quanta, u.scale()) }

// Meters returns the length in meters; NaN if invalid.
func (l Length) Meters() float64 { return l.In(Meter) }

// Centimeters returns the length in centimeters; NaN if invalid.
func (l Length) Centimeters() float64 { return l.In(Centimeter) }

// Decimal returns the length in the unit, rounded half to even to twelve decimals.
func (l Length) Decimal(u LengthUnit) decimal.Decimal { return decimalOf(l.quanta, u.scale(), 12) }

// Micrometers returns the exact count of micrometers, and false if the length is invalid.
func (l Length) Micrometers() (int64, bool) { return l.quanta, l.IsValid() }

// Add returns l + o.
func (l Length) Add(o Length) Length { return newLength(lengths.add(l.quanta, o.quanta)) }

// Sub returns l − o.
func (l Length) Sub(o Length) Length {
	return newLength(lengths.add(l.quanta, lengths.neg(o.quanta)))
}

// Times returns n·l exactly.
func (l Length) Times(n int64) Length { return newLength(lengths.mulDiv(l.quanta, n, 1)) }

// Compare returns −1, 0 or 1; an invalid length comes before every other.
func (l Length) Compare(o Length) int { return cmp.Compare(l.quanta, o.quanta) }

// Equal reports l == o.
func (l Length) Equal(o Length) bool { return l == o }

// Text prints the length in the unit with exactly that many decimals.
func (l Length) Text(u LengthUnit, places int) string {
	return string(lengths.append(nil, l.quanta, u.scale(), places, false))
}
