package working

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/enum"
)

// Units is the system of units a reader knows. The zero value is Metric.
type Units int

// The systems. USCustomary shows pounds and ounces, °F, inches and feet, fluid ounces and quarts.
const (
	Metric Units = iota
	USCustomary
)

var unitSystems = enum.Of[Units]("system of units", "metric", "US customary")

// String returns the word.
func (u Units) String() string { return unitSystems.String(u) }

// MarshalText implements encoding.TextMarshaler.
func (u Units) MarshalText() ([]byte, error) { return unitSystems.Marshal(u) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (u *Units) UnmarshalText(text []byte) error { return unitSystems.Unmarshal(u, text) }

// Mass prints a weight: "780 g", "12.5 g", or pounds and ounces to a tenth of an ounce, "1 lb
// 11.5 oz", "2 lb". Below an ounce it has two decimals.
func (u Units) Mass(m quantity.Mass) string {
	if u != USCustomary {
		if g := math.Abs(m.Grams()); g >= 10 && g == math.Trunc(g) {
			return m.Text(quantity.Gram, 0)
		}
		return m.Text(quantity.Gram, 1)
	}
	tenths := math.Round(m.In(quantity.Ounce) * 10)
	if math.IsNaN(tenths) || math.Abs(tenths) < 10 {
		return m.Text(quantity.Ounce, 2)
	}
	pounds := math.Trunc(tenths / 160)
	ounces := " " + strconv.FormatFloat(math.Abs(tenths-pounds*160)/10, 'f', 1, 64) + " oz"
	if tenths == pounds*160 {
		ounces = ""
	}
	if pounds == 0 {
		if tenths < 0 {
			return "−" + ounces[1:]
		}
		return ounces[1:]
	}
	return strings.Replace(strconv.FormatFloat(pounds, 'f', 0, 64), "-", "−", 1) + " lb" + ounces
}

// Temperature prints °C with exactly that many decimals, or °F with one fewer: a tenth of a degree
// Celsius is about a fifth of a degree Fahrenheit.
func (u Units) Temperature(t quantity.Temperature, places int) string {
	if u == USCustomary {
		return t.Text(quantity.FahrenheitScale, max(0, places-1))
	}
	return t.Text(quantity.CelsiusScale, places)
}

// Delta prints a difference of temperatures with exactly that many decimals: "12.0 Δ°C", "21.6 Δ°F".
func (u Units) Delta(d quantity.TemperatureDelta, places int) string {
	if u == USCustomary {
		return d.Text(quantity.FahrenheitScale, places)
	}
	return d.Text(quantity.CelsiusScale, places)
}

// Length prints meters from 3 m on and below that centimeters to a millimeter; or feet from 10 ft on
// and below that inches to a tenth.
func (u Units) Length(l quantity.Length) string {
	size := math.Abs(l.In(quantity.Meter))
	switch {
	case u == USCustomary && size >= 3.048:
		return l.Text(quantity.Foot, 0)
	case u == USCustomary:
		return l.Text(quantity.Inch, 1)
	case size >= 3:
		return l.Text(quantity.Meter, 0)
	}
	return l.Text(quantity.Centimeter, 1)
}

// Volume prints milliliters, below 10 to a hundredth, from 5 L on liters to a tenth; or fluid ounces, below half of one
// teaspoons, from a quart on quarts, to a tenth.
func (u Units) Volume(v quantity.Volume) string {
	switch {
	case u == USCustomary && math.Abs(v.In(quantity.USQuart)) >= 1:
		return v.Text(quantity.USQuart, 1)
	case u == USCustomary && !v.IsZero() && math.Abs(v.In(quantity.USFluidOunce)) < 0.5:
		return v.Text(quantity.USTeaspoon, 2)
	case u == USCustomary:
		return v.Text(quantity.USFluidOunce, 1)
	case !v.IsZero() && math.Abs(v.Milliliters()) < 10:
		return v.Text(quantity.Milliliter, 2)
	case math.Abs(v.In(quantity.Liter)) >= 5:
		return v.Text(quantity.Liter, 1)
	}
	return v.Text(quantity.Milliliter, 0)
}

// degrees shows °F to the whole degree when °C were, otherwise to a tenth, without a useless ".0" when no
// number of decimals was asked for.
func degrees(t quantity.Temperature, places int) string {
	if places >= 0 {
		return USCustomary.Temperature(t, places)
	}
	return trimmed(USCustomary.Temperature(t, 2), places)
}

func trimmed(text string, places int) string {
	if places >= 0 {
		return text
	}
	return strings.Replace(text, ".0 ", " ", 1)
}

func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
