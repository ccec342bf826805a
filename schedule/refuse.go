package schedule

import (
	"slices"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// Work allowed while a conflict is explained: for one question, and for one about what is changed most easily; to make
// the conflict small, and to see that it cannot be smaller; to see where a resource is nearest to being short; to find
// remedies, and the nearest wanted times. It is the same on every machine, and so much that an answer takes a second
// or two.
const (
	questionWork = 1 << 24
	leverWork    = 1 << 26
	fewestWork   = 1 << 27
	tightenWork  = 1 << 27
	tightestWork = 1 << 27
	remedyWork   = 3 << 27
	nearestWork  = 1 << 27
)

// mostTold is how many rules of a conflict are told one by one; more are not read.
const mostTold = 7

// refuse explains why there is no timetable even without shortage of a resource.
func (c *compiled) refuse(w *planner.Watch, clash *planner.Clash) Timetable {
	t := Timetable{Verdict: Infeasible, c: c}
	clash = c.net.Shrink(w, clash)
	minimal := clash.Cycle || !w.Over()
	t.core = clash.Rules
	shop := c.shop()
	t.Conflict = c.explainer(w.Within(remedyWork), shop).explain(clash, minimal)
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

// refuseShared explains why there is no timetable when the shared resources are in the way.
func (c *compiled) refuseShared(w *planner.Watch, shop *planner.Shop) Timetable {
	t := Timetable{Verdict: Infeasible, c: c}
	shop = c.taking(shop)
	limits, core, minimal := c.fewest(w, shop)
	// The frame of the plan is named too where it is needed.
	wide := 2 * c.limit
	for k, id := range limits {
		if w.Over() { // it is not known to be needless
			core = append(core, id)
			continue
		}
		side := planner.Front
		if k == 1 {
			side = planner.Back
		}
		loose := shop.Relaxed(planner.Relax{Rules: []int{id}, By: wide, Side: side})
		kept := append(slices.Clone(core), limits...)
		if loose.Only(kept).Possible(w.Within(questionWork)) != planner.No {
			core = append(core, id)
		}
	}
	slices.Sort(core)
	t.core = core
	e := c.explainer(w.Within(remedyWork), shop)
	t.Conflict = e.explain(&planner.Clash{Rules: core}, minimal && !w.Over())
	t.Conflict.Shortage = c.shortage(shop, shop.Shortage(w))
	if t.Conflict.Shortage == nil && len(t.Conflict.sentences()) > mostTold {
		t.Conflict.Tightest = c.shortage(shop, shop.Tightest(w.Within(tightestWork)))
	}
	c.lookAround(w, shop, &t)
	return t
}

// taking is the shop in which what shares a resource takes some time, whatever rule is left out: as nothing it would
// use nothing, and no rule about the resource would be about it any more.
func (c *compiled) taking(shop *planner.Shop) *planner.Shop {
	net := &planner.Net{Events: shop.Net.Events, Limit: shop.Net.Limit, Holes: shop.Net.Holes,
		Arcs: slices.Clone(shop.Net.Arcs)}
	for i, s := range c.in.Steps {
		shares := slices.ContainsFunc(s.Needs, func(n Need) bool {
			return n.Program != "" || c.in.Resources[c.res[n.Resource]].Capacity > 0
		})
		if shares && c.hi[i] > 0 {
			arc := planner.Arc{From: planner.StartOf(i), To: planner.EndOf(i), W: 1, Rule: structure}
			net.Arcs = append(net.Arcs, arc)
		}
	}
	return &planner.Shop{Net: net, Tasks: shop.Tasks, Pools: shop.Pools}
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
