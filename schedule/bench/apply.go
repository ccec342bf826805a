package bench

import (
	"context"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/wallclock"
)

// Applied is a bake with what was learned put into it, and what that rests on.
type Applied struct {
	Bake bakeday.Bake `json:"bake"`
	// RestsOn says what of it was learned from how many bakes; none when nothing was.
	RestsOn []working.Message `json:"rests_on,omitempty"`
	// Warming and Loss are what was learned of them, to be written into the bake; not given when nothing was.
	Warming quantity.TemperatureDelta `json:"warming,omitzero"`
	Loss    quantity.Percent          `json:"loss,omitzero"`
}

// Apply answers: how is the bake planned with what was learned? Its culture is the learned one; the warming of its
// mixer and the loss in its oven are taken from the lessons where the bake does not say them itself. So a plan with
// lessons, the bench and the next plan all reckon with the same.
func (l Lessons) Apply(b bakeday.Bake) Applied {
	out := Applied{Bake: b}
	r := raisedBy(b.Levain != nil, withYeast(b))
	if known := l.Culture(r); !known.IsZero() {
		out.Bake.Culture = known
		out.RestsOn = append(out.RestsOn, working.Tell("bench.rests_culture", "%v: %v", r, known))
	}
	if m, ok := l.Mixer(b.Mixing.Mixer); ok && b.Mixing.Warming.IsZero() {
		if warming, ok := m.usualWarming(); ok {
			out.Bake.Mixing.Warming, out.Warming = warming, warming
			out.RestsOn = append(out.RestsOn, working.Tell("bench.rests_warming",
				"the mixer warms the dough by %.1f: learned from %d {2|batch|batches}", warming, len(m.Batches)))
		}
	}
	if x, ok := l.Loss(b.Loaves.Style); ok && b.Loaves.Loss.IsZero() {
		loss := tenth(x.Mean)
		out.Bake.Loaves.Loss, out.Loss = loss, loss
		out.RestsOn = append(out.RestsOn, working.Tell("bench.rests_loss",
			"the loaves lose %.1f in the oven: weighed on %d {2|loaf|loaves}", loss, x.Count))
	}
	return out
}

// withYeast reports whether commercial yeast raises the bake.
func withYeast(b bakeday.Bake) bool {
	for _, o := range b.Others {
		if o.Kind.Yeast() {
			return true
		}
	}
	return len(b.Preferments) > 0
}

// usualWarming is how much the mixer is likely to warm a batch like the last one, to a tenth of a degree.
func (m MixerLesson) usualWarming() (quantity.TemperatureDelta, bool) {
	prediction, err := m.Learned.Predict(m.Batches[len(m.Batches)-1], quantity.NewPercent(80))
	if err != nil {
		return quantity.TemperatureDelta{}, false
	}
	return quantity.DeltaCelsius(roundTo(prediction.Rise.Celsius(), 10)), prediction.Rise.IsValid()
}

// NextPlan is what lessons change in the plan of a bake.
type NextPlan struct {
	Before bakeday.Day `json:"before"`
	After  bakeday.Day `json:"after"`
	// Warming and Loss are what to write into the bake to keep what was learned; not given where nothing was.
	Warming quantity.TemperatureDelta `json:"warming,omitzero"`
	Loss    quantity.Percent          `json:"loss,omitzero"`
	RestsOn []working.Message         `json:"rests_on,omitempty"`
}

// NextPlan answers: what would this bake be planned with, now that this was learned? What the bake says itself of the
// mixer's warming and the loss is set against what was learned. A bake whose wanted date has passed is planned for
// the next such weekday: what was learned does not depend on the date.
//
// Errors: those of [bakeday.Bake.Plan].
func (l Lessons) NextPlan(ctx context.Context, b bakeday.Bake, clock bakeday.KitchenClock) (NextPlan, error) {
	b = ahead(b, clock)
	var out NextPlan
	var err error
	if out.Before, err = b.Plan(ctx, clock); err != nil {
		return out, err
	}
	plain := b
	plain.Mixing.Warming, plain.Loaves.Loss = quantity.TemperatureDelta{}, quantity.Percent{}
	applied := l.Apply(plain)
	with := applied.Bake
	if applied.Warming.IsZero() {
		with.Mixing.Warming = b.Mixing.Warming
	}
	if applied.Loss.IsZero() {
		with.Loaves.Loss = b.Loaves.Loss
	}
	out.Warming, out.Loss, out.RestsOn = applied.Warming, applied.Loss, applied.RestsOn
	out.After, err = with.Plan(ctx, clock)
	return out, err
}

// ahead is the bake wished for the next such weekday when its date has passed.
func ahead(b bakeday.Bake, clock bakeday.KitchenClock) bakeday.Bake {
	if b.Wanted.Moment == (wallclock.Moment{}) {
		return b
	}
	if r, err := wallclock.Resolve(b.Wanted.Moment, clock.Zone, wallclock.RFC5545); err == nil &&
		r.At.Before(clock.Now) {
		at := r.At.In(clock.Zone)
		if c, err := wallclock.ParseClock(at.Format("15:04")); err == nil {
			b.Wanted = bakeday.OnDay(at.Weekday(), c)
		}
	}
	return b
}

// tenth rounds a percentage to a tenth of a point.
func tenth(p quantity.Percent) quantity.Percent { return quantity.NewPercent(roundTo(p.Points(), 10)) }
