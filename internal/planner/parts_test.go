package planner

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// A heap gives back what waits in order, lowest key first and among equals the lowest number.
func TestHeapIsInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var h heap
		var want []item
		for range rapid.IntRange(1, 40).Draw(t, "moves") {
			if len(want) > 0 && rapid.IntRange(0, 2).Draw(t, "pop") == 0 {
				slices.SortFunc(want, func(a, b item) int {
					if a.key != b.key {
						return int(a.key - b.key)
					}
					return int(a.v - b.v)
				})
				if got := h.pop(); got != want[0] {
					t.Fatalf("%v, want %v", got, want[0])
				}
				want = want[1:]
				continue
			}
			it := item{rapid.Int64Range(-3, 3).Draw(t, "key"), int32(rapid.IntRange(0, 5).Draw(t, "v"))}
			h.push(it)
			want = append(want, it)
		}
		if len(h) != len(want) {
			t.Fatalf("%d wait, want %d", len(h), len(want))
		}
	})
}

// Variables are listed with what was moved to the front last first, and from the place at which the search goes on
// every undecided one is still to come.
func TestOrderOfVariables(t *testing.T) {
	tenfold(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(t, "variables")
		var list []int
		for k := range n {
			list = append(list, k)
		}
		var o order
		o.begin(n, list)
		decided := make([]bool, n)
		for range 12 {
			k := rapid.IntRange(0, n-1).Draw(t, "k")
			switch rapid.IntRange(0, 2).Draw(t, "what") {
			case 0: // the next one is decided
				for o.search != n && decided[o.search] {
					o.search = int(o.down[o.search])
				}
				if o.search != n {
					decided[o.search] = true
				}
			case 1:
				if decided[k] {
					o.front(k)
					list = append([]int{k}, slices.DeleteFunc(list, func(x int) bool { return x == k })...)
				}
			case 2:
				if decided[k] {
					decided[k] = false
					o.free(k)
				}
			}
			var got, back []int
			for v := o.down[n]; int(v) != n; v = o.down[v] {
				got = append(got, int(v))
			}
			for v := o.up[n]; int(v) != n; v = o.up[v] {
				back = append(back, int(v))
			}
			slices.Reverse(back)
			if !slices.Equal(got, list) || !slices.Equal(back, list) {
				t.Fatalf("%v and %v, want %v", got, back, list)
			}
			passed := list
			if o.search != n {
				passed = list[:slices.Index(list, o.search)]
			}
			for _, v := range passed {
				if !decided[v] {
					t.Fatalf("%d of %v is undecided, and the search goes on at %d", v, list, o.search)
				}
			}
		}
	})
}

// Each difference of a network is in the forest or left out of it, and the forest and what is left out say no more.
func TestForestAndTheRest(t *testing.T) {
	loose := 0
	tenfold(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "nodes")
		m := &model{n: n, lo: make([]int, n), hi: make([]int, n), arcOf: map[[2]int]int{}}
		for v := range n {
			m.hi[v] = 10
		}
		for range rapid.IntRange(0, 8).Draw(t, "arcs") {
			a := Arc{From: rapid.IntRange(0, n-1).Draw(t, "u"), To: rapid.IntRange(0, n-1).Draw(t, "v"),
				W: rapid.IntRange(-6, 6).Draw(t, "w")}
			if _, twice := m.arcOf[[2]int{a.From, a.To}]; a.From != a.To && !twice {
				m.arcOf[[2]int{a.From, a.To}] = len(m.arcs)
				m.arcs = append(m.arcs, a)
			}
		}
		f := plant(m)
		got := slices.Clone(f.loose)
		loose += len(got)
		place := make([]int, n)
		for k, v := range f.order {
			place[v] = k
		}
		for v := range n {
			p := f.parent[v]
			if p < 0 {
				continue
			}
			if place[p] >= place[v] {
				t.Fatalf("%d before its parent %d in %v", v, p, f.order)
			}
			if f.near[v] > none {
				got = append(got, Arc{From: p, To: v, W: f.near[v]})
			}
			if f.far[v] < -none {
				got = append(got, Arc{From: v, To: p, W: -f.far[v]})
			}
		}
		in := func(a, b Arc) int {
			if a.From != b.From {
				return a.From - b.From
			}
			return a.To - b.To
		}
		want := slices.Clone(m.arcs)
		slices.SortFunc(got, in)
		slices.SortFunc(want, in)
		if !slices.Equal(got, want) || len(f.order) != n {
			t.Fatalf("%v, want %v", got, want)
		}
	})
	if loose == 0 {
		t.Error("nothing was left out")
	}
}

