package bake

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// picturePoints is how finely a picture is drawn.
const picturePoints = 61

// steps are evenly spaced from the first to the last.
func steps(first, last float64) []float64 {
	out := make([]float64, picturePoints)
	for i := range out {
		out[i] = first + (last-first)*float64(i)/(picturePoints-1)
	}
	return out
}

// series works out a line of a picture.
func series(name working.Message, of report.Axis, x []float64, y func(float64) float64) report.Series {
	s := report.Series{Name: name, Of: of}
	for _, v := range x {
		s.Values = append(s.Values, y(v))
	}
	return s
}

func minutesAxis(x []float64, name working.Message) report.Series {
	return report.Series{Name: name, Of: report.Minutes, Values: x}
}

func coreName() working.Message { return working.Tell("bake.axis_core", "core") }

// chart draws where water boils against the altitude, with this place on it.
func (b Boiling) chart() report.Chart {
	here := b.place.Altitude.Meters()
	x := steps(0, math.Max(3000, math.Ceil(here*1.2/500)*500))
	c := report.Chart{
		Title: working.Tell("bake.chart_boiling", "Where water boils, by altitude"),
		X:     report.Series{Name: working.Tell("bake.axis_altitude", "above the sea"), Of: report.MetersAbove, Values: x},
		Main: series(working.Tell("bake.axis_boiling", "boiling point"), report.Degrees, x, func(m float64) float64 {
			at, err := Site{Altitude: quantity.Meters(m)}.BoilingPoint()
			if err != nil {
				return 0
			}
			return at.Point.Celsius()
		}),
	}
	if here >= 0 && here <= x[len(x)-1] {
		c.Marks = []report.Mark{{At: here, Text: working.Tell("bake.mark_here", "here: %.1f", b.Point)}}
	}
	return c
}

// chart draws the line fitted to the readings, from the first of them until the core is at its target.
func (l Left) chart() (report.Chart, bool) {
	f, a := l.fit, l.Approach
	if l.State != Rising || l.Used < 2 || !(f.line.Slope < 0) || len(l.probe.Samples) < 2 {
		return report.Chart{}, false
	}
	samples := l.probe.Samples
	last := samples[len(samples)-1].At
	x := steps((samples[0].At - last).Duration().Minutes(), math.Max(5, 1.1*l.ToTarget.Likely.Minutes()))
	c := report.Chart{
		Title: working.Tell("bake.chart_core", "The core in the oven, by the readings and the line fitted to them"),
		X:     minutesAxis(x, working.Tell("bake.axis_from_last", "from the last reading")),
		Main: series(coreName(), report.Degrees, x, func(t float64) float64 {
			return f.boiling - a.below(f.line.Intercept+f.line.Slope*t)
		}),
		Levels: []report.Mark{{At: l.Target.Celsius(), Text: working.Tell("bake.mark_target", "target")}},
	}
	for i, s := range samples {
		if len(samples)-i <= 6 { // the latest
			c.Marks = append(c.Marks, report.Mark{At: (s.At - last).Duration().Minutes(),
				Text: working.Tell("bake.mark_read", "read %.1f", s.Core)})
		}
	}
	return c, true
}

// chart draws how the core cools, between a draft and a still corner.
func (c CoolingTime) chart() (report.Chart, bool) {
	if c.Ready.Late <= 0 {
		return report.Chart{}, false
	}
	x := steps(0, 1.1*c.Ready.Late.Minutes())
	room := c.Room.Celsius()
	line := func(name working.Message, h, diffusivity, lost float64) report.Series {
		body, _, err := coolingBody(c.in.Style, c.in.Shape, c.in.Baked, h, diffusivity)
		from := c.in.From.Celsius() - coolPerPercent*lost
		return series(name, report.Degrees, x, func(t float64) float64 {
			if err != nil {
				return room
			}
			return room + (from-room)*body.Center(t*60)
		})
	}
	least, usual, most := leastCoolingLoss, usualCoolingLoss, mostCoolingLoss
	if !c.in.Loses.IsZero() {
		own := c.in.Loses.Points()
		least, usual, most = own, own, own
	}
	return report.Chart{
		Title:  working.Tell("bake.chart_cooling", "The core of the loaf on the rack"),
		X:      minutesAxis(x, working.Tell("bake.axis_from_oven", "out of the oven")),
		Main:   line(coreName(), stillAir, 1, usual),
		Low:    line(working.Tell("bake.axis_draft", "in a draft"), mostAir, 1.2, most),
		High:   line(working.Tell("bake.axis_still", "in a still corner"), leastAir, 0.8, least),
		Levels: []report.Mark{{At: c.Slice.Celsius(), Text: working.Tell("bake.mark_slice", "may be cut")}},
	}, true
}

// chart draws how the core goes on cooling from the last reading.
func (c CoolingLeft) chart() (report.Chart, bool) {
	if c.Ready.Late <= 0 || !(c.tau > 0) { // reached, or no answer of ours
		return report.Chart{}, false
	}
	first := (c.in.Samples[0].At - c.in.Samples[len(c.in.Samples)-1].At).Duration().Minutes()
	x := steps(first, 1.1*c.Ready.Late.Minutes())
	room := c.in.Room.Celsius()
	chart := report.Chart{
		Title: working.Tell("bake.chart_cooling_left", "The core on the rack, by the readings and the law fitted to them"),
		X:     minutesAxis(x, working.Tell("bake.axis_from_last", "from the last reading")),
		Main: series(coreName(), report.Degrees, x, func(t float64) float64 {
			return room + c.now*math.Exp(-t/c.tau)
		}),
		Levels: []report.Mark{{At: c.Slice.Celsius(), Text: working.Tell("bake.mark_slice", "may be cut")}},
	}
	for _, s := range c.in.Samples[max(0, len(c.in.Samples)-6):] {
		at := (s.At - c.in.Samples[len(c.in.Samples)-1].At).Duration().Minutes()
		chart.Marks = append(chart.Marks, report.Mark{At: at, Text: working.Tell("bake.mark_read", "read %.1f", s.Core)})
	}
	return chart, true
}

// picture is a section with a chart.
func picture(c report.Chart) report.Section {
	return report.Section{Key: "picture", Title: working.Tell("bake.title_picture", "As a picture"),
		Blocks: []report.Block{c}}
}
