package working_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// sizes are units with what one of them is in the first of its dimension, from NIST SP 811 (2008), appendix B, and
// by definition.
var sizes = [][]struct {
	unit working.Unit
	size float64
}{
	{{working.Gram, 1}, {working.Kilogram, 1000}, {working.Ounce, 28.349523125}, {working.Pound, 453.59237}},
	{{working.Centimeter, 1}, {working.Meter, 100}, {working.Inch, 2.54}, {working.Foot, 30.48}},
	{{working.Milliliter, 1}, {working.Liter, 1000}, {working.FluidOunce, 29.5735295625}, {working.Quart, 946.352946}},
	{{working.Second, 1}, {working.Minute, 60}, {working.Hour, 3600}},
	{{working.DeltaCelsius, 9}, {working.DeltaFahrenheit, 5}},
	{{working.Percent, 1}, {working.Number, 100}},
}

// Every unit converts into every other of its dimension, and the line of conversion that is printed says the same.
func TestUnitsConvertAsPrinted(t *testing.T) {
	check := func(from, to working.Unit, x, want float64) {
		t.Helper()
		got := working.Amount(x, from, 6).In(to)
		if !(math.Abs(got.Number-want) <= 1e-9*math.Max(1, math.Abs(want))) || got.Unit != to {
			t.Errorf("%v %s is %v %s, want %v", x, from, got.Number, to, want)
		}
		d := working.Derive(say("conversion"))
		d.Find(working.Finding{
			Name: say("converted"), Symbol: "y", Unit: to, Decimals: 3, Source: working.Algebra(),
			By: working.Given("x", say("given"), working.Amount(x, from, 2)).In(to).Plus(0),
		})
		workcheck.Verify(t, d.Working())
		if a := d.Working().Answer().Number; !(math.Abs(a-want) <= 1e-9*math.Max(1, math.Abs(want))) {
			t.Errorf("the derivation gives %v for %v %s in %s", a, x, from, to)
		}
		if lines := d.Working().Lines(working.Reader{}); from != to && len(lines) != 2 {
			t.Errorf("%s to %s has %d lines", from, to, len(lines))
		}
	}
	for _, dimension := range sizes {
		for _, from := range dimension {
			for _, to := range dimension {
				check(from.unit, to.unit, 12.5, 12.5*from.size/to.size)
			}
		}
	}
	for _, p := range []struct{ c, f, k float64 }{{0, 32, 273.15}, {100, 212, 373.15}, {-40, -40, 233.15},
		{24, 75.2, 297.15}} {
		check(working.Celsius, working.Fahrenheit, p.c, p.f)
		check(working.Fahrenheit, working.Celsius, p.f, p.c)
		check(working.Celsius, working.Kelvin, p.c, p.k)
		check(working.Kelvin, working.Celsius, p.k, p.c)
		check(working.Fahrenheit, working.Kelvin, p.f, p.k)
		check(working.Kelvin, working.Fahrenheit, p.k, p.f)
	}
	for _, wrong := range [][2]working.Unit{{working.Gram, working.Celsius}, {"kJ", "kJ/K"},
		{working.Celsius, working.DeltaCelsius}} {
		if working.Amount(1, wrong[0], 0).In(wrong[1]).IsValid() {
			t.Errorf("%s became %s", wrong[0], wrong[1])
		}
	}
}

