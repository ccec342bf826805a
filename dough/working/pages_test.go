package working_test

import (
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// vat is a derivation with a part of everything that is written in a way of its own: fractions, roots, indices, powers,
// signs, a rounding, marks that mean something in Markdown, HTML or TeX.
func vat() working.Working {
	d := working.Derive(say("Vat & <tub>"))
	wide := working.Given("d_1", say("inside diameter, 50 % of *it*"), quantity.Centimeters(24))
	deep := working.Given("h", say("depth_of the tub"), quantity.Centimeters(10))
	share := working.Given("s", say("share that is filled"), quantity.MustPercent("80 %"))
	area := d.Find(working.Finding{
		Name: say("floor"), Symbol: "A_floor", Unit: "cm²", Decimals: 1,
		By: working.Pi().Times(wide.Over(2).ToThe(2)), Source: working.NoSource("a circle"),
	})
	full := d.Find(working.Finding{
		Name: say("what it holds"), Symbol: "V", Unit: working.Milliliter,
		Decimals: working.WholeNumber,
		By:       area.Times(deep).Times(share.Share()), Rounding: say("to what a jug shows"), Is: quantity.Milliliters(3600),
		Note: say("a note with a _ and a |"), Source: working.Algebra(),
	})
	d.Find(working.Finding{
		Name: say("number"), Symbol: "N_a,b", Decimals: 4,
		By: working.Sqrt(full.Over(1000)).Minus(working.Log10(full).Neg()).Plus(working.Num(-1.5).
			Times(working.Exp(working.Num(-2)).ToThe(-0.5))).
			Minus(working.Min(deep, wide, 3).Minus(working.Num(1).Minus(share))),
		Source: working.Algebra(),
	})
	return d.Working()
}

// The same derivations in every form, for both readers, at every level and with a decimal comma, as kept pages: who
// changes one looks at the difference. That their numbers are right the other tests know; here
// stands how they are written.
func TestPagesOfDerivations(t *testing.T) {
	us := working.Reader{Units: working.USCustomary}
	comma := working.Reader{Language: working.Language{Decimal: ","}}
	for name, write := range map[string]func(t working.Telling, w working.Working) string{
		"pages.txt":  func(t working.Telling, w working.Working) string { return t.Text(w) },
		"pages.md":   func(t working.Telling, w working.Working) string { return t.Markdown(w) },
		"pages.html": func(t working.Telling, w working.Working) string { return t.HTML(w, 2) },
		"pages.tex":  func(t working.Telling, w working.Working) string { return t.LaTeX(w) },
		"lines.txt": func(t working.Telling, w working.Working) string {
			return strings.Join(t.TextLines(w), "\n") + "\n" + t.LaTeXLines(w)
		},
	} {
		var b strings.Builder
		for _, w := range []working.Working{vat(), table(), arrhenius(), clock()} {
			for _, as := range []working.Telling{{}, {Reader: us}} {
				b.WriteString(write(as, w) + "\n")
			}
		}
		for _, as := range []working.Telling{{Level: working.WithNumbers}, {Level: working.InWords}, {Reader: comma}} {
			b.WriteString(write(as, vat()) + "\n")
		}
		trial.Kept(t, name, b.String())
	}
	data, err := json.MarshalIndent([]working.Working{vat(), table()}, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	trial.Kept(t, "pages.json", longFractions.ReplaceAllString(string(data), "$1")+"\n")
}

// longFractions end in digits that a machine with another way to multiply may not share.
var longFractions = regexp.MustCompile(`(\.[0-9]{9})[0-9]+`)

// Powers of ten are written with raised digits, each its own.
func TestRaisedDigits(t *testing.T) {
	raised := []rune("⁰¹²³⁴⁵⁶⁷⁸⁹")
	for power := 5; power < 18; power++ {
		want := "⁻"
		for _, digit := range strconv.Itoa(power) {
			want += string(raised[digit-'0'])
		}
		if got := working.Amount(math.Pow10(-power), "m", power+1).Text(working.Reader{}); !strings.HasSuffix(got,
			" × 10"+want+" m") {
			t.Errorf("10^−%d is written %s", power, got)
		}
	}
}
