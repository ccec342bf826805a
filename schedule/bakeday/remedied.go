package bakeday

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
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

// allowing is the order as it would be written with the changes that a conflict names, and what no order can say of
// them: an absence that is another one once. False for what cannot be written.
func (o *Order) allowing(k *KitchenDay, members []schedule.Member) (again Order, absent relief, ok bool) {
	again = *o
	again.Bakes = slices.Clone(o.Bakes)
	for _, m := range members {
		switch m.Rule {
		case schedule.Absence:
			if m.Closed != nil && m.Easing != schedule.Dropped && !plainly(otherEnd(m), k.Zone) {
				return again, nil, false
			}
			continue // by the relief
		case schedule.Capacity:
			if again.Kitchen.Hands = max(1, again.Kitchen.Hands) + m.More; m.Other != hands {
				return again, nil, false
			}
			continue
		}
		at := slices.IndexFunc(k.problem.Steps, func(s schedule.DayStep) bool { return s.ID == m.Step })
		bread := -1
		if at >= 0 {
			bread = slices.IndexFunc(o.Bakes, func(b Bake) bool { return b.Name == k.problem.Steps[at].Bread })
		}
		if !m.Wanted && (bread < 0 || !again.Bakes[bread].allow(k.Breads[bread].Bake, k.problem.Steps[at], m)) {
			return again, nil, false
		}
	}
	for i := range again.Bakes {
		again.Bakes[i].Kitchen.Hands = again.Kitchen.Hands
	}
	return again, reliefOf(members), true
}

// allow writes into a bake what its baker would have to allow of one of its steps; false where that cannot be.
// The bake as it was planned has the hours that it leaves out.
func (b *Bake) allow(planned Bake, step schedule.DayStep, m schedule.Member) bool {
	change := m.Change
	if m.Easing == schedule.Shorter {
		change = -change
	}
	hours := func(least, most *quantity.Elapsed, shortest time.Duration) bool {
		if m.Easing == schedule.Shorter {
			*least += change
		} else {
			*most = max(*least, *most) + change
		}
		return least.Duration() >= shortest && most.Duration() <= longestRest
	}
	switch step.Kind {
	case schedule.Cool:
		b.Loaves.FreshWithin = planned.Loaves.FreshWithin + change
		return b.Loaves.FreshWithin.Duration() <= longestFresh
	case schedule.Retard:
		r := *b.Retard
		b.Retard = &r
		return hours(&r.AtLeast, &r.AtMost, shortestRetard)
	case schedule.Ripen, schedule.Stand:
		b.Preferments, b.Soakers = slices.Clone(b.Preferments), slices.Clone(b.Soakers)
		if i := slices.IndexFunc(b.Preferments, func(p PrefermentWork) bool { return p.Name == step.Thing }); i >= 0 {
			return hours(&b.Preferments[i].AtLeast, &b.Preferments[i].AtMost, shortestRest)
		}
		if i := slices.IndexFunc(b.Soakers, func(s SoakerWork) bool { return s.Name == step.Thing }); i >= 0 {
			return hours(&b.Soakers[i].AtLeast, &b.Soakers[i].AtMost, shortestRest)
		}
	}
	return false
}

// otherEnd is where an absence would begin, or end, with the change of a conflict.
func otherEnd(m schedule.Member) time.Time {
	if m.Easing == schedule.Ends {
		return m.Closed.To.Add(-m.Change.Duration())
	}
	return m.Closed.From.Add(m.Change.Duration())
}

// plainly reports whether a time of day alone says which moment is meant: not in an hour that the clocks show twice.
func plainly(t time.Time, zone *time.Location) bool {
	_, err := wallclock.Resolve(wallclock.MomentOf(t, zone), zone, wallclock.Refuse)
	return err == nil
}

// relief is a change of rules that no bake and no kitchen can say. Nil changes nothing.
type relief func(schedule.Problem) schedule.Problem

// reliefOf makes the changes of absences that a conflict names.
func reliefOf(members []schedule.Member) relief {
	return func(p schedule.Problem) schedule.Problem {
		p.Resources = slices.Clone(p.Resources)
		for i := range p.Resources {
			for _, m := range members {
				if m.Rule == schedule.Absence && m.Other == p.Resources[i].ID && m.Closed != nil {
					p.Resources[i].Closed = otherwise(p.Resources[i].Closed, m)
				}
			}
		}
		return p
	}
}

// otherwise are absences of which one gives way.
func otherwise(all []schedule.Span, m schedule.Member) []schedule.Span {
	var out []schedule.Span
	for _, s := range all {
		if m.Closed.From.Equal(s.From) && m.Closed.To.Equal(s.To) && s.Words == m.Words {
			switch m.Easing {
			case schedule.Dropped:
				continue
			case schedule.Begins:
				s.From = s.From.Add(m.Change.Duration())
			case schedule.Ends:
				s.To = s.To.Add(-m.Change.Duration())
			}
		}
		out = append(out, s)
	}
	return out
}
