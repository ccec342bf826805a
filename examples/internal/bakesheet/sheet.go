package bakesheet

import (
	"bytes"
	_ "embed"
	"html/template"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/curve"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

//go:embed page.html
var pageText string

// Units says how quantities are written on the page.
type Units struct {
	US          bool // the curve's temperature in °F
	Mass        func(quantity.Mass) string
	Temperature func(t quantity.Temperature, places int) string
	Delta       func(quantity.TemperatureDelta) string
}

// say writes a sentence of the library.
func (u Units) say(m working.Message) string {
	if u.US {
		return m.Text(working.Reader{Units: working.USCustomary})
	}
	return m.String()
}

// Render makes the page. The sources of the workings are listed on it, each once, with those of the
// cautions. Errors: a sheet without a rise curve.
func Render(s bakeday.PlanData, workings []working.Working, u Units) ([]byte, error) {
	v := viewOf(s, u)
	for _, c := range s.Cautions {
		v.Cautions = append(v.Cautions, caution{Subject: textpage.Printable(c.Subject), Text: textpage.Printable(u.say(c.Text)), Source: v.source(c.Source)})
	}
	for _, w := range workings {
		for _, source := range w.Sources() {
			v.source(source.String())
		}
	}
	// A wide picture for paper and screens, and one with letters as large for a phone.
	for _, drawing := range []struct {
		to   *template.HTML
		size curve.Size
	}{{&v.Wide, curve.Size{Width: 700, Height: 330}}, {&v.Narrow, curve.Size{Width: 340}}} {
		svg, err := Curve(s, u, drawing.size)
		if err != nil {
			return nil, err
		}
		*drawing.to = template.HTML(svg) // package curve escapes every text
	}
	t, err := template.New("sheet").Parse(pageText)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := t.Execute(&b, v); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// source returns the number of a source on the page, adding it when it is new; 0 for none.
func (v *view) source(text string) int {
	text = textpage.Printable(text)
	if text == "" {
		return 0
	}
	for _, s := range v.Sources {
		if s.Text == text {
			return s.Number
		}
	}
	v.Sources = append(v.Sources, source{len(v.Sources) + 1, text})
	return len(v.Sources)
}
