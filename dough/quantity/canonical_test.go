package quantity_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// Every quantum of a temperature and of a difference comes back from its text, which is in °C.
func TestEveryQuantumComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.IntRange(1, 90_000_000).Draw(t, "quanta")
		c := quantity.Kelvin(float64(q) / 9000)
		text, err := c.MarshalText()
		if err != nil || !strings.HasSuffix(string(text), " °C") || strings.Contains(string(text), "−") {
			t.Fatalf("%s, %v", text, err)
		}
		var back quantity.Temperature
		if err := back.UnmarshalText(text); err != nil || back != c {
			t.Fatalf("%s became %v: %v", text, back, err)
		}
		d := quantity.DeltaCelsius(float64(q-45_000_000) / 9000)
		text, err = d.MarshalText()
		if err != nil || !strings.HasSuffix(string(text), " Δ°C") {
			t.Fatalf("%s, %v", text, err)
		}
		var same quantity.TemperatureDelta
		if err := same.UnmarshalText(text); err != nil || same != d {
			t.Fatalf("%s became %v: %v", text, same, err)
		}
	})
}

// All 9000 quanta of one degree, on both sides of zero.
func TestEveryQuantumOfADegree(t *testing.T) {
	longest := 0
	for q := -9000; q <= 9000; q++ {
		d := quantity.DeltaCelsius(float64(q) / 9000)
		text, _ := d.MarshalText()
		back, err := quantity.ParseDelta(string(text))
		if err != nil || back != d {
			t.Fatalf("%d quanta: %s became %v: %v", q, text, back, err)
		}
		_, decimals, _ := strings.Cut(strings.TrimSuffix(string(text), " Δ°C"), ".")
		longest = max(longest, len(decimals))
	}
	if longest != 4 {
		t.Errorf("%d decimals, want 4 at most", longest)
	}
}

func TestTheSameBytesInBothScales(t *testing.T) {
	for f, c := range map[string]string{
		"77 °F": "25 °C", "75 °F": "23.8889 °C", "76.1 °F": "24.5 °C", "-40 °F": "-40 °C", "32.0005 °F": "0.0002 °C",
		"90 °F":       "32.2222 °C",
		"75.00000 °F": "23.8889 °C", "297.0388889 K": "",
	} {
		v, err := quantity.ParseTemperature(f)
		if c == "" {
			if !errors.Is(err, quantity.ErrTooPrecise) || !strings.Contains(err.Error(), "at most 5 decimals of K") {
				t.Errorf("%s: %v", f, err)
			}
			continue
		}
		got, _ := v.MarshalText()
		if err != nil || string(got) != c {
			t.Errorf("%s marshals to %s (%v), want %s", f, got, err, c)
		}
	}
	if d, _ := quantity.MustDelta("3 Δ°F").MarshalText(); string(d) != "1.6667 Δ°C" {
		t.Errorf("%s", d)
	}
	// Five decimals are rounded to the nearest quantum, ties to the even one: 0.0005 °C is 4.5 quanta.
	if quantity.MustDelta("0.0005 dC") != quantity.MustDelta("0.00044 dC") ||
		quantity.MustDelta("0.0015 dC") != quantity.MustDelta("0.00156 dC") {
		t.Error("ties")
	}
	if _, err := quantity.ParseDelta("0.000001 dC"); !errors.Is(err, quantity.ErrTooPrecise) {
		t.Error(err)
	}
	if v, err := quantity.TemperatureOf(decimal.New(2388889, -5), quantity.CelsiusScale); err != nil ||
		v != quantity.Fahrenheit(75) {
		t.Error(v, err)
	}
}

// A temperature that is not given never makes a result unmarshalable, and reads back as not given.
func TestTemperatureNotGiven(t *testing.T) {
	type note struct {
		Room quantity.Temperature `json:"room"`
		Core quantity.Temperature `json:"core,omitzero"`
	}
	text, err := json.Marshal(note{})
	if err != nil || string(text) != `{"room":""}` {
		t.Fatalf("%s, %v", text, err)
	}
	back := note{Room: quantity.Celsius(20)}
	if err := json.Unmarshal(text, &back); err != nil || back != (note{}) {
		t.Errorf("%v, %v", back, err)
	}
	if _, err := quantity.ParseTemperature(""); !errors.Is(err, quantity.ErrRequired) {
		t.Errorf("a person who types nothing: %v", err)
	}
}

