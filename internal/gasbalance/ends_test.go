package gasbalance

import (
	"math"
	"testing"

	"example.org/maslin/internal/numeric"
)

// Before its first knot a history is as warm as there, after its last as there; and so are rates beyond the table.
func TestWhatLiesBeyondTheEnds(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	start := Start(0.1, 0)
	held := c.AdvanceAlong(start, []Knot{{0, 25}, {2, 25}, {4, 30}, {9, 30}}, 0, 9)
	bare := c.AdvanceAlong(start, []Knot{{2, 25}, {4, 30}}, 0, 9)
	if a, b := c.Gas(&held), c.Gas(&bare); !(math.Abs(a/b-1) <= 1e-12) {
		t.Errorf("gas %v, with the ends said %v", b, a)
	}
	for _, end := range []float64{tableFrom, tableTo} {
		if beyond, at := l.rates(2*end), l.rates(end); beyond != at {
			t.Errorf("at %v °C %+v, at %v °C %+v", 2*end, beyond, end, at)
		}
	}
}

// What weighing takes from ordinary bakes is the mean of w and of w·r² over a standard normal r: Tukey's biweight is
// (1 − (r/4.685)²)² within 4.685, a surprise of more than two (2/|r|)³.
func TestWhatWeighingTakesFromOrdinaryBakes(t *testing.T) {
	mean := func(f func(r float64) float64) float64 {
		sum := 0.0
		for _, x := range []float64{-8, -4.685, -2, 2, 4.685} { // where a weight bends
			to := map[float64]float64{-8: -4.685, -4.685: -2, -2: 2, 2: 4.685, 4.685: 8}[x]
			got, err := numeric.Integrate(func(r float64) float64 {
				return f(r) * math.Exp(-r*r/2) / math.Sqrt(2*math.Pi)
			}, x, to, 1e-9)
			if err != nil {
				t.Fatal(err)
			}
			sum += got.Value
		}
		return sum
	}
	for by, c := range map[Weighing]struct {
		weight    func(r float64) float64
		tolerance float64
	}{
		Alike: {func(float64) float64 { return 1 }, 1e-7},
		Biweight: {func(r float64) float64 {
			x := max(0, 1-r*r/(4.685*4.685))
			return x * x
		}, 1e-4},
		Surprise: {func(r float64) float64 { return math.Min(1, math.Pow(2/math.Abs(r), 3)) }, 6e-6},
	} {
		weight, squares := by.ordinary()
		if got := mean(c.weight); !(math.Abs(got-weight) <= c.tolerance) {
			t.Errorf("%v: a mean weight of %v, not %v", by, got, weight)
		}
		if got := mean(func(r float64) float64 { return r * r * c.weight(r) }); !(math.Abs(got-squares) <= c.tolerance) {
			t.Errorf("%v: mean squares of %v, not %v", by, got, squares)
		}
		if by == Surprise && !(math.Abs(weigh(3)-8.0/27) <= 1e-12 && weigh(2) == 1 && weigh(2.001) < 1) {
			t.Errorf("a bake off by three deviations counts %v", weigh(3))
		}
	}
}

// Entries of one day are kept once; of several days each half-life that is chosen from has sums of its own, unless one
// half-life is given. Nobody's bakes change nothing.
func TestMergedEntries(t *testing.T) {
	one := Row{Y: 0.1, Scale: 1}
	one.H[Pace] = 1
	entry := func(day float64) Entry {
		s := SumRows([]Row{one})
		s.Day = day
		return Entry{Sums: s}
	}
	for _, c := range []struct {
		days  [2]float64
		given float64
		apart int
	}{{[2]float64{5, 5}, 0, 0}, {[2]float64{5, 9}, 0, len(halfLives)}, {[2]float64{5, 9}, 60, 0}} {
		got := entry(c.days[0]).merge(entry(c.days[1]), c.given)
		if len(got.Fading) != c.apart || got.Sums.Bakes != 2 || !got.Sound() {
			t.Errorf("days %v, half-life %v: %d sums, %v bakes", c.days, c.given, len(got.Fading), got.Sums.Bakes)
		}
	}
	// Learned from a bake of a later day, sums of one day come apart too; bakes of that day leave them together.
	old := Group{}.set(entry(5))
	for day, apart := range map[float64]bool{5: false, 9: true} {
		learned, _ := old.Learn("", "", []Dated{{one, day}})
		if e := learned.entry("", ""); (len(e.Fading) > 0) != apart || e.Sums.Bakes != 2 {
			t.Errorf("a bake of day %v more: %d sums of %v bakes", day, len(e.Fading), e.Sums.Bakes)
		}
	}
	if got := entry(5).merge(Entry{}, 0); len(got.Fading) != 0 || got.Sums.Bakes != 1 || got.Sums.Day != 5 {
		t.Errorf("with nobody's bakes: %+v", got)
	}
}

