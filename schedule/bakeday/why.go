package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// why says why there is no timetable: what is in the way, or what else is the matter; nil when there is one.
func (d Day) why() *WhyData {
	c := d.Timetable.Conflict
	w := &WhyData{Rules: []RuleData{}, Remedies: []RuleData{}}
	wanted := d.Wanted.In(d.Zone)
	switch {
	case d.Possible():
		return nil
	case !d.Rising.Feasible:
		w.Reason, w.Says = RisesTooFar, d.risesTooFar()
		return w
	case c == nil:
		w.Reason = TimeRanOut
		w.Says = working.Tell("bakeday.why_time_ran_out",
			"the time for planning ran out before a timetable was found or ruled out")
		return w
	case c.Short > 0 && !c.ShortProven:
		w.Says = working.Tell("bakeday.why_misses_at_most", "%v is missed by %v or less: %v", wanted, c.Short,
			inTheWay(c, d.left(c)))
	case c.Short > 0:
		w.Says = working.Tell("bakeday.why_misses", "%v is missed by %v: %v", wanted, c.Short, inTheWay(c, d.left(c)))
	default:
		w.Says = working.Tell("bakeday.why_clash", "%v cannot be kept: %v", wanted, inTheWay(c, d.left(c)))
	}
	w.Reason = Clash
	if c.ShortProven {
		w.Short = c.Short
	}
	before, add := d.workBefore(c)
	for _, m := range c.Members {
		if m.Step == add && add != "" {
			w.Rules, add = append(w.Rules, before...), ""
		}
		if atOnce(m) {
			w.InOrder = true // the order of the steps is not up for change
			continue
		}
		w.Rules = append(w.Rules, ruleData(m))
	}
	for _, m := range c.Remedies() {
		if !m.Wanted { // the times that work are told by themselves
			w.Remedies = append(w.Remedies, ruleData(m))
		}
	}
	if len(c.Remedies()) == 0 {
		for _, m := range c.Together {
			w.Together = append(w.Together, ruleData(m))
		}
	}
	d.tried.put(w)
	local := func(t *time.Time) *time.Time {
		if t == nil {
			return nil
		}
		at := t.In(d.Zone)
		return &at
	}
	w.Earlier, w.Later = local(d.Earlier), local(d.Later)
	return w
}

// workBefore is the work right before the first of the steps that clash with an absence, and the ID of that step: the
// work is what cannot be done while nobody is there, and without its length the others do not add up.
func (d Day) workBefore(c *schedule.Conflict) (work []RuleData, first string) {
	lengths := map[string]bool{}
	absence := false
	for _, m := range c.Members {
		lengths[m.Step] = lengths[m.Step] || m.Rule == schedule.StepMin || m.Rule == schedule.StepExact
		absence = absence || m.Rule == schedule.Absence
	}
	at := slices.IndexFunc(d.problem.Steps, func(s schedule.DayStep) bool { return lengths[s.ID] })
	if !absence || at < 0 {
		return nil, ""
	}
	first = d.problem.Steps[at].ID
	for id := first; ; {
		from, ok := d.rightBefore(id)
		if !ok || !from.Kind.Hands() {
			return work, first
		}
		id = from.ID
		work = append([]RuleData{{Rule: schedule.StepExact, Step: id,
			Words: working.Tell("bakeday.rule_takes", "%v takes %v", from.Name, from.Min)}}, work...)
	}
}

// rightBefore is the step that another one follows at once.
func (d Day) rightBefore(id string) (schedule.DayStep, bool) {
	for _, l := range d.problem.Links {
		if l.To != id || l.Kind != schedule.EndToStart || l.Max != 0 {
			continue
		}
		at := slices.IndexFunc(d.problem.Steps, func(s schedule.DayStep) bool { return s.ID == l.From })
		return d.problem.Steps[max(at, 0)], at >= 0
	}
	return schedule.DayStep{}, false
}

