package working_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"
)

// How formulas are written: parentheses where they are needed and nowhere else, numbers of every size, and whether
// the result is exact. That each is worked out rightly is checked from its text.
func TestHowFormulasAreWritten(t *testing.T) {
	a := working.Given("a", say("first"), 3)
	b := working.Given("b", say("second"), -2.5)
	x, num := working.Given("x_1", say("third"), 1.0/3), working.Num
	formulas := []working.Expr{
		a.Plus(b).Times(x), a.Times(b.Plus(x)), a.Minus(b.Minus(x)), a.Minus(b).Minus(x), a.Over(b.Over(x)),
		a.Over(b).Over(x), a.Over(b.Times(x)), a.Times(b).Over(x), a.Neg().Times(b), a.Times(b.Neg()), a.Plus(b.Neg()),
		a.Neg().ToThe(2), a.ToThe(2).Neg(), a.Plus(b).ToThe(2), a.ToThe(2).ToThe(3), a.ToThe(8), a.ToThe(9), a.ToThe(-1),
		a.ToThe(0), a.ToThe(0.5), a.ToThe(b), a.Neg().Neg(), a.Plus(b).Neg(), a.Times(b).Neg(), working.Sqrt(a.Plus(b)),
		working.Exp(a.Neg()), working.Ln(a).Times(2), working.Log10(a.Times(1000)), working.Abs(b), working.Abs(a.Minus(5)),
		working.Floor(b), working.Ceil(b), working.Floor(a.Over(2)), working.Ceil(a.Over(2)), working.Min(a, b, 7),
		working.Max(a, b, 7), working.Min(b, b), working.Max(a, 3), working.Pi().Times(a), b.Share(), b.Plus(-2),
		b.Minus(-2), b.Times(-2), num(-2).Plus(b), num(-2).ToThe(2), num(2).ToThe(b), a.Plus(1e-5), a.Times(1e-4),
		a.Times(0.99e-4), a.Times(1e7), a.Times(9_999_999), a.Times(12_345_678), a.Times(1.5e7), a.Times(123_456.5e3),
		a.Times(1e15), a.Times(999_999_999_999_999.0), a.Times(100_000_000_000_000.5), a.Times(-3e8), a.Times(6.02e23),
		a.Times(1e30).Over(1e30), a.Times(1e31).Over(1e31), a.Times(1e-30).Over(1e-30), a.Times(1e-31).Over(1e-31),
		a.Times(2.5e-9).Plus(7), a.Times(working.Num(math.NaN())), a.Over(0), a.Plus(b).Over(a.Minus(b)),
	}
	var page strings.Builder
	for _, f := range formulas {
		d := working.Derive(say("formula"))
		d.Find(working.Finding{Name: say("y"), Symbol: "y", By: f, Decimals: 4, Source: working.Algebra()})
		w := d.Working()
		for _, l := range w.Lines(working.Reader{}) {
			fmt.Fprintf(&page, "%s = %s | %s | %s, exactly: %v\n", l.Symbol, l.Formula, l.Numbers, l.Value, l.Exact)
		}
		if v := w.Answer(); v.IsValid() {
			workcheck.Verify(t, w)
		}
		fmt.Fprintf(&page, "%s\n", working.Telling{}.LaTeXLines(w))
	}
	trial.Kept(t, "formulas.txt", page.String())
}

// A time of day that is worked out is told in the zone of the one that it was worked out from.
func TestTimesOfDayKeepTheirZone(t *testing.T) {
	zone := time.FixedZone("hall", 90*60)
	oven := working.Given("t_oven", say("the oven is free"), time.Date(2026, 11, 29, 9, 15, 0, 0, zone))
	rest := working.Given("d", say("rest"), 45*time.Minute)
	d := working.Derive(say("back"))
	shape := d.Find(working.Finding{Name: say("shape"), Symbol: "t_1", Unit: working.Clock, By: oven.Minus(rest),
		Source: working.Algebra()})
	d.Find(working.Finding{Name: say("fold"), Symbol: "t_2", Unit: working.Clock, By: rest.Neg().Plus(shape),
		Source: working.Algebra()})
	var got []string
	for _, l := range d.Working().Lines(working.Reader{}) {
		got = append(got, l.Value)
	}
	if want := "[Sun 08:30 Sun 07:45]"; fmt.Sprint(got) != want {
		t.Errorf("%v, want %s", got, want)
	}
}

// Weights that somebody gave in ounces are told so again, to a thousandth; finer ones are what their micrograms are.
func TestWeightsAsTheyWereGiven(t *testing.T) {
	us := working.Reader{Units: working.USCustomary}
	for ounces, want := range map[float64]string{169.5: "169.5 oz", 4: "4 oz", 0.125: "0.125 oz", 1.001: "1.001 oz",
		2.3334: "2.33339999 oz"} {
		d := working.Derive(say("x"))
		m := working.Given("m", say("flour"), quantity.Ounces(ounces))
		d.Find(working.Finding{Name: say("twice"), Symbol: "y", By: m.Times(2), Unit: working.Gram,
			Source: working.Algebra()})
		if l := d.Working().Lines(us)[0]; len(l.Where) != 1 || l.Where[0].Value != want {
			t.Errorf("%v oz: %v, want %s", ounces, l.Where, want)
		}
	}
}
