package planner

import (
	"math"
	"slices"
)

const (
	freedNodes  = 200 // looked at while some breads are free
	mostPasses  = 4
	mostInPairs = 12 // breads; of more, pairs would take too long
)

// improve looks for better timetables near the best one: it frees the events of one bread, then of two, and leaves the
// others where they are. A bread is what hangs together by rules, whatever is shared. Method: large neighborhood
// search. Source: Shaw, "Using constraint programming and local search methods to solve vehicle routing problems",
// CP 1998.
func (r *search) improve() {
	breads := r.m.breads()
	if r.times == nil || breads < 2 {
		return
	}
	lost, p, here := r.lost, r.p, r.open.here
	r.p = nil
	for range mostPasses {
		before := r.best
		for i := range breads {
			r.free(i, i)
		}
		for i := 0; i < breads && breads <= mostInPairs; i++ {
			for j := range i {
				r.free(i, j)
			}
		}
		if r.best == before || r.over {
			break
		}
	}
	r.lost, r.p, r.open.here = lost, p, here
}

// free searches with all events fixed but those of two breads, which may be the same.
func (r *search) free(i, j int) {
	if r.stopped() {
		return
	}
	mark, ok := r.s.mark(), true
	for v, bread := range r.m.bread {
		if ok && bread >= 0 && bread != i && bread != j {
			ok = r.s.raise(v, r.found[v]) && r.s.lower(v, r.found[v])
		}
	}
	r.until = r.nodes + freedNodes
	if ok && r.s.propagate() {
		r.visit(math.MinInt64)
	}
	r.until = 0
	r.undo(mark)
}

// mostHubs is how many nodes may belong to no bread.
const mostHubs = 4

// breads numbers, for each node, what hangs together by arcs, and returns how many there are. The nodes with most
// neighbors, such as the beginning and the end of an oven's day, belong to none (−1) where everything hangs together
// by them.
func (m *model) breads() int {
	if m.bread != nil {
		return m.nbreads
	}
	m.bread = make([]int, m.n)
	byDegree := m.byDegree()
	for hubs := 0; hubs <= min(mostHubs, m.n); hubs++ {
		for v := range m.bread {
			m.bread[v] = 0
		}
		for _, v := range byDegree[:hubs] {
			m.bread[v] = -1
		}
		if m.nbreads = m.split(); m.nbreads > 1 && m.largest() <= m.n/2 {
			break
		}
	}
	return m.nbreads
}

// byDegree lists the nodes by their number of arcs and splits, most first.
func (m *model) byDegree() []int {
	degree, nodes := make([]int, m.n), make([]int, m.n)
	for v := range nodes {
		nodes[v] = v
	}
	for _, a := range m.arcs {
		degree[a.From]++
		degree[a.To]++
	}
	slices.SortStableFunc(nodes, func(a, b int) int { return degree[b] - degree[a] })
	return nodes
}

// split numbers what hangs together among the nodes that belong to a bread.
func (m *model) split() int {
	group := newGroups(m.n)
	join := func(a, b int) {
		if m.bread[a] >= 0 && m.bread[b] >= 0 {
			group.join(a, b)
		}
	}
	for _, a := range m.arcs {
		join(a.From, a.To)
	}
	for _, s := range m.splits {
		join(s.e, s.s)
	}
	number := map[int]int{}
	for v := range m.n {
		if m.bread[v] < 0 {
			continue
		}
		g := group.find(v)
		if _, ok := number[g]; !ok {
			number[g] = len(number)
		}
		m.bread[v] = number[g]
	}
	return len(number)
}

// largest is the number of nodes of the largest bread.
func (m *model) largest() (most int) {
	count := make([]int, m.nbreads)
	for _, b := range m.bread {
		if b >= 0 {
			count[b]++
			most = max(most, count[b])
		}
	}
	return most
}

// groups joins numbers into groups.
type groups []int

func newGroups(n int) groups {
	g := make(groups, n)
	for v := range g {
		g[v] = v
	}
	return g
}

func (g groups) find(v int) int {
	for g[v] != v {
		g[v] = g[g[v]]
		v = g[v]
	}
	return v
}

// join reports whether two numbers were in different groups, which are now one.
func (g groups) join(a, b int) bool {
	a, b = g.find(a), g.find(b)
	g[a] = b
	return a != b
}
