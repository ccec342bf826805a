package schedule

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// resourceNames reads the IDs that steps refer to.
func (c *compiled) resourceNames(bad *quantity.Problems) {
	c.res = map[string]int{}
	for i, r := range c.in.Resources {
		path := fmt.Sprintf("Resources[%d]", i)
		words(bad, path+".Name", r.Name)
		if name(bad, path+".ID", r.ID, quantity.Tell("schedule.want_id", "an ID")) {
			if _, twice := c.res[r.ID]; twice {
				bad.Add(path+".ID", quote(r.ID), quantity.Tell("schedule.want_id_used_once", "an ID used once"),
					quantity.ErrInconsistent)
			}
			c.res[r.ID] = i
		}
	}
}

// resources reads capacities and spans.
func (c *compiled) resources(bad *quantity.Problems) {
	users := make([][]int, len(c.in.Resources))
	c.absences = make([][]planner.Closing, len(c.in.Resources))
	for i, s := range c.in.Steps {
		for _, n := range s.Needs {
			if r, ok := c.res[n.Resource]; ok {
				users[r] = append(users[r], i)
			}
		}
	}
	for k, r := range c.in.Resources {
		path := fmt.Sprintf("Resources[%d]", k)
		words(bad, path+".Words", r.Words)
		bad.Int(path+".Capacity", r.Capacity, 0, maxAmount)
		if r.Changeover < 0 {
			bad.Add(path+".Changeover", r.Changeover, quantity.Tell("schedule.want_0_or_more", "0 or more"),
				quantity.ErrOutOfRange)
		} else {
			c.units(bad, path+".Changeover", r.Changeover)
		}
		c.changes(bad, path, r)
		made := func() working.Message {
			if r.Capacity == 0 {
				return working.Tell("schedule.one_program", "%v: one program at a time", r.title())
			}
			return working.Tell("schedule.at_a_time", "%v: %d at a time", r.title(), r.Capacity)
		}
		c.capacity = append(
			c.capacity,
			c.rule(rule{kind: Capacity, given: r.Words, made: made, other: r.ID, amount: r.Capacity, index: k, firm: r.Firm ||
				r.Capacity == 0}),
		)
		c.closed(bad, path, k, users[k])
		for j, a := range r.Awkward {
			at := fmt.Sprintf("%s.Awkward[%d]", path, j)
			bad.Int(at+".PerMinute", a.PerMinute, 0, maxPoints)
			if !span(bad, at, a.From, a.To) {
				continue
			}
			if a.From.Sub(c.in.Anchor)%c.grid.Duration() != 0 || a.To.Sub(c.in.Anchor)%c.grid.Duration() != 0 {
				bad.Add(at,
					quantity.Tell("schedule.got_to", "%s to %s", a.From.Format(time.RFC3339), a.To.Format(time.RFC3339)),
					quantity.Tell("schedule.want_times_grid", "times on the grid of %v", c.grid),
					quantity.ErrTooPrecise)
			}
		}
	}
}

// changes checks the times from one program to another.
func (c *compiled) changes(bad *quantity.Problems, path string, r Resource) {
	seen := map[[2]string]bool{}
	for j, ch := range r.Changes {
		at := fmt.Sprintf("%s.Changes[%d]", path, j)
		program(bad, at+".From", ch.From)
		program(bad, at+".To", ch.To)
		if ch.Takes < 0 {
			bad.Add(at+".Takes", ch.Takes, quantity.Tell("schedule.want_0_or_more", "0 or more"), quantity.ErrOutOfRange)
		} else {
			c.units(bad, at+".Takes", ch.Takes)
		}
		if k := [2]string{ch.From, ch.To}; seen[k] {
			bad.Add(at, quantity.Tell("schedule.got_to", "%s to %s", quote(ch.From), quote(ch.To)),
				quantity.Tell("schedule.want_each_change_once", "each change once"), quantity.ErrInconsistent)
		} else {
			seen[k] = true
		}
	}
}

// closed cuts the closed spans of resource k out of the times of its users.
func (c *compiled) closed(bad *quantity.Problems, path string, k int, users []int) {
	r := c.in.Resources[k]
	for j, s := range r.Closed {
		at := fmt.Sprintf("%s.Closed[%d]", path, j)
		words(bad, at+".Words", s.Words)
		if !span(bad, at, s.From, s.To) {
			continue
		}
		from, to := c.floor(s.From), c.ceil(s.To)
		if to <= 0 || from >= c.limit {
			continue // outside the plan
		}
		made := func() working.Message {
			return working.Tell("schedule.away", "%v away %v to %v", r.title(), c.when(from), c.when(to))
		}
		id := c.rule(rule{kind: Absence, given: s.Words, made: made, other: r.ID, from: from, to: to, index: k})
		c.absences[k] = append(c.absences[k], planner.Closing{From: from, To: to, Rule: id})
		for _, u := range users {
			c.net.Holes = append(c.net.Holes, planner.Hole{Task: u, From: from, To: to, Rule: id})
		}
	}
}

// span checks the ends of a span and reports whether it can be used.
func span(bad *quantity.Problems, path string, from, to time.Time) bool {
	switch {
	case from.IsZero():
		bad.Required(path+".From", quantity.Tell("schedule.want_instant", "an instant"))
	case to.IsZero():
		bad.Required(path+".To", quantity.Tell("schedule.want_instant", "an instant"))
	case !from.Before(to):
		bad.Add(path+".To", to.Format(time.RFC3339), quantity.Tell("schedule.want_after_beginning",
			"after the beginning, %s", from.Format(time.RFC3339)),
			quantity.ErrInconsistent)
	default:
		return true
	}
	return false
}
