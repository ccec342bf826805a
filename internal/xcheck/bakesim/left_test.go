package bakesim

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// loaves are numerical loaves over what a kitchen bakes: thin and thick, dry and vapor-rich crumb, three
// altitudes.
func loaves(rng *rand.Rand) (all []Loaf, altitudes []float64) {
	for _, dimension := range []int{2, 3} {
		for _, radius := range []float64{0.03, 0.045, 0.055} {
			for _, vapor := range []float64{0.2, 0.5, 0.9} {
				for _, altitude := range []float64{0, 1150, 2500} {
					boiling, err := bake.At(quantity.Meters(altitude)).BoilingPoint()
					if err != nil {
						panic(err)
					}
					all = append(all, Loaf{
						Dimension: dimension, Radius: radius, Density: 420, Water: 0.44, Start: 25,
						Boiling: boiling.Point.Celsius() + 0.4*rng.NormFloat64(), // the weather
						Oven:    240, Then: 220, Switch: 1200, Surface: 22, Conductivity: 0.25, VaporShare: vapor, Room: 22, Still: 10,
					})
					altitudes = append(altitudes, altitude)
				}
			}
		}
	}
	return all, altitudes
}

type score struct {
	n, inside   int
	sum, square float64
}

// The minutes-left model reads a noisy probe in numerical loaves. Its range must hold the truth at least as
// often as it claims, and the errors of the median are reported per distance to boiling.
func TestTimeLeftOnNumericalLoaves(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	below := []float64{37, 30, 22, 15, 8} // °C under boiling at the last reading
	scores := map[string]*score{}
	all, altitudes := loaves(rng)
	for i, l := range all {
		goal := bake.Goal{Place: bake.At(quantity.Meters(altitudes[i]))}
		target, err := goal.Target()
		if err != nil {
			t.Fatal(err)
		}
		points := Bake(l, 7000, 20)
		arrival := Reaches(points, target.Core.Celsius())
		if math.IsInf(arrival, 1) {
			t.Fatalf("loaf %+v never bakes", l)
		}
		for _, approach := range quantity.Values[bake.Approach]() {
			for _, d := range below {
				end := Reaches(points, target.Boiling.Celsius()-d)
				for _, n := range []int{2, 5} {
					key := fmt.Sprintf("%v, %d readings, last %2.0f °C below boiling", approach, n, d)
					if scores[key] == nil {
						scores[key] = &score{}
					}
					for range 6 {
						scores[key].try(t, points, goal, approach, n, end, arrival, rng)
					}
				}
			}
		}
	}
	for _, approach := range quantity.Values[bake.Approach]() {
		for _, n := range []int{2, 5} {
			for _, d := range below {
				key := fmt.Sprintf("%v, %d readings, last %2.0f °C below boiling", approach, n, d)
				s := scores[key]
				mean, rms, cover := s.sum/float64(s.n), math.Sqrt(s.square/float64(s.n)), float64(s.inside)/float64(s.n)
				t.Logf("%s: %d answers, mean error %+.0f %%, rms %.0f %%, range holds the truth in %.0f %%", key, s.n, 100*mean,
					100*rms, 100*cover)
				// With 324 answers the share itself scatters by 0.022.
				if cover < 0.8-0.03 {
					t.Errorf("%s: the range claims 80 %% and holds the truth in %.0f %%", key, 100*cover)
				}
				if approach == bake.Quickening && math.Abs(mean) > 0.15 {
					t.Errorf("%s: mean error %.0f %%", key, 100*mean)
				}
			}
		}
	}
}

func (s *score) try(t *testing.T, points []Point, goal bake.Goal, approach bake.Approach, n int, end, arrival float64,
	rng *rand.Rand) {
	t.Helper()
	// Half of a probe's ±1 °C is common to all its readings, half is not.
	offset := 0.36 * rng.NormFloat64()
	span := 0.12 * arrival
	p := bake.Probe{Goal: goal, Approach: approach, Extrapolate: true}
	for i := range n {
		at := end - span*float64(n-1-i)/float64(n-1)
		core := At(points, at).Core + offset + 0.36*rng.NormFloat64()
		p.Samples = append(p.Samples, bake.Sample{At: quantity.Elapsed(at * float64(time.Second)),
			Core: quantity.Celsius(core)})
	}
	left, err := p.TimeLeft()
	if err != nil || left.State != bake.Rising {
		return
	}
	truth := arrival - end
	e := left.ToTarget.Likely.Seconds()/truth - 1
	s.n++
	s.sum += e
	s.square += e * e
	if left.ToTarget.Contains(time.Duration(truth * float64(time.Second))) {
		s.inside++
	}
}
