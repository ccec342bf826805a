package schedule

import (
	"slices"

	"example.org/maslin/internal/planner"
)

// shop is the network with what its steps share.
func (c *compiled) shop() *planner.Shop {
	s := &planner.Shop{Net: c.net, Tasks: len(c.in.Steps)}
	programs := map[string]int{"": 0}
	for k, r := range c.in.Resources {
		p := planner.Pool{Capacity: r.Capacity, Changeover: int(r.Changeover / c.grid), Rule: c.capacity[k]}
		p.Closed = c.absences[k]
		for i, step := range c.in.Steps {
			for _, n := range step.Needs {
				if n.Resource != r.ID {
					continue
				}
				id, ok := programs[n.Program]
				if !ok {
					id = len(programs)
					programs[n.Program] = id
				}
				p.Uses = append(p.Uses, planner.Use{Task: i, Amount: n.Amount, Program: id})
			}
		}
		for _, ch := range r.Changes {
			from, known := programs[ch.From]
			to, both := programs[ch.To]
			if known && both { // else no step has such a program
				if p.Setups == nil {
					p.Setups = map[[2]int]int{}
				}
				p.Setups[[2]int{from, to}] = int(ch.Takes / c.grid)
			}
		}
		short := p.Capacity > 0 || slices.ContainsFunc(p.Uses, func(u planner.Use) bool { return u.Program != 0 })
		if short && len(p.Uses) > 1 {
			s.Pools = append(s.Pools, p)
		}
	}
	return s
}

// objective is what an aim costs, in points.
func (c *compiled) objective(a aim) planner.Cost {
	cost := planner.Cost{Linear: make([]int64, c.net.Events)}
	switch a {
	case latest, earliest:
		sign := int64(1)
		if a == latest {
			sign = -1
		}
		for v := 1; v < c.net.Events; v++ {
			cost.Linear[v] = sign
		}
		return cost
	}
	minutes := int64(c.grid / minute)
	for i, s := range c.in.Steps {
		k := int64(s.PerMinute) * minutes
		cost.Linear[planner.EndOf(i)] += k
		cost.Linear[planner.StartOf(i)] -= k
		for _, n := range s.Needs {
			if points := c.awkward(c.res[n.Resource], minutes); len(points) > 0 {
				cost.Curves = append(cost.Curves,
					planner.Curve{Event: planner.EndOf(i), Sign: 1, Points: points},
					planner.Curve{Event: planner.StartOf(i), Sign: -1, Points: points})
			}
		}
	}
	for _, b := range c.in.Bounds {
		event := eventOf(c.index[b.Step], b.Edge)
		if k := int64(b.EarlyPerMinute) * minutes; k != 0 {
			cost.Linear[event] -= k
			cost.Constant += k * int64(c.floor(b.Latest))
		}
		if k := int64(b.LatePerMinute) * minutes; k != 0 {
			cost.Linear[event] += k
			cost.Constant -= k * int64(c.ceil(b.Earliest))
		}
	}
	return cost
}

// awkward is the cost of using a resource from the anchor up to a time, as a curve.
func (c *compiled) awkward(k int, minutes int64) []planner.Point {
	type change struct {
		t   int
		per int64
	}
	var changes []change
	for _, a := range c.in.Resources[k].Awkward {
		if a.PerMinute != 0 {
			per := int64(a.PerMinute) * minutes
			changes = append(changes, change{c.floor(a.From), per}, change{c.floor(a.To), -per})
		}
	}
	slices.SortStableFunc(changes, func(a, b change) int { return a.t - b.t })
	var points []planner.Point
	var v, per int64
	for i, ch := range changes {
		if i > 0 {
			v += per * int64(ch.t-changes[i-1].t)
		}
		per += ch.per
		if n := len(points); n > 0 && points[n-1].T == ch.t {
			continue
		}
		points = append(points, planner.Point{T: ch.t, V: v})
	}
	return points
}
