package bakeday

import (
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// wishAt is a wish for the instant at which a bread was planned to be there, moved.
func wishAt(at time.Time) Wish { return OnDate(wallclock.MustMoment(at.Format("2006-01-02 15:04"))) }

// shifted is the order with all wishes moved; false where a wish would fall into the hour that the clocks show twice.
func shifted(o Order, k KitchenDay, by time.Duration) (Order, bool) {
	o.Bakes = slices.Clone(o.Bakes)
	for i := range o.Bakes {
		o.Bakes[i].Wanted = wishAt(k.Breads[i].Wanted.In(k.Zone).Add(by))
		if _, err := wallclock.Resolve(o.Bakes[i].Wanted.Moment, k.Zone, wallclock.Refuse); err != nil {
			return o, false
		}
	}
	return o, true
}

// moved1 is the order with the wish of one bread moved, or with all bread waiting longer, as a remedy says.
func moved1(o Order, k KitchenDay, m RuleData) (Order, bool) {
	shift := m.Change.Duration()
	if m.Easing == schedule.Earlier {
		shift = -shift
	}
	waits := m.Rule == schedule.StepMax && m.Step == ""
	if !m.Wanted && !waits {
		return o, false
	}
	bread, _, _ := strings.Cut(m.Step, "/")
	o, _ = shifted(o, k, 0)
	for i := range o.Bakes {
		b := &o.Bakes[i]
		if waits {
			b.Loaves.FreshWithin = k.Breads[i].Bake.Loaves.FreshWithin + m.Change
		} else if b.Name == bread {
			b.Wanted = wishAt(k.Breads[i].Wanted.In(k.Zone).Add(shift))
		}
	}
	return o, true
}

// written is the order with one rule of a bake or of the kitchen written as a remedy says.
func written(o Order, k KitchenDay, m schedule.Member) (Order, bool) {
	o, _ = shifted(o, k, 0)
	switch m.Rule {
	case schedule.Capacity:
		o.Kitchen.Hands = max(1, o.Kitchen.Hands) + m.More
		return o, m.Other == hands
	case schedule.Absence:
		return absentElse(o, k, m), true
	case schedule.StepMin, schedule.StepMax, schedule.StepExact:
	default:
		return o, false
	}
	at := slices.IndexFunc(k.problem.Steps, func(s schedule.DayStep) bool { return s.ID == m.Step })
	step := k.problem.Steps[at]
	for i := range o.Bakes {
		if b := &o.Bakes[i]; b.Name == step.Bread {
			return o, b.allows(k.Breads[i].Bake, step, m)
		}
	}
	return o, false
}

// allows writes into a bake what its baker would have to allow of one step.
func (b *Bake) allows(planned Bake, step schedule.DayStep, m schedule.Member) bool {
	change := m.Change
	if m.Easing == schedule.Shorter {
		change = -change
	}
	hours := func(least, most *quantity.Elapsed) bool {
		if m.Easing == schedule.Shorter {
			*least += change
		} else {
			*most = max(*least, *most) + change
		}
		return true
	}
	switch step.Kind {
	case schedule.Cool:
		b.Loaves.FreshWithin = planned.Loaves.FreshWithin + change
		return true
	case schedule.Retard:
		r := *b.Retard
		b.Retard = &r
		return hours(&r.AtLeast, &r.AtMost)
	}
	b.Preferments, b.Soakers = slices.Clone(b.Preferments), slices.Clone(b.Soakers)
	for i := range b.Preferments {
		if p := &b.Preferments[i]; p.Name == step.Thing {
			return hours(&p.AtLeast, &p.AtMost)
		}
	}
	for i := range b.Soakers {
		if s := &b.Soakers[i]; s.Name == step.Thing {
			return hours(&s.AtLeast, &s.AtMost)
		}
	}
	return false
}

// absentElse is the order with the kitchen's habits written out day by day, one of them as a remedy says.
func absentElse(o Order, k KitchenDay, m schedule.Member) Order {
	byDay := func(habits []wallclock.Habit, name string) []wallclock.Habit {
		var out []wallclock.Habit
		for _, h := range habits {
			if h.Name == "" {
				h.Name = name
			}
			for day := k.Now.AddDate(0, 0, -2); day.Before(k.Now.AddDate(0, 0, 12)); day = day.AddDate(0, 0, 1) {
				local := day.In(k.Zone)
				noon := time.Date(local.Year(), local.Month(), local.Day(), 12, 0, 0, 0, k.Zone)
				if h.Days != 0 && h.Days&(1<<noon.Weekday()) == 0 || h.On != (wallclock.Date{}) &&
					h.On != wallclock.DateOf(noon, k.Zone) {
					continue
				}
				one := h
				one.Days, one.On = 0, wallclock.DateOf(noon, k.Zone)
				from := time.Date(local.Year(), local.Month(), local.Day(), h.From.Hour, h.From.Minute, 0, 0, k.Zone)
				if from.Equal(m.Closed.From) && absence(h) == m.Words {
					switch m.Easing {
					case schedule.Dropped:
						continue
					case schedule.Begins:
						one.From = wallclock.ClockOf(m.Closed.From.Add(m.Change.Duration()), k.Zone)
						one.On = wallclock.DateOf(m.Closed.From.Add(m.Change.Duration()), k.Zone)
					case schedule.Ends:
						one.To = wallclock.ClockOf(m.Closed.To.Add(-m.Change.Duration()), k.Zone)
					}
				}
				out = append(out, one)
			}
		}
		return out
	}
	o.Kitchen.Asleep = byDay(o.Kitchen.Asleep, "asleep")
	o.Kitchen.Away = byDay(o.Kitchen.Away, "away")
	return o
}
