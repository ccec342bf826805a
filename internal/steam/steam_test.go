package steam

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"

	"pgregory.net/rapid"
)

// scientific is the saturation pressure of the scientific formulation, an independent equation.
// Source: IAPWS SR1-86(1992), equation 1.
func scientific(kelvin float64) float64 {
	t := 1 - kelvin/647.096
	sum := -7.85951783*t + 1.84408259*math.Pow(t, 1.5) - 11.7866497*t*t*t + 22.6807411*math.Pow(t,
		3.5) - 15.9618719*t*t*t*t + 1.80122502*math.Pow(t, 7.5)
	return 22.064e6 * math.Exp(647.096/kelvin*sum)
}

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
	if len(rows) < 60 {
		t.Fatalf("only %d rows", len(rows))
	}
	for _, row := range rows[1:] {
		in := map[string]float64{}
		for _, pair := range strings.Split(row[2], ";") {
			key, value, _ := strings.Cut(pair, "=")
			if in[key], err = strconv.ParseFloat(value, 64); err != nil && key != "geopotential" {
				t.Fatal(err)
			}
		}
		if _, ok := in["geopotential"]; ok {
			in["H"] = 0.3048 * in["ft"]
		} else if ft, ok := in["ft"]; ok {
			in["H"] = Geopotential(0.3048 * ft)
		}
		got, err := compute(row[1], in)
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		want, err1 := strconv.ParseFloat(row[3], 64)
		tolerance, err2 := strconv.ParseFloat(row[4], 64)
		if err1 != nil || err2 != nil {
			t.Fatal(row)
		}
		if !(math.Abs(got-want) <= tolerance*(1+1e-9)) {
			t.Errorf("%s: %s(%s) = %.10g, want %g ± %g", row[0], row[1], row[2], got, want, tolerance)
		}
	}
}

func compute(what string, in map[string]float64) (float64, error) {
	pressure := in["p"]
	if _, ok := in["H"]; ok {
		var err error
		if pressure, err = Pressure(in["H"]); err != nil {
			return 0, err
		}
	}
	boiling := func() (float64, error) {
		k, err := SaturationTemperature(pressure)
		return k - 273.15, err
	}
	switch what {
	case "saturation pressure Pa":
		return SaturationPressure(in["T"])
	case "saturation temperature K":
		return SaturationTemperature(pressure)
	case "reference pressure Pa":
		return scientific(in["T"]), nil
	case "pressure Pa":
		return pressure, nil
	case "pressure kPa":
		return pressure / 1000, nil
	case "pressure psi":
		return pressure / 6894.757293, nil
	case "air C":
		k, err := StandardKelvin(in["H"])
		return k - 273.15, err
	case "boiling point C":
		return boiling()
	case "boiling point F":
		c, err := boiling()
		return c*1.8 + 32, err
	case "boiling drop C":
		c, err := boiling()
		sea, err2 := SaturationTemperature(SeaLevelPascal)
		return sea - 273.15 - c, errors.Join(err, err2)
	}
	return 0, errors.New("no calculation " + what)
}

func TestAgreesWithTheScientificFormulation(t *testing.T) {
	for k := 273.16; k < 373.2; k += 0.5 {
		p, err := SaturationPressure(k)
		if err != nil {
			t.Fatal(err)
		}
		// The two formulations differ by up to 1.0e-4 (at 320 K); that is 0.002 °C in the boiling point.
		if r := p/scientific(k) - 1; !(math.Abs(r) <= 1e-4) {
			t.Errorf("%g K: relative difference %g", k, r)
		}
	}
}

func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(MinKelvin, MaxKelvin).Draw(t, "K")
		p, err := SaturationPressure(k)
		if err != nil {
			t.Fatal(err)
		}
		// The printed coefficients close the loop to about 1e-8 K except at the very ends.
		if p < MaxPascal && p > MinPascal {
			if back, err := SaturationTemperature(p); err != nil || !(math.Abs(back-k) <= 1e-5) {
				t.Fatalf("%v K -> %v Pa -> %v K, %v", k, p, back, err)
			}
		}
		h := rapid.Float64Range(MinGeopotential, MaxGeopotential-10).Draw(t, "H")
		p1, err1 := Pressure(h)
		p2, err2 := Pressure(h + 10)
		if err1 != nil || err2 != nil || p2 >= p1 {
			t.Fatalf("pressure does not fall: %v %v", p1, p2)
		}
		if back, err := Altitude(p1); err != nil || !(math.Abs(back-h) <= 1e-6) {
			t.Fatalf("altitude %v -> %v, %v", h, back, err)
		}
		if z := h * earthRadius / (earthRadius - h); !(math.Abs(Geopotential(z)-h) <= 1e-6) {
			t.Fatalf("geopotential %v of %v m, want %v", Geopotential(z), z, h)
		}
		b1, err1 := SaturationTemperature(p1)
		b2, err2 := SaturationTemperature(p2)
		if err1 != nil || err2 != nil || b2 >= b1 {
			t.Fatalf("boiling point does not fall: %v %v", b1, b2)
		}
	})
}

func TestOutOfRange(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e9, 1e300, 0} {
		if _, err := SaturationPressure(x); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("SaturationPressure(%v): %v", x, err)
		}
		if _, err := SaturationTemperature(x); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("SaturationTemperature(%v): %v", x, err)
		}
		if _, err := Altitude(-x); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("Altitude(%v): %v", -x, err)
		}
		if _, err := Altitude(x); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("Altitude(%v): %v", x, err)
		}
		if x == 0 {
			continue
		}
		for name, f := range map[string]func(float64) (float64, error){"Pressure": Pressure,
			"StandardKelvin": StandardKelvin} {
			if _, err := f(x); !errors.Is(err, quantity.ErrOutOfRange) {
				t.Errorf("%s(%v): %v", name, x, err)
			}
		}
	}
}

// 11,019.1 m above the sea are the 11,000 geopotential meters where the lowest layer ends (ISO 2533); an error says so.
func TestTheEndOfTheLayer(t *testing.T) {
	if got := Geopotential(11019.1); !(math.Abs(got-11000) <= 0.1) {
		t.Error(got)
	}
	want := "pressure out of range: got 5 Pa, want the pressure between -2000 m and 11000 m"
	if _, err := Altitude(5); err == nil || err.Error() != want {
		t.Errorf("%v, want %q", err, want)
	}
}

func BenchmarkBoilingPoint(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := SaturationTemperature(88250); err != nil {
			b.Fatal(err)
		}
	}
}
