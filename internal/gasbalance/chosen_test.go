package gasbalance

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Of several half-lives the one that foretold the log best is taken, but none that is not evidently better than none:
// by more than 0.15 in the log.
func TestWhichForetoldBest(t *testing.T) {
	for _, c := range []struct {
		by   []float64
		want int
	}{
		{[]float64{-3}, 0}, {[]float64{-3, -4, -5}, 0}, {[]float64{-3, -2.86, -2.9}, 0},
		{[]float64{-3, -2.84, -5}, 1}, {[]float64{-3, -2, -1}, 2}, {[]float64{-3, -1, -2}, 1},
		{[]float64{-3, -1, -1}, 1},
		{[]float64{-3, -2.86, -2.8}, 2}, {[]float64{0, 0.15, 0.15}, 0},
	} {
		if got := best(len(c.by), func(k int) float64 { return c.by[k] }); got != c.want {
			t.Errorf("of %v number %d is taken, want %d", c.by, got, c.want)
		}
	}
}

// changing is a log of bakes a week apart whose culture grows slower by so much with each.
func changing(n int, byBake float64) []Dated {
	bakes := dated(invented(n, 41))
	for i := range bakes {
		bakes[i].Y += byBake * float64(i)
		bakes[i].Scale = 1
	}
	return bakes
}

// A culture that changes fast is given the half-life that foretold it best, and what it believes then is that of its
// faded bakes. The log of how likely the bakes were is told for each half-life, and the evidence is their difference.
func TestAHalfLifeIsChosenByTheLog(t *testing.T) {
	chosen := map[float64]int{}
	for _, byBake := range []float64{0, 0.03, 0.06, 0.1, 0.2} {
		bakes := changing(30, byBake)
		g, weights := Group{}.Learn("Ada", "rye", bakes)
		told := g.Foretold("Ada", "rye")
		if len(told) != 3 || told[0].HalfLife != 0 || told[1].HalfLife != 60 || told[2].HalfLife != 15 {
			t.Fatalf("half-lives %+v", told)
		}
		best := told[0]
		best.Log += 0.15
		for _, f := range told[1:] {
			if f.Log > best.Log {
				best = f
			}
		}
		taught := g.Taught("Ada", "rye")
		chosen[best.HalfLife]++
		evidence := 0.0
		if best.HalfLife > 0 {
			evidence = best.Log - told[0].Log
		}
		if taught.HalfLife != best.HalfLife || !(math.Abs(taught.Evidence-evidence) <= 1e-12) || taught.Bakes != 30 {
			t.Errorf("changing by %v: half-life %v, evidence %v; want %v, %v", byBake, taught.HalfLife, taught.Evidence,
				best.HalfLife, evidence)
		}
		// With that half-life given, the same weights are found and the same is learned, as nothing is chosen then.
		given, same := Group{HalfLife: best.HalfLife}.Learn("Ada", "rye", bakes)
		if diff := cmp.Diff(same, weights, cmpopts.EquateApprox(1e-12, 0)); best.HalfLife > 0 && diff != "" {
			t.Errorf("changing by %v, weights: %s", byBake, diff)
		}
		ignored := cmpopts.IgnoreFields(Taught{}, "Evidence", "Score")
		if d := cmp.Diff(given.Taught("Ada", "rye"), taught, alike, ignored); best.HalfLife > 0 && d != "" {
			t.Errorf("changing by %v: %s", byBake, d)
		}
		if got := given.Foretold("Ada", "rye"); best.HalfLife > 0 && got != nil {
			t.Errorf("where one is given, %v are chosen from", got)
		}
	}
	if chosen[0] == 0 || chosen[15] == 0 {
		t.Errorf("half-lives chosen: %v", chosen)
	}
	if got := (Group{}).Foretold("Ada", "rye"); got != nil {
		t.Errorf("of nobody's log %v", got)
	}
}

