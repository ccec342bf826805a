package quantity_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"pgregory.net/rapid"
)

// Scales that show pounds and ounces are read as they stand.
func ExampleParseMass_poundsAndOunces() {
	m, err := quantity.ParseMass("2 lb 3.5 oz")
	fmt.Println(m, err)
	_, err = quantity.ParseMass("1.5 lb 4 oz")
	fmt.Println(err)
	// Output:
	// 1006.408071 g <nil>
	// unit: got "1.5 lb 4 oz", want whole pounds before ounces, or pounds alone
}

func TestPoundsAndOunces(t *testing.T) {
	// 1 oz is 28.349523125 g and is rounded once, half to even: 20 oz = 566.9904625 g.
	for in, want := range map[string]string{
		"1 lb 4 oz": "566.990462 g", "1lb4oz": "566.990462 g", "1 pound 4 ounces": "566.990462 g",
		"  2 lbs 3,5 oz ": "1006.408071 g",
		"0 lb 0 oz":       "0 g", "-1 lb 4 oz": "-566.990462 g", "−1 lb 4 oz": "-566.990462 g", "-0 lb 4 oz": "-113.398092 g",
		"+1 lb 15.999 oz": "907.15639 g", "1 lb": "453.59237 g", "1.5 lb": "680.388555 g", "40 oz": "1133.980925 g",
	} {
		m, err := quantity.ParseMass(in)
		if err != nil {
			t.Errorf("ParseMass(%q): %v", in, err)
			continue
		}
		b, _ := m.MarshalText()
		if string(b) != want {
			t.Errorf("ParseMass(%q) = %s, want %s", in, b, want)
		}
	}
	for in, want := range map[string]error{
		"1.5 lb 4 oz": quantity.ErrUnit, "1,5 lb 4 oz": quantity.ErrUnit, "1 lb 16 oz": quantity.ErrOutOfRange,
		"1 lb 40 oz": quantity.ErrOutOfRange,
		"1 lb -4 oz": quantity.ErrUnit, "1 lb −4 oz": quantity.ErrUnit, "1 lb +4 oz": quantity.ErrUnit,
		"4 oz 1 lb": quantity.ErrUnit, "1 lb 4": quantity.ErrUnit,
		"1 lb 4 g": quantity.ErrUnit, "1 lb 4 lb": quantity.ErrUnit, "1 lb oz": quantity.ErrUnit,
		"1 lb 4 oz 2 oz": quantity.ErrUnit, "1 lb 4 oz 1 lb": quantity.ErrUnit,
		"1 kg 200 g": quantity.ErrUnit, "lb 4 oz": quantity.ErrUnit, "1 lb 1_ oz": quantity.ErrUnit,
		"1_ lb 1 oz": quantity.ErrUnit, "1 lb 1.2.3 oz": quantity.ErrUnit,
		"99999999999999999999 lb 1 oz": quantity.ErrOutOfRange, "1 lb 4 oz" +
			strings.Repeat(" ", 100): quantity.ErrOutOfRange,
	} {
		if m, err := quantity.ParseMass(in); !errors.Is(err, want) || m.IsValid() {
			t.Errorf("ParseMass(%q) = %v, %v; want %v", in, m, err, want)
		}
	}
}

// Pounds and ounces are the ounces they add up to.
func TestPoundsAreSixteenOunces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lb, oz := rapid.IntRange(0, 100_000).Draw(t, "lb"), rapid.IntRange(0, 15_999).Draw(t, "thousandths")
		sign := rapid.SampledFrom([]string{"", "-", "−"}).Draw(t, "sign")
		both, err := quantity.ParseMass(fmt.Sprintf("%s%d lb %d.%03d oz", sign, lb, oz/1000, oz%1000))
		if err != nil {
			t.Fatal(err)
		}
		all := lb*16_000 + oz
		alone, err := quantity.ParseMass(fmt.Sprintf("%s%d.%03d oz", sign, all/1000, all%1000))
		if err != nil || alone != both {
			t.Fatalf("%v, %v, %v", both, alone, err)
		}
	})
}

// Durations have one fraction at most, in their last part, and are exact.
func TestDurationsOfSeveralParts(t *testing.T) {
	for in, want := range map[string]time.Duration{
		"1 h 30 min": 90 * time.Minute, "1 hour 30 minutes": 90 * time.Minute, "1,5 h": 90 * time.Minute,
		"1 h 30.5 min": 90*time.Minute + 30*time.Second,
		"8000.1 h":     28_800_360 * time.Second, "2 d 12 h": 60 * time.Hour, "-1 h 30 min": -90 * time.Minute,
		"0.1 h": 6 * time.Minute,
	} {
		if d, err := quantity.ParseDuration(in); err != nil || d != want {
			t.Errorf("ParseDuration(%q) = %v, %v; want %v", in, d, err, want)
		}
	}
	for in, want := range map[string]error{
		"1.5 h 30 min": quantity.ErrUnit, "30 min 1 h": quantity.ErrUnit, "1 h 30": quantity.ErrUnit,
		"1 h -30 min": quantity.ErrUnit, "1:30": quantity.ErrUnit,
		"1,500 h": quantity.ErrUnit, "0.0000000001 s": quantity.ErrTooPrecise, "366 d 1 s": quantity.ErrOutOfRange,
		"1 h 1 h": quantity.ErrUnit, "..5 h": quantity.ErrUnit,
	} {
		if d, err := quantity.ParseDuration(in); !errors.Is(err, want) {
			t.Errorf("ParseDuration(%q) = %v, %v; want %v", in, d, err, want)
		}
	}
}

func ExampleInches() {
	fmt.Println(quantity.Inches(9).Text(quantity.Centimeter, 2))
	// Output: 22.86 cm
}
