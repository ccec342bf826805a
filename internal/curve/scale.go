package curve

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// axis is a range of values with the values that are written at it.
type axis struct {
	low, high float64
	step      float64
	decimal   string // the decimal sign of its ticks; empty: a point
}

// place maps a value to 0 at the low end and 1 at the high end.
func (a axis) place(v float64) float64 { return (v - a.low) / (a.high - a.low) }

// ticks lists the multiples of the step within the axis.
func (a axis) ticks() []float64 {
	var out []float64
	first := math.Ceil(a.low/a.step - 1e-9)
	for i := 0; i <= 1000; i++ {
		v := (first + float64(i)) * a.step
		if v > a.high+1e-9*a.step {
			break
		}
		out = append(out, v)
	}
	return out
}

// text writes a tick with as many decimals as the step needs.
func (a axis) text(v float64) string {
	decimals := 0
	for s := a.step; decimals < 6 && math.Abs(s-math.Round(s)) > 1e-6*s; s *= 10 {
		decimals++
	}
	s := withSign(strconv.FormatFloat(steady(v), 'f', decimals, 64), a.decimal)
	if v < 0 && s[0] == '-' {
		return "−" + s[1:]
	}
	return s
}

func withSign(number, decimal string) string {
	if decimal == "" {
		return number
	}
	return strings.Replace(number, ".", decimal, 1)
}

// valueAxis covers all values, with about n ticks at steps of 1, 2 or 5 times a power of ten;
// its ends are at fifths of a step. A line that hardly moves gets an axis at least as wide as
// least.
func valueAxis(n int, least float64, all ...[]float64) axis {
	low, high := math.Inf(1), math.Inf(-1)
	for _, series := range all {
		for _, v := range series {
			low, high = math.Min(low, v), math.Max(high, v)
		}
	}
	least = max(least, 1e-6*max(math.Abs(low), math.Abs(high))) // what floating point can still tell apart
	if short := least - (high - low); short > 0 {
		low, high = low-short/2, high+short/2
	}
	step := math.Pow(10, math.Floor(math.Log10((high-low)/float64(n))))
	for _, m := range []float64{1, 2, 5, 10} {
		if (high-low)/(m*step) <= float64(n) {
			step *= m
			break
		}
	}
	fifth := step / 5
	return axis{low: math.Floor(low/fifth+1e-9) * fifth, high: math.Ceil(high/fifth-1e-9) * fifth, step: step}
}

// timeAxis is exactly as long as the curve; its ticks are at steps people read clocks by.
func timeAxis(first, last float64, n int) axis {
	length := last - first
	for _, step := range []float64{1.0 / 60, 1.0 / 12, 0.25, 0.5, 1, 2, 3, 4, 6, 12, 24, 48, 96} {
		if length/step <= float64(n) {
			return axis{low: first, high: last, step: step}
		}
	}
	a := valueAxis(n, 1, []float64{first, last})
	return axis{low: first, high: last, step: a.step}
}

// timeTicks lists the ticks of the time axis in hours after X = 0, with their texts.
func (p Plot) timeTicks(n int) (at []float64, text []string) {
	first, last := p.X[0], p.X[len(p.X)-1]
	if !p.Clock {
		a := timeAxis(first, last, n)
		a.decimal = p.Decimal
		for _, v := range a.ticks() {
			at, text = append(at, v), append(text, a.text(v))
		}
		return at, text
	}
	a := timeAxis(first+p.Zero, last+p.Zero, n)
	for _, v := range a.ticks() {
		at, text = append(at, v-p.Zero), append(text, p.clock(v))
	}
	return at, text
}

// when writes a time on the curve: "18:15", or "3.5 h".
func (p Plot) when(x float64) string {
	if p.Clock {
		return p.clock(x + p.Zero)
	}
	return strings.TrimRight(number(x)+" "+or(p.XUnit, "h"), " ")
}

// clock writes hours as a time of day, to the minute.
func (p Plot) clock(hours float64) string {
	m := int64(math.Round(steady(math.Mod(hours, 24) * 60)))
	m = (m%1440 + 1440) % 1440
	if p.ClockText != nil {
		return p.ClockText(int(m))
	}
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}

// number writes a value with up to three digits that say something.
func number(v float64) string {
	decimals := 0
	switch a := math.Abs(v); {
	case a == 0 || a >= 100:
	case a >= 10:
		decimals = 1
	default:
		decimals = 2
	}
	s := strconv.FormatFloat(steady(v), 'f', decimals, 64)
	if decimals > 0 {
		for s[len(s)-1] == '0' {
			s = s[:len(s)-1]
		}
		if s[len(s)-1] == '.' {
			s = s[:len(s)-1]
		}
	}
	if s == "-0" {
		s = "0"
	}
	if s[0] == '-' {
		return "−" + s[1:]
	}
	return s
}

// heightAxis is the left-hand axis of a plot: it covers every line on it, up to the top that the plot gives.
func (p Plot) heightAxis(n int, levels []float64) axis {
	all := [][]float64{p.Mid, p.Low, p.High, levels}
	for _, l := range p.Beside {
		all = append(all, l.Y)
	}
	if p.Top != 0 {
		for i, series := range all {
			all[i] = make([]float64, len(series))
			for k, v := range series {
				all[i][k] = min(v, p.Top)
			}
		}
	}
	return valueAxis(n, 1e-6, all...)
}

// beyond reports whether a value lies above the top that the plot gives.
func (p Plot) beyond(v float64) bool { return p.Top != 0 && v > p.Top }
