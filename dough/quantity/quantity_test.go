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

func TestZeroValues(t *testing.T) {
	if (quantity.Temperature{}).IsValid() || !(quantity.Temperature{}).IsZero() {
		t.Error("the zero Temperature must mean not given")
	}
	var m quantity.Mass
	var p quantity.Percent
	var d quantity.TemperatureDelta
	if !m.IsValid() || !p.IsValid() || !d.IsValid() || m.String() != "0 g" || p.String() != "0 %" ||
		d.String() != "0 Δ°C" {
		t.Error("zero mass, percent and difference are ordinary zeros")
	}
}

func TestFahrenheitAndCelsiusAreTheSameValue(t *testing.T) {
	if quantity.MustTemperature("77 °F") != quantity.MustTemperature("25 °C") {
		t.Error("77 °F is not 25 °C")
	}
	if quantity.MustDelta("18 Δ°F") != quantity.MustDelta("10 Δ°C") {
		t.Error("18 Δ°F is not 10 Δ°C")
	}
	if got := quantity.MustDelta("24 dF").String(); got != "13.333 Δ°C" {
		t.Errorf("24 Δ°F prints as %s", got)
	}
}

func TestReadingText(t *testing.T) {
	good := map[string]string{
		"780 g": "780 g", "780g": "780 g", " 1.2 kg ": "1200 g", "500 mg": "0.5 g", "1 lb": "453.59237 g",
		"8 oz": "226.796185 g",
		"−5 g": "−5 g", "-5 g": "−5 g", "+5 g": "5 g", "12,5 g": "12.5 g", "0,125 kg": "125 g", "1_500 g": "1500 g",
		"5\u00a0g": "5 g", "5\u202fg": "5 g",
	}
	for in, want := range good {
		m, err := quantity.ParseMass(in)
		if err != nil || m.String() != want {
			t.Errorf("ParseMass(%q) = %v, %v; want %s", in, m, err, want)
		}
	}
	bad := map[string]error{
		"": quantity.ErrRequired, "  ": quantity.ErrRequired, "780": quantity.ErrUnit, "g": quantity.ErrUnit,
		"780 °C": quantity.ErrUnit,
		"1e3 g":  quantity.ErrUnit, "NaN g": quantity.ErrUnit, "Inf g": quantity.ErrUnit, "1,500 g": quantity.ErrUnit,
		"1.500,5 g":   quantity.ErrUnit,
		"0.0000001 g": quantity.ErrTooPrecise, "1000000001 g": quantity.ErrOutOfRange,
		"99999999999999999999999999 kg": quantity.ErrOutOfRange,
		".5 g":                          quantity.ErrUnit, "5. g": quantity.ErrUnit, "1__0 g": quantity.ErrUnit,
		"780 G":                           quantity.ErrUnit,
		"5 % g":                           quantity.ErrUnit,
		strings.Repeat("9", 1<<20) + " g": quantity.ErrOutOfRange, "7 8 g": quantity.ErrUnit, "--5 g": quantity.ErrUnit,
		"5 g g": quantity.ErrUnit,
	}
	for in, want := range bad {
		m, err := quantity.ParseMass(in)
		if !errors.Is(err, want) || m.IsValid() {
			t.Errorf("ParseMass(%.20q) = %v, %v; want %v", in, m, err, want)
		}
		if err != nil && len(err.Error()) > 400 {
			t.Errorf("the error for %.20q is %d bytes long", in, len(err.Error()))
		}
	}
}

// The text door needs the same lock as the Go door: a difference is not a temperature, a
// weight is not a percentage.
func TestUnitsOfAnotherQuantityAreRefusedWithAHint(t *testing.T) {
	_, err := quantity.ParseDelta("24 °F")
	if !errors.Is(err, quantity.ErrUnit) ||
		!strings.HasSuffix(err.Error(), "; a difference is written 24 Δ°F, a temperature 24 °F") {
		t.Errorf("got %v", err)
	}
	_, err = quantity.ParseTemperature("12 Δ°C")
	if !errors.Is(err, quantity.ErrUnit) || !strings.Contains(err.Error(), "difference does not belong here") {
		t.Errorf("got %v", err)
	}
	_, err = quantity.ParsePercent("15 g")
	if !errors.Is(err, quantity.ErrUnit) || !strings.Contains(err.Error(), "a weight does not belong here") {
		t.Errorf("got %v", err)
	}
	for _, s := range []string{"0.68", "68", "68 g", "68 per"} {
		if _, err := quantity.ParsePercent(s); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("ParsePercent(%q): %v", s, err)
		}
	}
	for _, s := range []string{"−273.15 °C", "0 K", "-500 °F"} {
		if _, err := quantity.ParseTemperature(s); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("ParseTemperature(%q): %v", s, err)
		}
	}
}

