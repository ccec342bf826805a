package schedule

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Check says which rules of the problem the times of a timetable break; nothing when
// it keeps them all. It reads the problem directly and shares nothing with the planner, so
// that it can judge a timetable changed by hand, or the planner itself.
//
// A living step may take anything from its Min to its Max.
func (p Problem) Check(t Timetable) []Breach {
	k := checker{p: p, at: map[string]Timed{}}
	for _, s := range t.Steps {
		k.at[s.ID] = s
	}
	for _, s := range p.Steps {
		k.step(s)
	}
	if len(k.broken) > 0 && len(t.Steps) != len(p.Steps) {
		return k.broken
	}
	for _, l := range p.Links {
		k.link(l)
	}
	for _, b := range p.Bounds {
		k.bound(b)
	}
	for _, r := range p.Resources {
		k.resource(r)
	}
	for _, group := range p.Alike {
		for i := 1; i < len(group); i++ {
			if k.at[group[i]].Start.Before(k.at[group[i-1]].Start) {
				k.say(Breach{Rule: InOrder, Step: group[i-1], Other: group[i]},
					working.Tell("schedule.check_order", "%v starts before %v", k.name(group[i]), k.name(group[i-1])))
			}
		}
	}
	return k.broken
}

type checker struct {
	p      Problem
	at     map[string]Timed
	broken []Breach
}

func (k *checker) say(f Breach, words working.Message) {
	f.Words = words
	k.broken = append(k.broken, f)
}

// name is what people call a step.
func (k *checker) name(id string) working.Message {
	for _, s := range k.p.Steps {
		if s.ID == id {
			return s.label().Title()
		}
	}
	return Label{ID: id}.Title()
}

func (k *checker) step(s DayStep) {
	t, ok := k.at[s.ID]
	if !ok {
		k.say(Breach{Rule: Missing, Step: s.ID}, working.Tell("schedule.check_missing", "%v is missing", k.name(s.ID)))
		return
	}
	grid := k.p.grid()
	most := s.Max
	if most == 0 {
		most = s.Min
	}
	switch d := quantity.Elapsed(t.End.Sub(t.Start)); {
	case d < s.Min:
		k.say(Breach{Rule: StepMin, Step: s.ID}, working.Tell("schedule.takes", "%v takes %v", k.name(s.ID), d))
	case d > most:
		k.say(Breach{Rule: StepMax, Step: s.ID}, working.Tell("schedule.takes", "%v takes %v", k.name(s.ID), d))
	}
	if t.Start.Before(k.p.Anchor) {
		k.say(Breach{Rule: PlanStart, Step: s.ID},
			working.Tell("schedule.check_before_plan", "%v begins before the plan", k.name(s.ID)))
	}
	if t.End.After(k.p.Anchor.Add(k.p.Horizon.Duration())) {
		k.say(Breach{Rule: PlanEnd, Step: s.ID},
			working.Tell("schedule.check_after_plan", "%v ends after the plan", k.name(s.ID)))
	}
	if quantity.Elapsed(t.Start.Sub(k.p.Anchor))%grid != 0 || quantity.Elapsed(t.End.Sub(k.p.Anchor))%grid != 0 {
		k.say(Breach{Rule: PlanStart, Step: s.ID},
			working.Tell("schedule.check_grid", "%v is off the grid", k.name(s.ID)))
	}
}

func (k *checker) link(l Link) {
	from, to := k.at[l.From], k.at[l.To]
	a, b := from.End, to.Start
	if l.Kind == StartToStart || l.Kind == StartToEnd {
		a = from.Start
	}
	if l.Kind == EndToEnd || l.Kind == StartToEnd {
		b = to.End
	}
	f := Breach{Rule: LinkMin, Step: l.From, Other: l.To}
	if d := quantity.Elapsed(b.Sub(a)); d < l.Min || d > l.Max {
		if d > l.Max {
			f.Rule = LinkMax
		}
		k.say(f, working.Tell("schedule.check_link", "%v to %v (%v): %v", k.name(l.From), k.name(l.To), l.Kind, d))
	}
}

func (k *checker) bound(b Bound) {
	at := k.at[b.Step].Start
	if b.Edge == End {
		at = k.at[b.Step].End
	}
	f := Breach{Rule: NotBefore, Step: b.Step}
	if !b.Earliest.IsZero() && at.Before(b.Earliest) || !b.Latest.IsZero() && at.After(b.Latest) {
		if b.Earliest.IsZero() || !at.Before(b.Earliest) {
			f.Rule = NotAfter
		}
		k.say(f, working.Tell("schedule.check_bound", "%v: %v of %v is at %v", b.Words, b.Edge, k.name(b.Step), at))
	}
}

func (k *checker) resource(r Resource) {
	type use struct {
		Timed
		Need
	}
	var uses []use
	for _, s := range k.p.Steps {
		for _, n := range s.Needs {
			if n.Resource == r.ID {
				uses = append(uses, use{k.at[s.ID], n})
			}
		}
	}
	for i, u := range uses {
		for _, c := range r.Closed {
			if u.Start.Before(c.To) && c.From.Before(u.End) {
				k.say(Breach{Rule: Absence, Step: u.ID, Other: r.ID},
					working.Tell("schedule.check_during", "%v during %v", u.Title(), c.Words))
			}
		}
		if !u.Start.Before(u.End) {
			continue
		}
		sum := 0
		for j, v := range uses {
			if !v.Start.Before(v.End) {
				continue
			}
			if !v.Start.After(u.Start) && u.Start.Before(v.End) {
				sum += v.Amount
			}
			if j <= i {
				continue
			}
			if r.apart(u.Need, v.Need) && u.End.Add(r.between(u.Need, v.Need).Duration()).After(v.Start) &&
				v.End.Add(r.between(v.Need, u.Need).Duration()).After(u.Start) {
				k.say(Breach{Rule: Capacity, Step: u.ID, Other: r.ID},
					working.Tell("schedule.check_both_use", "%v and %v both use %v", u.Title(), v.Title(), r.title()))
			}
		}
		if r.Capacity > 0 && sum > r.Capacity {
			k.say(Breach{Rule: Capacity, Step: u.ID, Other: r.ID},
				working.Tell("schedule.check_sum", "%d of %v used at the start of %v", sum, r.title(), u.Title()))
		}
	}
}
