package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// small draws a shop of a few tasks of fixed lengths, so small that every timetable can be tried, and what it costs.
func small(t *rapid.T) (*Shop, Cost) {
	n, limit := rapid.IntRange(2, 4).Draw(t, "tasks"), rapid.IntRange(6, 10).Draw(t, "limit")
	s := &Shop{Net: &Net{Events: 1 + 2*n, Limit: limit}, Tasks: n}
	arc := func(a, b, w, rule int) { s.Net.Arcs = append(s.Net.Arcs, Arc{From: a, To: b, W: w, Rule: rule}) }
	c := Cost{Linear: make([]int64, s.Net.Events)}
	for i := range n {
		long := rapid.IntRange(1, 3).Draw(t, "long")
		arc(0, StartOf(i), 0, -1)
		arc(EndOf(i), 0, -limit, -1)
		arc(StartOf(i), EndOf(i), long, 3*i)
		arc(EndOf(i), StartOf(i), -long, 3*i)
		c.Linear[StartOf(i)] = rapid.Int64Range(-6, 6).Draw(t, "slope")
		if rapid.Bool().Draw(t, "hole") {
			from := rapid.IntRange(1, limit-1).Draw(t, "from")
			s.Net.Holes = append(s.Net.Holes, Hole{Task: i, From: from, To: from + 1, Rule: 3*i + 1})
		}
	}
	for range rapid.IntRange(0, 3).Draw(t, "links") {
		i, j := rapid.IntRange(0, n-1).Draw(t, "i"), rapid.IntRange(0, n-1).Draw(t, "j")
		if i != j {
			arc(StartOf(i), StartOf(j), rapid.IntRange(-4, 3).Draw(t, "lag"), 100)
		}
	}
	bend := rapid.IntRange(1, limit-1).Draw(t, "bend")
	c.Curves = []Curve{{Event: StartOf(0), Sign: 1, Points: []Point{
		{0, 0}, {bend, int64(bend) * rapid.Int64Range(-5, 5).Draw(t, "first")},
		{limit, rapid.Int64Range(-3, 3).Draw(t, "last") * int64(limit-bend)},
	}}}
	c.Curves[0].Points[2].V += c.Curves[0].Points[1].V
	for range rapid.IntRange(1, 2).Draw(t, "pools") {
		p := Pool{Capacity: rapid.IntRange(1, 3).Draw(t, "capacity"), Rule: 50}
		for i := range n {
			if rapid.IntRange(0, 3).Draw(t, "uses") > 0 {
				p.Uses = append(p.Uses, Use{Task: i, Amount: rapid.IntRange(1, p.Capacity).Draw(t, "amount")})
			}
		}
		s.Pools = append(s.Pools, p)
	}
	return s, c
}

// every calls f with the times of each timetable of a small shop.
func every(s *Shop, f func(times []int)) {
	times := make([]int, s.Net.Events)
	long := make([]int, s.Tasks)
	for _, a := range s.Net.Arcs {
		if a.From != 0 && a.To == a.From+1 && a.From%2 == 1 {
			long[(a.From-1)/2] = a.W
		}
	}
	ok := func() bool {
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
		return s.Fits(nil, times)
	}
	var place func(i int)
	place = func(i int) {
		if i == s.Tasks {
			if ok() {
				f(times)
			}
			return
		}
		for t := 0; t+long[i] <= s.Net.Limit; t++ {
			times[StartOf(i)], times[EndOf(i)] = t, t+long[i]
			place(i + 1)
		}
	}
	place(0)
}

// within prepares a search of a shop whose network is feasible.
func within(s *Shop, c Cost, opt Options) *search {
	lo, _ := s.Net.Earliest(nil)
	hi, _, _ := s.Net.Latest(nil)
	return s.search(nil, lo, hi, c, opt)
}

func optimum(s *Shop, c Cost) (best int64, found bool) {
	best = noBound
	every(s, func(times []int) { best, found = min(best, c.Of(times)), true })
	return best, found
}