func TestHostileFloatsGiveInvalidValues(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, math.MaxFloat64} {
		if quantity.Grams(x).IsValid() || quantity.NewPercent(x).IsValid() || quantity.Celsius(x).IsValid() ||
			quantity.DeltaCelsius(x).IsValid() || quantity.Liters(x).IsValid() || quantity.Meters(x).IsValid() {
			t.Errorf("%v made a valid quantity", x)
		}
	}
	bad := quantity.Grams(math.NaN())
	for _, m := range []quantity.Mass{
		bad.Add(quantity.Grams(1)), quantity.Grams(1).Add(bad), bad.Neg(), bad.Times(2), bad.Divide(2),
		quantity.Grams(1).Divide(0),
		quantity.NewPercent(5).Of(bad), bad.Over(quantity.NewPercent(5)), quantity.Grams(5).Over(quantity.Percent{}),
		quantity.Grams(1e9).Add(quantity.Grams(1)), quantity.Grams(1e9).Times(1 << 62), bad.Scale(bad, bad),
	} {
		if m.IsValid() || m.String() != "invalid mass" {
			t.Errorf("%v is not invalid", m)
		}
	}
	if !math.IsNaN(bad.Grams()) {
		t.Error("an invalid mass reads as a number")
	}
	if _, err := bad.MarshalText(); err == nil {
		t.Error("an invalid mass was written")
	}
	if d := quantity.Celsius(20).Sub(quantity.Temperature{}); d.IsValid() {
		t.Errorf("a difference from nothing is %v", d)
	}
	if c := quantity.Celsius(-200).Add(quantity.DeltaCelsius(-100)); c.IsValid() {
		t.Errorf("below absolute zero: %v", c)
	}
}

func mass() *rapid.Generator[quantity.Mass] {
	return rapid.Custom(func(t *rapid.T) quantity.Mass {
		return quantity.Micrograms(rapid.Int64Range(-1e15, 1e15).Draw(t, "µg"))
	})
}

func TestMassAlgebra(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := quantity.Micrograms(rapid.Int64Range(-4e14, 4e14).Draw(t, "a"))
		b := quantity.Micrograms(rapid.Int64Range(-4e14, 4e14).Draw(t, "b"))
		if a.Add(b) != b.Add(a) || a.Add(b).Sub(b) != a || a.Neg().Neg() != a {
			t.Fatal("addition is not a group")
		}
		if (a.Compare(b) < 0) != (a.Sub(b).Sign() < 0) {
			t.Fatal("order and difference disagree")
		}
		n := rapid.Int64Range(1, 100).Draw(t, "n")
		if a.Divide(n).Times(n).Sub(a).Compare(quantity.Micrograms(n)) > 0 {
			t.Fatal("division is off by more than its rounding")
		}
	})
}

func TestTextRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mass().Draw(t, "m")
		p := quantity.MustPercent(fmt.Sprintf("%d.%06d %%", rapid.IntRange(-1000, 1000).Draw(t, "p"),
			rapid.IntRange(0, 999999).Draw(t, "frac")))
		c := quantity.Kelvin(float64(rapid.IntRange(1, 90_000_000).Draw(t, "q")) / 9000)
		d := quantity.DeltaCelsius(float64(rapid.IntRange(-90_000_000, 90_000_000).Draw(t, "d")) / 9000)
		v := quantity.Milliliters(rapid.Float64Range(-1e8, 1e8).Draw(t, "v"))
		l := quantity.Meters(rapid.Float64Range(-1e5, 1e5).Draw(t, "l"))
		type all struct {
			M quantity.Mass
			P quantity.Percent
			C quantity.Temperature
			D quantity.TemperatureDelta
			V quantity.Volume
			L quantity.Length
			E quantity.Elapsed
		}
		in := all{
			m,
			p,
			c,
			d,
			v,
			l,
			quantity.Elapsed(time.Duration(rapid.IntRange(-1e6, 1e6).Draw(t, "s")) * time.Second),
		}
		text, err := json.Marshal(in)
		if err != nil {
			t.Fatal(err)
		}
		var out all
		if err := json.Unmarshal(text, &out); err != nil {
			t.Fatal(err, string(text))
		}
		if diff := cmp.Diff(in, out); diff != "" {
			t.Fatalf("%s\n%s", text, diff)
		}
	})
}

