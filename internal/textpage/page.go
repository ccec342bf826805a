package textpage

import (
	"fmt"
	"strings"
)

// A Page is printed text: headings, rows in columns, and paragraphs wrapped to the width.
type Page struct {
	ASCII bool // the reader sees nothing but ASCII
	Color bool // the reader sees colors

	b     strings.Builder
	width int
}

// New is an empty page of that many columns, from 20 to 100: longer lines are hard to read.
func New(width int) *Page { return &Page{width: min(max(width, 20), 100)} }

// Columns is how wide the page is.
func (p *Page) Columns() int { return p.width }

// String is what stands on the page.
func (p *Page) String() string { return p.b.String() }

// Gap leaves a line free, unless the page is empty.
func (p *Page) Gap() {
	if p.b.Len() > 0 {
		p.b.WriteByte('\n')
	}
}

// Write puts text that is laid out already on the page.
func (p *Page) Write(text string) { p.b.WriteString(p.Plain(text)) }

// Line writes a line as it is.
func (p *Page) Line(format string, args ...any) {
	text := p.Plain(fmt.Sprintf(format, args...))
	p.b.WriteString(strings.TrimRight(strings.ReplaceAll(text, NoBreak, " "), " ") + "\n")
}

// NoBreak is a blank at which no line breaks.
const NoBreak = "\u00a0"

// Glue keeps a number and its unit on one line: a blank between a digit and a short word that is not the beginning of
// a longer one does not break.
func Glue(text string) string {
	words := strings.Split(text, " ")
	var b strings.Builder
	for i, w := range words {
		if i > 0 {
			if endsInDigit(words[i-1]) && isUnit(strings.TrimRight(w, ".,;:)")) || minutesFollow(words, i) {
				b.WriteString(NoBreak)
			} else {
				b.WriteByte(' ')
			}
		}
		b.WriteString(w)
	}
	return b.String()
}

func endsInDigit(word string) bool {
	return word != "" && word[len(word)-1] >= '0' && word[len(word)-1] <= '9'
}

// minutesFollow reports whether the minutes of a time begin here, whose hours stand before: "4 h 30 min".
func minutesFollow(words []string, i int) bool {
	return i >= 2 && i+1 < len(words) && words[i-1] == "h" && endsInDigit(words[i-2]) && endsInDigit(words[i]) &&
		strings.TrimRight(words[i+1], ".,;:)") == "min"
}

func isUnit(word string) bool {
	switch word {
	case "%", "°C", "°F", "Δ°C", "Δ°F", "g", "kg", "oz", "lb", "m", "ft", "h", "K",
		"mL", "L", "cm", "in", "am", "pm", "min", "s", "d", "days":
		return true
	}
	return false
}

// Section starts a section.
func (p *Page) Section(title string) {
	p.Gap()
	p.Hang("", "  ", title)
}

// Para prints text wrapped, at an indent; further lines hang two columns deeper.
func (p *Page) Para(indent int, text string) {
	first := strings.Repeat(" ", indent)
	p.Hang(first, first+"  ", text)
}

// Hang writes text wrapped: its first line behind one lead, the others behind another.
func (p *Page) Hang(first, rest, text string) {
	line, empty := first, true
	for _, word := range strings.FieldsFunc(p.Plain(Glue(text)), isBlank) {
		if !empty && Width(line)+1+Width(word) > p.width {
			p.Line("%s", line)
			line, empty = rest, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	p.Line("%s", line)
}

// isBlank is where a line may break; a blank that does not break is none.
func isBlank(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }

// columns is how wide each column but the last must be, and where the last begins.
func (p *Page) columns(indent int, align string, rows [][]string) (widths []int, last int) {
	widths = make([]int, max(0, len(align)-1))
	for _, r := range rows {
		for i, cell := range r {
			if i < len(widths) {
				widths[i] = max(widths[i], Width(p.Plain(cell)))
			}
		}
	}
	last = indent
	for _, w := range widths {
		last += w + 2
	}
	return widths, last
}

// Fits reports whether the columns have room beside each other: the last as a whole, or word by word in a third of the
// page.
func (p *Page) Fits(indent int, align string, rows [][]string) bool {
	_, last := p.columns(indent, align, rows)
	longest, word := 0, 0
	for _, r := range rows {
		if len(r) != len(align) || len(r) == 0 {
			continue
		}
		text := p.Plain(r[len(r)-1])
		longest = max(longest, Width(text))
		for _, w := range strings.FieldsFunc(text, isBlank) {
			word = max(word, Width(w))
		}
	}
	return last+longest <= p.width || last <= p.width*2/3 && last+2+word <= p.width
}

// Rows prints columns: text left, numbers right where align says 'r'. The last column wraps, or where it has no room
// the widest column of text. Where there is no room for columns, one cell follows the other.
func (p *Page) Rows(indent int, align string, rows [][]string) {
	if len(align) > 1 && !p.Fits(indent, align, rows) {
		if narrow, ok := p.narrowed(indent, align, rows); ok {
			p.Rows(indent, align, narrow)
			return
		}
		for _, r := range rows {
			p.Para(indent, strings.Join(nonEmpty(r), "  "))
		}
		return
	}
	if p.ASCII {
		rows = inASCII(rows)
	}
	widths, begins := p.columns(indent, align, rows)
	for _, r := range rows {
		lead := strings.Repeat(" ", indent)
		for i := range align[:len(align)-1] {
			cell := ""
			if i < len(r) {
				cell = r[i]
			}
			pad := strings.Repeat(" ", max(0, widths[i]-Width(cell)))
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
			p.Line("%s", lead)
			continue
		}
		p.Hang(lead, strings.Repeat(" ", begins+2), last)
	}
}

func inASCII(rows [][]string) [][]string {
	out := make([][]string, len(rows))
	for i, r := range rows {
		for _, cell := range r {
			out[i] = append(out[i], ASCII(cell))
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
