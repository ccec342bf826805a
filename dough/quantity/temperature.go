package quantity

import (
	"cmp"
	"strings"

	"github.com/shopspring/decimal"
)

// Temperature is a point on the thermodynamic scale, in quanta of 1/9000 K, above 0 K and up
// to 10,000 K. Three decimals of °C and of °F are exact. The zero value is 0 K, which no
// dough has: it means "not given". Temperatures are not added to each other; see
// [TemperatureDelta].
type Temperature struct{ exact[temperatureKind] }

type temperatureKind struct{}

func (temperatureKind) kind() *kind { return &temperatures }

func newTemperature(quanta int64) Temperature { return Temperature{exact[temperatureKind]{quanta}} }

// TemperatureUnit names a scale that temperatures are shown in.
type TemperatureUnit int

// The temperature scales.
const (
	CelsiusScale TemperatureUnit = iota
	FahrenheitScale
	KelvinScale
)

// 0 °C is 273.15 K and 0 °F is 459.67 °R, both by definition; 1 °F is 5/9 K.
// Source: NIST SP 811 (2008), section 8.5 and appendix B.9.
const (
	perKelvin      = 9000
	perRankine     = 5000
	celsiusZero    = 2_458_350 // 273.15 · 9000
	fahrenheitZero = 2_298_350 // 459.67 · 5000
)

// mostDecimals is how many decimals of a degree text may have: a quantum is 0.000111 °C or 0.0002 °F, so that
// five name every value.
const mostDecimals = 5

var temperatures = kind{
	noun:   "temperature",
	letter: 't', goMust: "MustTemperature", goInvalid: "quantity.Temperature{}", optional: true,
	accepted: Tell("quantity.want_temperature", `a temperature with its scale, such as "24.5 °C", "76 °F" or "297.65 K"`),
	low:      1, high: 10_000 * perKelvin, above: true,
	scales: []scale{
		{symbol: "°C", names: []string{"C", "degC", "℃"}, num: perKelvin, den: 1, offset: celsiusZero, places: 3,
			most: mostDecimals},
		{symbol: "°F", names: []string{"F", "degF", "℉"}, num: perRankine, den: 1, offset: fahrenheitZero, places: 3,
			most: mostDecimals},
		{symbol: "K", num: perKelvin, den: 1, places: 3, most: mostDecimals},
	},
	hint: func(unit string) Phrase {
		if strings.ContainsAny(unit, "Δ∆") || unit == "dC" || unit == "dF" {
			return Tell("quantity.hint_no_difference", "a temperature difference does not belong here")
		}
		return Phrase{}
	},
}

func (u TemperatureUnit) scale() *scale {
	if u < 0 || int(u) >= len(temperatures.scales) {
		u = CelsiusScale
	}
	return &temperatures.scales[u]
}

// point turns an invalid count into the zero Temperature.
func point(q int64) Temperature {
	if !temperatures.valid(q) {
		return Temperature{}
	}
	return newTemperature(q)
}

// Celsius returns the temperature c °C, rounded to the nearest 1/9000 K. NaN, infinities and
// anything not above absolute zero give the zero value.
func Celsius(c float64) Temperature { return point(temperatures.fromFloat(c, CelsiusScale.scale())) }

// Fahrenheit returns the temperature f °F; see [Celsius].
func Fahrenheit(f float64) Temperature {
	return point(temperatures.fromFloat(f, FahrenheitScale.scale()))
}

// Kelvin returns the temperature k K; see [Celsius].
func Kelvin(k float64) Temperature { return point(temperatures.fromFloat(k, KelvinScale.scale())) }

// TemperatureQuanta returns the temperature n/9000 K, exactly; the zero value for what is no temperature.
func TemperatureQuanta(n int64) Temperature { return point(n) }

// TemperatureOf returns d on the scale. Three decimals are exact; a fourth and a fifth are rounded to the
// nearest 1/9000 K, half to even. More are refused (ErrTooPrecise), as is anything not above absolute zero
// (ErrOutOfRange).
func TemperatureOf(d decimal.Decimal, u TemperatureUnit) (Temperature, error) {
	q, err := temperatures.exact(d, u.scale(), decimalText(d))
	if err != nil {
		return Temperature{}, err
	}
	return newTemperature(q), nil
}

// ParseTemperature reads "24.5 °C", "24.5C", "76 °F" or "297.65 K". The scale is required, and a
// difference ("12 Δ°C") is refused. Digits as [TemperatureOf]. Errors: ErrUnit, ErrTooPrecise,
// ErrOutOfRange, ErrRequired.
func ParseTemperature(text string) (Temperature, error) {
	q, err := temperatures.parse(text)
	if err != nil {
		return Temperature{}, err
	}
	return newTemperature(q), nil
}

// MustTemperature is [ParseTemperature] for literals; it panics on an error.
func MustTemperature(text string) Temperature { return must(ParseTemperature(text)) }

// In returns the temperature on the scale; NaN if it is not given.
func (t Temperature) In(u TemperatureUnit) float64 {
	return temperatures.toFloat(temperatures.keep(t.quanta), u.scale())
}

// Celsius returns °C; NaN if not given.
func (t Temperature) Celsius() float64 { return t.In(CelsiusScale) }

// Fahrenheit returns °F; NaN if not given.
func (t Temperature) Fahrenheit() float64 { return t.In(FahrenheitScale) }

// Kelvin returns K; NaN if not given.
func (t Temperature) Kelvin() float64 { return t.In(KelvinScale) }

// Decimal returns the temperature on the scale, exact to four decimals of °F and otherwise
// rounded half to even to twelve decimals.
func (t Temperature) Decimal(u TemperatureUnit) decimal.Decimal {
	return decimalOf(temperatures.keep(t.quanta), u.scale(), 12)
}

// Quanta returns the exact count of 1/9000 K above 0 K, and false if the temperature is not given.
func (t Temperature) Quanta() (int64, bool) { return t.quanta, t.IsValid() }

// Sub returns the difference t − u; invalid if either is not given.
func (t Temperature) Sub(u Temperature) TemperatureDelta {
	if !t.IsValid() || !u.IsValid() {
		return newTemperatureDelta(invalid)
	}
	return newTemperatureDelta(deltas.add(t.quanta, -u.quanta))
}

// Add returns the temperature d above t; the zero value if it would not be above 0 K or if
// either is not given.
func (t Temperature) Add(d TemperatureDelta) Temperature {
	if !t.IsValid() || !d.IsValid() {
		return Temperature{}
	}
	return point(t.quanta + d.quanta)
}

// Compare returns −1, 0 or 1; a temperature that is not given comes before every other.
func (t Temperature) Compare(u Temperature) int {
	return cmp.Compare(t.quanta, u.quanta)
}

// Equal reports t == u.
func (t Temperature) Equal(u Temperature) bool { return t == u }

// Text prints the temperature on the scale with exactly that many decimals.
func (t Temperature) Text(u TemperatureUnit, places int) string {
	if !t.IsValid() {
		return "no temperature"
	}
	return string(temperatures.append(nil, t.quanta, u.scale(), places, false))
}
