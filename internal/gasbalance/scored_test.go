package gasbalance

import (
	"math"
	"testing"

	"example.org/maslin/internal/numeric"
)

// The first bake of a culture is scored by what is expected of any: z over how far Student's t reaches beyond a normal
// one, at the degrees of freedom of Welch and Satterthwaite, 12·(v/σ²)²; ln p = −ln s − 4·ln(1 + z²/7); and the range
// holds it within that reach.
func TestTheFirstBakeIsScoredByThePrior(t *testing.T) {
	for _, z := range []float64{-2.2, -1.35, -1.28, -0.4, 0.9, 1.28, 1.35, 3.5} {
		row := Row{Scale: 1.5, H: Vector{0.4, 1, -1.5, 0.2, 0.3, 0}, Kneading: 2, Celsius: 22}
		variance := 0.0
		for i, sd := range []float64{0.30, 0.15, 0.02, 1, 0.25} { // of a levain, all apart; and of its kneading
			variance += row.H[i] * row.H[i] * sd * sd
		}
		variance += 0.1*0.1 + 1.5*0.12*0.12
		row.Y = z * math.Sqrt(variance)
		ratio := variance / (0.12 * 0.12)
		reach, err := numeric.StudentQuantile(0.9, 12*ratio*ratio)
		if err != nil {
			t.Fatal(err)
		}
		g, weights := Group{}.Learn("", "", []Dated{{row, 0}})
		got := g.Entries[0].Sums.Score
		narrowed := z * 1.2815515655446004 / reach
		squares := narrowed * narrowed / 0.96257
		if x := 2.5 / math.Abs(narrowed); x < 1 {
			squares *= x * x * x * x
		}
		foretold := -math.Log(math.Sqrt(variance)) - 4*math.Log(1+z*z/7)
		inside := 0
		if math.Abs(z) <= reach {
			inside = 1
		}
		if !(math.Abs(got.Squares-squares) <= 1e-6*squares) || !(math.Abs(got.Foretold-foretold) <= 1e-12) ||
			got.Weight != 1 || got.Ranges != 1 || got.Inside != inside {
			t.Errorf("off by %v: %+v, want squares of %v, foretold %v, %d inside", z, got, squares, foretold, inside)
		}
		if want := math.Min(1, math.Pow(2/math.Abs(z), 3)); !(math.Abs(weights[0]-want) <= 1e-12) {
			t.Errorf("off by %v: a weight of %v, want %v", z, weights[0], want)
		}
	}
}

// What is learned robustly is the answer that its own weights give: each bake weighs (1 − (r/4.685)²)², r being how far
// it lies from what is then expected of it, over the luck and the root of its scale. So it is beside others' bakes too.
func TestRobustWeightsAreThoseOfTheirAnswer(t *testing.T) {
	for name, g := range map[string]Group{
		"alone": {},
		"among others": Group{}.With("Ada", "wheat", SumRows(invented(8, 3))).
			With("Bo", "rye", SumRows(invented(30, 4))),
		"the same name": Group{}.With("rye", "Ada", SumRows(invented(30, 4))),
	} {
		bakes := dated(invented(14, 51))
		for i := range bakes {
			bakes[i].Day = 3
			bakes[i].Scale = 1 + 0.5*float64(i%4)
		}
		bakes[4].Y += 0.55
		bakes[9].Y -= 0.4
		bakes[11].Y += 3
		learned, weights := g.LearnRobustly("Ada", "rye", bakes)
		taught := learned.Taught("Ada", "rye")
		if learned.entry("Ada", "rye").Sums.Weighing != Biweight {
			t.Errorf("%s: weighed otherwise", name)
		}
		less := 0
		for i := range bakes {
			b := &bakes[i]
			expected := taught.effects.mean[Unknowns+b.Kneading] * b.H[Pace]
			for u, h := range b.H {
				expected += h * taught.effects.mean[u]
			}
			r := (b.Y - expected) / math.Sqrt(b.Scale) / taught.Luck / 4.685
			want := math.Pow(math.Max(0, 1-r*r), 2)
			if !(math.Abs(weights[i]-want) <= 1e-4) {
				t.Errorf("%s: bake %d weighs %v, by the answer %v", name, i, weights[i], want)
			}
			if want < 0.9 {
				less++
			}
		}
		if less < 2 || weights[11] != 0 {
			t.Errorf("%s: weights %v", name, weights)
		}
	}
}

// A bake that was given no weight is not retold, and what the others are told to move is what was learned of them.
func TestBakesWithoutWeightAreNotRetold(t *testing.T) {
	bakes := dated(invented(12, 52))
	for i := range bakes {
		bakes[i].Day = 0
	}
	bakes[5].Y += 4
	g, weights := Group{}.LearnRobustly("Ada", "rye", bakes)
	_, _, each := g.Retold("Ada", "rye", bakes, weights)
	if weights[5] != 0 || len(each) != 11 {
		t.Errorf("%d of 12 bakes are retold, weights %v", len(each), weights)
	}
	before := g.before("Bo", "oat") // nothing is known of Bo's, but what Ada's say of everyone
	mean, variance, none := g.Retold("Bo", "oat", nil, nil)
	if mean == 0 || mean != before.mean[Pace] || variance != before.cov[Pace][Pace] || none != nil {
		t.Errorf("a newcomer is told to be %v ± %v, want %v ± %v", mean, math.Sqrt(variance), before.mean[Pace],
			math.Sqrt(before.cov[Pace][Pace]))
	}
}

// What a belief says of a dough kneaded in one way is what the effects behind it say of its row: hᵀP·h, the pace of its
// kneading among them, and hᵀx.
func TestABeliefHasTheKneadingInItsPace(t *testing.T) {
	taught := Group{}.With("", "", SumRows(invented(25, 53))).Taught("", "")
	for kneading := range kneadings {
		b := taught.Belief(kneading)
		for _, e := range []Vector{
			{1, 1, 0, 0, 0, 0}, {1, 1.4, -6, 0.3, 0.2, 0.1}, {0, 1, 3, 1, -1, 2}, {1, 0, 1, 1, 1, 0},
		} {
			r := Row{H: e, Kneading: kneading}
			h := r.effect()
			ph := taught.effects.cov.times(&h)
			mean := 0.0
			for i := range e {
				mean += e[i] * b.Mean[i]
			}
			if got, want := b.Cov.square(&e), h.dot(&ph); !(math.Abs(got-want) <= 1e-12*(1+want)) {
				t.Errorf("kneading %d, along %v: variance %v, want %v", kneading, e, got, want)
			}
			if want := h.dot(&taught.effects.mean); !(math.Abs(mean-want) <= 1e-12) {
				t.Errorf("kneading %d, along %v: mean %v, want %v", kneading, e, mean, want)
			}
		}
	}
}
