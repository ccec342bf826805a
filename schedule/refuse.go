package schedule

import (
	"context"
	"fmt"
	"slices"

	"example.org/maslin/internal/planner"
)

// proofEffort bounds the search behind one question while a conflict is made smaller.
const proofEffort = 5000

// refuse explains why there is no timetable even without shortage of a resource.
func (c *compiled) refuse(ctx context.Context) Timetable {
	t := Timetable{Verdict: Infeasible, c: c}
	_, clash := c.net.Earliest()
	clash = c.net.Shrink(clash)
	shop := c.shop()
	if len(shop.Pools) == 0 {
		t.Conflict = c.conflict(ctx, clash, true, planner.NewProber(c.net).Feasible)
	} else {
		t.Conflict = c.conflict(ctx, clash, true, c.oracle(ctx, shop, planner.NewProber(c.net)))
	}
	t.Before, t.After = c.nearest(ctx, shop)
	if t.After != nil {
		t.Conflict.Short = t.After.By
	}
	return t
}

// oracle answers whether the shop with some rules weakened can be solved, asking the cheap
// question about its network first.
func (c *compiled) oracle(ctx context.Context, shop *planner.Shop, p *planner.Prober) func(planner.Relax) bool {
	return func(r planner.Relax) bool {
		if ctx.Err() != nil || !p.Feasible(r) {
			return false
		}
		ok, _ := shop.Relaxed(r).Possible(ctx, proofEffort)
		return ok
	}
}

// refuseShared explains why there is no timetable when the shared resources are in the way.
func (c *compiled) refuseShared(ctx context.Context, shop *planner.Shop) Timetable {
	t := Timetable{Verdict: Infeasible, c: c}
	var limits, rules []int
	for id, r := range c.rules {
		switch r.kind {
		case Limits:
			limits = append(limits, id)
		case Absence, NotBefore, NotAfter, FixedTime:
		default:
			rules = append(rules, id)
		}
	}
	// The rules a person would rather hear about come last and are given up last.
	for id, r := range c.rules {
		switch r.kind {
		case Absence, NotBefore, NotAfter, FixedTime:
			rules = append(rules, id)
		}
	}
	core, minimal := shop.Core(ctx, rules, limits, proofEffort)
	// The frame of the plan is named too where it is needed.
	wide := 2 * c.limit
	for k, id := range limits {
		side := planner.Front
		if k == 1 {
			side = planner.Back
		}
		loose := shop.Relaxed(planner.Relax{Rules: []int{id}, By: wide, Side: side})
		kept := append(slices.Clone(core), limits...)
		if ok, sure := loose.Only(kept).Possible(ctx, proofEffort); ok || !sure {
			core = append(core, id)
		}
	}
	slices.Sort(core)
	feasible := c.oracle(ctx, shop, planner.NewProber(c.net))
	t.Conflict = c.conflict(ctx, &planner.Clash{Rules: core}, minimal && ctx.Err() == nil, feasible)
	for i, id := range core {
		m := &t.Conflict.Members[i]
		switch r := c.rules[id]; r.kind {
		case Capacity:
			more := planner.Least(len(c.in.Steps)*maxNeed(c.in), func(x int) bool { return feasible(planner.Relax{Rules: []int{id}, By: x}) })
			m.Enough, m.More, m.Remedy = more > 0, more, noChange(ctx)
			if more > 0 {
				m.Remedy = fmt.Sprintf("%d more: %d", more, r.amount+more)
			}
		case InOrder:
			ok, _ := shop.Without(id).Possible(ctx, proofEffort)
			m.Enough, m.Remedy = ok, noChange(ctx)
			if ok {
				m.Remedy = "in any order"
			}
		}
	}
	t.Before, t.After = c.nearest(ctx, shop)
	if t.After != nil {
		t.Conflict.Short = t.After.By
	}
	return t
}

// noChange says that no remedy was found, and whether all were tried.
func noChange(ctx context.Context) string {
	if ctx.Err() != nil {
		return "not looked into, the time was up"
	}
	return "no change of this alone helps"
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
func (c *compiled) nearest(ctx context.Context, shop *planner.Shop) (before, after *Shift) {
	if len(c.wanted) == 0 || ctx.Err() != nil {
		return nil, nil
	}
	net, event, nominal := c.shifted()
	find := func(sign int64, bound planner.Arc) *Shift {
		moved := *net
		moved.Arcs = append(slices.Clone(net.Arcs), bound)
		if !moved.Feasible() {
			return nil
		}
		times, _ := moved.Earliest()
		if sign < 0 {
			times, _, _ = moved.Latest()
		}
		where := &planner.Shop{Net: &moved, Tasks: shop.Tasks, Pools: shop.Pools}
		if !where.Fits(times) {
			cost := planner.Cost{Linear: make([]int64, moved.Events)}
			cost.Linear[event] = sign
			out := where.Search(ctx, cost, planner.Options{Effort: 20 * proofEffort})
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
