package working_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// Every operation: its value, and how it is written as text, in LaTeX and in MathML. J0(1) and J1(1) are those of
// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 9.1.
func TestEveryOperationIsWritten(t *testing.T) {
	a, b := working.Given("a", say("first"), 2.25), working.Given("b", say("second"), 4.0)
	u := working.Given("u", say("one"), 1.0)
	letter := func(s string) string {
		return strings.NewReplacer("[", "<mi>", "]", "</mi>", "−", "<mo>−</mo>").Replace(s)
	}
	for _, c := range []struct {
		by                     working.Expr
		value, text, tex, math string
	}{
		{working.Sqrt(a), "1.5000", "sqrt(a)", `\sqrt{a}`, letter("<msqrt>[a]</msqrt>")},
		{working.Abs(a.Minus(b)), "1.7500", "abs(a − b)", `\lvert a - b \rvert`, letter("<mo>|</mo>[a]−[b]<mo>|</mo>")},
		{working.Floor(a), "2.0000", "floor(a)", `\lfloor a \rfloor`, letter("<mo>⌊</mo>[a]<mo>⌋</mo>")},
		{working.Ceil(a), "3.0000", "ceil(a)", `\lceil a \rceil`, letter("<mo>⌈</mo>[a]<mo>⌉</mo>")},
		{working.Log10(a.Times(b)), "0.9542", "log10(a × b)", `\log_{10}(a \times b)`,
			letter("<msub><mi>log</mi><mn>10</mn></msub><mrow><mo>(</mo>[a]<mo>×</mo>[b]<mo>)</mo></mrow>")},
		{a.ToThe(b), "25.6289", "a^b", "a^{b}", letter("<msup><mrow>[a]</mrow><mrow>[b]</mrow></msup>")},
		{a.Plus(b).ToThe(2), "39.0625", "(a + b)^2", "(a + b)^{2}",
			letter("<msup><mrow><mrow><mo>(</mo>[a]<mo>+</mo>[b]<mo>)</mo></mrow></mrow><mrow><mn>2</mn></mrow></msup>")},
		{a.Neg().Plus(b), "1.7500", "−a + b", "-a + b", letter("−[a]<mo>+</mo>[b]")},
		{a.Minus(b.Minus(u)), "−0.7500", "a − (b − u)", "a - (b - u)",
			letter("[a]−<mrow><mo>(</mo>[b]−[u]<mo>)</mo></mrow>")},
		{a.Minus(b).Over(u.Plus(1)), "−0.8750", "(a − b) ÷ (u + 1)", `\frac{a - b}{u + 1}`,
			letter("<mfrac><mrow>[a]−[b]</mrow><mrow>[u]<mo>+</mo><mn>1</mn></mrow></mfrac>")},
		{working.Pi().Times(a), "7.0686", "π × a", `\pi  \times a`, letter("[π]<mo>×</mo>[a]")},
		{working.J0(u), "0.7652", "J0(u)", "J_0(u)", letter("[J0]<mrow><mo>(</mo>[u]<mo>)</mo></mrow>")},
		{working.J1(u), "0.4401", "J1(u)", "J_1(u)", letter("[J1]<mrow><mo>(</mo>[u]<mo>)</mo></mrow>")},
		{working.Sin(u), "0.8415", "sin(u)", `\sin(u)`, letter("[sin]<mrow><mo>(</mo>[u]<mo>)</mo></mrow>")},
		{working.Max(a, b), "4.0000", "max(a, b)", `\max(a, b)`, letter("[max]<mrow><mo>(</mo>[a]<mo>,</mo>[b]")},
		{working.Sum(a, b.Minus(a).Neg(), u), "1.5000", "a + (−(b − a)) + u", "a + (-(b - a)) + u",
			letter("[a]<mo>+</mo><mrow><mo>(</mo>−<mrow><mo>(</mo>[b]−[a]")},
	} {
		d := working.Derive(say("x"))
		d.Find(working.Finding{Name: say("it"), Symbol: "y", By: c.by, Decimals: 4, Source: working.Algebra()})
		w := d.Working()
		workcheck.Verify(t, w)
		l := w.Lines(working.Reader{})[0]
		if l.Value != c.value || l.Formula != c.text {
			t.Errorf("%s is %s, want %s is %s", l.Formula, l.Value, c.text, c.value)
		}
		plain := strings.NewReplacer(`\left`, "", `\right`, "", "&", "").Replace
		if tex := plain((working.Telling{}).LaTeX(w)); !strings.Contains(tex, "y = "+c.tex) {
			t.Errorf("%s is not in\n%s", c.tex, tex)
		}
		if lines := plain((working.Telling{}).LaTeXLines(w)); !strings.Contains(lines, "y = "+c.tex) {
			t.Errorf("%s is not in\n%s", c.tex, lines)
		}
		if math := strings.ReplaceAll((working.Telling{}).MathML(w, 1), ` stretchy="false"`, ""); !strings.Contains(math,
			c.math) {
			t.Errorf("%s is not in\n%s", c.math, math)
		}
	}
}
