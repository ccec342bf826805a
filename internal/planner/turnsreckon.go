package planner

import "math/bits"

// order finds what must come before what in the state, and the sets that can come first.
func (c *turns) order(r *reckoner, s *state) {
	last := none
	c.first = -none
	for i, k := range c.links {
		c.first = min(c.first, r.lo[k.node]+k.off)
		last = max(last, r.hi[k.node]+k.off+k.long)
		c.before[i] = 0
		for j := range c.links {
			if i != j {
				if can, _ := s.before(k.task, c.links[j].task, 0); !can {
					c.before[i] |= 1 << j
				}
			}
		}
	}
	c.slots = last - c.first + 1
	for set := range c.open {
		c.open[set] = true
		for rest := uint32(set); rest != 0; rest &= rest - 1 {
			if c.before[bits.TrailingZeros32(rest)]&^uint32(set) != 0 {
				c.open[set] = false
				break
			}
		}
	}
	n := len(c.open) * c.slots
	c.fore, c.back = resized(c.fore, n), resized(c.back, n)
}

// row is the row of a set.
func (c *turns) row(of []int64, set int) []int64 { return of[set*c.slots : set*c.slots+c.slots] }

// costs are those of a member, from a slot on at which it starts.
func (c *turns) costs(r *reckoner, k *member) (costs []int64, at int) {
	return r.sum[k.node], r.lo[k.node] + k.off - c.first
}

// ends fills the rows of the empty set: what it costs to enter by a slot, and to exit from one on.
func (c *turns) ends(r *reckoner) {
	in, out := c.row(c.fore, 0), c.row(c.back, 0)
	clear(in)
	clear(out)
	if c.enter != nil {
		fill(in)
		costs, at := c.costs(r, c.enter)
		for i, cost := range costs {
			if t := max(0, at+i); t < len(in) {
				in[t] = min(in[t], cost)
			}
		}
		rising(in)
	}
	if c.exit != nil {
		fill(out)
		costs, at := c.costs(r, c.exit)
		for i, cost := range costs {
			if t := min(len(out)-1, at+i); t >= 0 {
				out[t] = min(out[t], cost)
			}
		}
		falling(out)
	}
}

// beyond is above every sum of costs, and below every sum of costs and of what is endless: costs can be negative.
const beyond = endless / 2

// fill makes a row endless.
func fill(row []int64) {
	for t := range row {
		row[t] = endless
	}
}

// rising makes each entry of a row the least of those up to it.
func rising(row []int64) {
	for t := 1; t < len(row); t++ {
		row[t] = min(row[t], row[t-1])
	}
}

// falling makes each entry of a row the least of those from it on.
func falling(row []int64) {
	for t := len(row) - 2; t >= 0; t-- {
		row[t] = min(row[t], row[t+1])
	}
}

// least reckons the rows of sets that come first, and puts the nodes at times of least cost; endless when there is no
// order.
func (c *turns) least(r *reckoner) int64 {
	c.ends(r)
	for set := 1; set < len(c.open); set++ {
		if !c.open[set] {
			continue
		}
		row := c.row(c.fore, set)
		fill(row)
		for rest := uint32(set); rest != 0; rest &= rest - 1 {
			i := bits.TrailingZeros32(rest)
			if !c.open[set&^(1<<i)] {
				continue
			}
			costs, at := c.costs(r, &c.links[i])
			end := at + c.links[i].long
			prev, to := c.row(c.fore, set&^(1<<i))[at:at+len(costs)], row[end:end+len(costs)]
			for k, cost := range costs {
				if sum := prev[k] + cost; sum < to[k] {
					to[k] = sum
				}
			}
		}
		rising(row)
	}
	best, at := endless, 0
	out := c.row(c.back, 0)
	for t, cost := range c.row(c.fore, len(c.open)-1) {
		if cost += out[t]; cost < best {
			best, at = cost, t
		}
	}
	if best >= beyond {
		return endless
	}
	c.trace(r, at)
	return best
}

// trace goes back along the rows, from a slot on, to the times they come from.
func (c *turns) trace(r *reckoner, t int) {
	if c.exit != nil {
		costs, at := c.costs(r, c.exit)
		r.x[c.exit.node] = r.lo[c.exit.node] + cheapest(costs, t-at, len(costs))
	}
	for set := len(c.open) - 1; set != 0; {
		row := c.row(c.fore, set)
		for t > 0 && row[t-1] == row[t] {
			t--
		}
		for rest := uint32(set); rest != 0; rest &= rest - 1 {
			i := bits.TrailingZeros32(rest)
			prev := set &^ (1 << i)
			costs, at := c.costs(r, &c.links[i])
			k := t - c.links[i].long - at
			if c.open[prev] && k >= 0 && k < len(costs) && c.row(c.fore, prev)[at+k]+costs[k] == row[t] {
				v := c.links[i].node
				r.x[v] = r.lo[v] + k
				set, t = prev, at+k
				break
			}
		}
	}
	if c.enter != nil {
		costs, at := c.costs(r, c.enter)
		r.x[c.enter.node] = r.lo[c.enter.node] + cheapest(costs, 0, t+1-at)
	}
}

// cheapest is where in a row the least cost between two places is.
func cheapest(row []int64, from, to int) int {
	at := max(0, min(from, len(row)-1))
	for k := at + 1; k < min(to, len(row)); k++ {
		if row[k] < row[at] {
			at = k
		}
	}
	return at
}

// marginals fills, after least, the least cost of all members for each time of each.
func (c *turns) marginals(r *reckoner) {
	full := len(c.open) - 1
	for _, v := range c.nodes() {
		fill(r.all[v])
	}
	for set := 1; set <= full; set++ {
		// The set comes last: what is left must be able to come first.
		if !c.open[full&^set] {
			continue
		}
		row := c.row(c.back, set)
		fill(row)
		for rest := uint32(set); rest != 0; rest &= rest - 1 {
			i := bits.TrailingZeros32(rest)
			after := set &^ (1 << i)
			if !c.open[full&^after] {
				continue
			}
			costs, at := c.costs(r, &c.links[i])
			end := at + c.links[i].long
			next, prev := c.row(c.back, after)[end:end+len(costs)], c.row(c.fore, full&^set)[at:at+len(costs)]
			to, all := row[at:at+len(costs)], r.all[c.links[i].node]
			for k, cost := range costs {
				sum := next[k] + cost
				to[k] = min(to[k], sum)
				all[k] = min(all[k], sum+prev[k])
			}
		}
		falling(row)
	}
	if c.enter != nil {
		row := c.row(c.back, full)
		costs, at := c.costs(r, c.enter)
		for i, cost := range costs {
			if t := max(0, at+i); t < len(row) {
				r.all[c.enter.node][i] = row[t] + cost
			}
		}
	}
	if c.exit != nil {
		row := c.row(c.fore, full)
		costs, at := c.costs(r, c.exit)
		for i, cost := range costs {
			if t := min(len(row)-1, at+i); t >= 0 {
				r.all[c.exit.node][i] = row[t] + cost
			}
		}
	}
	for _, v := range c.nodes() {
		for i, cost := range r.all[v] {
			if cost >= beyond {
				r.all[v][i] = endless
			}
		}
	}
}
