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
	steps := c.fewestSteps(w, shop, limits)
	gone := func(id int) bool { return !c.among(steps, id) }
	work, clock = slices.DeleteFunc(work, gone), slices.DeleteFunc(clock, gone)
	core, minimal = shop.Core(w, slices.Concat(work, clock), limits, proofEffort)
	slices.Reverse(work)
	slices.Reverse(clock)
	other, sure := shop.Core(w, slices.Concat(clock, work), limits, proofEffort)
	if len(other) < len(core) && (sure || !minimal) {
		core, minimal = other, sure
	}
	return limits, core, minimal
}

// fewestSteps finds a small set of steps that by themselves cannot be timed.
func (c *compiled) fewestSteps(w *planner.Watch, shop *planner.Shop, limits []int) map[int]bool {
	order := make([]int, len(c.in.Steps))
	for i := range order {
		order[i] = i
	}
	impossible := func(kept map[int]bool) bool {
		if w.Over() {
			return false
		}
		rules := slices.Clone(limits)
		for id := range c.rules {
			if c.among(kept, id) {
				rules = append(rules, id)
			}
		}
		return shop.Only(rules).Possible(w, proofEffort) == planner.No
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
