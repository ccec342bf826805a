package planner

// endless is a cost above every cost that is reckoned with, and a flow without limit.
const endless = int64(1) << 60

// A reckoner finds the least cost of a forest, the order of its turns included, with any cost for each time of each
// node, and for every time of a node the least cost of all timetables in which the node has that time. Each node has
// a row of costs over its times; a row goes from its child to its parent as least costs over a moving span. Method:
// dynamic programming on a tree (min-sum, forward and backward), with the span minimum of Lemire, "Streaming
// maximum-minimum filter", Nordic Journal of Computing 13 (2006).
type reckoner struct {
	f      *forest
	lo, hi []int     // times of each node
	own    [][]int64 // cost of the node alone, by time from lo
	sum    [][]int64 // with everything below it
	up     [][]int64 // what a node tells its parent, by time of the parent
	pick   [][]int32 // the node's time that it comes from
	all    [][]int64 // least cost of everything with the node at that time
	x      []int     // times of a timetable of least cost
	queue  []int32
	spare  []int64
}

func newReckoner(f *forest, n int) *reckoner {
	r := &reckoner{f: f, lo: make([]int, n), hi: make([]int, n), x: make([]int, n)}
	r.own, r.sum, r.up, r.all = make([][]int64, n), make([][]int64, n), make([][]int64, n), make([][]int64, n)
	r.pick = make([][]int32, n)
	return r
}

// least reckons from the leaves to the roots; endless when no timetable is left.
func (r *reckoner) least() int64 {
	f := r.f
	for v := range r.own {
		r.sum[v] = resized(r.sum[v], len(r.own[v]))
		copy(r.sum[v], r.own[v])
	}
	var total int64
	for k := len(f.order) - 1; k >= 0; k-- {
		v := f.order[k]
		p := f.parent[v]
		if p < 0 && f.tied[v] {
			continue
		}
		if p < 0 {
			best, at := endless, 0
			for i, c := range r.sum[v] {
				if c < best {
					best, at = c, i
				}
			}
			if best >= endless {
				return endless
			}
			total += best
			r.x[v] = r.lo[v] + at
			continue
		}
		n := len(r.own[p])
		r.up[v], r.pick[v] = resized(r.up[v], n), resized(r.pick[v], n)
		r.slide(r.sum[v], r.lo[v], r.up[v], r.pick[v], r.lo[p], f.near[v], f.far[v])
		for i, c := range r.up[v] {
			if c >= endless || r.sum[p][i] >= endless {
				r.sum[p][i] = endless
			} else {
				r.sum[p][i] += c
			}
		}
	}
	if f.turns != nil {
		best := f.turns.least(r)
		if best >= endless {
			return endless
		}
		total += best
	}
	for _, v := range f.order {
		if p := f.parent[v]; p >= 0 {
			r.x[v] = r.lo[v] + int(r.pick[v][r.x[p]-r.lo[p]])
		}
	}
	return total
}

// slide fills to[j], for the time toLo+j, with the least of from over the times that lie between near and far
// after it, and pick with where in from that is.
func (r *reckoner) slide(from []int64, fromLo int, to []int64, pick []int32, toLo, near, far int) {
	r.queue = r.queue[:0]
	head, next := 0, 0
	for j := range to {
		t := toLo + j
		first, last := max(0, t+near-fromLo), min(len(from)-1, t+far-fromLo)
		if next < first {
			next = first
			r.queue, head = r.queue[:0], 0
		}
		for ; next <= last; next++ {
			for len(r.queue) > head && from[r.queue[len(r.queue)-1]] >= from[next] {
				r.queue = r.queue[:len(r.queue)-1]
			}
			r.queue = append(r.queue, int32(next))
		}
		for head < len(r.queue) && int(r.queue[head]) < first {
			head++
		}
		if head == len(r.queue) || first > last {
			to[j] = endless
			continue
		}
		to[j] = from[r.queue[head]]
		if pick != nil {
			pick[j] = r.queue[head]
		}
	}
}

// marginals reckons back from the roots to the leaves, after least: all[v][i] is the least cost of the whole tree
// of v with v at its time i.
func (r *reckoner) marginals() {
	f := r.f
	for v := range r.own {
		r.all[v] = resized(r.all[v], len(r.own[v]))
	}
	if f.turns != nil {
		f.turns.marginals(r)
	}
	for _, v := range f.order {
		p := f.parent[v]
		if p < 0 && f.tied[v] {
			continue
		}
		if p < 0 {
			copy(r.all[v], r.sum[v])
			continue
		}
		r.spare = resized(r.spare, len(r.all[p]))
		for i, c := range r.all[p] {
			if c >= endless {
				r.spare[i] = endless
			} else {
				r.spare[i] = c - r.up[v][i]
			}
		}
		r.slide(r.spare, r.lo[p], r.all[v], nil, r.lo[v], -f.far[v], -f.near[v])
		for i, c := range r.sum[v] {
			if c >= endless || r.all[v][i] >= endless {
				r.all[v][i] = endless
			} else {
				r.all[v][i] += c
			}
		}
	}
}
