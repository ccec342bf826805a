package working

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// LaTeX prints the derivation as a LaTeX fragment that needs only the amsmath and textcomp
// packages and compiles with pdflatex. Characters that such a document cannot show are printed as
// their code points, such as [U+1F35E].
func (w Working) LaTeX() string {
	var b strings.Builder
	if w.Title != "" {
		fmt.Fprintf(&b, "\\subsection*{%s}\n", texText(w.Title))
	}
	b.WriteString("\\begin{enumerate}\n")
	sources := w.Sources()
	number := map[Source]int{}
	for i, s := range sources {
		number[s] = i + 1
	}
	for _, s := range w.Steps {
		fmt.Fprintf(&b, "\\item \\textbf{%s}", texText(s.Name))
		if n := number[s.Source]; n > 0 {
			fmt.Fprintf(&b, " [%d]", n)
		}
		b.WriteString("\n")
		relation := `\approx`
		if s.Exact {
			relation = "="
		}
		var lines []string
		if s.Formula != "" {
			lines = append(lines, texMath(s.Symbol)+" &= "+texMath(s.Formula))
		}
		if s.Numbers != "" {
			lines = append(lines, texMath(s.Symbol)+" &= "+texMath(s.Numbers))
		}
		lines = append(lines, texMath(s.Symbol)+" &"+relation+` \text{`+texText(s.Value)+"}")
		fmt.Fprintf(&b, "\\begin{align*}\n%s\n\\end{align*}\n", strings.Join(lines, " \\\\\n"))
		for i, v := range s.Where {
			lead := ""
			if i == 0 {
				lead = "where "
			}
			end := ";"
			if i == len(s.Where)-1 {
				end = "."
			}
			fmt.Fprintf(&b, "%s$%s$ = %s, %s%s\n", lead, texMath(v.Symbol), texText(v.Value), texText(v.Meaning), end)
		}
		if s.Note != "" {
			fmt.Fprintf(&b, "\\par\\emph{%s}\n", texText(s.Note))
		}
	}
	if len(w.Steps) == 0 {
		b.WriteString("\\item (no steps)\n")
	}
	b.WriteString("\\end{enumerate}\n")
	if len(sources) > 0 {
		b.WriteString("\\paragraph{Sources}\n\\begin{enumerate}\n")
		for _, s := range sources {
			fmt.Fprintf(&b, "\\item %s\n", texText(s.String()))
		}
		b.WriteString("\\end{enumerate}\n")
	}
	return b.String()
}

// texSigns are the signs of formulas and units, as math.
var texSigns = map[rune]string{
	'−': "-", '–': "-", '×': `\times `, '÷': `\div `, '·': `\cdot `, '≈': `\approx `, '≤': `\le `, '≥': `\ge `, '≠': `\ne `, '±': `\pm `,
	'Σ': `\sum `, '∑': `\sum `, '∫': `\int `, '√': `\surd `, '∞': `\infty `, '→': `\to `, '∈': `\in `, '⌈': `\lceil `, '⌉': `\rceil `, '⌊': `\lfloor `, '⌋': `\rfloor `,
	'α': `\alpha `, 'β': `\beta `, 'γ': `\gamma `, 'δ': `\delta `, 'ε': `\varepsilon `, 'ζ': `\zeta `, 'η': `\eta `, 'θ': `\theta `, 'κ': `\kappa `, 'λ': `\lambda `,
	'μ': `\mu `, 'µ': `\mu `, 'ν': `\nu `, 'ξ': `\xi `, 'π': `\pi `, 'Π': `\prod `, 'ρ': `\rho `, 'σ': `\sigma `, 'τ': `\tau `, 'φ': `\varphi `, 'ψ': `\psi `, 'ω': `\omega `, 'Δ': `\Delta `, 'Γ': `\Gamma `, 'Φ': `\Phi `, 'Λ': `\Lambda `,
	'²': "^{2}", '³': "^{3}", '⁻': "^{-}", '¹': "^{1}", 'ᵢ': "_{i}", 'ⱼ': "_{j}", 'ₙ': "_{n}", '₀': "_{0}", '₁': "_{1}", '₂': "_{2}", '₃': "_{3}", '₄': "_{4}", '₅': "_{5}", '₆': "_{6}",
	'₇': "_{7}", '₈': "_{8}", '₉': "_{9}", '°': `^{\circ}`, '′': "'", '½': `\tfrac12 `, '¼': `\tfrac14 `,
}

var texASCII = map[rune]string{
	'%': `\%`, '&': `\&`, '#': `\#`, '$': `\$`, '{': `\{`, '}': `\}`, '_': `\_`, '^': `\textasciicircum{}`, '~': `\textasciitilde{}`, '\\': `\textbackslash{}`,
}

func texText(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case texASCII[r] != "":
			b.WriteString(texASCII[r])
		case r == '°':
			b.WriteString(`\textdegree{}`)
		case texSigns[r] != "":
			b.WriteString(`\ensuremath{` + strings.TrimSpace(texSigns[r]) + "}")
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
	var b strings.Builder
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