// What is learned of a log does not rest on which day is called the first.
func TestDaysCountFromAnywhere(t *testing.T) {
	for name, learn := range map[string]func(g Group, bakes []Dated) (Group, []float64){
		"in order": func(g Group, bakes []Dated) (Group, []float64) { return g.Learn("", "", bakes) },
		"robustly": func(g Group, bakes []Dated) (Group, []float64) { return g.LearnRobustly("", "", bakes) },
	} {
		for _, halfLife := range []float64{0, 20} {
			bakes := changing(12, 0.05)
			at0, weights := learn(Group{HalfLife: halfLife}, bakes)
			for i := range bakes {
				bakes[i].Day -= 5000
			}
			before0, same := learn(Group{HalfLife: halfLife}, bakes)
			if d := cmp.Diff(weights, same, cmpopts.EquateApprox(1e-9, 0)); d != "" {
				t.Errorf("%s, half-life %v, weights: %s", name, halfLife, d)
			}
			if d := cmp.Diff(at0.Taught("", ""), before0.Taught("", ""), alike); d != "" {
				t.Errorf("%s, half-life %v: %s", name, halfLife, d)
			}
			if got, want := before0.Entries[0].Sums.Day, bakes[11].Day; got != want {
				t.Errorf("%s, half-life %v: as of day %v, want %v", name, halfLife, got, want)
			}
		}
	}
	// Bakes of one day, whichever, leave nothing to choose.
	bakes := changing(5, 0)
	for i := range bakes {
		bakes[i].Day = 77
	}
	if g, _ := (Group{}).Learn("", "", bakes); g.Entries[0].Fading != nil {
		t.Errorf("bakes of one day are kept for %d half-lives", len(g.Entries[0].Fading))
	}
}

// After a half-life everything a bake said counts half, if it is the only one too; nothing is forgotten backward.
func TestOneBakeFades(t *testing.T) {
	row := Row{Y: 0.25, Scale: 1, H: Vector{0.5, 1, -2, 0.125, 0, 0}, Kneading: 1, Celsius: 22}
	s := SumRows([]Row{row})
	s.Score = Score{Squares: 3, Weight: 2, Foretold: -4, Inside: 1, Ranges: 2}
	got := s.Forget(30, 30)
	var want Sums
	want.Add(&row, 0.5)
	want.Day, want.Score = 30, Score{Squares: 1.5, Weight: 1, Foretold: -4, Inside: 1, Ranges: 2}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	for _, back := range []float64{30, 29, -400} {
		if d := cmp.Diff(got, got.Forget(back, 30)); d != "" {
			t.Errorf("seen from day %v: %s", back, d)
		}
	}
}

// Merged sums have the coldest bake of both, the way of weighing that takes more, the record of both, and their day.
func TestWhatMergedSumsHold(t *testing.T) {
	of := func(celsius, day float64, w Weighing) Sums {
		s := SumRows([]Row{{Y: 0.1, Scale: 2, H: Vector{1, 1, 1, 1, 1, 1}, Celsius: celsius}})
		s.Day, s.Weighing, s.Score = day, w, Score{Squares: 1, Weight: 2, Foretold: 3, Inside: 4, Ranges: 5}
		return s
	}
	warm, cold, none := of(26, 3, Biweight), of(18, 9, Alike), Sums{Day: 100}
	for name, c := range map[string]struct {
		got           Sums
		coldest, day  float64
		weighed       Weighing
		bakes, scored int
	}{
		"warm and cold": {warm.Merge(cold, 0), 18, 9, Biweight, 2, 2},
		"cold and warm": {cold.Merge(warm, 0), 18, 9, Biweight, 2, 2},
		"warm and none": {warm.Merge(none, 0), 26, 3, Biweight, 1, 1},
		"none and warm": {none.Merge(warm, 0), 26, 3, Biweight, 1, 1},
		"none and cold": {none.Merge(cold, 0), 18, 9, Alike, 1, 1},
	} {
		n := float64(c.scored)
		score := Score{Squares: n, Weight: 2 * n, Foretold: 3 * n, Inside: 4 * c.scored, Ranges: 5 * c.scored}
		if g := c.got; g.Coldest != c.coldest || g.Day != c.day || g.Weighing != c.weighed || g.Bakes != c.bakes ||
			g.Score != score || g.Gram[0][Slope][Pace] != n/2 || g.Moment[0][Growth] != 0.05*n || g.Weight != n {
			t.Errorf("%s: %+v", name, g)
		}
	}
}
