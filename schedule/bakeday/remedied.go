package bakeday

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/schedule"
)

// remedies are the ways out of a conflict that still help when the day is planned again with them: the clocks of the
// doughs move with the time of day. What no field of a bake says is left as it is.
func (o *Order) remedies(ctx context.Context, k *KitchenDay, clock KitchenClock) {
	c := k.Timetable.Conflict
	if c == nil {
		return
	}
	for _, member := range c.Remedies() {
		m := ruleData(member)
		again, ok := o.allowing(k, m)
		if m.Wanted || !ok {
			continue
		}
		var wanted []time.Time
		for _, d := range k.Breads {
			wanted = append(wanted, d.Wanted)
		}
		if next, err := again.planFor(ctx, wanted, clock); err == nil && !next.Possible() {
			k.useless = append(k.useless, m)
		}
	}
}

// allowing is the order with what the baker allows of a bread changed as a remedy says: how long it may rest in the
// cold, or wait when it is cool.
func (o *Order) allowing(k *KitchenDay, m RuleData) (Order, bool) {
	change := m.Change
	if m.Easing == schedule.Shorter {
		change = -change
	}
	at := slices.IndexFunc(k.problem.Steps, func(s schedule.DayStep) bool { return s.ID == m.Step })
	if at < 0 {
		return *o, false
	}
	step, out := k.problem.Steps[at], *o
	out.Bakes = slices.Clone(o.Bakes)
	for i := range out.Bakes {
		b := &out.Bakes[i]
		switch {
		case step.Bread != b.Name:
		case step.Kind == schedule.Cool && m.Rule == schedule.StepMax:
			b.Loaves.FreshWithin = k.Breads[i].Bake.Loaves.FreshWithin + change
			return out, true
		case step.Kind == schedule.Retard && b.Retard != nil:
			r := *b.Retard
			if m.Rule == schedule.StepMin {
				r.AtLeast += change
			} else {
				r.AtMost += change
			}
			b.Retard = &r
			return out, true
		}
	}
	return out, false
}
