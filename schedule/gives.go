package schedule

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// remedy says a change in words.
func (c *compiled) remedy(r rule, x int, side planner.Side) (Easing, working.Message) {
	change := c.long(x)
	front := side == planner.Front
	switch r.kind {
	case StepMin, StepMax, StepExact, LinkMin, LinkMax, LinkExact:
		easing := Longer
		if front {
			easing = Shorter
		}
		return easing, otherLength(r.kind, easing, c.long(r.amount), change)
	case NotBefore, NotAfter, FixedTime, PlanStart, PlanEnd:
		if front {
			return Earlier, working.Tell("schedule.earlier", "%v earlier: %v", change, c.when(r.amount-x))
		}
		return Later, working.Tell("schedule.later", "%v later: %v", change, c.when(r.amount+x))
	case Absence:
		easing := Ends
		switch {
		case x == r.to-r.from:
			easing = Dropped
		case front:
			easing = Begins
		}
		return easing, otherAbsence(easing, Span{From: c.when(r.from), To: c.when(r.to)}, change)
	case Capacity:
		return More, working.Tell("schedule.more_of_it", "%d more: %d", x, r.amount+x)
	case InOrder:
		return AnyOrder, working.Tell("schedule.any_order", "in any order")
	}
	return 0, working.Message{}
}

// otherLength says how long a step, or the time between two, would be with a change.
func otherLength(r Rule, easing Easing, limit, change quantity.Elapsed) working.Message {
	step := r == StepMin || r == StepMax || r == StepExact
	switch {
	case step && easing == Shorter:
		return working.Tell("schedule.shorter", "%v shorter: %v", change, limit-change)
	case step:
		return working.Tell("schedule.longer", "%v longer: %v", change, limit+change)
	case easing == Shorter:
		return working.Tell("schedule.less", "%v less: %v", change, limit-change)
	}
	return working.Tell("schedule.more", "%v more: %v", change, limit+change)
}

// otherAbsence says when an absence would be with a change.
func otherAbsence(easing Easing, closed Span, change quantity.Elapsed) working.Message {
	switch easing {
	case Begins:
		return working.Tell("schedule.begins", "from %v instead of %v", closed.From.Add(change.Duration()), closed.From)
	case Ends:
		return working.Tell("schedule.ends", "until %v instead of %v", closed.To.Add(-change.Duration()), closed.To)
	}
	return working.Tell("schedule.dropped", "not at all")
}

// Widened is a member whose rule gives so much more than the least that was found to be enough, for a caller whose
// steps take another time once the plan is another one. False for a rule that does not give by a length of time, and
// for one that cannot give as much.
func (m Member) Widened(by quantity.Elapsed) (Member, bool) {
	m.Change += by
	m.Least = m.Least && by == 0
	switch {
	case !m.Enough || by < 0:
		return m, false
	case m.Rule == Absence && m.Closed != nil:
		if long := quantity.Elapsed(m.Closed.To.Sub(m.Closed.From)); m.Change >= long {
			m.Easing, m.Change = Dropped, long
		}
		m.Remedy = otherAbsence(m.Easing, *m.Closed, m.Change)
		return m, true
	case m.Easing == Longer || m.Easing == Shorter && m.Change <= m.Limit:
		m.Remedy = otherLength(m.Rule, m.Easing, m.Limit, m.Change)
		return m, true
	}
	return m, false
}
