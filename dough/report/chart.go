package report

import (
	"cmp"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/curve"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/textpage"
)

// A Chart is a picture of numbers: a main line, perhaps in a band, over the first axis, and perhaps a line on an
// axis of its own. Everything in it is also a table ([Chart.Grid]), for those who cannot see it.
type Chart struct {
	Title working.Message `json:"title"`
	// X are the values along the picture, ascending.
	X Series `json:"x"`
	// Main is the line; Low and High, both or neither, are the band around it.
	Main Series `json:"main"`
	Low  Series `json:"low,omitzero"`
	High Series `json:"high,omitzero"`
	// Second has an axis of its own at the right.
	Second Series `json:"second,omitzero"`
	// Beside are further lines on the first axis, at most three.
	Beside []Series `json:"beside,omitempty"`
	// Top, if it is not 0, is the upper end of the first axis: a line that goes beyond it is cut there.
	Top float64 `json:"top,omitzero"`
	// Levels are heights worth marking, on the first axis; Marks are places along the picture.
	Levels []Mark `json:"levels,omitzero"`
	Marks  []Mark `json:"marks,omitzero"`
}

// A Series is numbers of one kind, with what they are called.
type Series struct {
	Name   working.Message `json:"name"`
	Of     Axis            `json:"of"`
	Values []float64       `json:"values"`
}

// A Mark is a value with a few words.
type Mark struct {
	At   float64         `json:"at"`
	Text working.Message `json:"text"`
}

// Axis says what the numbers of a series are, and so in which unit a reader sees them.
type Axis int

// The axes.
const (
	Numbers     Axis = iota
	Percents         // percentage points
	Degrees          // °C, shown in °F to a reader of US customary units
	Hours            // of elapsed time
	Minutes          // of elapsed time
	ClockHours       // hours since midnight, shown as the time of day
	Grams            // shown in ounces to a reader of US customary units
	MetersAbove      // altitude, shown in feet to a reader of US customary units
)

var axes = enum.Of[Axis]("axis", "numbers", "percent", "degrees", "hours", "minutes", "clock", "grams", "altitude")

// String returns the word.
func (a Axis) String() string { return axes.String(a) }

