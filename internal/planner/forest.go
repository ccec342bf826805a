package planner

import "slices"

// A forest is the part of a network without cycles on which least costs are found exactly, whatever the cost of
// each time is: a node for each rigid group, and between two nodes the span in which their distance must lie.
//
// Differences that would close a cycle are left out of it; they are listed as loose, for prices to enforce.
type forest struct {
	order  []int // nodes, every parent before its children
	parent []int // by node; −1: a root
	// x[v] − x[parent] lies in [near, far]; far is -none when there is no upper limit, near −-none
	// when there is no lower one.
	near, far []int
	loose     []Arc
}

// edge is a pair of nodes with the span of x[v] − x[u].
type edge struct{ u, v, near, far int }

// plant chooses the forest: pairs that leave each other least room first, because they say most.
func plant(m *model) *forest {
	edges := pairsOf(m)
	slices.SortStableFunc(edges, func(a, b edge) int { return a.room(m) - b.room(m) })
	f := &forest{parent: make([]int, m.n), near: make([]int, m.n), far: make([]int, m.n)}
	group := newGroups(m.n)
	next := make([][]edge, m.n)
	for _, e := range edges {
		if group.join(e.u, e.v) {
			next[e.u] = append(next[e.u], e)
			next[e.v] = append(next[e.v], edge{e.v, e.u, -e.far, -e.near})
			continue
		}
		if e.near > none {
			f.loose = append(f.loose, Arc{From: e.u, To: e.v, W: e.near})
		}
		if e.far < -none {
			f.loose = append(f.loose, Arc{From: e.v, To: e.u, W: -e.far})
		}
	}
	seen := make([]bool, m.n)
	for root := range m.n {
		if seen[root] {
			continue
		}
		seen[root] = true
		f.parent[root] = -1
		f.order = append(f.order, root)
		for k := len(f.order) - 1; k < len(f.order); k++ {
			u := f.order[k]
			for _, e := range next[u] {
				if !seen[e.v] {
					seen[e.v] = true
					f.parent[e.v], f.near[e.v], f.far[e.v] = u, e.near, e.far
					f.order = append(f.order, e.v)
				}
			}
		}
	}
	return f
}

// pairsOf joins the arcs there and back between two nodes, in the order of the arcs.
func pairsOf(m *model) []edge {
	var edges []edge
	at := map[[2]int]int{}
	for _, a := range m.arcs {
		k := [2]int{min(a.From, a.To), max(a.From, a.To)}
		i, ok := at[k]
		if !ok {
			i = len(edges)
			at[k] = i
			edges = append(edges, edge{k[0], k[1], none, -none})
		}
		if e := &edges[i]; a.From == e.u {
			e.near = max(e.near, a.W)
		} else {
			e.far = min(e.far, -a.W)
		}
	}
	return edges
}

// room is how much the distance of two nodes can vary.
func (e edge) room(m *model) int {
	near, far := max(e.near, m.lo[e.v]-m.hi[e.u]), min(e.far, m.hi[e.v]-m.lo[e.u])
	return max(0, far-near)
}
