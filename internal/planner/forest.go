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
	turns     *turns // tasks in turn whose nodes are roots; nil: there is none
	tied      []bool // nodes of the turns
}

// edge is a pair of nodes with the span of x[v] − x[u].
type edge struct{ u, v, near, far int }

// plant chooses the forest: pairs that leave each other least room first, because they say most.
func plant(m *model) *forest {
	edges := pairsOf(m)
	slices.SortStableFunc(edges, func(a, b edge) int { return a.room(m) - b.room(m) })
	f := &forest{parent: make([]int, m.n), near: make([]int, m.n), far: make([]int, m.n), turns: tie(m)}
	roots := f.turns.nodes()
	f.tied = make([]bool, m.n)
	for _, v := range roots {
		f.tied[v] = true
	}
	for v := range m.n {
		roots = append(roots, v)
	}
	// Each member of the turns is in a tree of its own.
	group, member := newGroups(m.n), slices.Clone(f.tied)
	next := make([][]edge, m.n)
	for _, e := range edges {
		a, b := group.find(e.u), group.find(e.v)
		if a != b && !(member[a] && member[b]) {
			group.join(a, b)
			member[group.find(a)] = member[a] || member[b]
			next[e.u] = append(next[e.u], e)
			next[e.v] = append(next[e.v], edge{e.v, e.u, -e.far, -e.near})
			continue
		}
		if e.near > none {
			f.leave(Arc{From: e.u, To: e.v, W: e.near})
		}
		if e.far < -none {
			f.leave(Arc{From: e.v, To: e.u, W: -e.far})
		}
	}
	seen := make([]bool, m.n)
	for _, root := range roots {
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

// leave leaves a difference out, for prices to enforce, unless the turns do.
func (f *forest) leave(a Arc) {
	if !f.turns.keeps(a) {
		f.loose = append(f.loose, a)
	}
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
