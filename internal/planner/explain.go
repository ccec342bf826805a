package planner

import "slices"

// Earliest returns the least time of every event, which together are a solution, or a clash;
// neither when the watch is over.
func (n *Net) Earliest(w *Watch) ([]int, *Clash) {
	t, c := n.later().solve(w)
	if c != nil || w.Over() {
		return nil, c
	}
	return t.least, nil
}

// Latest returns the greatest time of every event, which together are a solution, and the
// rules that hold each event back, nearest first; or a clash; nothing when the watch is over.
func (n *Net) Latest(w *Watch) (times []int, drivers func(event int) []int, clash *Clash) {
	t, c := n.earlier().solve(w)
	if c != nil || w.Over() {
		return nil, nil, c
	}
	times = make([]int, n.Events)
	for v := 1; v < n.Events; v++ {
		times[v] = n.Limit - t.least[v]
	}
	return times, t.drivers, nil
}

// drivers are the rules of the pushes that brought an event to its time, nearest first.
func (t *trace) drivers(event int) (rules []int) {
	for p := t.last[event]; p >= 0; p = int(t.steps[p].prev) {
		if r := int(t.steps[p].rule); r >= 0 {
			rules = append(rules, r)
		}
	}
	return rules
}

// Cause says why an event cannot be later: because of Rule event From is where it is (0: the
// origin). Jumped says that the rule is an absence.
type Cause struct {
	From, Rule int
	Jumped     bool
}

// Causes returns, for the latest time of every event of a feasible network, its cause; and the
// latest times.
func (n *Net) Causes() (times []int, causes []Cause) {
	t, c := n.earlier().solve(nil)
	if c != nil {
		return nil, nil
	}
	times, causes = make([]int, n.Events), make([]Cause, n.Events)
	for v := 1; v < n.Events; v++ {
		times[v] = n.Limit - t.least[v]
		s := t.steps[t.last[v]]
		causes[v] = Cause{Rule: int(s.rule), Jumped: s.jumped}
		if s.prev >= 0 {
			causes[v].From = int(t.steps[s.prev].event)
		}
	}
	return times, causes
}

// Only returns the network with just the rules kept (and its structure).
func (n *Net) Only(kept map[int]bool) *Net {
	m := &Net{Events: n.Events, Limit: n.Limit, Arcs: make([]Arc, 0, len(n.Arcs))}
	for _, a := range n.Arcs {
		if a.Rule < 0 || kept[a.Rule] {
			m.Arcs = append(m.Arcs, a)
		}
	}
	for _, h := range n.Holes {
		if h.Rule < 0 || kept[h.Rule] {
			m.Holes = append(m.Holes, h)
		}
	}
	return m
}

// Shrink makes a clash minimal by trying to do without each rule in turn. When the watch is
// over first the clash is smaller and need not be minimal.
func (n *Net) Shrink(w *Watch, c *Clash) *Clash {
	kept := map[int]bool{}
	for _, r := range c.Rules {
		kept[r] = true
	}
	p := NewProber(w, n.Only(kept))
	for _, r := range c.Rules {
		if !kept[r] {
			continue
		}
		mark := len(p.saved)
		p.disable(r)
		p.trace.reset()
		p.trace.enqueue(0)
		still := p.half.run(p.trace)
		if w.spend(p.half.events) {
			break
		}
		if still == nil { // needed
			p.restore(mark)
			continue
		}
		delete(kept, r)
		// The new clash may already do without others.
		used := make(map[int]bool, len(still.Rules))
		for _, k := range still.Rules {
			used[k] = true
		}
		for k := range kept {
			if !used[k] {
				delete(kept, k)
				p.disable(k)
			}
		}
	}
	if len(kept) == len(c.Rules) {
		return c
	}
	out := &Clash{}
	for _, r := range c.Rules {
		if kept[r] {
			out.Rules = append(out.Rules, r)
		}
	}
	// By how much what is left misses itself.
	p.trace.reset()
	p.trace.enqueue(0)
	if last := p.half.run(p.trace); last != nil && !w.Over() && len(last.Rules) == len(out.Rules) {
		out.Cycle, out.Short = last.Cycle, last.Short
	}
	return out
}

// Side says which side of a rule gives way.
type Side int

