package report_test

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var morning = time.Date(2026, 11, 28, 9, 5, 0, 0, time.UTC)

// hall is a report with one of everything.
func hall() report.Report {
	tell := working.Tell
	weigh := report.Grid{
		Key: "weigh", Caption: tell("test.weigh", "What you weigh"),
		Columns: []report.GridColumn{
			{Key: "mass", Right: true},
			{Key: "item", Title: tell("test.item", "of")},
			{Key: "batch", Title: tell("test.batch", "batch")},
		},
		Rows: [][]report.Cell{
			{report.Weighed(quantity.Grams(2344), quantity.Grams(1)), report.Of("=flour|*rye*")},
			{report.Weighed(quantity.Grams(65.6), quantity.Grams(0.1)), report.Of("salt")},
		},
		Total: []report.Cell{report.Rounded(quantity.Grams(2409.6), 1), report.Of(tell("test.sum", "together"))},
	}
	return report.Report{
		Headline: tell("test.headline", "%d loaves at %t", 6, morning),
		Sections: []report.Section{
			{
				Key:    "weigh",
				Title:  tell("test.title", "Weights"),
				Blocks: []report.Block{weigh, report.Say(tell("test.note", "rounding adds %v", quantity.Grams(0.3)))},
			},
			{Key: "oven", Blocks: []report.Block{
				report.Rows{
					{
						Label: tell("test.core", "core"),
						Value: report.Rounded(quantity.Celsius(94.15), 1),
						Note:  tell("test.boils", "water boils at %.1f", quantity.Celsius(96.15)),
					},
				},
				report.Paragraph{Text: tell("test.warn", "Do not touch"), Tone: report.Warning},
				report.List{tell("test.a", "first"), tell("test.b", "second")},
				report.Chart{
					Title: tell(
						"test.rise",
						"Rise",
					), X: report.Series{Name: tell("test.hours", "after mixing"), Of: report.Hours, Values: []float64{0, 1, 2}},
					Main: report.Series{
						Name:   tell("test.likely", "likely"),
						Of:     report.Percents,
						Values: []float64{0, 10, 40},
					},
					Low: report.Series{
						Name:   tell("test.low", "early"),
						Of:     report.Percents,
						Values: []float64{0, 5, 20},
					},
					High: report.Series{
						Name:   tell("test.high", "late"),
						Of:     report.Percents,
						Values: []float64{0, 20, 90},
					},
					Second: report.Series{
						Name:   tell("test.dough", "dough"),
						Of:     report.Degrees,
						Values: []float64{26, 25, 24},
					},
				},
			}},
		},
		Cautions: []working.Caution{
			{
				Subject: "burns",
				Text:    tell("test.burns", "The oven is at %.0f: gloves", quantity.Celsius(245)),
				Short:   tell("test.burns_short", "gloves"),
			},
			{Subject: "burns", Text: tell("test.pot", "A pot too"), Short: tell("test.burns_short", "gloves")},
			{Subject: "allergens", Text: tell("test.gluten", "gluten")},
		},
		RestsOn: []working.Message{tell("test.rests", "a kitchen at %v", quantity.Celsius(21))},
		Sources: []working.Source{{Key: "X", Author: "A. Baker", Title: "Bread <1>", Year: 1999}},
	}
}

// Every rendering of one report carries the same numbers, in the units asked for.
func TestOneTelling(t *testing.T) {
	for _, units := range []working.Units{working.Metric, working.USCustomary} {
		o := report.Options{Units: units, EveryCaution: true, WithSources: true}
		want := []string{
			"2344 g",
			"65.6 g",
			"2409.6 g",
			"94.2 °C",
			"96.2 °C",
			"245 °C",
			"21 °C",
			"0.3 g",
			"Bread",
			"A. Baker",
		}
		if units == working.USCustomary {
			want = []string{"5 lb 2.7 oz", "2.3 oz", "201 °F", "205 °F", "473 °F", "69.8 °F"}
		}
		for form, text := range map[string]string{"text": hall().Text(o), "markdown": hall().Markdown(o),
			"html": strings.ReplaceAll(hall().HTML(o), "\u00a0", " ")} {
			for _, w := range want {
				if !strings.Contains(text, w) {
					t.Errorf("%s in %v lacks %q:\n%s", form, units, w, text)
				}
			}
		}
	}
}

