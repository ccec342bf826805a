package report

import (
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

// Text renders the report for a terminal, or as plain text: no line is wider than the width unless one word is.
func (r Report) Text(o Options) string {
	t := teller{Page: textpage.New(o.width()), o: o, reader: o.Reader()}
	t.Page.ASCII, t.Page.Color = o.ASCII, o.Color
	t.Para(0, t.Bold(t.tell(r.Headline)))
	for _, s := range r.Sections {
		if s.Title.IsZero() {
			t.Gap()
		} else {
			t.Section(t.Bold(t.tell(s.Title)))
		}
		for _, b := range s.Blocks {
			t.block(b)
		}
	}
	if len(r.RestsOn) > 0 {
		t.Section(t.Bold(t.tell(titleRestsOn())))
		t.list(r.RestsOn)
	}
	if len(r.Cautions) > 0 {
		t.Section(t.Warn(t.tell(titleCautions())))
		t.list(cautionTexts(r.Cautions, o.EveryCaution))
	}
	if o.WithSources && len(r.Sources) > 0 {
		t.Section(t.Bold(t.tell(titleSources())))
		for _, s := range r.Sources {
			t.Para(2, t.tell(s.Message()))
		}
	}
	return t.Page.String()
}

func titleRestsOn() working.Message  { return working.Tell("report.rests_on", "What this rests on") }
func titleCautions() working.Message { return working.Tell("report.cautions", "Take care") }
func titleSources() working.Message  { return working.Tell("report.sources", "Sources") }

func (o Options) width() int {
	if o.Width == 0 {
		return 80
	}
	return o.Width
}

// A teller writes a report on a page of plain text.
type teller struct {
	*textpage.Page
	o      Options
	reader working.Reader
}

func (t *teller) tell(m working.Message) string { return textpage.Printable(m.Text(t.reader)) }

func (t *teller) cell(v Cell) string {
	text := textpage.Printable(v.Text(t.reader))
	switch v.raw.(type) {
	case time.Time, quantity.Window:
		return t.Time(text)
	}
	return text
}

func (t *teller) list(items []working.Message) {
	for _, m := range items {
		t.Para(2, t.tell(m))
	}
}

func (t *teller) block(b Block) {
	switch b := b.(type) {
	case Paragraph:
		text := t.tell(b.Text)
		switch b.Tone {
		case Strong:
			text = t.Bold(text)
		case Warning:
			text = t.Warn(text)
		}
		t.Para(2, text)
	case List:
		for _, m := range b {
			t.Hang("  · ", "    ", t.tell(m))
		}
	case Rows:
		rows := make([][]string, len(b))
		for i, r := range b {
			last := t.cell(r.Value)
			if !r.Note.IsZero() {
				last += "; " + t.tell(r.Note)
			}
			rows[i] = []string{t.tell(r.Label), last}
		}
		t.Rows(2, "ll", rows)
	case Grid:
		t.table(b)
	case Reckoning:
		lines := working.Telling{Reader: t.reader}.TextLines(b.Of)
		for i, line := range lines {
			if i < len(lines)-1 {
				t.Hang("  · ", "    ", textpage.Printable(line))
			} else {
				t.Para(2, textpage.Printable(line))
			}
		}
	case Chart:
		t.Gap()
		t.chart(b)
	}
}

// table writes the columns that hold anything, each under its title.
func (t *teller) table(b Grid) {
	if !b.Caption.IsZero() {
		t.Para(2, t.tell(b.Caption))
	}
	columns := b.filled()
	align := ""
	var head []string
	titled := false
	for _, i := range columns {
		align += map[bool]string{true: "r", false: "l"}[b.Columns[i].Right]
		title := t.tell(b.Columns[i].Title)
		titled = titled || title != ""
		head = append(head, title)
	}
	var rows [][]string
	if titled {
		rows = append(rows, head)
	}
	for _, r := range b.withTotal() {
		cells := make([]string, 0, len(columns))
		for _, i := range columns {
			text := ""
			if i < len(r) {
				text = t.cell(r[i])
			}
			cells = append(cells, text)
		}
		rows = append(rows, cells)
	}
	numbers := len(head) > 1 && !slices.Contains(head[1:], "") && strings.Trim(align[1:], "r") == ""
	if numbers && !t.Fits(2, align, rows) {
		t.named(head, rows[1:])
		return
	}
	if n := len(align); n > 0 && align[n-1] == 'r' {
		// The last column wraps, so that numbers in it are set under each other by hand.
		longest := 0
		for _, r := range rows {
			longest = max(longest, textpage.Width(r[n-1]))
		}
		for _, r := range rows {
			r[n-1] = strings.Repeat(textpage.NoBreak, longest-textpage.Width(r[n-1])) + r[n-1]
		}
	}
	t.Rows(2, align, rows)
}

// filled lists the columns in which any row has something.
func (t Grid) filled() []int {
	var out []int
	for i := range t.Columns {
		for _, r := range t.withTotal() {
			if i < len(r) && !r[i].IsZero() {
				out = append(out, i)
				break
			}
		}
	}
	return out
}

func (t Grid) withTotal() [][]Cell {
	if t.Total == nil {
		return t.Rows
	}
	return append(t.Rows[:len(t.Rows):len(t.Rows)], t.Total)
}

// named tells a table of numbers that is too wide for the page row by row, each number with the title of its column.
func (t *teller) named(head []string, rows [][]string) {
	for _, r := range rows {
		t.Para(2, r[0]+":")
		for i := 1; i < len(r); i++ {
			if r[i] != "" {
				t.Para(4, head[i]+": "+r[i])
			}
		}
	}
}
