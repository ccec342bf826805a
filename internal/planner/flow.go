package planner

// flow finds the minimum of Σ f_v(x_v) subject to x_to − x_from ≥ w on its arcs, where every
// f_v is convex and piecewise linear. The dual is a flow: the flow into a node less the flow
// out of it is a slope of its f. Nodes are numbered from 0; node n is the origin, whose x is
// 0 after solve.
//
// The method is successive shortest paths with potentials (the x are the potentials), started
// from any x that satisfies the arcs and from any flow, so that a small change of the problem
// costs a small repair. Source: Ahuja, Magnanti and Orlin, Network Flows (1993), sections 9.7
// and 14.
type flow struct {
	n    int
	from []int32
	to   []int32
	w    []int64
	cap  []int64 // endless for rules, the change of slope for bends of a cost
	y    []int64 // the flow
	adj  [][]int32
	// base is the slope of each node's cost left of all its bends.
	base []int64
	x    []int64

	excess []int64
	dist   []int64
	via    []int32 // arc by which a node was reached, coded 2·arc or 2·arc+1 (backward)
	done   []bool
	heap   heap
	seen   []int32
	watch  *Watch // once it is over x is no optimum
}

func newFlow(w *Watch, n int) *flow {
	f := &flow{watch: w, n: n}
	f.adj = make([][]int32, n+1)
	f.base = make([]int64, n+1)
	f.x = make([]int64, n+1)
	f.excess = make([]int64, n+1)
	f.dist = make([]int64, n+1)
	f.via = make([]int32, n+1)
	f.done = make([]bool, n+1)
	return f
}

func (f *flow) add(from, to int, w, capacity int64) int {
	id := len(f.from)
	f.from = append(f.from, int32(from))
	f.to = append(f.to, int32(to))
	f.w = append(f.w, w)
	f.cap = append(f.cap, capacity)
	f.y = append(f.y, 0)
	f.adj[from] = append(f.adj[from], int32(2*id))
	f.adj[to] = append(f.adj[to], int32(2*id+1))
	return id
}

// drop removes the arc added last.
func (f *flow) drop() {
	id := len(f.from) - 1
	from, to := f.from[id], f.to[id]
	f.adj[from] = f.adj[from][:len(f.adj[from])-1]
	f.adj[to] = f.adj[to][:len(f.adj[to])-1]
	f.from, f.to, f.w, f.cap, f.y = f.from[:id], f.to[:id], f.w[:id], f.cap[:id], f.y[:id]
}

// solve repairs x and y to an optimum, unless the watch is over. x must satisfy all arcs of
// endless capacity.
func (f *flow) solve() {
	n := f.n
	var all int64
	for v := 0; v < n; v++ {
		f.excess[v] = -f.base[v]
		all += f.base[v]
	}
	f.excess[n] = all
	for a := range f.from {
		u, v := f.from[a], f.to[a]
		r := f.x[v] - f.x[u] - f.w[a]
		switch {
		case r > 0:
			f.y[a] = 0
		case r < 0:
			f.y[a] = f.cap[a] // a bend already passed
		case f.y[a] > f.cap[a]:
			f.y[a] = f.cap[a]
		}
		if y := f.y[a]; y != 0 {
			f.excess[v] += y
			f.excess[u] -= y
		}
	}
	if f.watch.spend(len(f.from)) {
		return
	}
	for f.augment() {
	}
	if z := f.x[n]; z != 0 {
		for v := range f.x {
			f.x[v] -= z
		}
	}
}

// augment sends flow along a shortest path from some node with too much to one with too
// little; false when all balances are right or the watch is over.
func (f *flow) augment() bool {
	f.heap = f.heap[:0]
	f.watch.spend(f.n)
	for v := 0; v <= f.n; v++ {
		f.dist[v], f.done[v] = endless, false
		if f.excess[v] > 0 {
			f.dist[v], f.via[v] = 0, -1
			f.heap = append(f.heap, item{0, int32(v)}) // equal keys in order are a heap
		}
	}
	if len(f.heap) == 0 {
		return false
	}
	f.seen = f.seen[:0]
	sink := int32(-1)
	for len(f.heap) > 0 {
		it := f.heap.pop()
		v := it.v
		if f.done[v] || it.key > f.dist[v] {
			continue
		}
		if f.excess[v] < 0 {
			sink = v
			break
		}
		f.done[v] = true
		f.seen = append(f.seen, v)
		if f.watch.spend(4 + len(f.adj[v])) {
			return false
		}
		for _, code := range f.adj[v] {
			a := code >> 1
			var u int32
			var r int64
			if code&1 == 0 {
				if f.y[a] >= f.cap[a] {
					continue
				}
				u = f.to[a]
				r = f.x[u] - f.x[v] - f.w[a]
			} else {
				if f.y[a] <= 0 {
					continue
				}
				u = f.from[a]
				r = f.x[u] - f.x[v] + f.w[a]
			}
			if f.done[u] {
				continue
			}
			if d := it.key + r; d < f.dist[u] {
				f.dist[u], f.via[u] = d, code
				f.heap.push(item{d, u})
			}
		}
	}
	if sink < 0 {
		return false // cannot happen: the origin reaches every node
	}
	f.send(sink)
	for _, v := range f.seen {
		f.x[v] += f.dist[sink] - f.dist[v]
	}
	return true
}

// send sends as much as fits along the path found to sink.
func (f *flow) send(sink int32) {
	amount := -f.excess[sink]
	v := sink
	for f.via[v] >= 0 && f.dist[v] >= 0 {
		code := f.via[v]
		a := code >> 1
		if code&1 == 0 {
			amount = min(amount, f.cap[a]-f.y[a])
			v = f.from[a]
		} else {
			amount = min(amount, f.y[a])
			v = f.to[a]
		}
	}
	amount = min(amount, f.excess[v])
	f.excess[v] -= amount
	f.excess[sink] += amount
	for v = sink; f.via[v] >= 0; {
		code := f.via[v]
		a := code >> 1
		if code&1 == 0 {
			f.y[a] += amount
			v = f.from[a]
		} else {
			f.y[a] -= amount
			v = f.to[a]
		}
	}
}
