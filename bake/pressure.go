package bake

import (
	"math"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Pressure is the pressure of the air, exact to 0.001 Pa. The zero value means "not given": no kitchen
// stands in a vacuum.
type Pressure struct {
	millipascals int64
}

// The units of pressure in pascals.
// Source: NIST SP 811 (2008), appendix B; the inch of mercury is the conventional one.
const (
	pascalPerHPa  = 100
	pascalPerInHg = 3386.38864
	pascalPerMmHg = 133.322387415
	pascalPerPsi  = 6894.757293
)

// Hectopascals returns a pressure in hPa (the same as millibar), rounded to 0.001 Pa; NaN, infinities and
// anything not between 0 and 10,000 hPa give the zero value.
func Hectopascals(hpa float64) Pressure { return pascals(hpa * pascalPerHPa) }

// InchesOfMercury returns a pressure in inHg; see [Hectopascals].
func InchesOfMercury(in float64) Pressure { return pascals(in * pascalPerInHg) }

func pascals(pa float64) Pressure {
	if !(pa > 0 && pa <= 1e6) {
		return Pressure{}
	}
	return Pressure{int64(math.RoundToEven(pa * 1000))}
}

// ParsePressure reads a number and a unit: "1013.25 hPa", "885 mbar", "1.01 bar", "88.5 kPa", "29.92 inHg", "760 mmHg",
// "12.2 psi". The unit is required. Errors: [quantity.ErrRequired], [quantity.ErrUnit],
// [quantity.ErrOutOfRange].
func ParsePressure(text string) (Pressure, error) {
	want := quantity.Tell("bake.want_number_hpa_mbar_kpa_inhg",
		`a number with hPa, mbar, kPa, inHg, mmHg or psi, such as "1013 hPa"`)
	fail := func(reason error) (Pressure, error) {
		return Pressure{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: reason}
	}
	t := strings.TrimSpace(text)
	if t == "" {
		return fail(quantity.ErrRequired)
	}
	if len(t) > 40 {
		return fail(quantity.ErrOutOfRange)
	}
	end := strings.LastIndexAny(t, "0123456789.") + 1
	units := map[string]float64{
		"hpa":  100,
		"mbar": 100,
		"bar":  100_000,
		"mb":   100,
		"kpa":  1000,
		"pa":   1,
		"inhg": pascalPerInHg,
		"mmhg": pascalPerMmHg,
		"psi":  pascalPerPsi,
	}
	unit, ok := units[strings.ToLower(strings.TrimSpace(t[end:]))]
	if !ok {
		return fail(quantity.ErrUnit)
	}
	digits := strings.ReplaceAll(strings.TrimSpace(t[:end]), ",", "")
	if strings.Trim(digits, "0123456789.") != "" {
		return fail(quantity.ErrOutOfRange)
	}
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return fail(quantity.ErrOutOfRange)
	}
	p := pascals(x * unit)
	if p.IsZero() {
		return fail(quantity.ErrOutOfRange)
	}
	return p, nil
}

// IsZero reports whether the pressure is not given.
func (p Pressure) IsZero() bool { return p.millipascals == 0 }

// IsValid reports whether the pressure is given.
func (p Pressure) IsValid() bool { return p.millipascals > 0 }

// Compare returns −1, 0 or 1.
func (p Pressure) Compare(q Pressure) int {
	switch {
	case p.millipascals < q.millipascals:
		return -1
	case p.millipascals > q.millipascals:
		return 1
	}
	return 0
}

// Equal reports p == q.
func (p Pressure) Equal(q Pressure) bool { return p == q }

// Hectopascals returns the pressure in hPa.
func (p Pressure) Hectopascals() float64 { return p.pascals() / pascalPerHPa }

// InchesOfMercury returns the pressure in inHg.
func (p Pressure) InchesOfMercury() float64 { return p.pascals() / pascalPerInHg }

func (p Pressure) pascals() float64 { return float64(p.millipascals) / 1000 }

// String prints hPa to a tenth: "882.6 hPa".
func (p Pressure) String() string { return p.Message().String() }

// Message is the pressure to a tenth of a hPa, with the decimals of the reader's language.
func (p Pressure) Message() working.Message {
	if p.IsZero() {
		return working.Tell("bake.pressure_none", "no pressure")
	}
	return working.Tell("bake.pressure", "%.1f hPa", p.Hectopascals())
}

// AppendText implements encoding.TextAppender; exact. A pressure that is not given is the empty text.
func (p Pressure) AppendText(b []byte) ([]byte, error) {
	if !p.IsValid() {
		return b, nil
	}
	return append(strconv.AppendFloat(b, p.Hectopascals(), 'f', -1, 64), " hPa"...), nil
}

// MarshalText implements encoding.TextMarshaler.
func (p Pressure) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; the empty text is "not given", otherwise see [ParsePressure].
func (p *Pressure) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*p = Pressure{}
		return nil
	}
	v, err := ParsePressure(string(text))
	if err == nil {
		*p = v
	}
	return err
}