// However prices are chosen the bound is no more than the least cost, and taking times away leaves every timetable that
// costs less than the limit.
func TestPricesBound(t *testing.T) {
	priced := 0
	rapid.Check(t, func(t *rapid.T) {
		s, c := small(t)
		for k := range s.Pools { // closed now and then, which keeps the tasks out
			p := &s.Pools[k]
			from := rapid.IntRange(0, s.Net.Limit-1).Draw(t, "closed")
			span := Closing{From: from, To: from + rapid.IntRange(1, 2).Draw(t, "so long"), Rule: 60 + k}
			if !rapid.Bool().Draw(t, "closes") {
				continue
			}
			p.Closed = append(p.Closed, span)
			for _, u := range p.Uses {
				s.Net.Holes = append(s.Net.Holes, Hole{Task: u.Task, From: span.From, To: span.To, Rule: span.Rule})
			}
		}
		best, found := optimum(s, c)
		if _, clash := s.Net.Earliest(nil); clash != nil {
			return
		}
		r := within(s, c, Options{})
		if !r.s.propagate() {
			if found {
				t.Fatal("refuted, but there is a timetable")
			}
			return
		}
		p := newPrices(nil, r.s, r.b)
		if p == nil {
			return
		}
		priced++
		for _, q := range p.pools {
			for i, offer := range q.offer {
				there := 0
				for at := p.first + i*p.width; at < p.first+(i+1)*p.width; at++ {
					if !slices.ContainsFunc(q.g.closed, func(c [2]int) bool { return c[0] <= at && at < c[1] }) {
						there += q.g.cap
					}
				}
				if offer != int64(there) {
					t.Fatalf("slot %d of %d offers %d, want %d", i, len(q.offer), offer, there)
				}
			}
		}
		for _, steps := range []int{1, 3, 30} {
			p.step = 1
			if bound, ok := p.raise(steps, 1<<40); !ok || found && bound > best {
				t.Fatalf("bound %d above %d after %d steps", bound, best, steps)
			}
			for k := range p.pools { // any prices will do
				for i := range p.pools[k].price {
					p.pools[k].price[i] += rapid.Int64Range(0, 3000).Draw(t, "price")
				}
			}
			if bound := p.now(); found && bound > best {
				t.Fatalf("bound %d above %d", bound, best)
			}
		}
		if !found {
			return
		}
		limit := best + rapid.Int64Range(1, 10).Draw(t, "room")
		if _, ok := p.narrow(limit); !ok {
			t.Fatal("nothing is left")
		}
		every(s, func(times []int) {
			for v, at := range r.m.place {
				if x := times[v] - at.off; v > 0 && c.Of(times) < limit && (x < r.s.lo[at.node] || x > r.s.hi[at.node]) {
					t.Fatalf("%v costs %d, less than %d, and event %d was taken away", times, c.Of(times), limit, v)
				}
			}
		})
	})
	if priced == 0 {
		t.Error("nothing was priced")
	}
}

// The search with prices from the first node on finds what trying everything finds, wherever it has to stop on the way.
func TestSearchWithPricesFindsTheLeastCost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, c := small(t)
		best, found := optimum(s, c)
		if out := s.Search(nil, c, Options{}); !out.Done || (out.Times != nil) != found || found &&
			(out.Cost != best || out.Bound != best) {
			t.Fatalf("%+v, want %d, %v", out, best, found)
		}
		if _, clash := s.Net.Earliest(nil); clash != nil || !found {
			return
		}
		r := within(s, c, Options{Effort: rapid.SampledFrom([]int{0, 0, 3, 8}).Draw(t, "effort")})
		if !r.s.propagate() {
			t.Fatal("refuted")
		}
		r.best = best + rapid.Int64Range(1, 200).Draw(t, "known")
		known := r.best
		r.p = newPrices(nil, r.s, r.b)
		r.explore()
		bound := min(r.lost, r.best)
		if r.opt.Effort == 0 && (r.best != best || r.lost != noBound) || bound > best || r.best < best {
			t.Fatalf("%d, bound %d; the least cost is %d, and %d was known", r.best, bound, best, known)
		}
		if r.best < known && (c.Of(r.times) != r.best || !s.Fits(nil, r.times)) {
			t.Fatalf("%v costs %d", r.times, c.Of(r.times))
		}
	})
}

