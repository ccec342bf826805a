package quantity_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// A measure is what every quantity is to a test that asks all of them alike.
type measure interface {
	fmt.Stringer
	MarshalText() ([]byte, error)
}

// read is what a text is read as: the canonical text and the page's, or the refusal with its code.
func read[T measure](parse func(string) (T, error)) func(string) string {
	return func(text string) string {
		v, err := parse(text)
		if err != nil {
			in := quantity.InputErrors(err)[0]
			return in.Code + ": " + err.Error()
		}
		canonical, err := v.MarshalText()
		if err != nil {
			return err.Error()
		}
		return fmt.Sprintf("%s, shown as %v", canonical, v)
	}
}

func parseElapsed(text string) (quantity.Elapsed, error) {
	d, err := quantity.ParseDuration(text)
	return quantity.Elapsed(d), err
}

func ladder(from int, digits string) string { return digits + strings.Repeat("0", from) }

// What texts are read as, and what is said of those that are refused: every unit by each of its names, the digits that
// it has, its limits, and what people type. The factors of the units are those of NIST SP 811 (2008), appendix B.8.
func TestWhatTextsAreReadAs(t *testing.T) {
	units := func(names string) (texts []string) {
		for _, unit := range strings.Split(names, "|") {
			for _, n := range []string{"1", "1000", "0.5", "0.0000005", "0.0000015", "1.00000000000000", "1e3", "-3",
				"0.0000000000000001", ladder(19, "9"), ladder(41, "-1")} {
				texts = append(texts, n+" "+unit)
			}
		}
		return texts
	}
	names := func(names string) (texts []string) {
		for _, unit := range strings.Split(names, "|") {
			texts = append(texts, "2 "+unit, "2"+unit)
		}
		return texts
	}
	typed := []string{"", "  ", "g", "7", "7 stone", "1,000 g", "0,125 g", "-0,125 kg", "1,5 g", "1,234,5 g", "1.5,5 g",
		"1.2.3 g", ".5 g", "5. g", "+5 g", "−5 g", "+-5 g", "1_000 g", "1__0 g", "½ lb", "2½ lb", "2 ½ lb", "1/2 lb",
		"2 1/4 lb", "2\u20091⁄4 lb", "1/0 lb", "1/1000 lb", "1/999 lb", "1000/1 lb", "999/1 lb", "1234567 1/2 lb",
		"123456 1/2 lb", "/2 lb", "1/ lb", "1\\2 lb", "¾ stone", "1 lb 4 oz", "-1 lb 4 oz", "−2 lb 3.5 oz", "1 lb 16 oz",
		"1 lb 15.999999 oz", "1.5 lb 4 oz", "1 lb -4 oz", "1 lb +4 oz", "1 lb 4 g", "1 lb 4", "1 lb 1,000 oz",
		"1_ lb 2 oz", "999999999999 lb 4 oz", "1 1/3 oz", "1/16 oz", strings.Repeat("1", 40) + " mg",
		strings.Repeat("1", 41) + " mg", strings.Repeat(" ", 62) + "1 g", "7 %", "7 °C", strings.Repeat("ü", 20) + " g"}
	times := []string{"", " ", "-", "1h", "1 h 30 min", "1h30", "30m1h", "1h1h", "1.5h", "1.5h10m", "0,5 h", "1,000h",
		"1.25s", "0.0000000001s", "366d", "367d", "-366d", "−367d", "1d2h3m4s", "2 days", "2 hrs", "1hr", "1hour", "2mins",
		"1minute", "1sec", "2secs", "1second", "zh", "1z", "1{", "1 `", "5d", "1H", strings.Repeat("1", 41) + "s",
		strings.Repeat("1", 65)}
	var page strings.Builder
	for _, c := range []struct {
		of    string
		read  func(string) string
		texts []string
	}{
		{"masses", read(quantity.ParseMass), append(append(units("g|kg|mg|oz|lb"),
			names("gram|grams|kilogram|kilograms|milligram|milligrams|ounce|ounces|lbs|pound|pounds")...), typed...)},
		{"volumes", read(quantity.ParseVolume), append(units(
			"L|mL|gal|qt|pt|cup|fl oz|tbsp|tsp|metric cup|in³|dL"), names("l|liters|litre|ml|cm3|cm³|gallons|quart|"+
			"pints|cups|floz|tablespoons|teaspoon|metric cups|in3|cu in|dl|decilitres")...)},
		{"lengths", read(quantity.ParseLength), append(units("m|cm|mm|in|ft|km"),
			names("metre|meters|centimeters|millimeter|inch|inches|foot|feet|kilometers")...)},
		{"temperatures", read(quantity.ParseTemperature), append(units("°C|°F|K"), append(
			names("C|degC|℃|F|degF|℉|Δ°C|dF"),
			"-273.15 °C", "-273.14 °C", "9726.85 °C", "9726.86 °C", "0 K", "10000 K", "20.12345 °C", "20.123456 °C",
			"½ °C")...)},
		{"differences", read(quantity.ParseDelta), append(units("Δ°C|Δ°F|K"), append(
			names("dC|delta C|d°C|∆C|dF|delta F|dK"),
			"2 °C", "2 °F", "2 C")...)},
		{"percentages", read(quantity.ParsePercent), append(units("%|percent"), "5 g", "5")},
		{"times", read(parseElapsed), times},
	} {
		fmt.Fprintf(&page, "%s\n\n", c.of)
		for _, text := range c.texts {
			fmt.Fprintf(&page, "%q: %s\n", text, c.read(text))
		}
		page.WriteString("\n")
	}
	trial.Kept(t, "texts.txt", page.String())
}