// The sides of a rule.
const (
	Front Side = iota // a lower limit falls; a hole begins later
	Back              // an upper limit rises; a hole ends earlier
)

// Relax is a change that weakens some rules together.
type Relax struct {
	Rules []int
	By    int
	Side  Side
}

func (r Relax) arc(a Arc) Arc {
	if a.Upper == (r.Side == Back) {
		a.W -= r.By
	}
	return a
}

// easing lists the changes of each rule.
type easing map[int][]Relax

func easings(list []Relax) easing {
	e := easing{}
	for _, r := range list {
		for _, rule := range r.Rules {
			e[rule] = append(e[rule], r)
		}
	}
	return e
}

// span is what is left of a span that a rule closes.
func (e easing) span(from, to, rule int) (int, int) {
	for _, r := range e[rule] {
		if r.Side == Front {
			from += r.By
		} else {
			to -= r.By
		}
	}
	return from, to
}

// relaxed is the network with the rules weakened.
func (n *Net) relaxed(e easing) *Net {
	m := &Net{Events: n.Events, Limit: n.Limit, Arcs: slices.Clone(n.Arcs)}
	for i, a := range m.Arcs {
		for _, r := range e[a.Rule] {
			m.Arcs[i] = r.arc(m.Arcs[i])
		}
	}
	for _, h := range n.Holes {
		if h.From, h.To = e.span(h.From, h.To, h.Rule); h.From < h.To {
			m.Holes = append(m.Holes, h)
		}
	}
	return m
}

// Prober answers many questions of the form "would the network have a solution if these rules
// were weaker?" without building it anew.
type Prober struct {
	half  *half
	trace *trace
	arcs  map[int][]int // positions of a rule's arcs
	jumps map[int][]int
	saved []savedPlace
}

type savedPlace struct {
	jump bool
	at   int
	x, y int
}

// NewProber prepares the network.
func NewProber(w *Watch, n *Net) *Prober {
	h := n.later()
	p := &Prober{half: h, trace: newTrace(h, w), arcs: map[int][]int{}, jumps: map[int][]int{}}
	for i, a := range p.half.arcs {
		p.arcs[a.Rule] = append(p.arcs[a.Rule], i)
	}
	for i, j := range p.half.jumps {
		p.jumps[j.Rule] = append(p.jumps[j.Rule], i)
	}
	return p
}

// Feasible answers whether the network with the rules weakened has a solution.
func (p *Prober) Feasible(list ...Relax) Truth {
	if p.trace.w.spend(p.half.events) {
		return Unsure
	}
	for _, r := range list {
		p.relax(r)
	}
	p.trace.reset()
	p.trace.enqueue(0)
	clash := p.half.run(p.trace)
	p.restore(0)
	if clash == nil && p.trace.w.Over() {
		return Unsure
	}
	return truth(clash == nil)
}

func (p *Prober) relax(r Relax) {
	for _, rule := range r.Rules {
		for _, i := range p.arcs[rule] {
			p.saved = append(p.saved, savedPlace{at: i, x: p.half.arcs[i].W})
			p.half.arcs[i] = r.arc(p.half.arcs[i])
		}
		for _, i := range p.jumps[rule] {
			j := &p.half.jumps[i]
			p.saved = append(p.saved, savedPlace{jump: true, at: i, x: j.X, y: j.Y})
			if r.Side == Front {
				j.X += r.By
			} else {
				j.Y -= r.By
			}
		}
	}
}

// disable takes a rule away.
func (p *Prober) disable(rule int) {
	for _, i := range p.arcs[rule] {
		p.saved = append(p.saved, savedPlace{at: i, x: p.half.arcs[i].W})
		p.half.arcs[i].W = none
	}
	for _, i := range p.jumps[rule] {
		j := &p.half.jumps[i]
		p.saved = append(p.saved, savedPlace{jump: true, at: i, x: j.X, y: j.Y})
		j.X = -none
	}
}

// restore undoes changes back to a mark.
func (p *Prober) restore(mark int) {
	for k := len(p.saved) - 1; k >= mark; k-- {
		if s := p.saved[k]; s.jump {
			p.half.jumps[s.at].X, p.half.jumps[s.at].Y = s.x, s.y
		} else {
			p.half.arcs[s.at].W = s.x
		}
	}
	p.saved = p.saved[:mark]
}
