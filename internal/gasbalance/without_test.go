package gasbalance

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"
)

// Without the coldest bake the next one is the coldest of the rest; without any other it stays. Each bake is visited
// once, in order, where bakes fade and where they do not.
func TestTheColdestOfTheRest(t *testing.T) {
	bakes := dated(invented(11, 21)) // at 20 to 28 °C, two of them at 20 and two at 21
	bakes[9].Celsius = 19.5
	weights := slices.Repeat([]float64{1}, len(bakes))
	for _, halfLife := range []float64{0, 30} {
		g, _ := Group{HalfLife: halfLife}.Learn("Ada", "rye", bakes)
		var visits []int
		g.Without("Ada", "rye", bakes, weights, func(i int, got *Taught) {
			visits = append(visits, i)
			rest := slices.Delete(slices.Clone(bakes), i, i+1)
			want := slices.MinFunc(rest, func(a, b Dated) int { return cmp.Compare(a.Celsius, b.Celsius) }).Celsius
			if got.Coldest != want || got.Bakes != len(rest) {
				t.Errorf("half-life %v, without %d: %d bakes, the coldest at %v °C, want %v", halfLife, i, got.Bakes,
					got.Coldest, want)
			}
		})
		if want := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}; !slices.Equal(visits, want) {
			t.Errorf("half-life %v: bakes %v are left out", halfLife, visits)
		}
		g.Without("Bo", "rye", bakes, nil, func(int, *Taught) { t.Error("a culture without bakes is visited") })
	}
}

// Where bakes fade and each counted as much as it was surprising, leaving one out leaves the others as much as they
// count on its day; so do bakes of the sums that are not among those listed.
func TestWithoutABakeThatCountedLess(t *testing.T) {
	const halfLife = 25.0
	bakes := dated(invented(9, 22))
	own := []float64{1, 0.4, 0.9, 1, 0.05, 1, 0.7, 0.2, 1} // on their own days
	last := bakes[len(bakes)-1].Day
	var sums Sums
	weights := make([]float64, len(bakes))
	for i := range bakes {
		weights[i] = own[i] * math.Exp2((bakes[i].Day-last)/halfLife)
		sums.Add(&bakes[i].Row, weights[i])
	}
	sums.Day = last
	for name, older := range map[string][]Row{"none": nil, "one": invented(1, 30), "three": invented(3, 31)} {
		s := sums
		for i := range older {
			s.Add(&older[i], 0.5)
		}
		g := Group{HalfLife: halfLife}.With("Ada", "rye", s)
		visits := 0
		g.Without("Ada", "rye", bakes, weights, func(i int, got *Taught) {
			visits++
			var rest Sums
			for k := range bakes {
				if k != i {
					rest.Add(&bakes[k].Row, own[k]*math.Exp2(-math.Abs(bakes[k].Day-bakes[i].Day)/halfLife))
				}
			}
			for k := range older {
				rest.Add(&older[k], 0.5) // as on the day of the sums
			}
			want := Group{}.With("Ada", "rye", rest).Taught("Ada", "rye")
			for u := range effects {
				sd := math.Sqrt(want.effects.cov[u][u])
				if !(math.Abs(got.effects.mean[u]-want.effects.mean[u]) <= 2e-3*sd) ||
					!(math.Abs(math.Sqrt(got.effects.cov[u][u])-sd) <= 2e-3*sd) {
					t.Errorf("%s more, without %d: effect %d is %v ± %v, want %v ± %v", name, i, u, got.effects.mean[u],
						math.Sqrt(got.effects.cov[u][u]), want.effects.mean[u], sd)
				}
			}
			if !(math.Abs(got.Luck/want.Luck-1) <= 1e-4) || got.Bakes != len(bakes)-1+len(older) {
				t.Errorf("%s more, without %d: luck %v of %d bakes, want %v", name, i, got.Luck, got.Bakes, want.Luck)
			}
		})
		if visits != len(bakes) {
			t.Errorf("%s more: %d visits", name, visits)
		}
	}
}

// The entries of a group are in order of their persons, and of each person's cultures, whoever came first.
func TestEntriesAreInOrder(t *testing.T) {
	names := [][2]string{{"Cy", "rye"}, {"Ada", "wheat"}, {"Bo", "rye"}, {"Ada", "rye"}, {"Cy", "oat"}, {"Ada", "rye"}}
	var g Group
	for i, n := range names {
		g = g.With(n[0], n[1], SumRows(invented(1+i, uint64(i))))
	}
	want := []string{"Ada rye 10", "Ada wheat 2", "Bo rye 3", "Cy oat 5", "Cy rye 1"}
	var got []string
	for _, e := range g.Entries {
		got = append(got, fmt.Sprint(e.Person, " ", e.Culture, " ", e.Sums.Bakes))
	}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
