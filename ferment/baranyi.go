package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
)

// Baranyi is the growth of one population with a lag and a plateau, under temperatures that may change.
//
//	dN/dt = Q/(1 + Q)·μ·(1 − N/Nmax)·N,   dQ/dt = μ·Q
//
// Because both equations are driven by μ dt alone, the population depends only on the dose M = ∫ μ dt, in closed form:
//
//	A = M + ln((e^(−M) + Q₀)/(1 + Q₀)),   ln N = ln N₀ + A − ln(1 + (e^A − 1)·N₀/Nmax)
//
// Start and Max are ln N₀ and ln Nmax, natural logs of counts in any one unit; Work is h₀ = ln(1 + 1/Q₀) = μ·lag, the
// work to be done before growth, the same at every temperature. For decimal logs multiply by ln 10. Valid for constant
// and changing rates. Source: Baranyi and Roberts, International Journal of Food Microbiology 23 (1994) 277; the form
// in M follows by substitution.
type Baranyi struct {
	Start float64 `json:"start"`
	Max   float64 `json:"max"`
	Work  float64 `json:"work"`
}

// WorkFromQ0 is h₀ = ln(1 + 1/Q₀). NaN unless Q₀ > 0.
func WorkFromQ0(q0 float64) float64 {
	if !(q0 > 0) {
		return math.NaN()
	}
	return math.Log1p(1 / q0)
}

// Q0 is the physiological state at the start, 1/(e^h₀ − 1); +Inf without lag.
func (b Baranyi) Q0() float64 { return 1 / math.Expm1(b.Work) }

// LagAt is the lag in hours at a constant rate, h₀/μ; NaN unless the rate is positive.
func (b Baranyi) LagAt(rate float64) float64 {
	if !(rate > 0) {
		return math.NaN()
	}
	return b.Work / rate
}

func (b Baranyi) check(p *problems) {
	p.Float("Start", b.Start, -50, 100, "")
	p.Float("Max", b.Max, -50, 100, "")
	p.Float("Work", b.Work, 0, 100, "")
	if p.Err() == nil && !(b.Max > b.Start) {
		p.Add("Max", b.Max, quantity.Tell("ferment.want_above_start", "above the start"), quantity.ErrInconsistent)
	}
}

// After is ln N after a dose. Errors: ErrOutOfRange for logs outside −50 to 100, work outside 0 to 100 or a dose
// outside 0 to 10,000; ErrInconsistent unless Max is above Start.
func (b Baranyi) After(dose float64) (float64, error) {
	var p problems
	b.check(&p)
	p.Float("Dose", dose, 0, 10_000, "")
	if err := p.ErrFor(b); err != nil {
		return 0, err
	}
	return b.after(dose), nil
}

func (b Baranyi) after(dose float64) float64 {
	// A = M + ln((e^(−M) + Q₀)/(1 + Q₀)) = ln((1 + Q₀·e^M)/(1 + Q₀)), and with Q₀ = 1/(e^h − 1) that is ln(1 + (e^M −
	// 1)·e^(−h)).
	a := logOnePlus(dose, b.Work)
	// ln(1 + (e^A − 1)·N₀/Nmax), in logs so that nothing overflows.
	return b.Start + a - logOnePlus(a, b.Max-b.Start)
}

// logOnePlus is ln(1 + (e^x − 1)·e^(−h)).
func logOnePlus(x, h float64) float64 {
	if x > 30 {
		return logSum(x-h, math.Log1p(-math.Exp(-h)))
	}
	return math.Log1p(math.Expm1(x) * math.Exp(-h))
}

// logSum is ln(e^a + e^b).
func logSum(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	return a + math.Log1p(math.Exp(b-a))
}

// DoseTo is the dose after which ln N has reached a value; reached is false at or above the plateau, and below the
// start the dose is 0. Errors: as [Baranyi.After], and ErrOutOfRange for a value that is not finite.
func (b Baranyi) DoseTo(log float64) (dose float64, reached bool, err error) {
	var p problems
	b.check(&p)
	p.Float("Log", log, -1e6, 1e6, "")
	if err := p.ErrFor(b); err != nil {
		return 0, false, err
	}
	switch {
	case log <= b.Start:
		return 0, true, nil
	case log >= b.Max:
		return 0, false, nil
	}
	// e^A = (1 − r)·n/(1 − n·r) with n = N/N₀, r = N₀/Nmax; then e^M = 1 + (e^A − 1)·e^h.
	r := math.Exp(b.Start - b.Max)
	n := math.Exp(log - b.Start)
	a := math.Log((1-r)/(1-n*r)) + log - b.Start
	return math.Log1p(math.Expm1(a) * math.Exp(b.Work)), true, nil
}

// Gompertz is the modified Gompertz curve of growth at constant conditions.
//
//	y = Start + Rise·exp(−exp(Slope·e/Rise·(Lag − t) + 1))
//
// y, Start and Rise are logs in any one base, Slope the greatest slope in that base per hour, Lag in hours. Source:
// Zwietering et al., Applied and Environmental Microbiology 56 (1990) 1875.
type Gompertz struct {
	Start float64 `json:"start"`
	Rise  float64 `json:"rise"`
	Slope float64 `json:"slope"`
	Lag   float64 `json:"lag"`
}

// At is y after t hours.
func (g Gompertz) At(t float64) float64 {
	return g.Start + g.Rise*math.Exp(-math.Exp(g.Slope*math.E/g.Rise*(g.Lag-t)+1))
}

// TimeTo is the time in hours at which y reaches a value; reached is false outside Start to Start + Rise.
func (g Gompertz) TimeTo(y float64) (hours float64, reached bool) {
	x := (y - g.Start) / g.Rise
	if !(x > 0 && x < 1) {
		return 0, false
	}
	return g.Lag - (math.Log(-math.Log(x))-1)*g.Rise/(g.Slope*math.E), true
}
