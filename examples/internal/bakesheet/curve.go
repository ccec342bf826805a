package bakesheet

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/curve"
	"example.org/maslin/schedule/bakeday"
)

// Curve draws the rise of the dough with its band, its temperature, the target and the times to look
// at it. It is drawn against the clock on the wall where the timetable says when the bulk begins,
// and against hours after mixing otherwise.
func Curve(s bakeday.PlanData, u Units, size curve.Size) (string, error) {
	if len(s.Bulk.Curve) < 2 {
		return "", errors.New("the plan has no rise curve")
	}
	p := curve.Plot{
		Title: "Rise of the dough", YLabel: "rise, %", SecondLabel: "dough, °C", XLabel: "hours after mixing",
		MidName: "likely rise", BandName: s.Bulk.Ready.Probability.Text(0) + " of doughs",
		Levels: []curve.Level{{Y: s.Bulk.ShapeAt.Points(), Text: "shape at " + s.Bulk.ShapeAt.Text(0)}},
	}
	scale := quantity.CelsiusScale
	if u.US {
		scale, p.SecondLabel = quantity.FahrenheitScale, "dough, °F"
	}
	// The quickest doughs would be far beyond shaping at the late end; drawn whole, they would press
	// everything else flat.
	last := s.Bulk.Curve[len(s.Bulk.Curve)-1].Rise.Likely.Points()
	top := math.Ceil(max(last, s.Bulk.Total.High.Points(), 2*s.Bulk.ShapeAt.Points())/10) * 10
	for _, c := range s.Bulk.Curve {
		p.X = append(p.X, c.After.Duration().Hours())
		p.Low, p.Mid, p.High = append(p.Low, c.Rise.Low.Points()), append(p.Mid, c.Rise.Likely.Points()), append(p.High, min(c.Rise.High.Points(), top))
		p.Second = append(p.Second, c.Temperature.In(scale))
		if c.Rise.High.Points() > top {
			p.YLabel = fmt.Sprintf("rise, %% (cut off at %.0f)", top)
		}
	}
	p.Second = smooth(p.Second)
	ready := s.Bulk.Ready
	for _, m := range []struct {
		at   time.Duration
		text string
	}{{ready.Early, "look from here"}, {ready.Likely, "likely ready"}, {ready.Late, "late end"}} {
		if x := m.at.Hours(); x <= p.X[len(p.X)-1] {
			p.Marks = append(p.Marks, curve.Mark{X: x, Text: m.text})
		}
	}
	if start, ok := bulkStart(s); ok && steady(start, p.X[len(p.X)-1]) {
		p.Clock, p.XLabel = true, "time of day"
		p.Zero = float64(start.Hour()) + float64(start.Minute())/60
	}
	return p.SVG(size)
}

// bulkStart is when the bulk begins: the first step that is to be looked at.
func bulkStart(s bakeday.PlanData) (time.Time, bool) {
	for _, t := range s.Steps {
		if t.LookFrom != nil {
			return t.Start, true
		}
	}
	return time.Time{}, false
}

// steady reports whether the clocks stay as they are for so many hours.
func steady(from time.Time, hours float64) bool {
	_, a := from.Zone()
	_, b := from.Add(time.Duration(hours * float64(time.Hour))).Zone()
	return a == b
}

// smooth takes the steps out of temperatures that were rounded to a tenth: the mean of five, with
// the ends as they are.
func smooth(v []float64) []float64 {
	out := slices.Clone(v)
	for i := 2; i < len(v)-2; i++ {
		out[i] = (v[i-2] + v[i-1] + v[i] + v[i+1] + v[i+2]) / 5
	}
	return out
}
