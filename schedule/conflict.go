package schedule

import (
	"slices"

	"example.org/maslin/internal/planner"
)

// explainer turns a clash of rules into words, remedies and a shortfall.
type explainer struct {
	c      *compiled
	w      *planner.Watch
	wanted []int // they move together: nobody wants half of the bread later
	oracle *oracle
	asked  map[question]way // about the wanted rules, which share their answers
}

type question struct {
	most int
	side planner.Side
}

func (c *compiled) explainer(w *planner.Watch, shop *planner.Shop) *explainer {
	e := &explainer{c: c, w: w, oracle: c.oracle(w, shop), asked: map[question]way{}}
	for id, r := range c.rules {
		if r.wanted {
			e.wanted = append(e.wanted, id)
		}
	}
	return e
}

// explain describes every rule of a clash with the least change of it that helps, or, when there is none, a smallest
// set of changes.
func (e *explainer) explain(clash *planner.Clash, minimal bool) *Conflict {
	out := &Conflict{Minimal: minimal, Members: make([]Member, len(clash.Rules))}
	all, alone := true, false
	for _, k := range e.c.byEase(clash.Rules) {
		m, settled := e.member(clash.Rules[k])
		out.Members[k] = m
		all, alone = all && settled, alone || m.Enough
		if m.Enough && m.Change > 0 && (out.Short == 0 || m.Change < out.Short) {
			out.Short = m.Change
		}
	}
	out.ShortProven = all // a rule that was not settled might give sooner
	if clash.Cycle {
		out.Short, out.ShortProven = e.c.long(clash.Short), true
	}
	if !alone && !e.w.Over() {
		out.Together = e.together(clash.Rules)
	}
	return out
}

// byEase lists the places of rules, what a baker changes most easily first, and of waits the longest. When the work
// allowed ends it is the others that have not been looked into.
func (c *compiled) byEase(rules []int) []int {
	places := make([]int, len(rules))
	for k := range places {
		places[k] = k
	}
	slices.SortStableFunc(places, func(a, b int) int {
		x, y := c.rules[rules[a]], c.rules[rules[b]]
		if x.ease() == waits && y.ease() == waits {
			return y.amount - x.amount
		}
		return int(x.ease() - y.ease())
	})
	return places
}

// ease is how easily a rule is changed.
type ease int

const (
	things ease = iota // one more of them
	wishes             // when the bread is wanted
	waits              // how long something may take
	times              // on the clock
	works              // how long something has to take
)

func (r rule) ease() ease {
	switch r.kind {
	case Capacity, InOrder:
		return things
	case StepMax, LinkMax:
		return waits
	case StepMin, StepExact, LinkMin, LinkExact:
		return works
	}
	if r.wanted {
		return wishes
	}
	return times
}

// moved are the rules that change when one does.
func (e *explainer) moved(id int) []int {
	if e.c.rules[id].wanted {
		return e.wanted
	}
	return []int{id}
}

// plain describes a rule.
func (c *compiled) plain(id int) Member {
	r := c.rules[id]
	m := Member{
		Breach: Breach{Rule: r.kind, Step: r.step, Other: r.other, Words: r.words()},
		Link:   r.link,
		Wanted: r.wanted,
		Firm:   r.firm,
	}
	switch r.kind {
	case StepMin, StepMax, StepExact, LinkMin, LinkMax, LinkExact:
		m.Limit = c.long(r.amount)
	case Absence:
		m.Closed = &Span{From: c.when(r.from), To: c.when(r.to)}
	}
	return m
}

// member describes one rule and the least change of it, and those that move together with it,
// that helps; settled says that nothing about it is left open.
func (e *explainer) member(id int) (m Member, settled bool) {
	r := e.c.rules[id]
	m = e.c.plain(id)
	if r.firm {
		return m, true
	}
	front, back := e.c.ways(r, func(most int, side planner.Side) way { return e.least(id, most, side) })
	if r.kind == Capacity && !back.proven && back.by > mostMore*r.amount {
		back.by = 0 // enough for all at once is no advice
	}
	switch {
	case front.by == 0 && back.by == 0:
		m.Remedy = noChange(e.w, front.proven && back.proven)
	case front.by > 0 && (back.by == 0 || front.by < back.by):
		m.Least = front.proven && (back.proven || front.by == 1)
		e.c.give(&m, r, front.by, planner.Front)
	default:
		m.Least = back.proven && (front.proven || back.by == 1)
		e.c.give(&m, r, back.by, planner.Back)
	}
	return m, front.proven && back.proven
}

// mostMore is how many times as much of a resource is offered at most where less was not ruled out.
const mostMore = 2

// give says in a member how its rule would give.
func (c *compiled) give(m *Member, r rule, by int, side planner.Side) {
	m.Enough = true
	switch r.kind {
	case Capacity:
		m.More = by
	case InOrder:
	default:
		m.Change = c.long(by)
	}
	m.Easing, m.Remedy = c.remedy(r, by, side)
}

// least is the least change of a rule, and those that move with it, on one side.
func (e *explainer) least(id, most int, side planner.Side) way {
	q, wanted := question{most, side}, e.c.rules[id].wanted
	if known, ok := e.asked[q]; ok && wanted {
		return known
	}
	if e.w.Over() {
		return way{}
	}
	first, next := questionWork, questionWork
	switch e.c.rules[id].ease() {
	case things:
		first, next = leverWork, leverWork
	case wishes, waits:
		first = leverWork
	}
	out := e.oracle.least(first, next, most, func(x int) planner.Relax {
		return planner.Relax{Rules: e.moved(id), By: x, Side: side}
	})
	if out.by == most && !out.proven {
		out.by = 0 // only doing without the rule was seen to help: that is no amount
	}
	if wanted {
		e.asked[q] = out
	}
	return out
}

// way is the least change found on one side of a rule; 0 when none was found to help. Proven says that none smaller
// does.
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
	case Capacity:
		back = least(len(c.in.Steps)*maxNeed(c.in), planner.Back)
	case InOrder:
		back = least(1, planner.Back)
	}
	return front, back
}
