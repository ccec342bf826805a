package schedule

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// conflict turns a clash of rules into words, remedies and a shortfall. feasible says whether
// the whole problem with some rules weakened can be solved.
func (c *compiled) conflict(
	w *planner.Watch,
	clash *planner.Clash,
	minimal bool,
	feasible func(planner.Relax) planner.Truth,
) *Conflict {
	out := &Conflict{Minimal: minimal}
	all := true
	var wanted []int // they move together: nobody wants half of the bread later
	for id, r := range c.rules {
		if r.wanted {
			wanted = append(wanted, id)
		}
	}
	for _, id := range clash.Rules {
		together := []int{id}
		if c.rules[id].wanted {
			together = wanted
		}
		m, settled := c.member(w, id, together, feasible)
		out.Members = append(out.Members, m)
		all = all && settled
		if m.Enough && m.Change > 0 && (out.Short == 0 || m.Change < out.Short) {
			out.Short = m.Change
		}
	}
	out.ShortProven = all // a rule that was not settled might give sooner
	if clash.Cycle {
		out.Short, out.ShortProven = c.long(clash.Short), true
	}
	return out
}

// member describes one rule and the least change of it, and those that move together with it,
// that helps; settled says that nothing about it is left open.
func (c *compiled) member(
	w *planner.Watch,
	id int,
	together []int,
	feasible func(planner.Relax) planner.Truth,
) (m Member, settled bool) {
	r := c.rules[id]
	m = Member{
		Breach: Breach{Rule: r.kind, Step: r.step, Other: r.other, Words: r.words()},
		Link:   r.link,
		Wanted: r.wanted,
	}
	switch r.kind {
	case StepMin, StepMax, StepExact, LinkMin, LinkMax, LinkExact:
		m.Limit = c.long(r.amount)
	}
	if r.firm {
		return m, true
	}
	front, back := c.ways(r, func(most int, side planner.Side) way {
		if w.Over() {
			return way{}
		}
		by, proven := planner.Least(most, func(x int) planner.Truth {
			return feasible(planner.Relax{Rules: together, By: x, Side: side})
		})
		if by == most && !proven {
			by = 0 // only doing without the rule was seen to help: that is no amount
		}
		return way{by, proven}
	})
	switch {
	case r.kind == Capacity || r.kind == InOrder:
		return m, true // judged in refuseShared
	case front.by == 0 && back.by == 0:
		m.Remedy = noChange(w, front.proven && back.proven)
	case front.by > 0 && (back.by == 0 || front.by < back.by):
		m.Enough, m.Change = true, c.long(front.by)
		m.Least = front.proven && (back.proven || front.by == 1)
		m.Easing, m.Remedy = c.remedy(r, front.by, planner.Front)
	default:
		m.Enough, m.Change = true, c.long(back.by)
		m.Least = back.proven && (front.proven || back.by == 1)
		m.Easing, m.Remedy = c.remedy(r, back.by, planner.Back)
	}
	return m, front.proven && back.proven
}

// way is the least change found on one side of a rule; 0 when none was found to help. Proven says that none smaller does.
type way struct {
	by     int
	proven bool
}

// ways asks for the least change on both sides on which a rule can give.
func (c *compiled) ways(r rule, least func(most int, side planner.Side) way) (front, back way) {
	// Longer than everything in a plan.
	const any = 1 << 19
	front, back = way{proven: true}, way{proven: true}
	// What must come after something cannot be made to come before it.
	lessen := any
	if r.amount >= 0 {
		lessen = r.amount
	}
	switch r.kind {
	case StepMin:
		front = least(r.amount, planner.Front)
	case LinkMin:
		front = least(lessen, planner.Front)
	case NotBefore, PlanStart:
		front = least(any, planner.Front)
	case StepMax, LinkMax, NotAfter, PlanEnd:
		back = least(any, planner.Back)
	case StepExact:
		front, back = least(r.amount, planner.Front), least(any, planner.Back)
	case LinkExact:
		front, back = least(lessen, planner.Front), least(any, planner.Back)
	case FixedTime:
		front, back = least(any, planner.Front), least(any, planner.Back)
	case Absence:
		front, back = least(r.to-r.from, planner.Front), least(r.to-r.from, planner.Back)
	}
	return front, back
}

// remedy says a change in words.
func (c *compiled) remedy(r rule, x int, side planner.Side) (Easing, working.Message) {
	change := c.long(x)
	front := side == planner.Front
	switch r.kind {
	case StepMin, StepMax, StepExact:
		if front {
			return Shorter, working.Tell("schedule.shorter", "%v shorter: %v", change, c.long(r.amount-x))
		}
		return Longer, working.Tell("schedule.longer", "%v longer: %v", change, c.long(r.amount+x))
	case LinkMin, LinkMax, LinkExact:
		if front {
			return Shorter, working.Tell("schedule.less", "%v less: %v", change, c.long(r.amount-x))
		}
		return Longer, working.Tell("schedule.more", "%v more: %v", change, c.long(r.amount+x))
	case NotBefore, NotAfter, FixedTime, PlanStart, PlanEnd:
		if front {
			return Earlier, working.Tell("schedule.earlier", "%v earlier: %v", change, c.when(r.amount-x))
		}
		return Later, working.Tell("schedule.later", "%v later: %v", change, c.when(r.amount+x))
	case Absence:
		switch {
		case x == r.to-r.from:
			return Dropped, working.Tell("schedule.dropped", "not at all")
		case front:
			return Begins, working.Tell("schedule.begins", "from %v instead of %v", c.when(r.from+x), c.when(r.from))
		}
		return Ends, working.Tell("schedule.ends", "until %v instead of %v", c.when(r.to-x), c.when(r.to))
	}
	return 0, working.Message{}
}
