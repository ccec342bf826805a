package quantity_test

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/shopspring/decimal"
)

// Durations are printed to the nearest second, halves away from zero, with a true minus; what is nothing then is 0m.
func TestDurationsAreRounded(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0m", 400 * time.Millisecond: "0m", 500 * time.Millisecond: "1s", 119600 * time.Millisecond: "2m",
		59*time.Minute + 59*time.Second + 500*time.Millisecond: "1h", 61 * time.Minute: "1h01m",
		3601 * time.Second: "1h00m01s",
		-90 * time.Second:  "−1m30s", 125 * time.Second: "2m05s", 48 * time.Hour: "48h",
	} {
		if got := quantity.FormatDuration(d); got != want {
			t.Errorf("%d ns is printed %q, want %q", d, got, want)
		}
	}
}

// A sum with what is not valid is not valid, on either side, and so is what passes the bounds.
func TestInvalidStaysInvalid(t *testing.T) {
	bad := quantity.Kilograms(-1e30)
	if bad.IsValid() {
		t.Fatal("10³⁰ kg is a mass")
	}
	one := quantity.Grams(1)
	for name, m := range map[string]quantity.Mass{
		"right": one.Add(bad), "left": bad.Add(one), "both": bad.Add(bad), "less": one.Sub(bad), "of": bad.Sub(one),
	} {
		if m.IsValid() {
			t.Errorf("%s: %v", name, m)
		}
	}
	if got := one.Add(quantity.Grams(2)); got != quantity.Grams(3) {
		t.Errorf("1 g and 2 g are %v", got)
	}
}

// Numbers so long that they could not be held are refused, whatever their sign; zero is zero with any exponent.
func TestVeryLongNumbers(t *testing.T) {
	for text, want := range map[string]error{
		"0.000000 g": nil, "1" + strings.Repeat("0", 45) + " g": quantity.ErrOutOfRange,
		"-1" + strings.Repeat("0", 45) + " g": quantity.ErrOutOfRange, "0." + strings.Repeat("0", 45) +
			"1 g": quantity.ErrTooPrecise,
		"1e39 g": quantity.ErrOutOfRange, "1e-101 g": quantity.ErrTooPrecise, "1e41 g": quantity.ErrOutOfRange,
	} {
		_, err := quantity.ParseMass(text)
		if want == nil && err != nil || want != nil && !errors.Is(err, want) && !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%.20s: %v, want %v", text, err, want)
		}
	}
}

// The path of an element is that of its own index, two digits too.
func TestPathsOfLongLists(t *testing.T) {
	type line struct {
		Mass quantity.Mass `json:"mass"`
	}
	type list struct {
		Lines []line `json:"line"`
	}
	var p quantity.Problems
	p.Required("Lines[12].Mass", quantity.Tell("quantity.want_a_mass", "a mass"))
	err := p.ErrFor(list{Lines: make([]line, 13)})
	if bad := quantity.InputErrors(err); len(bad) != 1 || bad[0].Path != "line[12].mass" {
		t.Errorf("%v", err)
	}
}

// JSON of the wrong type says what is wanted instead: of a time, an example of a time.
func TestWrongTypesInJSON(t *testing.T) {
	var in struct {
		At   time.Time     `json:"at"`
		Name string        `json:"name"`
		Mass quantity.Mass `json:"mass"`
	}
	err := quantity.ReadJSON([]byte(`{"at": 5, "name": 6, "mass": [7]}`), &in)
	said := map[string]string{}
	for _, e := range quantity.InputErrors(err) {
		said[e.Path] = e.Error()
	}
	if len(said) != 3 || !strings.Contains(said["at"], "T") || strings.Contains(said["at"], "want a text") ||
		!strings.Contains(said["name"], "want a text") || !strings.Contains(said["mass"], "a text") {
		t.Errorf("%v", said)
	}
}

// A sign alone is no duration.
func TestASignIsNoDuration(t *testing.T) {
	for _, text := range []string{"-", "−", " - ", "--", "-m"} {
		if d, err := quantity.ParseDuration(text); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q: %v, %v", text, d, err)
		}
	}
}

// Of a text 64 bytes are looked at, spaces among them; one byte more is refused unread, whatever is read.
func TestLongestText(t *testing.T) {
	reads := func(text string, err error) {
		t.Helper()
		if len(text) <= 64 && err != nil || len(text) > 64 && !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("%q of %d bytes: %v", strings.TrimSpace(text), len(text), err)
		}
	}
	for _, long := range []int{64, 65} {
		pad := func(s string) string { return strings.Repeat(" ", long-len(s)) + s }
		for _, s := range []string{"2 g", "1 lb 3 oz"} {
			_, err := quantity.ParseMass(pad(s))
			reads(pad(s), err)
		}
		_, err := quantity.ParsePercent(pad("2 %"))
		reads(pad("2 %"), err)
		_, err = quantity.ParseDuration(pad("2h30m"))
		reads(pad("2h30m"), err)
	}
}

