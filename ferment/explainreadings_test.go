package ferment

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/workcheck"
	"pgregory.net/rapid"
)

// Whatever was read, how it was taken in can be redone by hand, and what is derived is what the estimate uses.
func TestReadingsAreDerived(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		percent := func(label string, low, high float64) quantity.Percent {
			return quantity.NewPercent(float64(int(10*rapid.Float64Range(low, high).Draw(t, label))) / 10)
		}
		b := Bulk{Law: GasBalance(), Rise: percent("rise", 40, 120),
			History:   Constant(quantity.Celsius(float64(rapid.IntRange(18, 28).Draw(t, "at")))),
			Hydration: quantity.NewPercent(70), Salt: quantity.NewPercent(2)}
		switch rapid.IntRange(0, 2).Draw(t, "leavening") {
		case 0:
			b.Inoculation = percent("inoculation", 5, 25)
		case 1:
			b.Yeast = Yeast{Kind: InstantYeast, Amount: percent("yeast", 0.2, 1)}
		default:
			b.Inoculation, b.Yeast = percent("inoculation", 5, 25), Yeast{Kind: InstantYeast, Amount: percent("yeast", 0.1, 0.3)}
		}
		e, err := b.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		at := time.Hour
		for range rapid.IntRange(1, 3).Draw(t, "readings") {
			at += time.Duration(rapid.IntRange(20, 90).Draw(t, "later")) * time.Minute
			p, err := e.Update(RiseReading{At: quantity.Elapsed(at), Rise: percent("read", -4, 90),
				Error: percent("error", 1, 12)})
			if err != nil {
				t.Fatal(err)
			}
			e = p.Now
		}
		w := e.Working()
		for _, fault := range workcheck.Faults(w) {
			t.Error(fault)
		}
		last := map[string]string{}
		for _, l := range w.Lines(working.Reader{}) {
			last[l.Symbol] = l.Value
		}
		n := "_" + string(rune('0'+len(e.Readings())))
		for k, u := range unknowns() {
			want := e.d.belief.Mean[k]
			got, ok := last[u.symbol+n]
			if !ok && (k == gasbalance.Pace || k == gasbalance.Amplitude) {
				t.Errorf("%s is not derived", u.symbol)
			}
			// The line is worked out from numbers of seven decimals, and says itself that it is within 1e-5.
			value, err := strconv.ParseFloat(strings.ReplaceAll(got, "−", "-"), 64)
			text := working.Amount(want, working.Number, 6).Text(working.Reader{})
			if ok && (err != nil && got != text || err == nil && !(math.Abs(value-want) <= 1e-5)) {
				t.Errorf("%s%s = %s, the estimate has %.6f", u.symbol, n, got, want)
			}
		}
	})
}

// What was read counts by its precision against what was expected.
func TestAReadingCountsByItsPrecision(t *testing.T) {
	b := Bulk{Law: GasBalance(), Rise: quantity.NewPercent(75), History: Constant(quantity.Celsius(25)),
		Hydration: quantity.NewPercent(70),
		Salt:      quantity.NewPercent(2), Inoculation: quantity.NewPercent(20)}
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	var weights []float64
	for _, off := range []float64{1, 5, 20} {
		p, err := e.Update(RiseReading{At: quantity.Elapsed(2 * time.Hour), Rise: quantity.NewPercent(40),
			Error: quantity.NewPercent(off)})
		if err != nil {
			t.Fatal(err)
		}
		before, err := p.Now.bulk.prepare(true)
		if err != nil {
			t.Fatal(err)
		}
		_, taken := before.take(p.Now.readings)
		v, r := taken[0].Variance(), taken[0].Noise*taken[0].Noise
		weights = append(weights, v/(v+r))
		if taken[0].Before.Cov[gasbalance.Pace][gasbalance.Pace] <= taken[0].After.Cov[gasbalance.Pace][gasbalance.Pace] {
			t.Error("a reading does not narrow the pace")
		}
		if !(taken[0].Rise > taken[0].Expected && taken[0].Rise < 0.4) {
			t.Errorf("%v is not between %v and 0.4", taken[0].Rise, taken[0].Expected)
		}
	}
	if !(weights[0] > weights[1] && weights[1] > weights[2] && weights[2] > 0) {
		t.Errorf("weights %v", weights)
	}
}
