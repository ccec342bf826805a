package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

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
