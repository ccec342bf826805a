package working_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// Each reason that an input is refused for has its own sentence, with as much of what was given and is accepted as is
// known.
func TestEveryReasonIsTold(t *testing.T) {
	want := quantity.Tell("test.want_bread", "a bread")
	for id, reason := range map[string]error{
		"error.refused": nil, "error.required": quantity.ErrRequired, "error.out_of_range": quantity.ErrOutOfRange,
		"error.unit": quantity.ErrUnit, "error.too_precise": quantity.ErrTooPrecise,
		"error.inconsistent": quantity.ErrInconsistent, "error.outside_model": quantity.ErrModelRange,
		"error.wrong_form": quantity.ErrForm,
	} {
		e := &quantity.InputError{Err: reason}
		m := working.Problem(e)
		if m.ID() != id {
			t.Errorf("%v is %s %q", reason, m.ID(), m)
		}
		says := m.String()
		for _, c := range []struct {
			got  any
			want quantity.Phrase
			text string
		}{
			{"stone", quantity.Phrase{}, says + ": got stone"}, {"", want, says + ": want a bread"},
			{quantity.Grams(3), want, says + ": got 3 g, want a bread"}, {nil, quantity.Phrase{}, says},
		} {
			e.Got, e.Want = c.got, c.want
			if got := working.Problem(e).String(); got != c.text {
				t.Errorf("%q, want %q", got, c.text)
			}
		}
	}
	if got := working.Problem(&quantity.InputError{GoPath: "Flour", Err: errors.New("is damp")}).String(); got !=
		"Flour: is damp" {
		t.Error(got)
	}
}

type (
	basket  uint8
	pointed struct{ name string }
)

func (b basket) String() string             { return fmt.Sprintf("basket %d", uint8(b)) }
func (p *pointed) Message() working.Message { return working.Say(p.name) }

