package bakeday

import (
	"context"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// tried is what is left of the ways out of a conflict when all is planned again with each of them, as if it had been
// written so: the clocks of the doughs move with the time of day, so that some do not help, and some cannot be written.
type tried struct {
	done     bool // they were tried
	remedies []schedule.Member
	together []schedule.Member
}

// put says the ways out.
func (t tried) put(w *WhyData) {
	if !t.done {
		return
	}
	w.Remedies, w.Together = []RuleData{}, nil
	for _, m := range t.remedies {
		w.Remedies = append(w.Remedies, ruleData(m))
	}
	for _, m := range t.together {
		w.Together = append(w.Together, ruleData(m))
	}
}

// moreByEach are how much more than on paper is tried of a way out. Judgment: a change of some hours moves the dough's
// own hours by some minutes, seldom by more than half an hour.
var moreByEach = [...]quantity.Elapsed{0, quantity.Elapsed(15 * time.Minute), quantity.Elapsed(30 * time.Minute),
	quantity.Elapsed(time.Hour)}

// remedies tries the ways out of a bake that cannot be.
func (b *Bake) remedies(ctx context.Context, d *Day, clock KitchenClock) {
	o := Order{Kitchen: b.Kitchen, Bakes: []Bake{*b}}
	k := KitchenDay{Zone: d.Zone, Breads: []Day{*d}, Timetable: d.Timetable, problem: d.problem}
	d.tried = o.tries(ctx, &k, clock)
	d.TimeRanOut = d.TimeRanOut || k.TimeRanOut
}

// tries plans a day that cannot be again with every way out. What time ran out for is not named either: nobody knows
// whether it helps.
func (o *Order) tries(ctx context.Context, k *KitchenDay, clock KitchenClock) tried {
	c := k.Timetable.Conflict
	if c == nil {
		return tried{}
	}
	out := tried{done: true}
	helps := func(members ...schedule.Member) bool {
		again, change, ok := o.allowing(k, members)
		if !ok {
			return false
		}
		wanted := k.wanted()
		for i := range wanted {
			wanted[i] = wanted[i].Add(wantedElse(members))
		}
		possible, err := again.possible(ctx, wanted, clock, change)
		k.TimeRanOut = k.TimeRanOut || ended(err)
		return possible
	}
	enough := func(members ...schedule.Member) []schedule.Member {
		for _, by := range moreByEach {
			if more, ok := giving(members, by); ok && helps(more...) {
				return more
			}
		}
		return nil
	}
	alone := c.Remedies()
	for _, m := range alone { // the wanted times that work are looked for by themselves
		if !m.Wanted {
			out.remedies = append(out.remedies, enough(m)...)
		}
	}
	if len(alone) == 0 && len(c.Together) > 0 {
		out.together = enough(c.Together...)
	}
	return out
}

// giving are changes of which each gives so much more, as far as it can; false where none can.
func giving(members []schedule.Member, by quantity.Elapsed) (out []schedule.Member, ok bool) {
	for _, m := range members {
		more, can := m.Widened(by)
		if !can {
			more = m
		}
		out, ok = append(out, more), ok || can
	}
	return out, ok || by == 0
}

// wantedElse is how far all breads are wanted at another time with the changes of a conflict: they move together.
func wantedElse(members []schedule.Member) time.Duration {
	for _, m := range members {
		switch {
		case !m.Wanted:
		case m.Easing == schedule.Earlier:
			return -m.Change.Duration()
		default:
			return m.Change.Duration()
		}
	}
	return 0
}
