package bench

import (
	"fmt"
	"math"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// bakery is a log of doughs, four a day: each is mixed, looked at, ready, and one loaf of it is weighed.
func bakery(doughs, readings int) (all Observations) {
	first := time.Date(2010, 1, 2, 4, 0, 0, 0, time.UTC)
	for i := range doughs {
		at := first.Add(time.Duration(i) * 6 * time.Hour)
		see := func(after time.Duration, kind Sight, o Observation) {
			o.Version, o.At, o.Kind, o.Bread = Format, at.Add(after), kind, "hall"
			all = append(all, o)
		}
		warmer := math.Sin(float64(i)) // from one dough to the next, without a period
		mix := DoughMixed{
			Dough: quantity.Celsius(25 + warmer), Flour: quantity.Celsius(20), Water: quantity.Celsius(26 + warmer),
			FlourWeight: quantity.Kilograms(10), WaterWeight: quantity.Kilograms(7), Mixer: mixing.Spiral,
			Slow: quantity.Elapsed(6 * time.Minute), Fast: quantity.Elapsed(3 * time.Minute),
			Hydration: quantity.NewPercent(70), Salt: quantity.NewPercent(2), Room: quantity.Celsius(22 + warmer),
			Weight: quantity.Kilograms(17), Inoculation: quantity.NewPercent(15),
		}
		see(0, SawMixed, Observation{Mix: &mix})
		for k := range readings {
			see(time.Duration(180+k)*time.Minute, SawRise, Observation{Rise: &SeenRise{Rise: quantity.NewPercent(20)}})
		}
		see(5*time.Hour, SawReady, Observation{Ready: &ReadyDough{Rise: quantity.NewPercent(60)}})
		see(8*time.Hour, SawWeights, Observation{Weights: &LoafWeights{
			In: quantity.Grams(900), Out: quantity.Grams(770 + 5*warmer), Style: bake.LeanHearth,
		}})
	}
	return all
}

// Four times as many doughs are four times the work of learning, and more readings of a dough are hardly any: nothing
// about it is worked out twice. The work is counted as pieces of memory asked for, which no other program disturbs.
func TestLearningIsLinear(t *testing.T) {
	work := func(doughs, readings int) float64 {
		all := bakery(doughs, readings)
		return testing.AllocsPerRun(1, func() {
			if l, err := all.Learn(0); err != nil || l.Bakes != doughs || len(l.Cultures[0].Bakes) != doughs {
				t.Fatalf("%d bakes, %v", l.Bakes, err)
			}
		})
	}
	one, four, more := work(100, 1), work(400, 1), work(100, 9)
	if four > 4.2*one {
		t.Errorf("four times the doughs take %.2f times the work", four/one)
	}
	if more > 1.7*one {
		t.Errorf("nine readings of a dough take %.2f times the work of one", more/one)
	}
}

// The time of learning from logs of a bakery, for each dough.
func BenchmarkLearn(b *testing.B) {
	for _, doughs := range []int{1000, 4000, 16_000} {
		all := bakery(doughs, 1)
		b.Run(fmt.Sprint(doughs), func(b *testing.B) {
			for b.Loop() {
				if _, err := all.Learn(0); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(b.Elapsed().Seconds()*1e6/float64(doughs*b.N), "µs/dough")
		})
	}
}
