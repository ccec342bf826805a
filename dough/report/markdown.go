package report

import (
	"strings"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

// Markdown renders the report as CommonMark with pipe tables.
func (r Report) Markdown(o Options) string {
	m := marker{reader: o.Reader()}
	m.line("# " + m.tell(r.Headline))
	for _, s := range r.Sections {
		if !s.Title.IsZero() {
			m.line("## " + m.tell(s.Title))
		}
		for _, b := range s.Blocks {
			m.block(b)
		}
	}
	m.list(titleRestsOn(), r.RestsOn)
	m.list(titleCautions(), cautionTexts(r.Cautions, o.EveryCaution))
	if o.WithSources && len(r.Sources) > 0 {
		m.line("## " + m.tell(titleSources()))
		for _, s := range r.Sources {
			m.item(m.tell(s.Message()))
		}
	}
	return strings.TrimRight(m.b.String(), "\n") + "\n"
}

// A marker writes Markdown.
type marker struct {
	b      strings.Builder
	reader working.Reader
	items  bool // the last line was an item of a list
}

func (m *marker) tell(s working.Message) string { return escaped(s.Text(m.reader)) }

func (m *marker) cell(v Cell) string { return escaped(v.Text(m.reader)) }

func (m *marker) line(text string) {
	if m.b.Len() > 0 {
		m.b.WriteByte('\n')
	}
	m.b.WriteString(text + "\n")
	m.items = false
}

func (m *marker) item(text string) {
	if !m.items && m.b.Len() > 0 {
		m.b.WriteByte('\n')
	}
	m.b.WriteString("- " + text + "\n")
	m.items = true
}

func (m *marker) list(title working.Message, items []working.Message) {
	if len(items) == 0 {
		return
	}
	m.line("## " + m.tell(title))
	for _, s := range items {
		m.item(m.tell(s))
	}
}

func (m *marker) block(b Block) {
	switch b := b.(type) {
	case Paragraph:
		text := m.tell(b.Text)
		if b.Tone == Strong || b.Tone == Warning {
			text = "**" + text + "**"
		}
		m.line(text)
	case List:
		m.items = false
		for _, s := range b {
			m.item(m.tell(s))
		}
	case Rows:
		m.items = false
		for _, r := range b {
			text := m.tell(r.Label) + ": " + m.cell(r.Value)
			if !r.Note.IsZero() {
				text += "; " + m.tell(r.Note)
			}
			m.item(text)
		}
	case Grid:
		m.table(b)
	case Reckoning:
		m.items = false
		lines := working.Telling{Reader: m.reader}.TextLines(b.Of)
		for i, line := range lines {
			if i < len(lines)-1 {
				m.item(escaped(line))
			} else {
				m.line(escaped(line))
			}
		}
	case Chart:
		m.table(b.Grid())
	}
}

func (m *marker) table(t Grid) {
	if !t.Caption.IsZero() {
		m.line(m.tell(t.Caption))
	}
	columns := t.filled()
	if len(columns) == 0 {
		return
	}
	row := func(cell func(i int) string) string {
		var b strings.Builder
		for _, i := range columns {
			b.WriteString("| " + cell(i) + " ")
		}
		return b.String() + "|\n"
	}
	m.line("")
	m.b.WriteString(row(func(i int) string { return m.tell(t.Columns[i].Title) }))
	m.b.WriteString(row(func(i int) string {
		if t.Columns[i].Right {
			return "---:"
		}
		return "---"
	}))
	for _, r := range t.withTotal() {
		m.b.WriteString(row(func(i int) string {
			if i < len(r) {
				return m.cell(r[i])
			}
			return ""
		}))
	}
}

var marks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "[", `\[`, "]", `\]`, "<", `\<`, ">",
	`\>`, "|", `\|`, "#", `\#`, "&", `\&`, "\r", " ", "\n", " ")

// escaped keeps a text a text in Markdown.
func escaped(text string) string { return marks.Replace(textpage.Printable(text)) }
