package curve

import (
	"fmt"
	"math"

	"example.org/maslin/dough/quantity"
)

// Plot is what to draw. X and Mid are required; the rest may be left out.
type Plot struct {
	Title string
	About string // what the plot shows, in words, for those who cannot see it

	X         []float64 // hours, ascending
	Mid       []float64 // the likely line
	Low, High []float64 // the band around it: both or neither
	Second    []float64 // a line on the right-hand axis
	Beside    []Line    // further lines on the left-hand axis

	// Top, if it is not 0, is the upper end of the left-hand axis: what goes beyond it is cut there.
	Top float64

	YLabel      string // "rise, %"
	SecondLabel string // "dough, °C"
	XLabel      string // "hours after mixing"
	MidName     string // in the legend; empty: "likely"
	BandName    string // in the legend; empty: "range"

	Decimal string // the decimal sign; empty: a point

	Marks  []Mark  // times worth marking
	Levels []Level // heights worth marking, on the left-hand axis

	// XUnit is that of X in words, "h" unless given; a space for none.
	XUnit string

	// Clock says that the time axis shows the time of day; Zero is what it is at X = 0, in hours:
	// 18.25 is 18:15. It is a clock that is not put forward or back during the curve.
	Clock bool
	Zero  float64
	// ClockText tells minutes since midnight as the time of day; nil: "18:15".
	ClockText func(minutes int) string
}

// Line is a line on the left-hand axis beside the likely one.
type Line struct {
	Name string
	Y    []float64
}

// Mark is a time on the curve with a few words.
type Mark struct {
	X    float64
	Text string
}

// Level is a height on the left-hand axis with a few words: a target.
type Level struct {
	Y    float64
	Text string
}

const (
	maxPoints = 5000
	maxText   = 200
	maxMarks  = 12
	maxBeside = 3
	maxLevels = 4
	maxValue  = 1e9
)

// Check returns everything that is wrong with the plot, or nil.
func (p Plot) Check() error {
	var bad quantity.Problems
	bad.Int("X", len(p.X), 2, maxPoints)
	series := []struct {
		path     string
		values   []float64
		required bool
	}{{"X", p.X, true}, {"Mid", p.Mid, true}, {"Low", p.Low, p.High != nil}, {"High", p.High, p.Low != nil}, {"Second",
		p.Second, false}}
	for _, s := range series {
		if s.values == nil && !s.required {
			continue
		}
		if len(s.values) != len(p.X) {
			bad.Add(s.path, fmt.Sprint(len(s.values)),
				quantity.Tell("curve.want_many_x", "as many as X: %d", len(p.X)), quantity.ErrInconsistent)
			continue
		}
		for i, v := range s.values {
			if !bad.Float(fmt.Sprintf("%s[%d]", s.path, i), v, -maxValue, maxValue, "") {
				break
			}
		}
	}
	if bad.Int("Beside", len(p.Beside), 0, maxBeside) {
		for i, l := range p.Beside {
			path := fmt.Sprintf("Beside[%d]", i)
			checkText(&bad, path+".Name", l.Name)
			if bad.Int(path+".Y", len(l.Y), len(p.X), len(p.X)) {
				for k, v := range l.Y {
					bad.Float(fmt.Sprintf("%s.Y[%d]", path, k), v, -maxValue, maxValue, "")
				}
			}
		}
	}
	bad.Float("Top", p.Top, -maxValue, maxValue, "")
	checkOrder(&bad, p)
	for _, t := range []struct{ path, text string }{
		{"Title", p.Title}, {"YLabel", p.YLabel}, {"SecondLabel", p.SecondLabel}, {"XLabel", p.XLabel},
		{"MidName", p.MidName}, {"BandName", p.BandName},
	} {
		checkText(&bad, t.path, t.text)
	}
	if bad.Int("Marks", len(p.Marks), 0, maxMarks) {
		for i, m := range p.Marks {
			path := fmt.Sprintf("Marks[%d]", i)
			if len(p.X) > 0 {
				bad.Float(path+".X", m.X, p.X[0], p.X[len(p.X)-1], "h")
			}
			checkText(&bad, path+".Text", m.Text)
		}
	}
	if bad.Int("Levels", len(p.Levels), 0, maxLevels) {
		for i, l := range p.Levels {
			path := fmt.Sprintf("Levels[%d]", i)
			bad.Float(path+".Y", l.Y, -maxValue, maxValue, "")
			checkText(&bad, path+".Text", l.Text)
		}
	}
	checkText(&bad, "XUnit", p.XUnit)
	bad.Float("Zero", p.Zero, -maxValue, maxValue, "h")
	return bad.ErrFor(nil)
}

// checkOrder looks for times that do not ascend and lines that leave their band; the first of
// each is reported.
func checkOrder(bad *quantity.Problems, p Plot) {
	for i := 1; i < len(p.X); i++ {
		if p.X[i] <= p.X[i-1] {
			bad.Add(fmt.Sprintf("X[%d]", i), fmt.Sprint(p.X[i]),
				quantity.Tell("curve.want_more_than_x", "more than X[%d], %v", i-1, p.X[i-1]),
				quantity.ErrInconsistent)
			break
		}
	}
	if len(p.Low) != len(p.Mid) || len(p.High) != len(p.Mid) {
		return
	}
	for i, mid := range p.Mid {
		if p.Low[i] > mid || mid > p.High[i] {
			bad.Add(fmt.Sprintf("Mid[%d]", i), fmt.Sprint(mid),
				quantity.Tell("curve.want_from_low_end_to_high", "from the low end, %v, to the high one, %v", p.Low[i], p.High[i]),
				quantity.ErrInconsistent)
			break
		}
	}
}

func checkText(bad *quantity.Problems, path, text string) {
	if len(text) > maxText {
		bad.Add(path, quantity.Tell("curve.got_bytes", "%d bytes", len(text)),
			quantity.Tell("curve.want_at_most_bytes", "at most %d bytes", maxText), quantity.ErrOutOfRange)
	}
}

func (p Plot) midName() string  { return or(p.MidName, "likely") }
func (p Plot) bandName() string { return or(p.BandName, "range") }

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

// at interpolates a series linearly; x lies within X.
func (p Plot) at(series []float64, x float64) float64 {
	lo, hi := 0, len(p.X)-1
	for hi-lo > 1 {
		if m := (lo + hi) / 2; p.X[m] <= x {
			lo = m
		} else {
			hi = m
		}
	}
	f := (x - p.X[lo]) / (p.X[hi] - p.X[lo])
	f = math.Max(0, math.Min(1, f))
	return series[lo] + f*(series[hi]-series[lo])
}
