package planner

import "slices"

// Use says that a task needs an amount of a pool, set to a program (0: any).
type Use struct {
	Task, Amount, Program int
}

// Pool is a shared resource; Capacity 0 is never short.
type Pool struct {
	Capacity   int
	Changeover int // between the end of a task and the start of one that cannot use the pool with it
	// Setups are changeovers from a program to another, instead of Changeover; they need not be the same both ways.
	Setups map[[2]int]int
	Uses   []Use
	Rule   int // the rule of its capacity
	// Closed lists spans in which no task that uses the pool can lie; they only sharpen the
	// reasoning about how much there is, the holes of the network are what keeps tasks out.
	Closed []Closing
}

// Closing is a span in which a pool is closed, because of Rule.
type Closing struct{ From, To, Rule int }

// apart reports whether two tasks can never use the pool at the same time.
func (p *Pool) apart(a, b Use) bool {
	return p.Capacity > 0 && a.Amount+b.Amount > p.Capacity || a.Program != 0 && b.Program != 0 && a.Program != b.Program
}

// setup is the time from the end of a to the start of b, when they cannot use the pool at the same time.
func (p *Pool) setup(a, b Use) int {
	if s, ok := p.Setups[[2]int{a.Program, b.Program}]; ok {
		return s
	}
	return p.Changeover
}

// longest is the longest of all changeovers.
func (p *Pool) longest() int {
	most := p.Changeover
	for _, s := range p.Setups {
		most = max(most, s)
	}
	return most
}

// Curve is a piecewise linear cost of one event: Sign times the value at its time. The value
// is constant before the first and after the last point.
type Curve struct {
	Event  int
	Sign   int64
	Points []Point
}

// Point is a bend of a curve.
type Point struct {
	T int
	V int64
}

func valueAt(points []Point, t int) int64 {
	if len(points) == 0 {
		return 0
	}
	k, _ := slices.BinarySearchFunc(points, t, func(p Point, t int) int { return p.T - t })
	switch {
	case k == 0:
		return points[0].V
	case k == len(points):
		return points[k-1].V
	}
	a, b := points[k-1], points[k]
	return a.V + (b.V-a.V)/int64(b.T-a.T)*int64(t-a.T)
}

// Cost is what a timetable costs: Constant + Σ Linear[event]·x + Σ curves. The slopes of the
// curves are whole numbers.
type Cost struct {
	Constant int64
	Linear   []int64 // by event
	Curves   []Curve
}

// Of is the cost of times.
func (c Cost) Of(times []int) int64 {
	sum := c.Constant
	for v, k := range c.Linear {
		sum += k * int64(times[v])
	}
	for _, k := range c.Curves {
		sum += k.Sign * valueAt(k.Points, times[k.Event])
	}
	return sum
}

// Shop is a network with shared pools.
type Shop struct {
	Net   *Net
	Tasks int
	Pools []Pool
}

// place is where an event is: a node and an offset to its time.
type place struct{ node, off int }

type gap struct{ a, b int } // x ≤ a or x ≥ b

// split says: x[e] ≤ a or x[s] ≥ b, for two nodes.
type split struct{ e, a, s, b int }

// pair is two tasks that cannot overlap: i ends, plus ij, before j starts, or j ends, plus ji, before i starts.
type pair struct {
	i, j   int
	ij, ji int
}

// crowd is a pool in which more than pairs can be short.
type crowd struct {
	cap  int
	uses []Use
}

// model is a shop with rigid groups of events merged into nodes.
type model struct {
	n        int // nodes
	place    []place
	lo, hi   []int
	arcs     []Arc          // between nodes
	arcOf    map[[2]int]int // the arc from one node to another
	gaps     [][]gap
	splits   []split
	splitsOf [][]int
	pairs    []pair
	crowds   []crowd
	budgets  []budget
	bread    []int // of each node, which bread it belongs to; nil until somebody asks
	nbreads  int
}

func (m *model) start(task int) place { return m.place[StartOf(task)] }
func (m *model) end(task int) place   { return m.place[EndOf(task)] }

// build merges events at fixed distances; the network must be feasible, with earliest and
// latest solutions lo and hi. It returns nil when the watch is over.
func build(w *Watch, s *Shop, lo, hi []int) *model {
	n := s.Net
	m := &model{place: make([]place, n.Events)}
	find := rigid(n)
	number := map[int]int{}
	for v := 1; v < n.Events; v++ {
		r, o := find(v)
		k, ok := number[r]
		if !ok {
			k = m.n
			number[r] = k
			m.n++
			m.lo = append(m.lo, none)
			m.hi = append(m.hi, -none)
		}
		m.place[v] = place{k, o}
		m.lo[k] = max(m.lo[k], lo[v]-o)
		m.hi[k] = min(m.hi[k], hi[v]-o)
	}
	m.place[0] = place{-1, 0}
	m.mergeArcs(n)
	m.mergeHoles(n)
	if w.spend(8*(len(n.Arcs)+len(n.Holes))) || !m.share(w, s) {
		return nil
	}
	return m
}

