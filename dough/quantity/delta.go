package quantity

import (
	"cmp"

	"github.com/shopspring/decimal"
)

// TemperatureDelta is a difference of two temperatures, in quanta of 1/9000 K, within
// ±10,000 K: a friction factor, a rise during mixing, a probe's error. The zero value is no
// difference. 24 Δ°F is 13.333 Δ°C.
type TemperatureDelta struct{ exact[deltaKind] }

type deltaKind struct{}

func (deltaKind) kind() *kind { return &deltas }

func newTemperatureDelta(quanta int64) TemperatureDelta {
	return TemperatureDelta{exact[deltaKind]{quanta}}
}

var deltas = kind{
	noun:   "temperature difference",
	letter: 'd', goMust: "MustDelta", goInvalid: "quantity.DeltaCelsius(math.NaN())",
	accepted: Tell("quantity.want_difference",
		`a temperature difference with its unit, such as "12 Δ°C", "24 Δ°F", "12 K", `+
			`or in plain letters "12 dC", "24 dF"`),
	low: -10_000 * perKelvin, high: 10_000 * perKelvin,
	scales: []scale{
		{symbol: "Δ°C", names: []string{"ΔC", "dC", "∆°C", "∆C", "d°C", "delta C"}, num: perKelvin, den: 1, places: 3,
			most: mostDecimals},
		{symbol: "Δ°F", names: []string{"ΔF", "dF", "∆°F", "∆F", "d°F", "delta F"}, num: perRankine, den: 1, places: 3,
			most: mostDecimals},
		{symbol: "K", names: []string{"ΔK", "∆K", "dK"}, num: perKelvin, den: 1, places: 3, most: mostDecimals},
	},
	hint: func(unit string) Phrase {
		if unit != "K" && temperatures.find(unit) != nil {
			return Tell("quantity.hint_difference", "a difference is written 24 Δ°F, a temperature 24 °F")
		}
		return Phrase{}
	},
}

func (u TemperatureUnit) deltaScale() *scale {
	if u < 0 || int(u) >= len(deltas.scales) {
		u = CelsiusScale
	}
	return &deltas.scales[u]
}

// DeltaCelsius returns a difference of c °C, rounded to the nearest 1/9000 K; NaN and
// infinities give an invalid difference.
func DeltaCelsius(c float64) TemperatureDelta {
	return newTemperatureDelta(deltas.fromFloat(c, CelsiusScale.deltaScale()))
}

// DeltaFahrenheit returns a difference of f °F, which is 5/9 as many °C; see [DeltaCelsius].
func DeltaFahrenheit(f float64) TemperatureDelta {
	return newTemperatureDelta(deltas.fromFloat(f, FahrenheitScale.deltaScale()))
}

// DeltaQuanta returns the difference n/9000 K, exactly, or an invalid difference beyond the limits.
func DeltaQuanta(n int64) TemperatureDelta { return newTemperatureDelta(deltas.keep(n)) }

// ParseDelta reads "12 Δ°C", "24 Δ°F", "12 K", or in plain letters "12 dC", "24 dF". A plain "12 °C" is
// refused: it would be a temperature. Digits as [TemperatureOf].
func ParseDelta(text string) (TemperatureDelta, error) {
	q, err := deltas.parse(text)
	if err != nil {
		return newTemperatureDelta(invalid), err
	}
	return newTemperatureDelta(q), nil
}

// MustDelta is [ParseDelta] for literals; it panics on an error.
func MustDelta(text string) TemperatureDelta { return must(ParseDelta(text)) }

// In returns the difference in the unit; NaN if invalid.
func (d TemperatureDelta) In(u TemperatureUnit) float64 {
	return deltas.toFloat(d.quanta, u.deltaScale())
}

// Celsius returns the difference in °C (or K); NaN if invalid.
func (d TemperatureDelta) Celsius() float64 { return d.In(CelsiusScale) }

// Fahrenheit returns the difference in °F; NaN if invalid.
func (d TemperatureDelta) Fahrenheit() float64 { return d.In(FahrenheitScale) }

// Decimal returns the difference in the unit, rounded half to even to twelve decimals.
func (d TemperatureDelta) Decimal(u TemperatureUnit) decimal.Decimal {
	return decimalOf(d.quanta, u.deltaScale(), 12)
}

// Quanta returns the exact count of 1/9000 K, and false if the difference is invalid.
func (d TemperatureDelta) Quanta() (int64, bool) { return d.quanta, d.IsValid() }

// Add returns d + e.
func (d TemperatureDelta) Add(e TemperatureDelta) TemperatureDelta {
	return newTemperatureDelta(deltas.add(d.quanta, e.quanta))
}

// Sub returns d − e.
func (d TemperatureDelta) Sub(e TemperatureDelta) TemperatureDelta { return d.Add(e.Neg()) }

// Neg returns −d.
func (d TemperatureDelta) Neg() TemperatureDelta {
	return newTemperatureDelta(deltas.neg(d.quanta))
}

// Times returns n·d exactly.
func (d TemperatureDelta) Times(n int64) TemperatureDelta {
	return newTemperatureDelta(deltas.mulDiv(d.quanta, n, 1))
}

// Divide returns d/n, rounded half to even to the quantum; invalid for n = 0.
func (d TemperatureDelta) Divide(n int64) TemperatureDelta {
	return newTemperatureDelta(deltas.mulDiv(d.quanta, 1, n))
}

// Scale returns p percent of d, rounded half to even to the quantum.
func (d TemperatureDelta) Scale(p Percent) TemperatureDelta {
	return newTemperatureDelta(deltas.mulDiv(d.quanta, p.quanta, percentOne))
}

// Compare returns −1, 0 or 1; an invalid difference comes before every other.
func (d TemperatureDelta) Compare(e TemperatureDelta) int {
	return cmp.Compare(d.quanta, e.quanta)
}

// Equal reports d == e.
func (d TemperatureDelta) Equal(e TemperatureDelta) bool { return d == e }

// Text prints the difference in the unit with exactly that many decimals.
func (d TemperatureDelta) Text(u TemperatureUnit, places int) string {
	return string(deltas.append(nil, d.quanta, u.deltaScale(), places, false))
}
