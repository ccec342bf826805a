package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Adding one difference to closed ones gives what closing all of them gives, and both see the same cycles. Every entry
// is the longest path, found here by going along arcs until nothing moves.
func TestTightenIsClosing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "events")
		d := make([]int, n*n)
		apart(d, n)
		for range rapid.IntRange(0, 2*n).Draw(t, "arcs") {
			k := rapid.IntRange(0, n-1).Draw(t, "u")*n + rapid.IntRange(0, n-1).Draw(t, "v")
			d[k] = max(d[k], rapid.IntRange(-4, 3).Draw(t, "w"))
		}
		open := slices.Clone(d)
		if closure(nil, d, n) == cyclic(open, n) {
			t.Fatalf("a cycle, or none: %v", open)
		}
		if cyclic(open, n) {
			return
		}
		if want := longest(open, n); !slices.Equal(d, want) {
			t.Fatalf("%v closes to %v, want %v", open, d, want)
		}
		u, v, w := rapid.IntRange(0, n-1).Draw(t, "from"), rapid.IntRange(0, n-1).Draw(t, "to"), rapid.IntRange(-4,
			4).Draw(t, "more")
		open[u*n+v] = max(open[u*n+v], w)
		added := slices.Clone(d)
		if ok := tighten(nil, added, n, u, v, w); ok == cyclic(open, n) {
			t.Fatalf("%d to %d by %d in %v: %v", u, v, w, open, ok)
		}
		if cyclic(open, n) {
			return
		}
		if want := longest(open, n); !slices.Equal(added, want) {
			t.Fatalf("%d to %d by %d: %v, want %v", u, v, w, added, want)
		}
	})
}

// longest finds longest paths of up to n arcs by going along one arc at a time.
func longest(d []int, n int) []int {
	best := slices.Clone(d)
	for range n + 1 {
		for u := range n {
			for m := range n {
				for v := range n {
					if best[u*n+m] != none && d[m*n+v] != none {
						best[u*n+v] = max(best[u*n+v], best[u*n+m]+d[m*n+v])
					}
				}
			}
		}
	}
	return best
}

func cyclic(d []int, n int) bool {
	best := longest(d, n)
	for v := range n {
		if best[v*n+v] > 0 {
			return true
		}
	}
	return false
}

// Time that is up proves nothing.
func TestClosureStopsWithItsWatch(t *testing.T) {
	over := (*Watch)(nil).Within(0)
	d := make([]int, 9)
	apart(d, 3)
	if closure(over, d, 3) || tighten(over, d, 3, 0, 1, 2) {
		t.Error("closed though the time was up")
	}
}

func TestFloorDiv(t *testing.T) {
	for _, c := range [][3]int64{{7, 2, 3}, {-7, 2, -4}, {6, 3, 2}, {-6, 3, -2}, {0, 5, 0}, {-1, 5, -1}} {
		if got := floorDiv(c[0], c[1]); got != int(c[2]) {
			t.Errorf("%d by %d is %d, want %d", c[0], c[1], got, c[2])
		}
	}
}

// What a pool has in a span: open time, and how many stretches one after the other.
func TestOpenTimeOfAPool(t *testing.T) {
	g := budget{closed: (&Pool{Closed: []Closing{{20, 25, 1}, {5, 8, 2}, {7, 10, 3}}}).closed()}
	for _, c := range []struct{ a, b, p, open, fit int }{
		{0, 30, 5, 20, 4}, {0, 30, 6, 20, 1}, {6, 9, 1, 0, 0}, {8, 12, 1, 2, 2}, {0, 5, 5, 5, 1}, {10, 20, 3, 10, 3},
		{22, 40, 15, 15, 1},
	} {
		if open, fit := g.open(c.a, c.b), g.fit(c.a, c.b, c.p); open != c.open || fit != c.fit {
			t.Errorf("from %d to %d: %d open, %d of %d fit; want %d and %d", c.a, c.b, open, fit, c.p, c.open, c.fit)
		}
	}
}

// The work under a limited watch is over after so much, and counts for the watch it was made of.
func TestWatchWithin(t *testing.T) {
	outer := (*Watch)(nil).Within(10 * lookEvery)
	in := outer.Within(3 * lookEvery)
	for range 2 {
		if in.spend(lookEvery) {
			t.Fatal("over too soon")
		}
	}
	if !in.spend(lookEvery) || !in.Over() || outer.Over() {
		t.Error("the inner watch alone should be over")
	}
	second := outer.Within(100 * lookEvery)
	spent := 0
	for !second.spend(lookEvery) && spent < 50 {
		spent++
	}
	if spent > 8 || !outer.Over() {
		t.Errorf("%d stretches of work after three of ten", spent)
	}
}