// What a number is shown as: its decimals, powers of ten, minutes that are hours, units of the reader.
func TestValuesAsShown(t *testing.T) {
	for _, c := range []struct {
		v          any
		metric, us string
	}{
		{quantity.Grams(780), "780 g", "27.51 oz"},
		{quantity.Grams(12.5), "12.5 g", "0.441 oz"},
		{quantity.Celsius(24.5), "24.5 °C", "76.1 °F"},
		{quantity.DeltaFahrenheit(24), "13.333 Δ°C", "24 Δ°F"},
		{quantity.Centimeters(20), "20 cm", "7.9 in"},
		{quantity.Meters(3), "3 m", "10 ft"},
		{quantity.Centimeters(299), "299 cm", "117.7 in"},
		{quantity.Liters(1.5), "1500 mL", "50.72 fl oz"},
		{quantity.NewPercent(12), "12 %", "12 %"},
		{working.Amount(5.043e-7, "m²/s", 10), "5.043 × 10⁻⁷ m²/s", "5.043 × 10⁻⁷ m²/s"},
		{working.Amount(-1.5e-5, working.Number, 7), "−1.50 × 10⁻⁵", "−1.50 × 10⁻⁵"},
		{working.Amount(1e-4, "kg", 4), "0.0001 kg", "0.00022 lb"},
		{working.Amount(59.4, working.Minute, 0), "59 min", "59 min"},
		{working.Amount(60, working.Minute, 0), "60 min (1h)", "60 min (1h)"},
		{90 * time.Minute, "90 min (1h30m)", "90 min (1h30m)"},
		{quantity.Elapsed(45 * time.Second), "0.75 min", "0.75 min"},
		{working.Amount(1.5, working.Hour, 1), "1.5 h (1h30m)", "1.5 h (1h30m)"},
		{working.Amount(-0.0001, "x", 2), "0.00 x", "0.00 x"},
		{3, "3", "3"}, {int64(-4), "−4", "−4"}, {float32(0.5), "0.5", "0.5"},
		{math.Pi, "3.141593", "3.141593"},
		{time.Date(2026, 11, 28, 0, 5, 0, 0, time.UTC), "Sat 00:05", "Sat 12:05 am"},
		{time.Date(2026, 11, 28, 12, 5, 0, 0, time.UTC), "Sat 12:05", "Sat 12:05 pm"},
		{quantity.Temperature{}, "no value", "no value"}, {"text", "no value", "no value"},
		{math.Inf(1), "no value", "no value"},
	} {
		v := working.ValueOf(c.v)
		if got := v.String(); got != c.metric {
			t.Errorf("%v: %q, want %q", c.v, got, c.metric)
		}
		if got := v.Text(us); got != c.us {
			t.Errorf("%v for a US reader: %q, want %q", c.v, got, c.us)
		}
		if v.IsValid() == (c.metric == "no value") {
			t.Errorf("%v: valid is %v", c.v, v.IsValid())
		}
	}
	for _, d := range []struct{ given, want int }{{-3, 0}, {3, 3}, {40, 12}} {
		if got := working.Amount(1, "x", d.given).Decimals; got != d.want {
			t.Errorf("%d decimals became %d", d.given, got)
		}
	}
}

// Results are shown with five significant digits unless it is said otherwise, and without digits that say nothing.
func TestDecimalsOfResults(t *testing.T) {
	for _, c := range []struct {
		by       working.Expr
		decimals int
		want     string
	}{
		{working.Num(1).Over(3), 0, "≈ 0.33333"}, {working.Num(100).Over(3), 0, "≈ 33.333"},
		{working.Num(1e6).Over(3), 0, "≈ 333333"},
		{working.Num(1).Over(4), 0, "= 0.25"}, {working.Num(1).Over(4), 1, "≈ 0.2"},
		{working.Num(3).Over(4), working.WholeNumber, "≈ 1"},
		{working.Num(2).ToThe(0.5), 3, "≈ 1.414"}, {working.Num(7).Minus(7), 0, "= 0"},
		{working.Num(1).Over(4), 3, "= 0.250"},
		{working.Num(2).ToThe(3), 0, "= 8"}, {working.Num(1).Over(30000), 0, "≈ 3.3333 × 10⁻⁵"},
	} {
		d := working.Derive(say("x"))
		d.Find(working.Finding{Name: say("x"), Symbol: "x", By: c.by, Decimals: c.decimals, Source: working.Algebra()})
		l := d.Working().Lines(working.Reader{})[0]
		relation := "≈ "
		if l.Exact {
			relation = "= "
		}
		if got := relation + l.Value; got != c.want {
			t.Errorf("%v with %d decimals: %q, want %q", c.by, c.decimals, got, c.want)
		}
		workcheck.Verify(t, d.Working())
	}
}

