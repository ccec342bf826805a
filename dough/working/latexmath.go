package working

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// widestMath is how many characters of a formula fit on a line of a page; a longer one is set so that it can be
// broken.
const widestMath = 58

// texLine sets one line of a derivation.
func (r Reader) texLine(l Line, n *names, told bool) string {
	symbol := texSymbol(l.Symbol)
	relation := `\approx `
	if l.Exact {
		relation = "= "
	}
	var rows, loose []string
	add := func(rel, math, linear, plain string) {
		if utf8.RuneCountInString(l.Symbol+plain) > widestMath {
			loose = append(loose, symbol+" "+rel+linear)
			return
		}
		rows = append(rows, symbol+" &"+rel+math)
	}
	if l.formula != nil && l.Formula != l.Numbers {
		add("= ", r.tex(l.formula, n, false), r.tex(l.formula, n, true), l.Formula)
	}
	if l.formula != nil && told {
		add("= ", r.tex(l.numbers, n, false), r.tex(l.numbers, n, true), l.Numbers)
	}
	rows = append(rows, symbol+" &"+relation+texValue(l.Value))
	if after := l.Rounded + l.Taken; after != "" { // at most one of them
		rows = append(rows, symbol+` &\to `+texValue(after))
	}
	var b strings.Builder
	for _, line := range loose {
		b.WriteString("\\begin{flushleft}$" + line + "$\\end{flushleft}\n")
	}
	b.WriteString("\\begin{align*}\n" + strings.Join(rows, " \\\\\n") + "\n\\end{align*}\n")
	return b.String()
}

// tex sets a formula: fractions, roots and indices as they are written by hand, or linear, in one line that TeX can
// break.
func (r Reader) tex(n *node, names *names, linear bool) string {
	group := func(text string) string {
		if linear {
			return "(" + text + ")"
		}
		return `\left(` + text + `\right)`
	}
	part := func(i int) string {
		text := r.tex(n.args[i], names, linear)
		if n.parenthesized(i) {
			return group(text)
		}
		return text
	}
	inner := func(i int) string { return r.tex(n.args[i], names, linear) }
	switch n.op {
	case opNumber:
		return r.texNumber(n)
	case opSymbol:
		return texSymbol(names.name(n.symbol))
	case opIn:
		return inner(0)
	case opPi:
		return `\pi `
	case opAdd:
		return part(0) + " + " + part(1)
	case opSubtract:
		return part(0) + " - " + part(1)
	case opMultiply:
		return part(0) + ` \times ` + part(1)
	case opDivide:
		if linear {
			return part(0) + ` \div ` + part(1)
		}
		return `\frac{` + inner(0) + "}{" + inner(1) + "}"
	case opPower:
		return part(0) + "^{" + inner(1) + "}"
	case opNegate:
		return "-" + part(0)
	case opSum:
		if len(n.args) == 0 || n.args[0].op == opSymbol {
			return `\sum ` + texSymbol(names.name(n.symbol))
		}
		var terms []string
		for i, a := range n.args {
			text := inner(i)
			if a.binds() == bindSum || a.negative() {
				text = group(text)
			}
			terms = append(terms, text)
		}
		return strings.Join(terms, " + ")
	}
	var args []string
	for i := range n.args {
		args = append(args, inner(i))
	}
	text := strings.Join(args, r.separator())
	switch n.name {
	case "sqrt":
		if linear { // a radicand cannot be broken
			return `\surd (` + text + ")"
		}
		return `\sqrt{` + text + "}"
	case "abs":
		return `\lvert ` + text + ` \rvert `
	case "floor":
		return `\lfloor ` + text + ` \rfloor `
	case "ceil":
		return `\lceil ` + text + ` \rceil `
	case "J0", "J1":
		return "J_" + n.name[1:] + group(text)
	case "log10":
		return `\log_{10}` + group(text)
	}
	return `\` + n.name + group(text)
}

func (r Reader) texNumber(n *node) string {
	if n.shown != "" {
		return `\text{` + texText(n.shown) + "}"
	}
	text := strings.Replace(strings.Replace(r.number(n.literal.mantissa), "−", "-", 1), ",", "{,}", 1)
	if e := n.literal.exponent; e != 0 {
		text += ` \times 10^{` + strconv.Itoa(e) + "}"
	}
	return text
}

// texSymbol sets a symbol: what comes behind the first underscore lowered and upright.
func texSymbol(name string) string {
	base, index, lowered := strings.Cut(name, "_")
	text := texMath(base)
	if lowered {
		upright := `\mathrm{`
		if strings.ContainsFunc(index, func(r rune) bool { return r >= 0x80 }) {
			upright = `\text{` // math knows no letters with accents
		}
		text += "_{" + upright + strings.ReplaceAll(texText(index), `\_`, ",") + "}}"
	}
	return text
}

// texValue sets a value with its unit.
func texValue(text string) string { return `\text{` + texText(text) + "}" }
