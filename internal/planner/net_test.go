package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// tenfold checks a property of what is quickly drawn and tried ten times as often as others.
func tenfold(t *testing.T, f func(*rapid.T)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		for range 10 {
			f(t)
		}
	})
}

// pairOfTasks draws a network of two tasks, so small that all times can be tried. Every difference and hole has a rule
// of its own.
func pairOfTasks(t *rapid.T) *Net {
	limit := rapid.IntRange(4, 7).Draw(t, "limit")
	n := &Net{Events: 5, Limit: limit}
	for i := range 2 {
		for _, v := range []int{StartOf(i), EndOf(i)} {
			n.Arcs = append(n.Arcs, Arc{To: v, Rule: -1}, Arc{From: v, W: -limit, Rule: -1, Upper: true})
		}
	}
	rule := 0
	arc := func(from, to, w int) {
		n.Arcs = append(n.Arcs, Arc{From: from, To: to, W: w, Rule: rule, Upper: rapid.Bool().Draw(t, "upper")})
		rule++
	}
	for i := range 2 {
		least := rapid.IntRange(0, 3).Draw(t, "least")
		arc(StartOf(i), EndOf(i), least)
		if rapid.Bool().Draw(t, "most") {
			arc(EndOf(i), StartOf(i), -least-rapid.IntRange(0, 2).Draw(t, "spread"))
		}
	}
	for range rapid.IntRange(0, 3).Draw(t, "links") {
		from, to := rapid.IntRange(0, 4).Draw(t, "from"), rapid.IntRange(0, 4).Draw(t, "to")
		if from != to {
			arc(from, to, rapid.IntRange(-6, 3).Draw(t, "w"))
		}
	}
	for range rapid.IntRange(0, 3).Draw(t, "holes") {
		from := rapid.IntRange(-1, limit-1).Draw(t, "hole")
		to := from + rapid.IntRange(1, 3).Draw(t, "long")
		n.Holes = append(n.Holes, Hole{Task: rapid.IntRange(0, 1).Draw(t, "task"), From: from, To: to, Rule: rule})
		rule++
	}
	return n
}

// solutions lists the times that keep the rules of a network of two tasks, of which changed says what is left: how much
// less a difference asks for, and what a hole closes.
func solutions(n *Net, kept func(rule int) bool, less func(Arc) int, hole func(Hole) (from, to int)) (all [][]int) {
	if kept == nil {
		kept = func(int) bool { return true }
	}
	x := make([]int, n.Events)
	var place func(v int)
	place = func(v int) {
		if v < n.Events {
			for x[v] = 0; x[v] <= n.Limit; x[v]++ {
				place(v + 1)
			}
			return
		}
		for _, a := range n.Arcs {
			w := a.W
			if less != nil {
				w -= less(a)
			}
			if (a.Rule < 0 || kept(a.Rule)) && x[a.To]-x[a.From] < w {
				return
			}
		}
		for _, h := range n.Holes {
			from, to := h.From, h.To
			if hole != nil {
				from, to = hole(h)
			}
			if kept(h.Rule) && from < to && x[EndOf(h.Task)] > from && x[StartOf(h.Task)] < to {
				return
			}
		}
		all = append(all, slices.Clone(x))
	}
	place(1)
	return all
}

// among keeps the rules listed.
func among(rules []int) func(int) bool { return func(r int) bool { return slices.Contains(rules, r) } }

