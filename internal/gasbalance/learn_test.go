package gasbalance

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// invented makes rows of kitchens with luck.
func invented(n int, seed uint64) []Row {
	rng := rand.New(rand.NewPCG(seed, 1))
	rows := benchRows(n)
	for i := range rows {
		rows[i].Y += 0.1 * rng.NormFloat64()
		rows[i].Scale = 1 + rng.Float64()
	}
	return rows
}

var alike = cmp.Options{cmpopts.EquateApprox(1e-9, 1e-12), cmp.AllowUnexported(Taught{}, gaussian{})}

// Merging two logs equals learning both, in any order, with forgetting as well.
func TestMergeIsLearningBoth(t *testing.T) {
	rows := invented(60, 3)
	for _, halfLife := range []float64{0, 40} {
		add := func(g Group, from, to int) Group {
			for i := from; i < to; i++ {
				var s Sums
				s.Day = float64(i)
				s.Add(&rows[i], 1)
				g = g.With([]string{"Ada", "Bo"}[i%2], []string{"rye", "wheat", "old"}[i%3], s)
			}
			return g
		}
		empty := Group{HalfLife: halfLife}
		all := add(empty, 0, 60)
		first, second := add(empty, 0, 25), add(empty, 25, 60)
		merged := map[string]Group{"first and second": first.Merge(second), "second and first": second.Merge(first)}
		for name, g := range merged {
			for _, who := range [][2]string{{"Ada", "rye"}, {"Bo", "wheat"}, {"Ada", "new"}, {"Cy", "new"}} {
				if d := cmp.Diff(all.Taught(who[0], who[1]), g.Taught(who[0], who[1]), alike); d != "" {
					t.Errorf("half-life %v, %s, %v: %s", halfLife, name, who, d)
				}
			}
		}
	}
}

// A single culture's belief before any bake is the prior, whatever the level it sits on.
func TestNothingLearnedIsThePrior(t *testing.T) {
	for _, kind := range []Leavening{ByLevain, ByYeast, ByBoth} {
		u := Untaught(kind)
		g := Group{Kind: kind}.Taught("", "")
		if d := cmp.Diff(u, g, alike); d != "" {
			t.Error(d)
		}
		b, p := u.Belief(1), Prior(kind)
		p.Cov[Pace][Pace] += sdKneading * sdKneading
		p.Stretch = 1
		if d := cmp.Diff(p, b, alike); d != "" {
			t.Error(d)
		}
	}
}

// What a group teaches is the conditional normal distribution of all its effects together, worked out here in one
// piece: each culture's effects are everyone's plus the person's plus its own.
func TestGroupAgainstOneBigRegression(t *testing.T) {
	names := [][2]string{{"Ada", "rye"}, {"Ada", "wheat"}, {"Bo", "rye"}, {"Bo", "wheat"}, {"Cy", "rye"}}
	var g Group
	sums := make([]Sums, len(names))
	for i, n := range names {
		sums[i] = SumRows(invented(5+4*i, uint64(i)))
		g = g.With(n[0], n[1], sums[i])
	}
	lv := levelsOf(ByLevain)
	// The lucks that the group takes for the others, and for the culture itself.
	alone := unknown(ByLevain)
	const target = 1
	got := g.Taught("Ada", "wheat")
	n := len(names) * effects
	cov := make([][]float64, n)
	precision := make([][]float64, n)
	moment := make([]float64, n)
	for a := range names {
		luck := sums[a].from(ByLevain, &alone, sdLuck).Luck
		if a == target {
			luck = got.Luck
		}
		e := sums[a].evidence(luck * luck)
		for i := range effects {
			row, p := make([]float64, n), make([]float64, n)
			for b := range names {
				for j := range effects {
					v := lv.everyone[i][j]
					if names[a][0] == names[b][0] {
						v += lv.person[i][j]
					}
					if a == b {
						v += lv.culture[i][j]
						p[b*effects+j] = e.precision[i][j]
					}
					row[b*effects+j] = v
				}
			}
			cov[a*effects+i], precision[a*effects+i] = row, p
			moment[a*effects+i] = e.moment[i]
		}
	}
	mean, post := conditional(cov, precision, moment)
	for i := range effects {
		k := target*effects + i
		if !(math.Abs(mean[k]-got.effects.mean[i]) <= 1e-5) {
			t.Errorf("mean of effect %d: %v, all at once %v", i, got.effects.mean[i], mean[k])
		}
		if !(math.Abs(post[k][k]-got.effects.cov[i][i]) <= 1e-6) {
			t.Errorf("variance of effect %d: %v, all at once %v", i, got.effects.cov[i][i], post[k][k])
		}
	}
}

