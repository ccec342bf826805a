package planner

import (
	"cmp"
	"slices"
)

// priced says that prices bound the search now: there is a timetable to be better than.
func (r *search) priced() bool { return r.p != nil && !r.quick && r.best < noBound }

// charge raises the bound by pricing what is shared, and takes times away that would cost too much. Open is false
// when nothing better is left, or when the watch is over.
func (r *search) charge(bound int64) (higher int64, moved, open bool) {
	steps := nodeSteps
	switch {
	case r.charged == 0:
		steps = rootSteps
	case r.far:
		steps = farSteps
	}
	r.charged++
	r.far = false
	r.p.step = 1
	priced, ok := r.p.raise(steps, r.best)
	if !ok {
		r.lost = min(r.lost, bound)
		return bound, false, false
	}
	if bound = max(bound, priced); bound >= r.best {
		return bound, false, false
	}
	moved, ok = r.p.narrow(r.best)
	if ok && moved {
		ok = r.s.propagate()
	}
	if r.w.Over() {
		r.lost = min(r.lost, bound)
		return bound, false, false
	}
	return bound, moved, ok
}

// mostSplits is how many nodes of the network are considered whose times differ most between the timetables seen.
const mostSplits = 4

// splits adds ways to part the times of a node: at the middle of those that it had while prices were looked for. Where
// they differ most the prices cannot decide, and the bound of both parts will rise.
func (r *search) splits(choices []choice) []choice {
	p := r.p
	if p.seen == 0 {
		return choices
	}
	type split struct {
		v, t   int
		spread int64
	}
	var all []split
	for v, sum := range p.sum {
		spread := p.square[v]*int64(p.seen) - sum*sum // variance, times the number seen squared
		t := floorDiv(sum, int64(p.seen))
		if t >= r.s.lo[v] && t < r.s.hi[v] && 2*spread >= int64(p.seen)*int64(p.seen) {
			all = append(all, split{v, t, spread})
		}
	}
	r.w.spend(8 * len(p.sum))
	slices.SortStableFunc(all, func(a, b split) int { return cmp.Compare(b.spread, a.spread) })
	for _, s := range all[:min(len(all), mostSplits)] {
		choices = append(choices, choice{split: true, moves: []move{{kind: atMost, a: s.v, w: s.t},
			{kind: atLeast, a: s.v, w: s.t + 1}}})
	}
	return choices
}

func floorDiv(a, b int64) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return int(q)
}

// narrow takes from every node the times at which no timetable costs less than the limit; false when nothing is
// left. Moved says that some bound changed.
func (p *prices) narrow(limit int64) (moved, ok bool) {
	scaled, sure := p.bound()
	if !sure {
		return false, true
	}
	if scaled >= endless {
		return false, false
	}
	if p.points(scaled) >= limit {
		return false, false
	}
	p.r.marginals()
	// The roots' trees cost scaled in sum; a node that adds room or more is out.
	room := (limit-1-p.b.off)*p.scale - scaled
	least := make([]int64, p.s.m.n) // of the tree of each node
	for _, v := range p.f.order {
		if q := p.f.parent[v]; q >= 0 {
			least[v] = least[q]
			continue
		}
		least[v] = endless
		for _, c := range p.r.all[v] {
			least[v] = min(least[v], c)
		}
	}
	for v := range p.s.m.n {
		row, lo := p.r.all[v], p.r.lo[v]
		i, j := 0, len(row)-1
		for i <= j && row[i]-least[v] > room {
			i++
		}
		for j >= i && row[j]-least[v] > room {
			j--
		}
		if i > j {
			return moved, false
		}
		if i > 0 {
			moved = true
			if !p.s.raise(v, lo+i) {
				return moved, false
			}
		}
		if j < len(row)-1 {
			moved = true
			if !p.s.lower(v, lo+j) {
				return moved, false
			}
		}
	}
	return moved, true
}
