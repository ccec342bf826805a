package numeric

import (
	"math"
	"testing"
)

// Closed forms: with b = 1 the quantile is p^(1/a), with a = 1 it is 1 − (1 − p)^(1/b), with a = b = ½ it is
// sin²(πp/2).
func TestBetaQuantile(t *testing.T) {
	for _, p := range []float64{0, 0.01, 0.1, 0.5, 0.9, 0.999, 1} {
		for _, s := range []float64{0.5, 1, 2.5, 40} {
			for _, c := range []struct{ a, b, want float64 }{
				{s, 1, math.Pow(p, 1/s)}, {1, s, 1 - math.Pow(1-p, 1/s)}, {0.5, 0.5, math.Pow(math.Sin(math.Pi*p/2), 2)},
			} {
				got, err := BetaQuantile(p, c.a, c.b)
				if err != nil || !(math.Abs(got-c.want) <= 1e-9) {
					t.Errorf("p %v a %v b %v: got %v, %v, want %v", p, c.a, c.b, got, err, c.want)
				}
			}
		}
	}
	for _, bad := range [][3]float64{{-1, 1, 1}, {2, 1, 1}, {0.5, 0, 1}, {0.5, 1, math.NaN()}, {math.NaN(), 1, 1},
		{0.5, math.Inf(1), 1}} {
		if _, err := BetaQuantile(bad[0], bad[1], bad[2]); err == nil {
			t.Errorf("%v has a quantile", bad)
		}
	}
}
