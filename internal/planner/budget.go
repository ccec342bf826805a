package planner

import "slices"

// budget is how much of a pool there is over time, and the least its tasks take of it.
type budget struct {
	cap    int
	uses   []Use
	length []int    // least duration of each use
	sizes  []int    // the different lengths above 0, longest first
	closed [][2]int // in order, not overlapping
}

// fit is how many stretches of length p one after the other fit into the open time of [a, b).
func (g *budget) fit(a, b, p int) int {
	n, from := 0, a
	for _, c := range g.closed {
		if c[1] <= from {
			continue
		}
		if c[0] >= b {
			break
		}
		n += max(0, c[0]-from) / p
		from = c[1]
	}
	return n + max(0, b-from)/p
}

// sizesOf lists the different lengths above 0, longest first.
func sizesOf(lengths []int) []int {
	sizes := slices.DeleteFunc(slices.Clone(lengths), func(l int) bool { return l <= 0 })
	slices.Sort(sizes)
	slices.Reverse(sizes)
	return slices.Compact(sizes)
}

// open is the time in [a, b) in which the pool is not closed.
func (g *budget) open(a, b int) int {
	t := b - a
	for _, c := range g.closed {
		if lo, hi := max(a, c[0]), min(b, c[1]); lo < hi {
			t -= hi - lo
		}
	}
	return t
}

// halved is what the tasks that need more than half of a pool take of it: no two of them go together. Counted by need
// alone, one and a half of them would. Nil when that says nothing new.
//
// Source: the dual feasible function of Lueker for a size of a half; see overspent.
func (g *budget) halved() []budget {
	half := budget{cap: 1, closed: g.closed}
	news := false
	for k, u := range g.uses {
		if 2*u.Amount > g.cap {
			news = news || u.Amount < g.cap
			u.Amount = 1
			half.uses = append(half.uses, u)
			half.length = append(half.length, g.length[k])
		}
	}
	if len(half.uses) < 2 || !news {
		return nil
	}
	half.sizes = sizesOf(half.length)
	return []budget{half}
}

// clique lists the tasks of a budget of which no two go together.
func (g *budget) clique() (tasks []int) {
	for _, u := range g.uses {
		if 2*u.Amount > g.cap {
			tasks = append(tasks, u.Task)
		}
	}
	return tasks
}
