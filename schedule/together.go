package schedule

import (
	"slices"

	"example.org/maslin/internal/planner"
)

// change is a way in which a rule can give, as far as it goes.
type change struct {
	id   int
	most planner.Relax
}

// changes lists the ways in which the rules that are up for change can give; the wanted ones count as one.
func (e *explainer) changes(rules []int) (out []change) {
	wanted := false
	for _, id := range rules {
		r := e.c.rules[id]
		if r.firm || r.wanted && wanted {
			continue
		}
		wanted = wanted || r.wanted
		e.c.ways(r, func(most int, side planner.Side) way {
			if most > 0 {
				out = append(out, change{id, planner.Relax{Rules: e.moved(id), By: most, Side: side}})
			}
			return way{}
		})
	}
	return out
}

// together finds a set of changes that make a timetable possible, none of which can be left out, when none does alone;
// nil when there is none, or none was found with the work allowed.
func (e *explainer) together(rules []int) []Member {
	set, found := e.enough(rules)
	if !found {
		return nil
	}
	for k := 0; k < len(set); { // do without each in turn
		if rest := slices.Delete(slices.Clone(set), k, k+1); e.oracle.feasible(relaxes(rest)...) == planner.Yes {
			set = rest
		} else {
			k++
		}
	}
	var out []Member
	for k := range set {
		most := set[k].most.By
		by, proven := planner.Least(most, func(x int) planner.Truth {
			set[k].most.By = x
			return e.oracle.feasible(relaxes(set)...)
		})
		if by == 0 {
			return nil // the work allowed ended
		}
		set[k].most.By = by
		m := e.c.plain(set[k].id)
		m.Least = proven
		e.c.give(&m, e.c.rules[set[k].id], by, set[k].most.Side)
		out = append(out, m)
	}
	return out
}

// mostClashes is how many clashes a set of changes resolves at most: more than a few are not read.
const mostClashes = 4

// enough widens the set of rules that give by those of the clash that is left, until there is a timetable.
func (e *explainer) enough(rules []int) (set []change, found bool) {
	type half struct {
		rule int
		side planner.Side
	}
	listed := map[half]bool{}
	for range mostClashes {
		before := len(set)
		for _, m := range e.changes(rules) {
			if h := (half{m.id, m.most.Side}); !listed[h] {
				listed[h] = true
				set = append(set, m)
			}
		}
		if len(set) == before || e.w.Over() {
			return nil, false // nothing that is left in the way can be changed
		}
		switch e.oracle.feasible(relaxes(set)...) {
		case planner.Yes:
			return set, true
		case planner.Unsure:
			return nil, false
		}
		shop := e.c.shop().Relaxed(relaxes(set)...)
		if _, clash := shop.Net.Earliest(e.w); clash != nil {
			rules = shop.Net.Shrink(e.w, clash).Rules
		} else {
			limits, core, _ := e.c.fewest(e.w, shop)
			rules = append(core, limits...)
		}
	}
	return nil, false
}

func relaxes(set []change) (out []planner.Relax) {
	for _, c := range set {
		out = append(out, c.most)
	}
	return out
}
