package schedule

import (
	"slices"

	"example.org/maslin/internal/planner"
)

// fewest finds a small set of rules that cannot be kept together within the limits of the plan;
// minimal says that none of them can be left out.
//
// There are many smallest sets, and their sizes differ much. One that speaks of few steps is
// read most easily, so whole steps with everything about them are left out first, from the last
// to the first and the other way around; then single rules, in two orders. Of what is left the
// smaller set is kept.
//
// When a resource is short by what must lie in some span of time, the rules that say so are the set to begin with;
// otherwise those of a proof. In the end each rule is left out once more, and a timetable of the others searched for.
func (c *compiled) fewest(w *planner.Watch, shop *planner.Shop) (limits, core []int, minimal bool) {
	var work, clock []int // rules about steps, and about the clock and absences
	for id, r := range c.rules {
		switch r.kind {
		case PlanStart, PlanEnd:
			limits = append(limits, id)
		case Absence, NotBefore, NotAfter, FixedTime:
			clock = append(clock, id)
		default:
			work = append(work, id)
		}
	}
	all := w.Within(fewestWork)
	if short := shop.ShortageRules(all); short != nil {
		out := func(id int) bool { return !slices.Contains(short, id) }
		work, clock = slices.DeleteFunc(work, out), slices.DeleteFunc(clock, out)
	} else if proof := shop.Proof(all, limits); proof != nil {
		out := func(id int) bool { return !slices.Contains(proof, id) }
		work, clock = slices.DeleteFunc(work, out), slices.DeleteFunc(clock, out)
	}
	core = c.fewestRules(all, shop, limits, work, clock)
	core = slices.DeleteFunc(core, func(id int) bool { return slices.Contains(limits, id) })
	if len(core) > mostSearched && len(core) == len(work)+len(clock) {
		return limits, core, false
	}
	sure := w.Within(tightenWork)
	core, minimal = shop.Tighten(sure, core, limits, func(s *planner.Shop) planner.Truth {
		return s.Possible(sure.Within(questionWork))
	})
	return limits, core, minimal
}

// mostSearched is how many rules are left out in turn where only a search tells whether they are needed: of more, too
// few can be asked about.
const mostSearched = 100

// fewestRules finds a set of the rules of the work and of the clock of which the cheapest way of reasoning that sees
// that there is no timetable needs every one.
func (c *compiled) fewestRules(w *planner.Watch, shop *planner.Shop, limits, work, clock []int) []int {
	if w.Over() {
		return slices.Concat(work, clock)
	}
	by := shop.Refutable(w)
	if by == planner.BySearch && len(work)+len(clock) > mostSearched {
		return slices.Concat(work, clock)
	}
	refuted := func(s *planner.Shop) bool {
		return !w.Over() && s.Refuted(w.Within(questionWork), by) == planner.Yes
	}
	if by != planner.ByNeed {
		steps := c.fewestSteps(w, limits, slices.Concat(work, clock), shop, refuted)
		gone := func(id int) bool { return !c.among(steps, id) }
		work, clock = slices.DeleteFunc(work, gone), slices.DeleteFunc(clock, gone)
	}
	core := shop.Core(w, slices.Concat(work, clock), limits, refuted)
	slices.Reverse(work)
	slices.Reverse(clock)
	if other := shop.Core(w, slices.Concat(clock, work), limits, refuted); len(other) < len(core) {
		return other
	}
	return core
}

// fewestSteps finds a small set of steps that by themselves cannot be timed, by what is said of them
// in the rules given, which are all that is kept of them.
func (c *compiled) fewestSteps(
	w *planner.Watch,
	limits, rules []int,
	shop *planner.Shop,
	refuted func(*planner.Shop) bool,
) map[int]bool {
	order := make([]int, len(c.in.Steps))
	for i := range order {
		order[i] = i
	}
	impossible := func(kept map[int]bool) bool {
		if w.Over() {
			return false
		}
		about := slices.Clone(limits)
		for _, id := range rules {
			if c.among(kept, id) {
				about = append(about, id)
			}
		}
		return refuted(shop.Only(about))
	}
	best := planner.Smallest(order, nil, impossible)
	slices.Reverse(order)
	if other := planner.Smallest(order, nil, impossible); len(other) < len(best) {
		best = other
	}
	out := map[int]bool{}
	for _, i := range best {
		out[i] = true
	}
	return out
}

// among reports whether a rule is about nothing but the steps listed.
func (c *compiled) among(steps map[int]bool, id int) bool {
	switch r := c.rules[id]; r.kind {
	case Absence, Capacity:
		return true // about whichever steps there are
	case LinkMin, LinkMax, LinkExact, InOrder:
		return steps[c.index[r.step]] && steps[c.index[r.other]]
	case PlanStart, PlanEnd:
		return false
	default:
		return steps[c.index[r.step]]
	}
}
