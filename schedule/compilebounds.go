package schedule

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// bounds reads what ties steps to the clock.
func (c *compiled) bounds(bad *quantity.Problems) {
	for i, b := range c.in.Bounds {
		path := fmt.Sprintf("Bounds[%d]", i)
		step, ok := c.index[b.Step]
		if !ok {
			bad.Add(path+".Step", quote(b.Step), quantity.Tell("schedule.want_id_step", "the ID of a step"),
				quantity.ErrInconsistent)
		}
		if c.checkBound(bad, path, b) && ok {
			c.boundRules(i, b, eventOf(step, b.Edge))
		}
	}
}

// checkBound reports whether a bound can be read.
func (c *compiled) checkBound(bad *quantity.Problems, path string, b Bound) bool {
	words(bad, path+".Words", b.Words)
	if b.Edge != Start && b.Edge != End {
		bad.Add(path+".Edge", int(b.Edge), quantity.Tell("schedule.want_start_or_end", "start or end"),
			quantity.ErrOutOfRange)
		return false
	}
	bad.Int(path+".EarlyPerMinute", b.EarlyPerMinute, 0, maxPoints)
	bad.Int(path+".LatePerMinute", b.LatePerMinute, 0, maxPoints)
	early, late := !b.Earliest.IsZero(), !b.Latest.IsZero()
	if !early && !late {
		bad.Required(path, quantity.Tell("schedule.want_earliest_or_latest_moment", "an earliest or a latest moment"))
		return false
	}
	if b.EarlyPerMinute != 0 && !late {
		bad.Add(path+".EarlyPerMinute", b.EarlyPerMinute,
			quantity.Tell("schedule.want_0_without_latest_moment", "0 without a latest moment"), quantity.ErrInconsistent)
	}
	if b.LatePerMinute != 0 && !early {
		bad.Add(path+".LatePerMinute", b.LatePerMinute,
			quantity.Tell("schedule.want_0_without_earliest_moment", "0 without an earliest moment"),
			quantity.ErrInconsistent)
	}
	if early && late && b.Earliest.After(b.Latest) {
		bad.Add(path+".Latest", b.Latest.Format(time.RFC3339),
			quantity.Tell("schedule.want_not_before_earliest", "not before the earliest, %s", b.Earliest.Format(time.RFC3339)),
			quantity.ErrInconsistent)
		return false
	}
	if early && b.Earliest.Equal(b.Latest) && b.Earliest.Sub(c.in.Anchor)%c.grid.Duration() != 0 {
		bad.Add(path+".Earliest", b.Earliest.Format(time.RFC3339),
			quantity.Tell("schedule.want_time_grid", "a time on the grid of %v", c.grid), quantity.ErrTooPrecise)
		return false
	}
	return true
}

// boundRules adds the limits of bound i.
func (c *compiled) boundRules(i int, b Bound, event int) {
	edge := func() working.Message {
		if b.Edge == End {
			return working.Tell("schedule.end_of", "end of %v", c.title(b.Step))
		}
		return working.Tell("schedule.start_of", "start of %v", c.title(b.Step))
	}
	early, late := !b.Earliest.IsZero(), !b.Latest.IsZero()
	if early && b.Earliest.Equal(b.Latest) {
		u := c.ceil(b.Earliest)
		r := c.rule(
			rule{
				kind:   FixedTime,
				given:  b.Words,
				made:   func() working.Message { return working.Tell("schedule.fixed_at", "%v at %v", edge(), c.when(u)) },
				step:   b.Step,
				amount: u,
				wanted: b.Wanted,
				firm:   b.Firm,
			},
		)
		c.note(b, i)
		c.arc(0, event, u, r)
		c.note(b, i)
		c.upper(event, 0, u, r)
		return
	}
	if early {
		u := c.ceil(b.Earliest)
		r := c.rule(rule{kind: NotBefore, given: b.Words, made: func() working.Message {
			return working.Tell("schedule.not_before", "%v no earlier than %v", edge(), c.when(u))
		}, step: b.Step, amount: u, wanted: b.Wanted, firm: b.Firm})
		c.note(b, i)
		c.arc(0, event, u, r)
	}
	if late {
		u := c.floor(b.Latest)
		r := c.rule(rule{kind: NotAfter, given: b.Words, made: func() working.Message {
			return working.Tell("schedule.not_after", "%v no later than %v", edge(), c.when(u))
		}, step: b.Step, amount: u, wanted: b.Wanted, firm: b.Firm})
		c.note(b, i)
		c.upper(event, 0, u, r)
	}
}

// note remembers that the next arc belongs to a wanted bound.
func (c *compiled) note(b Bound, i int) {
	if b.Wanted {
		c.wanted = append(c.wanted, wantedArc{arc: len(c.net.Arcs), bound: i})
	}
}