// A network's earliest and latest times, the windows of its events and whether it has any are what trying all times
// finds, and the reasons that are given for a time suffice for it.
func TestNetAgreesWithTryingEverything(t *testing.T) {
	holes := 0
	tenfold(t, func(t *rapid.T) {
		n := pairOfTasks(t)
		all := solutions(n, nil, nil, nil)
		for range 3 { // most have no times
			if len(all) == 0 {
				n = pairOfTasks(t)
				all = solutions(n, nil, nil, nil)
			}
		}
		early, clash := n.Earliest(nil)
		late, drivers, back := n.Latest(nil)
		if (clash == nil) != (len(all) > 0) || (back == nil) != (len(all) > 0) {
			t.Fatalf("%v and %v, but there are %d", clash, back, len(all))
		}
		reach := NewReach(nil, n)
		if len(all) == 0 {
			if reach != nil || n.Chain(nil, 1) != nil {
				t.Fatal("reasons for times that are not there")
			}
			return
		}
		times, causes := n.Causes()
		for v := range n.Events {
			at := map[int]bool{}
			for _, x := range all {
				at[x[v]] = true
			}
			var windows [][2]int
			for m := range n.Limit + 1 {
				if k := len(windows) - 1; at[m] && k >= 0 && windows[k][1] == m-1 {
					windows[k][1] = m
				} else if at[m] {
					windows = append(windows, [2]int{m, m})
				}
			}
			least, most := windows[0][0], windows[len(windows)-1][1]
			if early[v] != least || late[v] != most || reach.Early(v) != least || reach.Late(v) != most || times[v] != most {
				t.Fatalf("event %d: %d to %d, want %d to %d", v, early[v], late[v], least, most)
			}
			if v == 0 {
				continue
			}
			if got := reach.Windows(v); !slices.Equal(got, windows) {
				t.Fatalf("event %d has the times %v, want %v", v, got, windows)
			}
			if len(windows) > 1 {
				holes++
			}
			for m := range n.Limit + 1 {
				if next := reach.Next(v, m); (next != nil) != (m <= most) || next != nil &&
					(!slices.ContainsFunc(all, func(x []int) bool { return slices.Equal(x, next) }) || next[v] < m) {
					t.Fatalf("event %d from %d on: %v", v, m, next)
				}
			}
			// The rules that are named hold the event back, or push it, by themselves.
			for _, x := range solutions(n, among(drivers(v)), nil, nil) {
				if x[v] > late[v] {
					t.Fatalf("event %d can be at %d with %v alone", v, x[v], drivers(v))
				}
			}
			n.checkChain(t, v, early[v])
			n.checkCause(t, v, late, causes[v])
		}
	})
	if holes == 0 {
		t.Error("no event had a hole in its times")
	}
}

// checkChain follows the pushes that bring an event to its least time.
func (n *Net) checkChain(t *rapid.T, event, least int) {
	chain := n.Chain(nil, event)
	last := Push{}
	for _, p := range chain {
		arc := slices.ContainsFunc(n.Arcs, func(a Arc) bool {
			return !p.Jumped && a.From == p.From && a.To == p.Event && a.Rule == p.Rule && last.Value+a.W == p.Value
		})
		hole := slices.ContainsFunc(n.Holes, func(h Hole) bool {
			return p.Jumped && p.From == EndOf(h.Task) && p.Event == StartOf(h.Task) && h.Rule == p.Rule && h.To == p.Value &&
				last.Value > h.From
		})
		if p.From != last.Event || arc == hole {
			t.Fatalf("%+v does not follow from %+v", p, last)
		}
		last = p
	}
	if last.Event != event || last.Value != least {
		t.Fatalf("%v does not bring event %d to %d", chain, event, least)
	}
}

// checkCause sees that the cause of an event's latest time is one.
func (n *Net) checkCause(t *rapid.T, event int, late []int, c Cause) {
	arc := slices.ContainsFunc(n.Arcs, func(a Arc) bool {
		return !c.Jumped && a.From == event && a.To == c.From && a.Rule == c.Rule && late[c.From]-a.W == late[event]
	})
	hole := slices.ContainsFunc(n.Holes, func(h Hole) bool {
		return c.Jumped && event == EndOf(h.Task) && c.From == StartOf(h.Task) && h.Rule == c.Rule && late[event] == h.From &&
			late[c.From] < h.To
	})
	if arc == hole {
		t.Fatalf("event %d at %d because of %+v", event, late[event], c)
	}
}

