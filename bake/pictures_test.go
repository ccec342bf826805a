package bake

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

// at is the line of a chart at a place, between the points drawn.
func at(c report.Chart, s report.Series, x float64) float64 {
	for i := 1; i < len(c.X.Values); i++ {
		if a, b := c.X.Values[i-1], c.X.Values[i]; x >= a && x <= b {
			return s.Values[i-1] + (s.Values[i]-s.Values[i-1])*(x-a)/(b-a)
		}
	}
	return math.NaN()
}

// The pictures show what the answers say: the lines cross the levels at the times told.
func TestPicturesShowTheAnswers(t *testing.T) {
	cool, err := CoolingLoaf{Style: LeanHearth, Baked: quantity.Grams(780), Room: quantity.Celsius(21)}.Time()
	if err != nil {
		t.Fatal(err)
	}
	c, ok := cool.chart()
	if !ok {
		t.Fatal("no picture")
	}
	for i, when := range []time.Duration{cool.Ready.Early, cool.Ready.Likely, cool.Ready.Late} {
		s := []report.Series{c.Low, c.Main, c.High}[i]
		if got := at(c, s, when.Minutes()); !(math.Abs(got-35) <= 0.3) {
			t.Errorf("line %d at %v: %.2f °C, want 35", i, when, got)
		}
	}
	minutes := func(m float64) quantity.Elapsed { return quantity.Elapsed(time.Duration(m * float64(time.Minute))) }
	left, err := CoolingProbe{Room: quantity.Celsius(21), Samples: []Sample{
		{At: 0, Core: quantity.Celsius(88)}, {At: minutes(25), Core: quantity.Celsius(61)},
	}}.TimeLeft()
	if err != nil {
		t.Fatal(err)
	}
	if c, ok = left.chart(); !ok {
		t.Fatal("no picture")
	}
	for x, want := range map[float64]float64{-25: 88, 0: 61, left.Ready.Likely.Minutes(): 35} {
		if got := at(c, c.Main, x); !(math.Abs(got-want) <= 0.3) {
			t.Errorf("after %.1f min: %.2f °C, want %.0f", x, got, want)
		}
	}
	if len(c.Marks) != 2 || c.Marks[0].At != -25 || c.Levels[0].At != 35 {
		t.Errorf("%+v %+v", c.Marks, c.Levels)
	}
	oven, err := Probe{Goal: Goal{Style: LeanHearth}, InOven: minutes(26), Samples: []Sample{
		{At: minutes(20), Core: quantity.Celsius(72)}, {At: minutes(26), Core: quantity.Celsius(80)},
	}}.TimeLeft()
	if err != nil {
		t.Fatal(err)
	}
	if c, ok = oven.chart(); !ok {
		t.Fatal("no picture")
	}
	for x, want := range map[float64]float64{-6: 72, 0: 80, oven.ToTarget.Likely.Minutes(): oven.Target.Celsius()} {
		if got := at(c, c.Main, x); !(math.Abs(got-want) <= 0.3) {
			t.Errorf("%.1f min after the last reading: %.2f °C, want %.1f", x, got, want)
		}
	}
	hall, err := Site{Altitude: quantity.Meters(1150)}.BoilingPoint()
	if err != nil {
		t.Fatal(err)
	}
	b := hall.chart()
	if got := at(b, b.Main, 1150); !(math.Abs(got-hall.Point.Celsius()) <= 0.02) || len(b.Marks) != 1 ||
		b.Marks[0].At != 1150 {
		t.Errorf("at 1150 m: %.2f °C, %+v", got, b.Marks)
	}
	for _, c := range []report.Chart{c, b} {
		if svg, err := c.SVG(report.Options{}, 600, 300); err != nil || len(svg) < 1000 {
			t.Errorf("%v: %.80s", err, svg)
		}
		if g := c.Grid(); len(g.Rows) != picturePoints {
			t.Errorf("a table of %d rows", len(g.Rows))
		}
	}
	if _, ok := (Left{}).chart(); ok {
		t.Error("nothing has a picture")
	}
	if _, ok := (CoolingLeft{}).chart(); ok {
		t.Error("nothing has a picture")
	}
}
