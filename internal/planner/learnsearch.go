package planner

import "slices"

const (
	restartEvery = 100    // failures, times the sequence of Luby, Sinclair and Zuckerman
	mostLearned  = 20_000 // clauses; beyond them those not used for longest are forgotten
)

// learned is what a learner found: times of all events, or the rules that have no timetable together.
type learned struct {
	truth Truth
	times []int
	core  []int
	fails int
}

// learn looks for any timetable. Without one, core is a set of rules that has none.
func (s *Shop) learn(w *Watch) learned {
	l := newLearner(w, s)
	if l == nil {
		return learned{}
	}
	return l.run()
}

// run goes on until something is known or the watch is over. After a timetable it can be asked for another.
func (l *learner) run() learned {
	out := learned{}
	sure := !l.never && (l.begun || l.begin())
	l.begun = true
	until := restartEvery * luby(1)
	for round := 1; ; {
		if !sure || !l.propagate() {
			if l.w.Over() {
				return out
			}
			out.fails++
			if len(l.levels) == 0 {
				out.truth, out.core = No, l.core()
				return out
			}
			sure = l.learn(out.fails)
			continue
		}
		if l.w.Over() || l.most > 0 && out.fails >= l.most {
			return out
		}
		if out.fails >= until {
			round++
			until = out.fails + restartEvery*luby(round)
			l.back(0)
			l.forget(out.fails)
			continue
		}
		if !l.decide() {
			times := make([]int, l.shop.Net.Events)
			for v := range times {
				times[v] = -int(l.top[2*v+1])
			}
			if !l.shop.Fits(l.w, times) || l.w.Over() {
				return out
			}
			out.truth, out.times = Yes, times
			return out
		}
	}
}

// bound adds that an event is no later, or no earlier, than a time; it is to be asked for a timetable then.
func (l *learner) bound(event, time int, later bool) {
	l.back(0)
	q := atMostLit(event, time)
	if later {
		q = atLeastLit(event, time)
	}
	c := clause{lits: []lit{q}, rules: make(ruleSet, l.words), given: true}
	l.never = l.never || !l.set(q, byClause, l.add(c))
}

// begin propagates everything once; false when that fails.
func (l *learner) begin() bool {
	first := make([]int, len(l.pairs))
	for k := range first {
		first[k] = k
	}
	l.recent.begin(len(l.pairs), first)
	for id := range l.drags {
		if t := &l.drags[id]; t.from < 2 && t.on.s < 0 && !l.pull(int32(id)) {
			return false
		}
	}
	for id := range l.clause {
		if !l.unit(int32(id)) {
			return false
		}
	}
	if !l.propagate() {
		return false
	}
	room := func(k int) int32 {
		p := &l.pairs[k]
		a := l.top[2*StartOf(p.j)] + l.top[2*EndOf(p.i)+1]
		b := l.top[2*StartOf(p.i)] + l.top[2*EndOf(p.j)+1]
		return min(a, b)
	}
	slices.SortStableFunc(first, func(a, b int) int { return int(room(a)) - int(room(b)) })
	l.recent.begin(len(l.pairs), first)
	return true
}

// unit looks at a clause of the problem once.
func (l *learner) unit(id int32) bool {
	c := &l.clause[id]
	if len(c.lits) != 2 {
		return true
	}
	switch {
	case l.fails(c.lits[0]):
		return l.set(c.lits[1], byClause, id)
	case l.fails(c.lits[1]):
		return l.set(c.lits[0], byClause, id)
	}
	return true
}

// luby is the sequence 1, 1, 2, 1, 1, 2, 4, … Source: Luby, Sinclair and Zuckerman, "Optimal speedup of Las Vegas
// algorithms", Information Processing Letters 47 (1993).
func luby(i int) int {
	for k := 1; ; k++ {
		if i == 1<<k-1 {
			return 1 << (k - 1)
		}
		if i < 1<<k-1 {
			return luby(i - 1<<(k-1) + 1)
		}
	}
}

// decide makes a decision; false when everything is decided.
func (l *learner) decide() bool {
	o := &l.recent
	for n := len(l.pairs); o.search != n; o.search = int(o.down[o.search]) {
		p := &l.pairs[o.search]
		if l.top[2*p.v] == 0 || l.top[2*p.v+1] == -1 {
			continue
		}
		first := p.saved
		if first < 0 {
			a := l.top[2*StartOf(p.j)] + l.top[2*EndOf(p.i)+1]
			b := l.top[2*StartOf(p.i)] + l.top[2*EndOf(p.j)+1]
			if first = 0; a >= b {
				first = 1
			}
		}
		q := atMostLit(p.v, 0)
		if first == 1 {
			q = atLeastLit(p.v, 1)
		}
		return l.suppose(q)
	}
	// Where more than pairs can be short: what can begin first does, and of those what must end first.
	best, due := lit{s: -1}, int32(0)
	for k := range l.crowds {
		for _, u := range l.crowds[k].uses {
			last := l.top[2*EndOf(u.Task)]
			for _, v := range []int{StartOf(u.Task), EndOf(u.Task)} {
				lo := -l.top[2*v+1]
				if l.top[2*v] > lo && (best.s < 0 || lo < best.b || lo == best.b && last < due) {
					best, due = lit{int32(2 * v), lo}, last
				}
			}
		}
	}
	return best.s >= 0 && l.suppose(best)
}

