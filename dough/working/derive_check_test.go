package working_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
	"pgregory.net/rapid"
)

func everyDerivation() []working.Working {
	return []working.Working{water(), scaling(), cooling(), arrhenius(), table(), clock(), remainder(), vat()}
}

func TestDerivationsEvaluateAsPrinted(t *testing.T) {
	for _, w := range everyDerivation() {
		workcheck.Verify(t, w)
	}
}

// formula draws an expression over a few symbols of all kinds.
func formula(t *rapid.T, symbols []working.Expr, depth int) working.Expr {
	if depth == 0 || rapid.IntRange(0, 4).Draw(t, "leaf") == 0 {
		if rapid.Bool().Draw(t, "literal") {
			return working.Num(float64(rapid.IntRange(-2000, 2000).Draw(t, "n")) / 100)
		}
		return rapid.SampledFrom(symbols).Draw(t, "symbol")
	}
	x := formula(t, symbols, depth-1)
	y := formula(t, symbols, depth-1)
	switch rapid.IntRange(0, 10).Draw(t, "op") {
	case 0, 1:
		return x.Plus(y)
	case 2, 3:
		return x.Minus(y)
	case 4, 5:
		return x.Times(y)
	case 6:
		return x.Over(working.Abs(y).Plus(0.25))
	case 7:
		return x.Neg()
	case 8:
		return working.Abs(x).Plus(0.5).ToThe(rapid.SampledFrom([]float64{2, 0.5, -1, 1.25}).Draw(t, "power"))
	case 9:
		return working.Ln(working.Abs(x).Plus(0.01))
	}
	return working.Max(x, y)
}

// Whatever the formula, the units and the values: every line that is printed evaluates to what it says, for both
// readers.
func TestAnyFormulaEvaluatesAsPrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(label string) float64 { return float64(rapid.IntRange(-500000, 500000).Draw(t, label)) / 3000 }
		symbols := []working.Expr{
			working.Given("T", say("temperature"), quantity.Celsius(number("T"))),
			working.Given("F", say("friction"), quantity.DeltaCelsius(number("F"))),
			working.Given("m", say("mass"), quantity.Grams(number("m"))),
			working.Given("m", say("another mass"), quantity.Grams(number("m2"))),
			working.Given("p", say("percentage"), quantity.NewPercent(number("p"))),
			working.Given("c", say("heat"), working.Amount(number("c"), "kJ/kg", 3)),
			working.Given("x", say("number"), number("x")),
		}
		d := working.Derive(say("x"))
		unit := rapid.SampledFrom([]working.Unit{working.Celsius, working.Gram, working.Number, "kJ/K"}).Draw(t, "unit")
		a := d.Find(
			working.Finding{
				Name:   say("a"),
				Symbol: "a",
				By:     formula(t, symbols, 3),
				Unit:   unit,
				Note:   say("at random"), // where there is no arithmetic to show
				Source: working.Algebra(),
			},
		)
		d.Find(
			working.Finding{
				Name:     say("b"),
				Symbol:   "m",
				By:       formula(t, append(symbols, a, a), 2),
				Unit:     working.Gram,
				Decimals: 2,
				Note:     say("at random"),
				Source:   working.Algebra(),
			},
		)
		for _, s := range d.Working().Lines(working.Reader{}) {
			if strings.Contains(s.Value, "no value") || strings.Contains(s.Value, "Inf") || len(s.Value) > 20 {
				t.Skip("out of bounds")
			}
		}
		if b := math.Abs(d.Working().Answer().Number); b > 1e9 {
			t.Skip("out of bounds")
		}
		for _, fault := range workcheck.Faults(d.Working()) {
			t.Error(fault)
		}
	})
}

func TestTheLibraryHasToAgree(t *testing.T) {
	d := working.Derive(say("x"))
	d.Find(
		working.Finding{
			Name:   say("a"),
			Symbol: "a",
			By:     working.Given("b", say("b"), 2).Times(3),
			Is:     working.Amount(6.2, "kJ", 1),
			Source: working.Algebra(),
		},
	)
	if len(workcheck.Faults(d.Working())) == 0 {
		t.Error("a result that its expression does not give passes")
	}
	e := working.Derive(say("x"))
	e.Find(working.Finding{Name: say("a"), Symbol: "a", Is: quantity.Grams(3), Source: working.Algebra()})
	if len(workcheck.Faults(e.Working())) == 0 {
		t.Error("a step without arithmetic that does not say where to look passes")
	}
}

func TestEveryTellingIsWhole(t *testing.T) {
	for _, w := range everyDerivation() {
		for _, u := range []working.Units{working.Metric, working.USCustomary} {
			for _, l := range []working.Level{working.Everything, working.WithNumbers, working.InWords} {
				tell := working.Telling{
					Reader:   working.Reader{Units: u, Language: german()},
					Level:    l,
					Width:    60,
					Document: true,
				}
				text, markdown, tex := tell.Text(w), tell.Markdown(w), tell.LaTeX(w)
				if !strings.Contains(tex, "\\begin{document}") || !strings.Contains(tex, "\\end{document}") {
					t.Error("no document")
				}
				plain := strings.NewReplacer(`\{`, "", `\}`, "", `\\`, "").Replace(tex)
				if strings.Count(plain, "{") != strings.Count(plain, "}") || strings.Count(tex, "$")%2 != 0 ||
					strings.Contains(tex, "[U+") {
					t.Errorf("LaTeX is broken:\n%s", tex)
				}
				for _, r := range tex {
					if r > 0x17f {
						t.Errorf("pdflatex cannot show %q", r)
					}
				}
				for _, one := range []string{text, markdown} {
					if strings.Contains(one, "NaN") || strings.Contains(one, "%!") ||
						strings.Contains(one, "no value") {
						t.Error(one)
					}
				}
				for i := range w.Len() {
					m := tell.MathML(w, i+1)
					if strings.Count(m, "<mrow>") != strings.Count(m, "</mrow>") || !strings.Contains(m, "<math") {
						t.Error(m)
					}
				}
			}
		}
		b, err := json.Marshal(w)
		if err != nil || !json.Valid(b) || !strings.Contains(string(b), `"symbols":[{"id":"s1"`) {
			t.Errorf("%v: %s", err, b)
		}
	}
	if (working.Telling{}).MathML(water(), 2) != "" || (working.Telling{}).MathML(water(), 0) != "" {
		t.Error("a step that is not there is told")
	}
}

