package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
)

// AmountAnswer is how much levain or yeast makes a dough ready at a wanted time.
type AmountAnswer struct {
	// Inoculation is the prefermented share of the flour, or Yeast the dose of commercial yeast; zero when not Feasible.
	Inoculation quantity.Percent
	Yeast       Yeast
	Feasible    bool
	// Why says what is in the way when it is not feasible.
	Why working.Message
	// Estimate is the dough with that amount; the zero value when not feasible.
	Estimate Estimate
}

// String prints "12.4 % of the flour prefermented: …" or why there is no such amount.
func (a AmountAnswer) String() string {
	switch {
	case !a.Feasible:
		return "no amount does it: " + a.Why.String()
	case a.Yeast.Kind != NoYeast:
		return a.Yeast.Amount.Text(2) + " " + a.Yeast.Kind.String() + ": " + a.Estimate.String()
	}
	return a.Inoculation.Text(1) + " of the flour prefermented: " + a.Estimate.String()
}

// AmountFor answers: how much levain, or yeast of the kind in Yeast, makes the dough likely ready at the wanted time? With a levain
// in Inoculation and a kind in Yeast: how much yeast beside that levain?
//
//	f = K·R/(s·(exp(p·M(t) − lag) − 1))
//
// with the symbols of [Bulk.Estimate]; Yeast.Amount of the input is not used, nor Inoculation of a levain alone. Beside a levain the amount of yeast
// is found as the root of the likely time. An amount outside 0.1 to 50 % of the
// flour prefermented, or 0.01 to 10 % yeast, is not feasible, and Why says on which side. Accuracy: exact for the likely time. Errors: as [Bulk.Estimate],
// and ErrOutOfRange for a time outside 10 minutes to 30 days. Source: the growth law solved for f.
func (b Bulk) AmountFor(ready time.Duration) (AmountAnswer, error) {
	yeast := b.Yeast.Kind != NoYeast
	if yeast {
		b.Yeast.Amount = quantity.NewPercent(1)
	} else {
		b.Inoculation = quantity.NewPercent(10)
	}
	f, err := b.check(true)
	var p problems
	p.Join("", err)
	p.Duration("Ready", ready, 10*time.Minute, Horizon)
	if err := p.Err(); err != nil {
		return AmountAnswer{}, err
	}
	n := f.through(b.History, hours(ready))
	if err := sane(n.dose); err != nil {
		return AmountAnswer{}, err
	}
	if err := withinCurve(b, b.History, hours(ready), "History"); err != nil {
		return AmountAnswer{}, err
	}
	if b.leavening() == byBoth {
		return b.yeastBeside(ready)
	}
	m := 0.0
	if n.dose > 0 {
		m = math.Exp(f.expected(n.dose, n.mean())) - f.lag
	}
	if m <= 0 {
		return AmountAnswer{Why: working.Say("the culture does not grow in that time at these temperatures")}, nil
	}
	share := math.Exp(f.out.a) * f.target / (math.Expm1(m) * f.salt)
	least, most := 0.001, 0.5
	amount := share
	if yeast {
		amount = share / yeastShare / b.Yeast.Kind.asInstant()
		least, most = leastYeast, mostYeast
	}
	switch {
	case !(amount >= least):
		return AmountAnswer{Why: working.Say("even the least amount would be ready sooner: cool the dough")}, nil
	case amount > most:
		return AmountAnswer{Why: working.Say("it would take more than can be put in: give it more time or warmth")}, nil
	}
	a := AmountAnswer{Feasible: true}
	if yeast {
		b.Yeast.Amount = quantity.NewPercent(amount)
		a.Yeast = b.Yeast
	} else {
		b.Inoculation = quantity.NewPercent(100 * amount)
		a.Inoculation = b.Inoculation
	}
	a.Estimate, err = b.Estimate()
	return a, err
}

// The least and the most yeast there is an answer for, in percent of the flour.
const (
	leastYeast = 0.01
	mostYeast  = 10.0
)

// yeastBeside finds the yeast that goes with a levain.
func (b Bulk) yeastBeside(ready time.Duration) (AmountAnswer, error) {
	var failed error
	late := func(logAmount float64) float64 {
		b.Yeast.Amount = quantity.NewPercent(math.Exp(logAmount))
		b.Extrapolate = true // the history was checked up to the wanted time
		e, err := b.Estimate()
		if err != nil {
			failed = err
			return math.NaN()
		}
		return math.Log(math.Min(e.likely, 1e6) / hours(ready))
	}
	low, high := late(math.Log(leastYeast)), late(math.Log(mostYeast))
	switch {
	case failed != nil:
		return AmountAnswer{}, failed
	case low <= 0:
		return AmountAnswer{Why: working.Say("the levain alone would be ready by then: no yeast, or a cooler dough")}, nil
	case high > 0:
		return AmountAnswer{Why: working.Say("it would take more than can be put in: give it more time or warmth")}, nil
	}
	x, err := numeric.Root(late, math.Log(leastYeast), math.Log(mostYeast), 1e-6)
	if err != nil {
		return AmountAnswer{}, err
	}
	b.Yeast.Amount = quantity.NewPercent(math.Exp(x))
	a := AmountAnswer{Yeast: b.Yeast, Feasible: true}
	a.Estimate, err = b.Estimate()
	return a, err
}

