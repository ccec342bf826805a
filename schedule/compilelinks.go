package schedule

import (
	"fmt"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// links reads the links between steps.
func (c *compiled) links(bad *quantity.Problems) {
	for i, l := range c.in.Links {
		path := fmt.Sprintf("Links[%d]", i)
		from, okFrom := c.index[l.From]
		to, okTo := c.index[l.To]
		if !okFrom {
			bad.Add(path+".From", quote(l.From), quantity.Tell("schedule.want_id_step", "the ID of a step"),
				quantity.ErrInconsistent)
		}
		if !okTo {
			bad.Add(path+".To", quote(l.To), quantity.Tell("schedule.want_id_step", "the ID of a step"),
				quantity.ErrInconsistent)
		}
		words(bad, path+".MinWords", l.MinWords)
		words(bad, path+".MaxWords", l.MaxWords)
		switch {
		case l.Kind < EndToStart || l.Kind > StartToEnd:
			bad.Add(path+".Kind", int(l.Kind),
				quantity.Tell("schedule.want_end_to_start_start_to", "end to start, start to start, end to end or start to end"),
				quantity.ErrOutOfRange)
		case l.Min > l.Max:
			bad.Add(path+".Max", l.Max, quantity.Tell("schedule.want_at_least_shortest", "at least the shortest, %v", l.Min),
				quantity.ErrInconsistent)
		case l.Min == NoLimit:
			bad.Add(path+".Min", quantity.Tell("schedule.got_no_limit", "no limit"),
				quantity.Tell("schedule.want_duration_or_no_limit_downward",
					"a duration, or no limit downward"), quantity.ErrOutOfRange)
		case l.Max == -NoLimit:
			bad.Add(path+".Max", quantity.Tell("schedule.got_no_limit_downward", "no limit downward"),
				quantity.Tell("schedule.want_duration_or_no_limit", "a duration, or no limit"), quantity.ErrOutOfRange)
		case okFrom && okTo:
			c.linkRules(bad, path, l, from, to)
		}
	}
}

// edges are the edges that a kind of link joins.
func (k LinkKind) edges() (from, to Edge) {
	from, to = End, Start
	if k == StartToStart || k == StartToEnd {
		from = Start
	}
	if k == EndToEnd || k == StartToEnd {
		to = End
	}
	return from, to
}

// eventOf is the event of an edge of step i.
func eventOf(i int, e Edge) int {
	if e == End {
		return planner.EndOf(i)
	}
	return planner.StartOf(i)
}

// linkRules adds the limits of a link.
func (c *compiled) linkRules(bad *quantity.Problems, path string, l Link, from, to int) {
	first, second := l.Kind.edges()
	a, b := eventOf(from, first), eventOf(to, second)
	r := rule{step: l.From, other: l.To, link: l.Kind, firm: l.Firm}
	if l.Min == l.Max {
		r.kind, r.amount = LinkExact, c.units(bad, path+".Min", l.Min)
		r.given = either(l.MinWords, l.MaxWords)
		r.made = c.linkWords(l, r.amount, true)
		id := c.rule(r)
		c.arc(a, b, r.amount, id)
		c.upper(b, a, r.amount, id)
		return
	}
	if l.Min != -NoLimit {
		r.kind, r.amount = LinkMin, c.units(bad, path+".Min", l.Min)
		r.given, r.made = l.MinWords, c.linkWords(l, r.amount, true)
		c.arc(a, b, r.amount, c.rule(r))
	}
	if l.Max != NoLimit {
		r.kind, r.amount = LinkMax, c.units(bad, path+".Max", l.Max)
		r.given, r.made = l.MaxWords, c.linkWords(l, r.amount, false)
		c.upper(b, a, r.amount, c.rule(r))
	}
}

// linkWords says a link limit when the user did not.
func (c *compiled) linkWords(l Link, units int, least bool) func() working.Message {
	return func() working.Message { return c.sayLink(l, units, least) }
}

func (c *compiled) sayLink(l Link, units int, least bool) working.Message {
	from, to := c.title(l.From), c.title(l.To)
	if l.Kind == EndToStart && units == 0 {
		if l.Min == 0 && l.Max == 0 {
			return working.Tell("schedule.at_once", "%v follows %v at once", to, from)
		}
		if least {
			return working.Tell("schedule.comes_after", "%v comes after %v", to, from)
		}
	}
	exactly := l.Min == l.Max
	long := c.long(max(units, -units))
	order := working.Tell("schedule.time_after", "%v after %v", c.edge(l.To, l.Kind, true),
		c.edge(l.From, l.Kind, false))
	if units < 0 {
		order = working.Tell("schedule.time_before", "%v before %v", c.edge(l.To, l.Kind, true),
			c.edge(l.From, l.Kind, false))
		least = !least
	}
	switch {
	case exactly:
		return working.Tell("schedule.gap_exactly", "%v: exactly %v", order, long)
	case least:
		return working.Tell("schedule.gap_at_least", "%v: at least %v", order, long)
	}
	return working.Tell("schedule.gap_at_most", "%v: at most %v", order, long)
}

// edge names the start or end of a step that a link joins.
func (c *compiled) edge(id string, k LinkKind, to bool) working.Message {
	first, second := k.edges()
	if to {
		first = second
	}
	if first == Start {
		return working.Tell("schedule.start_of", "start of %v", c.title(id))
	}
	return working.Tell("schedule.end_of", "end of %v", c.title(id))
}