func TestLimitsOfTemperatureAreSaidAsTheyAre(t *testing.T) {
	_, err := quantity.ParseTemperature("0 K")
	if got := fmt.Sprint(err); got != `out of range: got "0 K", want above 0 K, at most 10000 K` {
		t.Error(got)
	}
	_, err = quantity.ParseTemperature("-273.15 °C")
	if got := fmt.Sprint(err); got != `out of range: got "-273.15 °C", want above −273.15 °C, at most 9726.85 °C` {
		t.Error(got)
	}
}

func TestElapsedTextIsExact(t *testing.T) {
	for text, d := range map[string]time.Duration{
		"0m": 0, "0.5s": time.Second / 2, "-0.000000001s": -1, "1h0.25s": time.Hour + time.Second/4,
		"1h02m03.000000004s": time.Hour + 2*time.Minute + 3*time.Second + 4,
		"-1m0.1s":            -time.Minute - time.Second/10, "1.5s": 1500 * time.Millisecond,
		"2562047h47m16.854775807s": math.MaxInt64, "-2562047h47m16.854775808s": math.MinInt64,
	} {
		got, err := quantity.Elapsed(d).MarshalText()
		if err != nil || string(got) != text {
			t.Errorf("%d marshals to %s, want %s (%v)", d, got, text, err)
		}
		var back quantity.Elapsed
		if err := back.UnmarshalText([]byte(text)); err != nil || back != quantity.Elapsed(d) {
			t.Errorf("%s reads as %v (%v)", text, back, err)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		e := quantity.Elapsed(rapid.Int64().Draw(t, "ns"))
		text, _ := e.MarshalText()
		var back quantity.Elapsed
		if err := back.UnmarshalText(text); err != nil || back != e {
			t.Fatalf("%d, %s, %d: %v", e, text, back, err)
		}
	})
	if _, err := quantity.ParseDuration("367d"); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Error(err)
	}
	var e quantity.Elapsed
	if err := e.UnmarshalText([]byte("2562048h")); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Error(err)
	}
	if quantity.Elapsed(1).Compare(2) != -1 {
		t.Error("order of durations")
	}
}

func TestRangesInJSON(t *testing.T) {
	type all struct {
		Time   quantity.TimeRange                      `json:"time"`
		Core   quantity.Range[quantity.Temperature]    `json:"core"`
		Loss   quantity.Range[quantity.Percent]        `json:"loss"`
		Wait   quantity.Range[quantity.Elapsed]        `json:"wait"`
		Window quantity.Window                         `json:"window"`
		Map    map[quantity.MassUnit]quantity.MassUnit `json:"map"`
	}
	at := time.Date(2026, 11, 28, 18, 40, 0, 0, time.UTC)
	in := all{
		Time: quantity.TimeRange{Early: 310 * time.Minute, Likely: 370 * time.Minute, Late: 445 * time.Minute,
			Probability: quantity.NewPercent(80)},
		Core: quantity.Range[quantity.Temperature]{Low: quantity.Celsius(93), High: quantity.Celsius(96)},
		Loss: quantity.Range[quantity.Percent]{Low: quantity.NewPercent(9), Likely: quantity.NewPercent(10.5),
			High: quantity.NewPercent(12), Probability: quantity.NewPercent(90)},
		Wait:   quantity.Range[quantity.Elapsed]{Low: quantity.Elapsed(time.Minute), High: quantity.Elapsed(time.Hour)},
		Window: quantity.Window{From: at, To: at.Add(45 * time.Minute)},
		Map:    map[quantity.MassUnit]quantity.MassUnit{quantity.Pound: quantity.Ounce},
	}
	text, err := json.Marshal(in)
	want := `{"time":{"early":"5h10m","likely":"6h10m","late":"7h25m","probability":"80 %"},` +
		`"core":{"low":"93 °C","high":"96 °C"},"loss":{"low":"9 %","likely":"10.5 %","high":"12 %","probability":"90 %"},` +
		`"wait":{"low":"1m","high":"1h"},"window":{"from":"2026-11-28T18:40:00Z","to":"2026-11-28T19:25:00Z"},` +
		`"map":{"lb":"oz"}}`
	if err != nil || string(text) != want {
		t.Fatalf("%v\n%s\n%s", err, text, want)
	}
	var back all
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(in, back); diff != "" {
		t.Error(diff)
	}
	if got := fmt.Sprint(in.Core, " | ", in.Loss, " | ",
		in.Window); got != "93 °C to 96 °C | 9 % to 12 % (90 %), likely 10.5 % | Sat 2026-11-28 18:40 to 19:25" {
		t.Error(got)
	}
	if !in.Core.Contains(quantity.Celsius(96)) || in.Core.Contains(quantity.Celsius(97)) ||
		in.Core.Contains(quantity.Temperature{}) || !in.Core.Contains(quantity.Celsius(93)) {
		t.Error("what a range contains")
	}
	w := in.Window
	if !w.Contains(w.From) || !w.Contains(w.To) || w.Contains(w.To.Add(1)) || w.Contains(w.From.Add(-1)) ||
		w.Duration() != 45*time.Minute || w.IsZero() || !(quantity.Window{}).IsZero() {
		t.Error("window arithmetic")
	}
	if got := (quantity.Window{From: at,
		To: at.Add(12 * time.Hour)}).String(); got != "Sat 2026-11-28 18:40 to Sun 2026-11-29 06:40" {
		t.Error(got)
	}
	if err := json.Unmarshal([]byte(`{"early":7}`), &back.Time); err == nil {
		t.Error("a bare number was read as a time")
	}
}

