package working

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Text tells everything of the derivation to a reader of metric English on a terminal; see [Telling.Text].
func (w Working) Text(width int) string { return Telling{Width: width}.Text(w) }

// wrap writes text at the indent, broken between words, further lines indented by two more.
func wrap(b *strings.Builder, width int, indent, text string) {
	line, used, first := indent, utf8.RuneCountInString(indent), true
	for _, word := range strings.Split(text, " ") {
		n := utf8.RuneCountInString(word)
		if !first && used+1+n > width {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, first = indent+"  ", true
			used = utf8.RuneCountInString(line)
		}
		if !first {
			line += " "
			used++
		}
		line += word
		used += n
		first = false
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
}

// Markdown tells everything of the derivation to a reader of metric English; see [Telling.Markdown].
func (w Working) Markdown() string { return Telling{}.Markdown(w) }

// Markdown tells the derivation as CommonMark with code spans for formulas and a numbered list of sources at
// the end.
func (t Telling) Markdown(w Working) string {
	var b strings.Builder
	title := w.heading(t.Reader)
	if title != "" {
		fmt.Fprintf(&b, "## %s\n", escape(title))
	}
	sources := w.Sources()
	number := map[Source]int{}
	for i, s := range sources {
		number[s] = i + 1
	}
	names := newNames(w.steps, t.Reader)
	for i, s := range t.told(w) {
		if i > 0 || title != "" {
			b.WriteByte('\n')
		}
		cite := ""
		if n := number[s.finding.Source]; n > 0 && t.Level == Everything {
			cite = fmt.Sprintf(" [%d]", n)
		}
		switch {
		case t.Level == InWords:
			fmt.Fprintf(&b, "%d. %s\n", i+1, escape(s.brief(t.Reader)))
		default:
			fmt.Fprintf(&b, "%d. **%s**%s\n\n", i+1, escape(s.finding.Name.Text(t.Reader)), cite)
			t.stepMarkdown(&b, s, names)
		}
	}
	if glossary := w.Glossary(t.Reader); t.Level == Everything && len(glossary) > 0 {
		fmt.Fprintf(&b, "\n%s\n\n", escape(t.word("In other words")))
		for _, g := range glossary {
			fmt.Fprintf(&b, "- %s: %s\n", code(g.Symbol), escape(g.Meaning))
		}
	}
	if len(sources) > 0 && t.Level == Everything {
		fmt.Fprintf(&b, "\n%s\n\n", escape(t.word("Sources")))
		for i, s := range sources {
			fmt.Fprintf(&b, "%d. %s\n", i+1, escape(s.Message().Text(t.Reader)))
		}
	}
	return b.String()
}

// stepMarkdown tells the lines of one step.
func (t Telling) stepMarkdown(b *strings.Builder, s step, names *names) {
	if table := s.table(t.Reader, names); len(table.Columns) > 0 {
		table.markdown(b)
	}
	seen := map[Binding]bool{}
	for i, l := range s.lines(t.Reader, names) {
		if i > 0 {
			b.WriteByte('\n')
		}
		if l.formula != nil && l.Formula != l.Numbers {
			fmt.Fprintf(b, "   %s\n\n", code(l.Symbol+" = "+l.Formula))
		}
		if t.Level == Everything {
			any := false
			for _, v := range l.Where {
				if !seen[v] {
					seen[v], any = true, true
					fmt.Fprintf(b, "   - %s = %s, %s\n", code(v.Symbol), escape(v.Value), escape(v.Meaning))
				}
			}
			if any {
				b.WriteByte('\n')
			}
		}
		if l.formula != nil {
			fmt.Fprintf(b, "   %s\n\n", code(l.Symbol+" = "+l.Numbers))
		}
		fmt.Fprintf(b, "   %s %s **%s**\n", code(l.Symbol), l.relation(), escape(l.Value))
		if after := l.after(); !after.IsZero() {
			fmt.Fprintf(b, "\n   %s\n", escape(after.Text(t.Reader)))
		}
	}
	if t.Level == Everything {
		for _, note := range s.notes(t.Reader) {
			fmt.Fprintf(b, "\n   *%s*\n", escape(note))
		}
	}
}

func (told ToldTable) markdown(b *strings.Builder) {
	row := func(cells []string) { fmt.Fprintf(b, "   | %s |\n", strings.Join(cells, " | ")) }
	var head, rule []string
	for _, c := range told.Columns {
		if c.Formula != "" {
			fmt.Fprintf(b, "   %s\n\n", code(c.Symbol+" = "+c.Formula))
		}
		text := code(c.Symbol)
		if c.Unit != "" && c.Unit != string(Clock) {
			text += " " + escape(c.Unit)
		}
		head, rule = append(head, text), append(rule, "---:")
	}
	row(head)
	row(rule)
	for _, cells := range told.Rows {
		escaped := make([]string, len(cells))
		for k, c := range cells {
			escaped[k] = escape(c)
		}
		row(escaped)
	}
	b.WriteByte('\n')
}

// code makes a code span that survives backquotes and line breaks in its text.
func code(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	fence := "`"
	for strings.Contains(s, fence) {
		fence += "`"
	}
	if len(fence) > 1 {
		return fence + " " + s + " " + fence
	}
	return fence + s + fence
}

var markdownEscapes = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "[", `\[`, "]", `\]`,
	"<", `\<`, ">", `\>`, "|", `\|`, "\r", " ", "\n", " ", "#", `\#`)

func escape(s string) string { return markdownEscapes.Replace(s) }