// rigid joins events at fixed distances; find says for an event which one stands for its group
// and how much later than that one it is.
func rigid(n *Net) (find func(v int) (int, int)) {
	widest := map[[2]int]int{}
	for _, a := range n.Arcs {
		if a.From == a.To {
			continue
		}
		k := [2]int{a.From, a.To}
		if w, ok := widest[k]; !ok || a.W > w {
			widest[k] = a.W
		}
	}
	root := make([]int, n.Events)
	off := make([]int, n.Events) // x[v] = x[root[v]] + off[v]
	for v := range root {
		root[v] = v
	}
	find = func(v int) (int, int) {
		if root[v] == v {
			return v, 0
		}
		r, o := find(root[v])
		off[v] += o
		root[v] = r
		return r, off[v]
	}
	for _, a := range n.Arcs { // in the order given, so that the result is the same every time
		if a.From == 0 || a.To == 0 || a.From == a.To {
			continue
		}
		w := widest[[2]int{a.From, a.To}]
		if back, ok := widest[[2]int{a.To, a.From}]; !ok || back != -w {
			continue
		}
		ru, ou := find(a.From)
		rv, ov := find(a.To)
		if ru != rv {
			root[rv] = ru
			off[rv] = ou + w - ov
		}
	}
	return find
}

func (m *model) mergeArcs(n *Net) {
	m.arcOf = map[[2]int]int{}
	for _, a := range n.Arcs {
		if a.From == 0 || a.To == 0 {
			continue // in lo and hi
		}
		u, v := m.place[a.From], m.place[a.To]
		if u.node == v.node {
			continue
		}
		w := a.W + u.off - v.off
		k := [2]int{u.node, v.node}
		if i, ok := m.arcOf[k]; ok {
			m.arcs[i].W = max(m.arcs[i].W, w)
			continue
		}
		m.arcOf[k] = len(m.arcs)
		m.arcs = append(m.arcs, Arc{From: u.node, To: v.node, W: w})
	}
}

func (m *model) mergeHoles(n *Net) {
	m.gaps = make([][]gap, m.n)
	m.splitsOf = make([][]int, m.n)
	for _, h := range n.Holes {
		s, e := m.start(h.Task), m.end(h.Task)
		a, b := h.From-e.off, h.To-s.off
		if s.node == e.node {
			if b-a > 1 {
				m.gaps[s.node] = append(m.gaps[s.node], gap{a, b})
			}
			continue
		}
		m.splitsOf[e.node] = append(m.splitsOf[e.node], len(m.splits))
		m.splitsOf[s.node] = append(m.splitsOf[s.node], len(m.splits))
		m.splits = append(m.splits, split{e.node, a, s.node, b})
	}
	for v, g := range m.gaps {
		slices.SortFunc(g, func(x, y gap) int {
			if x.a != y.a {
				return x.a - y.a
			}
			return x.b - y.b
		})
		var out []gap
		for _, k := range g {
			if l := len(out) - 1; l >= 0 && k.a < out[l].b {
				out[l].b = max(out[l].b, k.b)
			} else {
				out = append(out, k)
			}
		}
		m.gaps[v] = out
	}
}

// closed joins the closed spans of a pool, in order.
func (p *Pool) closed() [][2]int {
	var spans [][2]int
	for _, c := range p.Closed {
		spans = append(spans, [2]int{c.From, c.To})
	}
	return joined(spans)
}

// share finds the pairs and crowds that can be short of something; false when the watch is over.
func (m *model) share(w *Watch, s *Shop) bool {
	known := map[[2]int]int{} // the pair of two tasks
	for _, p := range s.Pools {
		var uses []Use
		for _, u := range p.Uses {
			a, b := m.start(u.Task), m.end(u.Task)
			if a.node == b.node && a.off == b.off {
				continue // takes no time
			}
			uses = append(uses, u)
		}
		free := false
		for x := range uses {
			for y := x + 1; y < len(uses); y++ {
				i, j := uses[x], uses[y]
				if w.spend(1) {
					return false
				}
				if !p.apart(i, j) {
					free = true
					continue
				}
				w.spend(20)
				if i.Task > j.Task {
					i, j = j, i
				}
				k := [2]int{i.Task, j.Task}
				at, ok := known[k]
				if !ok {
					at = len(m.pairs)
					known[k] = at
					m.pairs = append(m.pairs, pair{i: i.Task, j: j.Task})
				}
				both := &m.pairs[at]
				both.ij, both.ji = max(both.ij, p.setup(i, j)), max(both.ji, p.setup(j, i))
			}
		}
		if p.Capacity > 0 && len(uses) > 1 {
			g := budget{cap: p.Capacity, uses: uses}
			for _, u := range uses {
				g.length = append(g.length, m.least(u.Task))
			}
			g.closed, g.sizes = p.closed(), sizesOf(g.length)
			m.budgets = append(m.budgets, g)
			m.budgets = append(m.budgets, g.halved()...)
		}
		if free && p.Capacity > 0 {
			sum := 0
			for _, u := range uses {
				sum += u.Amount
			}
			if sum > p.Capacity {
				m.crowds = append(m.crowds, crowd{p.Capacity, uses})
			}
		}
	}
	return true
}

// least is the shortest a task can take.
func (m *model) least(task int) int {
	a, b := m.start(task), m.end(task)
	if a.node == b.node {
		return b.off - a.off
	}
	if i, ok := m.arcOf[[2]int{a.node, b.node}]; ok {
		return max(0, m.arcs[i].W+b.off-a.off)
	}
	return 0
}