// The rules of a clash have no times by themselves. Once shrunk they do without any one of them; and those of a cycle
// miss each other by what is said: with any one of them weaker by so much they have times, and not by less.
func TestClashes(t *testing.T) {
	cycles, others := 0, 0
	tenfold(t, func(t *rapid.T) {
		n := pairOfTasks(t)
		_, clash := n.Earliest(nil)
		_, _, back := n.Latest(nil)
		if clash == nil {
			return
		}
		for _, c := range []*Clash{clash, back, n.Shrink(nil, clash), n.Shrink(nil, back)} {
			if len(solutions(n, among(c.Rules), nil, nil)) > 0 {
				t.Fatalf("%v have times", c.Rules)
			}
		}
		last := n.Shrink(nil, clash)
		for k, r := range last.Rules {
			if rest := slices.Concat(last.Rules[:k], last.Rules[k+1:]); len(solutions(n, among(rest), nil, nil)) == 0 {
				t.Fatalf("%v have no times without %d either", last.Rules, r)
			}
			if !last.Cycle {
				others++
				continue
			}
			cycles++
			for _, by := range []int{last.Short - 1, last.Short} {
				weaker := solutions(n, among(last.Rules), func(a Arc) int {
					if a.Rule == r {
						return by
					}
					return 0
				}, nil)
				if (len(weaker) > 0) != (by == last.Short) {
					t.Fatalf("%v miss each other by %d, but with %d weaker by %d there are %d", last.Rules, last.Short, r, by,
						len(weaker))
				}
			}
		}
		if end := n.Refutation(nil); len(end) == 0 || !slices.ContainsFunc(n.Arcs, func(a Arc) bool {
			p := end[len(end)-1]
			return a.To == p.Event && a.From == p.From && a.Rule == p.Rule
		}) {
			t.Fatalf("refuted by %v", end)
		}
	})
	if cycles == 0 || others == 0 {
		t.Errorf("%d cycles and %d others", cycles, others)
	}
}

// A rule that is weaker by so much asks for so much less on its side: an upper limit rises at the back, a lower one
// falls at the front, a hole begins later or ends earlier. Weaker rules have times exactly when trying says so.
func TestWeakerRules(t *testing.T) {
	helped := 0
	tenfold(t, func(t *rapid.T) {
		n := pairOfTasks(t)
		var list []Relax
		for range rapid.IntRange(1, 2).Draw(t, "changes") {
			r := Relax{By: rapid.IntRange(0, 4).Draw(t, "by"), Side: Side(rapid.IntRange(0, 1).Draw(t, "side"))}
			for range rapid.IntRange(1, 3).Draw(t, "rules") {
				r.Rules = append(r.Rules, rapid.IntRange(0, 8).Draw(t, "rule"))
			}
			slices.Sort(r.Rules)
			r.Rules = slices.Compact(r.Rules)
			list = append(list, r)
		}
		by := func(rule int, side Side) (sum int) {
			for _, r := range list {
				if r.Side == side && slices.Contains(r.Rules, rule) {
					sum += r.By
				}
			}
			return sum
		}
		less := func(a Arc) int {
			if a.Upper {
				return by(a.Rule, Back)
			}
			return by(a.Rule, Front)
		}
		hole := func(h Hole) (int, int) { return h.From + by(h.Rule, Front), h.To - by(h.Rule, Back) }
		want := len(solutions(n, nil, less, hole)) > 0
		if want && len(solutions(n, nil, nil, nil)) == 0 {
			helped++
		}
		p := NewProber(nil, n)
		for range 2 { // what is asked leaves no trace
			if got := p.Feasible(list...); got != truth(want) {
				t.Fatalf("%v: %v, want %v", list, got, want)
			}
			if got := p.Feasible(); got != truth(len(solutions(n, nil, nil, nil)) > 0) {
				t.Fatalf("without a change: %v", got)
			}
		}
		s := &Shop{Net: n, Tasks: 2}
		if got := s.Relaxed(list...).Possible(nil); got != truth(want) {
			t.Fatalf("%v: %v, want %v", list, got, want)
		}
		out := rapid.IntRange(0, 8).Draw(t, "without")
		left := solutions(n, func(r int) bool { return r != out }, nil, nil)
		if got := s.Without(out).Possible(nil); got != truth(len(left) > 0) {
			t.Fatalf("without %d: %v, want %v", out, got, len(left) > 0)
		}
	})
	if helped == 0 {
		t.Error("no change helped")
	}
}