// On a tree of differences the forest's least cost is exact for any costs, and so is the least cost with each event at
// each of its times.
func TestReckonerIsExactOnTrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "nodes")
		m := &model{n: n, lo: make([]int, n), hi: make([]int, n)}
		r := &reckoner{}
		for v := range n {
			m.lo[v] = rapid.IntRange(0, 3).Draw(t, "lo")
			m.hi[v] = m.lo[v] + rapid.IntRange(0, 4).Draw(t, "span")
			if v > 0 && rapid.IntRange(0, 4).Draw(t, "root") > 0 {
				u, near := rapid.IntRange(0, v-1).Draw(t, "parent"), rapid.IntRange(-3, 3).Draw(t, "near")
				m.arcs = append(m.arcs, Arc{From: u, To: v, W: near})
				if rapid.Bool().Draw(t, "both") {
					m.arcs = append(m.arcs, Arc{From: v, To: u, W: -near - rapid.IntRange(0, 3).Draw(t, "play")})
				}
			}
		}
		f := plant(m)
		if len(f.loose) > 0 {
			t.Fatalf("%v left out of a tree", f.loose)
		}
		r = newReckoner(f, n)
		for v := range n {
			r.lo[v], r.hi[v] = m.lo[v], m.hi[v]
			for range m.hi[v] - m.lo[v] + 1 {
				r.own[v] = append(r.own[v], rapid.Int64Range(-9, 9).Draw(t, "cost"))
			}
		}
		want := endless
		at := make([][]int64, n) // least cost with the node at a time
		for v := range at {
			at[v] = make([]int64, len(r.own[v]))
			for i := range at[v] {
				at[v][i] = endless
			}
		}
		x := make([]int, n)
		var try func(v int, cost int64)
		try = func(v int, cost int64) {
			if v == n {
				for _, a := range m.arcs {
					if x[a.To] < x[a.From]+a.W {
						return
					}
				}
				want = min(want, cost)
				for u := range n {
					at[u][x[u]-m.lo[u]] = min(at[u][x[u]-m.lo[u]], cost)
				}
				return
			}
			for i, c := range r.own[v] {
				x[v] = m.lo[v] + i
				try(v+1, cost+c)
			}
		}
		try(0, 0)
		if got := r.least(); got != want {
			t.Fatalf("least cost %d, want %d", got, want)
		}
		if want == endless {
			return
		}
		var sum int64
		for v := range n {
			sum += r.own[v][r.x[v]-r.lo[v]]
		}
		for _, a := range m.arcs {
			if r.x[a.To] < r.x[a.From]+a.W {
				t.Fatalf("%v does not keep %v", r.x, a)
			}
		}
		if sum != want {
			t.Fatalf("%v costs %d, want %d", r.x, sum, want)
		}
		r.marginals()
		tree := map[int]int64{} // the least cost of each tree
		root := make([]int, n)
		for _, v := range f.order {
			root[v] = v
			if p := f.parent[v]; p >= 0 {
				root[v] = root[p]
			} else {
				tree[v] = endless
				for _, c := range r.all[v] {
					tree[v] = min(tree[v], c)
				}
			}
		}
		for v := range n {
			for i, c := range r.all[v] {
				got := endless
				if c < endless {
					got = want - tree[root[v]] + c
				}
				if got != at[v][i] {
					t.Fatalf("node %d at %d costs %d, want %d", v, m.lo[v]+i, got, at[v][i])
				}
			}
		}
	})
}

