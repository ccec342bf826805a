package schedule

import (
	"fmt"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// steps reads the steps; the frame of the plan becomes the first two rules.
func (c *compiled) steps(bad *quantity.Problems) {
	c.index = map[string]int{}
	anchor := c.rule(
		rule{
			kind:  PlanStart,
			given: working.Tell("schedule.not_before_anchor", "nothing before %v", c.when(0)),
			firm:  c.in.Firm,
		},
	)
	horizon := c.rule(
		rule{
			kind:   PlanEnd,
			given:  working.Tell("schedule.done_by_horizon", "everything done by %v", c.when(c.limit)),
			amount: c.limit,
			firm:   c.in.Firm,
		},
	)
	for i, s := range c.in.Steps {
		path := fmt.Sprintf("Steps[%d]", i)
		if name(bad, path+".ID", s.ID, quantity.Tell("schedule.want_id", "an ID")) {
			if _, twice := c.index[s.ID]; twice {
				bad.Add(path+".ID", quote(s.ID), quantity.Tell("schedule.want_id_used_once", "an ID used once"),
					quantity.ErrInconsistent)
			}
			c.index[s.ID] = i
		}
		if s.Kind < 0 || s.Kind > Other {
			bad.Add(path+".Kind", int(s.Kind), quantity.Tell("schedule.want_kind_step", "a kind of step"),
				quantity.ErrOutOfRange)
		}
		words(bad, path+".Name", s.Name)
		program(bad, path+".Bread", s.Bread)
		program(bad, path+".Thing", s.Thing)
		words(bad, path+".MinWords", s.MinWords)
		words(bad, path+".MaxWords", s.MaxWords)
		lo, hi := c.lengths(bad, path, s)
		c.lo, c.hi = append(c.lo, lo), append(c.hi, hi)
		if s.Watch != "" {
			if _, ok := c.res[s.Watch]; !ok {
				bad.Add(path+".Watch", quote(s.Watch), quantity.Tell("schedule.want_id_resource", "the ID of a resource"),
					quantity.ErrInconsistent)
			}
		}
		bad.Int(path+".PerMinute", s.PerMinute, -maxPoints, maxPoints)
		c.needs(bad, path, s, lo, hi)
		c.stepRules(i, s, anchor, horizon)
	}
}

// stepRules adds what a step is: inside the frame of the plan, and how long.
func (c *compiled) stepRules(i int, s DayStep, anchor, horizon int) {
	lo, hi := c.lo[i], c.hi[i]
	start, end := planner.StartOf(i), planner.EndOf(i)
	c.arc(0, start, 0, anchor)
	c.arc(0, end, 0, anchor)
	c.upper(start, 0, c.limit, horizon)
	c.upper(end, 0, c.limit, horizon)
	c.arc(start, end, 0, structure)
	// Without the frame of the plan every event still has a time.
	c.arc(0, start, -2*farAway, structure)
	c.upper(end, 0, 2*farAway, structure)
	if lo == hi {
		made := func() working.Message {
			if s.Living {
				return working.Tell("schedule.likely_takes", "%v likely takes %v", s.label().Title(), c.long(lo))
			}
			return working.Tell("schedule.takes", "%v takes %v", s.label().Title(), c.long(lo))
		}
		r := c.rule(
			rule{
				kind:   StepExact,
				given:  either(s.MinWords, s.MaxWords),
				made:   made,
				step:   s.ID,
				amount: lo,
				firm:   s.MinFirm && s.MaxFirm,
			},
		)
		c.arc(start, end, lo, r)
		c.upper(end, start, hi, r)
		return
	}
	if lo > 0 {
		made := func() working.Message {
			return working.Tell("schedule.takes_at_least", "%v takes at least %v", s.label().Title(), c.long(lo))
		}
		c.arc(start, end, lo,
			c.rule(rule{kind: StepMin, given: s.MinWords, made: made, step: s.ID, amount: lo, firm: s.MinFirm}))
	}
	if hi < c.limit {
		made := func() working.Message {
			return working.Tell("schedule.takes_at_most", "%v takes at most %v", s.label().Title(), c.long(hi))
		}
		c.upper(end, start, hi,
			c.rule(rule{kind: StepMax, given: s.MaxWords, made: made, step: s.ID, amount: hi, firm: s.MaxFirm}))
	}
}

// lengths reads how long a step may take in the plan.
func (c *compiled) lengths(bad *quantity.Problems, path string, s DayStep) (lo, hi int) {
	if s.Min < 0 {
		bad.Add(path+".Min", s.Min, quantity.Tell("schedule.want_0_or_more", "0 or more"), quantity.ErrOutOfRange)
		return 0, 0
	}
	lo = c.units(bad, path+".Min", s.Min)
	switch {
	case s.Max < 0:
		bad.Add(path+".Max", s.Max, quantity.Tell("schedule.want_0_or_more", "0 or more"), quantity.ErrOutOfRange)
		return lo, lo
	case s.Max == 0:
		hi = lo
	case s.Max == NoLimit:
		hi = max(lo, c.limit)
	case s.Max < s.Min:
		bad.Add(path+".Max", s.Max, quantity.Tell("schedule.want_at_least_shortest", "at least the shortest, %v", s.Min),
			quantity.ErrInconsistent)
		return lo, lo
	default:
		hi = c.units(bad, path+".Max", s.Max)
	}
	if !s.Living {
		if s.Likely != 0 {
			bad.Add(path+".Likely", s.Likely,
				quantity.Tell("schedule.want_nothing_step_does_not_live", "nothing, for a step that does not live"),
				quantity.ErrInconsistent)
		}
		return lo, hi
	}
	if s.Max == NoLimit {
		bad.Add(path+".Max", quantity.Tell("schedule.got_no_limit", "no limit"),
			quantity.Tell("schedule.want_longest_duration_living_step",
				"a longest duration, for a living step"), quantity.ErrInconsistent)
		return lo, lo
	}
	likely := (lo + hi) / 2
	if s.Likely != 0 {
		likely = c.units(bad, path+".Likely", s.Likely)
		if likely < lo || likely > hi {
			bad.Add(path+".Likely", s.Likely, quantity.Tell("schedule.want_to_2", "%s to %s", c.say(lo), c.say(hi)),
				quantity.ErrInconsistent)
		}
	}
	return likely, likely
}

// needs checks what a step needs of the resources.
func (c *compiled) needs(bad *quantity.Problems, path string, s DayStep, lo, hi int) {
	seen := map[string]bool{}
	for k, n := range s.Needs {
		at := fmt.Sprintf("%s.Needs[%d]", path, k)
		i, ok := c.res[n.Resource]
		if !ok {
			bad.Add(at+".Resource", quote(n.Resource), quantity.Tell("schedule.want_id_resource", "the ID of a resource"),
				quantity.ErrInconsistent)
			continue
		}
		if seen[n.Resource] {
			bad.Add(at+".Resource", quote(n.Resource), quantity.Tell("schedule.want_each_resource_once_step",
				"each resource once in a step"), quantity.ErrInconsistent)
		}
		seen[n.Resource] = true
		program(bad, at+".Program", n.Program)
		r := c.in.Resources[i]
		if !bad.Int(at+".Amount", n.Amount, 1, maxAmount) {
			continue
		}
		if r.Capacity > 0 && n.Amount > r.Capacity {
			bad.Add(at+".Amount", n.Amount,
				quantity.Tell("schedule.want_at_most_all_there", "at most %d, all there is of %s", r.Capacity, quote(n.Resource)),
				quantity.ErrInconsistent)
		}
		if (r.Capacity > 0 || n.Program != "") && lo == 0 && hi > 0 {
			bad.Add(
				path+".Min",
				"0",
				quantity.Tell("schedule.want_at_least_step_shares", "at least %s, for a step that shares %s", c.say(1),
					quote(n.Resource)),
				quantity.ErrInconsistent,
			)
		}
	}
}

// alike reads the groups of interchangeable steps.
func (c *compiled) alike(bad *quantity.Problems) {
	for i, group := range c.in.Alike {
		for j, s := range group {
			to, ok := c.index[s]
			if !ok {
				bad.Add(fmt.Sprintf("Alike[%d][%d]", i, j), quote(s), quantity.Tell("schedule.want_id_step", "the ID of a step"),
					quantity.ErrInconsistent)
				continue
			}
			if j == 0 {
				continue
			}
			if from, ok := c.index[group[j-1]]; ok {
				made := func() working.Message {
					return working.Tell("schedule.in_order", "%v starts no earlier than %v", c.title(s),
						c.title(group[j-1]))
				}
				r := c.rule(rule{kind: InOrder, made: made, step: group[j-1], other: s})
				c.arc(planner.StartOf(from), planner.StartOf(to), 0, r)
			}
		}
	}
}
