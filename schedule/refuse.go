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
	t.Before, t.After = c.nearest(w, shop)
	t.Conflict.Complete, t.described = !w.Over(), true
	if t.After != nil {
		t.Conflict.Short = t.After.By
	}
	return t
}

// oracle answers whether the shop with some rules weakened can be solved, asking the cheap
// question about its network first.
func (c *compiled) oracle(w *planner.Watch, shop *planner.Shop) func(planner.Relax) bool {
	p := planner.NewProber(w, c.net)
	return func(r planner.Relax) bool {
		if !p.Feasible(r) {
			return false
		}
		ok, _ := shop.Relaxed(r).Possible(w, proofEffort)
		return ok
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
		if ok, sure := loose.Only(kept).Possible(w, proofEffort); ok || !sure {
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
			more := planner.Least(
				len(c.in.Steps)*maxNeed(c.in),
				func(x int) bool { return feasible(planner.Relax{Rules: []int{id}, By: x}) },
			)
			m.Enough, m.More, m.Remedy = more > 0, more, noChange(w)
			if more > 0 {
				m.Easing, m.Remedy = More, working.Tell("schedule.more_of_it", "%d more: %d", more, r.amount+more)
			}
		case InOrder:
			ok := false
			if !w.Over() {
				ok, _ = shop.Without(id).Possible(w, proofEffort)
			}
			m.Enough, m.Remedy = ok, noChange(w)
			if ok {
				m.Easing, m.Remedy = AnyOrder, working.Tell("schedule.any_order", "in any order")
			}
		}
	}
	t.Before, t.After = c.nearest(w, shop)
	t.Conflict.Complete, t.described = !w.Over(), true
	if t.After != nil {
		t.Conflict.Short = t.After.By
	}
	return t
}

// noChange says that no remedy was found, and whether all were tried.
func noChange(w *planner.Watch) working.Message {
	if w.Over() {
		return working.Tell("schedule.not_looked_into", "not looked into, the time was up")
	}
	return working.Tell("schedule.no_change_helps", "no change of this alone helps")
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

// nearest finds the wanted times just before and just after the wanted one that work.
func (c *compiled) nearest(w *planner.Watch, shop *planner.Shop) (before, after *Shift) {
	if len(c.wanted) == 0 || w.Over() {
		return nil, nil
	}
	net, event, nominal := c.shifted()
	find := func(sign int64, bound planner.Arc) *Shift {
		moved := *net
		moved.Arcs = append(slices.Clone(net.Arcs), bound)
		times, _ := moved.Earliest(w)
		if sign < 0 && times != nil {
			times, _, _ = moved.Latest(w)
		}
		if times == nil {
			return nil
		}
		where := &planner.Shop{Net: &moved, Tasks: shop.Tasks, Pools: shop.Pools}
		if !where.Fits(w, times) {
			cost := planner.Cost{Linear: make([]int64, moved.Events)}
			cost.Linear[event] = sign
			out := where.Search(w, cost, planner.Options{Effort: 20 * proofEffort})
			if out.Times == nil {
				return nil
			}
			times = out.Times
		}
		return c.shift(times[event], nominal)
	}
	after = find(1, planner.Arc{From: 0, To: event, W: nominal, Rule: structure})
	before = find(-1, planner.Arc{From: event, To: 0, W: -nominal, Rule: structure})
	return before, after
}
