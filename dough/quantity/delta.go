package quantity

import (
	"cmp"
	"fmt"

	"github.com/shopspring/decimal"
)

// TemperatureDelta is a difference of two temperatures, in quanta of 1/9000 K, within
// ±10,000 K: a friction factor, a rise during mixing, a probe's error. The zero value is no
// difference. 24 Δ°F is 13.333 Δ°C.
type TemperatureDelta struct{ ninethousandths int64 }

var deltas = kind{
	noun:     "temperature difference",
	accepted: `a temperature difference with its unit, such as "12 Δ°C", "24 Δ°F", "12 K", or in plain letters "12 dC", "24 dF"`,
	low:      -10_000 * perKelvin, high: 10_000 * perKelvin,
	scales: []scale{
		{symbol: "Δ°C", names: []string{"ΔC", "dC", "∆°C", "∆C", "d°C", "delta C"}, num: perKelvin, den: 1, places: 3, most: mostDecimals},
		{symbol: "Δ°F", names: []string{"ΔF", "dF", "∆°F", "∆F", "d°F", "delta F"}, num: perRankine, den: 1, places: 3, most: mostDecimals},
		{symbol: "K", names: []string{"ΔK", "∆K", "dK"}, num: perKelvin, den: 1, places: 3, most: mostDecimals},
	},
	hint: func(unit string) string {
		if unit != "K" && temperatures.find(unit) != nil {
			return "a difference is written 24 Δ°F, a temperature 24 °F"
		}
		return ""
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
	return TemperatureDelta{deltas.fromFloat(c, CelsiusScale.deltaScale())}
}

// DeltaFahrenheit returns a difference of f °F, which is 5/9 as many °C; see [DeltaCelsius].
func DeltaFahrenheit(f float64) TemperatureDelta {
	return TemperatureDelta{deltas.fromFloat(f, FahrenheitScale.deltaScale())}
}

// DeltaQuanta returns the difference n/9000 K, exactly, or an invalid difference beyond the limits.
func DeltaQuanta(n int64) TemperatureDelta { return TemperatureDelta{deltas.keep(n)} }

// ParseDelta reads "12 Δ°C", "24 Δ°F", "12 K", or in plain letters "12 dC", "24 dF". A plain "12 °C" is
// refused: it would be a temperature. Digits as [TemperatureOf].
func ParseDelta(text string) (TemperatureDelta, error) {
	q, err := deltas.parse(text)
	if err != nil {
		return TemperatureDelta{invalid}, err
	}
	return TemperatureDelta{q}, nil
}

// MustDelta is [ParseDelta] for literals; it panics on an error.
func MustDelta(text string) TemperatureDelta { return must(ParseDelta(text)) }

// In returns the difference in the unit; NaN if invalid.
func (d TemperatureDelta) In(u TemperatureUnit) float64 {
	return deltas.toFloat(d.ninethousandths, u.deltaScale())
}

// Celsius returns the difference in °C (or K); NaN if invalid.
func (d TemperatureDelta) Celsius() float64 { return d.In(CelsiusScale) }

// Fahrenheit returns the difference in °F; NaN if invalid.
func (d TemperatureDelta) Fahrenheit() float64 { return d.In(FahrenheitScale) }

// Decimal returns the difference in the unit, rounded half to even to twelve decimals.
func (d TemperatureDelta) Decimal(u TemperatureUnit) decimal.Decimal {
	return decimalOf(d.ninethousandths, u.deltaScale(), 12)
}

// Quanta returns the exact count of 1/9000 K, and false if the difference is invalid.
func (d TemperatureDelta) Quanta() (int64, bool) { return d.ninethousandths, d.IsValid() }

// Add returns d + e.
func (d TemperatureDelta) Add(e TemperatureDelta) TemperatureDelta {
	return TemperatureDelta{deltas.add(d.ninethousandths, e.ninethousandths)}
}

// Sub returns d − e.
func (d TemperatureDelta) Sub(e TemperatureDelta) TemperatureDelta { return d.Add(e.Neg()) }

// Neg returns −d.
func (d TemperatureDelta) Neg() TemperatureDelta {
	return TemperatureDelta{deltas.neg(d.ninethousandths)}
}

// Times returns n·d exactly.
func (d TemperatureDelta) Times(n int64) TemperatureDelta {
	return TemperatureDelta{deltas.mulDiv(d.ninethousandths, n, 1)}
}

// Divide returns d/n, rounded half to even to the quantum; invalid for n = 0.
func (d TemperatureDelta) Divide(n int64) TemperatureDelta {
	return TemperatureDelta{deltas.mulDiv(d.ninethousandths, 1, n)}
}

// Scale returns p percent of d, rounded half to even to the quantum.
func (d TemperatureDelta) Scale(p Percent) TemperatureDelta {
	return TemperatureDelta{deltas.mulDiv(d.ninethousandths, p.millionths, percentOne)}
}

// Compare returns −1, 0 or 1; an invalid difference comes before every other.
func (d TemperatureDelta) Compare(e TemperatureDelta) int {
	return cmp.Compare(d.ninethousandths, e.ninethousandths)
}

// Equal reports d == e.
func (d TemperatureDelta) Equal(e TemperatureDelta) bool { return d == e }

// Sign returns −1, 0 or 1.
func (d TemperatureDelta) Sign() int { return cmp.Compare(d.ninethousandths, 0) }

// IsZero reports whether there is no difference.
func (d TemperatureDelta) IsZero() bool { return d.ninethousandths == 0 }

// IsValid reports whether the difference is a number within its limits.
func (d TemperatureDelta) IsValid() bool { return deltas.valid(d.ninethousandths) }

// String prints Δ°C with at most three decimals: "13.333 Δ°C". [TemperatureDelta.MarshalText] is
// exact where String rounds.
func (d TemperatureDelta) String() string {
	return deltas.text(d.ninethousandths, CelsiusScale.deltaScale(), 3)
}

// Text prints the difference in the unit with exactly that many decimals.
func (d TemperatureDelta) Text(u TemperatureUnit, places int) string {
	return string(deltas.append(nil, d.ninethousandths, u.deltaScale(), places, false))
}

// Format implements fmt.Formatter: %v, %s, and %.1f (Δ°C to one decimal, with unit).
func (d TemperatureDelta) Format(f fmt.State, verb rune) {
	format(f, verb, d.String(), func(p int) string { return d.Text(CelsiusScale, p) }, d.GoString())
}

// GoString prints Go syntax.
func (d TemperatureDelta) GoString() string {
	if !d.IsValid() {
		return "quantity.DeltaCelsius(math.NaN())"
	}
	return fmt.Sprintf("quantity.MustDelta(%q)", deltas.appendExact(nil, d.ninethousandths, CelsiusScale.deltaScale()))
}

// AppendText implements encoding.TextAppender: Δ°C, with as few decimals as bring the exact value back when
// the text is read (four at most). An invalid difference is an error.
func (d TemperatureDelta) AppendText(b []byte) ([]byte, error) {
	if !d.IsValid() {
		return b, &InputError{Got: d.String(), Want: deltas.accepted, Err: ErrOutOfRange}
	}
	return deltas.appendExact(b, d.ninethousandths, CelsiusScale.deltaScale()), nil
}

// MarshalText implements encoding.TextMarshaler; see [TemperatureDelta.AppendText].
func (d TemperatureDelta) MarshalText() ([]byte, error) { return d.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseDelta].
func (d *TemperatureDelta) UnmarshalText(text []byte) error {
	v, err := ParseDelta(textOf(text))
	if err != nil {
		return err
	}
	*d = v
	return nil
}
