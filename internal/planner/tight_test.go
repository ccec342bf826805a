package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Shaving takes no time of any timetable away, and leaves nothing only where there is none; what is called idle is in
// use in no timetable; and times keep a shop exactly when they are one of its timetables.
func TestShavingKeepsEveryTimetable(t *testing.T) {
	shaved, idle := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s, _ := small(t)
		lo, clash := s.Net.Earliest(nil)
		if clash != nil {
			return
		}
		hi, _, _ := s.Net.Latest(nil)
		m := build(nil, s, lo, hi)
		st := newState(nil, m)
		for v := range m.n {
			st.enqueue(v)
		}
		left := st.propagate() && !st.bankrupt()
		for moved := left; moved && left; {
			moved, left = st.shave()
		}
		if !slices.Equal(st.lo, m.lo) || !slices.Equal(st.hi, m.hi) {
			shaved++
		}
		every(s, func(times []int) {
			if !left {
				t.Fatalf("refuted, but %v is a timetable", times)
			}
			if !s.Keeps(nil, times) {
				t.Fatalf("%v keeps every rule", times)
			}
			for v := 1; v < len(times); v++ {
				at := m.place[v]
				if x := times[v] - at.off; x < st.lo[at.node] || x > st.hi[at.node] {
					t.Fatalf("event %d at %d was shaved off: %d to %d", v, times[v], st.lo[at.node], st.hi[at.node])
				}
			}
			for _, g := range m.budgets {
				for _, span := range m.idle(&g) {
					idle++
					for _, u := range g.uses {
						if times[StartOf(u.Task)] < span[1] && times[EndOf(u.Task)] > span[0] {
							t.Fatalf("task %d is under way in %v, which is idle: %v", u.Task, span, times)
						}
					}
				}
			}
		})
		some := make([]int, s.Net.Events)
		for i := range s.Tasks {
			some[StartOf(i)] = rapid.IntRange(0, s.Net.Limit).Draw(t, "start")
			some[EndOf(i)] = rapid.IntRange(0, s.Net.Limit).Draw(t, "end")
		}
		found := false
		every(s, func(times []int) { found = found || slices.Equal(times, some) })
		if s.Keeps(nil, some) != found {
			t.Fatalf("%v is a timetable: %v", some, found)
		}
	})
	if shaved == 0 || idle == 0 {
		t.Errorf("%d shaved, %d idle", shaved, idle)
	}
}

// The fullest span is the one that trying all pairs of ends finds, and what lies in it takes what is said of it.
func TestTheFullestSpan(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		s, _ := small(t)
		e, clash := s.energy(nil)
		if clash != nil {
			return
		}
		for k, p := range s.Pools {
			p.Closed = []Closing{{From: 3, To: rapid.IntRange(3, 5).Draw(t, "closed")}}
			g := budget{cap: p.Capacity, uses: p.Uses, closed: p.closed()}
			for _, u := range p.Uses {
				g.length = append(g.length, e.length[u.Task].least)
			}
			var num, den int
			for from := range s.Net.Limit {
				for to := from + 1; to <= s.Net.Limit; to++ {
					need, tasks := 0, 0
					for _, u := range p.Uses {
						if e.lo[StartOf(u.Task)] >= from && e.hi[EndOf(u.Task)] <= to {
							need, tasks = need+u.Amount*e.length[u.Task].least, tasks+1
						}
					}
					room := 0
					for at := from; at < to; at++ {
						if at < p.Closed[0].From || at >= p.Closed[0].To {
							room += p.Capacity
						}
					}
					if tasks > 1 && need <= room && (den == 0 || need*den > num*room) {
						num, den = need, room
					}
				}
			}
			x := e.fullest(&g)
			if (x == nil) != (den == 0) {
				t.Fatalf("%v, want %d of %d", x, num, den)
			}
			if x == nil {
				continue
			}
			found++
			if x.Pool = k; x.Need*den != num*x.Room || len(e.within(x)) < 2 {
				t.Fatalf("%+v, want %d of %d", x, num, den)
			}
		}
	})
	if found == 0 {
		t.Error("no span was found")
	}
}

// Spans that touch are one, and what two lists have in common lies in both.
func TestSpans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const limit = 12
		draw := func(what string) (spans [][2]int, in [limit]bool) {
			for range rapid.IntRange(0, 4).Draw(t, what) {
				from := rapid.IntRange(0, limit-1).Draw(t, "from")
				to := rapid.IntRange(from+1, limit).Draw(t, "to")
				spans = append(spans, [2]int{from, to})
				for at := from; at < to; at++ {
					in[at] = true
				}
			}
			return joined(spans), in
		}
		covered := func(spans [][2]int) (in [limit]bool) {
			for _, c := range spans {
				for at := c[0]; at < c[1]; at++ {
					in[at] = true
				}
			}
			return in
		}
		a, inA := draw("a")
		b, inB := draw("b")
		if covered(a) != inA || covered(b) != inB {
			t.Fatalf("%v, %v", a, b)
		}
		for k := 1; k < len(a); k++ {
			if a[k-1][1] >= a[k][0] {
				t.Fatalf("%v is not in order, or touches", a)
			}
		}
		var both [limit]bool
		for at := range both {
			both[at] = inA[at] && inB[at]
		}
		if covered(common(a, b)) != both {
			t.Fatalf("%v and %v have %v in common", a, b, common(a, b))
		}
	})
}
