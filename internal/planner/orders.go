package planner

import "slices"

// Orders turns the use of pools in a timetable into differences: any times that satisfy the
// network and these differences respect the pools too. Units of a pool are handed from task
// to task in order of start. Source: Policella, Cesta, Oddi and Smith, "From precedence
// constraint posting to partial order schedules", AI Communications 20 (2007).
//
// ok is false when the watch is over.
func (s *Shop) Orders(w *Watch, times []int) (arcs []Arc, ok bool) {
	var out []Arc
	seen := map[[2]int]int{}
	rule := -1
	add := func(i, j, setup int) {
		k := [2]int{i, j}
		if at, ok := seen[k]; ok {
			out[at].W = max(out[at].W, setup)
			return
		}
		seen[k] = len(out)
		out = append(out, Arc{From: EndOf(i), To: StartOf(j), W: setup, Rule: rule})
	}
	for _, p := range s.Pools {
		rule = p.Rule
		uses := inOrder(p.Uses, times)
		// Two tasks that together need more than there is have held the same unit one after the
		// other, so handing units over already keeps their order; only changeovers and programs
		// ask for more.
		programs := slices.ContainsFunc(uses, func(u Use) bool { return u.Program != 0 })
		for y, b := range uses {
			if p.Changeover == 0 && len(p.Setups) == 0 && !programs {
				break
			}
			var direct []Use // those that come before b with nothing between
			for x := y - 1; x >= 0; x-- {
				a := uses[x]
				if w.spend(1 + len(direct)) {
					return nil, false
				}
				// With changeovers of its own each pair is kept: a short way around may take less than the direct one.
				between := func(d Use) bool { return len(p.Setups) == 0 && p.apart(a, d) }
				if p.apart(a, b) && !slices.ContainsFunc(direct, between) {
					direct = append(direct, a)
					add(a.Task, b.Task, p.setup(a, b))
				}
			}
		}
		if p.Capacity > 0 {
			if !hand(w, p, uses, times, add) {
				return nil, false
			}
		}
	}
	return out, true
}

// hand gives units of a pool from task to task; false when the watch is over.
func hand(w *Watch, p Pool, uses []Use, times []int, add func(i, j, setup int)) bool {
	type holder struct{ task, amount int }
	held := []holder{{-1, p.Capacity}}
	for _, u := range uses {
		need := u.Amount
		// Those who hold longest ago first: their units have been free longest.
		for k := 0; k < len(held) && need > 0; {
			h := &held[k]
			if h.task >= 0 && times[EndOf(h.task)] > times[StartOf(u.Task)] {
				k++
				continue
			}
			if h.task >= 0 {
				add(h.task, u.Task, 0)
			}
			take := min(need, h.amount)
			need -= take
			h.amount -= take
			if h.amount == 0 {
				held = append(held[:k], held[k+1:]...)
			} else {
				k++
			}
		}
		if w.spend(4 + len(held)) {
			return false
		}
		held = append(held, holder{u.Task, u.Amount})
	}
	return true
}

// Fits reports whether times respect the pools; false when the watch is over.
func (s *Shop) Fits(w *Watch, times []int) bool {
	for _, p := range s.Pools {
		longest := p.longest()
		var active []Use // begun, and not yet ended for so long that a changeover is over
		for _, u := range inOrder(p.Uses, times) {
			now := times[StartOf(u.Task)]
			total, left := u.Amount, active[:0]
			for _, a := range active {
				end := times[EndOf(a.Task)]
				if end+longest <= now {
					continue
				}
				if p.apart(a, u) && end+p.setup(a, u) > now {
					return false
				}
				if end > now {
					total += a.Amount
				}
				left = append(left, a)
			}
			if p.Capacity > 0 && total > p.Capacity || w.spend(len(active)+4) {
				return false
			}
			active = append(left, u)
		}
	}
	return true
}

// Keeps reports whether times keep every rule of the shop.
func (s *Shop) Keeps(w *Watch, times []int) bool {
	for _, a := range s.Net.Arcs {
		if times[a.To] < times[a.From]+a.W {
			return false
		}
	}
	for _, h := range s.Net.Holes {
		if times[EndOf(h.Task)] > h.From && times[StartOf(h.Task)] < h.To {
			return false
		}
	}
	return !w.spend(len(s.Net.Arcs)+len(s.Net.Holes)) && s.Fits(w, times)
}

// inOrder lists the uses that take time, in order of start.
func inOrder(all []Use, times []int) []Use {
	var uses []Use
	for _, u := range all {
		if times[StartOf(u.Task)] < times[EndOf(u.Task)] {
			uses = append(uses, u)
		}
	}
	slices.SortStableFunc(uses, func(a, b Use) int {
		if d := times[StartOf(a.Task)] - times[StartOf(b.Task)]; d != 0 {
			return d
		}
		return a.Task - b.Task
	})
	return uses
}
