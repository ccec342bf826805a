package quantity_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
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
