package quantity

import (
	"cmp"

	"github.com/shopspring/decimal"
)

// Mass is an amount of matter, exact to the microgram, between −1,000 t and 1,000 t. The
// zero value is 0 g. A negative mass is a difference of two masses.
type Mass struct{ exact[massKind] }

type massKind struct{}

func (massKind) kind() *kind { return &masses }

func newMass(quanta int64) Mass { return Mass{exact[massKind]{quanta}} }

// MassUnit names a unit that masses are read and shown in.
type MassUnit int

// The units of mass. An ounce is 28.349523125 g and a pound 453.59237 g (international
// avoirdupois, by definition).
const (
	Gram MassUnit = iota
	Kilogram
	Milligram
	Ounce
	Pound
)

// masses: the international pound is 0.45359237 kg exactly; 1 oz = 1/16 lb.
// Source: NIST SP 811 (2008), appendix B.8.
var masses = kind{
	noun:      "mass",
	fractions: true,
	letter:    'm', goMust: "MustMass", goInvalid: "quantity.Grams(math.NaN())", compound: poundsAndOunces,
	accepted: Tell("quantity.want_mass",
		`a mass with its unit, such as "780 g", "1.2 kg", "500 mg", "4 oz", "1 lb" or "1 lb 4 oz"`),
	low: -1e15, high: 1e15,
	scales: []scale{
		{symbol: "g", names: []string{"gram", "grams"}, num: 1e6, den: 1, places: 6},
		{symbol: "kg", names: []string{"kilogram", "kilograms"}, num: 1e9, den: 1, places: 9},
		{symbol: "mg", names: []string{"milligram", "milligrams"}, num: 1e3, den: 1, places: 3},
		{symbol: "oz", names: []string{"ounce", "ounces"}, num: 28349523125, den: 1000, places: 7, rounds: true},
		{symbol: "lb", names: []string{"lbs", "pound", "pounds"}, num: 453592370, den: 1, places: 8, rounds: true},
	},
}

func (u MassUnit) scale() *scale {
	if u < 0 || int(u) >= len(masses.scales) {
		u = Gram
	}
	return &masses.scales[u]
}

// Grams returns g grams rounded half to even to the microgram; NaN, infinities and values
// beyond the limits give an invalid mass.
func Grams(g float64) Mass { return newMass(masses.fromFloat(g, Gram.scale())) }

// Kilograms returns kg kilograms; see [Grams].
func Kilograms(kg float64) Mass { return newMass(masses.fromFloat(kg, Kilogram.scale())) }

// Ounces returns oz avoirdupois ounces; see [Grams].
func Ounces(oz float64) Mass { return newMass(masses.fromFloat(oz, Ounce.scale())) }

// Pounds returns lb avoirdupois pounds; see [Grams].
func Pounds(lb float64) Mass { return newMass(masses.fromFloat(lb, Pound.scale())) }

// Micrograms returns exactly n micrograms, or an invalid mass beyond the limits.
func Micrograms(n int64) Mass { return newMass(masses.keep(n)) }

// MassOf returns d of the unit exactly. It refuses digits below a microgram (ErrTooPrecise),
// except in ounces and pounds, which round half to even to the microgram, and values
// beyond 1,000 t (ErrOutOfRange).
func MassOf(d decimal.Decimal, u MassUnit) (Mass, error) {
	q, err := masses.exact(d, u.scale(), decimalText(d))
	if err != nil {
		return newMass(invalid), err
	}
	return newMass(q), nil
}

// ParseMass reads a number and a unit: "780 g", "1.2kg", "500 mg", "4 oz", "1/2 lb", or whole pounds with
// fewer than 16 ounces: "1 lb 4 oz", "2 lb 3.5 oz". The unit is required. A sign stands in front and is that of
// the whole. Errors: ErrUnit, ErrTooPrecise, ErrOutOfRange, ErrRequired (empty text).
func ParseMass(text string) (Mass, error) {
	q, err := masses.read(text)
	if err != nil {
		return newMass(invalid), err
	}
	return newMass(q), nil
}

// MustMass is [ParseMass] for literals; it panics on an error.
func MustMass(text string) Mass { return must(ParseMass(text)) }

