package ferment

import (
	"math"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// RiseReading is how far a dough has risen at a time, read from a straight-sided container or judged by eye.
type RiseReading struct {
	At   quantity.Elapsed `json:"at"`
	Rise quantity.Percent `json:"rise"` // 30 % is three tenths more volume; slightly negative readings are possible
	// Error is the standard deviation of the reading in points of rise; zero means 5.
	Error quantity.Percent `json:"error,omitzero"`
}

// Heights are two heights of a dough in a straight-sided container.
type Heights struct {
	Start quantity.Length `json:"start"`
	Now   quantity.Length `json:"now"`
}

// Rise is the rise seen: now/start − 1. Errors: ErrOutOfRange unless both heights are 1 mm to 2 m. Source: arithmetic.
func (h Heights) Rise() (quantity.Percent, error) {
	var p problems
	quantity.Check(&p.Problems, "Start", h.Start, quantity.Centimeters(0.1), quantity.Meters(2))
	quantity.Check(&p.Problems, "Now", h.Now, quantity.Centimeters(0.1), quantity.Meters(2))
	if err := p.ErrFor(h); err != nil {
		return quantity.Percent{}, err
	}
	return quantity.NewPercent(100 * (h.Now.Meters()/h.Start.Meters() - 1)), nil
}

// Progress is an estimate brought up to date by readings of the dough itself.
type Progress struct {
	Now    Estimate           `json:"now"`
	Before quantity.TimeRange `json:"before"`
}

// Shift is how much later the dough is now likely to be ready; negative is earlier.
func (p Progress) Shift() time.Duration { return p.Now.Ready().Likely - p.Before.Likely }

// String says whether the dough is early or late: "35m later than expected: 6h10m to 7h20m (80 %), likely 6h45m".
func (p Progress) String() string { return p.Message().String() }

// worthSaying is a shift that is not within what anybody can read off a dough.
const worthSaying = 5 * time.Minute

// Message says whether the dough is early or late.
func (p Progress) Message() working.Message {
	s, r := p.Shift().Round(time.Minute), p.Now.Ready()
	switch {
	case s > worthSaying:
		return working.Tell("ferment.later", "%v later than expected: %v", s, r)
	case s < -worthSaying:
		return working.Tell("ferment.earlier", "%v earlier than expected: %v", -s, r)
	}
	return working.Tell("ferment.as_expected", "as expected: %v", r)
}

// Update answers: the dough has risen this far after this time; when is it ready now?
//
//	y = ln(R + δ),   x ← x₀ + P·Hᵀ·(y_read − y(x) + H·(x − x₀))/(H·P·Hᵀ + r²),   P ← P − P·Hᵀ·H·P/(H·P·Hᵀ + r²)
//
// x are what is unknown of this dough (amplitude, pace with its own luck, slope, cold end, mixture,
// growth of yeast), P their
// covariance, H the derivative of y, δ the reading's error and r = δ/(R + δ) that of y: each reading counts by its
// precision. The step is repeated until x settles, so that large surprises are taken at their own slope. A reading
// equal to the prediction leaves the likely time and narrows the range. Readings are taken to err independently.
// Errors: ErrRequired for the zero Estimate or without readings; ErrOutOfRange for times outside 1 second to 30 days,
// rises outside −20 to 300 %, errors outside 0.1 to 50 points; ErrInconsistent for readings out of order or before ones
// already taken. Source: Gelman et al., Bayesian Data Analysis, chapter 4 (normal approximation at the mode).
func (e Estimate) Update(readings ...RiseReading) (Progress, error) {
	if err := e.checkReadings(readings); err != nil {
		return Progress{}, err
	}
	d := e.d
	belief, taken := d.take(readings)
	d.belief = belief
	d.clock = d.law.Clock(d.formula, belief.Mean)
	now, err := estimate(e.bulk, d, append(slices.Clone(e.readings), readings...))
	if err != nil {
		return Progress{}, err
	}
	for i, r := range readings {
		if math.Abs(taken[i].Surprise) > farOff {
			now.notes = append(now.notes, working.Tell("ferment.far_off",
				"the reading after %v is far from what the dough was expected to do: check the reading, the temperature and the "+
					"levain", r.At))
		}
	}
	return Progress{Now: now, Before: e.Ready()}, nil
}

// take is the belief after readings, and how each was taken in.
func (d *prepared) take(readings []RiseReading) (gasbalance.Belief, []gasbalance.Taken) {
	plain := make([]gasbalance.Reading, len(readings))
	for i, r := range readings {
		plain[i] = gasbalance.Reading{Hour: hours(r.At.Duration()), Rise: r.Rise.Fraction(), Error: r.within()}
	}
	vessel := gasbalance.Vessel{Hydration: d.formula.Hydration, Pressure: d.atm}
	return d.law.Observe(d.belief, d.formula, vessel, d.start, d.knots, plain)
}

// farOff is how many standard deviations a reading is off before it is doubted.
const farOff = 3.0

func (e *Estimate) checkReadings(readings []RiseReading) error {
	var p problems
	if !e.given() {
		p.Required("Estimate", quantity.Tell("ferment.want_estimate_dough", "an estimate of a dough"))
	}
	if len(readings) == 0 {
		p.Required("Readings", quantity.Tell("ferment.want_at_least_one_reading", "at least one reading"))
	}
	last := time.Duration(0)
	if n := len(e.readings); n > 0 {
		last = e.readings[n-1].At.Duration()
	}
	for i, r := range readings {
		path := indexed("Readings", i)
		if p.Duration(path+".At", r.At.Duration(), time.Second, Horizon) && r.At.Duration() <= last {
			p.Add(path+".At", r.At, quantity.Tell("ferment.want_after_reading_before_at", "after the reading before it, at %v",
				last),
				quantity.ErrInconsistent)
		}
		last = r.At.Duration()
		quantity.Check(&p.Problems, path+".Rise", r.Rise, quantity.NewPercent(-20), greatestRise)
		if !r.Error.IsZero() {
			quantity.Check(&p.Problems, path+".Error", r.Error, leastError, greatestError)
		}
	}
	return p.ErrFor(e)
}

var (
	leastError    = quantity.NewPercent(0.1)
	greatestError = quantity.NewPercent(50)
)

// standardReadingError is 5 points of rise: half a centimeter in a container filled 10 cm high.
const standardReadingError = 0.05

// within is the standard deviation of the reading as a fraction.
func (r RiseReading) within() float64 {
	if r.Error.IsZero() {
		return standardReadingError
	}
	return r.Error.Fraction()
}
