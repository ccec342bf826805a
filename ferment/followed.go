package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// Followed is a dough watched by a probe: what has become of it until the last reading. It is an immutable value of
// fixed size: taking in a reading costs the same however many came before, and a thousand doughs are followed by
// keeping a thousand of them. For a rise seen in the dough itself use [Estimate.Update].
type Followed struct {
	bulk     Bulk
	d        *prepared
	state    gasbalance.State
	last     knot
	readings int
	// passed are the hours at which the early, likely and late marks were passed; NaN while they are ahead.
	passed [3]float64
}

// Follow begins to follow a dough at the first reading of a probe in it, which is the end of mixing. History and
// OwnHeat of the bulk are not used. Errors: as [Bulk.Estimate] and [Followed.Read].
func (b Bulk) Follow(first quantity.Temperature) (Followed, error) {
	b.OwnHeat = 0
	var p problems
	p.Join("", (&Followed{bulk: b}).checkTemperature(first))
	b.History = Constant(first)
	if p.Err() != nil {
		b.History = Constant(quantity.Celsius(24)) // what else is wrong does not hang on it
	}
	d, err := b.prepare(true)
	p.Join("", err)
	if err := p.Err(); err != nil {
		return Followed{}, err
	}
	b.History = History{}
	d.knots = nil
	f := Followed{bulk: b, d: &d, state: d.start, last: knot{Celsius: first.Celsius()},
		passed: [3]float64{math.NaN(), math.NaN(), math.NaN()}}
	f.readings = 1
	return f, nil
}

// Read takes in the next reading, at a time from the first one; between readings the temperature runs straight. A gap
// over 4 hours, after a night without the probe, is bridged by reading in between what one believes of it. Errors:
// ErrRequired for the zero Followed; ErrInconsistent for a reading not after the last one, or a gap over 4 hours;
// ErrOutOfRange for a time over 30 days or a temperature no dough has; ErrModelRange for one the law may not be used
// at, unless Extrapolate.
func (f Followed) Read(at time.Duration, t quantity.Temperature) (Followed, error) {
	if f.d == nil {
		var p problems
		p.Required("Followed", quantity.Tell("ferment.want_dough_followed", "a dough that is followed"))
		return f, p.ErrFor(f)
	}
	if err := f.checkReading(at, t); err != nil {
		return f, err
	}
	to := knot{Hour: hours(at), Celsius: t.Celsius()}
	dt := to.Hour - f.last.Hour
	for i := range f.passed {
		if !math.IsNaN(f.passed[i]) {
			continue
		}
		after, ok := f.d.clock.Crossed(f.state, dt, f.last.Celsius, to.Celsius, &f.d.need, &f.d.belief, i-1)
		if !ok {
			break // later marks are passed later
		}
		f.passed[i] = f.last.Hour + after
	}
	f.state = f.d.clock.Advance(f.state, dt, f.last.Celsius, to.Celsius)
	f.last = to
	f.readings++
	return f, nil
}

// checkReading reports what is wrong with a reading after the first one.
func (f *Followed) checkReading(at time.Duration, t quantity.Temperature) error {
	last := time.Duration(math.Round(f.last.Hour * float64(time.Hour)))
	if c := t.Celsius(); c >= lawLow && c <= lawHigh && at > last && at <= Horizon && at-last <= standardGap &&
		f.bulk.Law == GasBalance() {
		return nil
	}
	var p problems
	switch {
	case at <= last:
		p.Add("At", at, quantity.Tell("ferment.want_after_reading_before_at", "after the reading before it, at %v", last),
			quantity.ErrInconsistent)
	case at-last > standardGap:
		p.Add("At", quantity.Tell("ferment.got_gap", "a gap of %v", at-last),
			quantity.Tell("ferment.want_at_most_without_reading", "at most %v without a reading",
				standardGap), quantity.ErrInconsistent)
	default:
		p.Duration("At", at, 0, Horizon)
	}
	p.Join("", f.checkTemperature(t))
	return p.ErrFor(f)
}

func (f *Followed) checkTemperature(t quantity.Temperature) error {
	var p problems
	if quantity.Check(&p.Problems, "Temperature", t, lowestTemperature, highestTemperature) && !f.bulk.Extrapolate {
		p.Join("", within(f.bulk.Law, false, Constant(t).knots, 0, "Temperature"))
	}
	return p.ErrFor(f)
}

// Readings is how many readings were taken in, the first included.
func (f Followed) Readings() int { return f.readings }

// Last is the last reading.
func (f Followed) Last() Knot {
	if f.d == nil {
		return Knot{}
	}
	return Knot{quantity.Elapsed(math.Round(f.last.Hour * float64(time.Hour))), degrees(f.last.Celsius)}
}

// Ready answers: when is the dough ready, from the first reading, if it stays as warm as it is now? Marks that are
// passed stay where they were passed. As [Estimate.Ready].
func (f Followed) Ready() quantity.TimeRange {
	if f.d == nil {
		return quantity.TimeRange{}
	}
	held := [1]knot{{Celsius: f.last.Celsius}}
	at := f.passed
	if math.IsNaN(at[2]) {
		o := f.d.clock.Times(f.state, held[:], f.d.need, &f.d.belief, hours(Horizon))
		for i, ahead := range [3]float64{o.Early, o.Likely, o.Late} {
			if math.IsNaN(at[i]) {
				at[i] = f.last.Hour + ahead
			}
		}
	}
	return timeRange(at[0], at[1], at[2])
}

// Rise is how far the dough has risen by now, with a band of 80 %.
func (f Followed) Rise() quantity.Range[quantity.Percent] {
	if f.d == nil {
		return band{}
	}
	return f.d.band(&f.state, f.last.Celsius)
}

// String prints the rise by now and the range: "28 % by now; 75 % rise after 5h10m to 6h20m (80 %), likely 5h40m".
func (f Followed) String() string { return f.Message().String() }

// Message says how far the dough is and when it is ready.
func (f Followed) Message() working.Message {
	if f.d == nil {
		return working.Tell("ferment.not_followed", "no dough is followed")
	}
	return working.Tell("ferment.followed", "%v by now; %.0f rise after %v", riseWords(f.Rise().Likely), f.bulk.Rise,
		f.Ready())
}
