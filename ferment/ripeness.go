package ferment

import (
	"encoding/json"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/numeric"
)

// Ripeness is when a preferment is ripe, from the time it was made.
type Ripeness struct {
	From  quantity.TimeRange `json:"from"`  // when it becomes ripe
	Peak  quantity.TimeRange `json:"peak"`  // when it stands highest
	Until quantity.TimeRange `json:"until"` // until when it is still usable

	of      Ripening
	d       prepared
	outcome gasbalance.Outcome // of the peak
	reached [len(stages)]bool
}

// Reached reports whether it is ripe, at its peak, and past use within 30 days, more likely than not.
func (r Ripeness) Reached() (ripe, peak, past bool) { return r.reached[0], r.reached[1], r.reached[2] }

// Notes are things to know about this answer.
func (r Ripeness) Notes() []working.Message {
	out := r.of.History.Notes()
	if r.of.Hydration.Points() > 0 && r.of.Hydration.Points() < stiffBelow {
		out = append(out, working.Tell("ferment.stiff_preferment",
			"a stiff preferment, and one ripened for its acid, takes longer than its gas says: go by its look"))
	}
	return out
}

// stiffBelow is the hydration, in percent, of a stiff preferment.
const stiffBelow = 60.0

// String prints "ripe after about 4h50m, at its peak after 3h50m to 8h20m (80 %), likely 5h40m, usable until about
// 8h30m".
func (r Ripeness) String() string { return r.Message().String() }

// Message says when it is ripe, at its peak, and past use.
func (r Ripeness) Message() working.Message {
	if ripe, _, _ := r.Reached(); !ripe && r.d.law != nil {
		return working.Tell("ferment.never_ripe", "not ripe within 30 days at these temperatures")
	}
	const to = 5 * time.Minute
	return working.Tell("ferment.ripeness", "ripe after about %v, at its peak after %v, usable until about %v",
		r.From.Likely.Round(to), r.Peak, r.Until.Likely.Round(to))
}

type ripenessData struct {
	Of    Ripening           `json:"of"`
	From  quantity.TimeRange `json:"from"`
	Peak  quantity.TimeRange `json:"peak"`
	Until quantity.TimeRange `json:"until"`
	Notes []working.Message  `json:"notes,omitempty"`
}

// MarshalJSON writes what was asked and the answer; null for the zero Ripeness.
func (r Ripeness) MarshalJSON() ([]byte, error) {
	if r.d.law == nil {
		return []byte("null"), nil
	}
	return json.Marshal(ripenessData{r.of, r.From, r.Peak, r.Until, r.Notes()})
}

// UnmarshalJSON makes the answer again from what was asked. Errors: as [Ripening.Ripe].
func (r *Ripeness) UnmarshalJSON(data []byte) error {
	*r = Ripeness{}
	if string(data) == "null" {
		return nil
	}
	var d ripenessData
	if err := quantity.ReadJSON(data, &d); err != nil {
		return err
	}
	again, err := d.Of.Ripe()
	if err == nil {
		*r = again
	}
	return err
}

// amountFor looks for the amount, in percent, that is ripe at a time; false when there is none.
func (r Ripening) amountFor(ready time.Duration, least, most float64,
	set func(*Ripening, quantity.Percent)) (quantity.Percent, bool, error) {
	p := r.check()
	p.Duration("Ready", ready, 10*time.Minute, Horizon)
	if err := p.ErrFor(r); err != nil {
		return quantity.Percent{}, false, err
	}
	if err := within(r.Law, r.Extrapolate, r.History.knots, hours(ready), "History"); err != nil {
		return quantity.Percent{}, false, err
	}
	var failed error
	short := func(logAmount float64) float64 {
		set(&r, quantity.NewPercent(math.Exp(logAmount)))
		d, err := r.prepare()
		if err != nil {
			failed = err
			return math.NaN()
		}
		s := d.at(d.start, hours(ready))
		return math.Max(math.Log(d.clock.Gas(&s)/d.need.Gas(reference)), -700)
	}
	low, high := math.Log(least), math.Log(most)
	if short(low) > 0 || short(high) < 0 || failed != nil {
		return quantity.Percent{}, false, failed
	}
	x, err := numeric.Root(short, low, high, 1e-9)
	if err != nil || failed != nil {
		return quantity.Percent{}, false, err
	}
	return quantity.NewPercent(math.Exp(x)), true, nil
}