// Decimal returns the mass in the unit; exact in grams, kilograms and milligrams, and
// rounded half to even to twelve decimals in ounces and pounds.
func (m Mass) Decimal(u MassUnit) decimal.Decimal { return decimalOf(m.quanta, u.scale(), 12) }

// In returns the mass in the unit as a float64; NaN if invalid.
func (m Mass) In(u MassUnit) float64 { return masses.toFloat(m.quanta, u.scale()) }

// Grams returns the mass in grams as a float64; NaN if invalid.
func (m Mass) Grams() float64 { return m.In(Gram) }

// Kilograms returns the mass in kilograms as a float64; NaN if invalid.
func (m Mass) Kilograms() float64 { return m.In(Kilogram) }

// Micrograms returns the exact count of micrograms, and false if the mass is invalid.
func (m Mass) Micrograms() (int64, bool) { return m.quanta, m.IsValid() }

// Add returns m + n.
func (m Mass) Add(n Mass) Mass { return newMass(masses.add(m.quanta, n.quanta)) }

// Sub returns m − n.
func (m Mass) Sub(n Mass) Mass { return m.Add(n.Neg()) }

// Neg returns −m.
func (m Mass) Neg() Mass { return newMass(masses.neg(m.quanta)) }

// Times returns n·m exactly.
func (m Mass) Times(n int64) Mass { return newMass(masses.mulDiv(m.quanta, n, 1)) }

// Divide returns m/n rounded half to even to the microgram; invalid for n = 0.
func (m Mass) Divide(n int64) Mass { return newMass(masses.mulDiv(m.quanta, 1, n)) }

// Scale returns m·num/den, rounded once, half to even; invalid for den = 0.
func (m Mass) Scale(num, den Mass) Mass {
	return newMass(masses.mulDiv(m.quanta, num.quanta, den.quanta))
}

// Over returns the whole of which m is p: m ÷ (p ÷ 100), rounded half to even to the
// microgram. It is the inverse of [Percent.Of]; invalid for p = 0.
func (m Mass) Over(p Percent) Mass {
	return newMass(masses.mulDiv(m.quanta, percentOne, p.quanta))
}

// PercentOf returns m as a percentage of whole: 100·m/whole, rounded half to even to a
// millionth of a percentage point; invalid for whole = 0.
func (m Mass) PercentOf(whole Mass) Percent {
	return newPercent(percents.mulDiv(m.quanta, percentOne, whole.quanta))
}

// RoundTo returns m rounded to the nearest multiple of step, half to even, and the residue
// m − rounded. A step that is not positive gives an invalid mass.
func (m Mass) RoundTo(step Mass) (rounded, residue Mass) { return m.round(step, 0) }

// RoundUp is [Mass.RoundTo] toward the next larger multiple.
func (m Mass) RoundUp(step Mass) (rounded, residue Mass) { return m.round(step, 1) }

// RoundDown is [Mass.RoundTo] toward the next smaller multiple.
func (m Mass) RoundDown(step Mass) (rounded, residue Mass) { return m.round(step, -1) }

func (m Mass) round(step Mass, direction int) (rounded, residue Mass) {
	if !m.IsValid() || !step.IsValid() || step.quanta <= 0 {
		return newMass(invalid), newMass(invalid)
	}
	s := step.quanta
	n := m.quanta / s
	r := m.quanta - n*s
	if r < 0 {
		n, r = n-1, r+s
	}
	switch {
	case r == 0:
	case direction > 0:
		n++
	case direction < 0:
	case r > s-r || r == s-r && n&1 != 0:
		n++
	}
	rounded = newMass(masses.keep(n * s))
	return rounded, m.Sub(rounded)
}

// Compare returns −1, 0 or 1; an invalid mass comes before every other.
func (m Mass) Compare(n Mass) int { return cmp.Compare(m.quanta, n.quanta) }

// Equal reports m == n.
func (m Mass) Equal(n Mass) bool { return m == n }

// Text prints the mass in the unit with exactly that many decimals, rounded half to even.
func (m Mass) Text(u MassUnit, places int) string {
	return string(masses.append(nil, m.quanta, u.scale(), places, false))
}

// Sum adds masses.
func Sum(masses ...Mass) Mass {
	var total Mass
	for _, m := range masses {
		total = total.Add(m)
	}
	return total
}
