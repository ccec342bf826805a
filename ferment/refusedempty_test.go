package ferment_test

import (
	"math"
	"reflect"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// What is refused is not answered: with an error comes nothing that could be taken for an answer.
func TestWhatIsRefusedIsNotAnswered(t *testing.T) {
	warm := ferment.Constant(quantity.Celsius(24))
	none := func(name string, answer any, err error) {
		if err == nil || !reflect.ValueOf(answer).IsZero() {
			t.Errorf("%s: %v, %v", name, answer, err)
		}
	}
	dose, err := ferment.Curve{}.Dose(warm, 0, time.Hour)
	none("a dose without a curve", dose, err)
	dose, err = ferment.GanzleYeast().Dose(warm, time.Hour, 0)
	none("a dose backward", dose, err)
	dose, err = ferment.GanzleYeast().Dose(ferment.History{}, 0, time.Hour)
	none("a dose of no history", dose, err)
	bad := ferment.Baranyi{Start: 9, Max: 2}
	after, err := bad.After(1)
	none("growth downward", after, err)
	dose, reached, err := bad.DoseTo(3)
	none("a dose for growth downward", dose, err)
	none("whether it is reached", reached, err)
	share, err := ferment.LevainPercent{Levain: pct(-1), Hydration: pct(100)}.Prefermented()
	none("a negative levain", share, err)
	mean, err := warm.Mean(time.Hour, 0)
	none("a mean backward", mean, err)
	shifted, err := warm.Shift(-time.Hour)
	none("a history from before its start", shifted, err)
	joined, err := ferment.Join(ferment.Stretch{History: warm}, ferment.Stretch{History: warm})
	none("a stretch of no length", joined, err)
	knots, err := ferment.FromKnots(ferment.Knot{})
	none("a corner without a temperature", knots, err)
	read, err := ferment.ParseReadings("0h, 24 °C\n1h, warm")
	none("a log with a fault", read, err)
	wet := with(good(), func(b *ferment.Bulk) { b.Hydration = pct(400) })
	estimated, err := wet.Estimate()
	none("a dough of water", estimated, err)
	followed, err := wet.Follow(quantity.Celsius(24))
	none("a dough of water, followed", followed, err)
	hot, err := with(good(), func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(50)) }).Estimate()
	none("a dough too hot", hot, err)
	ready, err := ferment.DoseLaw{}.Ready(good())
	none("the older law without a curve", ready, err)
	rise, err := estimate(t, good()).RiseAt(-time.Hour)
	none("a rise before mixing", rise, err)
	flavor, err := estimate(t, good()).Flavor(0)
	none("the flavor of no time", flavor, err)
	flavor, err = estimate(t, with(good(), func(b *ferment.Bulk) {
		b.History = ferment.Constant(quantity.Celsius(-0.5))
	})).Flavor(time.Hour)
	none("the flavor of a frozen dough", flavor, err)
	own, err := ferment.NewCurve(ferment.About{Name: "own", Low: 2, High: 40}, nil)
	none("a curve without a rate", own, err)
	text, err := func() ([]byte, error) {
		c, err := ferment.NewCurve(ferment.About{Name: "own", Low: 2, High: 40}, math.Abs)
		if err != nil {
			t.Fatal(err)
		}
		return c.MarshalText()
	}()
	none("the key of a curve of one's own", text, err)
	for name, c := range map[string]struct {
		curve   ferment.Curve
		celsius float64
	}{"no curve": {ferment.Curve{}, 20}, "too cold": {ferment.SaccharomycesCardinal(), 1},
		"too warm": {ferment.GanzleYeast(), 40}} {
		if hours, ok := c.curve.DoublingTime(quantity.Celsius(c.celsius)); hours != 0 || ok {
			t.Errorf("%s: doubles in %v h", name, hours)
		}
	}
	if hours, ok := ferment.GanzleYeast().DoublingTime(quantity.Temperature{}); hours != 0 || ok {
		t.Errorf("doubles in %v h at no temperature", hours)
	}
}

