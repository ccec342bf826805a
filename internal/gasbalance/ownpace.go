package gasbalance

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// RowAtOwnPace is [Law.Row] with the pace solved for instead of linearized: Y is the log of the pace at which the
// dough is just ready when it was, and the derivatives are taken there.
//
//	ln G(t; b) = ln N(R),   y = b,   h = e/∂b at that state
//
// In [Law.Row] the derivatives are those at the time it took, which holds the bake's own luck: a dough that was
// slow by chance is looked at later than one that was fast, and a few dozen bakes of one recipe then seem to tell
// amplitude from pace, which they cannot. At its own pace a dough is always looked at when it has made the gas it
// needs, whatever its luck.
func (l *Law) RowAtOwnPace(kind Leavening, b *Logged) (r Row, ok bool) {
	end := celsius(b.History, b.Hours)
	n := l.Need(b.Rise, b.Formula.Hydration, b.Pressure)
	need := n.Gas(end)
	if !(need > 0) || math.IsInf(need, 1) {
		return Row{}, false
	}
	pace := l.Pace(b.Formula)
	y := 0.0
	var e Vector
	var c Clock
	for range ownPaceSteps {
		c = l.at(pace, Vector{Pace: y})
		s := c.AdvanceAlong(b.Start, b.History, 0, b.Hours)
		e = s.LogGas()
		if !(s.Gas > 0) || !(e[Pace] > 0) {
			return Row{}, false
		}
		d := math.Max(-1, math.Min(1, numeric.Log(need/s.Gas)/e[Pace]))
		y += d
		if math.Abs(d) < ownPaceSettled {
			break
		}
	}
	luck, inv := luckOf(kind), 1/e[Pace]
	reading := n.Steepness(end) * b.Error / b.Rise * inv / luck
	unusual := sdFormula * l.unusual(pace) / luck
	r = Row{Y: y, Scale: 1 + reading*reading + unusual*unusual, Kneading: b.Kneading, Celsius: slopeFrom + e[Slope]*inv}
	for i := range e {
		r.H[i] = e[i] * inv
	}
	return r, true
}

const (
	// Newton's method gains as many digits again with each step: two or three are usual, and a wild bake needs more.
	ownPaceSteps   = 12
	ownPaceSettled = 1e-3
)
