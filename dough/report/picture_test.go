package report_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

func percents(name string, values ...float64) report.Series {
	return report.Series{Name: working.Say(name), Of: report.Percents, Values: values}
}

// toldOf is what a picture says in words of itself.
func toldOf(t *testing.T, c report.Chart) string {
	t.Helper()
	svg, err := c.SVG(report.Options{}, 600, 300)
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(svg, "<desc")
	_, rest, _ = strings.Cut(rest, ">")
	text, _, _ := strings.Cut(rest, "</desc>")
	return text
}

// A height that a line has exactly at one of its points is reached there, in its middle and at its end, and a line
// that begins at the height does not climb to it.
func TestAHeightIsReachedAtAPoint(t *testing.T) {
	c := report.Chart{
		X:    report.Series{Name: working.Say("hours"), Of: report.Hours, Values: []float64{0, 1, 2, 3}},
		Main: percents("rise", 10, 40, 70, 90), Levels: []report.Mark{{At: 40, Text: working.Say("half")},
			{At: 90, Text: working.Say("all")}, {At: 10, Text: working.Say("none")}},
	}
	want := "half: 40 %, reached at 1h. all: 90 %, reached at 3h. none: 10 %."
	if got := toldOf(t, c); !strings.Contains(got, want) {
		t.Errorf("told as %q, want %q", got, want)
	}
}

// The least and the most of the second line are those of all its values, wherever they stand.
func TestTheSecondLineHasItsLeastAndMost(t *testing.T) {
	c := report.Chart{
		X:      report.Series{Name: working.Say("hours"), Of: report.Hours, Values: []float64{0, 1, 2}},
		Main:   percents("rise", 10, 40, 70),
		Second: report.Series{Name: working.Say("dough"), Of: report.Degrees, Values: []float64{21, 24, 28}},
	}
	want := "dough: 21.0 °C at first, 28.0 °C at the end, between 21.0 °C and 28.0 °C."
	if got := toldOf(t, c); !strings.Contains(got, want) {
		t.Errorf("told as %q, want %q", got, want)
	}
}

// Beside others a line does not name the axis; alone it does.
func TestTheAxisOfSeveralLinesIsNoneOfTheirs(t *testing.T) {
	c := report.Chart{
		X:    report.Series{Name: working.Say("hours"), Of: report.Hours, Values: []float64{0, 1, 2}},
		Main: percents("one dough", 10, 40, 70),
	}
	axis := func() bool {
		svg, err := c.SVG(report.Options{}, 600, 300)
		if err != nil {
			t.Fatal(err)
		}
		return strings.Contains(svg, ">one dough, %<")
	}
	if !axis() {
		t.Error("one line does not name its axis")
	}
	c.Beside = []report.Series{percents("another", 5, 20, 30)}
	if axis() {
		t.Error("two lines, and one of them names the axis")
	}
}

// Altitudes are told to the nearest meter.
func TestAltitudesAreRoundedToMeters(t *testing.T) {
	c := report.Chart{
		X:    report.Series{Name: working.Say("altitude"), Of: report.MetersAbove, Values: []float64{430.6, 1149.7}},
		Main: report.Series{Name: working.Say("water boils"), Of: report.Degrees, Values: []float64{98.5, 96.1}},
	}
	if got, want := toldOf(t, c), "98.5 °C at 431 m, 96.1 °C at 1150 m"; !strings.Contains(got, want) {
		t.Errorf("told as %q, want %q", got, want)
	}
}

// What is added leaves the report as it was, and a row that is too short has empty cells at its end.
func TestAReportIsNotChangedByWhatIsAdded(t *testing.T) {
	r := shelf()
	r.Sections = append(make([]report.Section, 0, 8), r.Sections...)
	first := r.With("more", shelf())
	_ = r.With("other", report.Report{Headline: working.Say("another")})
	if got := first.Sections[2].Key; got != "first" {
		t.Errorf("the section that was added became %q", got)
	}
	short := report.Grid{
		Key: "short", Columns: []report.GridColumn{{Key: "a", Title: working.Say("A")}, {Key: "b", Title: working.Say("B")}},
		Rows: [][]report.Cell{{report.Of("x")}, {report.Of("y"), report.Of(quantity.Grams(2))}},
	}
	page := report.Report{Headline: working.Say("h"), Sections: []report.Section{{Blocks: []report.Block{short}}}}
	trial.Holds(t, page.Markdown(report.Options{}), "| x | |", "| y | 2 g |")
	trial.Holds(t, page.Text(report.Options{}), "A B x y 2 g")
}

// A page carries the style sheet that it is given alone.
func TestAPageCarriesItsStyle(t *testing.T) {
	if style := report.Style(); !strings.Contains(style, ".report-table") ||
		!strings.Contains(shelf().HTML(report.Options{}), style) {
		t.Error("a page without its style")
	}
}
