package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Curve answers: how fast does the culture grow at a temperature? The curves of this package are
// named values; none is a hidden default. A curve of your own needs these two methods; it must be
// finite and not negative from −25 to 60 °C.
type Curve interface {
	// Rate is μ in 1/h (natural logarithm) at a temperature in °C; NaN gives NaN.
	Rate(celsius float64) float64
	// About says what the curve is, who says so, and between which temperatures it may be used.
	About() About
}

// About describes a rate curve.
type About struct {
	Name string // "Gänzle yeast, held to 30 °C"
	Key  string // short form for files and flags: "ganzle-yeast-held"
	// Low and High bound the temperatures the curve may be used at without extrapolating, °C.
	Low, High float64
	Formula   string
	Note      string // how it was fitted, and what to beware of
	Source    working.Source
}

// DoublingTime is how long the culture takes to double at a temperature.
//
//	t₂ = ln 2 / μ(T)
//
// μ is the curve's rate in 1/h. It is +Inf hours, reported as ok = false, where the curve does not grow. Accuracy is
// that of the curve. Source: definition of the natural growth rate.
func DoublingTime(c Curve, t quantity.Temperature) (hours float64, ok bool) {
	if c == nil || !t.IsValid() {
		return 0, false
	}
	mu := c.Rate(t.Celsius())
	if !(mu > 0) {
		return 0, false
	}
	return math.Ln2 / mu, true
}

// Optimum finds where a curve is fastest, within the temperatures it may be used at, to 0.001 °C. A plateau reports its
// cool end. Source: golden-section search on the curve itself.
func Optimum(c Curve) (t quantity.Temperature, rate float64) {
	if c == nil {
		return quantity.Temperature{}, 0
	}
	about := c.About()
	const steps = 500
	best, at := -1.0, about.Low
	for i := 0; i <= steps; i++ {
		x := about.Low + (about.High-about.Low)*float64(i)/steps
		if mu := c.Rate(x); mu > best*(1+1e-12) {
			best, at = mu, x
		}
	}
	step := (about.High - about.Low) / steps
	lo, hi := math.Max(about.Low, at-step), math.Min(about.High, at+step)
	const ratio = 0.6180339887498949
	for hi-lo > 1e-5 {
		p, q := hi-ratio*(hi-lo), lo+ratio*(hi-lo)
		if c.Rate(p) < c.Rate(q)*(1-1e-15) {
			lo = p
		} else {
			hi = q
		}
	}
	mid := (lo + hi) / 2
	return quantity.Celsius(math.Round(mid*1e4) / 1e4), c.Rate(mid)
}

// curve is what the named curves are made of: a rate, and the integral of the rate over temperature where it is known.
type curve struct {
	about About
	rate  func(celsius float64) float64
	// breaks are temperatures where the rate is not smooth; quadrature stops there.
	breaks []float64
	// primitive is ∫ rate dT within one smooth stretch; nil where there is none in closed form.
	primitive func(celsius float64) float64
	table     *table // the primitive of the Gänzle form, tabulated
}

// Rate is μ in 1/h at a temperature in °C.
func (c *curve) Rate(celsius float64) float64 { return c.rate(celsius) }

// About describes the curve.
func (c *curve) About() About { return c.about }

// String prints the curve's name.
func (c *curve) String() string { return c.about.Name }

// Curves lists the named curves for a baker to choose from or compare.
func Curves() []Curve {
	return []Curve{GanzleYeast, GanzleYeastHeld, GanzleYeastColdStop, GanzleLactobacilli, SaccharomycesCardinal, SquareRootCold, SquareRootFull, TradeQ10}
}

// CurveNamed finds one of [Curves] by its key.
func CurveNamed(key string) (Curve, bool) {
	for _, c := range Curves() {
		if c.About().Key == key {
			return c, true
		}
	}
	return nil, false
}
