package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// relaxedTimes are the times of the relaxed solution, by event.
func (r *search) relaxedTimes() []int {
	times := make([]int, len(r.m.place))
	for v := 1; v < len(times); v++ {
		p := r.m.place[v]
		times[v] = int(r.b.f.x[p.node]) + p.off
	}
	return times
}

// Where no cost bends, the relaxed solution has a difficulty exactly where it is no timetable, in holes as in pools.
func TestDifficultiesAreWhatIsNotKept(t *testing.T) {
	kept, broken := 0, 0
	tenfold(t, func(t *rapid.T) {
		var s *Shop
		if rapid.Bool().Draw(t, "pools") {
			s, _ = small(t)
		} else {
			s = &Shop{Net: pairOfTasks(t), Tasks: 2}
		}
		if _, clash := s.Net.Earliest(nil); clash != nil {
			return
		}
		c := Cost{Linear: make([]int64, s.Net.Events)}
		for v := 1; v < s.Net.Events; v++ {
			c.Linear[v] = rapid.Int64Range(-4, 4).Draw(t, "slope")
		}
		r := within(s, c, Options{})
		if !r.s.propagate() || r.s.bankrupt() {
			return
		}
		r.b.eval()
		times := r.relaxedTimes()
		if s.Keeps(nil, times) {
			kept++
			if found := r.choices(); len(found) != 0 {
				t.Fatalf("%v is a timetable, and has %v", times, found)
			}
		} else {
			broken++
			if len(r.choices()) == 0 {
				t.Fatalf("%v is no timetable, and no difficulty is seen", times)
			}
		}
	})
	if kept == 0 || broken == 0 {
		t.Errorf("%d kept and %d broken", kept, broken)
	}
}

// By search it is known whether there is a timetable, and what a cheaper method rules out has none.
func TestWhatIsRuledOutHasNoTimetable(t *testing.T) {
	met := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		s, c := small(t)
		_, found := optimum(s, c)
		met[found]++
		if got := s.Refuted(nil, BySearch); got != truth(!found) {
			t.Fatalf("by search ruled out: %v; there is one: %v", got, found)
		}
		for _, by := range []Method{ByNeed, ByBounds, ByTrial} {
			if got := s.Refuted(nil, by); got == Unsure || found && got == Yes {
				t.Fatalf("by method %d ruled out: %v; there is one: %v", by, got, found)
			}
		}
	})
	if met[true] == 0 || met[false] == 0 {
		t.Error(met)
	}
}

// All costs are a multiple of the step: the greatest common divisor of the slopes, of those of curves and of their
// values, and one where nothing costs anything.
func TestStepOfCosts(t *testing.T) {
	for _, c := range []struct {
		linear []int64 // of the starts
		points []Point
		want   int64
	}{
		{[]int64{4, -6}, nil, 2},
		{[]int64{3, 5}, nil, 1},
		{[]int64{0, 0}, nil, 1},
		{[]int64{0, -9}, nil, 9},
		{[]int64{0, 0}, []Point{{0, 0}, {2, 8}, {10, 24}}, 2}, // slopes 4 and 2
		{[]int64{0, 6}, []Point{{0, 0}, {2, 12}, {6, 36}}, 6}, // slope 6
	} {
		s := &Shop{Net: &Net{Events: 5, Limit: 10}, Tasks: 2}
		cost := Cost{Linear: make([]int64, 5)}
		for i := range 2 {
			s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: StartOf(i)}, Arc{From: EndOf(i), To: 0, W: -10},
				Arc{From: StartOf(i), To: EndOf(i), W: 1}, Arc{From: EndOf(i), To: StartOf(i), W: -3})
			cost.Linear[StartOf(i)] = c.linear[i]
		}
		if c.points != nil {
			cost.Curves = []Curve{{Event: StartOf(0), Sign: 1, Points: c.points}}
		}
		if got := within(s, cost, Options{}).b.step; got != c.want {
			t.Errorf("%v and %v: a step of %d, want %d", c.linear, c.points, got, c.want)
		}
	}
}

// The shortest that a task can take is what its rules say, and nothing where they say nothing.
func TestLeastLengths(t *testing.T) {
	for _, c := range []struct {
		arcs []Arc
		want int
	}{
		{[]Arc{{From: 1, To: 2, W: 0}, {From: 2, To: 1, W: -5}}, 0},
		{[]Arc{{From: 1, To: 2, W: 2}, {From: 2, To: 1, W: -5}}, 2},
		{[]Arc{{From: 1, To: 2, W: -3}}, 0},
		{[]Arc{{From: 1, To: 2, W: 4}, {From: 2, To: 1, W: -4}}, 4},
		{nil, 0},
	} {
		s := &Shop{Net: &Net{Events: 3, Limit: 10, Arcs: slices.Concat(between(0, 1, 0, 10), between(0, 2, 0, 10), c.arcs)},
			Tasks: 1}
		if got := within(s, Cost{Linear: make([]int64, 3)}, Options{}).m.least(0); got != c.want {
			t.Errorf("%v: %d, want %d", c.arcs, got, c.want)
		}
	}
}

// The holes of a task of fixed length lie apart and in order once they are merged, and keep it out at the same times.
func TestHolesAreMerged(t *testing.T) {
	tenfold(t, func(t *rapid.T) {
		const limit, long = 20, 2
		s := &Shop{Tasks: 1, Net: &Net{Events: 3, Limit: limit,
			Arcs: slices.Concat(between(0, 1, 0, limit), between(0, 2, 0, limit), between(1, 2, long, long))}}
		for range rapid.IntRange(0, 5).Draw(t, "holes") {
			from := rapid.IntRange(0, limit-1).Draw(t, "from")
			s.Net.Holes = append(s.Net.Holes, Hole{From: from, To: from + rapid.IntRange(1, 5).Draw(t, "long")})
		}
		if _, clash := s.Net.Earliest(nil); clash != nil {
			return
		}
		m := within(s, Cost{Linear: make([]int64, 3)}, Options{}).m
		at := m.start(0)
		gaps := m.gaps[at.node]
		for k, g := range gaps {
			if g.a >= g.b || k > 0 && gaps[k-1].b > g.a {
				t.Fatalf("%v of %v", gaps, s.Net.Holes)
			}
		}
		for x := m.lo[at.node]; x <= m.hi[at.node]; x++ {
			start := x + at.off
			out := slices.ContainsFunc(s.Net.Holes, func(h Hole) bool { return start+long > h.From && start < h.To })
			if out != slices.ContainsFunc(gaps, func(g gap) bool { return x > g.a && x < g.b }) {
				t.Fatalf("at %d: kept out %v, but by %v of %v", start, out, gaps, s.Net.Holes)
			}
		}
	})
}
