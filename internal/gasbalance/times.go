package gasbalance

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// Outcome is when a need is met: hours at which it is with 10, 50 and 90 % probability, +Inf when not within the
// time looked at, and the path followed until then.
type Outcome struct {
	Early, Likely, Late float64
	Path                Path
}

// Times answers: when has the dough made the gas its goal takes?
//
//	score(t) = ln(G/N) − q·z·√(eᵀ·C·e + (∂b·σ)² + formula + opening)        q = −1, 0, 1
//
// passes zero at the three times; e are the derivatives of ln G by the unknowns and z 1.28155 or Student's for few
// bakes. The clock's unknowns should be the belief's means. The time looked at is until, in hours.
func (c *Clock) Times(start State, history []Knot, need Need, b *Belief, until float64) Outcome {
	q := question{clock: c, need: need, belief: b}
	out := [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	p := c.begin(start, history)
	next := 0
	at := q.surplus(&start, p.moments[0].leaves)
	for next < 3 && p.grow(until) {
		n := &p.moments[len(p.moments)-1]
		m := &p.moments[len(p.moments)-2]
		if m.leaves != m.arrives {
			at = q.surplus(&m.State, m.leaves)
		}
		then := q.surplus(&n.State, n.arrives)
		for next < 3 && then.score(next-1) >= 0 {
			out[next] = q.crossing(&p, m, n, next-1, at.score(next-1), then.score(next-1))
			next++
		}
		at = then
	}
	return Outcome{Early: out[0], Likely: out[1], Late: out[2], Path: p}
}

// Likely is the middle time alone, for questions that look for an amount or a temperature.
func (c *Clock) Likely(start State, history []Knot, need Need, until float64) float64 {
	q := question{clock: c, need: need}
	w := c.walk(history, 0)
	t := celsius(history, 0)
	n := moment{0, t, t, start}
	p := Path{walker: w}
	for {
		m := n
		if !w.step(&n, until) {
			return math.Inf(1)
		}
		if then := q.score(&n.State, n.arrives, 0); then >= 0 {
			return q.crossing(&p, &m, &n, 0, q.score(&m.State, m.leaves, 0), then)
		}
	}
}

type question struct {
	clock  *Clock
	need   Need
	belief *Belief
}

// lowest stands for the log of no gas.
const lowest = -700.0

// surplus is the log of the gas over the need, and the margin by which it may be off to each side.
type surplus struct{ log, margin float64 }

// surplus is that of a state.
func (q *question) surplus(s *State, celsius float64) surplus {
	g := q.clock.amplitude * s.Gas
	if !(g > 0) {
		return surplus{log: lowest}
	}
	e := s.LogGas()
	return surplus{numeric.Log(g / q.need.Gas(celsius)), q.belief.margin(&e)}
}

// score is the log of the gas over the need, less so many margins.
func (x surplus) score(side int) float64 {
	if side == 0 {
		return max(x.log, lowest)
	}
	return max(x.log-float64(side)*x.margin, lowest)
}

// score is that of a state, where the margin is only asked for when it counts.
func (q *question) score(s *State, celsius float64, side int) float64 {
	if side != 0 {
		return q.surplus(s, celsius).score(side)
	}
	if g := q.clock.amplitude * s.Gas; g > 0 {
		return max(numeric.Log(g/q.need.Gas(celsius)), lowest)
	}
	return lowest
}

// crossing is the time within a run at which the score turns positive, by the Illinois form of the rule of false
// position in the log of the time, where the score is nearly straight, until two guesses agree to a millionth. The
// scores at its ends are known.
func (q *question) crossing(p *Path, m, n *moment, side int, flo, fhi float64) float64 {
	at := func(t float64) float64 {
		s, c := p.within(m, n, t)
		return q.score(&s, c, side)
	}
	lo, hi := m.hour, n.hour
	if !(hi > lo) || flo >= 0 {
		return lo
	}
	// From no gas at all the log of the gas goes as that of the time: one division brings the lower end near.
	if flo <= lowest {
		t := lo + (hi-lo)*numeric.Exp(-fhi)*0.5
		if f := at(t); f < 0 {
			lo, flo = t, f
		} else {
			hi, fhi = t, f
		}
	}
	last := 0
	for range 80 {
		t := lo + (hi-lo)*flo/(flo-fhi)
		if flo <= lowest {
			t = (lo + hi) / 2
		}
		if !(t > lo && t < hi) {
			return t
		}
		f := at(t)
		if hi-lo <= 1e-7*hi || math.Abs(f) < 1e-7 {
			return t
		}
		if f < 0 {
			lo, flo = t, f
			if last < 0 {
				fhi /= 2
			}
			last = -1
		} else {
			hi, fhi = t, f
			if last > 0 {
				flo /= 2
			}
			last = 1
		}
	}
	return (lo + hi) / 2
}

// RiseBand is how far the dough has risen at a state, with the ends of its 80 % range: the rise solved for gas a
// margin less and more.
func (c *Clock) RiseBand(s *State, celsius, hydration, atm float64, b *Belief) (low, likely, high float64) {
	e := s.LogGas()
	g := c.Gas(s)
	margin := numeric.Exp(b.margin(&e))
	rise := func(g float64) float64 { return c.law.Rise(g, celsius, hydration, atm) }
	return rise(g / margin), rise(g), rise(g * margin)
}
