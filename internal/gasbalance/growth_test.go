package gasbalance

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// The growth curve of S. cerevisiae against growth rates measured in four laboratories, each with its own medium
// and strains and so a scale of its own: the residuals of the logs, in the standard deviations stated with them.
func TestGrowthPoints(t *testing.T) {
	type point struct{ celsius, mu, sd float64 }
	sets := map[string][]point{}
	curve := YeastGrowth()
	for _, f := range readCSV(t, "testdata/growth.csv") {
		celsius, err := strconv.ParseFloat(f[2], 64)
		mu, err2 := strconv.ParseFloat(f[3], 64)
		sd, err3 := strconv.ParseFloat(f[4], 64)
		switch f[0] {
		case "zakhartsev_anaerobic", "zakhartsev_anaerobic_extra", "caspeta_aerobic", "molinet_SC_mean", "gause_1932":
			if err != nil || err2 != nil || err3 != nil {
				t.Fatalf("%v", f)
			}
			if mu > 0 { // at 42 °C Caspeta and Nielsen saw none
				name := strings.TrimSuffix(f[0], "_extra")
				sets[name] = append(sets[name], point{celsius, mu, math.Max(sd, 0.1)})
			} else if curve.Rate(celsius) > 0.02 {
				t.Errorf("%s: none at %v °C, curve %v", f[0], celsius, curve.Rate(celsius))
			}
		case "ganzle_1998_curve":
			at27 := 0.0124 * math.Pow(9, 2.981) * math.Exp(-0.3355*9)
			if got := at27 * HumilisGrowth().Rate(celsius); !(math.Abs(got-mu) <= 6e-6) {
				t.Errorf("K. humilis at %v °C: %v, want %v", celsius, got, mu)
			}
		}
	}
	chi, n := 0.0, 0
	for name, points := range sets {
		var sum, weight float64
		for _, p := range points {
			w := 1 / (p.sd * p.sd)
			sum += w * math.Log(p.mu/curve.Rate(p.celsius))
			weight += w
		}
		scale := sum / weight
		for _, p := range points {
			r := math.Log(p.mu/curve.Rate(p.celsius)) - scale
			t.Logf("%-22s %5.1f °C %.4f/h, curve %.4f/h, off by %+.2f in the log, %+.1f of its standard deviations",
				name, p.celsius, p.mu, math.Exp(scale)*curve.Rate(p.celsius), r, r/p.sd)
			// Near either end a degree is a factor; elsewhere no point lies off by more than a half.
			if p.celsius > 8 && p.celsius < 39 && !(math.Abs(r) <= 0.55) {
				t.Errorf("%s at %v °C: off by %+.2f in the log", name, p.celsius, r)
			}
			chi += r * r / (p.sd * p.sd)
			n++
		}
		t.Logf("%-22s growth at 27 °C %.3f/h", name, math.Exp(scale))
	}
	spread := math.Sqrt(chi / float64(n-len(sets)))
	t.Logf("%d points, spread %.2f of the standard deviations stated", n, spread)
	if n != 36 || spread > 1.5 {
		t.Errorf("%d points, spread %.2f", n, spread)
	}
}
