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
	"example.org/maslin/examples/internal/bakesheet"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/curve"
	"example.org/maslin/schedule/bakeday"
)

func metric() bakesheet.Units {
	return bakesheet.Units{
		Mass:        func(m quantity.Mass) string { return m.Text(quantity.Gram, 1) },
		Temperature: func(t quantity.Temperature, places int) string { return t.Text(quantity.CelsiusScale, places) },
		Delta:       func(d quantity.TemperatureDelta) string { return d.String() },
	}
}

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
	page, err := bakesheet.Render(day.Data(), day.Workings(), metric())
	if err != nil {
		t.Fatal(err)
	}
	return string(page)
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
	for _, name := range []string{"hall-kitchen.toml", "same-day-rolls.toml", "supper-loaves.toml"} {
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
		for _, e := range named(all, "table") {
			if !slices.ContainsFunc(named(all, "caption"), func(c *element) bool { return strings.Contains(e.text, c.text) }) {
				t.Error("a table without a caption")
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
		if len(pictures) != 2 {
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
		if slices.Contains([]string{"script", "link", "iframe", "object", "embed", "img", "base"}, e.name) {
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
	want := []string{s.Water.Temperature.Text(quantity.CelsiusScale, 1), "look at it from", s.Bulk.ShapeAt.Text(0)}
	for _, l := range s.Weigh {
		for _, line := range l.Lines {
			want = append(want, line.Name, line.Mass.Text(quantity.Gram, 1))
		}
	}
	for _, st := range s.Steps {
		want = append(want, st.Name.String(), st.Start.Format("15:04"))
	}
	for _, c := range s.Cautions {
		want = append(want, c.Text.String(), c.Source)
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
		data := day.Data() // a bake refuses some of these names; data may come from elsewhere
		lines := data.Weigh[len(data.Weigh)-1].Lines
		data.Name, lines[0].Name = name, name
		content, err := bakesheet.Render(data, day.Workings(), metric())
		if err != nil {
			t.Fatal(err)
		}
		page := string(content)
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
		if got := named(all, "h1")[0].text; got != clean {
			t.Errorf("%q is shown as %q", name, got)
		}
		if !strings.Contains(named(all, "tbody")[1].text, clean) {
			t.Errorf("the weighing list does not show %q", clean)
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
	for _, want := range []string{"It does not fit", s.Why.Rules[0].Words.String(), "Weigh"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(body, "Timetable") {
		t.Error("there is a timetable")
	}
}

func TestCurveFollowsTheClock(t *testing.T) {
	s := planned(t, "hall-kitchen.toml", nil).Data()
	svg, err := bakesheet.Curve(s, metric(), curve.Size{})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(svg, "time of day") || !strings.Contains(svg, "dough, °C") {
		t.Error("no time of day, or no temperature")
	}
	us := metric()
	us.US = true
	if svg, _ = bakesheet.Curve(s, us, curve.Size{}); !strings.Contains(svg, "dough, °F") {
		t.Error("no °F")
	}
	s.Steps = nil
	if svg, _ = bakesheet.Curve(s, metric(), curve.Size{}); !strings.Contains(svg, "hours after mixing") {
		t.Error("without a timetable there is no time of day")
	}
	s.Bulk.Curve = nil
	if _, err := bakesheet.Curve(s, metric(), curve.Size{}); err == nil {
		t.Error("a curve of nothing")
	}
	if _, err := bakesheet.Render(s, nil, metric()); err == nil {
		t.Error("a page without its curve")
	}
}

func BenchmarkRender(b *testing.B) {
	t := &testing.T{}
	day := planned(t, "hall-kitchen.toml", nil)
	for b.Loop() {
		if _, err := bakesheet.Render(day.Data(), nil, metric()); err != nil {
			b.Fatal(err)
		}
	}
}
