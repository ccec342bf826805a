package planner

// StartOf is the event at which task i starts.
func StartOf(i int) int { return 1 + 2*i }

// EndOf is the event at which task i ends.
func EndOf(i int) int { return 2 + 2*i }

// Arc says x[To] ≥ x[From] + W because of Rule; a negative Rule is part of the structure and
// never named in a conflict. Upper marks the arc of an upper limit, so that a rule with two
// arcs (exactly so long) can be relaxed on either side.
type Arc struct {
	From, To, W, Rule int
	Upper             bool
}

// Hole says that a task must not use the time from From up to To: it ends at From or before,
// or starts at To or after.
type Hole struct {
	Task, From, To, Rule int
}

// Net is a network of differences with holes. Every event must be bounded by arcs from and to
// the origin.
type Net struct {
	Events int // the origin included
	Limit  int // no event is later
	Arcs   []Arc
	Holes  []Hole
}

// jump says: when the least time of event A exceeds X, the least time of B is at least Y.
type jump struct {
	A, B, X, Y, Rule int
}

// half is a network prepared for pushing events later. The mirror image of a network serves
// for pushing them earlier.
type half struct {
	events int
	first  []int // arcs of event v are arcs[first[v]:first[v+1]]
	arcs   []Arc
	jfirst []int
	jumps  []jump
	rank   []int // events in the order in which they push each other, as far as there is one
}

func prepare(events int, arcs []Arc, jumps []jump) *half {
	h := &half{events: events, first: make([]int, events+1), jfirst: make([]int, events+1)}
	for _, a := range arcs {
		h.first[a.From+1]++
	}
	for _, j := range jumps {
		h.jfirst[j.A+1]++
	}
	for v := 0; v < events; v++ {
		h.first[v+1] += h.first[v]
		h.jfirst[v+1] += h.jfirst[v]
	}
	h.arcs = make([]Arc, len(arcs))
	h.jumps = make([]jump, len(jumps))
	next := append([]int(nil), h.first...)
	for _, a := range arcs {
		h.arcs[next[a.From]] = a
		next[a.From]++
	}
	next = append(next[:0], h.jfirst...)
	for _, j := range jumps {
		h.jumps[next[j.A]] = j
		next[j.A]++
	}
	h.order()
	return h
}

// order ranks events so that those which push come before those which are pushed: a
// topological order of the arcs that push forward. Events on a cycle follow in their own order.
func (h *half) order() {
	waits := make([]int, h.events)
	for _, a := range h.arcs {
		if a.W >= 0 && a.From != 0 && a.To != 0 {
			waits[a.To]++
		}
	}
	h.rank = make([]int, h.events)
	for v := range h.rank {
		h.rank[v] = h.events + v
	}
	ready := make([]int, 0, h.events)
	for v := 0; v < h.events; v++ {
		if waits[v] == 0 {
			ready = append(ready, v)
		}
	}
	for k := 0; k < len(ready); k++ {
		v := ready[k]
		h.rank[v] = k
		for _, a := range h.arcs[h.first[v]:h.first[v+1]] {
			if a.W >= 0 && v != 0 && a.To != 0 {
				if waits[a.To]--; waits[a.To] == 0 {
					ready = append(ready, a.To)
				}
			}
		}
	}
}

func (n *Net) later() *half {
	jumps := make([]jump, 0, len(n.Holes))
	for _, h := range n.Holes {
		jumps = append(jumps, jump{A: EndOf(h.Task), X: h.From, B: StartOf(h.Task), Y: h.To, Rule: h.Rule})
	}
	return prepare(n.Events, n.Arcs, jumps)
}

// earlier prepares the mirror image, in which event v has the time Limit − x[v].
func (n *Net) earlier() *half {
	arcs := make([]Arc, 0, len(n.Arcs))
	for _, a := range n.Arcs {
		m := a
		m.From, m.To = a.To, a.From
		if a.From == 0 {
			m.W -= n.Limit
		}
		if a.To == 0 {
			m.W += n.Limit
		}
		arcs = append(arcs, m)
	}
	jumps := make([]jump, 0, len(n.Holes))
	for _, h := range n.Holes {
		jumps = append(jumps, jump{A: StartOf(h.Task), X: n.Limit - h.To, B: EndOf(h.Task), Y: n.Limit - h.From,
			Rule: h.Rule})
	}
	return prepare(n.Events, arcs, jumps)
}

// step is one push: event reached value because of rule, from the push prev (-1: from the
// origin).
type step struct {
	event, value, rule, prev int32
	jumped                   bool
}

// Clash is a set of rules that cannot be kept together. When Cycle is true the rules are
// differences around a cycle, the set is minimal, and changing any of them by Short is enough.
type Clash struct {
	Rules []int
	Cycle bool
	Short int
}

// trace is the state of pushing: the least time of every event and how it came about.
type trace struct {
	least  []int
	last   []int // index into steps of the push that gave least, or -1
	steps  []step
	rank   []int
	queue  heap // by rank
	queued []bool
	pushes []int // how often each event of a large network was pushed
	// acyclic says that the differences are known to have no positive cycle.
	acyclic bool
	w       *Watch
	keep    bool   // the chain of a clash is wanted
	kept    []Push // it
}

