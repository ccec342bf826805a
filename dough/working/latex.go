package working

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// LaTeX tells everything of the derivation to a reader of metric English; see [Telling.LaTeX].
func (w Working) LaTeX() string { return Telling{}.LaTeX(w) }

// LaTeX tells the derivation as LaTeX that needs only the amsmath and textcomp packages and compiles with
// pdflatex: a complete document if Document is set, and otherwise a part of one. Characters that such a document
// cannot show are printed as their code points, such as [U+1F35E].
func (t Telling) LaTeX(w Working) string {
	var b strings.Builder
	if title := w.heading(t.Reader); title != "" {
		fmt.Fprintf(&b, "\\subsection*{%s}\n", texText(title))
	}
	b.WriteString(t.latexSteps(w))
	if symbols, terms := w.glossary(t.Reader); t.Level == Everything && len(symbols)+len(terms) > 0 {
		fmt.Fprintf(&b, "\\paragraph{%s}\n\\begin{description}\n", texText(t.word("In other words")))
		for _, g := range symbols {
			fmt.Fprintf(&b, "\\item[$%s$] %s\n", texSymbol(g.Symbol), texText(g.Meaning))
		}
		for _, g := range terms {
			fmt.Fprintf(&b, "\\item[%s] %s\n", texText(g.Symbol), texText(g.Meaning))
		}
		b.WriteString("\\end{description}\n")
	}
	if sources := w.Sources(); len(sources) > 0 && t.Level == Everything {
		fmt.Fprintf(&b, "\\paragraph{%s}\n\\begin{enumerate}\n", texText(t.word("Sources")))
		for _, s := range sources {
			fmt.Fprintf(&b, "\\item %s\n", texText(s.Message().Text(t.Reader)))
		}
		b.WriteString("\\end{enumerate}\n")
	}
	if t.Document {
		return TeXDocument(b.String())
	}
	return b.String()
}

// latexSteps tells the steps.
func (t Telling) latexSteps(w Working) string {
	var b strings.Builder
	b.WriteString("\\begin{enumerate}\n")
	number := map[Source]int{}
	for i, s := range w.Sources() {
		number[s] = i + 1
	}
	n := newNames(w.steps, t.Reader)
	for _, s := range t.told(w) {
		cite := ""
		if k := number[s.finding.Source]; k > 0 && t.Level == Everything {
			cite = fmt.Sprintf(" [%d]", k)
		}
		switch {
		case t.Level == InWords:
			fmt.Fprintf(&b, "\\item %s\n", texText(s.brief(t.Reader)))
		default:
			t.stepLaTeX(&b, s, cite, n)
		}
	}
	if len(w.steps) == 0 {
		b.WriteString("\\item (no steps)\n")
	}
	b.WriteString("\\end{enumerate}\n")
	return b.String()
}

// TeX is a text with everything escaped that LaTeX would take for a command.
func TeX(text string) string { return texText(text) }

// TeXDocument makes a complete document of what is told as a part of one.
func TeXDocument(body string) string {
	return "\\documentclass[11pt]{article}\n\\usepackage[T1]{fontenc}\n\\usepackage[utf8]{inputenc}\n" +
		"\\usepackage{amsmath,textcomp}\n\\usepackage[margin=25mm]{geometry}\n" +
		"\\sloppy\\emergencystretch=4em\\allowdisplaybreaks\n\\begin{document}\n" + body + "\\end{document}\n"
}

// stepLaTeX tells one step.
func (t Telling) stepLaTeX(b *strings.Builder, s step, cite string, n *names) {
	fmt.Fprintf(b, "\\item \\textbf{%s}%s\n", texText(s.finding.Name.Text(t.Reader)), cite)
	if table := s.table(t.Reader, n); len(table.Columns) > 0 {
		t.tableLaTeX(b, table, n)
	}
	var where []string
	seen := map[string]bool{}
	for _, l := range s.lines(t.Reader, n) {
		b.WriteString(t.texLine(l, n, true))
		for _, v := range l.Where {
			text := fmt.Sprintf("$%s$ = %s, %s", texSymbol(v.Symbol), texText(v.Value), texText(v.Meaning))
			if !seen[text] {
				seen[text] = true
				where = append(where, text)
			}
		}
	}
	if t.Level != Everything {
		return
	}
	if len(where) > 0 {
		fmt.Fprintf(b, "%s %s.\n", texText(t.word("where")), strings.Join(where, ";\n"))
	}
	for _, note := range s.notes(t.Reader) {
		fmt.Fprintf(b, "\\par\\emph{%s}\n", texText(note))
	}
}