// Nothing is derived of what was not answered.
func TestNothingIsDerivedWithoutAnAnswer(t *testing.T) {
	late, err := good().AmountFor(15 * time.Minute)
	if err != nil || late.Feasible {
		t.Fatalf("%v, %v", late, err)
	}
	still, err := estimate(t, with(good(), func(b *ferment.Bulk) {
		b.History = ferment.Constant(quantity.Celsius(36))
	})).Flavor(time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	for name, n := range map[string]int{"no estimate": ferment.Estimate{}.Working().Len(),
		"no amount": ferment.AmountAnswer{}.Working().Len(), "an amount for too late": late.Working().Len(),
		"an amount of nothing": ferment.AmountAnswer{Feasible: true}.Working().Len(),
		"no lesson":            ferment.Lesson{}.Working().Len(), "no shape": ferment.ShapeTarget{}.Working().Len(),
		"no preferment": ferment.Ripeness{}.Working().Len(), "no flavor": ferment.Flavor{}.Working().Len(),
		"the flavor without growth": still.Working().Len()} {
		if n != 0 {
			t.Errorf("%s: %d steps", name, n)
		}
	}
}

// The temperature that counts is between the last and the first of a dough that cools, and not below their mean, since
// what grows early makes gas to the end; it is the dough's own where it does not change.
func TestTheTemperatureThatCounts(t *testing.T) {
	for _, rise := range []float64{2, 20, 75, 200} {
		at := func(h ferment.History) ferment.Estimate {
			return estimate(t, with(good(), func(b *ferment.Bulk) { b.Rise, b.History = pct(rise), h }))
		}
		if got := at(ferment.Constant(quantity.Celsius(21))).Mean(); !(math.Abs(got.Celsius()-21) <= 1e-6) {
			t.Errorf("%v at 21 °C", got)
		}
		e := at(corners(t, 0, 28, 12, 16))
		likely := e.Ready().Likely
		mean, err := e.Bulk().History.Mean(0, likely)
		if err != nil {
			t.Fatal(err)
		}
		last := e.Bulk().History.At(likely)
		if got := e.Mean().Celsius(); !(got > last.Celsius()+0.1 && got < 27.9 && got > mean.Celsius()-1e-3) {
			t.Errorf("%v %%: %v °C counts, the mean is %v, it ends at %v", rise, got, mean, last)
		}
	}
}

// Two doughs are followed alike only when they are alike in all that is asked of them and were read alike.
func TestFollowedDoughsThatDiffer(t *testing.T) {
	follow := func(celsius float64, change func(*ferment.Bulk)) ferment.Followed {
		f, err := with(good(), change).Follow(quantity.Celsius(celsius))
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	read := func(f ferment.Followed, minutes ...time.Duration) ferment.Followed {
		for _, m := range minutes {
			var err error
			if f, err = f.Read(m*time.Minute, quantity.Celsius(24)); err != nil {
				t.Fatal(err)
			}
		}
		return f
	}
	as := func(*ferment.Bulk) {}
	all := map[string]ferment.Followed{"none": {}, "begun": follow(24, as), "warmer": follow(25, as),
		"read": read(follow(24, as), 60), "read twice": read(follow(24, as), 30, 60), "read later": read(follow(24, as), 61)}
	for name, change := range map[string]func(*ferment.Bulk){
		"salt":        func(b *ferment.Bulk) { b.Salt = pct(2.1) },
		"water":       func(b *ferment.Bulk) { b.Hydration = pct(73) },
		"sugar":       func(b *ferment.Bulk) { b.Sugar = pct(1) },
		"whole grain": func(b *ferment.Bulk) { b.WholeGrain = pct(10) },
		"rise":        func(b *ferment.Bulk) { b.Rise = pct(76) },
		"levain":      func(b *ferment.Bulk) { b.Inoculation = pct(11) },
		"cold levain": func(b *ferment.Bulk) { b.ColdLevain = true },
		"yeast":       func(b *ferment.Bulk) { b.Yeast = ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.1)} },
		"altitude":    func(b *ferment.Bulk) { b.Altitude = quantity.Meters(500) },
		"law":         func(b *ferment.Bulk) { b.Law = b.Law.With(ferment.Rivals{Gas: ferment.TradeQ10()}) },
		"culture":     func(b *ferment.Bulk) { b.Culture = learn(t, ferment.Learning{Bakes: bakeLog(t, 2)}).Culture },
		"extrapolate": func(b *ferment.Bulk) { b.Extrapolate = true },
	} {
		all["another "+name] = follow(24, change)
	}
	for a, f := range all {
		for b, g := range all {
			if f.Equal(g) != (a == b) {
				t.Errorf("%s equals %s: %v", a, b, f.Equal(g))
			}
		}
	}
}
