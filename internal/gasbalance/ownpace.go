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
	n := l.Need(b.Rise, b.Formula.Hydration, b.Pressure)
	need, steepness := n.at(celsius(b.History, b.Hours))
	if !(need > 0) || math.IsInf(need, 1) {
		return Row{}, false
	}
	pace := l.Pace(b.Formula)
	y, e, ok := l.heldPace(b, pace, need)
	if !ok {
		if y, e, ok = l.ownPace(b, pace, need); !ok {
			return Row{}, false
		}
	}
	luck, inv := luckOf(kind), 1/e[Pace]
	reading := steepness * b.Error / b.Rise * inv / luck
	unusual := sdFormula * l.unusual(pace) / luck
	r.Y, r.Scale, r.Kneading = y, 1+reading*reading+unusual*unusual, b.Kneading
	r.Celsius = slopeFrom + e[Slope]*inv
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

// ownPaceStep is how far the log of the pace is moved where so many times the gas is needed.
func ownPaceStep(times, byPace float64) float64 { return max(-1, min(1, numeric.Log(times)/byPace)) }

// ownPace is the log of the pace at which a dough has just made what it needs, and the derivatives of the log of its
// gas there.
func (l *Law) ownPace(b *Logged, pace, need float64) (y float64, e Vector, ok bool) {
	for range ownPaceSteps {
		c := l.at(pace, Vector{Pace: y})
		s := c.AdvanceAlong(b.Start, b.History, 0, b.Hours)
		e = s.LogGas()
		if !(s.Gas > 0) || !(e[Pace] > 0) {
			return 0, e, false
		}
		d := ownPaceStep(need/s.Gas, e[Pace])
		y += d
		if math.Abs(d) < ownPaceSettled {
			break
		}
	}
	return y, e, true
}

// heldPace is [Law.ownPace] of a dough with one leavening at one temperature, where every step takes a few lines; see
// [Clock.run]:
//
//	G = q·X_m·ln(u)/M     dln G/db = (X₀·e^M·M + (e^M − 1)·dX₀/db)/(u·X_m·ln u)
//
// and the other derivatives, which are like that by the pace, are taken where the steps end. It is not ok for any other
// dough, nor where hardly anything grows.
func (l *Law) heldPace(b *Logged, pace, need float64) (y float64, by Vector, ok bool) {
	s := &b.Start
	x0 := s.Levain + s.Yeast
	if len(b.History) != 1 || s.Levain*s.Yeast != 0 || !(x0 < l.Capacity) || !(b.Hours > 0 && b.Hours < longest) {
		return 0, by, false
	}
	at := b.History[0].Celsius
	rates, before := l.rates(at), &s.levain
	if !(rates.gas > 0) {
		return 0, by, false
	}
	growth, kappa, yeast := l.mixed(rates), 0.0, 0.0
	if s.Levain == 0 {
		growth, yeast, before = rates.yeast, 1, &s.yeast
	} else if growth > leastMixed {
		kappa = (rates.yeast - rates.humilis) / growth
	}
	f := pace * b.Hours
	m := l.Growth * f * growth
	times := need * m / (l.Gas * f * rates.gas * l.Capacity) // ln u at the pace that is looked for
	var rising, begun float64                                // the derivatives by the rates and by X₀
	for range ownPaceSteps {
		if !(m > noGrowth) {
			return 0, by, false
		}
		e := numeric.Expm1(m)
		u1 := x0 * e * l.perCapacity
		logU := numeric.Log1p(u1)
		r := 1 / ((1 + u1) * l.Capacity * logU)
		rising, begun = x0*(1+e)*m*r, e*r
		byPace := rising + begun*before[Pace-1]
		if !(byPace > 0) {
			return 0, by, false
		}
		d := ownPaceStep(times/logU, byPace)
		y += d
		if math.Abs(d) < ownPaceSettled {
			break
		}
		m *= numeric.Exp(d)
	}
	// Growth alone changes the gas by less than all rates together, which make it.
	by = Vector{1, rising, rising * (at - slopeFrom), rising * cold(at), (rising - 1) * kappa, (rising - 1) * yeast}
	for j, d := range before {
		by[j+1] += begun * d
	}
	return y, by, !math.IsNaN(y)
}