// The first bake of a culture is learned robustly too, and counts whole.
func TestOneBakeIsLearnedRobustly(t *testing.T) {
	g, weights := Group{}.LearnRobustly("Ada", "rye", dated(invented(1, 3)))
	if e := g.entry("Ada", "rye"); e.Sums.Bakes != 1 || len(weights) != 1 || !(weights[0] > 0.5) {
		t.Errorf("%v bakes, weights %v", e.Sums.Bakes, weights)
	}
	if g, weights := (Group{}).LearnRobustly("Ada", "rye", nil); len(g.Entries) > 0 || weights != nil {
		t.Errorf("nothing: %+v, %v", g, weights)
	}
}

// Scored bakes that fall as a standard normal does have squares of one in the mean; cells are those of both leavenings.
func TestOrdinaryScoresAreOne(t *testing.T) {
	squares, err := numeric.Integrate(func(z float64) float64 {
		var s Score
		s.add(z, 1)
		return s.Squares * math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
	}, 1e-9, 2.5, 1e-9)
	tail, err2 := numeric.Integrate(func(z float64) float64 {
		var s Score
		s.add(z, 1)
		return s.Squares * math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
	}, 2.5, 9, 1e-9)
	if got := 2 * (squares.Value + tail.Value); err != nil || err2 != nil || !(math.Abs(got-1) <= 2e-5) {
		t.Errorf("%v, %v, %v", got, err, err2)
	}
	if s := Start(0.25, 0.5); s.Cells() != 0.75 {
		t.Errorf("%v cells", s.Cells())
	}
}

// The luck that is found does not rest on where the search for it begins.
func TestTheLuckDoesNotRestOnAGuess(t *testing.T) {
	s := SumRows(invented(30, 5))
	before := Group{}.before("", "")
	one := s.from(ByLevain, &before, luckOf(ByLevain))
	for _, guess := range []float64{0.3, 3} {
		if other := s.from(ByLevain, &before, guess*luckOf(ByLevain)); !(math.Abs(other.Luck/one.Luck-1) <= 1e-4) {
			t.Errorf("the luck is %v from a guess of %v times the usual, %v from the usual", other.Luck, guess, one.Luck)
		}
	}
}

// The two coldest of some bakes, in whatever order they come.
func TestTheTwoColdest(t *testing.T) {
	for _, c := range []struct{ celsius, want []float64 }{
		{[]float64{24}, []float64{24, 24}}, {[]float64{24, 26}, []float64{24, 26}}, {[]float64{26, 24}, []float64{24, 26}},
		{[]float64{24, 18, 21, 16, 25}, []float64{16, 18}}, {[]float64{16, 25, 20}, []float64{16, 20}},
	} {
		var rows []Dated
		for _, x := range c.celsius {
			rows = append(rows, Dated{Row: Row{Celsius: x}})
		}
		if first, second := coldestTwo(rows); first != c.want[0] || second != c.want[1] {
			t.Errorf("of %v: %v and %v", c.celsius, first, second)
		}
	}
}

// On a ramp a dough has met its need when a ramp to there has made the gas, and not a minute before.
func TestCrossedOnARamp(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	need := l.Need(0.8, 0.72, 1)
	var b Belief
	start := Start(0.1, 0)
	at, ok := c.Crossed(start, 12, 10, 34, &need, &b, 0)
	if !ok || at < 1 || at > 11 {
		t.Fatalf("after %v h, %v", at, ok)
	}
	for _, off := range []float64{-1.0 / 60, 1.0 / 60} {
		hours := at + off
		if _, ok := c.Crossed(start, hours, 10, 10+2*hours, &need, &b, 0); ok != (off > 0) {
			t.Errorf("a ramp that ends %v h after the crossing meets the need: %v", off, ok)
		}
	}
}

// A reading takes from what is believed of an unknown the square of how it goes with what was expected, over the
// variance of both: σ² ← σ² − cov²/(v + r²).
func TestAReadingTakesFromTheDoubt(t *testing.T) {
	l := Standard()
	start, history := Start(0.1, 0), []Knot{{0, 24}}
	_, taken := l.Observe(Prior(ByLevain), plain, Vessel{0.72, 1}, start, history, []Reading{{4, 0.5, 0.05}})
	got := taken[0]
	for i := range got.Together {
		want := got.Before.Cov[i][i] - got.Together[i]*got.Together[i]/(got.Variance()+got.Noise*got.Noise)
		if !(math.Abs(got.After.Cov[i][i]-want) <= 1e-9*got.Before.Cov[i][i]) {
			t.Errorf("unknown %d: %v, want %v", i, got.After.Cov[i][i], want)
		}
	}
}
