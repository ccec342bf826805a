package working

import (
	"strings"
	"unicode/utf8"

	"example.org/maslin/internal/textpage"
)

// TextLines tells the arithmetic alone, each line of it on one line: symbol, formula, numbers, value. The last line
// says what the symbols stand for.
func (t Telling) TextLines(w Working) []string {
	if len(w.steps) == 0 {
		return nil
	}
	var out []string
	for _, l := range w.Lines(t.Reader) {
		text := l.Symbol
		if l.formula != nil && l.Formula != l.Numbers {
			text += " = " + l.Formula
		}
		if l.formula != nil {
			text += " = " + l.Numbers
		}
		text += " " + l.relation() + " " + l.Value
		if after := l.Rounded + l.Taken; after != "" { // at most one of them
			text += " → " + after
		}
		out = append(out, text)
	}
	meanings := t.meanings(w, func(symbol string) string { return symbol + ":" }, func(text string) string { return text })
	return append(out, meanings)
}

// HTMLLines tells the same as [Telling.TextLines] as a list for a page, formulas in MathML, and a paragraph. Formula,
// numbers and value are elements of their own, so that a long line breaks between them. Classes begin with "working-".
func (t Telling) HTMLLines(w Working) string {
	if len(w.steps) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString("<ul class=\"working-lines\">\n")
	n := newNames(w.steps, t.Reader)
	for _, s := range w.steps {
		for _, l := range s.lines(t.Reader, n) {
			parts := mathSymbol(l.Symbol)
			add := func(relation, right string) {
				b.WriteString(`<math displaystyle="true"><mrow>` + parts + `<mo form="infix">` + relation + "</mo>" + right +
					"</mrow></math> ")
				parts = ""
			}
			b.WriteString("<li>")
			if l.formula != nil && l.Formula != l.Numbers {
				add("=", t.mathML(l.formula, n))
			}
			if l.formula != nil {
				add("=", t.mathML(l.numbers, n))
			}
			add(l.relation(), "<mtext>\u00a0"+textpage.Escaped(l.Value)+"</mtext>")
			if after := l.Rounded + l.Taken; after != "" {
				add("→", "<mtext>\u00a0"+textpage.Escaped(after)+"</mtext>")
			}
			b.WriteString("</li>\n")
		}
	}
	b.WriteString("</ul>\n<p class=\"working-where\">" + t.meanings(w, func(symbol string) string {
		return "<math><mrow>" + mathSymbol(symbol) + "<mtext>:</mtext></mrow></math>" // no line breaks before the colon
	}, func(text string) string {
		return textpage.Escaped(textpage.Printable(text))
	}) + "</p>\n")
	return b.String()
}

// LaTeXLines tells the same as [Telling.TextLines] as a part of a document of one's own.
func (t Telling) LaTeXLines(w Working) string {
	if len(w.steps) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString("\\begin{itemize}\\setlength{\\itemsep}{3pt}\n")
	n := newNames(w.steps, t.Reader)
	for _, s := range w.steps {
		for _, l := range s.lines(t.Reader, n) {
			b.WriteString("\\item $" + t.texOneLine(l, n) + "$\n")
		}
	}
	b.WriteString("\\end{itemize}\n{\\small " + t.meanings(w, func(symbol string) string {
		return "$" + texSymbol(symbol) + "$:"
	}, texText) + "\\par}\n")
	return b.String()
}

// meanings says what the symbols of the arithmetic stand for, each once, in the order in which they are read.
func (t Telling) meanings(w Working, symbol, text func(string) string) string {
	var out []string
	told := map[string]bool{}
	add := func(name, meaning string) {
		if !told[name] && meaning != "" {
			told[name] = true
			out = append(out, symbol(name)+" "+text(meaning))
		}
	}
	for _, l := range w.Lines(t.Reader) {
		add(l.Symbol, l.symbol.meaning.Text(t.Reader))
		for _, v := range l.Where {
			add(v.Symbol, v.Meaning)
		}
	}
	return strings.Join(out, "; ")
}

// texOneLine sets symbol, formula, numbers and value behind one another, fractions as large as in a line of their own.
func (r Reader) texOneLine(l Line, n *names) string {
	text := `\displaystyle ` + texSymbol(l.Symbol)
	long := utf8.RuneCountInString(l.Symbol+l.Formula+l.Numbers+l.Value) > widestMath // to be broken
	if l.formula != nil {
		if l.Formula != l.Numbers {
			text += " = " + r.tex(l.formula, n, long)
		}
		text += " = " + r.tex(l.numbers, n, long)
	}
	relation := ` \approx `
	if l.Exact {
		relation = " = "
	}
	text += relation + texValue(l.Value)
	if after := l.Rounded + l.Taken; after != "" { // at most one of them
		text += ` \to ` + texValue(after)
	}
	return text
}
