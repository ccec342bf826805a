package steam

import (
	"errors"
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
)

// Both ends of a range belong to it, and whatever lies beyond them is refused with what was given and what is taken.
func TestRangesEndWhereTheirSourcesSay(t *testing.T) {
	pascal := func(h float64) float64 {
		return 101325 * math.Pow(1-0.0065*h/288.15, 9.80665*0.0289644/(8.31432*0.0065))
	}
	for name, c := range map[string]struct {
		of        func(float64) (float64, error)
		low, high float64 // as the sources give them
		says      string  // of what lies below
	}{
		"saturation pressure": {SaturationPressure, 273.15, 647.096,
			"saturation temperature out of range: got 272.15 K, want 273.15 K to 647.096 K"},
		"saturation temperature": {SaturationTemperature, 611.213, 22.064e6,
			"saturation pressure out of range: got 610.213 Pa, want 611.213 Pa to 2.2064e+07 Pa"},
		"pressure":     {Pressure, -2000, 11_000, "altitude out of range: got -2001 m, want -2000 m to 11000 m"},
		"standard air": {StandardKelvin, -2000, 11_000, "altitude out of range: got -2001 m, want -2000 m to 11000 m"},
	} {
		for _, x := range []float64{c.low, c.high} {
			if _, err := c.of(x); err != nil {
				t.Errorf("%s at %v: %v", name, x, err)
			}
		}
		if _, err := c.of(c.low - 1); err == nil || err.Error() != c.says || !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("%s: %v, want %s", name, err, c.says)
		}
		if _, err := c.of(math.Nextafter(c.high, math.Inf(1))); err == nil {
			t.Errorf("%s beyond %v is taken", name, c.high)
		}
	}
	// Of a pressure at the ends, which rounding may put a hair beyond them.
	for _, h := range []float64{-2000, 11_000} {
		if got, err := Altitude(pascal(h)); err != nil || !(math.Abs(got-h) <= 1e-6) {
			t.Errorf("%v m: %v, %v", h, got, err)
		}
		if got, err := Altitude(pascal(h * (1 + 1e-5))); err == nil {
			t.Errorf("beyond %v m: %v", h, got)
		}
	}
}
