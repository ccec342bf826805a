package working_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Half of the flour, rounded up to ten grams, and the warmer of two places.
func twoSteps() working.Working {
	d := working.Derive(working.Say("half"))
	flour := working.Given("F_all", working.Say("flour & grain"), quantity.Grams(126))
	half := d.Find(working.Finding{
		Name: working.Say("a half"), Symbol: "H", By: flour.Over(2), Is: quantity.Grams(70),
		Rounding: working.Say("up to ten grams"), Source: working.Algebra(),
	})
	d.Find(working.Finding{
		Name: working.Say("the larger"), Symbol: "L", By: working.Max(half, working.Num(12.5)), Unit: working.Gram,
		Decimals: 1, Source: working.Algebra(),
	})
	return d.Working()
}

var commas = working.Reader{Language: working.Language{Decimal: ","}}

func TestTextLinesAreFormulaNumbersValueAndMeanings(t *testing.T) {
	got := strings.Join(working.Telling{}.TextLines(twoSteps()), "\n")
	want := "H = F_all ÷ 2 = 126 ÷ 2 = 63 g → 70 g\n" +
		"L = max(H, 12.5) = max(70, 12.5) = 70.0 g\n" +
		"H: a half; F_all: flour & grain; L: the larger"
	if got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	if got := (working.Telling{Reader: commas}).TextLines(twoSteps())[1]; got != "L = max(H; 12,5) = max(70; 12,5) = "+
		"70,0 g" {
		t.Error(got)
	}
}

func TestHTMLLinesAreMathML(t *testing.T) {
	page := working.Telling{Reader: commas}.HTMLLines(twoSteps())
	decoder := xml.NewDecoder(strings.NewReader("<page>" + page + "</page>"))
	texts := ""
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatalf("%v\n%s", err, page)
		}
		if c, ok := token.(xml.CharData); ok {
			texts += string(c)
		}
	}
	for _, want := range []string{
		"H=Fall2 =1262 =\u00a063\u00a0g →\u00a070\u00a0g", "L=max(H;12,5) =max(70;12,5) =\u00a070,0\u00a0g",
		"H: a half; Fall: flour & grain; L: the larger",
	} {
		if !strings.Contains(texts, strings.ReplaceAll(want, "\u00a0g", " g")) {
			t.Errorf("no %q in %q", want, texts)
		}
	}
	if strings.Count(page, "<li>") != 2 || !strings.Contains(page, "<msub><mi>F</mi><mtext>all</mtext></msub>") ||
		!strings.Contains(page, "<mfrac>") || strings.Contains(page, "_") {
		t.Error(page)
	}
}

func TestLaTeXLinesHaveFractionsOfFullSize(t *testing.T) {
	tex := working.Telling{Reader: commas}.LaTeXLines(twoSteps())
	for _, want := range []string{
		`$\displaystyle H = \frac{F_{\mathrm{all}}}{2} = \frac{126}{2} = \text{63 g} \to \text{70 g}$`,
		`\max\left(70; 12{,}5\right)`, `$F_{\mathrm{all}}$: flour \& grain; $L$: the larger\par`,
	} {
		if !strings.Contains(tex, want) {
			t.Errorf("no %s in %s", want, tex)
		}
	}
}

func TestNothingHasNoLines(t *testing.T) {
	tell, none := working.Telling{}, working.Working{}
	if tell.TextLines(none) != nil || tell.HTMLLines(none) != "" || tell.LaTeXLines(none) != "" {
		t.Error("lines of nothing")
	}
}

// An hour is told as an hour where it is printed as 60 minutes, though a rounding made it a little less.
func TestAnHourThatIsPrintedAsSixtyMinutes(t *testing.T) {
	for _, c := range []struct {
		minutes float64
		want    string
	}{{60 - 1e-9, "60.0 min (1h)"}, {60, "60.0 min (1h)"}, {59.6, "59.6 min"}, {90, "90.0 min (1h30m)"}} {
		if got := working.Amount(c.minutes, working.Minute, 1).String(); got != c.want {
			t.Errorf("%v is %s, want %s", time.Duration(c.minutes*float64(time.Minute)), got, c.want)
		}
	}
}

// The words of an index are told in the language of the reader, everywhere alike.
func TestIndicesAreWords(t *testing.T) {
	r := working.Reader{Language: working.Language{Words: map[string]string{"working.Index/all": "groß"}}}
	tell := working.Telling{Reader: r}
	w := twoSteps()
	for _, c := range []struct{ got, want string }{
		{tell.Text(w), "H = F_groß ÷ 2"}, {tell.Markdown(w), "`F_groß` = 126 g"}, {tell.LaTeX(w), `F_{\text{groß}}`},
		{tell.HTML(w, 2), "F<sub>groß</sub> = 126 g"}, {tell.MathML(w, 1), "<mtext>groß</mtext>"},
		{tell.TextLines(w)[2], "F_groß: flour"}, {w.Lines(r)[0].Where[0].Symbol, "F_groß"},
		{working.Telling{}.LaTeX(w), `F_{\mathrm{all}}`},
	} {
		if !strings.Contains(c.got, c.want) {
			t.Errorf("no %s in %s", c.want, c.got)
		}
	}
}
