package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/numeric"
)

// AmountAnswer is how much levain or yeast makes a dough ready at a wanted time.
type AmountAnswer struct {
	// Inoculation is the prefermented share of the flour, or Yeast the dose of commercial yeast; zero when not
	// Feasible.
	Inoculation quantity.Percent `json:"inoculation,omitzero"`
	Yeast       Yeast            `json:"yeast,omitzero"`
	Feasible    bool             `json:"feasible"`
	// Why says what is in the way when it is not feasible.
	Why working.Message `json:"why,omitzero"`
	// Estimate is the dough with that amount; the zero value when not feasible.
	Estimate Estimate `json:"estimate"`
}

// String prints "12.4 % of the flour prefermented: …" or why there is no such amount.
func (a AmountAnswer) String() string { return a.Message().String() }

// Message says how much, or why there is no such amount.
func (a AmountAnswer) Message() working.Message {
	switch {
	case !a.Feasible:
		return working.Tell("ferment.no_amount", "no amount does it: %v", a.Why)
	case a.Yeast.Kind != NoYeast:
		return working.Tell("ferment.amount_yeast", "%.2f %v: %v", a.Yeast.Amount, a.Yeast.Kind, a.Estimate)
	}
	return working.Tell("ferment.amount_levain", "%.1f of the flour prefermented: %v", a.Inoculation, a.Estimate)
}

// The least and the most there is an answer for, in percent of the flour.
const (
	leastYeast, mostYeast   = 0.001, 10.0
	leastLevain, mostLevain = 0.1, 50.0
)

// AmountFor answers: how much levain, or yeast of the kind in Yeast, makes the dough likely ready at the wanted time?
// With a levain in Inoculation and a kind in Yeast: how much yeast beside that levain?
//
//	ln G(t; amount) = ln N(R, T(t), p)
//
// with the symbols of [Bulk.Estimate]; Yeast.Amount of the input is not used, nor Inoculation of a levain alone. An
// amount outside 0.1 to 50 % of the flour prefermented, or what its preferments leave of it, or 0.001 to 10 % yeast, is
// not feasible, and Why says on which side. Accuracy: a millionth of the amount, for the likely time. Errors: as
// [Bulk.Estimate], and ErrOutOfRange for a time outside 10 minutes to 30 days. Source: the law solved for the cells.
func (b Bulk) AmountFor(ready time.Duration) (AmountAnswer, error) {
	yeast := b.Yeast.Kind != NoYeast
	least, most := leastLevain, mostLevain
	if yeast {
		least, most = leastYeast, mostYeast
		b.Yeast.Amount = quantity.NewPercent(least)
	} else {
		b.Inoculation = quantity.NewPercent(least)
		left := whole.Points() // of the flour, beside what the preferments hold
		for i := range b.Preferments {
			left -= b.Preferments[i].Flour.Points()
		}
		most = math.Min(most, left)
	}
	d, err := b.prepare(true)
	var p problems
	p.Join("", err)
	p.Duration("Ready", ready, 10*time.Minute, Horizon)
	if err := p.ErrFor(b); err != nil {
		return AmountAnswer{}, err
	}
	if err := within(b.Law, b.Extrapolate, b.History.knots, hours(ready), "History"); err != nil {
		return AmountAnswer{}, err
	}
	celsius := History{knots: d.knots}.celsius(hours(ready))
	need := d.need.Gas(celsius)
	without, one := b, gasbalance.Start(ripe(d.law, whole, b.ColdLevain)/100, 0) // of 1 %
	if yeast {
		without.Yeast, one = Yeast{}, gasbalance.Start(0, b.Yeast.Kind.asInstant())
	} else {
		without.Inoculation = quantity.Percent{}
	}
	rest, err := without.cells(d.law)
	if err != nil {
		return AmountAnswer{}, err
	}
	short := func(logAmount float64) float64 {
		s := d.at(gasbalance.Mix(rest, one.HandOn(math.Exp(logAmount))), hours(ready))
		return math.Max(math.Log(d.clock.Gas(&s)/need), -700)
	}
	low, high := math.Log(least), math.Log(most)
	switch {
	case short(low) >= 0:
		return AmountAnswer{Why: tooSoon(yeast && !b.Inoculation.IsZero())}, nil
	case short(high) < 0:
		return AmountAnswer{Why: tooLate()}, nil
	}
	x, err := numeric.Root(short, low, high, 1e-9)
	if err != nil {
		return AmountAnswer{}, err
	}
	a := AmountAnswer{Feasible: true}
	if yeast {
		b.Yeast.Amount = quantity.NewPercent(math.Exp(x))
		a.Yeast = b.Yeast
	} else {
		b.Inoculation = quantity.NewPercent(math.Exp(x))
		a.Inoculation = b.Inoculation
	}
	a.Estimate, err = b.Estimate()
	return a, err
}

func tooSoon(beside bool) working.Message {
	if beside {
		return working.Tell("ferment.levain_alone",
			"the levain alone would be ready by then: no yeast, or a cooler dough")
	}
	return working.Tell("ferment.least_too_soon", "even the least amount would be ready sooner: cool the dough")
}

func tooLate() working.Message {
	return working.Tell("ferment.most_too_late", "it would take more than can be put in: give it more time or warmth")
}

// TemperatureAnswer is which temperature makes a dough ready at a wanted time.
type TemperatureAnswer struct {
	Temperature quantity.Temperature `json:"temperature,omitzero"` // not given when not Feasible
	Feasible    bool                 `json:"feasible"`
	Why         working.Message      `json:"why,omitzero"`
	Estimate    Estimate             `json:"estimate"`
}

