package working_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/google/go-cmp/cmp"
)

func example() working.Working {
	d := working.Derive(say("Flour in a dough"))
	dough := working.Given("m_dough", say("dough wanted"), quantity.Grams(3000))
	sum := working.Given("p", say("sum of the baker's percentages"), quantity.MustPercent("377.5 %"))
	flour := d.Find(working.Finding{
		Name: say("flour"), Symbol: "m_flour", By: dough.Over(sum.Share()), Unit: working.Gram, Decimals: 6,
		Note:   say("rounded half to even to the microgram"),
		Source: working.Source{Key: "GIS", Author: "Gisslen", Title: "Professional Baking", Year: 2008, Where: "ch. 2"},
	})
	d.Find(working.Finding{
		Name: say("flour on the scale"), Symbol: "w", By: working.Ceil(flour.Over(10)).Times(10),
		Is: quantity.Grams(800), Source: working.NoSource("flour is rounded up"),
	})
	return d.Working()
}

func ExampleWorking_Text() {
	fmt.Print(example().Text(72))
	// Output:
	// Flour in a dough
	// ================
	//
	// 1. flour
	//    m_flour = m_dough ÷ (p ÷ 100)
	//    where
	//      m_dough  3000 g  dough wanted
	//      p        377.5 %  sum of the baker's percentages
	//    m_flour = 3000 ÷ (377.5 ÷ 100)
	//    m_flour ≈ 794.701987 g
	//    note: rounded half to even to the microgram
	//    source: Gisslen, Professional Baking (2008), ch. 2
	//
	// 2. flour on the scale
	//    w = ceil(m_flour ÷ 10) × 10
	//    where
	//      m_flour  794.701987 g  flour, from step 1
	//    w = ceil(794.701987 ÷ 10) × 10
	//    w = 800 g
	//    source: flour is rounded up [common practice, no source]
}

func ExampleWorking_Markdown() {
	fmt.Print(scaling().Markdown())
	// Output:
	// ## Scaling weight
	//
	// 1. **scaling weight** [1]
	//
	//    `D = B ÷ (1 − L ÷ 100)`
	//
	//    - `B` = 780 g, baked and cool
	//    - `L` = 12 %, loss in the oven
	//
	//    `D = 780 ÷ (1 − 12 ÷ 100)`
	//
	//    `D` ≈ **886.4 g**
	//
	// Sources
	//
	// 1. arithmetic on the values above \[computed\]
}

func ExampleWorking_LaTeX() {
	fmt.Print(scaling().LaTeX())
	// Output:
	// \subsection*{Scaling weight}
	// \begin{enumerate}
	// \item \textbf{scaling weight} [1]
	// \begin{align*}
	// D &= \frac{B}{1 - \frac{L}{100}} \\
	// D &= \frac{780}{1 - \frac{12}{100}} \\
	// D &\approx \text{886.4 g}
	// \end{align*}
	// where $B$ = 780 g, baked and cool;
	// $L$ = 12 \%, loss in the oven.
	// \end{enumerate}
	// \paragraph{Sources}
	// \begin{enumerate}
	// \item arithmetic on the values above [computed]
	// \end{enumerate}
}

// hostile is a derivation whose every word is the text.
func hostile(text string) working.Working {
	d := working.Derive(say(text))
	x := working.Given(text, say(text), 3).Explained(say(text))
	d.Find(working.Finding{Name: say(text), Symbol: text, By: x.Times(2), Note: say(text), Source: working.NoSource(text)})
	return d.Working()
}

func TestLaTeXBalancesItsBracesWhateverIsGiven(t *testing.T) {
	for _, s := range []string{"a_b^c", "x^", "_", "^(", "e^(−c·x)", "{}}{", `\end{document}`, "100 % & # $ ~", "🍞 日本",
		"\xff", "a__b", "T_water²", "Σ(T − tᵢ)", "½"} {
		text := hostile(s).LaTeX()
		plain := strings.NewReplacer(`\{`, "", `\}`, "", `\\`, "").Replace(text)
		if strings.Count(plain, "{") != strings.Count(plain, "}") {
			t.Errorf("%q: braces do not balance in\n%s", s, text)
		}
		if !utf8.ValidString(text) {
			t.Fatalf("%q: not UTF-8", s)
		}
	}
}

func TestTextKeepsToItsWidth(t *testing.T) {
	w := hostile(strings.Repeat("a word or two ", 30))
	for width := 40; width < 100; width += 7 {
		for _, line := range strings.Split(w.Text(width), "\n")[4:] {
			if n := utf8.RuneCountInString(line); n > width && !strings.HasPrefix(line, "1. ") {
				t.Errorf("width %d: a line of %d: %q", width, n, line)
			}
		}
	}
	if w.Text(0) != w.Text(80) {
		t.Error("no width must mean 80")
	}
}

func TestMarkdownEscapesWhatPeopleType(t *testing.T) {
	for _, line := range strings.Split(hostile("a|b\n# not a *heading* <b>`tick`</b>").Markdown(), "\n") {
		if strings.HasPrefix(line, "# ") ||
			strings.Contains(line, "<b>") && !strings.Contains(line, "``") && !strings.Contains(line, `\<b`) {
			t.Errorf("markup leaked: %q", line)
		}
	}
}

func TestSourcesAreListedOnce(t *testing.T) {
	w := example().Append(example(), working.Working{})
	if w.Len() != 4 || !strings.HasPrefix(w.Text(80), "Flour in a dough\n") {
		t.Errorf("append lost something: %+v", w)
	}
	var got []string
	for _, s := range w.Sources() {
		got = append(got, s.String())
	}
	want := []string{"Gisslen, Professional Baking (2008), ch. 2", "flour is rounded up [common practice, no source]"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestStandingsAndPlaces(t *testing.T) {
	var got []string
	for s := working.Published; s <= working.Judgment+1; s++ {
		got = append(got, s.String())
	}
	if diff := cmp.Diff([]string{"published", "computed", "common practice", "from memory", "judgment",
		"unknown standing of a source 5"}, got); diff != "" {
		t.Error(diff)
	}
	s := working.Source{Author: "A", Title: "T", URL: "u", Standing: working.FromMemory}.At("p. 3")
	if s.String() != "A, T, p. 3, u [from memory]" || (working.Source{}).String() != "no source" ||
		(working.Source{Standing: working.Computed}).String() != "computed" {
		t.Error(s.String())
	}
	if c := (working.Caution{Subject: "burns", Text: working.Say("gloves")}); c.String() != "burns: gloves" {
		t.Error(c.String())
	}
}
