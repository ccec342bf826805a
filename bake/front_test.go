package bake

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

// The computed loss, with 2 points for cooling, stays near the table of usual losses over styles and sizes.
func TestFrontAgreesWithTheTableOfLosses(t *testing.T) {
	sum, n := 0.0, 0.0
	for _, s := range quantity.Values[Style]() {
		if !s.ByCore() || s == ParBaked {
			continue
		}
		r := rowOf(s)
		for _, g := range []float64{60, 85, 110, 200, 350, 500, 900, 1300, 1750} {
			if g < r.bake.from || g > r.bake.to {
				continue
			}
			vessel := Stone
			if r.shape == Tin {
				vessel = TinPan
			}
			p, err := OvenLoad{Style: s, Dough: quantity.Grams(g), Pieces: 1, Vessel: vessel}.Program()
			if err != nil {
				t.Fatal(err)
			}
			b, err := p.BakeOut()
			if err != nil {
				t.Fatal(err)
			}
			usual, err := s.UsualLoss(quantity.Grams(g))
			if err != nil {
				t.Fatal(err)
			}
			off := b.Loss.Likely.Points() + 2 - usual.Loss.Likely.Points()
			sum, n = sum+math.Abs(off), n+1
			if !(math.Abs(off) <= 5.1) {
				t.Errorf("%v of %v g: %.1f points from the table", s, g, off)
			}
			if g == r.bake.grams && b.Color != GoldenBrown {
				t.Errorf("the usual bake of %v is %v", s, b.Color)
			}
			workcheck.Verify(t, b.Working())
		}
	}
	t.Logf("%.0f bakes, %.1f points from the table on average", n, sum/n)
	if sum/n > 2.4 {
		t.Errorf("%.2f points from the table on average", sum/n)
	}
}

// More heat or more time never loses less and is never lighter; what is wet neither dries nor browns; a browning that
// was learned gives back the shade that was seen.
func TestBakeOutProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := OvenBake{
			Style: probedStyle(rt),
			Shape: rapid.SampledFrom(append(quantity.Values[Shape](), UsualShape)).Draw(rt, "shape"),
			Dough: quantity.Grams(rapid.Float64Range(40, 4000).Draw(rt, "dough")),
		}
		oven, dry := rapid.Float64Range(150, 300).Draw(rt, "oven"), rapid.Float64Range(8, 60).Draw(rt, "dry")
		in.Phases = []HeatPhase{{quantity.Celsius(250), within(10), true}, {quantity.Celsius(oven), within(dry), false}}
		b, err := in.BakeOut()
		if err != nil {
			rt.Fatal(err)
		}
		for _, fault := range workcheck.Faults(b.Working()) {
			rt.Fatal(fault)
		}
		if b.Loss.Low.Compare(b.Loss.Likely) > 0 || b.Loss.Likely.Compare(b.Loss.High) > 0 || b.Shades[0] > b.Color ||
			b.Color > b.Shades[1] ||
			b.String() == "" {
			rt.Fatalf("out of order: %+v", b)
		}
		if b.Surface.Celsius() > oven || b.Surface.Compare(b.Boiling) < 0 {
			rt.Fatalf("surface of %v in an oven of %v", b.Surface, oven)
		}
		more := in
		more.Phases = []HeatPhase{
			in.Phases[0],
			{
				quantity.Celsius(oven + rapid.Float64Range(0, 40).Draw(rt, "hotter")),
				within(dry + rapid.Float64Range(0, 20).Draw(rt, "longer")),
				false,
			},
		}
		m, err := more.BakeOut()
		if err != nil || m.Loss.Likely.Compare(b.Loss.Likely) < 0 || m.Likely < b.Likely-1e-9 {
			rt.Fatalf("more heat, less bake: %v then %v (%v)", b, m, err)
		}
		// A phase cut in two is the same bake.
		cut := in
		cut.Phases = []HeatPhase{
			in.Phases[0],
			{quantity.Celsius(oven), within(dry / 2), false},
			{quantity.Celsius(oven), within(dry / 2), false},
		}
		if c, err := cut.BakeOut(); err != nil || !(math.Abs(c.Loss.Likely.Points()-b.Loss.Likely.Points()) <= 1e-4) ||
			!(math.Abs(c.Likely-b.Likely) <= 0.05) {
			rt.Fatalf("cut in two: %v then %v (%v)", b, c, err)
		}
		wet := in
		wet.Phases = []HeatPhase{{quantity.Celsius(oven), within(dry), true}}
		if w, err := wet.BakeOut(); err != nil || !w.Loss.High.IsZero() || w.Color != Pale || w.Dries != 0 {
			rt.Fatalf("wet all the time: %v, %v", w, err)
		}
		saw := rapid.SampledFrom(quantity.Values[Shade]()).Draw(rt, "saw")
		f, err := in.LearnBrowning(saw)
		if err != nil {
			return
		}
		if f < 0.01 || f > 100 {
			return
		}
		in.Browning = f
		if again, err := in.BakeOut(); err != nil || again.Color != saw {
			rt.Fatalf("saw %v, learned %v, forecast %v (%v)", saw, f, again, err)
		}
	})
}