// String prints "25.3 °C: …" or why there is no such temperature.
func (a TemperatureAnswer) String() string { return a.Message().String() }

// Message says which temperature, or why there is none.
func (a TemperatureAnswer) Message() working.Message {
	if !a.Feasible {
		return working.Tell("ferment.no_temperature", "no temperature does it: %v", a.Why)
	}
	return working.Tell("ferment.temperature", "%.1f: %v", a.Temperature, a.Estimate)
}

// StartFor answers: how warm must the dough leave the mixer to be likely ready at the wanted time in its room? The
// History of the bulk is not used; Start of the drift is what is asked for. It looks between 10 °C and where warmer
// stops being faster, 30 °C for a levain and 37 °C for yeast. Accuracy: 0.001 °C. Errors: as [Bulk.Estimate] and
// [Relaxing.History]; ErrOutOfRange for a time outside 10 minutes to 30 days. Source: root of the likely time over the
// temperature.
func (b Bulk) StartFor(ready time.Duration, drift Relaxing) (TemperatureAnswer, error) {
	return b.temperatureFor(ready, ofDough, func(t quantity.Temperature) (History, error) {
		drift.Start = t
		return drift.History()
	})
}

// RoomFor answers: at which steady room temperature is the dough likely ready at the wanted time, given how warm
// it leaves the mixer? The Room of the drift is what is asked for; otherwise as [Bulk.StartFor].
func (b Bulk) RoomFor(ready time.Duration, drift Relaxing) (TemperatureAnswer, error) {
	return b.temperatureFor(ready, ofRoom, func(t quantity.Temperature) (History, error) {
		drift.Room = Room{Night: t}
		return drift.History()
	})
}

// HeldFor answers: at which steady temperature, as in a proofing box, is the dough likely ready at the wanted time?
// Otherwise as [Bulk.StartFor].
func (b Bulk) HeldFor(ready time.Duration) (TemperatureAnswer, error) {
	return b.temperatureFor(ready, ofDough, func(t quantity.Temperature) (History, error) { return Constant(t), nil })
}

const coolest = 10.0 // °C: colder is a retard, not a bulk

// Where warmer stops being faster, °C: above, a levain grows more slowly, and yeast too.
const (
	fastestLevain = 30.0
	fastestYeast  = 37.0
)

// whose temperature is asked for.
type asked bool

const (
	ofDough asked = false
	ofRoom  asked = true
)

func (b Bulk) temperatureFor(ready time.Duration, of asked,
	history func(quantity.Temperature) (History, error)) (TemperatureAnswer, error) {
	var p problems
	b.History = Constant(quantity.Celsius(20))
	d, err := b.prepare(true)
	p.Join("", err)
	p.Duration("Ready", ready, 10*time.Minute, Horizon)
	_, err = history(quantity.Celsius(20))
	p.Join("Drift", err)
	if err := p.ErrFor(b); err != nil {
		return TemperatureAnswer{}, err
	}
	warmest := fastestLevain
	if d.kind == gasbalance.ByYeast {
		warmest = fastestYeast
	}
	warmest = math.Min(warmest, b.Law.About().High)
	short := func(c float64) float64 {
		h, err := history(degrees(c))
		if err != nil {
			return math.NaN()
		}
		d.knots = h.knots
		if b.OwnHeat != 0 {
			d.warm(&b)
		}
		s := d.at(d.start, hours(ready))
		celsius := History{knots: d.knots}.celsius(hours(ready))
		return math.Max(math.Log(d.clock.Gas(&s)/d.need.Gas(celsius)), -700)
	}
	if short(coolest) > 0 {
		return TemperatureAnswer{Why: tooWarm(of)}, nil
	}
	if short(warmest) < 0 {
		return TemperatureAnswer{Why: notWarmEnough(of, degrees(warmest))}, nil
	}
	c, err := numeric.Root(short, coolest, warmest, 1e-5)
	if err != nil {
		p.Add("Law", b.Law, quantity.Tell("ferment.want_curves_rise_up_to_their", "curves that rise up to their optimum"),
			quantity.ErrInconsistent)
		return TemperatureAnswer{}, p.ErrFor(b)
	}
	a := TemperatureAnswer{Temperature: degrees(math.Round(c*1000) / 1000), Feasible: true}
	if b.History, err = history(a.Temperature); err != nil {
		return TemperatureAnswer{}, err
	}
	a.Estimate, err = b.Estimate()
	return a, err
}

func tooWarm(of asked) working.Message {
	if of == ofRoom {
		return working.Tell("ferment.room_still_sooner",
			"with the room at %v it would still be ready sooner: use less levain or yeast", degrees(coolest))
	}
	return working.Tell("ferment.dough_still_sooner",
		"with the dough at %v it would still be ready sooner: use less levain or yeast", degrees(coolest))
}

func notWarmEnough(of asked, warmest quantity.Temperature) working.Message {
	if of == ofRoom {
		return working.Tell("ferment.room_still_later",
			"with the room at %.1f, where warmer stops being faster, it would still be later: use more levain or yeast, or "+
				"give it more time", warmest)
	}
	return working.Tell("ferment.dough_still_later",
		"with the dough at %.1f, where warmer stops being faster, it would still be later: use more levain or yeast, or "+
			"give it more time", warmest)
}
