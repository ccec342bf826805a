package planner

// propagate moves bounds until nothing moves; false when something cannot be, or the watch is over.
func (l *learner) propagate() bool {
	for {
		for l.next < len(l.record) {
			e := l.record[l.next]
			l.next++
			if e.value != l.top[e.side] {
				continue // it fell further since
			}
			for _, k := range l.inside[e.side] {
				if k < 0 {
					l.budgets[-1-k].moved = true
				} else {
					l.crowds[k].moved = true
				}
			}
			if l.w.spend(8+2*len(l.out[e.side])+4*len(l.watch[e.side])) || !l.follow(e.side) || !l.watched(e.side) {
				return false
			}
		}
		for k := range l.crowds {
			if c := &l.crowds[k]; c.moved {
				c.moved = false
				if !l.crowded(c) {
					c.moved = true
					return false
				}
			}
		}
		if l.next < len(l.record) {
			continue
		}
		for k := range l.budgets {
			if g := &l.budgets[k]; g.moved {
				if g.moved = false; !l.spent(g) {
					g.moved = true
					return false
				}
			}
		}
		return true
	}
}

// follow moves what is tied to a side.
func (l *learner) follow(s int32) bool {
	for _, id := range l.out[s] {
		if !l.pull(id) {
			return false
		}
	}
	for _, id := range l.gated[s] {
		if !l.pull(id) {
			return false
		}
	}
	return true
}

// pull moves the side that a tie leads to, or decides that a tie that cannot hold does not.
func (l *learner) pull(id int32) bool {
	t := &l.drags[id]
	value := l.top[t.from] + t.w
	if value >= l.top[t.to] {
		return true
	}
	if t.on.s >= 0 && !l.holds(t.on) {
		least := -l.top[t.to^1]
		if value >= least || l.fails(t.on) {
			return true
		}
		return l.set(t.on.not(), byReason, l.because(t.rule, lit{t.from, least - t.w - 1}, lit{t.to ^ 1, -least}))
	}
	if l.pushes[t.to]++; l.pushes[t.to]%lookAround == 0 && l.around(id) {
		return false
	}
	return l.set(lit{t.to, value}, byDrag, id)
}

// lookAround is how many falls of a side there are from one look for a cycle to the next: a cycle of differences goes
// on until it is found, in steps that may be short against the time there is.
const lookAround = 16

// around says that a drag closes a cycle of drags that cannot hold together, whatever the bounds are; that failed then.
func (l *learner) around(id int32) bool {
	goal, cycle := l.drags[id].to, l.cycle[:0]
	for {
		t := &l.drags[id]
		cycle = append(cycle, id)
		l.cycle = cycle
		if t.from == goal {
			break
		}
		at := l.when(lit{t.from, l.after(cycle)})
		if at < 0 || l.record[at].kind != byDrag || len(cycle) > len(l.top) {
			return false
		}
		id = l.record[at].ref
	}
	l.failed = l.failed[:0]
	clear(l.rules)
	for _, id := range cycle {
		t := &l.drags[id]
		l.rules.add(t.rule)
		if t.on.s >= 0 {
			l.failed = append(l.failed, t.on)
		}
	}
	return true
}

// after is the value of the side from which a chain of drags, the last first, leads to the value that the first would
// give.
func (l *learner) after(chain []int32) int32 {
	first := &l.drags[chain[0]]
	value := l.top[first.from] + first.w
	for _, id := range chain {
		value -= l.drags[id].w
	}
	return value
}

