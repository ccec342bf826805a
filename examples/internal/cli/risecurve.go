package cli

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/curve"
	"example.org/maslin/schedule/bakeday"
)

// riseCurve makes a picture of an estimate. With a start the axis shows the time of day.
func riseCurve(e ferment.Estimate, u units, title string, start time.Time) curve.Plot {
	scale, unit := quantity.CelsiusScale, "°C"
	if u.us {
		scale, unit = quantity.FahrenheitScale, "°F"
	}
	p := curve.Plot{Title: title, YLabel: "rise, %", SecondLabel: "dough, " + unit, XLabel: "hours after mixing"}
	for _, c := range e.RiseCurve(97) {
		p.X = append(p.X, c.At.Duration().Hours())
		p.Mid = append(p.Mid, c.Rise.Likely.Points())
		p.Low = append(p.Low, c.Rise.Low.Points())
		p.High = append(p.High, c.Rise.High.Points())
		p.Second = append(p.Second, c.Temperature.In(scale))
	}
	p.Levels = []curve.Level{{Y: e.Bulk().Rise.Points(), Text: "wanted"}}
	if !start.IsZero() {
		p.Clock, p.Zero, p.XLabel = true, float64(start.Hour())+float64(start.Minute())/60, "time of day"
	}
	return p
}

// draw puts a picture on the page, when the page is wide enough for one.
func (p *page) draw(s System, plot curve.Plot) {
	const least = 40
	if p.width < least {
		p.para(2, "(the curve needs a terminal of 40 columns)")
		return
	}
	text, err := plot.Text(curve.Screen{Width: min(p.width, 80), ASCII: asciiOnly(s)})
	if err != nil {
		p.para(2, "(no curve: "+err.Error()+")")
		return
	}
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		p.b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// writePicture writes the curve as a picture.
func writePicture(name string, plot curve.Plot) error {
	picture, err := plot.SVG(curve.Size{Width: 700, Height: 400})
	if err != nil {
		return badInput("%s: %s", name, err)
	}
	return writeFile(name, []byte(picture))
}

func curveData(e ferment.Estimate) []bakeday.CurveData {
	var out []bakeday.CurveData
	for _, c := range e.RiseCurve(25) {
		out = append(out, bakeday.CurveData{After: quantity.Elapsed(c.At.Duration().Round(time.Minute)), Temperature: tenth(c.Temperature), Rise: bandData(c.Rise)})
	}
	return out
}

func bandData(b quantity.Range[quantity.Percent]) bakeday.BandData {
	return bakeday.BandData{Low: tenthPercent(b.Low), Likely: tenthPercent(b.Likely), High: tenthPercent(b.High)}
}

func tenth(t quantity.Temperature) quantity.Temperature {
	r, err := quantity.ParseTemperature(t.Text(quantity.CelsiusScale, 1))
	if err != nil {
		return t
	}
	return r
}

func tenthPercent(p quantity.Percent) quantity.Percent {
	r, err := quantity.ParsePercent(p.Text(1))
	if err != nil {
		return p
	}
	return r
}
