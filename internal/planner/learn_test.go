package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// A learner finds a timetable exactly when trying everything does; where there is none the rules that it names have
// none by themselves, as the search by bounds proves, which shares nothing with it.
func TestLearnerAgreesWithTryingEverything(t *testing.T) {
	refuted, failures := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s, _ := small(t)
		if l := loads(t); l.Tasks <= 4 && rapid.Bool().Draw(t, "loads") {
			s = l
		}
		_, found := optimum(s, Cost{Linear: make([]int64, s.Net.Events)})
		if _, clash := s.Net.Earliest(nil); clash != nil {
			return
		}
		out := s.learn(nil)
		failures = max(failures, out.fails)
		if (out.truth == Yes) != found || out.truth == Unsure {
			t.Fatalf("%d, but trying everything finds %v", out.truth, found)
		}
		if found {
			kept := slices.IndexFunc(s.Net.Arcs, func(a Arc) bool { return out.times[a.To] < out.times[a.From]+a.W })
			if kept >= 0 || !s.Fits(nil, out.times) || out.times[0] != 0 {
				t.Fatalf("%v breaks arc %d", out.times, kept)
			}
			for _, h := range s.Net.Holes {
				if out.times[EndOf(h.Task)] > h.From && out.times[StartOf(h.Task)] < h.To {
					t.Fatalf("%v lies in %v", out.times, h)
				}
			}
			return
		}
		refuted++
		core := s.Only(out.core)
		if _, clash := core.Net.Earliest(nil); clash != nil {
			return
		}
		r := within(core, Cost{Linear: make([]int64, s.Net.Events)}, Options{})
		if r.s.propagate() {
			if r.explore(); r.times != nil || r.lost != noBound {
				t.Fatalf("%v have the timetable %v", out.core, r.times)
			}
		}
	})
	if refuted == 0 || failures == 0 {
		t.Errorf("%d refuted, %d failures at most", refuted, failures)
	}
}

// A bound that is added makes an event earlier until it cannot be; then it stays so.
func TestLearnerBoundsDescend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, _ := small(t)
		event := rapid.IntRange(1, s.Net.Events-1).Draw(t, "event")
		least, most, found := 1<<30, -1, false
		every(s, func(times []int) {
			least, most, found = min(least, times[event]), max(most, times[event]), true
		})
		if _, clash := s.Net.Earliest(nil); clash != nil || !found {
			return
		}
		later := rapid.Bool().Draw(t, "later")
		l, last := newLearner(nil, s), none
		for {
			out := l.run()
			if out.truth == No {
				break
			}
			if last = out.times[event]; later {
				l.bound(event, last+1, true)
			} else {
				l.bound(event, last-1, false)
			}
		}
		if later && last != most || !later && last != least {
			t.Fatalf("ends at %d, the times are %d to %d", last, least, most)
		}
		if l.run().truth != No {
			t.Fatal("found another after the last")
		}
	})
}

// Source of the sequence: Luby, Sinclair and Zuckerman 1993.
func TestLuby(t *testing.T) {
	for i, want := range []int{1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8} {
		if got := luby(i + 1); got != want {
			t.Errorf("%d: %d, want %d", i+1, got, want)
		}
	}
}

// Clauses are forgotten without what was worked out from them.
func TestLearnerForgets(t *testing.T) {
	l := newLearner(nil, pigeons(4, 3))
	l.begin()
	before := len(l.clause)
	for k := range mostLearned {
		c := clause{lits: []lit{atMostLit(1, 100+k), atLeastLit(3, 1)}, rules: make(ruleSet, l.words), used: k}
		l.add(c)
	}
	l.forget(0)
	if n := len(l.clause) - before; n != mostLearned/2 {
		t.Errorf("%d clauses are left", n)
	}
	for s, list := range l.watch {
		for _, id := range list {
			if c := l.clause[id].lits; int(c[0].s^1) != s && int(c[1].s^1) != s {
				t.Errorf("clause %d is not watched by side %d", id, s)
			}
		}
	}
	if out := l.run(); out.truth != No {
		t.Errorf("%+v", out)
	}
}

