package schedule

import (
	"slices"

	"example.org/maslin/internal/planner"
)

// mover moves all wanted bounds together, to find the wanted times next to the given one that work.
type mover struct {
	c       *compiled
	w       *planner.Watch
	shop    *planner.Shop
	net     *planner.Net // with an event for the wanted time
	event   int
	nominal int // its time when nothing moves
}

func (c *compiled) mover(w *planner.Watch, shop *planner.Shop) *mover {
	net, event, nominal := c.shifted()
	return &mover{c: c, w: w.Within(nearestWork), shop: shop, net: net, event: event, nominal: nominal}
}

// after is the nearest later wanted time, nil when none was found. Those of the conflict's remedies are tried first.
func (m *mover) after(k *Conflict) *Shift {
	var hints []int
	for _, r := range k.Members {
		if r.Wanted && r.Enough && r.Easing == Later {
			hints = append(hints, int(r.Change/m.c.grid))
		}
	}
	slices.Sort(hints)
	return m.find(1, hints)
}

// before is the nearest earlier wanted time, nil when none was found.
func (m *mover) before() *Shift { return m.find(-1, nil) }

// find looks for the nearest wanted time on one side. Allowing all times up to a distance makes the question
// monotone, whatever the wanted bounds are.
func (m *mover) find(sign int, hints []int) *Shift {
	first, surely := m.within(sign, m.c.limit).extreme(m.w, m.event, sign)
	if !surely {
		return nil // none on this side, or no time to look
	}
	free := sign * (first - m.nominal) // nothing is nearer even when nothing is shared
	found := -1
	try := func(x int) planner.Truth {
		x-- // distances are asked from 0, Least counts from 1
		switch {
		case found >= 0 && found <= x:
			return planner.Yes
		case x < free:
			return planner.No
		}
		where := &planner.Shop{Net: m.within(sign, x).net, Tasks: m.shop.Tasks, Pools: m.shop.Pools}
		times, t := where.Any(m.w.Within(questionWork))
		if t == planner.Yes {
			found = sign * (times[m.event] - m.nominal)
		}
		return t
	}
	for _, h := range hints {
		try(h + 1)
	}
	// The nearer the time, the sooner its question is settled.
	for step := 1; found < 0 && free+step < m.c.limit && !m.w.Over(); step *= 2 {
		try(free + step)
	}
	most := m.c.limit
	if found >= 0 {
		most = found
	}
	by, proven := planner.Least(most+1, try)
	if by == 0 {
		return nil
	}
	s := m.c.shift(m.nominal+sign*(by-1), m.nominal)
	s.Nearest = proven
	return s
}

// side is the network with the wanted time on one side of the given one.
type side struct{ net *planner.Net }

// within is the network in which the wanted time moves at most so far to one side.
func (m *mover) within(sign, most int) side {
	net := *m.net
	lo, hi := m.nominal, m.nominal+most
	if sign < 0 {
		lo, hi = m.nominal-most, m.nominal
	}
	net.Arcs = append(slices.Clone(net.Arcs),
		planner.Arc{From: 0, To: m.event, W: lo, Rule: structure},
		planner.Arc{From: m.event, To: 0, W: -hi, Rule: structure, Upper: true})
	return side{&net}
}

// extreme is the nearest time of the event when nothing is shared; false when there is none or the watch is over.
func (s side) extreme(w *planner.Watch, event, sign int) (int, bool) {
	times, _ := s.net.Earliest(w)
	if sign < 0 && times != nil {
		times, _, _ = s.net.Latest(w)
	}
	if times == nil {
		return 0, false
	}
	return times[event], true
}

func (c *compiled) shift(to, nominal int) *Shift {
	return &Shift{By: c.long(to - nominal), To: c.when(to)}
}

// shifted is the network in which all wanted bounds move together, with an event for the
// wanted time; nominal is that event's time when nothing moves.
func (c *compiled) shifted() (net *planner.Net, event, nominal int) {
	event = c.net.Events
	first := c.net.Arcs[c.wanted[0].arc]
	nominal = first.W
	if first.To == 0 {
		nominal = -first.W
	}
	for _, w := range c.wanted { // the last given time of the first bound: "by 12:30"
		if a := c.net.Arcs[w.arc]; w.bound == c.wanted[0].bound && a.To == 0 {
			nominal = -a.W
		}
	}
	net = &planner.Net{Events: event + 1, Limit: c.net.Limit, Holes: c.net.Holes}
	net.Arcs = append(net.Arcs, c.net.Arcs...)
	for _, w := range c.wanted {
		a := &net.Arcs[w.arc]
		if a.From == 0 {
			a.From, a.W = event, a.W-nominal
		} else {
			a.To, a.W = event, a.W+nominal
		}
	}
	net.Arcs = append(net.Arcs,
		planner.Arc{From: 0, To: event, W: 0, Rule: structure},
		planner.Arc{From: event, To: 0, W: -c.net.Limit, Rule: structure})
	return net, event, nominal
}