// Parentheses stand where they are needed and where the formula groups, and nowhere else.
func TestParentheses(t *testing.T) {
	a, b, c := working.Given("a", say("a"), 2), working.Given("b", say("b"), -3), working.Given("c", say("c"), 5)
	for _, k := range []struct {
		x                working.Expr
		formula, numbers string
	}{
		{a.Plus(b).Plus(c), "a + b + c", "2 + (−3) + 5"},
		{a.Plus(b.Plus(c)), "a + (b + c)", "2 + (−3 + 5)"},
		{a.Minus(b.Minus(c)), "a − (b − c)", "2 − (−3 − 5)"},
		{b.Times(a).Over(c), "b × a ÷ c", "−3 × 2 ÷ 5"},
		{a.Over(b.Times(c)), "a ÷ (b × c)", "2 ÷ (−3 × 5)"},
		{a.Plus(b).Times(c), "(a + b) × c", "(2 + (−3)) × 5"},
		{b.ToThe(2), "b^2", "(−3)^2"},
		{a.Plus(c).ToThe(a.Neg()), "(a + c)^(−a)", "(2 + 5)^(−2)"},
		{a.ToThe(c).ToThe(2), "(a^c)^2", "(2^5)^2"},
		{b.Neg(), "−b", "−(−3)"},
		{a.Plus(c).Neg(), "−(a + c)", "−(2 + 5)"},
		{a.Neg().Plus(c), "−a + c", "−2 + 5"},
		{working.Exp(a.Plus(b)).Times(working.Sqrt(c)), "exp(a + b) × sqrt(c)", "exp(2 + (−3)) × sqrt(5)"},
		{working.Max(a, b, c).Minus(working.Min(a, working.Abs(b))), "max(a, b, c) − min(a, abs(b))",
			"max(2, −3, 5) − min(2, abs(−3))"},
		{working.Pi().Times(working.Num(1.5e-6)), "π × (1.5 × 10^(−6))", "π × (1.5 × 10^(−6))"},
		{a.Over(working.Num(2.5e9)), "a ÷ (2.5 × 10^9)", "2 ÷ (2.5 × 10^9)"},
		{a.Times(12345678), "a × 12345678", "2 × 12345678"},
		{working.Floor(c.Over(a)).Plus(working.Ceil(c.Over(a))), "floor(c ÷ a) + ceil(c ÷ a)", "floor(5 ÷ 2) + ceil(5 ÷ 2)"},
		{working.Sin(a).Plus(working.Cos(a)).Plus(working.Tan(a)), "sin(a) + cos(a) + tan(a)", "sin(2) + cos(2) + tan(2)"},
		{working.Log10(c).Minus(working.Ln(a)), "log10(c) − ln(a)", "log10(5) − ln(2)"},
		{working.Sum(), "0", "0"}, {working.Sum(a, c), "a + c", "2 + 5"}, {c.Share(), "c ÷ 100", "5 ÷ 100"},
	} {
		d := working.Derive(say("x"))
		d.Find(working.Finding{Name: say("x"), Symbol: "x", By: k.x, Decimals: 9, Note: say("as listed"),
			Source: working.Algebra()})
		l := d.Working().Lines(working.Reader{})[0]
		if l.Formula != k.formula || l.Numbers != k.numbers || k.x.String() != k.formula {
			t.Errorf("%s and %s, want %s and %s", l.Formula, l.Numbers, k.formula, k.numbers)
		}
		workcheck.Verify(t, d.Working())
	}
	german := working.Reader{Language: working.Language{Decimal: ","}}
	d := working.Derive(say("x"))
	d.Find(working.Finding{Name: say("x"), Symbol: "x", By: working.Max(a.Times(1.5), c), Source: working.Algebra()})
	if l := d.Working().Lines(german)[0]; l.Numbers != "max(2 × 1,5; 5)" {
		t.Error(l.Numbers)
	}
	for _, broken := range []working.Expr{a.Plus("x"), a.Times(nil), a.Plus(working.Expr{}), a.Plus(b).In(working.Gram)} {
		d := working.Derive(say("x"))
		d.Find(working.Finding{Name: say("x"), Symbol: "x", By: broken, Source: working.Algebra()})
		if len(workcheck.Faults(d.Working())) == 0 {
			t.Errorf("%v has no fault", broken)
		}
	}
}

