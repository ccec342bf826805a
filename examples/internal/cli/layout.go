package cli

import (
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A page is printed text: headings, rows in columns, and paragraphs wrapped to the width.
type page struct {
	b     strings.Builder
	width int
	ascii bool // the reader sees nothing but ASCII
	color bool // the reader sees colors
}

func newPage(width int) *page { return &page{width: min(max(width, 20), 100)} }

func (p *page) flush(w io.Writer) error {
	_, err := io.WriteString(w, p.plain(p.b.String()))
	return err
}

func (p *page) line(format string, args ...any) {
	text := p.plain(fmt.Sprintf(format, args...))
	p.b.WriteString(strings.TrimRight(strings.ReplaceAll(text, noBreak, " "), " ") + "\n")
}

const noBreak = "\u00a0"

var numberAndUnit = regexp.MustCompile(`(\d) (%|°C|°F|g\b|kg\b|oz\b|lb\b|m\b|ft\b|h\b|K\b)`)

// glue keeps a number and its unit on one line.
func glue(text string) string { return numberAndUnit.ReplaceAllString(text, "$1"+noBreak+"$2") }

// heading starts a section.
func (p *page) heading(text string) { p.section(p.bold(text)) }

// care starts a section about what can hurt.
func (p *page) care(text string) { p.section(p.warn(text)) }

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
		if !empty && columns(line)+1+columns(word) > p.width {
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
				widths[i] = max(widths[i], columns(cell))
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
			pad := strings.Repeat(" ", max(0, widths[i]-columns(cell)))
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

// columns counts what a terminal shows: combining marks take no column, East Asian wide
// letters and emoji two.
func columns(s string) int {
	n := 0
	for _, r := range withoutCodes(s) {
		switch {
		case unicode.Is(unicode.Mn, r) || r == '\u200d' || r == '\ufe0f':
		case r >= 0x1100 && (r <= 0x115f || r >= 0x2e80 && r <= 0xa4cf || r >= 0xac00 && r <= 0xd7a3 ||
			r >= 0xf900 && r <= 0xfaff || r >= 0xfe30 && r <= 0xfe6f || r >= 0xff00 && r <= 0xff60 || r >= 0x1f300 && r <= 0x1faff):
			n += 2
		default:
			n++
		}
	}
	return n
}

// printable makes a text that a user gave safe for a terminal: control characters become
// visible, and broken UTF-8 is replaced.
func printable(s string) string {
	if !utf8.ValidString(s) {
		s = strings.ToValidUTF8(s, "\uFFFD")
	}
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 {
			return '\u00b7'
		}
		return r
	}, s)
}
