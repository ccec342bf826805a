package planner

import (
	"fmt"
	"sort"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// game plays the execution of a tiny network against nature on the grid of whole numbers: at
// each moment nature ends some contingent durations, then the planner acts. It is slow and
// obviously right.
type game struct {
	arcs  []Arc
	cont  []Contingent
	acts  []int // events the planner chooses
	end   int
	cache map[string]bool
}

func (g *game) key(t int, at map[int]int) string {
	var ks []int
	for k := range at {
		ks = append(ks, k)
	}
	sort.Ints(ks)
	var b strings.Builder
	fmt.Fprint(&b, t)
	for _, k := range ks {
		fmt.Fprintf(&b, ",%d:%d", k, at[k])
	}
	return b.String()
}

func (g *game) broken(at map[int]int) bool {
	for _, a := range g.arcs {
		u, okU := at[a.From]
		v, okV := at[a.To]
		if okU && okV && v < u+a.W {
			return true
		}
	}
	return false
}

func (g *game) wins(t int, at map[int]int) bool {
	if g.broken(at) {
		return false
	}
	if len(at) == 1+len(g.acts)+len(g.cont) {
		return true
	}
	if t > g.end {
		return false
	}
	key := g.key(t, at)
	if w, ok := g.cache[key]; ok {
		return w
	}
	var forced, free []int
	for _, c := range g.cont {
		if _, done := at[c.C]; done {
			continue
		}
		s, begun := at[c.A]
		if !begun || t-s < c.Lo {
			continue
		}
		if t-s >= c.Hi {
			forced = append(forced, c.C)
		} else {
			free = append(free, c.C)
		}
	}
	all := true
	for mask := 0; mask < 1<<len(free) && all; mask++ {
		b := clone(at)
		for _, c := range forced {
			b[c] = t
		}
		for i, c := range free {
			if mask>>i&1 == 1 {
				b[c] = t
			}
		}
		var todo []int
		for _, v := range g.acts {
			if _, done := b[v]; !done {
				todo = append(todo, v)
			}
		}
		some := false
		for m := 0; m < 1<<len(todo) && !some; m++ {
			c := clone(b)
			for i, v := range todo {
				if m>>i&1 == 1 {
					c[v] = t
				}
			}
			some = !g.broken(c) && g.wins(t+1, c)
		}
		all = some
	}
	g.cache[key] = all
	return all
}

func clone(m map[int]int) map[int]int {
	out := make(map[int]int, len(m))
	for k, v := range m {
		out[k] = v
	}
	return out
}

func winnable(arcs []Arc, cont []Contingent, acts []int, end int) bool {
	g := &game{arcs: arcs, cont: cont, acts: acts, end: end, cache: map[string]bool{}}
	return g.wins(0, map[int]int{0: 0})
}

// between says lo ≤ x[v] − x[u] ≤ hi.
func between(u, v, lo, hi int) []Arc {
	return []Arc{{From: u, To: v, W: lo}, {From: v, To: u, W: -hi}}
}

// Cases played out by hand and by brute force, in units of half an hour.
func TestControllableCases(t *testing.T) {
	for _, c := range []struct {
		name string
		n    int
		arcs []Arc
		cont []Contingent
		acts []int
		want bool
	}{
		{"shape at once after a bulk of 8 to 10, shape by 14, mix at 3", 4,
			append(append(between(0, 1, 3, 40), between(2, 3, 0, 1)...), between(0, 3, 0, 14)...), []Contingent{{1, 2, 8, 10}},
			[]int{1, 3}, true},
		{"mix at 4", 4, append(append(between(0, 1, 4, 40), between(2, 3, 0, 1)...), between(0, 3, 0, 14)...),
			[]Contingent{{1, 2, 8, 10}}, []int{1, 3}, true},
		{"mix at 5", 4, append(append(between(0, 1, 5, 40), between(2, 3, 0, 1)...), between(0, 3, 0, 14)...),
			[]Contingent{{1, 2, 8, 10}}, []int{1, 3}, false},
		{"preheat 1 to 6 ahead of ready in 12 to 16", 4, append(between(0, 1, 0, 0), between(3, 2, 1, 6)...),
			[]Contingent{{1, 2, 12, 16}}, []int{1, 3}, true},
		{"ready in 12 to 17", 4, append(between(0, 1, 0, 0), between(3, 2, 1, 6)...), []Contingent{{1, 2, 12, 17}},
			[]int{1, 3}, true},
		{"ready in 12 to 18", 4, append(between(0, 1, 0, 0), between(3, 2, 1, 6)...), []Contingent{{1, 2, 12, 18}},
			[]int{1, 3}, false},
		{"react 1 to 2 after 12 to 24", 4, append(between(0, 1, 0, 0), between(2, 3, 1, 2)...),
			[]Contingent{{1, 2, 12, 24}}, []int{1, 3}, true},
		{"two ends within 2: 10 to 12 and 4 to 5", 5, append(between(0, 1, 0, 0), between(2, 4, -2, 2)...),
			[]Contingent{{1, 2, 10, 12}, {3, 4, 4, 5}}, []int{1, 3}, true},
		{"two ends within 2: 10 to 14 and 4 to 5", 5, append(between(0, 1, 0, 0), between(2, 4, -2, 2)...),
			[]Contingent{{1, 2, 10, 14}, {3, 4, 4, 5}}, []int{1, 3}, false},
	} {
		arcs := c.arcs
		for v := 1; v < c.n; v++ {
			arcs = append(arcs, between(0, v, 0, 40)...)
		}
		net := &Net{Events: c.n, Limit: 40, Arcs: arcs}
		if got := net.Controllable(nil, c.cont); got != c.want {
			t.Errorf("%s: controllable %v, want %v", c.name, got, c.want)
		}
		if got := winnable(arcs, c.cont, c.acts, 41); got != c.want {
			t.Errorf("%s: the game says %v, want %v", c.name, got, c.want)
		}
	}
}

// The rules agree with the game on random small networks.
func TestControllableAgreesWithGame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const end = 9
		links := rapid.IntRange(1, 2).Draw(t, "links")
		n := 1
		var cont []Contingent
		var acts []int
		var arcs []Arc
		for i := 0; i < links; i++ {
			lo := rapid.IntRange(1, 3).Draw(t, "lo")
			hi := lo + rapid.IntRange(1, 3).Draw(t, "spread")
			cont = append(cont, Contingent{n, n + 1, lo, hi})
			acts = append(acts, n)
			n += 2
		}
		for i := rapid.IntRange(0, 2).Draw(t, "free"); i > 0; i-- {
			acts = append(acts, n)
			n++
		}
		for v := 1; v < n; v++ {
			arcs = append(arcs, between(0, v, 0, end)...)
		}
		for i := rapid.IntRange(1, 4).Draw(t, "arcs"); i > 0; i-- {
			u, v := rapid.IntRange(1, n-1).Draw(t, "u"), rapid.IntRange(1, n-1).Draw(t, "v")
			if u != v {
				arcs = append(arcs, Arc{From: u, To: v, W: rapid.IntRange(-4, 3).Draw(t, "w")})
			}
		}
		net := &Net{Events: n, Limit: end, Arcs: arcs}
		got, want := net.Controllable(nil, cont), winnable(arcs, cont, acts, end+1)
		if got != want {
			t.Fatalf("rules say %v, the game %v: %+v %+v", got, want, cont, arcs)
		}
	})
}
