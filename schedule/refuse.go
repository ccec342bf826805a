package schedule

import (
	"slices"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// proofEffort bounds the search behind one question while a conflict is made smaller.
const proofEffort = 5000

// refuse explains why there is no timetable even without shortage of a resource.
func (c *compiled) refuse(w *planner.Watch, clash *planner.Clash) Timetable {
	t := Timetable{Verdict: Infeasible, c: c}
	clash = c.net.Shrink(w, clash)
	minimal := clash.Cycle || !w.Over()
	shop := c.shop()
	feasible := planner.NewProber(w, c.net).Feasible
	if len(shop.Pools) > 0 {
		feasible = c.oracle(w, shop)
	}
	t.Conflict = c.conflict(w, clash, minimal, feasible)
	c.lookAround(w, shop, &t)
	return t
}

// lookAround adds to a conflict the wanted times that work.
func (c *compiled) lookAround(w *planner.Watch, shop *planner.Shop, t *Timetable) {
	if len(c.wanted) > 0 && !w.Over() {
		m := c.mover(w, shop)
		t.After, t.Before = m.after(t.Conflict), m.before()
	}
	if t.After != nil {
		t.Conflict.Short, t.Conflict.ShortProven = t.After.By, t.After.Nearest
	}
	t.Conflict.Complete, t.described = !w.Over(), true
}

// oracle answers whether the shop with some rules weakened can be solved, asking the cheap
// question about its network first.
func (c *compiled) oracle(w *planner.Watch, shop *planner.Shop) func(planner.Relax) planner.Truth {
	p := planner.NewProber(w, c.net)
	return func(r planner.Relax) planner.Truth {
		if t := p.Feasible(r); t != planner.Yes {
			return t
		}
		return shop.Relaxed(r).Possible(w, proofEffort)
	}
}

// refuseShared explains why there is no timetable when the shared resources are in the way.
func (c *compiled) refuseShared(w *planner.Watch, shop *planner.Shop) Timetable {
	t := Timetable{Verdict: Infeasible, c: c}
	limits, core, minimal := c.fewest(w, shop)
	// The frame of the plan is named too where it is needed.
	wide := 2 * c.limit
	for k, id := range limits {
		side := planner.Front
		if k == 1 {
			side = planner.Back
		}
		loose := shop.Relaxed(planner.Relax{Rules: []int{id}, By: wide, Side: side})
		kept := append(slices.Clone(core), limits...)
		if loose.Only(kept).Possible(w, proofEffort) != planner.No {
			core = append(core, id)
		}
	}
	slices.Sort(core)
	feasible := c.oracle(w, shop)
	t.Conflict = c.conflict(w, &planner.Clash{Rules: core}, minimal && !w.Over(), feasible)
	for i, id := range core {
		m := &t.Conflict.Members[i]
		switch r := c.rules[id]; r.kind {
		case Capacity:
			more, least := planner.Least(
				len(c.in.Steps)*maxNeed(c.in),
				func(x int) planner.Truth { return feasible(planner.Relax{Rules: []int{id}, By: x}) },
			)
			m.Enough, m.Least, m.More, m.Remedy = more > 0, least && more > 0, more, noChange(w, least)
			if more > 0 {
				m.Easing, m.Remedy = More, working.Tell("schedule.more_of_it", "%d more: %d", more, r.amount+more)
			}
		case InOrder:
			found := planner.Unsure
			if !w.Over() {
				found = shop.Without(id).Possible(w, proofEffort)
			}
			m.Enough, m.Least = found == planner.Yes, found == planner.Yes
			m.Remedy = noChange(w, found != planner.Unsure)
			if m.Enough {
				m.Easing, m.Remedy = AnyOrder, working.Tell("schedule.any_order", "in any order")
			}
		}
	}
	c.lookAround(w, shop, &t)
	return t
}

// noChange says that no remedy was found, and why: there is none, or it was not settled.
func noChange(w *planner.Watch, proven bool) working.Message {
	switch {
	case proven:
		return working.Tell("schedule.no_change_helps", "no change of this alone helps")
	case w.Over():
		return working.Tell("schedule.not_looked_into", "not looked into, the time was up")
	}
	return working.Tell("schedule.not_settled", "whether a change of this alone helps is not known")
}

// maxNeed is the largest amount any step needs.
func maxNeed(p Problem) int {
	most := 1
	for _, s := range p.Steps {
		for _, n := range s.Needs {
			most = max(most, n.Amount)
		}
	}
	return most
}
