package bakeday

import (
	_ "embed"
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

//go:embed sheet.css
var sheetStyle string

// Sheet answers: how is the plan printed, or propped up at the bench? It is a page of HTML that needs nothing else,
// told to the reader of the options: what hands and eyes go to first stands first, at the end are lines to write on.
// The sources of every number are on it where the options ask for them.
func (d Day) Sheet(on report.Options) []byte {
	return document(d.Report().Headline, on, sheetPage{"sheet", arranged(d, d.Report(), firstOnSheet)})
}

// Sheet answers the same for a day of several breads: a page for the day, and one for each bread. That of one bread is
// the bread's own.
func (k KitchenDay) Sheet(on report.Options) []byte {
	if len(k.Breads) == 1 {
		return k.Breads[0].Sheet(on)
	}
	pages := []sheetPage{{"sheet", k.DayReport()}}
	for i, r := range k.BreadReports() {
		pages = append(pages, sheetPage{"sheet bread", arranged(k.Breads[i], r, firstOfBread)})
	}
	return document(k.DayReport().Headline, on, pages...)
}

// A sheetPage is a report and the classes it is styled by.
type sheetPage struct {
	class string
	report.Report
}

// document is a file of pages.
func document(headline working.Message, on report.Options, pages ...sheetPage) []byte {
	var body strings.Builder
	for _, p := range pages {
		body.WriteString("<main class=\"" + p.class + "\">\n" + p.Fragment(on) + "</main>\n")
	}
	return []byte(textpage.Document(on.Language.Tag, headline.Text(on.Reader()), report.Style()+sheetStyle, body.String()))
}

// firstOnSheet are the sections of the first page: what hands and eyes go to while the work is on. Keys that begin
// with one of these belong to it.
var firstOnSheet = []string{"missed", "why", "timetable", "weigh", "oven"}

// firstOfBread are those of a bread that has one page in a day of several: what stands at the mixer is side by side.
var firstOfBread = []string{"timetable", "weigh", "water", "formula", "oven"}

// arranged is the report of a day in the order of the sheet, with lines to write on and the sources of every number.
func arranged(day Day, r report.Report, first []string) report.Report {
	var front, back []report.Section
	for _, key := range first {
		for _, s := range r.Sections {
			if s.Key == key || strings.HasPrefix(s.Key, key+"-") {
				front = append(front, s)
			}
		}
	}
	for _, s := range r.Sections {
		if !holds(front, s.Key) {
			back = append(back, s)
		}
	}
	r.Sections = append(append(front, back...), day.Bake.toWriteDown())
	r.Sources = sourcesOf(day, r)
	return r
}

func holds(sections []report.Section, key string) bool {
	for _, s := range sections {
		if s.Key == key {
			return true
		}
	}
	return false
}

// toWriteDown is what the next bake learns from.
func (b *Bake) toWriteDown() report.Section {
	ready, rise := working.Tell("bakeday.sheet_log_ready", "ready to shape at"),
		working.Tell("bakeday.sheet_log_rise", "rise at shaping")
	if b.undivided() {
		ready, rise = working.Tell("bakeday.sheet_log_cold", "into the cold at"),
			working.Tell("bakeday.sheet_log_cold_rise", "rise then")
	}
	line := func(label working.Message) report.Row { return report.Row{Label: label} }
	return report.Section{Key: "log", Title: working.Tell("bakeday.sheet_title_log", "Write down"),
		Blocks: []report.Block{report.Rows{
			line(working.Tell("bakeday.sheet_log_dough", "dough after mixing")),
			line(ready),
			line(rise),
			line(working.Tell("bakeday.sheet_log_core", "core of the loaf")),
			line(working.Tell("bakeday.sheet_log_hot", "loaf out of the oven")),
			line(working.Tell("bakeday.sheet_log_cool", "loaf when cool")),
		}}}
}

// sourcesOf are those of the report, of its cautions and of every number of the day, each once.
func sourcesOf(day Day, r report.Report) []working.Source {
	out, seen := []working.Source{}, map[string]bool{}
	add := func(all ...working.Source) {
		for _, s := range all {
			if text := s.String(); text != "" && !seen[text] {
				seen[text] = true
				out = append(out, s)
			}
		}
	}
	add(r.Sources...)
	for _, c := range r.Cautions {
		add(c.Source)
	}
	for _, w := range day.Workings() {
		add(w.Sources()...)
	}
	return out
}
