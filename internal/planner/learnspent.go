package planner

import (
	"cmp"
	"slices"
)

// learnBudget is a budget with the rules that it rests on.
type learnBudget struct {
	budget
	rule    int32
	lengths []int32 // by use
	closing []Closing
	moved   bool // bounds of its tasks
	byEnd   []int
	counts  []int
}

// budget adds the budgets of pools of which more than one task takes some for a time that is known.
func (l *learner) budget() {
	long := make([]length, l.shop.Tasks)
	for _, a := range l.shop.Net.Arcs {
		if i := (a.From - 1) / 2; a.From > 0 && i < len(long) && a.From == StartOf(i) && a.To == EndOf(i) &&
			a.W > long[i].least {
			long[i] = length{a.W, a.Rule}
		}
	}
	for k := range l.shop.Pools {
		p := &l.shop.Pools[k]
		g := learnBudget{budget: budget{cap: p.Capacity, closed: p.closed()}, rule: int32(p.Rule), closing: p.Closed,
			moved: true}
		for _, u := range p.Uses {
			if long[u.Task].least > 0 {
				g.uses, g.length = append(g.uses, u), append(g.length, long[u.Task].least)
				g.lengths = append(g.lengths, int32(long[u.Task].rule))
			}
		}
		if p.Capacity == 0 || len(g.uses) < 2 {
			continue
		}
		g.sizes = sizesOf(g.length)
		g.counts = make([]int, len(g.sizes))
		for k := range g.uses {
			g.byEnd = append(g.byEnd, k)
		}
		l.budgets = append(l.budgets, g)
	}
}

// spent reasons with what must lie in a span: see overspent. False when something cannot be, or the watch is over.
func (l *learner) spent(g *learnBudget) bool {
	start := func(k int) int { return -int(l.top[2*StartOf(g.uses[k].Task)+1]) }
	end := func(k int) int { return int(l.top[2*EndOf(g.uses[k].Task)]) }
	slices.SortFunc(g.byEnd, func(a, b int) int { return cmp.Or(end(a)-end(b), a-b) })
	for k := range g.uses {
		if l.w.spend(len(g.uses)*(2+len(g.sizes)) + len(g.closed)) {
			return false
		}
		from, need := start(k), 0
		clear(g.counts)
		for _, j := range g.byEnd {
			if start(j) < from {
				continue
			}
			need += g.length[j] * g.uses[j].Amount
			to := end(j)
			if need > g.cap*(to-from) || len(g.closed) > 0 && need > g.cap*g.open(from, to) {
				return l.short(g, from, to, 0, g.cap*g.open(from, to))
			}
			for i, p := range g.sizes {
				if p > g.length[j] {
					continue
				}
				g.counts[i] += g.uses[j].Amount
				if c := g.counts[i]; c > g.cap && (c > g.cap*((to-from)/p) || len(g.closed) > 0 && c > g.cap*g.fit(from, to, p)) {
					return l.short(g, from, to, p, g.cap*g.fit(from, to, p))
				}
			}
		}
	}
	return true
}

// short says why tasks that must lie in a span fail: they need more than the room there, by their hours, or, when least
// is not 0, by the number of those that last so long. It is always false.
func (l *learner) short(g *learnBudget, from, to, least, room int) bool {
	type taker struct{ use, need int }
	var all []taker
	for k, u := range g.uses {
		inside := -int(l.top[2*StartOf(u.Task)+1]) >= from && int(l.top[2*EndOf(u.Task)]) <= to
		switch {
		case inside && least == 0:
			all = append(all, taker{k, u.Amount * g.length[k]})
		case inside && g.length[k] >= least:
			all = append(all, taker{k, u.Amount})
		}
	}
	slices.SortStableFunc(all, func(a, b taker) int { return b.need - a.need })
	l.failed = l.failed[:0]
	clear(l.rules)
	l.rules.add(g.rule)
	for _, c := range g.closing {
		if c.From < to && c.To > from {
			l.rules.add(int32(c.Rule))
		}
	}
	for _, a := range all {
		task := g.uses[a.use].Task
		l.failed = append(l.failed, atLeastLit(StartOf(task), from), atMostLit(EndOf(task), to))
		l.rules.add(g.lengths[a.use])
		if room -= a.need; room < 0 {
			break
		}
	}
	return false
}
