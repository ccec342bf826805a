package ferment_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// just is a time a little longer than one at which a dough is ready, or shorter.
func just(factor float64, at time.Duration) time.Duration { return time.Duration(factor * float64(at)) }

// The least and the most that there is an answer for are answers still, and a time beyond theirs says on which side it
// is: of levain, of yeast, of yeast beside a levain, of levain beside preferments that leave little flour to it.
func TestAmountsAtTheirEnds(t *testing.T) {
	biga := func(share float64) func(*ferment.Bulk) {
		return func(b *ferment.Bulk) {
			b.Preferments = []ferment.HandedOn{{Flour: pct(share), Ripened: span(1), Of: ferment.Ripening{Seed: pct(0.1),
				Hydration: pct(55), History: ferment.Constant(quantity.Celsius(5))}}, {Flour: pct(share), Of: ferment.Ripening{
				Seed: pct(0.1), Hydration: pct(55), History: ferment.Constant(quantity.Celsius(5))}}}
		}
	}
	levain := func(b *ferment.Bulk, percent float64) { b.Inoculation = pct(percent) }
	yeast := func(b *ferment.Bulk, percent float64) { b.Yeast.Amount = pct(percent) }
	slow := func(b ferment.Bulk) ferment.Bulk {
		b.Rise, b.History = pct(150), ferment.Constant(quantity.Celsius(19))
		return b
	}
	const late, soon = "it would take more than can be put in: give it more time or warmth",
		"even the least amount would be ready sooner: cool the dough"
	for name, c := range map[string]struct {
		bulk        ferment.Bulk
		set         func(*ferment.Bulk, float64)
		least, most float64
		soon        string
	}{
		"levain": {good(), levain, 0.1, 50, soon},
		"yeast":  {slow(yeasted(ferment.InstantYeast, 1)), yeast, 0.001, 10, soon},
		"yeast beside a levain": {slow(both(0.05, 1)), yeast, 0.001, 10,
			"the levain alone would be ready by then: no yeast, or a cooler dough"},
		"levain beside preferments":      {changed(biga(12)), levain, 0.1, 50, soon},
		"levain beside 60 % of them":     {changed(biga(30)), levain, 0.1, 40, soon},
		"levain beside 98 % of them":     {changed(biga(49)), levain, 0.1, 2, soon},
		"levain and nearly no flour for": {changed(biga(49.9)), levain, 0.1, 0.2, soon},
	} {
		for _, amount := range []float64{c.least, c.most} {
			b := c.bulk
			c.set(&b, amount)
			ready := estimate(t, b).Ready().Likely
			inside, outside, why := 1.001, 0.999, late
			if amount == c.least {
				inside, outside, why = 0.999, 1.001, c.soon
			}
			a, err := c.bulk.AmountFor(just(inside, ready))
			if got := a.Inoculation.Points() + a.Yeast.Amount.Points(); err != nil || !a.Feasible ||
				!(math.Abs(got/amount-1) <= 0.02) || a.Yeast.Kind != c.bulk.Yeast.Kind {
				t.Errorf("%s, a little inside the time of %v %%: %v (%v)", name, amount, a, err)
			}
			if off := a.Estimate.Ready().Likely - just(inside, ready); off.Abs() > 2*time.Second+ready/10_000 {
				t.Errorf("%s: ready %v off", name, off)
			}
			if a, err = c.bulk.AmountFor(just(outside, ready)); err != nil || a.Feasible || a.Why.String() != why ||
				!a.Inoculation.IsZero() || a.Yeast != (ferment.Yeast{}) {
				t.Errorf("%s, a little outside the time of %v %%: %v (%v)", name, amount, a, err)
			}
		}
	}
	b := changed(biga(50))
	_, err := b.AmountFor(5 * time.Hour)
	refuses(t, err, quantity.ErrInconsistent, "Preferments")
}