// The search for any timetable finds one exactly when there is one.
func TestNoneIsProven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, c := small(t)
		_, found := optimum(s, c)
		if _, clash := s.Net.Earliest(nil); clash != nil {
			return
		}
		r := within(s, c, Options{})
		if !r.s.propagate() {
			return
		}
		if none := r.none(); none == found || found && (r.times == nil || c.Of(r.times) != r.best || !s.Fits(nil, r.times)) {
			t.Fatalf("none: %v, found %v with %v at %d", none, found, r.times, r.best)
		}
		for by := ByNeed; by < BySearch; by++ {
			if s.Refuted(nil, by) == Yes && found {
				t.Fatalf("method %d refutes what has a timetable", by)
			}
		}
	})
}

// Improving a timetable keeps every rule, costs no more, and leaves the state as it was.
func TestImproveOnlyImproves(t *testing.T) {
	better := 0
	rapid.Check(t, func(t *rapid.T) {
		s, c := small(t)
		best, found := optimum(s, c)
		if !found {
			return
		}
		r := within(s, c, Options{})
		if !r.s.propagate() {
			t.Fatal("refuted")
		}
		var some [][]int
		every(s, func(times []int) { some = append(some, slices.Clone(times)) })
		r.times = some[rapid.IntRange(0, len(some)-1).Draw(t, "known")]
		r.best, r.found = c.Of(r.times), make([]int, r.m.n)
		for v, at := range r.m.place {
			if v > 0 {
				r.found[at.node] = r.times[v] - at.off
			}
		}
		known, lo, hi := r.best, slices.Clone(r.s.lo), slices.Clone(r.s.hi)
		r.improve()
		if r.best < known {
			better++
		}
		if r.best > known || r.best < best || c.Of(r.times) != r.best || !s.Fits(nil, r.times) || r.lost != noBound {
			t.Fatalf("%v costs %d; %d was known and %d is best", r.times, r.best, known, best)
		}
		if !slices.Equal(lo, r.s.lo) || !slices.Equal(hi, r.s.hi) {
			t.Fatal("the state was changed")
		}
		if r.m.breads() == 2 && r.best != best {
			t.Fatalf("%d after freeing both of two breads, best is %d", r.best, best)
		}
	})
	if better == 0 {
		t.Error("nothing was improved")
	}
}

// What the stretches of the frontier leave for later is found later, in order of its bound.
func TestFrontier(t *testing.T) {
	f := frontier{}
	for k, bound := range []int64{7, 3, 9, 3, 1} {
		f.here = &path{move: move{a: k}}
		f.push(bound)
	}
	var got []int
	for len(f.queue) > 0 {
		got = append(got, f.pop().path.move.a)
	}
	if !slices.Equal(got, []int{4, 1, 3, 0, 2}) {
		t.Error(got)
	}
	if f.full(10) {
		t.Error("full without a stretch")
	}
	if f.end = 10; !f.full(10) || f.full(9) {
		t.Error("a stretch ends at its end")
	}
}

// Where one event alone costs, going down step by step ends at the least cost.
func TestDescend(t *testing.T) {
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		s, c := small(t)
		c.Curves = nil
		only := rapid.IntRange(0, s.Tasks-1).Draw(t, "only")
		for v := range c.Linear {
			if v != StartOf(only) {
				c.Linear[v] = 0
			}
		}
		best, found := optimum(s, c)
		if !found {
			return
		}
		r := within(s, c, Options{})
		if !r.s.propagate() {
			t.Fatal("refuted")
		}
		if r.none() {
			t.Fatal("none")
		}
		if v, ok := r.b.single(); ok != (c.Linear[StartOf(only)] != 0) || ok && v != r.m.start(only).node {
			t.Fatalf("the cost is that of node %d, %v", v, ok)
		}
		if r.descend() {
			proven++
			if r.best != best {
				t.Fatalf("ends at %d, the least is %d", r.best, best)
			}
		}
		if c.Of(r.times) != r.best || !s.Fits(nil, r.times) {
			t.Fatalf("%v costs %d", r.times, r.best)
		}
	})
	if proven == 0 {
		t.Error("nothing was proven")
	}
}
