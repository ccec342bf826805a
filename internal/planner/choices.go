package planner

import (
	"cmp"
	"slices"
)

// mostWays bounds how many ways out are tried at one node of the search: few where prices tell apart what matters.
const (
	mostWays   = 24
	pricedWays = 4
)

// choices lists difficulties of the relaxed solution: times in gaps, costs above their
// envelopes, tasks that overlap and should not. None means that the solution is a timetable
// whose cost is the bound, unless the watch is over.
func (r *search) choices() []choice {
	var out []choice
	x := r.b.f.x
	for v := 0; v < r.m.n; v++ {
		t := int(x[v])
		if r.w.spend(len(r.m.gaps[v])) {
			return nil
		}
		for _, g := range r.m.gaps[v] {
			if t > g.a && t < g.b {
				out = append(out, choice{moves: []move{{kind: atMost, a: v, w: g.a}, {kind: atLeast, a: v, w: g.b}}, rank: 1 << 40})
			}
		}
	}
	for _, p := range r.m.splits {
		if int(x[p.e]) > p.a && int(x[p.s]) < p.b {
			out = append(out, choice{moves: []move{{kind: atMost, a: p.e, w: p.a}, {kind: atLeast, a: p.s, w: p.b}},
				rank: 1 << 40})
		}
	}
	for v := 0; v < r.m.n; v++ {
		// The slopes of the envelope are rounded down, by one for each unit of time at most.
		if e := r.b.excess(v); e > int64(r.s.hi[v]-r.s.lo[v]) {
			if t, ok := r.bend(v); ok {
				out = append(out, choice{moves: []move{{kind: atMost, a: v, w: t}, {kind: atLeast, a: v, w: t + 1}}, rank: 1<<30 +
					e/r.b.scale})
			}
		}
	}
	if r.w.spend(r.m.n + len(r.m.splits)) {
		return nil
	}
	out = r.overlaps(out)
	out = r.crowded(out)
	byRank(out)
	return out
}

// few are the choices that are judged: the worst, and where prices lead the parting of times too.
func (r *search) few(choices []choice) []choice {
	most := mostWays
	if r.priced() {
		most = pricedWays
	}
	ways := 0
	for k, c := range choices {
		if ways += len(c.moves); ways > most && k > 0 {
			choices = choices[:k]
			break
		}
	}
	if r.priced() {
		choices = r.splits(choices)
	}
	return choices
}

// byRank puts the worst difficulties first, and those of one rank in the order found.
func byRank(list []choice) {
	slices.SortStableFunc(list, func(a, b choice) int { return cmp.Compare(b.rank, a.rank) })
}

// worst shortens a long list to its worst difficulties, of which few will be looked at.
func worst(list []choice) []choice {
	if len(list) < 4096 {
		return list
	}
	byRank(list)
	return list[:512]
}

// bend picks the time at which to part the times of a node whose cost lies above its envelope:
// the bend in the same stretch of the envelope that is furthest above it.
func (r *search) bend(v int) (int, bool) {
	b := r.b
	x := int(b.f.x[v])
	left, right := r.s.lo[v], r.s.hi[v]
	for _, id := range b.bends[v] {
		if b.f.cap[id] <= 0 {
			continue
		}
		if t := int(-b.f.w[id]); t <= x {
			left = max(left, t)
		} else {
			right = min(right, t)
		}
	}
	best, at := int64(0), 0
	consider := func(t int) {
		if t < left || t >= right {
			return
		}
		chord := valueAt(b.curves[v], left) + (valueAt(b.curves[v], right)-valueAt(b.curves[v],
			left))*int64(t-left)/int64(right-left)
		if above := valueAt(b.curves[v], t) - chord; above > best {
			best, at = above, t
		}
	}
	for _, q := range b.curves[v] {
		consider(q.T)
	}
	consider(x)
	if best == 0 {
		return 0, false
	}
	return at, true
}

func (r *search) at(p place) int { return int(r.b.f.x[p.node]) + p.off }

// overlaps lists pairs that overlap in the relaxed solution.
func (r *search) overlaps(out []choice) []choice {
	for _, p := range r.m.pairs {
		if r.w.spend(4) {
			return out
		}
		si, ei := r.at(r.m.start(p.i)), r.at(r.m.end(p.i))
		sj, ej := r.at(r.m.start(p.j)), r.at(r.m.end(p.j))
		if ei+p.ij <= sj || ej+p.ji <= si {
			continue
		}
		out = append(out, choice{
			moves: []move{{ordered, p.i, p.j, p.ij}, {ordered, p.j, p.i, p.ji}},
			rank:  int64(min(ei+p.ij-sj, ej+p.ji-si)),
		})
		out = worst(out)
	}
	return out
}

// crowded lists, for every moment at which the tasks of a crowd need more than there is, a
// smallest set of them that does, and the orders that would part it.
func (r *search) crowded(out []choice) []choice {
	var seen [][]int
	for k := range r.m.crowds {
		c := &r.m.crowds[k]
		for _, u := range c.uses {
			if r.w.spend(2*len(c.uses) + len(seen)) {
				return out
			}
			t := r.at(r.m.start(u.Task))
			var here []Use
			total := 0
			for _, w := range c.uses {
				if r.at(r.m.start(w.Task)) <= t && t < r.at(r.m.end(w.Task)) {
					here = append(here, w)
					total += w.Amount
				}
			}
			if total <= c.cap {
				continue
			}
			// Largest needs first make the smallest set.
			slices.SortStableFunc(here, func(a, b Use) int { return b.Amount - a.Amount })
			need := 0
			for i, w := range here {
				need += w.Amount
				if need > c.cap {
					here = here[:i+1]
					break
				}
			}
			set := make([]int, len(here))
			for i, w := range here {
				set[i] = w.Task
			}
			slices.Sort(set)
			if slices.ContainsFunc(seen, func(s []int) bool { return slices.Equal(s, set) }) {
				continue
			}
			seen = append(seen, set)
			ch := choice{}
			shift := 1 << 30 // farther than any horizon, and an int on 32 bits
			for _, i := range set {
				for _, j := range set {
					if i == j {
						continue
					}
					if can, _ := r.s.before(i, j, 0); can {
						ch.moves = append(ch.moves, move{ordered, i, j, 0})
						shift = min(shift, r.at(r.m.end(i))-r.at(r.m.start(j)))
					}
				}
			}
			ch.rank = int64(shift)
			out = worst(append(out, ch))
		}
	}
	return out
}