func TestALongLineOfLaTeXCanBeBroken(t *testing.T) {
	var terms []working.Expr
	for i := range 40 {
		terms = append(terms,
			working.Given(fmt.Sprintf("m_%d", i+1), working.Say("line %d", i+1), quantity.Grams(float64(i)+0.25)))
	}
	d := working.Derive(say("Sum"))
	d.Find(
		working.Finding{
			Name:   say("sum"),
			Symbol: "D",
			By:     working.Sum(terms...),
			Is:     quantity.Grams(790),
			Source: working.Algebra(),
		},
	)
	workcheck.Verify(t, d.Working())
	tex := d.Working().LaTeX()
	if strings.Count(tex, "flushleft") != 4 || strings.Contains(tex, `\left`) {
		t.Error(tex)
	}
	for _, line := range strings.Split(tex[strings.Index(tex, "align*"):strings.LastIndex(tex, "align*")], "\n") {
		if utf8.RuneCountInString(line) > 90 {
			t.Error(line)
		}
	}
}

func TestAnswerIsTheLastValue(t *testing.T) {
	us := working.Reader{Units: working.USCustomary}
	if a := water().Answer(); a.String() != "22 °C" || a.Text(us) != "71.6 °F" || a.Number != 22 {
		t.Error(a)
	}
	if a := cooling().Answer(); a.String() != "73 min (1h13m)" {
		t.Error(a)
	}
	if a := clock().Answer(); a.String() != "Sat 23:35" || a.Text(us) != "Sat 11:35 pm" {
		t.Error(a)
	}
	if (working.Working{}).Answer().IsValid() {
		t.Error("nothing has an answer")
	}
}

// A quantity is kept to its last quantum. Where that carries a result onto a tie that its arithmetic does not stand at,
// in the unit of either reader, one digit more is shown, and no more than that; elsewhere none.
func TestResultBesideATieShowsAnotherDigit(t *testing.T) {
	for _, c := range []struct {
		name          string
		by            float64
		is            any
		unit          working.Unit
		decimals      int
		metric, other string
	}{
		{"°C onto a tie", 100.61496, quantity.Celsius(100.61496), working.Celsius, 2, "100.615 °C", "213.107 °F"},
		{"°F onto a tie", 82.091675, quantity.Celsius(82.091675), working.Celsius, 2, "82.092 °C", "179.765 °F"},
		{"beside no tie", 100.61396, quantity.Celsius(100.61396), working.Celsius, 2, "100.61 °C", "213.11 °F"},
		{"a second over a tie", 13.548, 13*time.Minute + 33*time.Second, working.Minute, 1, "13.55 min", "13.55 min"},
		{"no tie of a duration", 13.517, 13*time.Minute + 31*time.Second, working.Minute, 1, "13.5 min", "13.5 min"},
	} {
		d := working.Derive(say("Tie"))
		x := d.Find(working.Finding{Name: say("half"), Symbol: "y", Source: working.Algebra(), Is: c.is,
			By: working.Given("x", say("whole"), working.Amount(2*c.by, c.unit, 5)).Over(2), Decimals: c.decimals})
		d.Find(working.Finding{Name: say("double"), Symbol: "u", Source: working.Algebra(), Unit: c.unit, By: x.Times(2)})
		workcheck.Verify(t, d.Working())
		for units, want := range map[working.Units]string{working.Metric: c.metric, working.USCustomary: c.other} {
			lines := d.Working().Lines(working.Reader{Units: units})
			var got string
			for _, l := range lines {
				if l.Symbol == "y" {
					got = l.Value
				}
			}
			if got != want {
				t.Errorf("%s, %v: %s, want %s", c.name, units, got, want)
			}
		}
	}
}

// Nothing is left of three weights that add up, whatever the last bits of their floats say.
func TestNothingLeftIsPrintedAsNothing(t *testing.T) {
	gram := func(name string, x float64) working.Expr {
		return working.Given(name, say("weight "+name), working.Amount(x, working.Gram, 1))
	}
	d := working.Derive(say("Left"))
	d.Find(working.Finding{Name: say("left"), Symbol: "w", Source: working.Algebra(), Is: quantity.Grams(0), Decimals: 4,
		By: gram("a", 0.3).Minus(gram("b", 0.1)).Minus(gram("c", 0.2)), Within: 5e-6, Note: say("to the microgram")})
	workcheck.Verify(t, d.Working())
	if got := d.Working().Lines(working.Reader{})[0]; got.Value != "0.0000 g" || got.Taken != "" {
		t.Errorf("%q, taken as %q", got.Value, got.Taken)
	}
}
