package gasbalance

import (
	"math"
)

// Knot is a temperature at a time; between knots it runs straight, after the last one it is held. Two at the same
// time are a jump.
type Knot struct {
	Hour    float64
	Celsius float64
}

// Runs are cut so that none spans more than cutCelsius and none lets cells grow by more than e^cutGrowth. Against a
// solver of differential equations the log of the gas is then off by less than 3e-3, in ten thousand random
// histories (internal/xcheck/fermentsim).
const (
	cutCelsius = 2.0
	cutGrowth  = 0.5
)

// cuts is how many runs a straight stretch is followed in.
func (c *Clock) cuts(hours, from, to float64) int {
	l := c.law
	a, b := l.rates(from), l.rates(to)
	w := l.Mixture
	fastest := math.Max(math.Max(a.yeast, b.yeast), math.Max((1-w)*a.humilis+w*a.yeast, (1-w)*b.humilis+w*b.yeast))
	n := math.Max(math.Abs(to-from)/cutCelsius, hours*l.Growth*c.pace*fastest/cutGrowth)
	return int(math.Max(1, math.Ceil(math.Min(n, mostCuts))))
}

// mostCuts bounds the work of one stretch: growth has long ended in a stretch that would need more.
const mostCuts = 5000

// Advance takes a state along a straight stretch of hours from one temperature to another, in °C, cut as needed.
func (c *Clock) Advance(s State, hours, from, to float64) State {
	if !(hours > 0) {
		return s
	}
	n := c.cuts(hours, from, to)
	dt, dc := hours/float64(n), (to-from)/float64(n)
	for i := range n {
		a := from + dc*float64(i)
		c.run(&s, dt, a, a+dc)
	}
	return s
}

// AdvanceAlong takes a state from one time of a history to another. It is the incremental form: what it costs
// depends on what lies between, not on what came before.
func (c *Clock) AdvanceAlong(s State, history []Knot, from, to float64) State {
	w := c.walk(history, from)
	m := moment{hour: from, arrives: celsius(history, from), State: s}
	m.leaves = m.arrives
	for w.step(&m, to) {
	}
	return m.State
}
