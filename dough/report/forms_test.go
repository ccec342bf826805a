package report_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// shelf is a small report with two tables, paragraphs of every tone and one thing in each list.
func shelf() report.Report {
	say := working.Say
	tins := report.Grid{
		Key: "tins", Caption: say("What stands there"),
		Columns: []report.GridColumn{
			{Key: "tin", Title: say("tin")}, {Key: "empty", Title: say("nothing")},
			{Key: "mark", Title: say("mark")}, {Key: "mass", Title: say("holds"), Right: true},
		},
		Rows: [][]report.Cell{
			{report.Of("long tin"), {}, report.Of("a scratch on its left side"), report.Of(quantity.Grams(1200))},
			{report.Of("cup"), {}, report.Of("none"), report.Of(quantity.Grams(90))},
		},
		Total: []report.Cell{report.Of("both"), {}, {}, report.Of(quantity.Grams(1290))},
	}
	untitled := report.Grid{
		Key:     "untitled",
		Columns: []report.GridColumn{{Key: "a"}, {Key: "b"}},
		Rows:    [][]report.Cell{{report.Of("left"), report.Of("right")}},
	}
	return report.Report{
		Headline: say("Shelf"),
		Sections: []report.Section{
			{Key: "first", Title: say("Tins"), Blocks: []report.Block{
				tins, report.Say(say("said")), report.Paragraph{Text: say("strong"), Tone: report.Strong},
				report.Paragraph{Text: say("warned"), Tone: report.Warning},
				report.Paragraph{Text: say("aside"), Tone: report.Aside},
			}},
			{Key: "second", Blocks: []report.Block{
				untitled, report.List{say("one"), say("two")},
				report.Rows{{Label: say("deep"), Value: report.Of("30"), Note: say("about")}},
			}},
		},
		RestsOn:  []working.Message{say("a look")},
		Cautions: []working.Caution{{Subject: "burns", Text: say("gloves")}},
		Sources:  []working.Source{{Key: "X", Author: "A. Baker", Title: "Tins", Year: 1999}},
	}
}

// A report as pages that were read line by line: every heading, space and class stands where a reader looks for it.
func TestPagesOfAShelf(t *testing.T) {
	o := report.Options{WithSources: true, EveryCaution: true}
	for name, got := range map[string]string{
		"shelf.txt": shelf().Text(o), "shelf.md": shelf().Markdown(o),
		"shelf.html": strings.ReplaceAll(shelf().Fragment(o), "\u00a0", "&nbsp;"),
	} {
		trial.Kept(t, name, got)
	}
}

// What is not asked for, or not there, has no heading.
func TestSourcesOnlyWhereThereAreSome(t *testing.T) {
	without := shelf()
	without.Sources = nil
	pages := func(r report.Report, o report.Options) string { return r.Text(o) + r.Markdown(o) + r.Fragment(o) }
	for what, page := range map[string]string{
		"not asked for": pages(shelf(), report.Options{}), "none": pages(without, report.Options{WithSources: true}),
	} {
		if strings.Contains(page, "Sources") || strings.Contains(page, "A. Baker") {
			t.Errorf("sources that are %s:\n%s", what, page)
		}
	}
}

// A caution that both reports give is said once; another one is added.
func TestCautionsOfTwoReportsAreSaidOnce(t *testing.T) {
	more := shelf()
	more.Cautions = append(more.Cautions, working.Caution{Subject: "steam", Text: working.Say("stand aside")})
	var said []string
	for _, c := range shelf().With("more", more).Cautions {
		said = append(said, c.Text.String())
	}
	if diff := cmp.Diff([]string{"gloves", "stand aside"}, said); diff != "" {
		t.Error(diff)
	}
}

