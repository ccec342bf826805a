package ferment

import (
	"math"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// Estimate is when a dough is ready and how it rises until then: a range, never one number.
type Estimate struct {
	bulk     Bulk
	d        prepared
	outcome  gasbalance.Outcome
	readings []RiseReading
	notes    []working.Message
}

// Estimate answers: when has the dough risen that far, in this kitchen, with this culture?
//
//	dX/dt = P·μ₂₇·g(T)·(1 − X/X_m)·X     dG/dt = K·P·q₂₇·r(T)·X     ready when G = N(R, T, p)
//	score(t) = ln(G/N) − q·z·√(eᵀ·C·e + (∂b·σ)² + …),   q = −1, 0, 1 for early, likely, late
//
// with the symbols of [GasBalance]: X the cells (a levain brings f·X_L, yeast its dose as instant yeast, a preferment
// what has grown in it), G the gas, N what the rise R takes. e are the derivatives of ln G by what is unknown of a
// kitchen (log of amplitude and pace, slope by temperature, cold end, mixture of the levain, growth of yeast), C
// their covariance, ∂b that by the pace, σ what differs from bake to bake; z is 1.28 or Student's. The times at which
// the score passes zero are Early, Likely and Late.
//
// Valid for inoculations of 0.01 to 100 %, rises of 1 to 300 %, temperatures of −1 to 43 °C, sugar to 40 %. Accuracy:
// the range is what is believed of an unknown kitchen, not yet scored on real bakes; simulated kitchens drawn from
// those beliefs lie inside in four of five cases, kitchens drawn from wider ones in two of three; 79 of 93 rules of the
// trade lie inside. The arithmetic is within 3·10⁻³ in ln G of the differential equations.
//
// Errors: ErrRequired, ErrOutOfRange and ErrInconsistent in the fields; ErrModelRange when the history leaves the law's
// range before the late end, unless Extrapolate. A dough that is not ready within 30 days is an answer: see
// [Estimate.Reached]. Source: as [GasBalance].
func (b Bulk) Estimate() (Estimate, error) {
	d, err := b.prepare(true)
	if err != nil {
		return Estimate{}, err
	}
	return estimate(b, d, nil)
}

func estimate(b Bulk, d prepared, readings []RiseReading) (Estimate, error) {
	e := Estimate{bulk: b, d: d, readings: readings}
	e.outcome = d.clock.Times(d.start, d.knots, d.need, &d.belief, hours(Horizon))
	if err := within(b.Law, b.Extrapolate, d.knots, e.end(), "History"); err != nil {
		return Estimate{}, err
	}
	e.notes = e.remark()
	return e, nil
}

// end is the late end in hours, at most the horizon.
func (e *Estimate) end() float64 { return math.Min(e.outcome.Late, hours(Horizon)) }

func (e *Estimate) likely() float64 { return math.Min(e.outcome.Likely, hours(Horizon)) }

// given reports whether this is the result of an estimate.
func (e *Estimate) given() bool { return e.d.law != nil }

// timeRange makes a range of three times in hours, each at most the horizon.
func timeRange(early, likely, late float64) quantity.TimeRange {
	limit := hours(Horizon)
	return quantity.TimeRange{
		Early: span(math.Min(early, limit)), Likely: span(math.Min(likely, limit)), Late: span(math.Min(late, limit)),
		Probability: probabilityClaimed,
	}
}

// Ready is when the dough is ready, from the start of the history. An end that is not within the 30 days of [Horizon]
// is given as 30 days; [Estimate.Reached] tells.
func (e Estimate) Ready() quantity.TimeRange {
	return timeRange(e.outcome.Early, e.outcome.Likely, e.outcome.Late)
}

// Reached reports whether the dough is more likely than not to be ready within 30 days.
func (e Estimate) Reached() bool { return e.given() && !math.IsInf(e.outcome.Likely, 1) }

// Bulk is the input the estimate was made from.
func (e Estimate) Bulk() Bulk { return e.bulk }

// Readings are the readings of the dough that were taken in, in order.
func (e Estimate) Readings() []RiseReading { return slices.Clone(e.readings) }

// Notes are things to know about this estimate.
func (e Estimate) Notes() []working.Message { return slices.Clone(e.notes) }

// moment is the state and the temperature at a time.
func (e *Estimate) moment(hour float64) (gasbalance.State, float64) { return e.outcome.Path.At(hour) }

// RiseAt is how far the dough has risen at a time, with a band of 80 %. A value of 300 % means that or more: gas enough
// is made, but no dough holds it. Errors: ErrRequired for the zero Estimate, ErrOutOfRange unless 0 ≤ t ≤ 30 days.
func (e Estimate) RiseAt(t time.Duration) (quantity.Range[quantity.Percent], error) {
	var p problems
	if !e.given() {
		p.Required("Estimate", quantity.Tell("ferment.want_estimate_dough", "an estimate of a dough"))
	}
	p.Duration("At", t, 0, Horizon)
	if err := p.ErrFor(e); err != nil {
		return band{}, err
	}
	return e.band(hours(t)), nil
}

func (e *Estimate) band(hour float64) band {
	s, c := e.moment(hour)
	return e.d.band(&s, c)
}

// band is the rise of a state with its range.
func (d *prepared) band(s *gasbalance.State, celsius float64) band {
	return newBand(d.clock.RiseBand(s, celsius, d.formula.Hydration, d.atm, &d.belief))
}

// RisePoint is one point of the rise over time.
type RisePoint struct {
	At          quantity.Elapsed                 `json:"at"`
	Temperature quantity.Temperature             `json:"temperature"`
	Rise        quantity.Range[quantity.Percent] `json:"rise"`
}

// RiseCurve is the rise with its band at n times evenly spaced from 0 to a tenth beyond the late end (30 days at most),
// n from 2 to 10,000; other n give 25.
func (e Estimate) RiseCurve(n int) []RisePoint {
	if !e.given() {
		return nil
	}
	if n < 2 || n > 10_000 {
		n = 25
	}
	end := math.Min(1.1*e.end(), hours(Horizon))
	out := make([]RisePoint, n)
	for i := range out {
		t := end * float64(i) / float64(n-1)
		s, c := e.moment(t)
		out[i] = RisePoint{quantity.Elapsed(span(t)), degrees(c), e.d.band(&s, c)}
	}
	return out
}

// Mean is the mean temperature that counts: weighted by what it does to the gas, until the dough is likely ready.
func (e Estimate) Mean() quantity.Temperature {
	if !e.given() {
		return quantity.Temperature{}
	}
	s, c := e.moment(e.likely())
	return degrees(meanCelsius(&s, c))
}

// meanCelsius is the temperature that counts: where one degree more throughout does to the log of the gas what the
// slope says.
func meanCelsius(s *gasbalance.State, now float64) float64 {
	e := s.LogGas()
	if !(s.Gas > 0) || !(e[gasbalance.Pace] > 0) {
		return now
	}
	return reference + e[gasbalance.Slope]/e[gasbalance.Pace]
}

// reference is the temperature from which a kitchen's slope counts, °C.
const reference = 24.0