// conditional is (I + S·J)⁻¹·S and that times r, by elimination.
func conditional(s, j [][]float64, r []float64) (mean []float64, cov [][]float64) {
	n := len(r)
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, 2*n)
		for k := range n {
			for x := range n {
				m[i][k] += s[i][x] * j[x][k]
			}
			m[i][n+k] = s[i][k]
		}
		m[i][i]++
	}
	for c := range n {
		best := c
		for i := c; i < n; i++ {
			if math.Abs(m[i][c]) > math.Abs(m[best][c]) {
				best = i
			}
		}
		m[c], m[best] = m[best], m[c]
		for i := range n {
			if i == c {
				continue
			}
			f := m[i][c] / m[c][c]
			for k := range m[i] {
				m[i][k] -= f * m[c][k]
			}
		}
	}
	mean, cov = make([]float64, n), make([][]float64, n)
	for i := range n {
		cov[i] = make([]float64, n)
		for k := range n {
			cov[i][k] = m[i][n+k] / m[i][i]
			mean[i] += cov[i][k] * r[k]
		}
	}
	return mean, cov
}

// Leaving one out by taking it out of the sums is learning the rest.
func TestWithoutIsLearningTheRest(t *testing.T) {
	rows := invented(12, 9)
	bakes := dated(rows)
	other := SumRows(invented(7, 10))
	g := Group{}.With("Ada", "rye", SumRows(rows)).With("Bo", "rye", other)
	seen := 0
	g.Without("Ada", "rye", bakes, nil, func(i int, got *Taught) {
		seen++
		var rest []Row
		rest = append(append(rest, rows[:i]...), rows[i+1:]...)
		want := Group{}.With("Ada", "rye", SumRows(rest)).With("Bo", "rye", other).Taught("Ada", "rye")
		// The luck is looked for until it is settled to 1e-6, from another start.
		loose := cmp.Options{cmpopts.EquateApprox(2e-4, 1e-6), cmp.AllowUnexported(Taught{}, gaussian{})}
		if d := cmp.Diff(want, *got, loose); d != "" {
			t.Errorf("without %d: %s", i, d)
		}
	})
	if seen != len(rows) {
		t.Errorf("%d visits", seen)
	}
}

// Where bakes fade, leaving one out is learning the rest, each as much as it counts on the day of the one left out.
func TestWithoutWhereBakesFade(t *testing.T) {
	const n, halfLife = 600, 40.0
	rows := invented(n, 9)
	g := Group{HalfLife: halfLife}
	weights := make([]float64, n)
	bakes := dated(rows)
	for i := range bakes {
		bakes[i].Day = float64(i) * 1.5
		weights[i] = math.Exp2(-(float64(n-1) - float64(i)) * 1.5 / halfLife)
		var s Sums
		s.Day = bakes[i].Day
		s.Add(&rows[i], 1)
		g = g.With("Ada", "rye", s)
	}
	g.Without("Ada", "rye", bakes, weights, func(i int, got *Taught) {
		if i%37 != 0 && i < n-2 {
			return
		}
		var rest Sums
		for k := range bakes {
			if k != i {
				rest.Add(&rows[k], math.Exp2(-math.Abs(float64(k-i))*1.5/halfLife))
			}
		}
		want := Group{}.With("Ada", "rye", rest).Taught("Ada", "rye")
		loose := cmp.Options{cmpopts.EquateApprox(2e-4, 1e-6), cmp.AllowUnexported(Taught{}, gaussian{})}
		if d := cmp.Diff(want, *got, loose); d != "" {
			t.Errorf("without %d: %s", i, d)
		}
	})
}

