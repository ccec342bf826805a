package ferment_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// The older law is worked out here as its description has it, hour by hour: the rise goes as the growth of the culture,
// R = f·s/K·(e^M − 1), with spreads of the amplitude, the pace, the temperature and the salt, and 10 % on each side.
func TestTheOlderLawByHand(t *testing.T) {
	law := ferment.DoseLaw{Levain: ferment.GanzleYeastHeld(), Yeast: ferment.SaccharomycesCardinal()}
	square := func(x float64) float64 { return x * x }
	salt := func(c float64) float64 { return 1 - math.Pow(c/8, 1.25) } // of 1 at none, c g in 100 g of water
	byHand := func(b ferment.Bulk, warm float64, until float64, then float64) (out [3]float64) {
		f1, f2 := b.Inoculation.Fraction(), 10*b.Yeast.Amount.Points()
		spread := [2]float64{0.35, 0.25} // of the logs of amplitude and pace, levain
		switch {
		case f1 > 0 && f2 > 0:
			spread[1] = 0.29
		case f2 > 0:
			spread = [2]float64{0.25, 0.15}
		}
		s := salt(100*b.Salt.Points()/b.Hydration.Points()) / salt(100*2/75.0)
		a := b.Rise.Fraction() / ((f1 + f2) * s)
		need := math.Log(1 + a)
		score := func(hour, q float64) float64 {
			first := math.Min(hour, until)
			integral := func(f func(float64) float64) float64 { return first*f(warm) + (hour-first)*f(then) }
			m1 := integral(law.Levain.Rate)
			m2 := integral(law.Yeast.Rate) * 0.07 / law.Yeast.Rate(27)
			received := math.Log((f1*math.Exp(m1) + f2*math.Exp(m2)) / (f1 + f2))
			mean := integral(func(c float64) float64 { return c }) / hour
			amplitude := square(spread[0]) + square(0.3*math.Log(s))
			variance := square(a/((1+a)*need))*amplitude + square(spread[1]) + 0.1*0.1 + 0.12*0.12 +
				square(0.03*(mean-24))
			return math.Log(received/need) - q*1.2815515655446004*math.Sqrt(variance)
		}
		for i, q := range []float64{-1, 0, 1} {
			low, high := 0.001, 720.0
			for range 100 {
				if middle := (low + high) / 2; score(middle, q) < 0 {
					low = middle
				} else {
					high = middle
				}
			}
			out[i] = high
		}
		return out
	}
	for name, c := range map[string]struct {
		bulk              ferment.Bulk
		warm, until, then float64
	}{
		"levain":          {good(), 23, 1, 23},
		"levain, cooling": {good(), 27, 3, 19},
		"little salt":     {with(good(), func(b *ferment.Bulk) { b.Salt = pct(0.5) }), 25, 1, 25},
		"much salt and rise": {with(good(), func(b *ferment.Bulk) {
			b.Salt, b.Rise = pct(3.2), pct(180)
		}), 21, 4, 26},
		"yeast": {yeasted(ferment.InstantYeast, 0.4), 26, 2, 22},
		"levain and yeast": {with(good(), func(b *ferment.Bulk) {
			b.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)}
		}), 24, 2, 20},
		"late end just in 30 days": {good(), 3.3, 1, 3.3},
		"late end beyond 30 days":  {good(), 2.5, 1, 2.5},
	} {
		c.bulk.History = corners(t, 0, c.warm, c.until, c.warm, c.until, c.then)
		got, err := law.Ready(c.bulk)
		if err != nil {
			t.Fatal(name, err)
		}
		want := byHand(c.bulk, c.warm, c.until, c.then)
		for i, d := range []time.Duration{got.Early, got.Likely, got.Late} {
			if !(math.Abs(d.Seconds()-3600*want[i]) <= 1) {
				t.Errorf("%s: %v, by hand %v h", name, got, want)
				break
			}
		}
		if got.Probability != quantity.NewPercent(80) {
			t.Errorf("%s: %v", name, got.Probability)
		}
	}
}