// suppose decides that a bound holds.
func (l *learner) suppose(q lit) bool {
	l.levels = append(l.levels, int32(len(l.record)))
	return l.set(q, decided, -1)
}

// learn works out why what failed failed, keeps it, and goes back to where it could have been known; false when that
// fails too.
func (l *learner) learn(fails int) bool {
	l.need = resized(l.need, len(l.record))
	l.wanted = resized(l.wanted, len(l.record))
	clear(l.wanted)
	level := l.levels[len(l.levels)-1] // the first entry of the last decision
	rules := slices.Clone(l.rules)
	open := 0
	want := func(q lit) {
		at := l.when(q)
		switch {
		case at < 0:
		case l.always(at) != nil:
			rules.join(l.always(at))
		case l.wanted[at]:
			l.need[at] = min(l.need[at], q.b)
		default:
			l.wanted[at], l.need[at] = true, q.b
			if at >= level {
				open++
			}
		}
	}
	for _, q := range l.failed {
		want(q)
	}
	if open == 0 {
		// It fails without the last decision.
		l.back(len(l.levels) - 1)
		return false
	}
	at := int32(len(l.record) - 1)
	for ; ; at-- {
		if !l.wanted[at] {
			continue
		}
		if open == 1 {
			break
		}
		open--
		l.wanted[at] = false
		e := l.record[at]
		if v := int(e.side / 2); v >= l.shop.Net.Events {
			l.recent.front(v - l.shop.Net.Events)
		}
		q := lit{e.side, l.need[at]}
		if e.kind == byClause {
			l.clause[e.ref].used = fails
		}
		l.spare = l.explain(l.spare[:0], rules, q, e.kind, e.ref)
		for _, p := range l.spare {
			want(p)
		}
	}
	c := clause{lits: []lit{lit{l.record[at].side, l.need[at]}.not()}, rules: rules, used: fails}
	if v := int(l.record[at].side / 2); v >= l.shop.Net.Events {
		l.recent.front(v - l.shop.Net.Events)
	}
	// Of what was decided before, the latest first, and of one side only what says most.
	said := map[int32]bool{}
	for k := level - 1; l.always(k) == nil; k-- {
		if e := l.record[k]; l.wanted[k] && !said[e.side] {
			said[e.side] = true
			c.lits = append(c.lits, lit{e.side, l.need[k]}.not())
		}
	}
	to := 0
	if len(c.lits) > 1 {
		second := l.when(c.lits[1].not())
		for to = len(l.levels) - 1; l.levels[to-1] > second; to-- {
		}
	}
	l.w.spend(len(l.record)/8 + 16*len(c.lits))
	l.back(to)
	return l.set(c.lits[0], byClause, l.add(c))
}

// core lists the rules by which what failed without a decision failed.
func (l *learner) core() []int {
	for _, q := range l.failed {
		if at := l.when(q); at >= 0 {
			l.rules.join(l.always(at))
		}
	}
	return l.rules.list()
}

// forget leaves out clauses not used for long, after a restart.
func (l *learner) forget(fails int) {
	if len(l.clause) < mostLearned {
		return
	}
	var used []int
	for k := range l.clause {
		if !l.clause[k].given {
			used = append(used, l.clause[k].used)
		}
	}
	slices.Sort(used)
	since := used[len(used)/2]
	inUse := map[int32]bool{}
	for k := range l.record {
		if l.record[k].kind == byClause {
			inUse[l.record[k].ref] = true
		}
	}
	number := make([]int32, len(l.clause))
	kept := l.clause[:0]
	for k, c := range l.clause {
		if number[k] = -1; c.given || c.used >= since || inUse[int32(k)] {
			number[k] = int32(len(kept))
			kept = append(kept, c)
		}
	}
	l.clause = kept
	for k := range l.record {
		if e := &l.record[k]; e.kind == byClause {
			e.ref = number[e.ref]
		}
	}
	for s := range l.watch {
		l.watch[s] = l.watch[s][:0]
	}
	for id := range l.clause {
		if c := &l.clause[id]; len(c.lits) > 1 {
			for _, q := range c.lits[:2] {
				l.watch[q.s^1] = append(l.watch[q.s^1], int32(id))
			}
		}
	}
}
