package bakesheet

import (
	_ "embed"
	"html"
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

//go:embed sheet.css
var style string

// Render makes the page of a day, for a reader. The sources of every number are on it where the options ask for them.
func Render(day bakeday.Day, on report.Options) []byte {
	return document(day.Report().Headline, on, arranged(day))
}

// RenderDay makes the pages of a day of several breads: one for the day, and one for each bread.
func RenderDay(day bakeday.KitchenDay, on report.Options) []byte {
	pages := []report.Report{day.DayReport()}
	for _, d := range day.Breads {
		page := arranged(d)
		page.Cautions = nil // they stand on the page of the day
		pages = append(pages, page)
	}
	return document(day.DayReport().Headline, on, pages...)
}

// document is a file of pages.
func document(headline working.Message, on report.Options, pages ...report.Report) []byte {
	lang := on.Language.Tag
	if lang == "" {
		lang = "en"
	}
	title := html.EscapeString(textpage.Printable(headline.Text(on.Reader())))
	var body strings.Builder
	for _, r := range pages {
		body.WriteString("<main class=\"sheet\">\n" + r.Fragment(on) + "</main>\n")
	}
	return []byte(`<!DOCTYPE html>
<html lang="` + html.EscapeString(lang) + `">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="color-scheme" content="light dark">
<link rel="icon" href="data:,">
<title>` + title + `</title>
<style>
` + report.Style() + style + `</style>
</head>
<body>
` + body.String() + `</body>
</html>
`)
}

// first are the sections of the first page: what hands and eyes go to while the work is on. Keys that begin with one of
// these belong to it.
var first = []string{"missed", "why", "timetable", "weigh", "oven"}

// arranged is the report of the day in the order of the sheet, with lines to write on and the sources of every number.
func arranged(day bakeday.Day) report.Report {
	r := day.Report()
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
	r.Sections = append(append(front, back...), toWriteDown())
	r.Sources = sources(day, r)
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
func toWriteDown() report.Section {
	line := func(label working.Message) report.Row { return report.Row{Label: label} }
	return report.Section{Key: "log", Title: working.Tell("sheet.title_log", "Write down"), Blocks: []report.Block{report.Rows{
		line(working.Tell("sheet.log_dough", "dough after mixing")),
		line(working.Tell("sheet.log_ready", "ready to shape at")),
		line(working.Tell("sheet.log_rise", "rise at shaping")),
		line(working.Tell("sheet.log_core", "core of the loaf")),
		line(working.Tell("sheet.log_hot", "loaf out of the oven")),
		line(working.Tell("sheet.log_cool", "loaf when cool")),
	}}}
}

// sources are those of the report, of its cautions and of every number of the day, each once.
func sources(day bakeday.Day, r report.Report) []working.Source {
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
