package published

import (
	"encoding"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
)

// Inputs are the key=value pairs of a row. A value that is asked for and missing, or that nobody asks for, fails
// the row.
type Inputs struct {
	t     *testing.T
	pairs map[string]string
	used  map[string]bool
}

// Text is the value of a key.
func (in *Inputs) Text(key string) string {
	in.t.Helper()
	v, ok := in.pairs[key]
	if !ok {
		in.t.Fatalf("no input %q", key)
	}
	in.used[key] = true
	return v
}

// Has reports whether the row gives the key.
func (in *Inputs) Has(key string) bool { _, ok := in.pairs[key]; return ok }

// Fail ends the row.
func (in *Inputs) Fail(format string, args ...any) {
	in.t.Helper()
	in.t.Fatalf(format, args...)
}

// Skip marks keys as used that have no part in a refusal.
func (in *Inputs) Skip(keys ...string) {
	for _, key := range keys {
		in.used[key] = true
	}
}

// Number is a plain number.
func (in *Inputs) Number(key string) float64 {
	in.t.Helper()
	return parsed(in, key, func(s string) (float64, error) { return strconv.ParseFloat(s, 64) })
}

// Mass is a mass with its unit.
func (in *Inputs) Mass(key string) quantity.Mass {
	in.t.Helper()
	return parsed(in, key, quantity.ParseMass)
}

// Percent is a percentage.
func (in *Inputs) Percent(key string) quantity.Percent {
	in.t.Helper()
	return parsed(in, key, quantity.ParsePercent)
}

// Volume is a volume with its unit.
func (in *Inputs) Volume(key string) quantity.Volume {
	in.t.Helper()
	return parsed(in, key, quantity.ParseVolume)
}

// Length is a length with its unit.
func (in *Inputs) Length(key string) quantity.Length {
	in.t.Helper()
	return parsed(in, key, quantity.ParseLength)
}

// Temperature is a temperature with its unit.
func (in *Inputs) Temperature(key string) quantity.Temperature {
	in.t.Helper()
	return parsed(in, key, quantity.ParseTemperature)
}

// Unit is the unit of mass in which the expected value is, grams where the row names none.
func (in *Inputs) Unit(key string) quantity.MassUnit {
	in.t.Helper()
	if !in.Has(key) {
		return quantity.Gram
	}
	name := in.Text(key)
	u, ok := map[string]quantity.MassUnit{
		"g": quantity.Gram, "kg": quantity.Kilogram, "oz": quantity.Ounce, "lb": quantity.Pound,
	}[name]
	if !ok {
		in.t.Fatalf("%s: no unit %q", key, name)
	}
	return u
}

// Word reads a named constant.
func (in *Inputs) Word(key string, into encoding.TextUnmarshaler) {
	in.t.Helper()
	if err := into.UnmarshalText([]byte(in.Text(key))); err != nil {
		in.t.Fatalf("%s: %v", key, err)
	}
}

// List reads "name:value name:value …", in order; an underscore in a name is a space.
func (in *Inputs) List(key string) (names, values []string) {
	in.t.Helper()
	for _, pair := range strings.Fields(in.Text(key)) {
		name, value, ok := strings.Cut(pair, ":")
		if !ok {
			in.t.Fatalf("%s: %q is not name:value", key, pair)
		}
		names, values = append(names, strings.ReplaceAll(name, "_", " ")), append(values, value)
	}
	return names, values
}

func parsed[T any](in *Inputs, key string, parse func(string) (T, error)) T {
	in.t.Helper()
	v, err := parse(in.Text(key))
	if err != nil {
		in.t.Fatalf("%s: %v", key, err)
	}
	return v
}
