package mixing_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

// planned is a batch of the hall kitchen: flour, water and levain at the given temperatures.
func planned(flour, water, levain, bowl float64, slow, fast time.Duration) mixing.Logged {
	return mixing.Logged{
		Ingredients: []mixing.Portion{
			{Name: "flour", Mass: quantity.Grams(1450), Temperature: quantity.Celsius(flour), Substance: mixing.Flour},
			{Name: "water", Mass: quantity.Grams(1000), Temperature: quantity.Celsius(water), Substance: mixing.Water},
			{Name: "levain", Mass: quantity.Grams(450), Temperature: quantity.Celsius(levain), Substance: mixing.Levain,
				Hydration: quantity.MustPercent("100 %")},
		},
		Bowl: quantity.Celsius(bowl), Speeds: []quantity.Elapsed{quantity.Elapsed(slow), quantity.Elapsed(fast)},
	}
}

// simulate gives a batch the dough temperature of a mixer with known coefficients.
func simulate(b mixing.Logged, slow, fast, bowl, noise float64) mixing.Logged {
	capacity, heat := 0.0, 0.0
	for _, i := range b.Ingredients {
		c, _ := i.Substance.Heat(i.Hydration)
		capacity += i.Mass.Kilograms() * float64(c)
		heat += i.Mass.Kilograms() * float64(c) * i.Temperature.Celsius()
	}
	t := (heat/capacity + slow*b.Speeds[0].Duration().Minutes() + fast*b.Speeds[1].Duration().Minutes() +
		bowl*b.Bowl.Celsius()) / (1 + bowl)
	b.Dough = quantity.Celsius(t + noise)
	return b
}

func batches(r *rand.Rand, n int, slow, fast, bowl, sigma float64) []mixing.Logged {
	var out []mixing.Logged
	for range n {
		b := planned(15+8*r.Float64(), 10+20*r.Float64(), 18+8*r.Float64(), 12+14*r.Float64(),
			time.Duration(2+4*r.Float64())*time.Minute, time.Duration(2+8*r.Float64())*time.Minute)
		out = append(out, simulate(b, slow, fast, bowl, sigma*r.NormFloat64()))
	}
	return out
}

func TestLearnStartsWithThePriorAndFindsTheMixer(t *testing.T) {
	none, err := mixing.Log{Kind: mixing.Planetary}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	prior, _ := mixing.Planetary.Prior()
	if d := none.PerMinute[0].Value.Sub(prior.RisePerMinute).Celsius(); !(math.Abs(d) <= 1e-3) {
		t.Errorf("no batch moved the prior by %v", d)
	}
	workcheck.Verify(t, none.Working())
	r := rand.New(rand.NewPCG(7, 11))
	last := math.Inf(1)
	for _, n := range []int{1, 5, 25, 100, 400} {
		l, err := mixing.Log{Kind: mixing.Planetary, Batches: batches(r, n, 0.25, 0.65, 0.12, 0.3)}.Learn()
		if err != nil {
			t.Fatal(err)
		}
		workcheck.Verify(t, l.Working())
		if l.Batches != n || len(l.PerMinute) != 2 {
			t.Fatalf("%d batches, %d speeds", l.Batches, len(l.PerMinute))
		}
		se := l.PerMinute[1].StandardError.Celsius()
		if se >= last {
			t.Errorf("with %d batches the standard error is %v, was %v", n, se, last)
		}
		last = se
		for i, want := range []float64{0.25, 0.65} {
			got, se := l.PerMinute[i].Value.Celsius(), l.PerMinute[i].StandardError.Celsius()
			if !(math.Abs(got-want) <= 4*se) {
				t.Errorf("%d batches: speed %d warms by %v ± %v, the mixer by %v", n, i+1, got, se, want)
			}
		}
		if n == 400 &&
			(!(math.Abs(l.Spread.Celsius()-0.3) <= 0.05) || !(math.Abs(l.Bowl.Value.Fraction()-0.12) <= 0.03)) {
			t.Errorf("spread %v, bowl %v; the mixer has 0.3 and 12 %%", l.Spread, l.Bowl)
		}
	}
}

