package planner

import "slices"

// Shortage says that tasks which must lie in a span need more of a pool than there is of it in that span.
type Shortage struct {
	Pool     int   // index
	Tasks    []int // that lie in the span and take time
	From, To int
	Need     int // units of the pool times time that the tasks take at least
	Room     int // units times open time
	// Length, when it is not 0, says that they are short by number: of the tasks that take at least so long Need want a
	// unit, and one after the other no more than Room of them fit.
	Length int
}

// Shortage looks for a pool that cannot suffice, by the earliest and latest times of the network alone, and returns
// the worst: the greatest need for the room. Nil when there is none, or when the watch is over.
//
// Method: energetic reasoning. Source: Baptiste, Le Pape and Nuijten, Constraint-Based Scheduling (2001), section 3.3.
func (s *Shop) Shortage(w *Watch) *Shortage {
	e, _ := s.energy(w)
	return e.worst()
}

func (e *energy) worst() *Shortage {
	if e == nil {
		return nil
	}
	var worst *Shortage
	e.each(func(found Shortage) {
		if worst == nil || found.worse(worst) {
			worst = &found
		}
	})
	if worst != nil {
		worst.Tasks = e.within(worst)
	}
	return worst
}

// worse says that a shortage is to be told rather than another: hours before numbers, and more for its room.
func (x *Shortage) worse(y *Shortage) bool {
	if (x.Length == 0) != (y.Length == 0) {
		return x.Length == 0
	}
	return int64(x.Need)*int64(max(1, y.Room)) > int64(y.Need)*int64(max(1, x.Room))
}

// ShortageRules is a set of rules that by themselves lead to a shortage: of the one that needs fewest tasks, of those
// found before the watch is over. Nil when there is none.
func (s *Shop) ShortageRules(w *Watch) []int {
	e, _ := s.energy(w)
	if e == nil {
		return nil
	}
	var best *Shortage
	e.each(func(found Shortage) {
		found.Tasks = e.enough(&found)
		if best == nil || len(found.Tasks) < len(best.Tasks) {
			best = &found
		}
	})
	if best == nil {
		return nil
	}
	p := &s.Pools[best.Pool]
	rules := []int{p.Rule}
	for _, c := range p.Closed {
		if c.From < best.To && c.To > best.From {
			rules = append(rules, c.Rule)
		}
	}
	for _, task := range best.Tasks {
		rules = append(rules, e.first(StartOf(task))...)
		rules = append(rules, e.last(EndOf(task))...)
		rules = append(rules, e.length[task].rule)
	}
	rules = slices.DeleteFunc(rules, func(r int) bool { return r < 0 })
	slices.Sort(rules)
	return slices.Compact(rules)
}

// energy is what the network says of the tasks of a shop: from when to when each can last, how long it takes at
// least, and by which rules.
type energy struct {
	s           *Shop
	w           *Watch
	lo, hi      []int
	first, last func(event int) []int
	length      []length
}

// length is the least duration of a task and the rule that asks for it, −1 when none does.
type length struct{ least, rule int }

// energy is nil when the network has no solution, which the clash says, or the watch is over. It is valid until the
// watch is asked for another.
func (s *Shop) energy(w *Watch) (*energy, *Clash) {
	k := w.spares()
	e := &energy{s: s, w: w, length: make([]length, s.Tasks)}
	early, late := k.early.of(k.fore.of(s.Net, false), w), k.late.of(k.back.of(s.Net, true), w)
	if clash := k.fore.push(early); clash != nil || w.Over() {
		return nil, clash
	}
	if clash := k.back.push(late); clash != nil || w.Over() {
		return nil, nil
	}
	e.lo, e.first, e.last = early.least, early.drivers, late.drivers
	k.latest = resized(k.latest, s.Net.Events)
	e.hi = k.latest
	e.hi[0] = 0
	for v := 1; v < s.Net.Events; v++ {
		e.hi[v] = s.Net.Limit - late.least[v]
	}
	for i := range e.length {
		e.length[i].rule = -1
	}
	for _, a := range s.Net.Arcs {
		if i := (a.From - 1) / 2; a.From > 0 && a.From == StartOf(i) && a.To == EndOf(i) && a.W > e.length[i].least {
			e.length[i] = length{a.W, a.Rule}
		}
	}
	return e, nil
}

// each reports the shortages of every pool: for each task with which a span can begin the worst by need and the worst
// by number, wherever it ends.
func (e *energy) each(found func(Shortage)) {
	for k := range e.s.Pools {
		p := &e.s.Pools[k]
		if p.Capacity == 0 {
			continue
		}
		g := budget{cap: p.Capacity, closed: p.closed()}
		for _, u := range p.Uses {
			g.length = append(g.length, e.length[u.Task].least)
		}
		g.sizes = sizesOf(g.length)
		uses := slices.Clone(p.Uses)
		slices.SortStableFunc(uses, func(a, b Use) int { return e.hi[EndOf(a.Task)] - e.hi[EndOf(b.Task)] })
		for _, first := range uses {
			if e.w.spend(len(uses) * (2 + len(g.closed) + len(g.sizes))) {
				return
			}
			for _, worst := range e.from(e.lo[StartOf(first.Task)], &g, uses) {
				if worst.Need > 0 {
					worst.Pool = k
					found(worst)
				}
			}
		}
	}
}

// from is the worst shortage by need and the worst by number in the spans that begin at a time, for uses in order of
// their latest end.
func (e *energy) from(from int, g *budget, uses []Use) (worst [2]Shortage) {
	need, counts := 0, make([]int, len(g.sizes))
	keep := func(kind int, x Shortage) {
		if x.Need > x.Room && (worst[kind].Need == 0 || x.worse(&worst[kind])) {
			worst[kind] = x
		}
	}
	for _, u := range uses {
		if e.lo[StartOf(u.Task)] < from {
			continue
		}
		long, to := e.length[u.Task].least, e.hi[EndOf(u.Task)]
		need += long * u.Amount
		keep(0, Shortage{From: from, To: to, Need: need, Room: g.cap * g.open(from, to)})
		for i, size := range g.sizes {
			if size <= long {
				counts[i] += u.Amount
				keep(1, Shortage{From: from, To: to, Need: counts[i], Room: g.cap * g.fit(from, to, size), Length: size})
			}
		}
	}
	return worst
}

// within lists the tasks of a shortage.
func (e *energy) within(x *Shortage) (tasks []int) {
	for _, u := range e.s.Pools[x.Pool].Uses {
		if e.lo[StartOf(u.Task)] >= x.From && e.hi[EndOf(u.Task)] <= x.To && e.length[u.Task].least >= max(1, x.Length) {
			tasks = append(tasks, u.Task)
		}
	}
	return tasks
}

// enough lists as few tasks of a shortage as need more than there is, the greatest needs first.
func (e *energy) enough(x *Shortage) (tasks []int) {
	need := map[int]int{}
	for _, u := range e.s.Pools[x.Pool].Uses {
		if x.Length > 0 {
			need[u.Task] += u.Amount
		} else {
			need[u.Task] += u.Amount * e.length[u.Task].least
		}
	}
	tasks = e.within(x)
	slices.SortStableFunc(tasks, func(a, b int) int { return need[b] - need[a] })
	e.w.spend(8 * len(tasks))
	sum := 0
	for k, i := range tasks {
		if sum += need[i]; sum > x.Room {
			return tasks[:k+1]
		}
	}
	return tasks
}
