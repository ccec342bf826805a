package gasbalance

import "math"

// Reading is how far a rising dough was seen to have risen.
type Reading struct {
	Hour  float64
	Rise  float64
	Error float64 // standard deviation of the rise as read
}

// Vessel is where a rise is read: the dough's water and the air pressure.
type Vessel struct{ Hydration, Pressure float64 }

// Taken is how one reading was taken in: what its log was expected to be, what it was, and what came of it.
type Taken struct {
	Before, After Belief
	Surprise      float64 // how many standard deviations the reading was off what was expected
	Expected      float64 // the rise expected before, by the law at the mean
	Rise          float64 // and after
	Read, Noise   float64 // y = ln(R + δ) as read, and its standard deviation
	// Straight is y expected before, along the slope that y has at the answer, and Parts its variance by what it comes
	// from; Together is how each unknown goes with it, their covariance.
	Straight        float64
	Parts, Together Vector
}

// Variance is that of what was expected, without the reading's own.
func (t *Taken) Variance() (v float64) {
	for _, p := range t.Parts {
		v += p
	}
	return v
}

// Observe is the belief after readings of the dough itself, with its own luck and its formula's doubt as part of
// the pace, and how each reading was taken in.
//
//	y = ln(R + δ),   x ← x₀ + P·Hᵀ·(H·P·Hᵀ + r²)⁻¹·(y_read − y(x) + H·(x − x₀))
//
// δ is the reading's error and r = δ/(R + δ) that of y. One reading after the other, each repeated until x settles,
// so that large surprises are taken at their own slope. Source: Gelman et al., Bayesian Data Analysis, chapter 4
// (normal approximation at the mode).
func (l *Law) Observe(
	b Belief, f Formula, v Vessel, start State, history []Knot, readings []Reading,
) (Belief, []Taken) {
	b.Cov[Pace][Pace] += b.Luck + b.Formula
	b.Luck, b.Formula = 0, 0
	taken := make([]Taken, len(readings))
	for i, r := range readings {
		taken[i] = l.observe(&b, f, v, start, history, r)
	}
	return b, taken
}

// mostSteps bounds the search for the mode; three or four are usual.
const mostSteps = 300

func (l *Law) observe(b *Belief, f Formula, v Vessel, start State, history []Knot, r Reading) (taken Taken) {
	taken.Before = *b
	read := math.Max(r.Rise, -r.Error/2)
	y, noise := math.Log(read+r.Error), r.Error/(read+r.Error)
	x := b.Mean
	pace := l.Pace(f)
	var ph Vector
	s := 0.0
	part, last := 1.0, math.Inf(1) // how much of a step is taken: less where steps to and fro do not settle
	for step := range mostSteps {
		c := l.ClockAt(pace, x)
		state := c.AdvanceAlong(start, history, 0, r.Hour)
		at := celsius(history, r.Hour)
		rise := l.Rise(c.Gas(&state), at, v.Hydration, v.Pressure)
		h := Vector{}
		if rise > 0 && rise < l.Fullest { // a dough that is as full as can be no longer goes with its gas
			n := l.Need(rise, v.Hydration, v.Pressure)
			through := rise / n.Steepness(at) / (rise + r.Error) // dln(R + δ)/dln G
			h = state.LogGas()
			for i := range h {
				h[i] *= through
			}
		}
		if step == 0 {
			taken.Expected = rise
		}
		ph, s = b.Cov.along(&h)
		s += noise * noise
		for i := range h {
			taken.Parts[i] = h[i] * ph[i]
		}
		innovation := y - math.Log(rise+r.Error)
		if step == 0 {
			taken.Surprise = innovation / math.Sqrt(s)
		}
		for i := range h {
			innovation -= h[i] * (b.Mean[i] - x[i])
		}
		taken.Straight = y - innovation
		change, to, full := 0.0, Vector{}, Vector{}
		for i := range x {
			d := b.Mean[i] + ph[i]/s*innovation - x[i]
			change, full[i] = math.Max(change, math.Abs(d)), d
			to[i] = math.Max(-0.5, math.Min(0.5, d)) // bounded steps settle where plain ones overshoot
		}
		if step > 8 && change > 0.5*last {
			part = math.Max(0.8*part, 1.0/256)
		}
		last = change
		if change < 1e-9 || step == mostSteps-1 {
			for i := range x {
				x[i] += full[i] // the answer of this slope: what is derived from it comes to the same
			}
			break
		}
		for i := range x {
			x[i] += part * to[i]
		}
	}
	known := s - noise*noise
	taken.Rise = math.Exp(taken.Straight+known/s*(y-taken.Straight)) - r.Error
	b.Mean = x
	b.Cov.told(&ph, s)
	taken.Read, taken.Noise, taken.Together, taken.After = y, noise, ph, *b
	return taken
}

// along is M·h and hᵀ·M·h.
func (m *Matrix) along(h *Vector) (mh Vector, hmh float64) {
	for i := range h {
		for j := range h {
			mh[i] += m[i][j] * h[j]
		}
		hmh += h[i] * mh[i]
	}
	return mh, hmh
}

// told is the covariance after a reading with which the unknowns go by mh, and whose variance is s.
func (m *Matrix) told(mh *Vector, s float64) {
	for i := range mh {
		for j := range mh {
			m[i][j] -= mh[i] * mh[j] / s
		}
	}
}