func (t Telling) tableLaTeX(b *strings.Builder, table ToldTable, n *names) {
	var head []string
	for _, c := range table.Columns {
		if c.Formula != "" {
			fmt.Fprintf(b, "\\begin{flushleft}$%s = %s$\\end{flushleft}\n", texSymbol(c.Symbol),
				t.tex(c.formula, n, true))
		}
		text := "$" + texSymbol(c.Symbol) + "$"
		if c.Unit != "" && c.Unit != string(Clock) {
			text += " " + texText(c.Unit)
		}
		head = append(head, text)
	}
	fmt.Fprintf(b, "\\par\\begin{tabular}{%s}\n%s \\\\ \\hline\n", strings.Repeat("r", len(head)),
		strings.Join(head, " & "))
	for _, row := range table.Rows {
		cells := make([]string, len(row))
		for k, c := range row {
			cells[k] = texText(c)
		}
		fmt.Fprintf(b, "%s \\\\\n", strings.Join(cells, " & "))
	}
	b.WriteString("\\end{tabular}\\par\n")
}

// texSigns are the signs of formulas and units, as math.
var texSigns = map[rune]string{
	'−': "-", '–': "-", '×': `\times `, '÷': `\div `, '·': `\cdot `, '≈': `\approx `, '≤': `\le `, '≥': `\ge `,
	'≠': `\ne `, '±': `\pm `,
	'Σ': `\sum `, '∑': `\sum `, '∫': `\int `, '√': `\surd `, '∞': `\infty `, '→': `\to `, '∈': `\in `,
	'⌈': `\lceil `, '⌉': `\rceil `, '⌊': `\lfloor `, '⌋': `\rfloor `,
	'α': `\alpha `, 'β': `\beta `, 'γ': `\gamma `, 'δ': `\delta `, 'ε': `\varepsilon `, 'ζ': `\zeta `,
	'η': `\eta `, 'θ': `\theta `, 'κ': `\kappa `, 'λ': `\lambda `,
	'μ': `\mu `, 'µ': `\mu `, 'ν': `\nu `, 'ξ': `\xi `, 'π': `\pi `, 'Π': `\prod `, 'ρ': `\rho `, 'σ': `\sigma `,
	'τ': `\tau `, 'φ': `\varphi `, 'ψ': `\psi `, 'ω': `\omega `, 'Δ': `\Delta `, 'Γ': `\Gamma `, 'Φ': `\Phi `,
	'Λ': `\Lambda `,
	'²': "^{2}", '³': "^{3}", '⁻': "^{-}", '¹': "^{1}", '⁰': "^{0}", '⁴': "^{4}", '⁵': "^{5}", '⁶': "^{6}",
	'¾': `\tfrac34 `, '⅓': `\tfrac13 `, '⅔': `\tfrac23 `, '⅛': `\tfrac18 `,
	'⁷': "^{7}", '⁸': "^{8}", '⁹': "^{9}", 'ᵢ': "_{i}", 'ⱼ': "_{j}", 'ₙ': "_{n}", '₀': "_{0}", '₁': "_{1}",
	'₂': "_{2}", '₃': "_{3}", '₄': "_{4}", '₅': "_{5}", '₆': "_{6}",
	'₇': "_{7}", '₈': "_{8}", '₉': "_{9}", '°': `^{\circ}`, '′': "'", '½': `\tfrac12 `, '¼': `\tfrac14 `,
}

var texASCII = map[rune]string{
	'%': `\%`, '&': `\&`, '#': `\#`, '$': `\$`, '{': `\{`, '}': `\}`, '_': `\_`, '^': `\textasciicircum{}`,
	'~': `\textasciitilde{}`, '\\': `\textbackslash{}`,
}

