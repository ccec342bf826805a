package working

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Text prints the derivation for a terminal: each step with its formula, its symbols, the line
// with numbers, the value and the source, no line longer than about width columns where words allow it.
// A width below 20 means 80.
func (w Working) Text(width int) string {
	if width < 20 {
		width = 80
	}
	var b strings.Builder
	if w.Title != "" {
		fmt.Fprintf(&b, "%s\n%s\n", w.Title, strings.Repeat("=", utf8.RuneCountInString(w.Title)))
	}
	for i, s := range w.Steps {
		if i > 0 || w.Title != "" {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%d. %s\n", i+1, s.Name)
		if s.Formula != "" {
			wrap(&b, width, "   ", s.Symbol+" = "+s.Formula)
		}
		if len(s.Where) > 0 {
			b.WriteString("   where\n")
			longest := 0
			for _, v := range s.Where {
				longest = max(longest, utf8.RuneCountInString(v.Symbol))
			}
			for _, v := range s.Where {
				pad := strings.Repeat(" ", longest-utf8.RuneCountInString(v.Symbol))
				wrap(&b, width, "     ", v.Symbol+pad+"  "+v.Value+"  "+v.Meaning)
			}
		}
		if s.Numbers != "" {
			wrap(&b, width, "   ", s.Symbol+" = "+s.Numbers)
		}
		relation := " ≈ "
		if s.Exact {
			relation = " = "
		}
		wrap(&b, width, "   ", s.Symbol+relation+s.Value)
		if s.Note != "" {
			wrap(&b, width, "   ", "note: "+s.Note)
		}
		if !s.Source.IsZero() {
			wrap(&b, width, "   ", "source: "+s.Source.String())
		}
	}
	return b.String()
}

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

// Markdown prints the derivation as CommonMark with code spans for formulas and a numbered
// list of sources at the end.
func (w Working) Markdown() string {
	var b strings.Builder
	if w.Title != "" {
		fmt.Fprintf(&b, "## %s\n", escape(w.Title))
	}
	sources := w.Sources()
	number := map[Source]int{}
	for i, s := range sources {
		number[s] = i + 1
	}
	for i, s := range w.Steps {
		if i > 0 || w.Title != "" {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%d. **%s**", i+1, escape(s.Name))
		if n := number[s.Source]; n > 0 {
			fmt.Fprintf(&b, " [%d]", n)
		}
		b.WriteString("\n\n")
		if s.Formula != "" {
			fmt.Fprintf(&b, "   %s\n\n", code(s.Symbol+" = "+s.Formula))
		}
		for _, v := range s.Where {
			fmt.Fprintf(&b, "   - %s = %s, %s\n", code(v.Symbol), escape(v.Value), escape(v.Meaning))
		}
		if len(s.Where) > 0 {
			b.WriteByte('\n')
		}
		if s.Numbers != "" {
			fmt.Fprintf(&b, "   %s\n\n", code(s.Symbol+" = "+s.Numbers))
		}
		relation := "≈"
		if s.Exact {
			relation = "="
		}
		fmt.Fprintf(&b, "   %s %s **%s**\n", code(s.Symbol), relation, escape(s.Value))
		if s.Note != "" {
			fmt.Fprintf(&b, "\n   *%s*\n", escape(s.Note))
		}
	}
	if len(sources) > 0 {
		b.WriteString("\nSources\n\n")
		for i, s := range sources {
			fmt.Fprintf(&b, "%d. %s\n", i+1, escape(s.String()))
		}
	}
	return b.String()
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
