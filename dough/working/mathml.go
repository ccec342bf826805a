package working

import (
	"strconv"
	"strings"

	"example.org/maslin/internal/textpage"
)

// MathML tells the lines of one step, counted from 1, as MathML for a page: the formula, the numbers, the value.
func (t Telling) MathML(w Working, step int) string {
	if step < 1 || step > len(w.steps) {
		return ""
	}
	n := newNames(w.steps, t.Reader)
	for _, s := range w.steps[:step-1] {
		s.lines(t.Reader, n) // what they convert is not told again
	}
	var b strings.Builder
	row := func(symbol, relation, right string) {
		left := mathSymbol(symbol) + "<mo>" + relation + "</mo>"
		b.WriteString(`<math display="block"><mrow>` + left + right + "</mrow></math>\n")
	}
	for _, l := range w.steps[step-1].lines(t.Reader, n) {
		if l.formula != nil {
			if l.Formula != l.Numbers {
				row(l.Symbol, "=", t.mathML(l.formula, n))
			}
			row(l.Symbol, "=", t.mathML(l.numbers, n))
		}
		row(l.Symbol, l.relation(), "<mtext>"+textpage.Escaped(l.Value)+"</mtext>")
		if after := l.Rounded + l.Taken; after != "" { // at most one of them
			row(l.Symbol, "→", "<mtext>"+textpage.Escaped(after)+"</mtext>")
		}
	}
	return b.String()
}

func (r Reader) mathML(n *node, names *names) string {
	group := func(text string) string {
		mo := "<mo>"
		if !strings.Contains(text, "<mfrac>") { // as wide as it is written
			mo = `<mo stretchy="false">`
		}
		return "<mrow>" + mo + "(</mo>" + text + mo + ")</mo></mrow>"
	}
	inner := func(i int) string { return "<mrow>" + r.mathML(n.args[i], names) + "</mrow>" }
	part := func(i int) string {
		if n.parenthesized(i) {
			return group(r.mathML(n.args[i], names))
		}
		return r.mathML(n.args[i], names)
	}
	between := func(sign string) string { return part(0) + "<mo>" + sign + "</mo>" + part(1) }
	switch n.op {
	case opNumber:
		return r.mathNumber(n)
	case opSymbol:
		return mathSymbol(names.name(n.symbol))
	case opIn:
		return inner(0)
	case opPi:
		return "<mi>π</mi>"
	case opAdd:
		return between("+")
	case opSubtract:
		return between("−")
	case opMultiply:
		return between("×")
	case opDivide:
		return "<mfrac>" + inner(0) + inner(1) + "</mfrac>"
	case opPower:
		return "<msup><mrow>" + part(0) + "</mrow>" + inner(1) + "</msup>"
	case opNegate:
		return "<mo>−</mo>" + part(0)
	case opSum:
		if len(n.args) == 0 || n.args[0].op == opSymbol {
			return "<mo>∑</mo>" + mathSymbol(names.name(n.symbol))
		}
		var terms []string
		for _, a := range n.args {
			text := r.mathML(a, names)
			if a.negative() {
				text = group(text)
			}
			terms = append(terms, text)
		}
		return strings.Join(terms, "<mo>+</mo>")
	}
	var args []string
	for i := range n.args {
		args = append(args, r.mathML(n.args[i], names))
	}
	text := strings.Join(args, "<mo>"+strings.TrimSpace(r.separator())+"</mo>")
	fence := func(open, end string) string {
		return "<mrow><mo>" + open + "</mo>" + text + "<mo>" + end + "</mo></mrow>"
	}
	switch n.name {
	case "sqrt":
		return "<msqrt>" + text + "</msqrt>"
	case "abs":
		return fence("|", "|")
	case "floor":
		return fence("⌊", "⌋")
	case "ceil":
		return fence("⌈", "⌉")
	case "log10":
		return "<msub><mi>log</mi><mn>10</mn></msub>" + group(text)
	}
	return "<mi>" + n.name + "</mi>" + group(text)
}

func (r Reader) mathNumber(n *node) string {
	if n.shown != "" {
		return "<mtext>" + textpage.Escaped(n.shown) + "</mtext>"
	}
	text := "<mn>" + r.number(n.literal.mantissa) + "</mn>"
	if e := n.literal.exponent; e != 0 {
		text = "<mrow>" + text + "<mo>×</mo><msup><mn>10</mn><mn>" + minus(strconv.Itoa(e)) + "</mn></msup></mrow>"
	}
	return text
}

// htmlSymbol is a symbol in a sentence of a page, what comes behind the first underscore lowered.
func htmlSymbol(name string) string {
	base, index, lowered := strings.Cut(name, "_")
	text := textpage.Escaped(textpage.Printable(base))
	if lowered {
		text += "<sub>" + textpage.Escaped(textpage.Printable(strings.ReplaceAll(index, "_", ","))) + "</sub>"
	}
	return text
}

func mathSymbol(name string) string {
	base, index, lowered := strings.Cut(name, "_")
	text := "<mi>" + textpage.Escaped(base) + "</mi>"
	if lowered {
		text = "<msub>" + text + "<mtext>" + textpage.Escaped(strings.ReplaceAll(index, "_", ",")) + "</mtext></msub>"
	}
	return text
}