func texText(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case texASCII[r] != "":
			b.WriteString(texASCII[r])
		case r == '°':
			b.WriteString(`\textdegree{}`)
		case r == '/' || r == '=':
			b.WriteString(string(r) + `\allowbreak{}`) // addresses are longer than a line
		case texSigns[r] != "":
			b.WriteString(`\ensuremath{` + strings.TrimSpace(texSigns[r]) + "}")
		case r == '„':
			b.WriteString(`\quotedblbase{}`)
		case r == '…':
			b.WriteString(`\dots{}`)
		case r == '“' || r == '”' || r == '’' || r == '‘':
			b.WriteString(map[rune]string{'“': "``", '”': "''", '’': "'", '‘': "`"}[r])
		case r == '\n' || r == '\t' || r == '\u00a0' || r == '\u202f':
			b.WriteByte(' ')
		case r >= ' ' && r < 0x7f, r >= 0xc0 && r <= 0x17f:
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, "[U+%04X]", r)
		}
	}
	return b.String()
}

// texMath turns a formula in plain characters into math: names of several letters upright,
// what follows an underscore or a caret lowered or raised.
func texMath(s string) string {
	var b texBuilder
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == '_' || r == '^':
			group, used := texGroup(s[i+n:])
			if group == "" {
				b.WriteString(texASCII[r])
				break
			}
			b.WriteString("{}" + string(r) + "{" + group + "}")
			n += used
		case raised(r) || lowered(r):
			n = b.texIndex(s[i:])
		case texSigns[r] != "":
			b.WriteString(texSigns[r])
		case unicode.IsLetter(r) && r < 0x180:
			end := i
			for end < len(s) {
				c, m := utf8.DecodeRuneInString(s[end:])
				if !unicode.IsLetter(c) || c >= 0x180 || texSigns[c] != "" {
					break
				}
				end += m
			}
			n = end - i
			b.WriteString(texWord(s[i:end]))
		case r == ' ':
			b.WriteByte(' ')
		case r == '%':
			b.WriteString(`\%`)
		case r < 0x7f && r > ' ' && texASCII[r] == "":
			b.WriteRune(r)
		default:
			b.WriteString(`\text{` + texText(string(r)) + "}")
		}
		i += n
	}
	return b.String()
}

// A texBuilder writes math.
type texBuilder struct{ strings.Builder }

// texIndex writes the raised or the lowered characters that a text begins with as one index, and returns how many
// bytes they are.
func (b *texBuilder) texIndex(s string) int {
	var same func(rune) bool
	var index strings.Builder
	used := 0
	for i, r := range s {
		if i == 0 {
			if same = raised; lowered(r) {
				same = lowered
			}
			index.WriteString("{}" + texSigns[r][:2])
		}
		if !same(r) {
			break
		}
		index.WriteString(strings.Trim(texSigns[r][1:], "{}"))
		used = i + utf8.RuneLen(r)
	}
	b.WriteString(index.String() + "}")
	return used
}

func raised(r rune) bool  { return strings.HasPrefix(texSigns[r], "^{") && r != '°' }
func lowered(r rune) bool { return strings.HasPrefix(texSigns[r], "_{") }

// texGroup reads what an underscore or caret applies to: a word or number, or a parenthesis.
func texGroup(s string) (group string, used int) {
	if strings.HasPrefix(s, "(") {
		depth := 0
		for i, r := range s {
			switch r {
			case '(':
				depth++
			case ')':
				depth--
			}
			if depth == 0 {
				return texMath(s[1:i]), i + 1
			}
		}
		return "", 0
	}
	for i, r := range s {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '.' && r != ',' && (i > 0 || r != '−' && r != '-') {
			return texMath(s[:i]), i
		}
	}
	return texMath(s), len(s)
}

func texWord(word string) string {
	switch word {
	case "exp", "ln", "sin", "cos", "tan", "cot", "min", "max":
		return `\` + word + " "
	}
	if utf8.RuneCountInString(word) == 1 {
		return word
	}
	return `\mathrm{` + texText(word) + "}"
}