// MarshalText implements encoding.TextMarshaler.
func (a Axis) MarshalText() ([]byte, error) { return axes.Marshal(a) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (a *Axis) UnmarshalText(text []byte) error { return axes.Unmarshal(a, text) }

// IsZero reports whether there is no such series.
func (s Series) IsZero() bool { return len(s.Values) == 0 }

// in converts the values for the reader.
func (s Series) in(u working.Units) []float64 {
	if u != working.USCustomary {
		return s.Values
	}
	out := make([]float64, len(s.Values))
	for i, v := range s.Values {
		out[i] = s.Of.in(v, u)
	}
	return out
}

// Conversions. Source: NIST SP 811 (2008), appendix B.
func (a Axis) in(v float64, u working.Units) float64 {
	if u != working.USCustomary {
		return v
	}
	switch a {
	case Degrees:
		return v*1.8 + 32
	case Grams:
		return v / 28.349523125
	case MetersAbove:
		return v / 0.3048
	}
	return v
}

func (a Axis) unit(u working.Units) string {
	us := u == working.USCustomary
	pick := func(metric, other string) string {
		if us {
			return other
		}
		return metric
	}
	switch a {
	case Percents:
		return "%"
	case Degrees:
		return pick("°C", "°F")
	case Hours:
		return "h"
	case Minutes:
		return "min"
	case Grams:
		return pick("g", "oz")
	case MetersAbove:
		return pick("m", "ft")
	}
	return ""
}

// label names an axis with its unit.
func (s Series) label(r working.Reader) string {
	name := s.Name.Text(r)
	if unit := s.Of.unit(r.Units); unit != "" {
		if name == "" {
			return unit
		}
		return name + ", " + unit
	}
	return name
}

// value is a number of the series as a cell of a table.
func (s Series) value(i int) Cell {
	if i >= len(s.Values) {
		return Cell{}
	}
	v := s.Values[i]
	switch s.Of {
	case Percents:
		return Rounded(quantity.NewPercent(v), 1)
	case Degrees:
		return Rounded(quantity.Celsius(v), 1)
	case Hours:
		return Rounded(v, 2)
	case ClockHours:
		return Of(s.tell(i))
	case Minutes:
		return Rounded(v, 0)
	case Grams:
		return Rounded(quantity.Grams(v), 1)
	case MetersAbove:
		return Of(quantity.Meters(v))
	}
	return Rounded(v, 3)
}

// Grid is the chart as numbers.
func (c Chart) Grid() Grid {
	t := Grid{Key: "chart", Caption: c.Title}
	series := append([]Series{c.X, c.Low, c.Main, c.High, c.Second}, c.Beside...)
	keys := []string{"x", "low", "value", "high", "second"}
	for i := range c.Beside {
		keys = append(keys, "beside_"+strconv.Itoa(i+1))
	}
	for i, s := range series {
		if !s.IsZero() {
			t.Columns = append(t.Columns, GridColumn{Key: keys[i], Title: s.Name, Right: true})
		}
	}
	for i := range c.X.Values {
		var row []Cell
		for _, s := range series {
			if !s.IsZero() {
				row = append(row, s.value(i))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// plot is the chart as the drawing of pictures takes it.
func (c Chart) plot(r working.Reader) curve.Plot {
	p := curve.Plot{
		About: textpage.Printable(c.about().Text(r)),
		Title: textpage.Printable(c.Title.Text(r)), X: c.X.in(r.Units), Mid: c.Main.in(r.Units),
		Decimal: r.Language.Decimal,
		XLabel:  textpage.Printable(c.X.label(r)), YLabel: textpage.Printable(c.Main.label(r)),
		MidName: textpage.Printable(c.Main.Name.Text(r)),
	}
	if !c.Low.IsZero() && !c.High.IsZero() {
		p.Low, p.High, p.BandName = c.Low.in(r.Units), c.High.in(r.Units), textpage.Printable(c.bandName().Text(r))
	}
	if !c.Second.IsZero() {
		p.Second, p.SecondLabel = c.Second.in(r.Units), textpage.Printable(c.Second.label(r))
	}
	if len(c.Beside) > 0 { // the axis is named by no single line
		p.YLabel = c.Main.Of.unit(r.Units)
	}
	if c.X.Of != ClockHours {
		p.XUnit = cmp.Or(c.X.Of.unit(r.Units), " ")
	}
	for _, b := range c.Beside {
		p.Beside = append(p.Beside, curve.Line{Name: textpage.Printable(b.Name.Text(r)), Y: b.in(r.Units)})
	}
	if c.Top != 0 {
		p.Top = c.Main.Of.in(c.Top, r.Units)
	}
	for _, m := range c.Levels {
		p.Levels = append(p.Levels, curve.Level{Y: c.Main.Of.in(m.At, r.Units), Text: textpage.Printable(m.Text.Text(r))})
	}
	for _, m := range c.Marks {
		p.Marks = append(p.Marks, curve.Mark{X: c.X.Of.in(m.At, r.Units), Text: textpage.Printable(m.Text.Text(r))})
	}
	if c.X.Of == ClockHours && len(c.X.Values) > 0 {
		p.Clock, p.Zero = true, c.X.Values[0]
		p.ClockText = func(minutes int) string {
			return r.Clock(time.Date(2000, 1, 1, 0, minutes, 0, 0, time.UTC))
		}
		p.X = make([]float64, len(c.X.Values))
		for i, x := range c.X.Values {
			p.X[i] = x - p.Zero
		}
		for i := range p.Marks {
			p.Marks[i].X -= p.Zero
		}
	}
	return p
}

func (c Chart) bandName() working.Message {
	return working.Tell("report.band", "%v to %v", c.Low.Name, c.High.Name)
}

// SVG is the chart as one picture of that width and height in CSS pixels. It stands in a page or alone.
// Errors: what cannot be drawn, such as series of different lengths.
func (c Chart) SVG(o Options, width, height int) (string, error) {
	return c.plot(o.Reader()).SVG(curve.Size{Width: float64(width), Height: float64(height)})
}

// pictureSize is the size of a picture in a page. A narrow one is not as flat as a wide one.
func (o Options) pictureSize() curve.Size {
	if o.Picture == 0 {
		return curve.Size{Width: 700, Height: 360}
	}
	width := float64(min(max(o.Picture, 240), 2000))
	return curve.Size{Width: width, Height: min(max(0.52*width, 260), 420)}
}

const leastWidth = 40 // columns for a picture of characters

func (t *teller) chart(c Chart) {
	if t.Columns() < leastWidth {
		return
	}
	text, err := c.plot(t.reader).Text(curve.Screen{Width: min(t.Columns(), 80), ASCII: t.Page.ASCII})
	if err != nil {
		return
	}
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		t.Line("%s", line)
	}
}

func (h *pager) chart(c Chart) {
	picture, err := c.plot(h.reader).SVG(h.picture)
	if err == nil {
		h.put("<figure>", picture, "</figure>\n")
	}
	h.put("<details><summary>", h.tell(working.Tell("report.numbers", "The numbers of this picture")), "</summary>\n")
	h.table(c.Grid())
	h.put("</details>\n")
}
