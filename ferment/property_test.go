package ferment_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/numeric"
	"example.org/maslin/internal/workcheck"
	"pgregory.net/rapid"
)

func anyCurve() *rapid.Generator[ferment.Curve] {
	return rapid.SampledFrom([]ferment.Curve{ferment.GanzleYeast(), ferment.GanzleYeastHeld(),
		ferment.GanzleYeastColdStop(), ferment.SaccharomycesCardinal(), ferment.SquareRootFull(), ferment.SquareRootCold(),
		ferment.TradeQ10(), ferment.GanzleLactobacilli()})
}

func pct(x float64) quantity.Percent { return quantity.NewPercent(x) }

// anyBulk is a plausible levain dough between 16 and 27 °C.
func anyBulk(t *rapid.T) ferment.Bulk {
	return ferment.Bulk{
		Inoculation: pct(rapid.Float64Range(2, 40).Draw(t, "inoculation")),
		Hydration:   pct(72), Salt: pct(rapid.Float64Range(0, 4).Draw(t, "salt")),
		WholeGrain: pct(rapid.Float64Range(0, 100).Draw(t, "whole grain")),
		Rise:       pct(rapid.Float64Range(10, 200).Draw(t, "rise")),
		History:    anyHistory(t),
		Law:        ferment.GasBalance(),
		ColdLevain: rapid.Bool().Draw(t, "cold levain"),
		Kneading: rapid.SampledFrom([]ferment.KneadedBy{ferment.KneadingUnstated, ferment.ByHand,
			ferment.ByMachine}).Draw(t, "kneading"),
	}
}

func anyHistory(t *rapid.T) ferment.History {
	points := []ferment.Knot{}
	at := time.Duration(0)
	for range rapid.IntRange(1, 8).Draw(t, "readings") {
		points = append(points, ferment.Knot{At: quantity.Elapsed(at),
			Temperature: quantity.Celsius(rapid.Float64Range(16, 27).Draw(t, "°C"))})
		at += time.Duration(rapid.IntRange(1, 200).Draw(t, "minutes")) * time.Minute
	}
	h, err := ferment.Readings{Points: points}.History()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func estimate(t rapid.TB, b ferment.Bulk) ferment.Estimate {
	t.Helper()
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func TestRangesAreInOrderAndWorkingsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBulk(t)
		e := estimate(t, b)
		r := e.Ready()
		if !(r.Early > 0 && r.Early < r.Likely && r.Likely < r.Late) {
			t.Fatalf("%v", r)
		}
		for _, f := range workcheck.Faults(e.Working()) {
			t.Error(f)
		}
		flavor, err := e.Flavor(r.Likely)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range workcheck.Faults(flavor.Working()) {
			t.Error(f)
		}
		last := quantity.Percent{}
		for _, p := range e.RiseCurve(9) {
			if p.Rise.Low.Compare(p.Rise.Likely) > 0 || p.Rise.Likely.Compare(p.Rise.High) > 0 ||
				p.Rise.Likely.Compare(last) < 0 {
				t.Fatalf("band %v after %v", p.Rise, last)
			}
			last = p.Rise.Likely
		}
		// The band and the range are two views of one distribution.
		for _, x := range []struct {
			at   time.Duration
			rise func(quantity.Range[quantity.Percent]) quantity.Percent
		}{{r.Early, func(b quantity.Range[quantity.Percent]) quantity.Percent { return b.High }}, {r.Likely,
			func(b quantity.Range[quantity.Percent]) quantity.Percent { return b.Likely }}, {r.Late,
			func(b quantity.Range[quantity.Percent]) quantity.Percent { return b.Low }}} {
			band, err := e.RiseAt(x.at)
			if err != nil {
				t.Fatal(err)
			}
			if got := x.rise(band).Points() / b.Rise.Points(); !(math.Abs(got-1) <= 0.01) {
				t.Fatalf("at %v the band %v misses the target %v by a factor %v", x.at, band, b.Rise, got)
			}
		}
	})
}

func TestMoreIsNeverSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBulk(t)
		before := estimate(t, b).Ready()
		more := b
		more.Inoculation = pct(b.Inoculation.Points() * rapid.Float64Range(1, 2).Draw(t, "more"))
		if after := estimate(t, more).Ready(); after.Likely > before.Likely || after.Early > before.Early+time.Second {
			t.Fatalf("more levain: %v, then %v", before, after)
		}
		salted := b
		salted.Salt = pct(b.Salt.Points() + 1)
		if after := estimate(t, salted).Ready(); after.Likely < before.Likely {
			t.Fatalf("more salt: %v, then %v", before, after)
		}
		further := b
		further.Rise = pct(b.Rise.Points() * 1.2)
		if after := estimate(t, further).Ready(); after.Likely < before.Likely || after.Late < before.Late {
			t.Fatalf("more rise: %v, then %v", before, after)
		}
		// Warmer by the same amount throughout, still below every optimum.
		warm := rapid.Float64Range(0, 0.1).Draw(t, "warmer")
		var points []ferment.Knot
		for _, k := range b.History.Knots() {
			points = append(points, ferment.Knot{At: k.At, Temperature: k.Temperature.Add(quantity.DeltaCelsius(warm))})
		}
		h, err := ferment.Readings{Points: points}.History()
		if err != nil {
			t.Fatal(err)
		}
		warmer := b
		warmer.History = h
		if after := estimate(t, warmer).Ready(); after.Likely > before.Likely+time.Second {
			t.Fatalf("warmer by %v: %v, then %v", warm, before, after)
		}
	})
}

// Below its optimum every curve of yeast rises; the rate is never negative, and nothing at all where it should not be.
func TestCurvesAreSane(t *testing.T) {
	for _, c := range ferment.Curves() {
		top, best := c.Optimum()
		last := 0.0
		for x := -25.0; x <= 60; x += 0.1 {
			mu := c.Rate(x)
			if !(mu >= 0) || math.IsInf(mu, 0) {
				t.Errorf("%v at %v: %v", c, x, mu)
			}
			if x < top.Celsius() && mu < last-1e-15 {
				t.Errorf("%v falls below its optimum at %v", c, x)
			}
			last = mu
		}
		if about := c.About(); about.Key == "" || about.Name == "" || about.Formula == "" || about.Source.IsZero() ||
			about.Note == "" || !(about.Low < about.High) {
			t.Errorf("%v: %+v", c, about)
		}
		if best <= 0 || math.IsNaN(c.Rate(math.NaN())) == false && c.Rate(math.NaN()) != 0 {
			t.Errorf("%v: best %v, NaN gives %v", c, best, c.Rate(math.NaN()))
		}
	}
}

// own hides a curve's closed form, so that the dose is found by adaptive quadrature.
func own(c ferment.Curve) ferment.Curve {
	hidden, err := ferment.NewCurve(ferment.About{Name: "own", Low: -20, High: 60}, c.Rate)
	if err != nil {
		panic(err)
	}
	return hidden
}

// The closed forms agree with adaptive quadrature of the rate over time to 1e-9.
func TestDoseIsTheIntegral(t *testing.T) {
	curves := ferment.Curves()
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(curves).Draw(t, "curve")
		a := rapid.Float64Range(-5, 45).Draw(t, "from")
		b := rapid.Float64Range(-5, 45).Draw(t, "to")
		h, err := ferment.Readings{Points: []ferment.Knot{{At: 0, Temperature: quantity.Celsius(a)},
			{At: quantity.Elapsed(3 * time.Hour), Temperature: quantity.Celsius(b)}}}.History()
		if err != nil {
			t.Fatal(err)
		}
		a, b = h.At(0).Celsius(), h.At(3*time.Hour).Celsius()
		got, err := c.Dose(h, 0, 3*time.Hour)
		if err != nil {
			t.Fatal(err)
		}
		// Split where any curve of the package has a corner.
		want := 0.0
		corners := []float64{0}
		for _, x := range []float64{2.8, 4.840670833219376, 8, 14, 27.114754, 30, 36, 38.885246, 41, 45.4, 60} {
			if s := (x - a) / (b - a); s > 0 && s < 1 {
				corners = append(corners, s)
			}
		}
		corners = append(corners, 1)
		for i := range corners {
			for j := range i {
				if corners[j] > corners[i] {
					corners[i], corners[j] = corners[j], corners[i]
				}
			}
		}
		for i := 1; i < len(corners); i++ {
			v, err := numeric.Integrate(func(s float64) float64 { return 3 * c.Rate(a+(b-a)*s) }, corners[i-1],
				corners[i], 1e-13)
			if err != nil && v.Bound > 1e-11 {
				t.Fatal(err)
			}
			want += v.Value
		}
		if !(math.Abs(got-want) <= 1e-9*want+1e-12) {
			t.Fatalf("%v from %v to %v: %v, want %v", c, a, b, got, want)
		}
		// a corner the caller's curve does not announce
		if free, err := own(c).Dose(h, 0, 3*time.Hour); err != nil || !(math.Abs(free-want) <= 1e-7*want+1e-7) {
			t.Fatalf("as a curve of the caller's: %v, want %v (%v)", free, want, err)
		}
	})
}

