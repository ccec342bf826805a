package quantity_test

import (
	"cmp"
	"fmt"
	"math/big"
	"testing"

	"example.org/maslin/dough/quantity"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

type measured[T any] interface {
	Add(T) T
	Sub(T) T
	Times(int64) T
	Compare(T) int
	Equal(T) bool
}

// Sums, differences, multiples and order of quantities are those of their counts.
func TestQuantitiesCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.Int64Range(-45_000_000, 45_000_000)
		x, y, n := count.Draw(t, "x"), count.Draw(t, "y"), rapid.Int64Range(-50, 50).Draw(t, "n")
		counts(t, quantity.Micrograms, x, y, n)
		counts(t, quantity.Millionths, x, y, n)
		counts(t, quantity.Micrometers, x, y, n)
		counts(t, quantity.Picoliters, x, y, n)
		counts(t, quantity.DeltaQuanta, x, y, n%3) // within 10,000 K
		if quantity.Micrograms(x).Neg() != quantity.Micrograms(-x) ||
			quantity.Millionths(x).Neg() != quantity.Millionths(-x) ||
			quantity.DeltaQuanta(x).Neg() != quantity.DeltaQuanta(-x) {
			t.Errorf("−%d", x)
		}
	})
}

func counts[T interface {
	comparable
	measured[T]
}](t *rapid.T, of func(int64) T, x, y, n int64) {
	t.Helper()
	a, b := of(x), of(y)
	if a.Add(b) != of(x+y) || a.Sub(b) != of(x-y) || a.Times(n) != of(n*x) ||
		a.Compare(b) != cmp.Compare(x, y) || a.Equal(b) != (x == y) || !a.Equal(of(x)) {
		t.Errorf("%T of %d and %d: %v, %v, %v", a, x, y, a.Add(b), a.Sub(b), a.Times(n))
	}
}

// The same amount in other units, by the definitions of 1959: a pound of 453.59237 g in 16 ounces, an inch of 25.4 mm,
// a foot of twelve of them; a US gallon of 231 cubic inches is 16 cups; 9 °F are 5 °C.
func TestOtherUnits(t *testing.T) {
	q := quantity.MustMass
	cup := 231 * 2.54 * 2.54 * 2.54 / 16
	for _, c := range []struct{ got, want any }{
		{q("1 lb").Text(quantity.Gram, 5), "453.59237 g"}, {q("2 lb").Decimal(quantity.Ounce).String(), "32"},
		{q("1 lb").Text(quantity.MassUnit(-1), 1), "453.6 g"}, {q("1 lb").Kilograms(), 0.45359237},
		{quantity.Ounces(16), q("1 lb")}, {quantity.Pounds(1), q("453.59237 g")},
		{quantity.MustLength("1 ft").Text(quantity.Inch, 2), "12.00 in"}, {quantity.Inches(1).Centimeters(), 2.54},
		{quantity.MustLength("1 in").Decimal(quantity.Millimeter).String(), "25.4"},
		{quantity.Centimeters(250).Meters(), 2.5}, {quantity.Meters(2.5).Text(quantity.LengthUnit(77), 3), "2.500 m"},
		{fmt.Sprintf("%.6f", quantity.MustVolume("1 cup").Milliliters()), fmt.Sprintf("%.6f", cup)},
		{quantity.MustVolume("1 gal").Decimal(quantity.USCup).String(), "16"},
		{quantity.Milliliters(1500).Liters(), 1.5}, {quantity.Liters(1.5).Text(quantity.VolumeUnit(-1), 2), "1.50 L"},
		{quantity.Celsius(25).Fahrenheit(), 77.0}, {quantity.Fahrenheit(77).Celsius(), 25.0},
		{quantity.Celsius(25).Kelvin(), 298.15}, {quantity.Kelvin(298.15), quantity.Celsius(25)},
		{quantity.Celsius(25).Text(quantity.TemperatureUnit(9), 1), "25.0 °C"},
		{quantity.Temperature{}.Text(quantity.CelsiusScale, 1), "no temperature"},
		{quantity.DeltaFahrenheit(9), quantity.DeltaCelsius(5)}, {quantity.DeltaCelsius(5).Fahrenheit(), 9.0},
		{quantity.DeltaFahrenheit(24).Text(quantity.CelsiusScale, 2), "13.33 Δ°C"},
		{quantity.DeltaCelsius(5).Text(quantity.TemperatureUnit(-1), 0), "5 Δ°C"},
		{quantity.DeltaCelsius(5).Decimal(quantity.FahrenheitScale).String(), "9"},
		{quantity.DeltaCelsius(5).Divide(2), quantity.DeltaCelsius(2.5)},
		{quantity.DeltaCelsius(5).Scale(quantity.NewPercent(30)), quantity.DeltaCelsius(1.5)},
		{quantity.NewPercent(12.5).OfPercent(quantity.NewPercent(80)), quantity.NewPercent(10)},
		{quantity.NewPercent(10).Over(quantity.NewPercent(80)), quantity.NewPercent(12.5)},
		{quantity.NewPercent(12.5).Fraction(), 0.125}, {quantity.NewPercent(12.5).Text(2), "12.50 %"},
		{quantity.NewPercent(12.5).Text(-3), "12 %"}, {quantity.NewPercent(12.5).Text(99), "12.500000000000 %"},
		{fmt.Sprintf("%.1f|%8.0f|%-6v|%q|%d", q("1.25 g"), q("2.4 g"), q("3 g"), q("4 g"), q("5 g")),
			`1.2 g|     2 g|3 g   |"4 g"|%!d(5 g)`},
	} {
		if c.got != c.want {
			t.Errorf("%v, want %v", c.got, c.want)
		}
	}
}

// A decimal in another unit is the exact fraction, rounded half to even to twelve decimals.
func TestDecimalsAreRoundedOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-9e14, 9e14).Draw(t, "µg")
		unit, size := quantity.Ounce, big.NewRat(453_592_370, 16)
		if rapid.Bool().Draw(t, "pounds") {
			unit, size = quantity.Pound, big.NewRat(453_592_370, 1)
		}
		exact := new(big.Rat).Quo(big.NewRat(n, 1), size)
		got, _ := new(big.Rat).SetString(quantity.Micrograms(n).Decimal(unit).String())
		off := got.Sub(got, exact).Abs(got)
		if half := big.NewRat(1, 2e12); off.Cmp(half) > 0 {
			t.Errorf("%d µg are %v, off by %s", n, quantity.Micrograms(n).Decimal(unit), off.FloatString(16))
		}
	})
	if got := quantity.NewPercent(12.5).Decimal(); !got.Equal(decimal.RequireFromString("12.5")) {
		t.Error(got)
	}
}