// A pool gives by its capacity and by when it is closed.
func TestWeakerPools(t *testing.T) {
	s := &Shop{Tasks: 1, Net: &Net{Events: 3, Holes: []Hole{{0, 3, 8, 1}, {0, 10, 12, 2}}}, Pools: []Pool{
		{Capacity: 1, Rule: 7, Closed: []Closing{{3, 8, 1}, {10, 12, 2}}},
		{Capacity: 0, Rule: 8},
	}}
	got := s.Relaxed(Relax{Rules: []int{7, 8}, By: 3, Side: Back}, Relax{Rules: []int{1}, By: 2, Side: Front},
		Relax{Rules: []int{2}, By: 2, Side: Back})
	if p := got.Pools[0]; p.Capacity != 4 || !slices.Equal(p.Closed, []Closing{{5, 8, 1}}) || got.Pools[1].Capacity != 0 {
		t.Error(got.Pools)
	}
	without := s.Without(1)
	if p := without.Pools[0]; !slices.Equal(p.Closed, []Closing{{10, 12, 2}}) || len(without.Pools) != 2 {
		t.Error(without.Pools)
	}
	if p := s.Without(7).Pools; len(p) != 1 || p[0].Rule != 8 {
		t.Error(p)
	}
}

// Whatever keeps the differences for the orders of a timetable respects the pools, changeovers included; and the
// timetable keeps them.
func TestOrdersKeepThePools(t *testing.T) {
	ordered := 0
	tenfold(t, func(t *rapid.T) {
		s, _ := small(t)
		for k := range s.Pools {
			p := &s.Pools[k]
			if p.Rule = 50 + k; rapid.IntRange(0, 3).Draw(t, "never short") == 0 {
				p.Capacity = 0
			}
			p.Changeover = rapid.IntRange(0, 1).Draw(t, "changeover")
			for u := range p.Uses {
				p.Uses[u].Program = rapid.IntRange(0, 2).Draw(t, "program")
			}
			if rapid.Bool().Draw(t, "setups") {
				p.Setups = map[[2]int]int{{1, 2}: rapid.IntRange(0, 2).Draw(t, "setup"), {2, 1}: 1, {1, 1}: 2}
			}
		}
		var some [][]int
		every(s, func(times []int) { some = append(some, slices.Clone(times)) })
		if len(some) == 0 {
			return
		}
		times := rapid.SampledFrom(some).Draw(t, "times")
		arcs, ok := s.Orders(nil, times)
		kept := func(x []int) bool {
			return !slices.ContainsFunc(arcs, func(a Arc) bool { return x[a.To] < x[a.From]+a.W })
		}
		if !ok || !kept(times) {
			t.Fatalf("%v does not keep %v", times, arcs)
		}
		for _, a := range arcs { // each says that one task that uses a pool is over before another
			i, j := (a.From-1)/2, (a.To-1)/2
			if a.From != EndOf(i) || a.To != StartOf(j) || !slices.ContainsFunc(s.Pools, func(p Pool) bool {
				x := slices.IndexFunc(p.Uses, func(u Use) bool { return u.Task == i })
				y := slices.IndexFunc(p.Uses, func(u Use) bool { return u.Task == j })
				return p.Rule == a.Rule && x >= 0 && y >= 0 && (p.Capacity > 0 || p.apart(p.Uses[x], p.Uses[y]))
			}) {
				t.Fatalf("%v does not belong to a pool", a)
			}
		}
		for _, x := range some {
			own, ok := s.Orders(nil, x)
			if i := slices.IndexFunc(own, func(a Arc) bool { return x[a.To] < x[a.From]+a.W }); !ok || i >= 0 {
				t.Fatalf("%v does not keep %v", x, own)
			}
		}
		ordered += len(arcs)
		free := &Shop{Net: s.Net, Tasks: s.Tasks}
		every(free, func(x []int) {
			if kept(x) && !s.Fits(nil, x) {
				t.Fatalf("%v keeps %v, but does not fit", x, arcs)
			}
		})
	})
	if ordered == 0 {
		t.Error("nothing was in order")
	}
}
