package report_test

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// A page is whole HTML: every element that is opened is closed, in order, and each block stands in its own.
func TestPageIsWholeHTML(t *testing.T) {
	page := hall().HTML(report.Options{})
	void := map[string]bool{"meta": true, "br": true, "hr": true, "img": true, "input": true, "link": true, "col": true}
	style := regexp.MustCompile(`(?s)<style>.*?</style>`)
	var open []string
	tags := regexp.MustCompile(`<(/?)([a-z][a-z0-9]*)([^>]*)>`)
	for _, m := range tags.FindAllStringSubmatch(style.ReplaceAllString(page, ""), -1) {
		name := m[2]
		switch {
		case void[name] || strings.HasSuffix(m[3], "/"):
		case m[1] == "":
			open = append(open, name)
		case len(open) == 0 || open[len(open)-1] != name:
			t.Fatalf("</%s> closes %v", name, open)
		default:
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		t.Errorf("never closed: %v", open)
	}
	for _, want := range []string{
		`<html lang="en">`, "<ul>\n<li>first</li>\n<li>second</li>\n</ul>", "<dl>\n<div><dt>core</dt><dd>",
		"</dd></div>\n</dl>", `<p class="report-warning">Do not touch</p>`, "<p>rounding adds 0.3\u00a0g</p>",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if german := hall().HTML(report.Options{Language: working.Language{Tag: "de"}}); !strings.Contains(german,
		`<html lang="de">`) {
		t.Error("the page does not say that it is German")
	}
}

// A picture is 700 by 360 unless asked for otherwise, and never narrower than 240 or wider than 2000.
func TestSizeOfPictures(t *testing.T) {
	for asked, want := range map[int]string{
		0: `viewBox="0 0 700 360"`, 600: `viewBox="0 0 600 312"`, 100: `viewBox="0 0 240 `,
		5000: `viewBox="0 0 2000 420"`,
	} {
		if page := hall().HTML(report.Options{Picture: asked}); !strings.Contains(page, want) {
			t.Errorf("asked for %d: no %s: %s", asked, want, regexp.MustCompile(`viewBox="[^"]*"`).FindString(page))
		}
	}
}

// What a spreadsheet is given: a number without its unit, minutes, moments to the minute.
func TestPlainNumbers(t *testing.T) {
	cells := map[string]report.Cell{
		"90":               report.Of(quantity.Elapsed(90*time.Minute + 29*time.Second)),
		"91":               report.Of(90*time.Minute + 31*time.Second),
		"2026-11-28 09:05": report.Of(morning),
		"94.15":            report.Rounded(quantity.Celsius(94.15), 1),
		"-5":               report.Of(quantity.DeltaCelsius(-5)),
		"12.5":             report.Of(quantity.NewPercent(12.5)),
		"7":                report.Of(7),
		"0.25":             report.Of(0.25),
		"":                 report.Of(quantity.Temperature{}),
	}
	for want, c := range cells {
		csv := string(report.Grid{Columns: []report.GridColumn{{Key: "n"}},
			Rows: [][]report.Cell{{c}, {report.Of("x")}}}.CSV())
		lines := strings.Split(csv, "\n")
		if got := strings.Trim(strings.TrimSpace(lines[1]), `"`); got != want {
			t.Errorf("%v: %q, want %q", c, got, want)
		}
	}
}

// Weighed shows what the scale can: 0.1 g one decimal, 0.25 g two, 0.001 g three, and no more than that.
func TestWeighedByItsScale(t *testing.T) {
	for step, want := range map[float64]string{1: "66 g", 5: "66 g", 0.1: "65.7 g", 0.25: "65.65 g", 0.001: "65.654 g",
		0.0001: "65.654 g"} {
		c := report.Weighed(quantity.Grams(65.6542), quantity.Grams(step))
		if got := c.Text(working.Reader{}); got != want {
			t.Errorf("on a scale of %v g %q, want %q", step, got, want)
		}
	}
}

func series(of report.Axis, values ...float64) report.Series {
	return report.Series{Name: working.Tell("test.series", "line"), Of: of, Values: values}
}

// A chart as numbers has a column for every line, and a row for every point of it.
func TestChartAsNumbers(t *testing.T) {
	c := report.Chart{
		X: series(report.Hours, 0, 1.5), Main: series(report.Percents, 10, 40), Low: series(report.Percents, 5, 20),
		Beside: []report.Series{series(report.Grams, 1.25, 2)},
	}
	g := c.Grid()
	var keys []string
	for _, k := range g.Columns {
		keys = append(keys, k.Key)
	}
	if got := strings.Join(keys, " "); got != "x low value beside_1" {
		t.Errorf("columns %s", got)
	}
	var rows []string
	for _, r := range g.Rows {
		var cells []string
		for _, c := range r {
			cells = append(cells, c.Text(working.Reader{}))
		}
		rows = append(rows, strings.Join(cells, " | "))
	}
	if got, want := strings.Join(rows,
		"\n"), "0.00 | 5.0 % | 10.0 % | 1.2 g\n1.50 | 20.0 % | 40.0 % | 2.0 g"; got != want {
		t.Errorf("rows\n%s\nwant\n%s", got, want)
	}
	if md := (report.Report{Headline: working.Tell("test.c", "c"),
		Sections: []report.Section{{Blocks: []report.Block{c}}}}).
		Markdown(report.Options{}); !strings.Contains(md, "40.0 %") {
		t.Errorf("a chart in Markdown is its numbers:\n%s", md)
	}
}

// The words for a chart name its ends on every kind of axis, in the reader's units, and are its title when it is empty.
func TestWordsForEveryAxis(t *testing.T) {
	for _, c := range []struct {
		of     report.Axis
		values []float64
		metric string
		us     string
	}{
		{report.Percents, []float64{10, 40}, "line: 10 % at 1h, 40 % at 2h", "line: 10 % at 1h, 40 % at 2h"},
		{report.Degrees, []float64{20, 25}, "line: 20.0 °C at 1h, 25.0 °C at 2h", "line: 68 °F at 1h, 77 °F at 2h"},
		{report.Minutes, []float64{5, 90}, "line: 5m at 1h, 1h30m at 2h", "line: 5m at 1h, 1h30m at 2h"},
		{report.Grams, []float64{500, 1000}, "line: 500 g at 1h, 1000 g at 2h", "oz at 1h"},
		{report.MetersAbove, []float64{100, 1150}, "line: 100 m at 1h, 1150 m at 2h", "3773 ft at 2h"},
	} {
		chart := report.Chart{Title: working.Tell("test.title", "Weights"), X: series(report.Hours, 1, 2),
			Main: series(c.of, c.values...)}
		for units, want := range map[working.Units]string{working.Metric: c.metric, working.USCustomary: c.us} {
			svg, err := chart.SVG(report.Options{Units: units}, 700, 360)
			if err != nil || !strings.Contains(svg, want) {
				t.Errorf("%v, %v: no %q in\n%.600s", c.of, units, want, svg)
			}
		}
	}
	clock := report.Chart{X: series(report.ClockHours, 13.5, 15), Main: series(report.Percents, 0, 75)}
	svg, err := clock.SVG(report.Options{}, 700, 360)
	if err != nil || !strings.Contains(svg, "0 % at 13:30, 75 % at 15:00") || !strings.Contains(svg, ">14:00<") {
		t.Errorf("%v\n%.900s", err, svg)
	}
	height := report.Chart{X: series(report.Hours, 0, 1), Main: series(report.MetersAbove, 0, 1000)}
	if svg, err = height.SVG(report.Options{Units: working.USCustomary}, 700, 360); err != nil ||
		!strings.Contains(svg, ">3000<") || strings.Contains(svg, ">4000<") && !strings.Contains(svg, ">3000<") {
		t.Errorf("1000 m are 3281 ft: %v", regexp.MustCompile(`>\d+<`).FindAllString(svg, -1))
	}
	weight := report.Chart{X: series(report.Hours, 0, 1), Main: series(report.Grams, 0, 567)}
	if svg, err = weight.SVG(report.Options{Units: working.USCustomary}, 700, 360); err != nil ||
		!strings.Contains(svg, ">20<") || strings.Contains(svg, ">500<") {
		t.Errorf("567 g are 20 oz: %v", regexp.MustCompile(`>\d+<`).FindAllString(svg, -1))
	}
	one := report.Chart{Title: working.Tell("test.one", "One point"), X: series(report.Hours, 0),
		Main: series(report.Percents, 5)}
	page := report.Report{Headline: working.Tell("test.h", "h"), Sections: []report.Section{{Blocks: []report.Block{one}}}}
	if text := page.Text(report.Options{Width: 80}); strings.Contains(text, "%!") {
		t.Error(text)
	}
	for _, axis := range quantity.Values[report.Tone]() {
		var back report.Tone
		text, err := axis.MarshalText()
		if err != nil || back.UnmarshalText(text) != nil || back != axis {
			t.Errorf("%v is read back as %v", axis, back)
		}
	}
	var tone report.Tone
	if tone.UnmarshalText([]byte("shouted")) == nil {
		t.Error("read a tone that there is not")
	}
}