// What is no quantity is told as what it is: a phrase and an error by their sentences, a count without a name as a
// number, nothing as nothing.
func TestOtherArguments(t *testing.T) {
	var nobody *pointed
	m := working.Tell("test.others", "%v|%v|%v|%d|%v|%v|%v|%v", quantity.Tell("test.of", "%v of %s", quantity.Grams(100),
		"rye"), errors.New("no oven"), basket(2), uint(7), nil, nobody, &pointed{"board"}, struct{ A int }{1})
	for units, want := range map[working.Units]string{
		working.Metric:      "100 g of rye|no oven|basket 2|7|||board|{1}",
		working.USCustomary: "3.5 oz of rye|no oven|basket 2|7|||board|{1}",
	} {
		if got := m.Text(working.Reader{Units: units}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	text, err := json.Marshal(m)
	var back working.Message
	if err != nil || json.Unmarshal(text, &back) != nil || back != m {
		t.Errorf("%s, %v", text, err)
	}
}

// Amounts as a kitchen reads them; a pound is 453.59237 g, a US quart 32 fluid ounces or 192 teaspoons.
func TestAmountsForReaders(t *testing.T) {
	lb := func(n float64) quantity.Mass { return quantity.Pounds(n) }
	qt := func(n float64) quantity.Volume { return quantity.Milliliters(n * 946.352946) }
	for _, c := range []struct{ metric, us, wantMetric, wantUS string }{
		{working.Metric.Mass(lb(1)), working.USCustomary.Mass(lb(1)), "453.6 g", "1 lb"},
		{working.Metric.Mass(quantity.Grams(10)), working.USCustomary.Mass(lb(1.5)), "10 g", "1 lb 8.0 oz"},
		{working.Metric.Mass(quantity.Grams(9)), working.USCustomary.Mass(lb(0.5)), "9.0 g", "8.0 oz"},
		{working.Metric.Mass(quantity.Grams(-780)), working.USCustomary.Mass(lb(-1.5)), "−780 g", "−1 lb 8.0 oz"},
		{working.Metric.Mass(quantity.Grams(9.96)), working.USCustomary.Mass(lb(0.94 / 16)), "10.0 g", "0.94 oz"},
		{working.Metric.Volume(qt(1)), working.USCustomary.Volume(qt(1)), "946 mL", "1.0 qt"},
		{working.Metric.Volume(qt(6)), working.USCustomary.Volume(qt(1.0 / 63)), "5.7 L", "0.5 fl oz"},
		{working.Metric.Volume(qt(1.0 / 192)), working.USCustomary.Volume(qt(1.0 / 192)), "4.93 mL", "1.00 tsp"},
		{working.Metric.Volume(qt(0)), working.USCustomary.Volume(qt(0)), "0 mL", "0.0 fl oz"},
	} {
		if c.metric != c.wantMetric || c.us != c.wantUS {
			t.Errorf("%q and %q, want %q and %q", c.metric, c.us, c.wantMetric, c.wantUS)
		}
	}
}

// A length has its unit by its size: feet from ten, and meters from three; a percentage its places, or all it has.
func TestLengthsAndPercentagesForReaders(t *testing.T) {
	ft := func(n float64) quantity.Length { return quantity.Meters(n * 0.3048) }
	for _, c := range []struct{ got, want string }{
		{working.USCustomary.Length(ft(10)), "10 ft"}, {working.USCustomary.Length(ft(9.99)), "119.9 in"},
		{working.Metric.Length(quantity.Meters(3)), "3 m"}, {working.Metric.Length(quantity.Meters(2.99)), "299.0 cm"},
		{working.Reader{}.Percent(quantity.NewPercent(12.5), 0), "12 %"},
		{working.Reader{}.Percent(quantity.NewPercent(12.5), -1), "12.5 %"},
		{working.Tell("test.wide", "%012d", 7).String(), "000000000007"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// The largest of several is exact where it is: 4, beside a third that is not.
func TestLargestIsExact(t *testing.T) {
	third := working.Num(1).Over(working.Given("t", say("three"), 3))
	four := working.Given("b", say("four"), 4)
	for _, c := range []struct {
		by    working.Expr
		exact bool
	}{{working.Max(third, four), true}, {working.Max(four, third), true}, {working.Min(third, four), false}} {
		d := working.Derive(say("x"))
		d.Find(working.Finding{Name: say("it"), Symbol: "y", By: c.by, Decimals: 4, Source: working.Algebra()})
		if l := d.Working().Lines(working.Reader{})[0]; l.Exact != c.exact {
			t.Errorf("%s is %s, exactly: %v", l.Formula, l.Value, l.Exact)
		}
	}
}

// The data form of a derivation holds every symbol with its value and as it is shown.
func TestSymbolsInTheDataForm(t *testing.T) {
	var got struct {
		Symbols []struct {
			Name, Shown string
			Value       struct {
				Number float64
				Unit   string
			}
		}
	}
	text, err := json.Marshal(water())
	if err != nil || json.Unmarshal(text, &got) != nil || len(got.Symbols) != 5 {
		t.Fatalf("%s, %v", text, err)
	}
	if s := got.Symbols[1]; s.Name != "T" || s.Shown != "26 °C" || s.Value.Number != 26 || s.Value.Unit != "°C" {
		t.Errorf("%+v", s)
	}
}

// A caution in short has its subject in front, and without a short form is told in full.
func TestCautionsInBrief(t *testing.T) {
	c := working.Caution{Subject: "burns", Text: working.Tell("test.pots", "pots are hot")}
	if c.Brief() != c.Message() || c.String() != "burns: pots are hot" || c.Code() != "test.pots" {
		t.Errorf("%q, %q, %q", c.Brief(), c, c.Code())
	}
	c.Short = working.Tell("test.hot", "hot")
	if got := c.Brief().String(); got != "burns: hot" {
		t.Error(got)
	}
	for _, u := range quantity.Values[working.Units]() {
		trial.Travels(t, u)
	}
	for _, l := range quantity.Values[working.Level]() {
		trial.Travels(t, l)
	}
	for _, s := range quantity.Values[working.ClockStyle]() {
		trial.Travels(t, s)
	}
	for _, s := range quantity.Values[working.Standing]() {
		trial.Travels(t, s)
	}
}
