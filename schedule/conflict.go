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
	feasible func(planner.Relax) bool,
) *Conflict {
	out := &Conflict{Minimal: minimal}
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
		m := c.member(w, id, together, feasible)
		out.Members = append(out.Members, m)
		if m.Enough && m.Change > 0 && (out.Short == 0 || m.Change < out.Short) {
			out.Short = m.Change
		}
	}
	if clash.Cycle {
		out.Short = c.long(clash.Short)
	}
	return out
}

// member describes one rule and the least change of it, and those that move together with it,
// that helps.
func (c *compiled) member(w *planner.Watch, id int, together []int, feasible func(planner.Relax) bool) Member {
	r := c.rules[id]
	m := Member{
		Breach: Breach{Rule: r.kind, Step: r.step, Other: r.other, Words: r.words()},
		Link:   r.link,
		Wanted: r.wanted,
	}
	switch r.kind {
	case StepMin, StepMax, StepExact, LinkMin, LinkMax, LinkExact:
		m.Limit = c.long(r.amount)
	}
	if r.firm {
		return m
	}
	if w.Over() {
		m.Remedy = noChange(w)
		return m
	}
	least := func(most int, side planner.Side) int {
		return planner.Least(most, func(x int) bool {
			return feasible(planner.Relax{Rules: together, By: x, Side: side})
		})
	}
	const any = 1 << 19 // beyond every sum of durations in a plan
	var front, back int
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
	default: // Capacity and InOrder are judged in refuseShared
		return m
	}
	switch {
	case front == 0 && back == 0:
		m.Remedy = noChange(w)
	case front > 0 && (back == 0 || front < back):
		m.Enough, m.Change = true, c.long(front)
		m.Easing, m.Remedy = c.remedy(r, front, planner.Front)
	default:
		m.Enough, m.Change = true, c.long(back)
		m.Easing, m.Remedy = c.remedy(r, back, planner.Back)
	}
	return m
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

// shifted is the network in which all wanted bounds move together, with an event for the
// wanted time; nominal is that event's time when nothing moves.
func (c *compiled) shifted() (net *planner.Net, event, nominal int) {
	event = c.net.Events
	first := c.net.Arcs[c.wanted[0].arc]
	nominal = first.W
	if first.To == 0 {
		nominal = -first.W
	}
	for _, w := range c.wanted { // the last given time of the first bound: "by 12:30"
		if a := c.net.Arcs[w.arc]; w.bound == c.wanted[0].bound && a.To == 0 {
			nominal = -a.W
		}
	}
	net = &planner.Net{Events: event + 1, Limit: c.net.Limit, Holes: c.net.Holes}
	net.Arcs = append(net.Arcs, c.net.Arcs...)
	for _, w := range c.wanted {
		a := &net.Arcs[w.arc]
		if a.From == 0 {
			a.From, a.W = event, a.W-nominal
		} else {
			a.To, a.W = event, a.W+nominal
		}
	}
	net.Arcs = append(net.Arcs,
		planner.Arc{From: 0, To: event, W: 0, Rule: structure},
		planner.Arc{From: event, To: 0, W: -c.net.Limit, Rule: structure})
	return net, event, nominal
}

func (c *compiled) shift(to, nominal int) *Shift {
	return &Shift{By: c.long(to - nominal), To: c.when(to)}
}