// Three decimals of both scales are exact: writing and reading back loses nothing, and the
// two scales agree bit for bit.
func TestBothScalesExactToThreeDecimals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		milli := rapid.Int64Range(-273_000, 500_000).Draw(t, "thousandths")
		d := decimal.New(milli, -3)
		c, err := quantity.TemperatureOf(d, quantity.CelsiusScale)
		if err != nil || !c.Decimal(quantity.CelsiusScale).Equal(d) {
			t.Fatalf("%v °C became %v (%v)", d, c.Decimal(quantity.CelsiusScale), err)
		}
		f, err := quantity.TemperatureOf(d, quantity.FahrenheitScale)
		if err != nil || !f.Decimal(quantity.FahrenheitScale).Equal(d) {
			t.Fatalf("%v °F became %v (%v)", d, f.Decimal(quantity.FahrenheitScale), err)
		}
		asF := d.Mul(decimal.New(18, -1)).Add(decimal.New(32, 0))
		same, err := quantity.TemperatureOf(asF, quantity.FahrenheitScale)
		if err != nil || same != c {
			t.Fatalf("%v °C and %v °F differ (%v)", d, asF, err)
		}
		e := quantity.Celsius(21)
		if e.Add(c.Sub(e)) != c {
			t.Fatal("a point plus a difference is not the other point")
		}
	})
}

func TestPercentInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := quantity.Micrograms(rapid.Int64Range(1, 1e11).Draw(t, "m"))
		p := quantity.NewPercent(float64(rapid.IntRange(1, 400).Draw(t, "p")))
		back := p.Of(m.Over(p))
		// Over rounds to the microgram, and p percent of that half microgram is the error.
		if diff := back.Sub(m); diff.Compare(quantity.Micrograms(3)) > 0 || diff.Compare(quantity.Micrograms(-3)) < 0 {
			t.Fatalf("%v of the whole of %v is %v", p, m, back)
		}
		if got := p.Of(quantity.Grams(1000)).PercentOf(quantity.Grams(1000)); got != p {
			t.Fatalf("%v became %v", p, got)
		}
	})
}

func TestApportionAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := quantity.Micrograms(rapid.Int64Range(0, 1e15).Draw(t, "whole"))
		points := rapid.SliceOfN(rapid.Float64Range(0, 1e6), 1, 14).Draw(t, "shares")
		shares := []quantity.Percent{quantity.NewPercent(1)}
		for _, x := range points {
			shares = append(shares, quantity.NewPercent(x))
		}
		parts, err := quantity.Apportion(whole, shares)
		if err != nil {
			t.Fatal(err)
		}
		if quantity.Sum(parts...) != whole {
			t.Fatalf("parts add up to %v, not %v", quantity.Sum(parts...), whole)
		}
		total := decimal.Decimal{}
		for _, s := range shares {
			total = total.Add(s.Decimal())
		}
		for i, p := range parts {
			// |part·Σ − whole·share| < Σ microgram: within one microgram of the exact share.
			exact := whole.Decimal(quantity.Milligram).Mul(shares[i].Decimal())
			diff := p.Decimal(quantity.Milligram).Mul(total).Sub(exact).Abs()
			if diff.GreaterThanOrEqual(total.Shift(-3)) {
				t.Fatalf("part %d is %v, more than a microgram from its share", i, p)
			}
		}
	})
}

func TestApportionRefuses(t *testing.T) {
	hundred := quantity.MustPercent("100 %")
	for name, err := range map[string]error{
		"negative share": second(quantity.Apportion(quantity.Grams(1),
			[]quantity.Percent{hundred, quantity.MustPercent("-1 %")})),
		"negative whole": second(quantity.Apportion(quantity.Grams(-1), []quantity.Percent{hundred})),
		"invalid whole":  second(quantity.Apportion(quantity.Grams(math.NaN()), []quantity.Percent{hundred})),
		"no shares":      second(quantity.Apportion(quantity.Grams(1), nil)),
		"zero shares":    second(quantity.ApportionLike(quantity.Grams(1), []quantity.Mass{{}, {}})),
		"huge shares": second(quantity.Apportion(quantity.Grams(1),
			[]quantity.Percent{quantity.NewPercent(1e9), quantity.NewPercent(1e9)})),
	} {
		if err == nil {
			t.Errorf("%s was accepted", name)
		}
	}
	if parts, err := quantity.Apportion(quantity.Mass{}, nil); err != nil || len(parts) != 0 {
		t.Errorf("nothing split among none: %v, %v", parts, err)
	}
}

func second[T any](_ T, err error) error { return err }

