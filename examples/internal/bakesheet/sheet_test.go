package bakesheet_test

import (
	"context"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/schedule/bakeday"
)

// planned plans a shipped bake after a change.
func planned(t *testing.T, name string, change func(*bakeday.Bake)) bakeday.Day {
	t.Helper()
	source, err := os.ReadFile("../../bakes/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var b bakeday.Bake
	if f := tomlbind.Bind(source, &b); len(f.Faults) > 0 {
		t.Fatal(f.Faults)
	}
	if change != nil {
		change(&b)
	}
	zone, err := time.LoadLocation(b.Kitchen.Zone)
	if err != nil {
		t.Fatal(err)
	}
	day, err := b.Plan(context.Background(), bakeday.KitchenClock{Now: time.Date(2026, 11, 25, 20, 0, 0, 0, zone), Zone: zone})
	if err != nil {
		t.Fatal(err)
	}
	return day
}

func render(t *testing.T, day bakeday.Day) string {
	t.Helper()
	return string(day.Sheet(report.Options{EveryCaution: true, WithSources: true}))
}

// element is what the tests look at of an element: its name, attributes and the text in it.
type element struct {
	name string
	attr map[string]string
	text string
	in   []string // names of the elements around it
}

// read takes a page apart; the page must nest properly.
func read(t *testing.T, page string) []*element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var all, open []*element
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			if len(open) > 0 {
				t.Errorf("left open: %s", open[len(open)-1].name)
			}
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch x := token.(type) {
		case xml.StartElement:
			e := &element{name: x.Name.Local, attr: map[string]string{}}
			for _, a := range x.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			for _, o := range open {
				e.in = append(e.in, o.name)
			}
			all, open = append(all, e), append(open, e)
		case xml.CharData:
			for _, o := range open {
				o.text += string(x)
			}
		case xml.EndElement:
			if len(open) == 0 || open[len(open)-1].name != x.Name.Local {
				t.Fatalf("</%s> closes nothing", x.Name.Local)
			}
			open = open[:len(open)-1]
		}
	}
}

func named(all []*element, name string) []*element {
	var out []*element
	for _, e := range all {
		if e.name == name {
			out = append(out, e)
		}
	}
	return out
}

func TestThePageCanBeReadByEveryone(t *testing.T) {
	for _, name := range []string{"hall-kitchen.toml", "same-day-rolls.toml", "supper-loaves.toml", "overnight-buns.toml"} {
		all := read(t, render(t, planned(t, name, nil)))
		if h := named(all, "html"); len(h) != 1 || h[0].attr["lang"] != "en" {
			t.Error("the page does not say its language")
		}
		if title := named(all, "title"); title[0].text == "" {
			t.Error("no title")
		}
		if n := len(named(all, "h1")); n != 1 {
			t.Errorf("%d main headings", n)
		}
		ids := map[string]bool{}
		for _, e := range all {
			if id := e.attr["id"]; id != "" {
				if ids[id] {
					t.Errorf("%s twice", id)
				}
				ids[id] = true
			}
		}
		for _, e := range named(all, "a") {
			if id, ok := strings.CutPrefix(e.attr["href"], "#"); !ok || !ids[id] {
				t.Errorf("%s: a link that leads nowhere on the page: %v", name, e.attr)
			}
		}
		for _, e := range named(all, "th") {
			if e.attr["scope"] == "" {
				t.Errorf("a heading of nothing: %q", e.text)
			}
		}
		for _, e := range all {
			if e.attr["role"] == "region" && e.attr["aria-label"] == "" {
				t.Error("a table without a name")
			}
		}
		boxes := named(all, "input")
		if len(boxes) < 6 {
			t.Errorf("%d boxes to tick", len(boxes))
		}
		for _, e := range boxes {
			if !slices.Contains(e.in, "label") {
				t.Error("a box without a label")
			}
		}
		pictures := named(all, "svg")
		if len(pictures) != 1 {
			t.Errorf("%d pictures", len(pictures))
		}
		for _, e := range pictures {
			if e.attr["role"] != "img" || e.attr["aria-labelledby"] == "" {
				t.Error("a picture that says nothing to those who cannot see it")
			}
		}
	}
}

func TestThePageNeedsNothingElse(t *testing.T) {
	all := read(t, render(t, planned(t, "hall-kitchen.toml", nil)))
	for _, e := range all {
		for _, a := range []string{"src", "srcset", "data", "action", "onload", "onclick"} {
			if e.attr[a] != "" {
				t.Errorf("%s has %s", e.name, a)
			}
		}
		if e.name == "link" && e.attr["href"] != "data:," { // which keeps browsers from asking for an icon
			t.Errorf("there is a link to %s", e.attr["href"])
		}
		if slices.Contains([]string{"script", "iframe", "object", "embed", "img", "base"}, e.name) {
			t.Errorf("there is a %s", e.name)
		}
	}
	for _, e := range named(all, "style") {
		if strings.Contains(e.text, "url(") || strings.Contains(e.text, "@import") {
			t.Error("a style that fetches")
		}
	}
}