// Two half-lives leave a quarter of the weight; a culture that has changed is followed.
func TestForgetting(t *testing.T) {
	rows := invented(40, 4)
	s := SumRows(rows).Forget(0, 30)
	old := s.Forget(60, 30)
	if !(math.Abs(old.Weight-s.Weight/4) <= 1e-12) || !(math.Abs(old.Squares-s.Squares/4) <= 1e-12) {
		t.Errorf("weight %v of %v after two half-lives", old.Weight, s.Weight)
	}
	if got := s.Forget(60, 0); got.Weight != s.Weight {
		t.Errorf("without a half-life something is forgotten: %v", got.Weight)
	}
	learned := func(halfLife float64) float64 {
		g := Group{HalfLife: halfLife}
		for i := range rows {
			r := rows[i]
			if i >= 20 {
				r.Y -= 0.5 // the culture has become faster... or slower: its log of time shifts
			}
			var one Sums
			one.Day = 7 * float64(i)
			one.Add(&r, 1)
			g = g.With("", "", one)
		}
		taught := g.Taught("", "")
		b := taught.Belief(0)
		return b.Mean[Pace] + b.Mean[Amplitude]/2
	}
	if now, all := learned(60), learned(0); !(now < all-0.05) {
		t.Errorf("forgetting does not follow the change: %v with, %v without", now, all)
	}
}

// One wild bake moves what is learned robustly little.
func TestRobust(t *testing.T) {
	rows := invented(15, 5)
	calm, _ := Group{}.LearnRobustly("", "", dated(rows))
	wild := append([]Row(nil), rows...)
	wild[7].Y += 3
	g, w := Group{}.LearnRobustly("", "", dated(wild))
	if w[7] != 0 {
		t.Errorf("the wild bake weighs %v", w[7])
	}
	a, b := calm.Taught("", ""), g.Taught("", "")
	if !(math.Abs(a.Luck-b.Luck) <= 0.02) || !(math.Abs(a.effects.mean[Pace]-b.effects.mean[Pace]) <= 0.03) {
		t.Errorf("a wild bake moves luck %v to %v and pace %v to %v",
			a.Luck, b.Luck, a.effects.mean[Pace], b.effects.mean[Pace])
	}
}

// A reading equal to what was expected leaves the middle and narrows the range; one far off says so.
func TestObserve(t *testing.T) {
	l := Standard()
	start := Start(0.091*l.RipeLevain(), 0)
	h := []Knot{{0, 24}}
	b := Prior(ByLevain)
	c := l.Clock(plain, Vector{})
	at := c.Likely(start, h, l.Need(0.4, 0.72, 1), 100)
	got, taken := l.Observe(b, plain, Vessel{0.72, 1}, start, h, []Reading{{at, 0.4, 0.05}})
	for i, m := range got.Mean {
		if !(math.Abs(m) <= 1e-6) {
			t.Errorf("unknown %d moved to %v", i, m)
		}
	}
	if !(math.Abs(taken[0].Surprise) <= 1e-6) {
		t.Errorf("off by %v", taken[0].Surprise)
	}
	need := l.Need(0.75, 0.72, 1)
	before, after := c.Times(start, h, need, &b, 720), c.Times(start, h, need, &got, 720)
	if !(after.Late-after.Early < 0.6*(before.Late-before.Early)) {
		t.Errorf("range %v to %v before, %v to %v after", before.Early, before.Late, after.Early, after.Late)
	}
	fast, taken := l.Observe(b, plain, Vessel{0.72, 1}, start, h, []Reading{{at, 0.9, 0.05}})
	again := l.Clock(plain, fast.Mean)
	off := taken[0].Surprise
	if off < 1.2 || !(math.Abs(again.Likely(start, h, l.Need(0.9, 0.72, 1), 100)/at-1) <= 0.08) {
		t.Errorf("off by %v, now at %v h for %v", off, again.Likely(start, h, l.Need(0.9, 0.72, 1), 100), at)
	}
}
