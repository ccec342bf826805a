package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// RiseReading is how far a dough has risen at a time, read from a straight-sided container or judged by eye.
type RiseReading struct {
	At   quantity.Elapsed `json:"at"`
	Rise quantity.Percent `json:"rise"` // 30 % is three tenths more volume; slightly negative readings are possible
	// Error is the standard deviation of the reading in points of rise; zero means 5.
	Error quantity.Percent `json:"error,omitzero"`
}

// RiseFromHeights is the rise seen in a straight-sided container: now/start − 1. Errors: ErrOutOfRange unless both heights are
// 1 mm to 2 m. Source: arithmetic.
func RiseFromHeights(start, now quantity.Length) (quantity.Percent, error) {
	var p problems
	quantity.Check(&p.Problems, "Start", start, quantity.Centimeters(0.1), quantity.Meters(2))
	quantity.Check(&p.Problems, "Now", now, quantity.Centimeters(0.1), quantity.Meters(2))
	if err := p.Err(); err != nil {
		return quantity.Percent{}, err
	}
	return quantity.NewPercent(100 * (now.Meters()/start.Meters() - 1)), nil
}

// Progress is an estimate brought up to date by readings of the dough itself.
type Progress struct {
	Now    Estimate
	Before quantity.TimeRange
}

// Shift is how much later the dough is now likely to be ready; negative is earlier.
func (p Progress) Shift() time.Duration { return p.Now.Ready().Likely - p.Before.Likely }

// String says in plain words whether the dough is early or late: "35m later than expected: 6h10m to 7h20m (80 %), likely 6h45m".
func (p Progress) String() string {
	s := p.Shift().Round(time.Minute)
	r := p.Now.Ready()
	switch {
	case s > 5*time.Minute:
		return quantity.FormatDuration(s) + " later than expected: " + r.String()
	case s < -5*time.Minute:
		return quantity.FormatDuration(-s) + " earlier than expected: " + r.String()
	}
	return "as expected: " + r.String()
}

// Update answers: the dough has risen this far after this time; when is it ready now?
//
//	y = ln(R + δ),   x ← x + P·Hᵀ·(y_read − y(x))/(H·P·Hᵀ + r²),   P ← P − P·Hᵀ·H·P/(H·P·Hᵀ + r²)
//
// x are the logs of amplitude and pace, the temperature sensitivity of this dough and how far its curve is off, P their covariance, H the derivative
// of y, δ the reading's error and r = δ/(R + δ) that of y: each reading counts by its precision. The step is repeated until x settles, so that
// large surprises are taken at their slope, not at the old one. A reading equal to the prediction leaves the likely time and narrows the range.
// Readings are taken to err independently. Errors: ErrRequired for the zero Estimate or without readings;
// ErrOutOfRange for times outside 1 second to 30 days, rises outside −20 to 300 %, errors outside 0.1 to 50 points; ErrInconsistent for readings out of order or
// before ones already taken. Source: Gelman et al., Bayesian Data Analysis, chapter 4 (normal approximation at the mode).
func (e Estimate) Update(readings ...RiseReading) (Progress, error) {
	var p problems
	if len(e.nodes) == 0 {
		p.Required("Estimate", "a result of Bulk.Estimate")
	}
	if len(readings) == 0 {
		p.Required("Readings", "at least one reading")
	}
	last := time.Duration(0)
	if n := len(e.readings); n > 0 {
		last = e.readings[n-1].At.Duration()
	}
	for i, r := range readings {
		path := fmt.Sprintf("Readings[%d]", i)
		if p.Duration(path+".At", r.At.Duration(), time.Second, Horizon) && r.At.Duration() <= last {
			p.Add(path+".At", r.At.String(), "after the reading before it, at "+quantity.FormatDuration(last), quantity.ErrInconsistent)
		}
		last = r.At.Duration()
		quantity.Check(&p.Problems, path+".Rise", r.Rise, quantity.NewPercent(-20), greatestRise)
		if !r.Error.IsZero() {
			quantity.Check(&p.Problems, path+".Error", r.Error, quantity.NewPercent(0.1), quantity.NewPercent(50))
		}
	}
	if err := p.Err(); err != nil {
		return Progress{}, err
	}
	f := e.f
	var notes []working.Message
	for _, r := range readings {
		if off := f.learn(e.at(hours(r.At.Duration())), r); math.Abs(off) > 3 {
			notes = append(notes, working.Say("the reading after %s is far from what the dough was expected to do: check the reading, the temperature and the levain", r.At))
		}
	}
	now, err := estimate(e.bulk, f, append(append([]RiseReading(nil), e.readings...), readings...))
	if err != nil {
		return Progress{}, err
	}
	now.notes = append(now.notes, notes...)
	return Progress{Now: now, Before: e.Ready()}, nil
}

// standardReadingError is 5 points of rise: half a centimeter in a container filled 10 cm high.
const standardReadingError = 0.05

// learn brings the outlook up to date by one reading and returns how many standard deviations off it was.
func (f *fermentation) learn(n node, r RiseReading) (surprise float64) {
	if !(n.dose > 0) {
		return 0
	}
	delta := r.Error.Fraction()
	if delta == 0 {
		delta = standardReadingError
	}
	read := math.Max(r.Rise.Fraction(), -delta/2)
	y := math.Log(read + delta)
	noise := delta / (read + delta)
	o := f.out
	dT, doubt := n.mean()-reference, f.doubt(n.mean())
	x0 := [4]float64{o.a, o.b, o.d, o.c}
	P := [4][4]float64{{o.aa, o.ab, o.ad, o.ac}, {o.ab, o.bb, o.bd, o.bc}, {o.ad, o.bd, o.dd, o.cd}, {o.ac, o.bc, o.cd, o.cc}}
	x := x0
	var H, PH [4]float64
	var s float64
	for i := range 50 {
		u := math.Exp(math.Log(n.dose) + x[1] + x[2]*dT + x[3]*doubt)
		m := math.Min(math.Max(u-f.lag, 1e-9), 50)
		amp := f.share * math.Exp(-x[0])
		R := math.Expm1(m) * amp
		dR := u * math.Exp(m) * amp / (R + delta)
		H = [4]float64{-R / (R + delta), dR, dR * dT, dR * doubt}
		s = noise * noise
		for j := range H {
			PH[j] = 0
			for k := range H {
				PH[j] += P[j][k] * H[k]
			}
			s += H[j] * PH[j]
		}
		innovation := y - math.Log(R+delta)
		if i == 0 {
			surprise = innovation / math.Sqrt(s)
		}
		for j := range H {
			innovation -= H[j] * (x0[j] - x[j])
		}
		change := 0.0
		for j := range H {
			d := x0[j] + PH[j]/s*innovation - x[j]
			change = math.Max(change, math.Abs(d))
			x[j] += math.Max(-0.5, math.Min(0.5, d)) // bounded steps settle where plain ones overshoot
		}
		if change < 1e-12 {
			break
		}
	}
	for j := range H {
		for k := range H {
			P[j][k] -= PH[j] * PH[k] / s
		}
	}
	old := o.bb
	o.a, o.b, o.d, o.c = x[0], x[1], x[2], x[3]
	o.aa, o.ab, o.ad, o.ac = P[0][0], P[0][1], P[0][2], P[0][3]
	o.bb, o.bd, o.bc = P[1][1], P[1][2], P[1][3]
	o.dd, o.cd, o.cc = P[2][2], P[2][3], P[3][3]
	if old > 0 {
		o.luck *= o.bb / old
	}
	f.out = o
	f.amplitude = math.Exp(o.a)
	return surprise
}