// The bound without shortage is no more than the least cost between the bounds of a state, and where every cost is
// convex and there are no holes it is that cost.
func TestBoundWithoutShortage(t *testing.T) {
	exact := 0
	tenfold(t, func(t *rapid.T) {
		n := pairOfTasks(t)
		if rapid.Bool().Draw(t, "no holes") {
			n.Holes = nil
		}
		all := solutions(n, nil, nil, nil)
		if len(all) == 0 {
			return
		}
		c := Cost{Constant: rapid.Int64Range(-9, 9).Draw(t, "constant"), Linear: make([]int64, n.Events)}
		convex := true
		for v := 1; v < n.Events; v++ {
			c.Linear[v] = rapid.Int64Range(-4, 4).Draw(t, "slope")
			if !rapid.Bool().Draw(t, "curve") {
				continue
			}
			at := rapid.IntRange(1, n.Limit-1).Draw(t, "bend")
			first, second := rapid.Int64Range(-4, 4).Draw(t, "first"), rapid.Int64Range(-4, 4).Draw(t, "second")
			sign := rapid.SampledFrom([]int64{1, 1, -1, 2}).Draw(t, "sign")
			c.Curves = append(c.Curves, Curve{Event: v, Sign: sign, Points: []Point{{0, 0}, {at, first * int64(at)},
				{n.Limit, first*int64(at) + second*int64(n.Limit-at)}}})
			convex = convex && sign*first <= sign*second
		}
		s := &Shop{Net: n, Tasks: 2}
		r := within(s, c, Options{})
		if !r.s.propagate() {
			t.Fatal("refuted")
		}
		// A bound of some node, as a decision would move it.
		v, up := rapid.IntRange(0, r.m.n-1).Draw(t, "node"), rapid.Bool().Draw(t, "up")
		at := rapid.IntRange(r.s.lo[v], r.s.hi[v]).Draw(t, "at")
		moved := up && r.s.raise(v, at) || !up && r.s.lower(v, at)
		if !moved || !r.s.propagate() {
			return
		}
		best := math.MaxInt32
		for _, x := range all {
			in := true
			for e := 1; e < n.Events; e++ {
				p := r.m.place[e]
				in = in && x[e]-p.off >= r.s.lo[p.node] && x[e]-p.off <= r.s.hi[p.node]
			}
			if in {
				best = min(best, int(c.Of(x)))
			}
		}
		got := int(r.b.eval())
		if got > best {
			t.Fatalf("bound %d, least cost %d", got, best)
		}
		if convex && len(n.Holes) == 0 {
			exact++
			if got != best || int(r.b.cost()) != best {
				t.Fatalf("bound %d, cost %d, least cost %d", got, r.b.cost(), best)
			}
		}
	})
	if exact == 0 {
		t.Error("no cost was convex")
	}
}

// A curve is constant before its first point and after its last, and goes straight from one to the next.
func TestValueOfACurve(t *testing.T) {
	points := []Point{{2, 10}, {4, 16}, {7, 4}}
	for at, want := range map[int]int64{-1: 10, 2: 10, 3: 13, 4: 16, 5: 12, 6: 8, 7: 4, 9: 4} {
		if got := valueAt(points, at); got != want {
			t.Errorf("at %d: %d, want %d", at, got, want)
		}
	}
	c := Cost{Constant: 5, Linear: []int64{0, 2, -1}, Curves: []Curve{{Event: 2, Sign: -2, Points: points}}}
	if got := c.Of([]int{0, 3, 5}); got != 5+6-5-24 {
		t.Error(got)
	}
	if valueAt(nil, 3) != 0 {
		t.Error("nothing costs something")
	}
}

// A task takes no time when the network fixes its length at none, by a rule of its own or by way of others.
func TestTimelessTasks(t *testing.T) {
	tenfold(t, func(t *rapid.T) {
		n := pairOfTasks(t)
		if rapid.Bool().Draw(t, "fixed") {
			i := rapid.IntRange(0, 1).Draw(t, "task")
			n.Arcs = append(n.Arcs, Arc{From: EndOf(i), To: StartOf(i), Rule: 20},
				Arc{From: StartOf(i), To: EndOf(i), Rule: 20})
		}
		if _, clash := n.Earliest(nil); clash != nil {
			return
		}
		for i, none := range (&Shop{Net: n, Tasks: 2}).timeless() {
			there, back := false, false
			for _, a := range n.Arcs {
				there = there || a.From == StartOf(i) && a.To == EndOf(i) && a.W >= 0
				back = back || a.From == EndOf(i) && a.To == StartOf(i) && a.W >= 0
			}
			if there && back && !none {
				t.Fatalf("task %d takes no time: %v", i, n.Arcs)
			}
			for _, x := range solutions(&Net{Events: 5, Limit: n.Limit, Arcs: n.Arcs}, nil, nil, nil) {
				if none && x[StartOf(i)] != x[EndOf(i)] {
					t.Fatalf("task %d takes time in %v", i, x)
				}
			}
		}
	})
}