// A range that claims 80 % must hold about 80 % of new batches of mixers drawn from the prior.
func TestPredictionsHoldWhatTheyClaim(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	prior, _ := mixing.Planetary.Prior()
	inside, total := 0, 0
	for range 800 {
		draw := func() float64 { return prior.RisePerMinute.Celsius() + prior.RiseSpread.Celsius()*r.NormFloat64() }
		slow, fast, bowl := draw(), draw(), 0.10+0.10*r.NormFloat64()
		l, err := mixing.Log{Kind: mixing.Planetary, Batches: batches(r, 1+r.IntN(5), slow, fast, bowl, 0.7)}.Learn()
		if err != nil {
			t.Fatal(err)
		}
		b := batches(r, 1, slow, fast, bowl, 0.7)[0]
		p, err := l.Predict(b, quantity.MustPercent("80 %"))
		if err != nil {
			t.Fatal(err)
		}
		total++
		if b.Dough.Compare(p.Dough.Low) >= 0 && b.Dough.Compare(p.Dough.High) <= 0 {
			inside++
		}
	}
	// The prior's four residuals make the range wide at first: 80 % with a standard error of 1.4 %.
	if share := float64(inside) / float64(total); share < 0.77 || share > 0.90 {
		t.Errorf("%.3f of the batches lie in the 80 %% range", share)
	}
}

// A mixer whose doughs are warmed by the wetting of their flour, 15.1 kJ a kilogram, however much of it there is:
// what is learned with that heat foretells doughs with little flour and with much.
func TestHeatOfWettingGoesWithTheFlour(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	batch := func(flour float64) mixing.Logged {
		b := planned(15+8*r.Float64(), 10+20*r.Float64(), 18+8*r.Float64(), 12+14*r.Float64(),
			time.Duration(2+4*r.Float64())*time.Minute, time.Duration(2+8*r.Float64())*time.Minute)
		b.Ingredients[0].Mass = quantity.Kilograms(flour)
		b = simulate(b, 0.3, 0.6, 0.1, 0)
		capacity := 0.0
		for _, i := range b.Ingredients {
			c, _ := i.Substance.Heat(i.Hydration)
			capacity += i.Mass.Kilograms() * float64(c)
		}
		b.Dough = b.Dough.Add(quantity.DeltaCelsius(15.1 * flour / capacity / 1.1))
		return b
	}
	in := mixing.Log{Kind: mixing.Planetary, Hydration: 15.1}
	for range 60 {
		in.Batches = append(in.Batches, batch(0.8+1.4*r.Float64()))
	}
	l, err := in.Learn()
	if err != nil {
		t.Fatal(err)
	}
	for _, flour := range []float64{0.8, 1.4, 2.2} {
		b := batch(flour)
		p, err := l.Predict(b, quantity.MustPercent("80 %"))
		if err != nil || !(math.Abs(p.Dough.Likely.Sub(b.Dough).Celsius()) <= 0.1) {
			t.Errorf("%v kg of flour: %v, mixed at %v (%v)", flour, p.Dough.Likely, b.Dough, err)
		}
	}
}