func TestThePageSaysWhatThePlanSays(t *testing.T) {
	day := planned(t, "hall-kitchen.toml", nil)
	s, page := day.Data(), render(t, day)
	all := read(t, page)
	body := strings.ReplaceAll(named(all, "body")[0].text, "\u00a0", " ")
	want := []string{s.Water.Temperature.Text(quantity.CelsiusScale, 1), "look at it from", s.Bulk.ShapeAt.Text(0), "dough after mixing"}
	for _, l := range s.Weigh {
		for _, line := range l.Lines {
			want = append(want, line.Name, strings.TrimSuffix(strings.TrimSuffix(line.Mass.Text(quantity.Gram, 1), ".0 g"), " g"))
		}
	}
	for _, st := range s.Steps {
		want = append(want, st.Name.String(), st.Start.Format("15:04"))
	}
	for _, c := range s.Cautions {
		want = append(want, c.Text.String())
	}
	for _, w := range day.Workings() {
		for _, src := range w.Sources() {
			want = append(want, src.String())
		}
	}
	for _, text := range want {
		if !strings.Contains(body, text) {
			t.Errorf("the page does not say %q", text)
		}
	}
}

func TestNamesStayText(t *testing.T) {
	for _, name := range []string{
		`<script>alert(1)</script>`, `</title><script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `' onmouseover='x`, "{{.Name}}", "🍞 żytni & pszenny", "לחם שיפון", "\u202egnp.evil",
		"bell \a and escape \x1b[31m", "]]>", "&lt;b&gt;", strings.Repeat("long ", 19),
	} {
		clean := strings.NewReplacer("\a", "·", "\x1b", "·", "\u202e", "·").Replace(name)
		day := planned(t, "same-day-rolls.toml", nil)
		day.Bake.Name = name // a bake refuses some of these names; a day may come from elsewhere
		page := render(t, day)
		all := read(t, page)
		if n := len(named(all, "script")) + len(named(all, "img")); n > 0 {
			t.Errorf("%q became %d elements", name, n)
		}
		for _, e := range all {
			for a := range e.attr {
				if strings.HasPrefix(a, "on") {
					t.Errorf("%q became an attribute", name)
				}
			}
		}
		if got := named(all, "h1")[0].text; !strings.HasPrefix(got, clean+": 24 of") {
			t.Errorf("%q is shown as %q", name, got)
		}
		if strings.ContainsAny(page, "\a\x1b\u202e") {
			t.Errorf("%q sends commands", name)
		}
	}
}

func TestAPlanThatDoesNotFitSaysWhy(t *testing.T) {
	day := planned(t, "hall-kitchen.toml", func(b *bakeday.Bake) {
		w, err := bakeday.ParseWish("2026-11-26 06:00")
		if err != nil {
			t.Fatal(err)
		}
		b.Wanted = w
	})
	s := day.Data()
	if s.Possible || s.Why == nil || len(s.Why.Rules) == 0 {
		t.Fatal("this was to be impossible")
	}
	body := named(read(t, render(t, day)), "body")[0].text
	for _, want := range []string{"It does not fit", s.Why.Says.String(), "What you weigh"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(body, "Timetable") {
		t.Error("there is a timetable")
	}
}

func TestTheCurveFollowsTheClock(t *testing.T) {
	rising := func(day bakeday.Day, on report.Options) string {
		return named(read(t, string(day.Sheet(on))), "svg")[0].text
	}
	day := planned(t, "hall-kitchen.toml", nil)
	if text := rising(day, report.Options{}); !strings.Contains(text, "time of day") || !strings.Contains(text, "dough, °C") {
		t.Errorf("no time of day, or no temperature: %s", text)
	}
	if text := rising(day, report.Options{Units: working.USCustomary}); !strings.Contains(text, "dough, °F") {
		t.Error("no °F")
	}
	never := planned(t, "hall-kitchen.toml", func(b *bakeday.Bake) {
		b.Wanted = must(bakeday.ParseWish("2026-11-26 06:00"))
	})
	if text := rising(never, report.Options{}); !strings.Contains(text, "after mixing") || strings.Contains(text, "time of day") {
		t.Errorf("without a timetable there is no time of day: %s", text)
	}
}

func TestSourcesAreThereWhenTheyAreAskedFor(t *testing.T) {
	day := planned(t, "hall-kitchen.toml", nil)
	for _, asked := range []bool{false, true} {
		page := string(day.Sheet(report.Options{WithSources: asked}))
		if got := strings.Contains(page, `class="report-sources"`); got != asked {
			t.Errorf("sources asked for: %t, there: %t", asked, got)
		}
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func BenchmarkRender(b *testing.B) {
	day := planned(&testing.T{}, "hall-kitchen.toml", nil)
	for b.Loop() {
		day.Sheet(report.Options{})
	}
}
