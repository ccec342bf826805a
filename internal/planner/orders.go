package planner

import "slices"

// Orders turns the use of pools in a timetable into differences: any times that satisfy the
// network and these differences respect the pools too. Units of a pool are handed from task
// to task in order of start. Source: Policella, Cesta, Oddi and Smith, "From precedence
// constraint posting to partial order schedules", AI Communications 20 (2007).
func (s *Shop) Orders(times []int) []Arc {
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
		var uses []Use
		for _, u := range p.Uses {
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
		// Two tasks that together need more than there is have held the same unit one after the
		// other, so handing units over already keeps their order; only changeovers and programs
		// ask for more.
		programs := slices.ContainsFunc(uses, func(u Use) bool { return u.Program != 0 })
		for y, b := range uses {
			if p.Changeover == 0 && !programs {
				break
			}
			for _, a := range uses[:y] {
				apart := p.Capacity > 0 && a.Amount+b.Amount > p.Capacity || a.Program != 0 && b.Program != 0 && a.Program != b.Program
				if apart {
					add(a.Task, b.Task, p.Changeover)
				}
			}
		}
		if p.Capacity > 0 {
			hand(p, uses, times, add)
		}
	}
	return out
}

// hand gives units of a pool from task to task.
func hand(p Pool, uses []Use, times []int, add func(i, j, setup int)) {
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
		held = append(held, holder{u.Task, u.Amount})
	}
}

// Fits reports whether times respect the pools.
func (s *Shop) Fits(times []int) bool {
	for _, p := range s.Pools {
		for x, a := range p.Uses {
			sa, ea := times[StartOf(a.Task)], times[EndOf(a.Task)]
			if sa == ea {
				continue
			}
			total := 0
			for y, b := range p.Uses {
				sb, eb := times[StartOf(b.Task)], times[EndOf(b.Task)]
				if sb == eb {
					continue
				}
				if sb <= sa && sa < eb {
					total += b.Amount
				}
				if y <= x {
					continue
				}
				apart := p.Capacity > 0 && a.Amount+b.Amount > p.Capacity || a.Program != 0 && b.Program != 0 && a.Program != b.Program
				if apart && ea+p.Changeover > sb && eb+p.Changeover > sa {
					return false
				}
			}
			if p.Capacity > 0 && total > p.Capacity {
				return false
			}
		}
	}
	return true
}
