package planner

import (
	"slices"
)

// Turns are tasks of which no two can overlap, each the root of a tree of the forest. In what order and when they
// follow each other at least cost is found exactly, whatever the cost of each at each time, so that the bound knows of
// them what prices alone cannot say: that half of one and half of another do not make one. A node that comes before all
// of them, such as the lighting of the oven, and one that comes after them are part of it.
//
// Method: dynamic programming over sets of tasks. Source: Held and Karp, "A dynamic programming approach to sequencing
// problems", Journal of the SIAM 10 (1962); as the part of a relaxation that is kept exact, Guignard and Kim,
// "Lagrangean decomposition", Mathematical Programming 39 (1987).
type turns struct {
	links       []member
	enter, exit *member // nil: there is none
	span        int     // the most slots that a row can have

	first, slots int     // of the rows: from the earliest start on
	fore, back   []int64 // least costs of a set ended by, and begun not before, a slot; one row for each set
	before       []uint32
	open         []bool // sets that can come first
}

// member is a task of turns. A member that enters or exits takes no time.
type member struct {
	task, node int
	off        int // its start after the time of its node
	long       int // how long it keeps what they share, the least changeover included
}

const (
	mostLinks = 10      // members
	mostCells = 1 << 18 // entries of the rows
)

// tie finds the turns that keep longest what its tasks share.
func tie(m *model) (best *turns) {
	for k := range m.budgets {
		if tasks := m.budgets[k].clique(); len(tasks) > 1 {
			if c := m.link(tasks); c.busy() > best.busy() {
				best = c
			}
		}
	}
	return best
}

// link makes turns of tasks of a clique: of each bread the one that lasts longest. Nil when there is nothing to put in
// order.
func (m *model) link(tasks []int) *turns {
	if m.breads() < 2 {
		return nil
	}
	tasks = slices.Clone(tasks)
	slices.SortStableFunc(tasks, func(a, b int) int { return m.least(b) - m.least(a) })
	from, to, changeover := -none, none, -none
	for _, i := range tasks {
		a := m.start(i)
		from, to = min(from, m.lo[a.node]+a.off), max(to, m.hi[a.node]+a.off+m.least(i))
	}
	for _, p := range m.pairs {
		if slices.Contains(tasks, p.i) && slices.Contains(tasks, p.j) {
			changeover = min(changeover, p.ij, p.ji)
		}
	}
	if changeover == -none {
		return nil
	}
	c := &turns{span: to - from + changeover + 1}
	taken := map[int]bool{}
	for _, task := range tasks {
		at, n := m.start(task), len(c.links)
		bread := m.bread[at.node]
		if bread < 0 || taken[bread] || m.least(task) == 0 || n == mostLinks || c.span<<(n+1) > mostCells {
			continue
		}
		taken[bread] = true
		c.links = append(c.links, member{task, at.node, at.off, m.least(task) + changeover})
	}
	n := len(c.links)
	if n < 2 {
		return nil
	}
	c.before, c.open = make([]uint32, n), make([]bool, 1<<n)
	c.bracket(m)
	return c
}

// bracket finds a node that comes before all members, and one that comes after them.
func (c *turns) bracket(m *model) {
	for v := range m.n {
		if slices.ContainsFunc(c.links, func(k member) bool { return k.node == v }) {
			continue
		}
		enter, exit := -none, -none
		for _, k := range c.links {
			if in, ok := m.arcOf[[2]int{v, k.node}]; ok && enter != none {
				enter = min(enter, m.arcs[in].W+k.off)
			} else {
				enter = none
			}
			if out, ok := m.arcOf[[2]int{k.node, v}]; ok && exit != none {
				exit = min(exit, m.arcs[out].W-k.off-k.long)
			} else {
				exit = none
			}
		}
		if enter != none && c.enter == nil {
			c.enter = &member{node: v, off: enter}
		} else if exit != none && c.exit == nil {
			c.exit = &member{node: v, off: -exit}
		}
	}
}

// nodes are those of all members.
func (c *turns) nodes() (nodes []int) {
	if c == nil {
		return nil
	}
	for _, k := range c.links {
		nodes = append(nodes, k.node)
	}
	for _, k := range []*member{c.enter, c.exit} {
		if k != nil {
			nodes = append(nodes, k.node)
		}
	}
	return nodes
}

// keeps says that the order of the members implies a difference.
func (c *turns) keeps(a Arc) bool {
	if c == nil {
		return false
	}
	for _, k := range c.links {
		if c.enter != nil && a.From == c.enter.node && a.To == k.node && a.W+k.off <= c.enter.off ||
			c.exit != nil && a.To == c.exit.node && a.From == k.node && a.W-k.off-k.long <= -c.exit.off {
			return true
		}
	}
	return false
}

// busy is how long the members of turns keep what they share.
func (c *turns) busy() (sum int) {
	if c != nil {
		for _, k := range c.links {
			sum += k.long
		}
	}
	return sum
}

// work is how much reckoning the rows costs.
func (c *turns) work() int {
	if c == nil {
		return 0
	}
	return len(c.open) * len(c.links) / 2 * c.span
}
