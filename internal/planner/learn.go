package planner

import "slices"

// A learner looks for any timetable and learns from what fails: every bound that follows knows why, and from the bounds
// that cannot hold together it works out a smaller reason that is kept as a clause, so that the search does not fail
// for the same reason twice. Each clause also knows the rules that it follows from; so a proof that there is no
// timetable names a set of rules that is enough for it.
//
// Method: lazy clause generation, with clauses over bounds, two watched bounds in each, the first unique implication
// point, variables moved to the front when they take part in a failure, and restarts. Sources: Ohrimenko, Stuckey and
// Codish, "Propagation via lazy clause generation", Constraints 14 (2009); Marques-Silva and Sakallah, "GRASP", IEEE
// Transactions on Computers 48 (1999); Moskewicz and others, "Chaff", DAC 2001; Schutt, Feydy, Stuckey and Wallace,
// "Explaining the cumulative propagator", Constraints 16 (2011), for what a pool is certain to be used for.
type learner struct {
	w       *Watch
	shop    *Shop
	words   int      // of a set of rules
	top     []int32  // greatest value of each side; side 2v is x, side 2v+1 is −x
	pushes  []uint32 // how often each side fell by a drag
	cycle   []int32
	last    []int32 // the last entry of the record about each side, −1
	record  []entry
	levels  []int32 // length of the record before each decision
	next    int     // of the record, to be propagated
	drags   []drag
	out     [][]int32 // drags by the side that they start from
	gated   [][]int32 // and by the one on which they depend
	inside  [][]int32 // crowds and budgets by the sides that they look at
	why     []reason
	lits    []lit // of the reasons
	clause  []clause
	watch   [][]int32    // clauses watched by the side whose fall can make them false
	base    []uint64     // rules of the entries that hold without a decision, one set after the other
	crowds  []learnCrowd // pools in which more than pairs can be short
	budgets []learnBudget
	pairs   []orderVar // tasks in turn
	recent  order      // pairs, those that took part in failures last first
	failed  []lit      // bounds that cannot hold together
	rules   ruleSet    // and the rules by which they cannot
	most    int        // failures; 0: no limit
	begun   bool
	never   bool    // a bound added later cannot be
	need    []int32 // by entry: the bound that a failure needs of it
	wanted  []bool
	spare   []lit
}

// lit says that the value of a side is at most b.
type lit struct{ s, b int32 }

// not is the opposite.
func (l lit) not() lit { return lit{l.s ^ 1, -l.b - 1} }

func atMostLit(v, b int) lit  { return lit{int32(2 * v), int32(b)} }
func atLeastLit(v, b int) lit { return lit{int32(2*v + 1), int32(-b)} }

// entry is one fall of the greatest value of a side.
type entry struct {
	side, value, before int32 // before: its value until then
	prev                int32 // the entry about the side before this one, −1
	kind                int8
	ref                 int32
}

const (
	decided  int8 = iota
	byDrag        // ref: of drags
	byClause      // ref: of clause
	byReason      // ref: of why
)

// drag is a difference between two sides: value(to) ≤ value(from) + w, while on holds (always, when on.s < 0).
type drag struct {
	from, to, w int32
	on          lit
	rule        int32
}

// reason is bounds from which another follows by a rule.
type reason struct{ from, to, rule int32 }

type clause struct {
	lits  []lit // the first two are watched
	rules ruleSet
	given bool // part of the problem
	used  int  // failures seen when it last took part in one
}

// orderVar is two tasks of which either comes first: variable v is 1 when i does, 0 when j does.
type orderVar struct {
	v, i, j int
	gap     [2]int // least time between the end of the first and the start of the second
	saved   int8   // how it was decided last, −1: never
}

// learnCrowd is a pool with the place of its rule.
type learnCrowd struct {
	crowd
	rule  int32
	moved bool // bounds of its tasks
}

// widest is beyond every time; a sum of two is an int32.
const widest = 1 << 28

func newLearner(w *Watch, s *Shop) *learner {
	n := s.Net.Events
	l := w.spares().learner.emptied(w, s)
	most := 0
	for _, a := range s.Net.Arcs {
		most = max(most, a.Rule)
	}
	for _, h := range s.Net.Holes {
		most = max(most, h.Rule)
	}
	for _, p := range s.Pools {
		most = max(most, p.Rule)
	}
	l.words = most/64 + 1
	l.rules = make(ruleSet, l.words)
	for range n {
		l.variable(widest, widest)
	}
	l.top[0], l.top[1] = 0, 0
	for _, a := range s.Net.Arcs {
		l.difference(a.From, a.To, a.W, lit{s: -1}, a.Rule)
	}
	if !l.share() {
		return nil
	}
	for _, h := range s.Net.Holes {
		c := clause{lits: []lit{atMostLit(EndOf(h.Task), h.From), atLeastLit(StartOf(h.Task), h.To)}, given: true}
		c.rules = make(ruleSet, l.words)
		c.rules.add(int32(h.Rule))
		l.add(c)
	}
	return l
}