// Cautions are told in short once, those without a short form in full.
func TestCautions(t *testing.T) {
	short := hall().Text(report.Options{})
	if strings.Count(short, "gloves") != 1 || strings.Contains(short, "245") ||
		!strings.Contains(short, "allergens: gluten") {
		t.Error(short)
	}
	if full := hall().Text(report.Options{EveryCaution: true}); !strings.Contains(full, "245") ||
		!strings.Contains(full, "A pot too") {
		t.Error(full)
	}
}

// A table as CSV reads back, with units in its heading and no cell that a spreadsheet would compute.
func TestCSV(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(string(hall().Grids()[0].CSV()))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{{"mass_g", "item", "batch"}, {"2344", "'=flour|*rye*", ""}, {"65.6", "salt", ""}}
	if diff := cmp.Diff(want, rows); diff != "" {
		t.Error(diff)
	}
}

// Names add no markup and no commands, whatever stands in them; lines keep to the width.
func TestHostileNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"\x1b[31mred", "<script>alert(1)</script>",
			"a\u202eb", "**x**", "| a |", "&amp;", "\"'`", "\xff\xfe"})).
			Draw(t, "name")
		r := hall()
		table := r.Sections[0].Blocks[0].(report.Grid)
		table.Rows = [][]report.Cell{{report.Of(quantity.Grams(1)), report.Of(name)}}
		r.Sections[0].Blocks = []report.Block{table, report.Say(working.Tell("test.name", "of %s", name))}
		width := rapid.IntRange(0, 120).Draw(t, "width")
		text := r.Text(report.Options{Width: width, ASCII: rapid.Bool().Draw(t, "ascii")})
		for _, forbidden := range []string{"\x1b", "\u202e", "\x00", "\x07"} {
			if strings.Contains(text, forbidden) {
				t.Fatalf("%q reaches the terminal", forbidden)
			}
		}
		page := r.HTML(report.Options{})
		if strings.Count(page, "<") != strings.Count(page, ">") || strings.Contains(page, "<script") {
			t.Fatalf("markup in a name: %q", name)
		}
		markdown := r.Markdown(report.Options{})
		if strings.Contains(markdown, "**x**") || strings.Contains(markdown, "\x1b") {
			t.Fatalf("Markdown of a name: %q", name)
		}
	})
}

func TestPlainCharacters(t *testing.T) {
	for _, r := range hall().Text(report.Options{ASCII: true, EveryCaution: true, WithSources: true, Width: 40}) {
		if r > 0x7e || r < ' ' && r != '\n' {
			t.Errorf("%q is not ASCII", r)
		}
	}
	if colored := hall().Text(report.Options{Color: true}); !strings.Contains(colored, "\x1b[1m") {
		t.Error("no color")
	}
}

// Lines are no wider than asked for where words allow it.
func TestWidth(t *testing.T) {
	for _, width := range []int{20, 30, 57, 80} {
		for _, line := range strings.Split(hall().Text(report.Options{Width: width}), "\n") {
			if n := len([]rune(line)); n > width && len(strings.Fields(line)) > 2 {
				t.Errorf("%d columns where there are %d: %q", n, width, line)
			}
		}
	}
}

