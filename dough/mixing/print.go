package mixing

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A derivation is printed on the scale its temperatures are whole on: °C unless they were given
// in °F. Where neither scale holds them in three decimals, °C is rounded and the step says so.
type scale struct {
	unit  quantity.TemperatureUnit
	exact bool
}

func scaleOf(temperatures []quantity.Temperature, deltas ...quantity.TemperatureDelta) scale {
	for _, u := range []quantity.TemperatureUnit{quantity.CelsiusScale, quantity.FahrenheitScale} {
		ok := true
		for _, t := range temperatures {
			if t.IsValid() {
				d := t.Decimal(u)
				ok = ok && d.Equal(d.RoundBank(3))
			}
		}
		for _, x := range deltas {
			d := x.Decimal(u)
			ok = ok && d.Equal(d.RoundBank(3))
		}
		if ok {
			return scale{u, true}
		}
	}
	return scale{quantity.CelsiusScale, false}
}

func (s scale) temperature(t quantity.Temperature) string { return trim(t.Text(s.unit, 3)) }

func (s scale) delta(d quantity.TemperatureDelta) string { return trim(d.Text(s.unit, 3)) }

func (s scale) number(t quantity.Temperature) string { return bare(s.temperature(t)) }

func (s scale) deltaNumber(d quantity.TemperatureDelta) string { return bare(s.delta(d)) }

// tolerance is what n rounded inputs may add up to.
func (s scale) tolerance(n int) float64 {
	if s.exact {
		return 0
	}
	return 0.0005 * float64(n)
}

// trim removes the zeros after the last decimal of "24.500 °C".
func trim(text string) string {
	number, unit, _ := strings.Cut(text, " ")
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number + " " + unit
}

// bare is the number of a quantity's text, in parentheses when it is negative.
func bare(text string) string {
	number, _, _ := strings.Cut(text, " ")
	if strings.HasPrefix(number, "−") {
		return "(" + number + ")"
	}
	return number
}

// fixed prints x to the decimals with a typographic minus.
func fixed(x float64, places int) string {
	return strings.Replace(strconv.FormatFloat(x, 'f', places, 64), "-", "−", 1)
}

// value prints x to the decimals, in parentheses when negative, for a line of numbers.
func value(x float64, places int) string {
	s := fixed(x, places)
	if strings.HasPrefix(s, "−") {
		return "(" + s + ")"
	}
	return s
}

func bind(symbol, meaning, value string) working.Binding {
	return working.Binding{Symbol: symbol, Meaning: meaning, Value: value}
}
