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
	work   []int
	ready  []int
}

// of prepares a network, or its mirror image, in which event v has the time Limit − x[v].
func (h *half) of(n *Net, mirrored bool) *half {
	turned := func(a Arc) Arc {
		if mirrored {
			a.From, a.To = a.To, a.From
			if a.To == 0 {
				a.W -= n.Limit
			}
			if a.From == 0 {
				a.W += n.Limit
			}
		}
		return a
	}
	across := func(k Hole) jump {
		if mirrored {
			return jump{A: StartOf(k.Task), X: n.Limit - k.To, B: EndOf(k.Task), Y: n.Limit - k.From, Rule: k.Rule}
		}
		return jump{A: EndOf(k.Task), X: k.From, B: StartOf(k.Task), Y: k.To, Rule: k.Rule}
	}
	h.events = n.Events
	h.first, h.jfirst = resized(h.first, n.Events+1), resized(h.jfirst, n.Events+1)
	clear(h.first)
	clear(h.jfirst)
	for _, a := range n.Arcs {
		h.first[turned(a).From+1]++
	}
	for _, k := range n.Holes {
		h.jfirst[across(k).A+1]++
	}
	for v := 0; v < n.Events; v++ {
		h.first[v+1] += h.first[v]
		h.jfirst[v+1] += h.jfirst[v]
	}
	h.arcs, h.jumps = resized(h.arcs, len(n.Arcs)), resized(h.jumps, len(n.Holes))
	h.work = append(h.work[:0], h.first...)
	for _, a := range n.Arcs {
		a = turned(a)
		h.arcs[h.work[a.From]] = a
		h.work[a.From]++
	}
	h.work = append(h.work[:0], h.jfirst...)
	for _, k := range n.Holes {
		j := across(k)
		h.jumps[h.work[j.A]] = j
		h.work[j.A]++
	}
	h.order()
	return h
}

// order ranks events so that those which push come before those which are pushed: a
// topological order of the arcs that push forward. Events on a cycle follow in their own order.
func (h *half) order() {
	h.work = resized(h.work, h.events)
	waits := h.work
	clear(waits)
	for _, a := range h.arcs {
		if a.W >= 0 && a.From != 0 && a.To != 0 {
			waits[a.To]++
		}
	}
	h.rank = resized(h.rank, h.events)
	for v := range h.rank {
		h.rank[v] = h.events + v
	}
	ready := h.ready[:0]
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
	h.ready = ready
}

func (n *Net) later() *half { return new(half).of(n, false) }

// earlier prepares the mirror image.
func (n *Net) earlier() *half { return new(half).of(n, true) }

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

func newTrace(h *half, w *Watch) *trace { return new(trace).of(h, w) }

// of makes a trace ready for a network.
func (t *trace) of(h *half, w *Watch) *trace {
	n := h.events
	t.w, t.rank, t.acyclic, t.pushes = w, h.rank, false, nil
	t.least, t.last, t.queued = resized(t.least, n), resized(t.last, n), resized(t.queued, n)
	t.reset()
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
	return t, h.push(t)
}

// push finds the least time of every event with a trace that is ready for it.
func (h *half) push(t *trace) *Clash {
	t.enqueue(0)
	return h.run(t)
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