// A report is data too: its values keep their quantities.
func TestJSON(t *testing.T) {
	b, err := json.Marshal(hall())
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"key":"weigh"`, `"94.15 °C"`, `"test.headline"`} {
		if !strings.Contains(string(b), want) {
			t.Errorf("no %s in %s", want, b)
		}
	}
	var zero report.Report
	if text := zero.Text(report.Options{}) + zero.Markdown(report.Options{}); strings.TrimSpace(text) != "#" {
		t.Errorf("the zero report says %q", text)
	}
	if zero.HTML(report.Options{}) == "" || zero.Section("x").Key != "x" || hall().Section("oven").Blocks == nil {
		t.Error("sections")
	}
}

func TestWhatIsWeighedHasABoxToTick(t *testing.T) {
	g := report.Grid{
		Key: "weigh",
		Columns: []report.GridColumn{{Key: "mass", Title: working.Tell("test.mass", "mass"), Right: true, Tick: true},
			{Key: "item"}},
		Rows:  [][]report.Cell{{report.Of(quantity.Grams(12)), report.Of("salt")}, {report.Cell{}, report.Of("nothing")}},
		Total: []report.Cell{report.Of(quantity.Grams(12)), report.Of("together")},
	}
	page := report.Report{Headline: working.Tell("test.head", "head"), Sections: []report.Section{{Key: "k",
		Blocks: []report.Block{g}}}}.Fragment(report.Options{})
	want := `<td class="report-number" data-title="mass"><label><input type="checkbox"> ` + "12\u00a0g" + `</label></td>` +
		`<td><bdi>salt</bdi></td>`
	if !strings.Contains(page, want) {
		t.Errorf("no box, or no title for narrow screens:\n%s", page)
	}
	if n := strings.Count(page, "checkbox"); n != 1 {
		t.Errorf("%d boxes, want one: neither for nothing nor for the total", n)
	}
}

func TestNumbersThatAreTooWideAreNamed(t *testing.T) {
	g := report.Grid{Key: "wide", Columns: []report.GridColumn{{Key: "at"}}, Rows: [][]report.Cell{{report.Of("first")}}}
	for i := range 3 {
		g.Columns = append(g.Columns, report.GridColumn{Key: string(rune('a' + i)), Title: working.Tell("test.column",
			"column %d", i), Right: true})
		g.Rows[0] = append(g.Rows[0], report.Of(quantity.Grams(float64(i))))
	}
	of := func(width int) string {
		return report.Report{Headline: working.Tell("test.head", "head"), Sections: []report.Section{{Key: "k",
			Blocks: []report.Block{g}}}}.Text(report.Options{Width: width})
	}
	// The columns are 2 + 5 + 3·(2 + 8) = 37 wide.
	if text := of(37); strings.Contains(text, "column 1: ") || !strings.Contains(text,
		"  first       0 g       1 g       2 g\n") {
		t.Errorf("37 columns are enough:\n%s", text)
	}
	if text := of(36); !strings.Contains(text, "  first:\n    column 0: 0 g\n    column 1: 1 g\n    column 2: 2 g\n") {
		t.Errorf("36 columns are not enough:\n%s", text)
	}
}

// A picture is told in words too, in the reader's units and language.
func TestChartInWords(t *testing.T) {
	c := report.Chart{
		Title:  working.Say("a rise"),
		X:      report.Series{Name: working.Say("after mixing"), Of: report.Hours, Values: []float64{0, 2, 4}},
		Main:   report.Series{Name: working.Say("rise"), Of: report.Percents, Values: []float64{0, 50, 150}},
		Low:    report.Series{Name: working.Say("low"), Of: report.Percents, Values: []float64{0, 20, 100}},
		High:   report.Series{Name: working.Say("high"), Of: report.Percents, Values: []float64{0, 80, 200}},
		Second: report.Series{Name: working.Say("dough"), Of: report.Degrees, Values: []float64{25, 20, 22}},
		Levels: []report.Mark{{At: 75, Text: working.Say("wanted")}, {At: 400, Text: working.Say("never")}},
		Marks:  []report.Mark{{At: 1, Text: working.Say("fold")}},
	}
	about := func(o report.Options) string {
		t.Helper()
		svg, err := c.SVG(o, 600, 300)
		if err != nil {
			t.Fatal(err)
		}
		_, rest, _ := strings.Cut(svg, "<desc")
		_, rest, _ = strings.Cut(rest, ">")
		text, _, _ := strings.Cut(rest, "</desc>")
		return text
	}
	want := "rise: 0 % at 0m, 150 % at 4h. low to high: 100 % to 200 % at the end. wanted: 75 %, reached at 2h30m (1h53m to 3h23m). " +
		"never: 400 %. 1h: fold. dough: 25.0 °C at first, 22.0 °C at the end, between 20.0 °C and 25.0 °C."
	if diff := cmp.Diff(want, about(report.Options{})); diff != "" {
		t.Error(diff)
	}
	if got := about(report.Options{Units: working.USCustomary}); !strings.Contains(got, "77 °F at first") {
		t.Error(got)
	}
	c.Top, c.Beside = 160, []report.Series{{Name: working.Say("other"), Of: report.Percents, Values: []float64{1, 2, 3}}}
	if got := about(report.Options{}); !strings.Contains(got, "other: 1 % to 3 %. What goes beyond 160 % is cut. wanted") {
		t.Error(got)
	}
	c.Top, c.Beside = 0, nil
	c.Low, c.High, c.Second, c.Levels = report.Series{}, report.Series{}, report.Series{}, c.Levels[:1]
	for axis, want := range map[report.Axis]string{
		report.Minutes:     "0 % at 0m, 150 % at 4m. wanted: 75 %, reached at 3m. 1m: fold.",
		report.ClockHours:  "at 04:00. wanted",
		report.MetersAbove: "150 % at 4 m", report.Grams: "150 % at 4 g", report.Numbers: "150 % at 4.00",
		report.Degrees: "150 % at 4.0 °C",
	} {
		c.X.Of = axis
		if got := about(report.Options{}); !strings.Contains(got, want) {
			t.Errorf("%v: %s, want %s", axis, got, want)
		}
	}
}

// A report behind another keeps both as they are; what hurts is said once.
func TestOneReportBehindAnother(t *testing.T) {
	say := func(id string) working.Message { return working.Tell("test."+id, id) }
	first := report.Report{Headline: say("first"), Sections: []report.Section{{Key: "a"}},
		RestsOn: []working.Message{say("x")}, Cautions: []working.Caution{{Text: say("hot")}}}
	bare := report.Report{Headline: say("bare"), RestsOn: []working.Message{say("y")},
		Cautions: []working.Caution{{Text: say("hot")}, {Text: say("cold")}}}
	all := first.With("bare", bare).With("more", report.Report{Sections: []report.Section{{Key: "b"}, {Key: "c"}}})
	var keys []string
	for _, s := range all.Sections {
		keys = append(keys, s.Key)
	}
	if strings.Join(keys, " ") != "a bare b c" || all.Headline != first.Headline || len(all.RestsOn) != 2 ||
		len(all.Cautions) != 2 || len(first.Sections) != 1 || len(first.Cautions) != 1 {
		t.Errorf("%v: %+v", keys, all)
	}
	if p := all.Section("bare").Blocks[0].(report.Paragraph); p.Text != bare.Headline {
		t.Error(p)
	}
}

// A table is called by its caption, or by the heading it stands under, in the language of the reader, and never by its
// key; what belongs together stands on one line.
func TestTablesAreCalledWhatTheirPartIs(t *testing.T) {
	g := report.Grid{Key: "steps", Columns: []report.GridColumn{{Key: "takes"}},
		Rows: [][]report.Cell{{report.Of(quantity.Elapsed(270 * time.Minute))}}}
	named := g
	named.Caption = working.Tell("test.caption", "the steps")
	german := working.Language{Tag: "de", Sentences: map[string]string{
		"test.head": "Kopf", "test.title": "Zeitplan", "test.caption": "die Schritte", "working.hours_minutes": "%d h %02d min",
	}}
	title := working.Tell("test.title", "timetable")
	page := report.Report{Headline: working.Tell("test.head", "head"), Sections: []report.Section{
		{Key: "first", Title: title, Blocks: []report.Block{g, named}}, {Key: "untitled", Blocks: []report.Block{g}},
	}}.Fragment(report.Options{Language: german})
	var labels []string
	for _, part := range strings.Split(page, `aria-label="`)[1:] {
		label, _, _ := strings.Cut(part, `"`)
		labels = append(labels, label)
	}
	if !cmp.Equal(labels, []string{"Zeitplan", "die Schritte", "Kopf"}) {
		t.Errorf("%q", labels)
	}
	if n := strings.Count(page, "4\u00a0h\u00a030\u00a0min"); n != 3 {
		t.Errorf("%d times 4 h 30 min on one line, want 3:\n%s", n, page)
	}
}
