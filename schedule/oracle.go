package schedule

import "example.org/maslin/internal/planner"

// oracle answers whether a problem could be solved if some of its rules were weaker.
type oracle struct {
	c       *compiled
	w       *planner.Watch
	shop    *planner.Shop
	network *planner.Prober
}

func (c *compiled) oracle(w *planner.Watch, shop *planner.Shop) *oracle {
	return &oracle{c, w, shop, planner.NewProber(w, c.net)}
}

// relaxed is the shop with rules weakened. An order is kept or not, and does not give by degrees.
func (o *oracle) relaxed(list ...planner.Relax) *planner.Shop {
	s := o.shop
	for _, r := range list {
		for _, id := range r.Rules {
			if o.c.rules[id].kind == InOrder {
				s = s.Without(id)
			}
		}
	}
	return s.Relaxed(list...)
}

// any looks for a timetable with rules weakened, with so much work at most, asking the cheap question about the network
// first. Where nothing is shared there are no times.
func (o *oracle) any(work int, list ...planner.Relax) ([]int, planner.Truth) {
	if o.w.Over() {
		return nil, planner.Unsure
	}
	ordered := false
	for _, r := range list {
		for _, id := range r.Rules {
			ordered = ordered || o.c.rules[id].kind == InOrder
		}
	}
	if !ordered {
		if t := o.network.Feasible(list...); t != planner.Yes || len(o.shop.Pools) == 0 {
			return nil, t
		}
	}
	return o.relaxed(list...).Any(o.w.Within(work))
}

// feasible answers whether there is a timetable with rules weakened.
func (o *oracle) feasible(list ...planner.Relax) planner.Truth {
	_, t := o.any(questionWork, list...)
	return t
}

// least is the least change of rules, up to most, that is enough. The first question, whether any change is, may take
// other work than those after it. What a timetable that is found needs of the change is enough too; where the first
// question may take more work half of that is asked about, as long as it is enough: a small change is harder to settle.
func (o *oracle) least(first, next, most int, change func(by int) planner.Relax) (out way) {
	work, known := first, most+1
	enough := func(x int) planner.Truth {
		times, t := o.any(work, change(x))
		if t == planner.Yes {
			if known = x; times != nil && (x == most || first > next) {
				known, _ = planner.Least(x, func(y int) planner.Truth {
					if o.relaxed(change(y)).Keeps(nil, times) {
						return planner.Yes
					}
					return planner.No
				})
			}
		}
		return t
	}
	out.by, out.proven = planner.Least(most, func(x int) planner.Truth {
		if x >= known {
			return planner.Yes
		}
		t := enough(x)
		for x == most && first > next && known > 1 && known <= most && enough(known/2) == planner.Yes {
		}
		work = next
		return t
	})
	if !out.proven && out.by > known {
		out.by = known
	}
	return out
}