// pigeons is so many tasks of one unit of time in too few places one after the other.
func pigeons(n, places int) *Shop {
	s := &Shop{Net: &Net{Events: 1 + 2*n, Limit: places}, Tasks: n}
	p := Pool{Capacity: 1, Rule: 4 * n}
	for i := range n {
		s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: StartOf(i), Rule: 4 * i},
			Arc{From: EndOf(i), To: 0, W: -places, Rule: 4*i + 1}, Arc{From: StartOf(i), To: EndOf(i), W: 1, Rule: 4*i + 2},
			Arc{From: EndOf(i), To: StartOf(i), W: -1, Rule: 4*i + 3})
		p.Uses = append(p.Uses, Use{Task: i, Amount: 1})
	}
	s.Pools = []Pool{p}
	return s
}

// The rules of a proof are those that it takes: every task and the pool, and nothing about a task that has nothing to
// do with it.
func TestLearnerNamesTheRules(t *testing.T) {
	s := pigeons(4, 3)
	out := s.learn(nil)
	if out.truth != No || !slices.Contains(out.core, 16) {
		t.Fatalf("%+v", out)
	}
	i := s.Tasks
	s.Tasks++
	s.Net.Events += 2
	s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: StartOf(i), Rule: 90}, Arc{From: StartOf(i), To: EndOf(i), W: 1,
		Rule: 91}, Arc{From: EndOf(i), To: 0, W: -3, Rule: 92})
	out = s.learn(nil)
	if out.truth != No || slices.ContainsFunc(out.core, func(r int) bool { return r >= 90 }) {
		t.Fatalf("%+v", out)
	}
	if s.Possible(NewWatch(t.Context(), 0).Within(10)) != Unsure {
		t.Error("settled with no work")
	}
}

// Two tasks in turn that must also overlap are refuted at once however long the day is.
func TestLearnerSeesCycles(t *testing.T) {
	const day = 1 << 19
	s := &Shop{Net: &Net{Events: 5, Limit: day}, Tasks: 2}
	for i := range 2 {
		s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: StartOf(i), Rule: -1}, Arc{From: EndOf(i), To: 0, W: -day, Rule: -1},
			Arc{From: StartOf(i), To: EndOf(i), W: 2, Rule: i}, Arc{From: EndOf(i), To: StartOf(i), W: -2, Rule: i},
			Arc{From: StartOf(i), To: StartOf(1 - i), W: -1, Rule: 2})
	}
	s.Pools = []Pool{{Capacity: 1, Rule: 3, Uses: []Use{{Task: 0, Amount: 1}, {Task: 1, Amount: 1}}}}
	out := s.learn(NewWatch(t.Context(), 0).Within(20_000))
	if out.truth != No || !slices.Equal(out.core, []int{0, 1, 2, 3}) {
		t.Errorf("%+v", out)
	}
}

// Tasks that take no time use nothing: two of them at one moment are no failure, whether a rule of their own says so or
// what they are tied to does.
func TestLearnerLetsMomentsBe(t *testing.T) {
	s := &Shop{Net: &Net{Events: 5, Limit: 9}, Tasks: 2}
	for i := range 2 {
		s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: StartOf(i), W: 4, Rule: -1},
			Arc{From: EndOf(i), To: 0, W: -4, Rule: -1}, Arc{From: StartOf(i), To: EndOf(i), Rule: -1},
			Arc{From: EndOf(i), To: StartOf(i), Rule: -1})
	}
	s.Pools = []Pool{{Capacity: 1, Changeover: 2, Uses: []Use{{Task: 0, Amount: 1}, {Task: 1, Amount: 1}}}}
	if out := s.learn(nil); out.truth != Yes || !slices.Equal(out.times, []int{0, 4, 4, 4, 4}) {
		t.Errorf("%+v", out)
	}
}

// A rule of number 0 is one like any other, and is left out with all that it says.
func TestOnlyLeavesRulesOut(t *testing.T) {
	n := &Net{Events: 3, Limit: 9, Arcs: []Arc{{From: 0, To: 1, W: 1, Rule: 0}, {From: 1, To: 2, W: 2, Rule: 1},
		{From: 2, To: 0, W: -9, Rule: -1}}, Holes: []Hole{{From: 1, To: 3, Rule: 0}, {From: 4, To: 5, Rule: 1}}}
	for kept, want := range map[int][2]int{0: {2, 1}, 1: {2, 1}, 7: {1, 0}} {
		only := n.Only(map[int]bool{kept: true})
		if got := [2]int{len(only.Arcs), len(only.Holes)}; got != want || want[1] == 1 && only.Holes[0].Rule != kept {
			t.Errorf("rule %d: %v arcs and holes, want %v", kept, got, want)
		}
	}
}