// Two symbols of one name that do not stand for the same get numbers; the same symbol keeps its name wherever it
// stands.
func TestNamesAreToldApart(t *testing.T) {
	one := working.Given("m", say("flour"), quantity.Grams(1))
	d := working.Derive(say("x"))
	d.Find(working.Finding{
		Name: say("sum"), Symbol: "m", Unit: working.Gram, Source: working.Algebra(),
		By: one.Plus(working.Given("m", say("water"), quantity.Grams(2))).
			Plus(working.Given("m_2", say("salt"), quantity.Grams(3))).
			Plus(working.Given("T_a", say("x"), quantity.Grams(4))).
			Plus(working.Given("T_a", say("y"), quantity.Grams(5))).
			Plus(working.Given("m", say("flour"), quantity.Grams(1))),
	})
	l := d.Working().Lines(working.Reader{})[0]
	if l.Formula != "m + m_2 + m_2_2 + T_a + T_a2 + m" || l.Symbol != "m_3" || len(l.Where) != 5 {
		t.Errorf("%s = %s, %v", l.Symbol, l.Formula, l.Where)
	}
	other := working.Derive(say("y"))
	sum := other.Add(d.Working())
	other.Find(
		working.Finding{
			Name:   say("twice"),
			Symbol: "m",
			By:     sum.Times(2).Plus(one),
			Unit:   working.Gram,
			Source: working.Algebra(),
		},
	)
	all := other.Working().Lines(working.Reader{})
	if all[1].Formula != "m_3 × 2 + m" || all[1].Where[0].Step != 1 || all[1].Where[1].Step != 0 || all[1].Step != 2 {
		t.Errorf("%+v", all[1])
	}
	if x := working.Derive(say("z")).Add(working.Working{}); x.String() != "" {
		t.Error("nothing has a last symbol")
	}
}

