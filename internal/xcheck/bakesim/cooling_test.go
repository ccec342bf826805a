package bakesim

import (
	"math"
	"math/rand"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/heat"
)

// Far below boiling and without vapor the simulation is plain conduction: it must agree with the exact
// series, which checks both.
func TestSimulationAgreesWithTheSeries(t *testing.T) {
	for dimension, geometry := range map[int]heat.Geometry{1: heat.Plate(0.05), 2: heat.LongCylinder(0.05),
		3: heat.Ball(0.05)} {
		l := Loaf{Dimension: dimension, Radius: 0.05, Density: 420, Water: 0.44, Start: 90, Boiling: 99.97, Oven: 22,
			Surface: 10, Conductivity: 0.24}
		points := Bake(l, 9000, 300)
		body, err := heat.NewBody(geometry, heat.Material{Conductivity: 0.24, Density: 420, HeatCapacity: crumbHeat}, 10)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range points {
			core, mean := 22+68*body.Center(p.Seconds), 22+68*body.Mean(p.Seconds)
			if math.Abs(p.Core-core) > 0.1 || math.Abs(p.Mean-mean) > 0.1 {
				t.Errorf("dimension %d at %.0f s: simulated core %.2f mean %.2f, series %.2f %.2f", dimension, p.Seconds, p.Core,
					p.Mean, core, mean)
			}
		}
	}
}

// The trade's rule: the core passes 55 °C near half of the time to arrival.
func TestSimulationKeepsTheSCurveRule(t *testing.T) {
	all, altitudes := loaves(rand.New(rand.NewSource(3)))
	for i, l := range all {
		if altitudes[i] != 0 {
			continue
		}
		points := Bake(l, 7000, 20)
		if share := Reaches(points, 55) / Reaches(points, 93); share < 0.42 || share > 0.67 {
			t.Errorf("%+v: 55 °C at %.2f of arrival at 93 °C", l, share)
		}
	}
}

// Loaves taken out at several cores: the peak lies in the range of CarryOverFrom, and on average near its
// median.
func TestCarryOver(t *testing.T) {
	all, altitudes := loaves(rand.New(rand.NewSource(5)))
	n, inside, sum := 0, 0, 0.0
	for i, l := range all {
		if altitudes[i] != 0 {
			continue
		}
		points := Bake(l, 7000, 20)
		for _, below := range []float64{20, 6} {
			at := Reaches(points, l.Boiling-below)
			if math.IsInf(at, 1) || at > 6000 {
				continue
			}
			out := l
			out.Out = at
			peak := 0.0
			for _, p := range Bake(out, at+2400, 20) {
				peak = math.Max(peak, p.Core)
			}
			c, err := bake.TakenOut{Place: bake.At(quantity.Meters(altitudes[i])),
				Core: quantity.Celsius(l.Boiling - below)}.CarryOver()
			if err != nil {
				t.Fatal(err)
			}
			n++
			sum += (peak - (l.Boiling - below)) / below
			if peak >= c.Peak.Low.Celsius() && peak <= c.Peak.High.Celsius() {
				inside++
			}
		}
	}
	t.Logf("%d loaves: the core gained %.2f of its distance to boiling on average; %d peaks within the range", n,
		sum/float64(n), inside)
	if mean := sum / float64(n); mean < 0.5 || mean > 0.66 {
		t.Errorf("mean gain %.2f, the numerical loaves, which dry no further, gained 0.58", mean)
	}
	if inside < n*8/10 {
		t.Errorf("%d of %d peaks within an 80 %% range", inside, n)
	}
}

// Loaves cool on a rack after the oven; two or three noisy readings must give ranges that hold the truth as
// often as they claim.
func TestRefitCooling(t *testing.T) {
	rng := rand.New(rand.NewSource(11))
	all, altitudes := loaves(rng)
	n, inside, sum := 0, 0, 0.0
	for i, l := range all {
		if altitudes[i] != 0 {
			continue
		}
		l.Out = Reaches(Bake(l, 7000, 20), l.Boiling-2.5)
		if math.IsInf(l.Out, 1) {
			continue
		}
		points := Bake(l, l.Out+14000, 30)
		var after []Point
		for _, p := range points {
			if p.Seconds >= l.Out {
				after = append(after, p)
			}
		}
		falls := func(core float64) float64 {
			for j := 1; j < len(after); j++ {
				if a, b := after[j-1], after[j]; a.Core > core && b.Core <= core {
					return a.Seconds + (a.Core-core)/(a.Core-b.Core)*(b.Seconds-a.Seconds)
				}
			}
			return math.Inf(1)
		}
		ready := falls(35)
		if math.IsInf(ready, 1) {
			continue
		}
		for range 8 {
			start := falls(75 - 10*rng.Float64())
			gap := (ready - start) * 0.25
			var samples []bake.Sample
			for k := range 3 {
				at := start + gap*float64(k)/2
				samples = append(samples, bake.Sample{At: quantity.Elapsed((at - l.Out) * 1e9),
					Core: quantity.Celsius(At(after, at).Core + 0.5*rng.NormFloat64())})
			}
			c, err := bake.CoolingProbe{Samples: samples, Room: quantity.Celsius(22 + 0.5*rng.NormFloat64())}.TimeLeft()
			if err != nil {
				continue // three noisy readings within a minute or two of each other
			}
			truth := ready - start - gap
			n++
			sum += c.Ready.Likely.Seconds()/truth - 1
			if c.Ready.Contains(time.Duration(truth * 1e9)) {
				inside++
			}
		}
	}
	t.Logf("%d answers: mean error %+.0f %%, range holds the truth in %.0f %%", n, 100*sum/float64(n),
		100*float64(inside)/float64(n))
	if inside < n*8/10 {
		t.Errorf("%d of %d truths within an 80 %% range", inside, n)
	}
	if mean := sum / float64(n); math.Abs(mean) > 0.15 {
		t.Errorf("mean error %.2f", mean)
	}
}