func TestUnitsAreWords(t *testing.T) {
	got := fmt.Sprint(quantity.Values[quantity.MassUnit](), quantity.Values[quantity.TemperatureUnit](),
		quantity.Values[quantity.LengthUnit](), quantity.Values[quantity.VolumeUnit]())
	if got != "[g kg mg oz lb] [°C °F K] [m cm mm in ft km] [L mL gal qt pt cup fl oz tbsp tsp metric cup in³ dL]" {
		t.Error(got)
	}
	var u quantity.VolumeUnit
	if err := u.UnmarshalText([]byte("metric cup")); err != nil || u != quantity.MetricCup {
		t.Error(u, err)
	}
	for _, word := range []string{"CUP", "liter", "g", strings.Repeat("x", 1000)} {
		err := u.UnmarshalText([]byte(word))
		if !errors.Is(err, quantity.ErrUnit) || u != quantity.MetricCup || len(err.Error()) > 200 ||
			quantity.InputErrors(err)[0].Code != "unknown_word" {
			t.Errorf("%.10q: %v, %v", word, u, err)
		}
	}
	if _, err := quantity.MassUnit(9).MarshalText(); err == nil ||
		quantity.MassUnit(-1).String() != "unknown unit of mass" {
		t.Error("a unit that is none")
	}
}

// What %#v prints can be pasted, whether the value is valid or not.
func TestGoSyntaxOfInvalidValues(t *testing.T) {
	bad := math.NaN()
	got := fmt.Sprintf("%#v %#v %#v %#v %#v %#v %#v", quantity.Grams(bad), quantity.NewPercent(bad),
		quantity.DeltaCelsius(bad), quantity.Liters(bad), quantity.Meters(bad),
		quantity.Celsius(bad), quantity.DeltaFahrenheit(-3))
	want := `quantity.Grams(math.NaN()) quantity.NewPercent(math.NaN()) quantity.DeltaCelsius(math.NaN()) ` +
		`quantity.Liters(math.NaN()) quantity.Meters(math.NaN()) ` +
		`quantity.Temperature{} quantity.MustDelta("-1.6667 Δ°C")`
	if got != want {
		t.Errorf("\n%s\n%s", got, want)
	}
}

func TestFormatVerbs(t *testing.T) {
	got := fmt.Sprintf("%v|%.1f|%8.0f|%-8.0f|%#v|%s|%d", quantity.Grams(12.55), quantity.Grams(12.55),
		quantity.Grams(12.5),
		quantity.Grams(12.5), quantity.Celsius(24.5), quantity.NewPercent(68), quantity.Grams(1))
	want := `12.55 g|12.6 g|    12 g|12 g    |quantity.MustTemperature("24.5 °C")|68 %|%!d(1 g)`
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
