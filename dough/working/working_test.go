package working_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/maslin/dough/working"
	"github.com/google/go-cmp/cmp"
)

func example() working.Working {
	return working.Working{Title: "Flour in a dough", Steps: []working.Step{{
		Name: "flour", Symbol: "m_flour", Formula: "m_dough ÷ (p ÷ 100)",
		Where: []working.Binding{
			{Symbol: "m_dough", Meaning: "dough wanted", Value: "3000 g"},
			{Symbol: "p", Meaning: "sum of the baker's percentages", Value: "377.5 %"},
		},
		Numbers: "3000 ÷ (377.5 ÷ 100)", Value: "794.701987 g", Note: "rounded half to even to the microgram",
		Source: working.Source{Key: "GIS", Author: "Gisslen", Title: "Professional Baking", Year: 2008, Where: "ch. 2"},
	}, {
		Name: "flour on the scale", Symbol: "w", Formula: "⌈m_flour⌉", Note: "rounded up to 10 g", Value: "800 g", Exact: true,
		Source: working.NoSource("flour is rounded up"),
	}}}
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
	//    w = ⌈m_flour⌉
	//    w = 800 g
	//    note: rounded up to 10 g
	//    source: flour is rounded up [common practice, no source]
}

func ExampleWorking_Markdown() {
	fmt.Print(working.Working{Steps: example().Steps[:1]}.Markdown())
	// Output:
	// 1. **flour** [1]
	//
	//    `m_flour = m_dough ÷ (p ÷ 100)`
	//
	//    - `m_dough` = 3000 g, dough wanted
	//    - `p` = 377.5 %, sum of the baker's percentages
	//
	//    `m_flour = 3000 ÷ (377.5 ÷ 100)`
	//
	//    `m_flour` ≈ **794.701987 g**
	//
	//    *rounded half to even to the microgram*
	//
	// Sources
	//
	// 1. Gisslen, Professional Baking (2008), ch. 2
}

func ExampleWorking_LaTeX() {
	fmt.Print(working.Working{Steps: example().Steps[:1]}.LaTeX())
	// Output:
	// \begin{enumerate}
	// \item \textbf{flour} [1]
	// \begin{align*}
	// m{}_{\mathrm{flour}} &= m{}_{\mathrm{dough}} \div  (p \div  100) \\
	// m{}_{\mathrm{flour}} &= 3000 \div  (377.5 \div  100) \\
	// m{}_{\mathrm{flour}} &\approx \text{794.701987 g}
	// \end{align*}
	// where $m{}_{\mathrm{dough}}$ = 3000 g, dough wanted;
	// $p$ = 377.5 \%, sum of the baker's percentages.
	// \par\emph{rounded half to even to the microgram}
	// \end{enumerate}
	// \paragraph{Sources}
	// \begin{enumerate}
	// \item Gisslen, Professional Baking (2008), ch. 2
	// \end{enumerate}
}

func TestLaTeXBalancesItsBracesWhateverIsGiven(t *testing.T) {
	for _, s := range []string{"a_b^c", "x^", "_", "^(", "e^(−c·x)", "{}}{", `\end{document}`, "100 % & # $ ~", "🍞 日本", "\xff", "a__b", "T_water²", "Σ(T − tᵢ)", "½"} {
		text := working.Working{
			Title: s,
			Steps: []working.Step{
				{
					Name:    s,
					Symbol:  s,
					Formula: s,
					Numbers: s,
					Value:   s,
					Note:    s,
					Source:  working.NoSource(s),
					Where:   []working.Binding{{Symbol: s, Meaning: s, Value: s}},
				},
			},
		}.LaTeX()
		plain := strings.NewReplacer(`\{`, "", `\}`, "", `\\`, "").Replace(text)
		if strings.Count(plain, "{") != strings.Count(plain, "}") {
			t.Errorf("%q: braces do not balance in\n%s", s, text)
		}
		for i := range len(text) {
			if text[i] > 0x7f && !utf8.ValidString(text) {
				t.Fatalf("%q: not UTF-8", s)
			}
		}
	}
}

func TestTextKeepsToItsWidth(t *testing.T) {
	w := example()
	w.Steps[0].Note = strings.Repeat("a word or two ", 30)
	for width := 40; width < 100; width += 7 {
		for _, line := range strings.Split(w.Text(width), "\n") {
			if n := utf8.RuneCountInString(line); n > width {
				t.Errorf("width %d: a line of %d: %q", width, n, line)
			}
		}
	}
	if w.Text(0) != w.Text(80) {
		t.Error("no width must mean 80")
	}
}

func TestMarkdownEscapesWhatPeopleType(t *testing.T) {
	hostile := "a|b\n# not a *heading* <b>`tick`</b>"
	text := working.Working{
		Title: hostile,
		Steps: []working.Step{
			{Name: hostile, Symbol: "x`y", Formula: hostile, Value: hostile, Source: working.NoSource(hostile)},
		},
	}.Markdown()
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(line, "# ") ||
			strings.Contains(line, "<b>") && !strings.Contains(line, "``") && !strings.Contains(line, `\<b`) {
			t.Errorf("markup leaked: %q", line)
		}
	}
}

func TestSourcesAreListedOnce(t *testing.T) {
	w := example().Append(example(), working.Working{})
	if len(w.Steps) != 4 || w.Title != "Flour in a dough" {
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
	if diff := cmp.Diff([]string{"published", "computed", "common practice", "from memory", "judgment", "unknown standing of a source 5"}, got); diff != "" {
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