// risesTooFar says what the rest after shaping does to a dough that nothing is left for before it.
func (d Day) risesTooFar() working.Message {
	r, wanted := d.Rising.Unrisen, d.Bake.Bulk.Rise
	if d.Bake.undivided() {
		return working.Tell("bakeday.why_cold_rises_too_far",
			"even if it went into the cold at once the dough would rise %.0f before it is baked, of the %.0f wanted: a tub of "+
				"dough cools slowly; a smaller or colder dough, a shorter rest or proof, or less %v, would help", r, wanted,
			d.Bake.leavening())
	}
	if r.Compare(wanted) > 0 {
		return working.Tell("bakeday.why_rises_too_far",
			"even if shaped at once the dough would rise %.0f before it is baked, more than the %.0f wanted: a shorter or "+
				"colder rest after shaping, or less %v, would help", r, wanted, d.Bake.leavening())
	}
	return working.Tell("bakeday.why_nothing_left",
		"the rest after shaping brings the dough to %.0f of the %.0f wanted by itself, so that nothing is left for the "+
			"time before it: a shorter or colder rest after shaping, or less %v, would help", r, wanted, d.Bake.leavening())
}

// leavening is what raises the dough.
func (b *Bake) leavening() working.Message {
	_, yeast := b.yeast()
	switch {
	case b.Levain == nil:
		return working.Tell("bakeday.leavening_yeast", "yeast")
	case yeast:
		return working.Tell("bakeday.leavening_both", "levain or yeast")
	}
	return working.Tell("bakeday.levain_name", "levain")
}

// atOnce reports whether a rule only says that one step follows another.
func atOnce(m schedule.Member) bool {
	return m.Rule == schedule.LinkExact && m.Link == schedule.EndToStart && m.Limit == 0
}

// inTheWay says in one sentence what clashes: how long the steps take one after the other, where these alone are too
// long for the time that is left; or else which absences and other rules lie between now and the wanted time. The same
// words come once. Lengths are told only where they add up to what is missing.
func inTheWay(c *schedule.Conflict, left quantity.Elapsed) working.Message {
	if c.Shortage != nil || c.Tightest != nil {
		return c.Message()
	}
	var all []working.Message
	var together quantity.Elapsed
	add := func(m working.Message) {
		for _, o := range all {
			if o == m {
				return
			}
		}
		all = append(all, m)
	}
	for _, m := range c.Members {
		switch m.Rule {
		case schedule.StepMin, schedule.StepExact:
			together += m.Limit
		case schedule.LinkMin, schedule.LinkExact:
			together += max(0, m.Limit)
		case schedule.Absence:
			add(m.Words)
		case schedule.PlanStart, schedule.PlanEnd, schedule.FixedTime:
		default:
			add(m.Words)
		}
	}
	switch {
	case len(all) > 0:
		return working.Tell("bakeday.in_the_way", "this is in the way: %v", working.Join(all, "; "))
	case left > 0 && together-left == c.Short:
		return working.Tell("bakeday.in_the_way_time", "the steps take %v one after the other, and only %v is left",
			together,
			left)
	case left > 0 && c.Short > 0:
		return working.Tell("bakeday.in_the_way_no_time", "the whole bake takes longer, and only %v is left", left)
	}
	return working.Tell("bakeday.in_the_way_steps", "the steps take %v one after the other", together)
}

// left is the time from the plan's clock to the wanted time, where a conflict is about that.
func (d Day) left(c *schedule.Conflict) quantity.Elapsed {
	begins, wanted := false, false
	for _, m := range c.Members {
		begins, wanted = begins || m.Rule == schedule.PlanStart, wanted || m.Wanted
	}
	if !begins || !wanted {
		return 0
	}
	return quantity.Elapsed(d.Wanted.Sub(d.Now).Truncate(time.Minute))
}

// ruleData is a rule of a conflict as data.
func ruleData(m schedule.Member) RuleData {
	r := RuleData{Rule: m.Rule, Step: m.Step, Other: m.Other, Wanted: m.Wanted, Words: m.Words}
	if m.Enough {
		r.Easing, r.Change, r.Remedy = m.Easing, m.Change, m.Remedy
	}
	return r
}