func TestPredictWaterAndMinutes(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	l, err := mixing.Log{Kind: mixing.Planetary, Batches: batches(r, 12, 0.3, 0.6, 0.1, 0.4)}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	b := planned(18, 20, 22, 20, 3*time.Minute, 5*time.Minute)
	p, err := l.Predict(b, quantity.MustPercent("80 %"))
	if err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, p.Working())
	wide, _ := l.Predict(b, quantity.MustPercent("99 %"))
	if wide.Dough.High.Compare(p.Dough.High) <= 0 || wide.Dough.Likely != p.Dough.Likely {
		t.Errorf("99 %% is %v, 80 %% is %v", wide.Dough, p.Dough)
	}
	f, err := mixing.FrictionOf(p.Rise, 4)
	if err != nil || f.Factor != p.Rise.Times(4) {
		t.Errorf("friction %v, %v", f, err)
	}
	light := b
	light.Ingredients = b.Ingredients[:2]
	light.Ingredients[0].Mass = quantity.Grams(500)
	if _, err := l.Predict(light, quantity.MustPercent("80 %")); !errors.Is(err, quantity.ErrModelRange) {
		t.Errorf("half the dough: %v", err)
	}
	light.Extrapolate = true
	if q, err := l.Predict(light, quantity.MustPercent("80 %")); err != nil || !q.Extrapolated {
		t.Errorf("half the dough, on demand: %v, %v", q, err)
	}
	b = planned(18, 20, 22, 20, 3*time.Minute, 5*time.Minute)
	// The water for a target, put in, predicts the target.
	w, err := mixing.Planned{
		Target: quantity.Celsius(25), Ingredients: []mixing.Portion{b.Ingredients[0], b.Ingredients[2]},
		Water: b.Ingredients[1].Mass,
		Room:  b.Bowl, Learned: l, Speeds: b.Speeds,
	}.Pour()
	if err != nil {
		t.Fatal(err)
	}
	b.Ingredients[1].Temperature = w.Temperature
	if p, err := l.Predict(b, quantity.MustPercent("80 %")); err != nil ||
		!(math.Abs(p.Dough.Likely.Celsius()-25) <= 3e-4) || p.Dough.Low.Sub(w.Dough.Low).Celsius() > 0.01 {
		t.Errorf("water of %v predicts %v, %v; the plan says %v", w.Temperature, p.Dough, err, w.Dough)
	}
	workcheck.Verify(t, w.Working())

	left, err := l.MinutesLeft(mixing.Running{Now: quantity.Celsius(22), Limit: quantity.Celsius(25), Speed: 2,
		Probability: quantity.MustPercent("80 %")})
	if err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, left.Working())
	if !(left.Range.Early < left.Range.Likely && left.Range.Likely < left.Range.Late) || left.Open {
		t.Errorf("minutes left %+v", left.Range)
	}
	// One kelvin of rise after the likely time, by the model itself.
	rate := l.PerMinute[1].Value.Celsius() / (1 + l.Bowl.Value.Fraction())
	if d := math.Abs(left.Range.Likely.Minutes()*rate - 3); !(d <= 0.02) {
		t.Errorf("after %v the dough has warmed by %v", left.Range.Likely, left.Range.Likely.Minutes()*rate)
	}
	at, err := l.MinutesLeft(mixing.Running{Now: quantity.Celsius(26), Limit: quantity.Celsius(25), Speed: 1,
		Probability: quantity.MustPercent("80 %")})
	if err != nil || !at.Reached || at.Range.Late != 0 || at.String() != "the limit is reached: stop" {
		t.Errorf("above the limit: %+v, %v", at, err)
	}
	workcheck.Verify(t, at.Working())
	// Hands warm so little and so unsurely that the late end stays open.
	hand, err := mixing.Log{Kind: mixing.Hand}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	open, err := hand.MinutesLeft(mixing.Running{Now: quantity.Celsius(22), Limit: quantity.Celsius(25), Speed: 1,
		Probability: quantity.MustPercent("80 %")})
	if err != nil || !open.Open || open.Range.Late != 4*time.Hour ||
		!strings.Contains(open.String(), "or much longer (80 %)") {
		t.Errorf("by hand: %+v, %v", open, err)
	}
	workcheck.Verify(t, open.Working())
}

// The standard errors mean what they say: of mixers drawn from the prior, nearly all coefficients lie
// within the 95 % range.
func TestStandardErrorsAreHonest(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	prior, _ := mixing.Planetary.Prior()
	const n = 1000
	inside := [3]int{}
	for range n {
		draw := func() float64 { return prior.RisePerMinute.Celsius() + prior.RiseSpread.Celsius()*r.NormFloat64() }
		truth := [3]float64{draw(), draw(), 0.10 + 0.10*r.NormFloat64()}
		l, err := mixing.Log{Kind: mixing.Planetary, Batches: batches(r, 12, truth[0], truth[1], truth[2], 0.6)}.Learn()
		if err != nil {
			t.Fatal(err)
		}
		for i, got := range [3][2]float64{
			{l.PerMinute[0].Value.Celsius(), l.PerMinute[0].StandardError.Celsius()},
			{l.PerMinute[1].Value.Celsius(), l.PerMinute[1].StandardError.Celsius()},
			{l.Bowl.Value.Fraction(), l.Bowl.StandardError.Fraction()},
		} {
			if math.Abs(got[0]-truth[i]) < 2.12*got[1] { // Student's t with 16 degrees of freedom
				inside[i]++
			}
		}
	}
	for i, k := range inside {
		// 95 %, with a standard error of 0.7 % for the sampling; the thermometer error that enters the bowl's
		// regressor too, and the prior of the spread (0.7 against 0.6), shift it by a percent or two.
		if share := float64(k) / n; share < 0.92 || share > 0.985 {
			t.Errorf("coefficient %d: %.3f lie within the 95 %% range", i, share)
		}
	}
}
