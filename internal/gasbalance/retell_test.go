package gasbalance

import (
	"math"
	"testing"
)

// Told one after the other, bakes move the pace to where all of them at once have moved it.
func TestRetoldIsWhatWasLearned(t *testing.T) {
	bakes := dated(invented(30, 5))
	learned := []struct {
		name string
		by   func() (Group, []float64)
		from int
	}{
		{"fading", func() (Group, []float64) { return Group{HalfLife: 60}.Learn("Ada", "rye", bakes) }, 0},
		{"the last ones", func() (Group, []float64) { return Group{}.Learn("Ada", "rye", bakes) }, 22},
		{"robustly", func() (Group, []float64) { return Group{}.LearnRobustly("Ada", "rye", bakes) }, 10},
	}
	for _, c := range learned {
		g, weights := c.by()
		mean, variance, each := g.Retold("Ada", "rye", bakes[c.from:], weights[c.from:])
		if (c.from == 0) != (mean == 0) || !(variance > 0) || len(each) == 0 {
			t.Errorf("%s: begins at %v ± %v with %d bakes", c.name, mean, variance, len(each))
		}
		for _, w := range each {
			if weight := w.Weight(); !(weight > 0 && weight < 1) {
				t.Errorf("%s: weight %v", c.name, weight)
			}
			gain := w.Share * w.Weight()
			mean += gain * (w.Read - w.Expected)
			variance -= gain * w.Share * w.Variance
		}
		taught := g.Taught("Ada", "rye")
		wantMean, wantSD := taught.Unknown(Pace)
		if !(math.Abs(mean-wantMean) <= 1e-5) || !(math.Abs(math.Sqrt(variance)-wantSD) <= 1e-5) {
			t.Errorf("%s: %v ± %v, want %v ± %v", c.name, mean, math.Sqrt(variance), wantMean, wantSD)
		}
	}
	if _, variance, each := (Group{}).Retold("nobody", "", bakes, make([]float64, len(bakes))); len(each) != 0 ||
		!(variance > 0) {
		t.Error("a culture that was never learned is retold")
	}
}