// TemperatureAnswer is which temperature makes a dough ready at a wanted time.
type TemperatureAnswer struct {
	Temperature quantity.Temperature // not given when not Feasible
	Feasible    bool
	Why         working.Message
	Estimate    Estimate
}

// String prints "25.3 °C: …" or why there is no such temperature.
func (a TemperatureAnswer) String() string {
	if !a.Feasible {
		return "no temperature does it: " + a.Why.String()
	}
	return a.Temperature.Text(quantity.CelsiusScale, 1) + ": " + a.Estimate.String()
}

// StartFor answers: how warm must the dough leave the mixer to be likely ready at the wanted time in its room? The
// History of the bulk is not used; Start of the drift is what is asked for. It looks between 10 °C and the curve's optimum, where warmer is faster. Accuracy:
// 0.001 °C. Errors: as [Bulk.Estimate] and [Relaxing.History]; ErrOutOfRange for a time outside 10 minutes to 30 days. Source: root of the
// likely time over the temperature.
func (b Bulk) StartFor(ready time.Duration, drift Relaxing) (TemperatureAnswer, error) {
	return b.temperatureFor(ready, "the dough", func(t quantity.Temperature) (History, error) {
		drift.Start = t
		return drift.History()
	})
}

// RoomFor answers: at which steady room temperature is the dough likely ready at the wanted time, given how warm
// it leaves the mixer? The Room of the drift is what is asked for; otherwise as [Bulk.StartFor].
func (b Bulk) RoomFor(ready time.Duration, drift Relaxing) (TemperatureAnswer, error) {
	return b.temperatureFor(ready, "the room", func(t quantity.Temperature) (History, error) {
		drift.Room = Room{Night: t}
		return drift.History()
	})
}

// HeldFor answers: at which steady temperature, as in a proofing box, is the dough likely ready at the wanted time?
// Otherwise as [Bulk.StartFor].
func (b Bulk) HeldFor(ready time.Duration) (TemperatureAnswer, error) {
	return b.temperatureFor(ready, "the dough", func(t quantity.Temperature) (History, error) { return Constant(t), nil })
}

const coolest = 10.0 // °C: colder is a retard, not a bulk

func (b Bulk) temperatureFor(ready time.Duration, what string, history func(quantity.Temperature) (History, error)) (TemperatureAnswer, error) {
	var p problems
	b.History = Constant(quantity.Celsius(20))
	_, err := b.check(true)
	p.Join("", err)
	p.Duration("Ready", ready, 10*time.Minute, Horizon)
	_, err = history(quantity.Celsius(20))
	p.Join("Drift", err)
	if err := p.Err(); err != nil {
		return TemperatureAnswer{}, err
	}
	best, _ := b.Curve.Optimum()
	warmest := math.Min(best.Celsius(), b.Curve.About().High)
	likely := func(c float64) float64 {
		h, err := history(degrees(c))
		if err != nil {
			return math.NaN()
		}
		in := b
		in.History, in.Extrapolate = h, true
		e, err := in.Estimate()
		if err != nil {
			return math.NaN()
		}
		return math.Log(math.Min(e.likely, 1e6)) - math.Log(hours(ready))
	}
	if likely(coolest) < 0 {
		return TemperatureAnswer{Why: working.Say("with %s at %v it would still be ready sooner: use less levain or yeast", what, degrees(coolest))}, nil
	}
	if likely(warmest) > 0 {
		return TemperatureAnswer{Why: working.Say("with %s at %.1f, the best there is, it would still be later: use more levain or yeast, or give it more time", what, degrees(warmest))}, nil
	}
	c, err := numeric.Root(likely, coolest, warmest, 1e-5)
	if err != nil {
		return TemperatureAnswer{}, quantity.At("Curve", &quantity.InputError{Got: b.Curve.About().Name, Want: "a curve that rises up to its optimum", Err: quantity.ErrInconsistent})
	}
	a := TemperatureAnswer{Temperature: degrees(math.Round(c*1000) / 1000), Feasible: true}
	h, err := history(a.Temperature)
	if err != nil {
		return TemperatureAnswer{}, err
	}
	b.History = h
	a.Estimate, err = b.Estimate()
	return a, err
}
