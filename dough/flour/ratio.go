package flour

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

const one = 100_000_000 // 100 % in millionths of a point

var (
	wholeFlour = quantity.MustPercent("100 %")
	mostDough  = quantity.Kilograms(100_000)
)

// at is the path of one item of a list.
func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// percentRatio is x·num ÷ den with one rounding, half to even.
func percentRatio(x, num, den quantity.Percent) quantity.Percent {
	invalid := quantity.NewPercent(math.NaN())
	a, okA := x.Millionths()
	b, okB := num.Millionths()
	c, okC := den.Millionths()
	if !okA || !okB || !okC {
		return invalid
	}
	n, ok := quantity.Micrograms(a).Scale(quantity.Micrograms(b), quantity.Micrograms(c)).Micrograms()
	if !ok {
		return invalid
	}
	p, err := quantity.PercentOfDecimal(decimal.New(n, -6))
	if err != nil {
		return invalid
	}
	return p
}

// massPart is m·num ÷ den, rounded once.
func massPart(m quantity.Mass, num, den quantity.Percent) quantity.Mass {
	a, _ := num.Millionths()
	b, _ := den.Millionths()
	return m.Scale(quantity.Micrograms(a), quantity.Micrograms(b))
}