// A text may say a leap year, either way, and not a second more.
func TestLongestDuration(t *testing.T) {
	const year = 366 * 24 * time.Hour
	for text, want := range map[string]time.Duration{"366d": year, "8784h": year, "-366d": -year} {
		if d, err := quantity.ParseDuration(text); err != nil || d != want {
			t.Errorf("%s: %v, %v", text, d, err)
		}
	}
	for _, text := range []string{"366d1s", "-366d1s"} {
		if _, err := quantity.ParseDuration(text); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// An error shows a number of up to twelve characters as it is, and six digits of a longer one.
func TestNumbersInErrors(t *testing.T) {
	for x, want := range map[float64]string{
		1234567890.5: "1234567890.5", -123456789.5: "−123456789.5", 12345678901.5: "12345700000",
		2.0 / 3: "0.666667", 250: "250", 2e-7: "2e−07", 0.000002: "0.000002", 3e21: "3e+21",
	} {
		var p quantity.Problems
		p.Float("x", x, 0, 0, "")
		if got := p.Err().Error(); !strings.Contains(got, "got "+want+",") && !strings.Contains(got, "got "+want+";") {
			t.Errorf("%v is shown as %q, want %q", x, got, want)
		}
	}
}

// A phrase shows its numbers as an error does: short, and with a true minus.
func TestNumbersInPhrases(t *testing.T) {
	p := quantity.Tell("test.numbers", "%v, %d and %d at %v", 0.1234567890123, -5, 5, 90*time.Minute)
	if want := "0.123457, −5 and 5 at 1h30m"; p.String() != want {
		t.Errorf("%q, want %q", p, want)
	}
}

// An excerpt of 32 bytes never cuts a letter in two.
func TestExcerptsEndBetweenLetters(t *testing.T) {
	x := strings.Repeat("x", 31)
	for text, want := range map[string]string{
		x + "y": strconv.Quote(x + "y"), x + "yz": strconv.Quote(x+"y") + "…", x + "ü": strconv.Quote(x) + "…",
		x[:29] + "🥖🥖": strconv.Quote(x[:29]) + "…",
	} {
		if got := quantity.Excerpt(text); got != want {
			t.Errorf("%s is shown as %s, want %s", text, got, want)
		}
	}
}

// A prediction that is one number to the minute is told as one, and a shift moves all of it.
func TestRangesOfTime(t *testing.T) {
	const minute = time.Minute
	for late, want := range map[time.Duration]string{
		15*minute + 20*time.Second: "15m", 30 * minute: "15m to 30m (80 %), likely 15m",
	} {
		r := quantity.TimeRange{Early: 15 * minute, Likely: 15 * minute, Late: late, Probability: quantity.NewPercent(80)}
		if r.String() != want {
			t.Errorf("%q, want %q", r, want)
		}
	}
	r := quantity.TimeRange{Early: 10 * minute, Likely: 15 * minute, Late: 30 * minute,
		Probability: quantity.NewPercent(80)}
	if got, want := r.Add(time.Hour).String(), "1h10m to 1h30m (80 %), likely 1h15m"; got != want {
		t.Errorf("an hour later: %q, want %q", got, want)
	}
}

// A percentage finer than a millionth of a point is refused, and what comes with the refusal is no percentage.
func TestRefusedPercentagesAreNone(t *testing.T) {
	p, err := quantity.PercentOfDecimal(decimal.New(1, -7))
	if !errors.Is(err, quantity.ErrTooPrecise) || p.IsValid() {
		t.Errorf("%v, %v", p, err)
	}
}

// 70 °F are 190/9 °C, 21.111… in twelve decimals.
func TestDecimalsOfATemperature(t *testing.T) {
	if got := quantity.Fahrenheit(70).Decimal(quantity.CelsiusScale); got.String() != "21.111111111111" {
		t.Error(got)
	}
}

// Underscores stand between digits only.
func TestUnderscores(t *testing.T) {
	for text, ok := range map[string]bool{"1_000 g": true, "_1 g": false, "1_ g": false, "1__0 g": false} {
		if m, err := quantity.ParseMass(text); (err == nil) != ok || ok && m != quantity.Kilograms(1) {
			t.Errorf("%s: %v, %v", text, m, err)
		}
	}
}

// What has no share gets nothing, and takes nothing from the others.
func TestApportionToNothing(t *testing.T) {
	g := quantity.Grams
	got, err := quantity.ApportionLike(g(10), []quantity.Mass{{}, g(3), {}, g(1)})
	if err != nil || !slices.Equal(got, []quantity.Mass{{}, g(7.5), {}, g(2.5)}) {
		t.Errorf("%v, %v", got, err)
	}
}

// A unit that is none is read as the first: 9 Δ°F are 5 Δ°C and 5 K.
func TestUnitsThatAreNone(t *testing.T) {
	d := quantity.DeltaFahrenheit(9)
	for u := range quantity.TemperatureUnit(6) {
		want := 5.0
		if u == quantity.FahrenheitScale {
			want = 9
		}
		if got := d.In(u); got != want {
			t.Errorf("9 Δ°F are %v in unit %d", got, u)
		}
	}
}

// A number is printed with three decimals where none are asked for, and with twelve at most.
func TestMostDecimals(t *testing.T) {
	m := quantity.Micrograms(1_500_000)
	for format, want := range map[string]string{
		"%f": "1.500 g", "%.12f": "1.500000000000 g", "%.13f": "1.500000000000 g", "%.40f": "1.500000000000 g",
	} {
		if got := fmt.Sprintf(format, m); got != want {
			t.Errorf("%s: %q, want %q", format, got, want)
		}
	}
}

// Whole numbers from 0 are read in tens, and JSON of bytes that are no text is refused from its first byte on.
func TestCountsInJSON(t *testing.T) {
	var in struct {
		N uint   `json:"n"`
		B uint8  `json:"b"`
		S string `json:"s"`
	}
	if err := quantity.ReadJSON([]byte(`{"n":120,"b":255}`), &in); err != nil || in.N != 120 || in.B != 255 {
		t.Errorf("%+v, %v", in, err)
	}
	for _, text := range []string{"\xff{}", "{\"s\":\"\xff\"}"} {
		found := quantity.InputErrors(quantity.ReadJSON([]byte(text), &in))
		if len(found) != 1 || !strings.Contains(found[0].Error(), "UTF-8") {
			t.Errorf("%q: %v", text, found)
		}
	}
}