// The least and the most seed, and yeast, of a preferment likewise.
func TestSeedsAtTheirEnds(t *testing.T) {
	in := ferment.Ripening{Hydration: pct(100), History: ferment.Constant(quantity.Celsius(24)), Law: ferment.GasBalance()}
	peak := func(seed, yeast float64) time.Duration {
		r := in
		r.Seed = pct(seed)
		if yeast > 0 {
			r.Yeast = ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(yeast)}
		}
		ripe, err := r.Ripe()
		if err != nil {
			t.Fatal(err)
		}
		return ripe.Peak.Likely
	}
	for _, c := range []struct {
		end    float64
		inside float64
	}{{0.1, 0.999}, {90, 1.003}} {
		seed, ok, err := in.SeedFor(just(c.inside, peak(c.end, 0)))
		if err != nil || !ok || !(math.Abs(seed.Points()/c.end-1) <= 0.01) {
			t.Errorf("a little inside the time of %v %%: %v, %v, %v", c.end, seed, ok, err)
		}
		if seed, ok, err = in.SeedFor(just(2-c.inside, peak(c.end, 0))); err != nil || ok || !seed.IsZero() {
			t.Errorf("a little outside the time of %v %%: %v, %v, %v", c.end, seed, ok, err)
		}
	}
	in.Yeast.Kind = ferment.FreshYeast
	for _, c := range []struct {
		end    float64
		inside float64
	}{{0.001, 0.999}, {10, 1.003}} {
		yeast, ok, err := in.YeastFor(just(c.inside, peak(0, c.end)))
		if err != nil || !ok || !(math.Abs(yeast.Amount.Points()/c.end-1) <= 0.02) || yeast.Kind != ferment.FreshYeast {
			t.Errorf("a little inside the time of %v %%: %v, %v, %v", c.end, yeast, ok, err)
		}
		yeast, ok, err = in.YeastFor(just(2-c.inside, peak(0, c.end)))
		if err != nil || ok || !yeast.Amount.IsZero() {
			t.Errorf("a little outside the time of %v %%: %v, %v, %v", c.end, yeast, ok, err)
		}
	}
}

// How warm a dough has to be does not depend on the history that stands in its bulk, nor on one standing there at all;
// the coolest and the warmest that there is an answer for are answers still.
func TestTemperaturesAtTheirEnds(t *testing.T) {
	for name, c := range map[string]struct {
		bulk    ferment.Bulk
		warmest float64
	}{
		"levain": {good(), 30},
		"yeast":  {yeasted(ferment.InstantYeast, 1), 37},
		"both":   {both(10, 0.1), 30},
		"rival": {changed(func(b *ferment.Bulk) {
			b.Law = b.Law.With(ferment.Rivals{Levain: ferment.SquareRootCold()})
		}), 25},
		"with own heat": {changed(func(b *ferment.Bulk) { b.OwnHeat = span(6) }), 30},
	} {
		at := func(celsius float64) time.Duration {
			b := c.bulk
			b.History = ferment.Constant(quantity.Celsius(celsius))
			b.Extrapolate = b.OwnHeat > 0
			return estimate(t, b).Ready().Likely
		}
		none, elsewhere := c.bulk, c.bulk
		none.History, elsewhere.History = ferment.History{}, ferment.Constant(quantity.Celsius(-20))
		for _, end := range []float64{10, c.warmest} {
			inside, outside := 0.999, 1.001
			if end > 10 {
				inside, outside = 1.001, 0.999
			}
			for _, b := range []ferment.Bulk{c.bulk, none, elsewhere} {
				b.Extrapolate = b.OwnHeat > 0
				a, err := b.HeldFor(just(inside, at(end)))
				if err != nil || !a.Feasible || !(math.Abs(a.Temperature.Celsius()-end) <= 0.3) {
					t.Errorf("%s, a little inside the time at %v °C: %v (%v)", name, end, a, err)
				}
				if a, err = b.HeldFor(just(outside, at(end))); err != nil || a.Feasible || a.Temperature.IsValid() {
					t.Errorf("%s, a little outside the time at %v °C: %v (%v)", name, end, a, err)
				}
			}
		}
	}
}
