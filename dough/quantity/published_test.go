package quantity_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
)

func TestPublished(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		from, to, _ := strings.Cut(strings.TrimPrefix(row[2], "from="), ";to=")
		got, err := convert(from, to)
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		want, _ := strconv.ParseFloat(row[3], 64)
		tolerance, _ := strconv.ParseFloat(row[4], 64)
		if !(math.Abs(got-want) <= tolerance+1e-14*math.Abs(want)) {
			t.Errorf("%s: %s in %s = %v, want %v ± %v", row[0], from, to, got, want, tolerance)
		}
	}
}

func convert(from, to string) (float64, error) {
	massUnits := map[string]quantity.MassUnit{"g": quantity.Gram, "oz": quantity.Ounce, "lb": quantity.Pound}
	volumeUnits := map[string]quantity.VolumeUnit{"mL": quantity.Milliliter, "gal": quantity.USGallon}
	lengthUnits := map[string]quantity.LengthUnit{"cm": quantity.Centimeter, "m": quantity.Meter}
	temperatureUnits := map[string]quantity.TemperatureUnit{"°C": quantity.CelsiusScale, "°F": quantity.FahrenheitScale,
		"K": quantity.KelvinScale}
	if u, ok := massUnits[to]; ok {
		m, err := quantity.ParseMass(from)
		return m.In(u), err
	}
	if u, ok := volumeUnits[to]; ok {
		v, err := quantity.ParseVolume(from)
		return v.In(u), err
	}
	if u, ok := lengthUnits[to]; ok {
		l, err := quantity.ParseLength(from)
		return l.In(u), err
	}
	if to == "Δ°C" {
		d, err := quantity.ParseDelta(from)
		return d.Celsius(), err
	}
	c, err := quantity.ParseTemperature(from)
	return c.In(temperatureUnits[to]), err
}