// The second line of a picture has an axis of its own, and the numbers of the picture stand below it, folded.
func TestAPictureHasItsSecondAxisAndItsNumbers(t *testing.T) {
	c := report.Chart{
		Title:  working.Say("Night"),
		X:      report.Series{Name: working.Say("since mixing"), Of: report.Hours, Values: []float64{0, 1, 2}},
		Main:   report.Series{Name: working.Say("rise"), Of: report.Percents, Values: []float64{0, 10, 40}},
		Second: report.Series{Name: working.Say("warmth of dough"), Of: report.Degrees, Values: []float64{26, 25, 24}},
	}
	svg, err := c.SVG(report.Options{}, 700, 360)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(svg, "warmth of dough"); n < 2 { // once told, once at the axis
		t.Errorf("the second line is named %d times", n)
	}
	r := report.Report{Headline: working.Say("Dough"), Sections: []report.Section{{Key: "k", Blocks: []report.Block{c}}}}
	if page := r.Fragment(report.Options{}); !strings.Contains(page,
		"</figure>\n<details><summary>The numbers of this picture</summary>\n<div") {
		t.Errorf("no numbers below the picture:\n%s", page)
	}
}

// A line of one value is told too, by its number and where it stands.
func TestALineOfOneValueIsTold(t *testing.T) {
	c := report.Chart{
		X:    report.Series{Name: working.Say("since mixing"), Of: report.Hours, Values: []float64{3}},
		Main: report.Series{Name: working.Say("rise"), Of: report.Percents, Values: []float64{25}},
	}
	svg, err := c.SVG(report.Options{}, 700, 360)
	if err == nil && !strings.Contains(svg, "rise: 25 % at 3h") {
		t.Errorf("not told: %s", svg)
	}
}

func TestAxesHaveTheirWords(t *testing.T) {
	for axis, want := range map[report.Axis]string{report.Numbers: "numbers", report.Percents: "percent",
		report.Degrees: "degrees", report.Hours: "hours", report.Minutes: "minutes", report.ClockHours: "clock",
		report.Grams: "grams", report.MetersAbove: "altitude"} {
		if got := axis.String(); got != want {
			t.Errorf("%d is %q, want %q", axis, got, want)
		}
	}
}

// What has a meaning in Markdown is a character like others in a text.
func TestMarksOfMarkdownAreCharacters(t *testing.T) {
	page := report.Report{Headline: working.Say(`a \ b * c _ d [e] <f> | # &`)}.Markdown(report.Options{})
	if want := "# a \\\\ b \\* c \\_ d \\[e\\] \\<f\\> \\| \\# \\&\n"; page != want {
		t.Errorf("%q, want %q", page, want)
	}
}

// What a second report names is named, a table of nothing is none, and a page has 80 columns unless told otherwise.
func TestSourcesOfTwoReportsAndTheUsualWidth(t *testing.T) {
	if n := len(shelf().With("more", shelf()).Sources); n != 2 {
		t.Errorf("%d sources of two reports with one each", n)
	}
	empty := report.Report{Headline: working.Say("h"), Sections: []report.Section{{Blocks: []report.Block{
		report.Grid{Key: "k", Columns: []report.GridColumn{{Key: "a", Title: working.Say("A")}}}}}}}
	if page := empty.Text(report.Options{}) + empty.Markdown(report.Options{}); strings.Contains(page, "A") ||
		strings.Contains(page, "|") {
		t.Errorf("a table of nothing: %q", page)
	}
	long := report.Report{Headline: working.Say(strings.Repeat("x ", 200))}
	width := 0
	for line := range strings.Lines(long.Text(report.Options{})) {
		width = max(width, len(strings.TrimRight(line, "\n")))
	}
	if width != 79 { // an even number of characters and the last space is none
		t.Errorf("lines of %d columns", width)
	}
}

// A unit that the key of a column ends with is not said twice, and one that it only begins with is said.
func TestHeadingsOfCSVNameTheirUnit(t *testing.T) {
	g := report.Grid{Columns: []report.GridColumn{{Key: "mass_g"}, {Key: "mass"}, {Key: "_g_of_dough"}},
		Rows: [][]report.Cell{{report.Of(quantity.Grams(1)), report.Of(quantity.Grams(2)), report.Of(quantity.Grams(3))}}}
	if got, want := string(g.CSV()), "mass_g,mass_g,_g_of_dough_g\n1,2,3\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