func TestClocksAndDurationsForReaders(t *testing.T) {
	at := func(h, m int) time.Time { return time.Date(2026, 11, 28, h, m, 0, 0, time.UTC) }
	for _, c := range []struct {
		got, want string
	}{
		{us.Clock(at(0, 0)), "12:00 am"}, {us.Clock(at(11, 59)), "11:59 am"}, {us.Clock(at(12, 0)), "12:00 pm"},
		{us.Clock(at(23, 7)), "11:07 pm"},
		{working.Reader{Language: working.Language{Clock: working.Clock12}}.Clock(at(13, 0)), "1:00 pm"},
		{working.Reader{Units: working.USCustomary, Language: working.Language{Clock: working.Clock24}}.Clock(at(13, 0)),
			"13:00"},
		{working.Reader{Zone: time.FixedZone("east", 3600)}.DateClock(at(23, 30)), "Sunday 29 November 2026, 00:30"},
		{working.Reader{}.Clock(at(14, 34).Add(29 * time.Second)), "14:34"},
		{working.Reader{}.Clock(at(14, 34).Add(30 * time.Second)), "14:35"},
		{working.Reader{}.DateClock(at(23, 59).Add(40 * time.Second)), "Sunday 29 November 2026, 00:00"},
		{working.Reader{}.Elapsed(0), "0m"}, {working.Reader{}.Elapsed(59 * time.Second), "59s"},
		{working.Reader{}.Elapsed(time.Hour), "1h"},
		{working.Reader{}.Elapsed(61 * time.Second), "1m01s"},
		{working.Reader{}.Elapsed(time.Hour + time.Second), "1h00m01s"},
		{working.Reader{}.Elapsed(-90 * time.Minute), "−1h30m"}, {working.Reader{}.Elapsed(499 * time.Millisecond), "0m"},
		{working.Tell("t.w", "%v", quantity.Window{From: at(6, 40), To: at(7, 25)}).String(), "Sat 06:40 to 07:25"},
		{working.Tell("t.w", "%v", quantity.Window{From: at(6, 40), To: at(31, 25)}).String(), "Sat 06:40 to Sun 07:25"},
		{working.Reader{}.Number(1234.5, -1), "1234.5"}, {working.Reader{}.Number(1e-9, -1), "1e−09"},
		{working.Reader{}.Number(math.NaN(), 2), "NaN"},
		{working.Reader{}.Number(1, math.MaxInt), "1.000000000000000"}, {working.Reader{}.Number(-2.345, 2), "−2.35"},
		{working.Reader{}.Number(0.0034, 1), "0.0034"}, {working.Reader{}.Number(0.06, 1), "0.1"},
		{working.Reader{}.Number(0.04, 1), "0.040"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
	if text := (working.Reader{}).Elapsed(math.MinInt64); !strings.HasPrefix(text, "−") {
		t.Error(text)
	}
}

// Ranges with and without what is likely and what is claimed.
func TestRangesForReaders(t *testing.T) {
	c := quantity.Celsius
	for _, k := range []struct {
		r          any
		metric, us string
	}{
		{quantity.Range[quantity.Temperature]{Low: c(20), Likely: c(25), High: c(30), Probability: quantity.NewPercent(80)},
			"20.0 °C to 30.0 °C (80 %), likely 25.0 °C", "68 °F to 86 °F (80 %), likely 77 °F"},
		{quantity.Range[quantity.Temperature]{Low: c(20), High: c(30), Probability: quantity.NewPercent(80)},
			"20.0 °C to 30.0 °C (80 %)", "68 °F to 86 °F (80 %)"},
		{quantity.Range[quantity.Temperature]{Low: c(20), Likely: c(25), High: c(30)}, "20.0 °C to 30.0 °C, likely 25.0 °C",
			"68 °F to 86 °F, likely 77 °F"},
		{quantity.Range[quantity.Temperature]{Low: c(20), High: c(30)}, "20.0 °C to 30.0 °C", "68 °F to 86 °F"},
		{quantity.Range[quantity.Percent]{Low: quantity.NewPercent(0), High: quantity.NewPercent(2)}, "0.0 % to 2.0 %",
			"0.0 % to 2.0 %"},
	} {
		m := working.Tell("t.r", "%.1f", k.r)
		if m.String() != k.metric || m.Text(us) != k.us {
			t.Errorf("%q and %q, want %q and %q", m, m.Text(us), k.metric, k.us)
		}
	}
	if got := fmt.Sprint(working.Or(), "|", working.And("a"), "|", working.Or("a", "b"), "|",
		working.Or("a", "b", "c", 4)); got != "|a|a or b|a, b, c or 4" {
		t.Error(got)
	}
}

func TestTiesGoToTheEvenDigitAsOnTheScreen(t *testing.T) {
	for celsius, want := range map[float64]string{91.55: "91.6 °C", 28.45: "28.4 °C", -28.45: "−28.4 °C",
		28.4501: "28.5 °C", 0.05: "0.0 °C", 0.15: "0.2 °C"} {
		if got := working.Amount(celsius, working.Celsius, 1).String(); got != want {
			t.Errorf("%v is %s, want %s", celsius, got, want)
		}
		if screen := (working.Reader{}).Temperature(quantity.Celsius(celsius), 1); screen != want {
			t.Errorf("the screen says %s of %v", screen, celsius)
		}
	}
}