// Knots made by joining and shifting stand at exact temperatures, 1/9000 °C apart, and whole milliseconds, so that
// histories come back equal from their text; that moves a dose by up to 2e-5 of itself.
func TestDosesAddAndShift(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCurve().Draw(t, "curve")
		h, g := anyHistory(t), anyHistory(t)
		long := time.Duration(rapid.IntRange(1, 600).Draw(t, "minutes")) * time.Minute
		more := time.Duration(rapid.IntRange(1, 600).Draw(t, "more minutes")) * time.Minute
		joined, err := ferment.Join(ferment.Stretch{History: h, For: quantity.Elapsed(long)},
			ferment.Stretch{History: g})
		if err != nil {
			t.Fatal(err)
		}
		dose := func(h ferment.History, from, to time.Duration) float64 {
			m, err := c.Dose(h, from, to)
			if err != nil {
				t.Fatal(err)
			}
			return m
		}
		sum := dose(h, 0, long) + dose(g, 0, more)
		if got := dose(joined, 0, long+more); !(math.Abs(got-sum) <= 2e-5*(1+sum)) {
			t.Fatalf("joined %v, apart %v", got, sum)
		}
		if got := dose(joined, 0, long) + dose(joined, long, long+more); !(math.Abs(got-sum) <= 2e-5*(1+sum)) {
			t.Fatalf("in two %v, apart %v", got, sum)
		}
		shifted, err := h.Shift(long)
		if err != nil {
			t.Fatal(err)
		}
		if a, b := dose(shifted, 0, more), dose(h, long, long+more); !(math.Abs(a-b) <= 2e-5*(1+a)) {
			t.Fatalf("shifted %v, in place %v", a, b)
		}
		if a, b := shifted.At(more), h.At(long+more); !(math.Abs(a.Celsius()-b.Celsius()) <= 1e-3) {
			t.Fatalf("shifted %v, in place %v", a, b)
		}
	})
}

// A reading that equals the prediction leaves the likely time and narrows the range.
func TestUpdateWithThePredictionOnlyNarrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := estimate(t, anyBulk(t))
		r := e.Ready()
		at := time.Duration(rapid.Float64Range(0.3, 0.95).Draw(t, "when") * float64(r.Likely)).Round(time.Second)
		band, err := e.RiseAt(at)
		if err != nil {
			t.Fatal(err)
		}
		p, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(at), Rise: band.Likely})
		if err != nil {
			t.Fatal(err)
		}
		now := p.Now.Ready()
		if d := now.Likely - r.Likely; d > time.Minute || d < -time.Minute {
			t.Fatalf("likely moved from %v to %v", r.Likely, now.Likely)
		}
		if now.Early < r.Early-time.Minute || now.Late > r.Late+time.Minute {
			t.Fatalf("from %v to %v", r, now)
		}
		for _, f := range workcheck.Faults(p.Now.Working()) {
			t.Error(f)
		}
		if band.Likely.Points() < 3 {
			return
		}
		// A dough further on than expected is ready sooner, one behind later.
		ahead, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(at), Rise: pct(band.Likely.Points()*1.3 + 5)})
		if err != nil {
			t.Fatal(err)
		}
		behind, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(at), Rise: pct(band.Likely.Points() * 0.7)})
		if err != nil {
			t.Fatal(err)
		}
		if !(ahead.Now.Ready().Likely < r.Likely && r.Likely < behind.Now.Ready().Likely) {
			t.Fatalf("ahead %v, as expected %v, behind %v", ahead.Now.Ready().Likely, r.Likely,
				behind.Now.Ready().Likely)
		}
	})
}

func TestInverseOfInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBulk(t)
		e := estimate(t, b)
		want := e.Ready().Likely
		if want < 10*time.Minute {
			return
		}
		a, err := b.AmountFor(want)
		if err != nil || !a.Feasible {
			t.Fatalf("%v, %v", a, err)
		}
		if got := a.Inoculation.Points() / b.Inoculation.Points(); !(math.Abs(got-1) <= 1e-3) {
			t.Fatalf("%v of the inoculation comes back", got)
		}
		if got := a.Estimate.Ready().Likely; got-want > 2*time.Second || want-got > 2*time.Second {
			t.Fatalf("ready at %v, wanted %v", got, want)
		}
		held, err := b.HeldFor(want)
		if err != nil {
			t.Fatal(err)
		}
		if held.Feasible {
			if got := held.Estimate.Ready().Likely; !(math.Abs(float64(got-want)) <= 2e-3*float64(want)) {
				t.Fatalf("held at %v: %v, wanted %v", held.Temperature, got, want)
			}
		}
	})
}

// Shaping at the rise it says, and following what comes after, ends at the total.
func TestShapeLandsOnTheTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBulk(t)
		// In a dough that drifts the rise only grows; one that jumps by degrees in a minute may pass a rise twice.
		drift := ferment.Relaxing{
			Start: quantity.Celsius(rapid.Float64Range(18, 27).Draw(t, "start")),
			Room:  ferment.Room{Night: quantity.Celsius(rapid.Float64Range(17, 27).Draw(t, "room"))},
		}
		var err error
		if b.History, err = drift.History(); err != nil {
			t.Fatal(err)
		}
		total := b.Rise
		then := ferment.Room{Night: quantity.Celsius(rapid.Float64Range(3, 20).Draw(t, "then"))}
		bench := time.Duration(rapid.IntRange(0, 60).Draw(t, "bench")) * time.Minute
		length := time.Duration(rapid.IntRange(1, 600).Draw(t, "minutes")) * time.Minute
		loaf := ferment.Piece{
			Mass:     quantity.Grams(900),
			Form:     ferment.Round,
			Into:     then,
			Exposure: ferment.Refrigerator,
			For:      quantity.Elapsed(length),
		}
		p := ferment.Proof{Bulk: b, Bench: quantity.Elapsed(bench), Stages: []ferment.Piece{loaf}, Total: total}
		target, err := p.RiseBeforeShaping()
		if err != nil {
			t.Fatal(err)
		}
		if !target.Feasible {
			return
		}
		at := target.Shape.Ready().Likely
		loaf.Start, loaf.For = b.History.At(at+bench), quantity.Elapsed(24*time.Hour)
		cold, err := loaf.History()
		if err != nil {
			t.Fatal(err)
		}
		whole, err := ferment.Join(ferment.Stretch{History: b.History, For: quantity.Elapsed(at + bench)},
			ferment.Stretch{History: cold})
		if err != nil {
			t.Fatal(err)
		}
		b.History = whole
		band, err := estimate(t, b).RiseAt(at + bench + length)
		if err != nil {
			t.Fatal(err)
		}
		if got := band.Likely.Points() / total.Points(); !(math.Abs(got-1) <= 0.01) {
			t.Fatalf("total %v, wanted %v", band.Likely, total)
		}
		for _, f := range workcheck.Faults(target.Working()) {
			t.Error(f)
		}
		if target.After.Low.Compare(target.After.Likely) > 0 || target.After.High.Compare(target.After.Likely) < 0 {
			t.Fatalf("%v", target.After)
		}
	})
}
