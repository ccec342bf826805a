package textpage

import "strings"

// Plain is a text as it stands on the page.
func (p *Page) Plain(text string) string {
	if p.ASCII {
		return ASCII(text)
	}
	return text
}

// asASCII writes what the quantities also read: 24.5 C, 12 dC.
var asASCII = strings.NewReplacer(
	"Δ°C", "dC", "Δ°F", "dF", "°C", "C", "°F", "F", "Δ", "d", "°", " deg",
	"–", "-", "—", "-", "−", "-", "·", "*", "×", "x", "÷", "/", "…", "...", "\u00a0", " ",
	"‘", "'", "’", "'", "“", `"`, "”", `"`,
	"≤", "<=", "≥", ">=", "±", "+-", "√", "sqrt", "∫", "int ", "∞", "inf", "≈", "~",
	"²", "^2", "³", "^3", "¹", "^1", "½", "1/2", "¼", "1/4", "¾", "3/4",
	"⁻", "^-", "µ", "u", "μ", "mu", "λ", "lambda", "α", "alpha", "ρ", "rho",
	"σ", "sigma", "τ", "tau", "Σ", "sum ", "π", "pi",
	"₀", "0", "₁", "1", "₂", "2", "₃", "3", "′", "'",
	"ä", "ae", "ö", "oe", "ü", "ue", "Ä", "Ae", "Ö", "Oe", "Ü", "Ue", "ß", "ss", "é", "e", "è", "e", "ê", "e",
	"á", "a", "à", "a", "â", "a", "ç", "c", "Ç", "C",
	"ñ", "n", "ó", "o", "ô", "o", "í", "i", "î", "i", "ú", "u", "ø", "o", "å", "a",
)

// ASCII writes a text in ASCII; what has no likeness becomes a question mark.
func ASCII(text string) string {
	return strings.Map(func(r rune) rune {
		if r > 0x7e {
			return '?'
		}
		return r
	}, asASCII.Replace(text))
}