// emptied is a learner that knows nothing yet and has the room of the one before.
func (l *learner) emptied(w *Watch, s *Shop) *learner {
	*l = learner{w: w, shop: s, top: l.top[:0], pushes: l.pushes[:0], cycle: l.cycle[:0], last: l.last[:0],
		record: l.record[:0], levels: l.levels[:0],
		drags: l.drags[:0], out: l.out[:0], gated: l.gated[:0], inside: l.inside[:0], watch: l.watch[:0], why: l.why[:0],
		lits: l.lits[:0], clause: l.clause[:0], base: l.base[:0], pairs: l.pairs[:0], recent: l.recent,
		failed: l.failed[:0], need: l.need, wanted: l.wanted, spare: l.spare[:0]}
	return l
}

// variable adds one with values from −lo to hi.
func (l *learner) variable(lo, hi int32) int {
	v := len(l.top) / 2
	l.top = append(l.top, hi, lo)
	l.last = append(l.last, -1, -1)
	l.pushes = append(l.pushes, 0, 0)
	for _, list := range []*[][]int32{&l.out, &l.inside, &l.gated, &l.watch} {
		*list = another(another(*list))
	}
	return v
}

// another makes a list of lists longer by an empty one, with the room that it had before.
func another(lists [][]int32) [][]int32 {
	n := len(lists)
	if n == cap(lists) {
		return append(lists, nil)
	}
	lists = lists[:n+1]
	lists[n] = lists[n][:0]
	return lists
}

// difference adds x[to] ≥ x[from] + w, while on holds.
func (l *learner) difference(from, to, w int, on lit, rule int) {
	for _, t := range [2]drag{
		{int32(2*from + 1), int32(2*to + 1), int32(-w), on, int32(rule)},
		{int32(2 * to), int32(2 * from), int32(-w), on, int32(rule)},
	} {
		id := int32(len(l.drags))
		l.drags = append(l.drags, t)
		l.out[t.from] = append(l.out[t.from], id)
		if on.s >= 0 {
			l.gated[on.s] = append(l.gated[on.s], id)
		}
	}
}

// share adds what the pools ask for; false when the watch is over.
func (l *learner) share() bool {
	s := l.shop
	timeless := s.timeless()
	known := map[[2]int]int{}
	for _, p := range s.Pools {
		var uses []Use
		for _, u := range p.Uses {
			if !timeless[u.Task] {
				uses = append(uses, u)
			}
		}
		sum, free := 0, false
		for x, i := range uses {
			sum += i.Amount
			for _, j := range uses[:x] {
				if l.w.spend(4) {
					return false
				}
				if !p.apart(i, j) {
					free = true
					continue
				}
				gap := [2]int{p.setup(j, i), p.setup(i, j)}
				k := [2]int{j.Task, i.Task}
				if at, ok := known[k]; ok && gap[0] <= l.pairs[at].gap[0] && gap[1] <= l.pairs[at].gap[1] {
					continue
				}
				known[k] = len(l.pairs)
				v := l.variable(0, 1)
				l.pairs = append(l.pairs, orderVar{v: v, i: j.Task, j: i.Task, gap: gap, saved: -1})
				l.difference(EndOf(j.Task), StartOf(i.Task), gap[0], atLeastLit(v, 1), p.Rule)
				l.difference(EndOf(i.Task), StartOf(j.Task), gap[1], atMostLit(v, 0), p.Rule)
			}
		}
		if free && p.Capacity > 0 && sum > p.Capacity {
			l.crowds = append(l.crowds, learnCrowd{crowd{p.Capacity, uses}, int32(p.Rule), true})
		}
	}
	l.budget()
	for k := range l.crowds {
		l.look(l.crowds[k].uses, k)
	}
	for k := range l.budgets {
		l.look(l.budgets[k].uses, -1-k)
	}
	return true
}

// look has the bounds of tasks looked at by a crowd, or, below 0, by a budget.
func (l *learner) look(uses []Use, by int) {
	for _, u := range uses {
		for _, s := range []int{2 * StartOf(u.Task), 2*StartOf(u.Task) + 1, 2 * EndOf(u.Task), 2*EndOf(u.Task) + 1} {
			l.inside[s] = append(l.inside[s], int32(by))
		}
	}
}