func newTrace(h *half, w *Watch) *trace {
	events := h.events
	t := &trace{w: w, rank: h.rank, least: make([]int, events), last: make([]int, events), queued: make([]bool, events)}
	for v := range t.last {
		t.least[v] = none
		t.last[v] = -1
	}
	t.least[0] = 0
	return t
}

func (t *trace) reset() {
	for v := range t.last {
		t.least[v], t.last[v], t.queued[v] = none, -1, false
	}
	t.least[0] = 0
	t.steps, t.queue = t.steps[:0], t.queue[:0]
}

func (t *trace) enqueue(v int) {
	if !t.queued[v] {
		t.queued[v] = true
		t.queue.push(item{int64(t.rank[v]), int32(v)})
	}
}

// next takes the waiting event of lowest rank.
func (t *trace) next() int {
	v := int(t.queue.pop().v)
	t.queued[v] = false
	return v
}

// push raises event v to value. It returns a clash when that closes a cycle of differences or
// moves the origin.
func (t *trace) push(v, value, rule, prev int, jumped bool) *Clash {
	if v == 0 {
		// The chain from the origin back to it: the rules miss each other by value.
		t.clashed(prev, rule, -1, 0, value)
		return t.collect(prev, rule, -1, value)
	}
	if !jumped && t.suspicious(v) {
		for p := prev; p >= 0 && !t.steps[p].jumped; p = int(t.steps[p].prev) {
			t.w.spend(1)
			if int(t.steps[p].event) == v {
				t.clashed(prev, rule, p, v, value)
				return t.collect(prev, rule, p, value-int(t.steps[p].value))
			}
		}
	}
	t.least[v] = value
	t.steps = append(t.steps, step{int32(v), int32(value), int32(rule), int32(prev), jumped})
	t.last[v] = len(t.steps) - 1
	t.enqueue(v)
	return nil
}

// suspicious says whether to look for a cycle now. In a large network an event is looked at
// only every few pushes: a cycle keeps pushing its events until it is found.
func (t *trace) suspicious(v int) bool {
	if t.acyclic {
		return false
	}
	if len(t.least) <= 400 {
		return true
	}
	if t.pushes == nil {
		t.pushes = make([]int, len(t.least))
	}
	t.pushes[v]++
	return t.pushes[v]%16 == 0
}

// collect lists the rules of the pushes from prev back to, but not including, stop.
func (t *trace) collect(prev, rule, stop, short int) *Clash {
	c := &Clash{Cycle: true, Short: short}
	seen := map[int]bool{}
	add := func(r int) {
		if r >= 0 && !seen[r] {
			seen[r] = true
			c.Rules = append(c.Rules, r)
		}
	}
	add(rule)
	passed := map[int32]bool{}
	for p := prev; p != stop && p >= 0; p = int(t.steps[p].prev) {
		add(int(t.steps[p].rule))
		if t.steps[p].jumped || passed[t.steps[p].event] {
			c.Cycle = false
		}
		passed[t.steps[p].event] = true
	}
	for i, j := 0, len(c.Rules)-1; i < j; i, j = i+1, j-1 {
		c.Rules[i], c.Rules[j] = c.Rules[j], c.Rules[i]
	}
	return c
}

// run pushes until nothing moves. A nil result means that least is the least solution, unless
// the watch is over.
func (h *half) run(t *trace) *Clash {
	for len(t.queue) > 0 {
		v := t.next()
		if t.w.spend(4 + h.first[v+1] - h.first[v] + h.jfirst[v+1] - h.jfirst[v]) {
			return nil
		}
		at, prev := t.least[v], t.last[v]
		for _, a := range h.arcs[h.first[v]:h.first[v+1]] {
			if at+a.W > t.least[a.To] {
				if c := t.push(a.To, at+a.W, a.Rule, prev, false); c != nil {
					return c
				}
			}
		}
		for _, j := range h.jumps[h.jfirst[v]:h.jfirst[v+1]] {
			if at > j.X && t.least[j.B] < j.Y && j.X < j.Y {
				if c := t.push(j.B, j.Y, j.Rule, prev, true); c != nil {
					return c
				}
			}
		}
	}
	return nil
}

// solve finds the least time of every event from the origin, unless the watch is over.
func (h *half) solve(w *Watch) (*trace, *Clash) {
	t := newTrace(h, w)
	t.enqueue(0)
	c := h.run(t)
	return t, c
}

// from continues from a solution with some event pushed further, using t for the work; it
// returns nil when there is no such solution or the watch is over. The result is valid until t is used again.
func (h *half) from(t *trace, least []int, v, value int) []int {
	t.resume(h, least)
	if value > t.least[v] {
		if c := t.push(v, value, -1, -1, true); c != nil {
			return nil
		}
	}
	if h.run(t) != nil || t.w.Over() {
		return nil
	}
	return t.least
}

// resume starts from a solution of a network, which therefore has no positive cycle.
func (t *trace) resume(h *half, least []int) {
	t.rank = h.rank
	t.reset()
	copy(t.least, least)
	t.acyclic = true
}
