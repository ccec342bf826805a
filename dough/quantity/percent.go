package quantity

import (
	"cmp"

	"github.com/shopspring/decimal"
)

// Percent is a share in parts per hundred, exact to a millionth of a percentage point. In
// formulas it is the baker's percentage: of the weight of all flour. The zero value is 0 %.
type Percent struct{ exact[percentKind] }

type percentKind struct{}

func (percentKind) kind() *kind { return &percents }

func newPercent(quanta int64) Percent { return Percent{exact[percentKind]{quanta}} }

// percentOne is 100 %, the whole, in quanta.
const percentOne = 100_000_000

var percents = kind{
	noun:   "percentage",
	letter: 'p', goMust: "MustPercent", goInvalid: "quantity.NewPercent(math.NaN())",
	accepted: Tell("quantity.want_percent", `a percentage with its sign, such as "68 %%"`),
	low:      -1e15, high: 1e15,
	scales: []scale{
		{symbol: "%", names: []string{"percent"}, num: 1e6, den: 1, places: 6},
	},
	hint: func(unit string) Phrase {
		if masses.find(unit) != nil {
			return Tell("quantity.hint_no_weight", "a weight does not belong here")
		}
		return Phrase{}
	},
}

func percentScale() *scale { return &percents.scales[0] }

// NewPercent returns p percent (68 means 68 %, not 6800 %), rounded half to even to a
// millionth of a point; NaN and infinities give an invalid percentage.
func NewPercent(p float64) Percent { return newPercent(percents.fromFloat(p, percentScale())) }

// Millionths returns exactly n millionths of a percentage point (68,000,000 for 68 %), or an invalid percentage beyond
// the limits.
func Millionths(n int64) Percent { return newPercent(percents.keep(n)) }

// PercentOfDecimal returns d percent exactly; more than six decimals are refused
// (ErrTooPrecise).
func PercentOfDecimal(d decimal.Decimal) (Percent, error) {
	q, err := percents.exact(d, percentScale(), decimalText(d))
	if err != nil {
		return newPercent(invalid), err
	}
	return newPercent(q), nil
}

// ParsePercent reads "68 %", "68%" or "68 percent". The sign is required: "0.68" and "68" are
// refused, because each could mean the other.
func ParsePercent(text string) (Percent, error) {
	q, err := percents.parse(text)
	if err != nil {
		return newPercent(invalid), err
	}
	return newPercent(q), nil
}

// MustPercent is [ParsePercent] for literals; it panics on an error.
func MustPercent(text string) Percent { return must(ParsePercent(text)) }

// Of returns p percent of m, rounded half to even to the microgram.
func (p Percent) Of(m Mass) Mass {
	return newMass(masses.mulDiv(m.quanta, p.quanta, percentOne))
}

// OfPercent returns p percent of q percent: 15 % of 80 % is 12 %.
func (p Percent) OfPercent(q Percent) Percent {
	return newPercent(percents.mulDiv(p.quanta, q.quanta, percentOne))
}

// Over returns p as a percentage of q: 12 % over 80 % is 15 %; invalid for q = 0.
func (p Percent) Over(q Percent) Percent {
	return newPercent(percents.mulDiv(p.quanta, percentOne, q.quanta))
}

// Add returns p + q.
func (p Percent) Add(q Percent) Percent { return newPercent(percents.add(p.quanta, q.quanta)) }

// Sub returns p − q.
func (p Percent) Sub(q Percent) Percent { return p.Add(q.Neg()) }

// Neg returns −p.
func (p Percent) Neg() Percent { return newPercent(percents.neg(p.quanta)) }

// Times returns n·p exactly.
func (p Percent) Times(n int64) Percent { return newPercent(percents.mulDiv(p.quanta, n, 1)) }

// Points returns the number of percent: 68 for 68 %; NaN if invalid.
func (p Percent) Points() float64 { return percents.toFloat(p.quanta, percentScale()) }

// Fraction returns the share of one: 0.68 for 68 %; NaN if invalid.
func (p Percent) Fraction() float64 { return p.Points() / 100 }

// Decimal returns the exact number of percent.
func (p Percent) Decimal() decimal.Decimal { return decimalOf(p.quanta, percentScale(), 6) }

// Millionths returns the exact count of millionths of a percentage point, and false if invalid.
func (p Percent) Millionths() (int64, bool) { return p.quanta, p.IsValid() }

// Compare returns −1, 0 or 1; an invalid percentage comes before every other.
func (p Percent) Compare(q Percent) int { return cmp.Compare(p.quanta, q.quanta) }

// Equal reports p == q.
func (p Percent) Equal(q Percent) bool { return p == q }

// Text prints exactly that many decimals, rounded half to even.
func (p Percent) Text(places int) string {
	return string(percents.append(nil, p.quanta, percentScale(), places, false))
}