// timeless says of which tasks the network fixes the length at none: they use nothing.
func (s *Shop) timeless() []bool {
	out := make([]bool, s.Tasks)
	for i := range out {
		out[i] = true
	}
	for _, a := range s.Net.Arcs { // most take time by a rule of their own
		if i := (a.From - 1) / 2; a.From > 0 && a.W > 0 && i < s.Tasks && a.From == StartOf(i) && a.To == EndOf(i) {
			out[i] = false
		}
	}
	if !slices.Contains(out, true) {
		return out
	}
	find := rigid(s.Net)
	for i := range out {
		a, x := find(StartOf(i))
		b, y := find(EndOf(i))
		out[i] = a == b && x == y
	}
	return out
}

// add keeps a clause, whose first two bounds are watched.
func (l *learner) add(c clause) int32 {
	id := int32(len(l.clause))
	l.clause = append(l.clause, c)
	if len(c.lits) > 1 {
		for _, q := range c.lits[:2] {
			l.watch[q.s^1] = append(l.watch[q.s^1], id)
		}
	}
	return id
}

func (l *learner) holds(q lit) bool { return l.top[q.s] <= q.b }
func (l *learner) fails(q lit) bool { return -l.top[q.s^1] > q.b }

// set makes a bound hold; false when it cannot, which failed then says.
func (l *learner) set(q lit, kind int8, ref int32) bool {
	if l.holds(q) {
		return true
	}
	if l.fails(q) {
		clear(l.rules)
		l.failed = append(l.explain(l.failed[:0], l.rules, q, kind, ref), q.not())
		return false
	}
	l.record = append(l.record, entry{q.s, q.b, l.top[q.s], l.last[q.s], kind, ref})
	l.last[q.s] = int32(len(l.record) - 1)
	l.top[q.s] = q.b
	if len(l.levels) == 0 {
		l.settle(q, kind, ref)
	}
	return true
}

// settle keeps the rules of a bound that holds without a decision.
func (l *learner) settle(q lit, kind int8, ref int32) {
	n := len(l.base)
	for range l.words {
		l.base = append(l.base, 0)
	}
	rules := ruleSet(l.base[n:])
	l.spare = l.explain(l.spare[:0], rules, q, kind, ref)
	for _, p := range l.spare {
		if at := l.when(p); at >= 0 {
			rules.join(l.always(at))
		}
	}
}

// always is the rules of an entry that holds without a decision; nil of one that does not.
func (l *learner) always(at int32) ruleSet {
	if k := int(at) * l.words; k < len(l.base) {
		return l.base[k : k+l.words]
	}
	return nil
}

// when finds the entry by which a bound that holds came to hold, −1: it always did.
func (l *learner) when(q lit) int32 {
	at := l.last[q.s]
	for at >= 0 && l.record[at].before <= q.b {
		at = l.record[at].prev
	}
	return at
}

// explain lists bounds from which one follows, and adds the rules that are used.
func (l *learner) explain(out []lit, rules ruleSet, q lit, kind int8, ref int32) []lit {
	switch kind {
	case byDrag:
		t := l.drags[ref]
		rules.add(t.rule)
		out = append(out, lit{t.from, q.b - t.w})
		if t.on.s >= 0 {
			out = append(out, t.on)
		}
	case byClause:
		c := &l.clause[ref]
		rules.join(c.rules)
		for _, p := range c.lits {
			if p.s != q.s {
				out = append(out, p.not())
			}
		}
	case byReason:
		r := l.why[ref]
		rules.add(r.rule)
		out = append(out, l.lits[r.from:r.to]...)
	}
	return out
}

// because keeps bounds as a reason.
func (l *learner) because(rule int32, lits ...lit) int32 {
	from := int32(len(l.lits))
	l.lits = append(l.lits, lits...)
	l.why = append(l.why, reason{from, int32(len(l.lits)), rule})
	return int32(len(l.why) - 1)
}

// back undoes decisions until so many are left.
func (l *learner) back(level int) {
	if level >= len(l.levels) {
		return
	}
	to := int(l.levels[level])
	for k := len(l.record) - 1; k >= to; k-- {
		e := &l.record[k]
		l.top[e.side], l.last[e.side] = e.before, e.prev
		if v := int(e.side / 2); v >= l.shop.Net.Events {
			p := v - l.shop.Net.Events
			l.pairs[p].saved = int8(e.side & 1)
			l.recent.free(p)
		}
	}
	if to < len(l.record) {
		// Reasons of what was undone go with it.
		for k := range l.record[to:] {
			if e := l.record[to+k]; e.kind == byReason {
				l.lits, l.why = l.lits[:l.why[e.ref].from], l.why[:e.ref]
				break
			}
		}
	}
	l.record, l.levels = l.record[:to], l.levels[:level]
	l.next = min(l.next, to)
}