func TestRoundToAScale(t *testing.T) {
	one := quantity.Grams(1)
	for in, want := range map[string][3]string{
		"12.4 g": {"12 g", "13 g", "12 g"}, "12.5 g": {"12 g", "13 g", "12 g"}, "13.5 g": {"14 g", "14 g", "13 g"},
		"−12.5 g": {"−12 g", "−12 g", "−13 g"}, "12 g": {"12 g", "12 g", "12 g"},
	} {
		m := quantity.MustMass(in)
		near, r := m.RoundTo(one)
		up, _ := m.RoundUp(one)
		down, _ := m.RoundDown(one)
		if near.String() != want[0] || up.String() != want[1] || down.String() != want[2] {
			t.Errorf("%s rounds to %v, up to %v, down to %v", in, near, up, down)
		}
		if near.Add(r) != m {
			t.Errorf("%s: rounded and residue do not add up", in)
		}
	}
	if r, _ := one.RoundTo(quantity.Mass{}); r.IsValid() {
		t.Error("a step of zero was accepted")
	}
}

// Settings of the decimal package are global and mutable; ours must not depend on them.
func TestHostileDecimalSettingsChangeNothing(t *testing.T) {
	read := func() string {
		b, err := json.Marshal([]any{quantity.Grams(12.5), quantity.MustPercent("66.666667 %"),
			quantity.MustTemperature("77.3 °F"), quantity.MustDelta("24 dF")})
		if err != nil {
			t.Fatal(err)
		}
		parts, err := quantity.Apportion(quantity.Grams(900),
			[]quantity.Percent{quantity.NewPercent(100), quantity.NewPercent(70), quantity.NewPercent(2),
				quantity.NewPercent(0.2)})
		return fmt.Sprint(string(b), parts, err, quantity.Ounces(1).Decimal(quantity.Ounce),
			quantity.MustMass("1 g").Decimal(quantity.Pound))
	}
	want := read()
	dp, mj, tz := decimal.DivisionPrecision, decimal.MarshalJSONWithoutQuotes, decimal.TrimTrailingZeros
	pp, em := decimal.PowPrecisionNegativeExponent, decimal.ExpMaxIterations
	defer func() {
		decimal.DivisionPrecision, decimal.MarshalJSONWithoutQuotes, decimal.TrimTrailingZeros = dp, mj, tz
		decimal.PowPrecisionNegativeExponent, decimal.ExpMaxIterations = pp, em
	}()
	decimal.DivisionPrecision, decimal.MarshalJSONWithoutQuotes = 1, true
	decimal.PowPrecisionNegativeExponent, decimal.ExpMaxIterations = 1, 1
	decimal.TrimTrailingZeros = !tz
	if got := read(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestDecimalsOfExtremeSizeAreRefusedQuickly(t *testing.T) {
	for _, d := range []decimal.Decimal{decimal.New(1, 1<<30), decimal.New(1, -1<<30), decimal.New(1, 9999),
		decimal.New(1, -9999)} {
		m, err := quantity.MassOf(d, quantity.Gram)
		if err == nil || m.IsValid() || len(err.Error()) > 300 {
			t.Errorf("accepted or echoed: %v", err)
		}
	}
	if m, err := quantity.MassOf(decimal.New(0, 1<<30), quantity.Gram); err != nil || !m.IsZero() {
		t.Errorf("zero with an exponent: %v, %v", m, err)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"780 g", "68 %", "24.5 °C", "24 Δ°F", "7 L", "24 cm", "4h30m", "−1,5 kg", "1e9 g",
		"\xff g", "5 ", "1 lb 4 oz", "-2lb3.5oz", "1 h 30 min", "1,5 h"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if m, err := quantity.ParseMass(s); err == nil {
			b, _ := m.MarshalText()
			if again, err := quantity.ParseMass(string(b)); err != nil || again != m {
				t.Errorf("%q → %s → %v, %v", s, b, again, err)
			}
		}
		if c, err := quantity.ParseTemperature(s); err == nil {
			b, _ := c.MarshalText()
			if again, err := quantity.ParseTemperature(string(b)); err != nil || again != c {
				t.Errorf("%q → %s → %v, %v", s, b, again, err)
			}
		}
		_, _ = quantity.ParsePercent(s)
		_, _ = quantity.ParseDelta(s)
		_, _ = quantity.ParseVolume(s)
		_, _ = quantity.ParseLength(s)
		if d, err := quantity.ParseDuration(s); err == nil {
			b, _ := quantity.Elapsed(d).MarshalText()
			if again, err := quantity.ParseDuration(string(b)); err != nil || again != d {
				t.Errorf("%q → %s → %v, %v", s, b, again, err)
			}
		}
		_ = quantity.Excerpt(s)
	})
}

func BenchmarkApportion12(b *testing.B) {
	shares := make([]quantity.Percent, 12)
	for i := range shares {
		shares[i] = quantity.NewPercent(float64(100 / (i + 1)))
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := quantity.Apportion(quantity.Grams(5318), shares); err != nil {
			b.Fatal(err)
		}
	}
}
