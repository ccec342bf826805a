package working_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A sentence is written once and shown in the units of whoever reads it.
func ExampleSay() {
	m := working.Say("add %.0f of flour; keep the dough between %v and %v", quantity.Grams(40), quantity.Celsius(5),
		quantity.Celsius(24.5))
	fmt.Println(m)
	fmt.Println(m.Text(us))
	// Output:
	// add 40 g of flour; keep the dough between 5 °C and 24.5 °C
	// add 1.4 oz of flour; keep the dough between 41 °F and 76.1 °F
}

// The same quantities for two readers.
func ExampleUnits() {
	for _, u := range []working.Units{working.Metric, working.USCustomary} {
		fmt.Println(u.Mass(quantity.Grams(780)), "|", u.Temperature(quantity.Celsius(24.5), 1), "|",
			u.Delta(quantity.DeltaCelsius(12), 1), "|", u.Length(quantity.Centimeters(24)), "|",
			u.Volume(quantity.Liters(1.5)))
	}
	// Output:
	// 780 g | 24.5 °C | 12.0 Δ°C | 24.0 cm | 1500 mL
	// 1 lb 11.5 oz | 76 °F | 21.6 Δ°F | 9.4 in | 1.6 qt
}

var us = working.Reader{Units: working.USCustomary}

func TestMessages(t *testing.T) {
	inner := working.Say("water at %.1f", quantity.Celsius(20))
	for _, c := range []struct {
		m          working.Message
		metric, us string
	}{
		{working.Say("100 % rye, 50 %v"), "100 % rye, 50 %v", "100 % rye, 50 %v"},
		{working.Say("%v, which is %d %% of %s", inner, 20, "%v it"), "water at 20.0 °C, which is 20 % of %v it",
			"water at 68 °F, which is 20 % of %v it"},
		{working.Say("%v", quantity.Celsius(18)), "18 °C", "64.4 °F"},
		{working.Say("%.0f", quantity.Celsius(18)), "18 °C", "64 °F"},
		{working.Say("%v and %.1f", quantity.DeltaFahrenheit(22), quantity.DeltaFahrenheit(22)), "12.222 Δ°C and 12.2 Δ°C",
			"22 Δ°F and 22.0 Δ°F"},
		{working.Say("%v", quantity.Kilograms(2)), "2000 g", "4 lb 6.5 oz"},
		{working.Say("%v", quantity.Grams(-900)), "−900 g", "−1 lb 15.7 oz"},
		{working.Say("%v", quantity.Grams(-100)), "−100 g", "−3.5 oz"},
		{working.Say("%.1f", quantity.Grams(5)), "5.0 g", "0.18 oz"},
		{working.Say("%v, %v", quantity.Meters(1150), quantity.Liters(20)), "1150 m, 20.0 L", "3773 ft, 21.1 qt"},
		{working.Say("%v, %v", quantity.Centimeters(20), quantity.Liters(0.25)), "20.0 cm, 250 mL", "7.9 in, 8.5 fl oz"},
		{working.Say("%v", quantity.Temperature{}), "no temperature", "no temperature"},
		{working.Say("%v", quantity.Grams(math.NaN())), "invalid mass", "invalid mass"},
		{working.Join([]working.Message{inner, working.Say("ice")}, "; "), "water at 20.0 °C; ice", "water at 68 °F; ice"},
		{working.Say("%v"), "%v", "%v"},
		{working.Say("%v %v", 1), "1 %v", "1 %v"},
		{working.Message{}, "", ""},
	} {
		if got := c.m.String(); got != c.metric {
			t.Errorf("metric: got %q, want %q", got, c.metric)
		}
		if got := c.m.Text(us); got != c.us {
			t.Errorf("US: got %q, want %q", got, c.us)
		}
		if c.m.Text(working.Reader{Units: 7}) != c.metric || !c.m.Equal(c.m) || c.m.IsZero() != (c.metric == "") {
			t.Errorf("%q: unknown units are not metric, or unequal to itself", c.metric)
		}
		b, err := json.Marshal(c.m)
		var back working.Message
		if err != nil || json.Unmarshal(b, &back) != nil || !back.Equal(c.m) || back.Text(us) != c.us {
			t.Errorf("%q: JSON %s, %v, back %q", c.metric, b, err, back)
		}
	}
	if working.Metric.String() != "metric" || working.USCustomary.String() != "US customary" {
		t.Error(working.Metric, working.USCustomary)
	}
	c := working.Caution{Subject: "pot", Text: working.Say("not above %v", quantity.Celsius(240))}
	if c.String() != "pot: not above 240 °C" || c.Message().Text(us) != "pot: not above 464 °F" {
		t.Error(c.String(), c.Message().Text(us))
	}
}

// Whatever is put in, both texts are made and say the same words.
func FuzzSay(f *testing.F) {
	f.Add("%v of %s", 40.0, "flour")
	f.Add("%.999999999f%", math.Inf(1), "%v")
	f.Add("%[2]*.[1]*f", -1.0, strings.Repeat("x", 100))
	f.Fuzz(func(t *testing.T, format string, grams float64, word string) {
		m := working.Say(format, quantity.Grams(grams), word)
		_ = m.Text(us)
		if n := working.Say("%s", word); n.String() != word || n.Text(us) != word {
			t.Errorf("%q became %q", word, n)
		}
	})
}

// Numbers that JSON has none for travel as words and come back; nothing is below nothing.
func TestNumbersThatJSONHasNot(t *testing.T) {
	for _, x := range []float64{math.Inf(1), math.Inf(-1), math.NaN(), 0.25} {
		m := working.Tell("test.odd", "a share of %.2f", x)
		text, err := json.Marshal(m)
		var back working.Message
		if err != nil || json.Unmarshal(text, &back) != nil || back != m {
			t.Errorf("%v went out as %s, %v, and came back as %v", x, text, err, back)
		}
	}
	if a, b := working.Say("%v", math.Copysign(0, -1)), working.Say("%v", 0.0); a != b || a.String() != "0" {
		t.Errorf("%q and %q", a, b)
	}
}

// Of a catalog over others the first that says something counts, how the time of day is written too.
func TestTheFirstOfSeveralCatalogsCounts(t *testing.T) {
	own := working.Language{Tag: "de-CH", Clock: working.Clock24, Words: map[string]string{"a": "own"}}
	base := working.Language{Tag: "de", Clock: working.Clock12, Decimal: ",",
		Words: map[string]string{"a": "x", "b": "base"}}
	got := own.Over(base)
	if got.Tag != "de-CH" || got.Clock != working.Clock24 || got.Decimal != "," || got.Words["a"] != "own" ||
		got.Words["b"] != "base" {
		t.Errorf("%+v", got)
	}
	if got := (working.Language{}).Over(base); got.Clock != working.Clock12 {
		t.Errorf("nothing said over %v: %v", base.Clock, got.Clock)
	}
}

// Quotation marks are those of LaTeX.
func TestQuotationMarksInLaTeX(t *testing.T) {
	d := working.Derive(working.Say("%s", "“half” of ‘all’ dough’s „salt“"))
	d.Find(working.Finding{Name: working.Say("salt"), Symbol: "s", Is: quantity.Grams(20), Source: working.Algebra()})
	if tex := d.Working().LaTeX(); strings.Contains(tex, "[U+") ||
		!strings.Contains(tex, "``half'' of `all' dough's \\quotedblbase{}salt``") {
		t.Error(tex)
	}
}