// watched looks at the clauses that the fall of a side can make false.
func (l *learner) watched(s int32) bool {
	list := l.watch[s]
	kept := list[:0]
	for k, id := range list {
		c := l.clause[id].lits
		i := 0
		if c[0].s^1 != s {
			i = 1
		}
		if !l.fails(c[i]) || l.holds(c[1-i]) {
			kept = append(kept, id)
			continue
		}
		moved := false
		for n := 2; n < len(c); n++ {
			if !l.fails(c[n]) {
				c[i], c[n] = c[n], c[i]
				l.watch[c[i].s^1] = append(l.watch[c[i].s^1], id)
				moved = true
				break
			}
		}
		if moved {
			continue
		}
		kept = append(kept, id)
		if !l.set(c[1-i], byClause, id) {
			l.watch[s] = append(kept, list[k+1:]...)
			return false
		}
	}
	l.watch[s] = kept
	return true
}

// part is when a task of a crowd is certain to last, as its bounds are: from the latest start to the earliest end.
func (l *learner) part(u Use) (from, to int32) {
	return l.top[2*StartOf(u.Task)], -l.top[2*EndOf(u.Task)+1]
}

// crowded reasons with the parts of tasks that are certain.
func (l *learner) crowded(c *learnCrowd) bool {
	for _, u := range c.uses {
		for again := true; again; {
			again = false
			if l.w.spend(2 * len(c.uses)) {
				return false
			}
			first, early := -l.top[2*StartOf(u.Task)+1], -l.top[2*EndOf(u.Task)+1]
			late, last := l.top[2*StartOf(u.Task)], l.top[2*EndOf(u.Task)]
			// At its earliest start, and where another begins before its earliest end.
			for k := -1; k < len(c.uses) && !again; k++ {
				t := first
				if k >= 0 {
					if t, _ = l.part(c.uses[k]); t <= first {
						continue
					}
				}
				if t >= early || !l.full(c, u, t) {
					continue
				}
				_, until := l.stretch(c, u, t)
				at := min(until, early) - 1
				if !l.set(atLeastLit(StartOf(u.Task), int(at)+1), byReason, l.busy(c, u, at,
					atLeastLit(EndOf(u.Task), int(at)+1))) {
					return false
				}
				again = true
			}
			// Just before its latest end, and where another ends after its latest start.
			for k := -1; k < len(c.uses) && !again; k++ {
				t := last - 1
				if k >= 0 {
					if _, t = l.part(c.uses[k]); t >= last {
						continue
					}
					t--
				}
				if t < late || !l.full(c, u, t) {
					continue
				}
				since, _ := l.stretch(c, u, t)
				at := max(since, late)
				if !l.set(atMostLit(EndOf(u.Task), int(at)), byReason, l.busy(c, u, at, atMostLit(StartOf(u.Task), int(at)))) {
					return false
				}
				again = true
			}
		}
	}
	return true
}

// full says that at a moment a pool has no room for a task beside what is certain.
func (l *learner) full(c *learnCrowd, u Use, t int32) bool {
	sum := u.Amount
	for _, o := range c.uses {
		if from, to := l.part(o); o.Task != u.Task && from <= t && t < to {
			sum += o.Amount
		}
	}
	return sum > c.cap
}

// stretch is from when to when those that take the room at a moment do so together.
func (l *learner) stretch(c *learnCrowd, u Use, t int32) (from, to int32) {
	from, to = -widest, widest
	left := c.cap - u.Amount
	for _, o := range c.uses {
		if a, b := l.part(o); o.Task != u.Task && a <= t && t < b && left >= 0 {
			left -= o.Amount
			from, to = max(from, a), min(to, b)
		}
	}
	return from, to
}

// busy is the reason for which a task cannot last at a moment: those that take the room then, and what is said of the
// task itself.
func (l *learner) busy(c *learnCrowd, u Use, t int32, own lit) int32 {
	lits := []lit{own}
	left := c.cap - u.Amount
	for _, o := range c.uses {
		if a, b := l.part(o); o.Task != u.Task && a <= t && t < b && left >= 0 {
			left -= o.Amount
			lits = append(lits, atMostLit(StartOf(o.Task), int(t)), atLeastLit(EndOf(o.Task), int(t)+1))
		}
	}
	return l.because(c.rule, lits...)
}
