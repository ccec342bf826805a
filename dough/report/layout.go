package report

import (
	"fmt"
	"strings"
)

// A page is printed text: headings, rows in columns, and paragraphs wrapped to the width.
type page struct {
	b     strings.Builder
	width int
	ascii bool // the reader sees nothing but ASCII
	color bool // the reader sees colors
}

func newPage(width int) *page { return &page{width: min(max(width, 20), 100)} }

func (p *page) line(format string, args ...any) {
	text := p.plain(fmt.Sprintf(format, args...))
	p.b.WriteString(strings.TrimRight(strings.ReplaceAll(text, noBreak, " "), " ") + "\n")
}

const noBreak = "\u00a0"

// glue keeps a number and its unit on one line: a blank between a digit and a short word that is not the beginning of
// a longer one does not break.
func glue(text string) string {
	words := strings.Split(text, " ")
	var b strings.Builder
	for i, w := range words {
		if i > 0 {
			before := words[i-1]
			if before != "" && before[len(before)-1] >= '0' && before[len(before)-1] <= '9' &&
				isUnit(strings.TrimRight(w, ".,;:)")) {
				b.WriteString(noBreak)
			} else {
				b.WriteByte(' ')
			}
		}
		b.WriteString(w)
	}
	return b.String()
}

func isUnit(word string) bool {
	switch word {
	case "%", "°C", "°F", "Δ°C", "Δ°F", "g", "kg", "oz", "lb", "m", "ft", "h", "K", "mL", "L", "cm", "in", "am", "pm":
		return true
	}
	return false
}

// section starts a section.
func (p *page) section(title string) {
	if p.b.Len() > 0 {
		p.b.WriteByte('\n')
	}
	p.hang("", "  ", title)
}

// para prints text wrapped, at an indent; further lines hang two columns deeper.
func (p *page) para(indent int, text string) {
	first := strings.Repeat(" ", indent)
	p.hang(first, first+"  ", text)
}

func (p *page) hang(first, rest, text string) {
	line, empty := first, true
	for _, word := range strings.FieldsFunc(p.plain(glue(text)), func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }) {
		if !empty && width(line)+1+width(word) > p.width {
			p.line("%s", line)
			line, empty = rest, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	p.line("%s", line)
}

// rows prints columns: text left, numbers right where align says 'r'. The last column wraps.
func (p *page) rows(indent int, align string, rows [][]string) {
	if p.ascii {
		rows = inASCII(rows)
	}
	widths := make([]int, len(align))
	for _, r := range rows {
		for i, cell := range r {
			if i < len(align)-1 {
				widths[i] = max(widths[i], width(cell))
			}
		}
	}
	total := indent
	for _, w := range widths {
		total += w + 2
	}
	if total > p.width*2/3 && len(align) > 1 { // too narrow for columns: one cell after the other
		for _, r := range rows {
			p.para(indent, strings.Join(nonEmpty(r), "  "))
		}
		return
	}
	for _, r := range rows {
		lead := strings.Repeat(" ", indent)
		for i := range align[:len(align)-1] {
			cell := ""
			if i < len(r) {
				cell = r[i]
			}
			pad := strings.Repeat(" ", max(0, widths[i]-width(cell)))
			if align[i] == 'r' {
				lead += pad + cell + "  "
			} else {
				lead += cell + pad + "  "
			}
		}
		last := ""
		if len(r) == len(align) {
			last = r[len(r)-1]
		}
		if last == "" {
			p.line("%s", lead)
			continue
		}
		p.hang(lead, strings.Repeat(" ", total), last)
	}
}

func inASCII(rows [][]string) [][]string {
	out := make([][]string, len(rows))
	for i, r := range rows {
		for _, cell := range r {
			out[i] = append(out[i], asciiText(cell))
		}
	}
	return out
}

func nonEmpty(cells []string) []string {
	var out []string
	for _, c := range cells {
		if c != "" {
			out = append(out, c)
		}
	}
	return out
}
