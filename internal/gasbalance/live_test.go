package gasbalance

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// drawnSums are those of invented bakes, kneaded in the ways that are drawn, of which some count less than others.
func drawnSums(t *rapid.T) (Sums, []Row) {
	rows := invented(rapid.IntRange(1, 40).Draw(t, "bakes"), rapid.Uint64().Draw(t, "seed"))
	ways := rapid.IntRange(1, kneadings).Draw(t, "ways of kneading")
	s := Sums{Weighing: rapid.SampledFrom([]Weighing{Alike, Surprise, Biweight}).Draw(t, "weighing")}
	for i := range rows {
		rows[i].Kneading %= ways
		s.Add(&rows[i], rapid.Float64Range(0.1, 1).Draw(t, "weight"))
	}
	return s, rows
}

// drawnBefore is what may be known before a log: nothing, or what others say.
func drawnBefore(t *rapid.T, kind Leavening) gaussian {
	g := Group{Kind: kind}
	if rapid.Bool().Draw(t, "others") {
		g = g.With("Bo", "wheat", SumRows(invented(9, 77)))
	}
	return g.before("Ada", "rye")
}

func drawnKind(t *rapid.T) Leavening {
	return rapid.SampledFrom([]Leavening{ByLevain, ByYeast, ByBoth}).Draw(t, "leavening")
}

// The luck that is looked for among the effects that vary is the one by all of them, with the sums taken bake by bake:
// σ² = (ν₀·σ₀² + Σ w·((y − hᵀx)² + hᵀPh)/k)/(ν₀ + n), x and P by the general form.
func TestTheLuckOfALogByAllEffects(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := drawnKind(t)
		before := drawnBefore(t, kind)
		s, rows := drawnSums(t)
		got := s.from(kind, &before, luckOf(kind))
		weight, squares := s.Weighing.ordinary()
		e := s.evidence(got.Luck * got.Luck)
		all := before.seen(&e.precision, &e.moment)
		// What is left of the squares, from the sums by their definition: Σ w·(…)/k is linear in h·hᵀ.
		one := s.evidence(1)
		left := s.Squares
		for i := range all.mean {
			left -= 2 * one.moment[i] * all.mean[i]
			for j := range all.mean {
				left += one.precision[i][j] * (all.mean[i]*all.mean[j] + all.cov[i][j])
			}
		}
		n := s.Weight / weight
		want := math.Sqrt((freedom*luckOf(kind)*luckOf(kind) + left/squares) / (freedom + n))
		if !(math.Abs(got.Luck-want) <= 2e-6) || !(math.Abs(got.Freedom-freedom-n) <= 1e-9) {
			t.Fatalf("luck %v with %v degrees, want %v with %v", got.Luck, got.Freedom, want, freedom+n)
		}
		for i := range all.mean {
			sd := math.Sqrt(all.cov[i][i])
			if !(math.Abs(got.effects.mean[i]-all.mean[i]) <= 1e-4*sd) ||
				!(math.Abs(got.effects.cov[i][i]-all.cov[i][i]) <= 1e-4*all.cov[i][i]) {
				t.Fatalf("effect %d of %d bakes: %v ± %v, want %v ± %v", i, len(rows), got.effects.mean[i],
					math.Sqrt(got.effects.cov[i][i]), all.mean[i], sd)
			}
		}
	})
}

// Among the effects that vary, what sums say and what rows say one by one is what all effects say of a row.
func TestBakesTakenInAmongTheLiveEffects(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := drawnKind(t)
		before := drawnBefore(t, kind)
		s, _ := drawnSums(t)
		next := invented(5, rapid.Uint64().Draw(t, "next"))
		kneaded := s.kneaded()
		for i := range next {
			kneaded[next[i].Kneading] = true
		}
		l := before.live(&kneaded)
		for a, i := range l.of[:l.n] {
			if kind == ByLevain && i == Growth || kind == ByYeast && i == Mixture || i >= Unknowns && !kneaded[i-Unknowns] {
				t.Fatalf("effect %d, number %d, cannot vary", i, a)
			}
		}
		_, used, _ := l.settle(&s, kind, luckOf(kind))
		e := s.evidence(used * used)
		all := before.seen(&e.precision, &e.moment)
		near := func(what string, got, want, scale float64) {
			if !(math.Abs(got-want) <= 1e-9*(scale+math.Abs(want))) {
				t.Fatalf("%s: %v, want %v", what, got, want)
			}
		}
		for i := range next {
			r := &next[i]
			h, live := r.effect(), l.among(r)
			wantPh := all.cov.times(&h)
			ph, mean, variance := l.expected(&live)
			near("mean", mean, h.dot(&all.mean), 1)
			near("mean of the row", r.expected(&all.mean), h.dot(&all.mean), 1)
			near("variance", variance, h.dot(&wantPh), 1e-3)
			for a, k := range l.of[:l.n] {
				near("P·h", ph[a], wantPh[k], 1e-3)
			}
			noise := 0.01 * (1 + float64(i))
			all.take(&h, &wantPh, r.Y, noise)
			l.take(&ph, (r.Y-mean)/(variance+noise), 1/(variance+noise))
			for a, k := range l.of[:l.n] {
				near("x", l.mean[a], all.mean[k], 1)
				for b, j := range l.of[:a+1] {
					near("P", l.cov[a][b], all.cov[k][j], 1e-3)
				}
			}
		}
	})
}

// A positive matrix times its inverse is one.
func TestInvert(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, effects).Draw(t, "n")
		var root, a effectMatrix
		for i := range n {
			for j := range n {
				root[i][j] = rapid.Float64Range(-1, 1).Draw(t, "element")
			}
		}
		for i := range n {
			for j := range n {
				for k := range n {
					a[i][j] += root[i][k] * root[j][k]
				}
			}
			a[i][i] += 0.1
		}
		inverse := a
		inverse.invert(n)
		for i := range n {
			for j := range n {
				sum := 0.0
				for k := range n {
					sum += a[i][k] * inverse[k][j]
				}
				if want := map[bool]float64{true: 1}[i == j]; !(math.Abs(sum-want) <= 1e-10) {
					t.Fatalf("row %d, column %d of the product: %v", i, j, sum)
				}
			}
		}
	})
}

// A culture of which nothing is known is one whose effects are unknown, however its dough is kneaded.
func TestUnlearned(t *testing.T) {
	for _, kind := range []Leavening{ByLevain, ByYeast, ByBoth} {
		taught := Untaught(kind)
		for k := range kneadings {
			if diff := cmp.Diff(taught.Belief(k), Unlearned(kind), cmpopts.EquateApprox(1e-15, 0)); diff != "" {
				t.Errorf("leavening %d, kneading %d: %s", kind, k, diff)
			}
		}
	}
}
