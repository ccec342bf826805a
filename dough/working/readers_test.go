package working_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A number keeps the decimals that it is shown with, and two digits of what would else be shown as nothing; what is
// below half a millionth is nothing.
func TestDecimalsOfNumbers(t *testing.T) {
	for _, c := range []struct {
		x      float64
		places int
		want   string
	}{
		{1.25, 1, "1.2"}, {1.35, 1, "1.4"}, {0, 2, "0.00"}, {-3.5, 1, "−3.5"}, {0.05, 1, "0.1"}, {0.049, 1, "0.049"},
		{0.00123, 1, "0.0012"}, {6e-7, 1, "0.00000060"}, {4.9e-7, 1, "0.0"}, {0.4, 0, "0.40"}, {0.5, 0, "0"}, {1.5, 0, "2"},
		{1234.5, 0, "1234"}, {2, -1, "2"}, {2.125, -1, "2.125"},
	} {
		if got := (working.Reader{}).Number(c.x, c.places); got != c.want {
			t.Errorf("%v with %d decimals is %q, want %q", c.x, c.places, got, c.want)
		}
	}
}

// A weight that was given in ounces is read as it was given, though it is kept in micrograms.
func TestOuncesAsTheyWereGiven(t *testing.T) {
	us := working.Telling{Reader: working.Reader{Units: working.USCustomary}}
	for ounces, want := range map[float64]string{169.5: "169.5 oz", 0.1: "0.1 oz", 3: "3 oz", 35.274: "35.274 oz"} {
		d := working.Derive(say("x"))
		m := working.Given("m", say("dough"), quantity.Ounces(ounces))
		d.Find(working.Finding{
			Name: say("twice"), Symbol: "M", By: m.Times(2), Unit: working.Gram, Source: working.Algebra(),
		})
		if page := us.Text(d.Working()); !strings.Contains(page, "m  "+want+"  dough") {
			t.Errorf("%v oz:\n%s", ounces, page)
		}
	}
}

// Only a step with a table has one, counted from one.
func TestWhichStepsHaveATable(t *testing.T) {
	for step, columns := range map[int]int{0: 0, 1: 4, 2: 0, -1: 0} {
		if got := len(table().Table(step, working.Reader{}).Columns); got != columns {
			t.Errorf("step %d has %d columns, want %d", step, got, columns)
		}
	}
	if got := len(water().Table(1, working.Reader{}).Columns); got != 0 {
		t.Errorf("a step without a table has %d columns", got)
	}
}

// Braces that choose no word are characters.
func TestBracesThatChooseNothing(t *testing.T) {
	for template, want := range map[string]string{
		"%d {x} loaves": "2 {x} loaves", "%d {1|loaf} y": "2 {1|loaf} y", "%d {0|loaf|loaves}": "2 {0|loaf|loaves}",
		"%d {1|loaf|loaves}": "2 loaves", "%d {": "2 {", "%d {}": "2 {}", "%d {1|a": "2 {1|a",
	} {
		if got := working.Tell("test.braces", template, 2).String(); got != want {
			t.Errorf("%q is told %q, want %q", template, got, want)
		}
	}
}

// Times keep the zone that they were given with: UTC is told as such and so is a fixed hour beside it.
func TestZonesOfTimes(t *testing.T) {
	for name, zone := range map[string]*time.Location{"UTC": time.UTC, "east": time.FixedZone("east", 3600),
		"UTC, one hour off": time.FixedZone("UTC", 3600)} {
		at := time.Date(2026, 11, 28, 9, 5, 0, 0, zone)
		if got := working.Tell("test.at", "%t", at).String(); got != "09:05" {
			t.Errorf("%s: %s", name, got)
		}
	}
}

// Five digits that say something, as far as a value has them: of a hundredth, of a thousand, and none of nothing.
func TestDigitsOfResults(t *testing.T) {
	for x, want := range map[float64]string{
		0: "0", 1.0 / 3: "0.33333", 100.0 / 3: "33.333", 10000.0 / 3: "3333.3", 1e6 / 3: "333333",
		0.01 / 3: "0.0033333",
	} {
		d := working.Derive(say("x"))
		d.Find(working.Finding{Name: say("n"), Symbol: "n", By: working.Num(x).Times(1), Source: working.Algebra()})
		if got := d.Working().Answer().Text(working.Reader{}); got != want {
			t.Errorf("%v is %s, want %s", x, got, want)
		}
	}
	for _, x := range []float64{math.NaN(), math.Inf(1)} {
		d := working.Derive(say("x"))
		d.Find(working.Finding{Name: say("n"), Symbol: "n", By: working.Num(x), Source: working.Algebra()})
		if d.Working().Answer().IsValid() {
			t.Errorf("%v is an answer", x)
		}
	}
}

// A title of a page is of the first to the lowest rank, and a text without a title begins at once.
func TestHeadingsOfDerivations(t *testing.T) {
	for rank, tag := range map[int]string{0: "<h2>", 1: "<h1>", 2: "<h2>", 4: "<h4>"} {
		if got := (working.Telling{}).HTML(water(), rank); !strings.HasPrefix(got, tag) {
			t.Errorf("rank %d begins %.10s, want %s", rank, got, tag)
		}
	}
	d := working.Derive(working.Message{})
	d.Find(working.Finding{Name: say("n"), Symbol: "n", By: working.Num(2).Times(3), Source: working.Algebra()})
	if got := (working.Telling{}).Text(d.Working()); !strings.HasPrefix(got, "1. n\n") {
		t.Errorf("a derivation without a title begins %q", got)
	}
}

// A thermostat that is off by 10 °C is off by 20 °F, in steps of five, and not by 18.
func TestDifferencesInStepsOfADial(t *testing.T) {
	m := working.Tell("test.off", "%05.0f", quantity.DeltaCelsius(10))
	for units, want := range map[working.Units]string{working.Metric: "10 Δ°C", working.USCustomary: "20 Δ°F"} {
		if got := m.Text(working.Reader{Units: units}); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