// Each unit of each quantity as a number exactly, as it is printed, and its word.
func TestWhatUnitsAreWorth(t *testing.T) {
	var page strings.Builder
	line := func(u fmt.Stringer, d decimal.Decimal, in float64, text string) {
		fmt.Fprintf(&page, "%v: %v, %v, %s\n", u, d, in, text)
	}
	m, v, l := quantity.Grams(123.456789), quantity.Liters(1.234567890123), quantity.Meters(12.345678)
	c, d := quantity.Celsius(21.3), quantity.DeltaCelsius(-4.7)
	for u := quantity.MassUnit(-1); u < 6; u++ {
		line(u, m.Decimal(u), m.In(u), m.Text(u, 4))
	}
	for u := quantity.VolumeUnit(-1); u < 13; u++ {
		line(u, v.Decimal(u), v.In(u), v.Text(u, 4))
	}
	for u := quantity.LengthUnit(-1); u < 7; u++ {
		line(u, l.Decimal(u), l.In(u), l.Text(u, 4))
	}
	for u := quantity.TemperatureUnit(-1); u < 4; u++ {
		line(u, c.Decimal(u), c.In(u), c.Text(u, 4))
		line(u, d.Decimal(u), d.In(u), d.Text(u, 4))
	}
	line(quantity.NewPercent(0), quantity.MustPercent("12.345678 %").Decimal(), 0, quantity.MustPercent("2.5 %").Text(0))
	line(quantity.NewPercent(0), quantity.MustPercent("-3.5 %").Decimal(), 0, quantity.MustPercent("-3.5 %").Text(-1))
	for _, err := range []error{
		new(quantity.MassUnit).UnmarshalText([]byte("stone")), new(quantity.MassUnit).UnmarshalText(nil),
		new(quantity.VolumeUnit).UnmarshalText([]byte("barrel")), new(quantity.LengthUnit).UnmarshalText([]byte("yd")),
		new(quantity.TemperatureUnit).UnmarshalText([]byte("R")),
		trial.Err(quantity.MassOf(decimal.New(1, -101), quantity.Gram)),
		trial.Err(quantity.MassOf(decimal.New(1, -100), quantity.Gram)),
		trial.Err(quantity.MassOf(decimal.New(1, 100), quantity.Gram)),
		trial.Err(quantity.MassOf(decimal.New(1, 101), quantity.Gram)),
		trial.Err(quantity.TemperatureOf(decimal.New(123456, -7), quantity.KelvinScale)),
		trial.Err(quantity.MassUnit(9).MarshalText()),
	} {
		fmt.Fprintln(&page, err)
	}
	trial.Kept(t, "units.txt", page.String())
}

// Durations as text, to the nanosecond, both ways.
func TestDurationsInText(t *testing.T) {
	for d, want := range map[time.Duration]string{
		time.Second: "1s", -time.Second: "-1s", 999 * time.Millisecond: "0.999s", -time.Millisecond: "-0.001s",
		time.Second + 1: "1.000000001s", -time.Minute - 250*time.Millisecond: "-1m0.25s",
		time.Hour + 5*time.Second/2: "1h00m02.5s",
		-1:                          "-0.000000001s", time.Minute: "1m", 0: "0m",
	} {
		text, err := quantity.Elapsed(d).MarshalText()
		var back quantity.Elapsed
		if err != nil || string(text) != want || back.UnmarshalText(text) != nil || back.Duration() != d {
			t.Errorf("%d ns is %s, want %s; %v, read back as %v", d, text, want, err, back)
		}
	}
}

// Both ends of a range are in it.
func TestEndsOfARangeAreInIt(t *testing.T) {
	r := quantity.TimeRange{Early: time.Minute, Late: time.Hour}
	if !r.Contains(time.Minute) || !r.Contains(time.Hour) || r.Contains(time.Minute-1) || r.Contains(time.Hour+1) {
		t.Error(r)
	}
}
