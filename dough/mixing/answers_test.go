package mixing_test

import (
	"encoding"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"github.com/google/go-cmp/cmp"
)

func found[T any](answer T, err error) T {
	if err != nil {
		panic(err)
	}
	return answer
}

func celsiuses(values ...float64) (out []quantity.Temperature) {
	for _, v := range values {
		out = append(out, quantity.Celsius(v))
	}
	return out
}

// Ice that there is no need of, and ice of which all is too little: 1000 g from 20 °C act like 0 − 79.7 °C at most.
func TestIceAtItsEnds(t *testing.T) {
	in := mixing.IceWater{Water: quantity.Grams(1000), Tap: quantity.Celsius(20), Need: quantity.Celsius(20)}
	for need, want := range map[float64]string{
		20: "no ice: the water is not warmer than needed",
		// 1000 · 39.7 ÷ (20 + 79.694)
		-19.7: "replace 398 g of the water with crushed ice and pour 602 g of tap water",
		-79.8: "even all the water as ice (1000 g) is not cold enough",
	} {
		in.Need = quantity.Celsius(need)
		r := found(in.Replace())
		if r.String() != want || r.Ice.Add(r.Liquid) != r.Total || r.Total != in.Water || r.Feasible != (need > -79.7) {
			t.Errorf("%v: %q, %v and %v", need, r, r.Ice, r.Liquid)
		}
	}
	in.Need = quantity.Celsius(25)
	trial.Holds(t, found(in.Replace()).Working().Text(100), "the water comes at 20.0 °C and is needed at 25.0 °C")
	in.Need = quantity.Celsius(-79.8)
	trial.Holds(t, found(in.Replace()).Working().Text(100), "more than all the water: ice alone does not reach it")
}

// Seven degrees warmer by the figures of Hlynka (1962): 0.39 min and 0.52 points a degree, of 5 min.
func TestWarmerDoughIsSofter(t *testing.T) {
	r := found(mixing.DoughChange{From: quantity.Celsius(20), To: quantity.Celsius(27)}.Effect())
	trial.Holds(t, page(t, r, working.Metric),
		"0.45 times the kneading time; the dough is as soft as with 3.6 points more water",
		"water at the same consistency, points of the flour −3.6")
}

// The water of a table against the flour, by 63 − flour − room: 25 °C and three factors, of which mixing takes 3 · 4.
func TestPictureOfAWaterTable(t *testing.T) {
	in := mixing.WaterTable{Target: quantity.Celsius(25), Warming: quantity.DeltaCelsius(4), Flour: celsiuses(18, 20, 22),
		Room: celsiuses(18, 21, 24)}
	sections := found(in.Water()).Report().Sections
	chart, ok := sections[len(sections)-1].Blocks[0].(report.Chart)
	if !ok || len(chart.Beside) != 2 {
		t.Fatalf("%+v", sections[len(sections)-1])
	}
	for _, c := range []struct {
		line report.Series
		room string
		want []float64
	}{
		{chart.Main, "in a room of 21.0 °C", []float64{24, 22, 20}},
		{chart.Beside[0], "in a room of 18.0 °C", []float64{27, 25, 23}},
		{chart.Beside[1], "in a room of 24.0 °C", []float64{21, 19, 17}},
	} {
		if c.line.Name.String() != c.room || !cmp.Equal(c.line.Values, c.want) {
			t.Errorf("%v: %v, want %v", c.line.Name, c.line.Values, c.want)
		}
	}
	in.Flour = celsiuses(18, 22, 20)
	if n := len(found(in.Water()).Report().Sections); n != len(sections)-1 {
		t.Errorf("flours in no order make a picture: %d sections", n)
	}
	in.Flour = celsiuses(18, 20)
	if n := len(found(in.Water()).Report().Sections); n != len(sections)-1 {
		t.Errorf("two points make a picture: %d sections", n)
	}
}

// Without a friction factor the mixer's guide value is taken, counted for the factors that there are, and said.
func TestWaterByTheGuideValue(t *testing.T) {
	in := hall()
	in.Friction, in.Mixer = quantity.TemperatureDelta{}, mixing.Spiral
	got := found(in.Water())
	prior := found(mixing.Spiral.Prior())
	in.Mixer, in.Friction = 0, found(prior.Friction.For(in.Count())).Factor
	if want := found(in.Water()); got.Temperature != want.Temperature || got.Friction.Factor != want.Friction.Factor {
		t.Errorf("%v by %v, want %v by %v", got, got.Friction, want, want.Friction)
	}
	if len(got.Notes) != 1 || got.Notes[0].ID() != "mixing.note_guide_friction" {
		t.Errorf("%v", got.Notes)
	}
	trial.Holds(t, page(t, prior, working.Metric), prior.String(), prior.Figures[0].What.String(), prior.Evidence.String())
}

// What contradicts itself, and what is more than anybody weighs.
func TestBalancesThatAreRefused(t *testing.T) {
	for want, change := range map[string]func(*mixing.Balance){
		"ingredients out of range": func(b *mixing.Balance) { b.Ingredients = make([]mixing.Portion, 201) },
		"rise inconsistent":        func(b *mixing.Balance) { b.Rise = quantity.DeltaCelsius(1) },
		"warmest inconsistent": func(b *mixing.Balance) {
			b.Coldest, b.Warmest = quantity.Celsius(20), quantity.Celsius(19.9)
		},
	} {
		b := hallBalance()
		change(&b)
		if _, err := b.Final(); trial.Refused(err) != want {
			t.Errorf("%q, want %q", trial.Refused(err), want)
		}
	}
	b := hallBalance()
	b.Coldest = b.Warmest
	b.Rise, b.Mixing = quantity.DeltaCelsius(3), 0
	if _, err := b.Final(); err != nil {
		t.Error(err)
	}
}

// Every word of the room's enumerations comes back.
func TestWordsTravel(t *testing.T) {
	travel[mixing.FactorKind](t)
	travel[mixing.WarmingBasis](t)
	travel[mixing.LimitBasis](t)
	travel[mixing.KneadingStep](t)
	travel[mixing.WindowpaneGoal](t)
	travel[mixing.ClearingStep](t)
	travel[mixing.MixerKind](t)
}

func travel[E interface {
	~int | ~uint8
	encoding.TextMarshaler
}](t *testing.T) {
	t.Helper()
	for _, v := range quantity.Values[E]() {
		trial.Travels(t, v)
	}
}

// Mixing that warms too much is shorter in proportion: 23 of 24 degrees are 9m35s of 10 min.
func TestShorterMixingInMinutes(t *testing.T) {
	shorter := func(remedies []mixing.WaterRemedy) mixing.WaterRemedy {
		t.Helper()
		for _, m := range remedies {
			if m.Way == mixing.ShorterMixing {
				return m
			}
		}
		t.Fatalf("nobody mixes less: %v", remedies)
		return mixing.WaterRemedy{}
	}
	ten := quantity.Elapsed(10 * time.Minute)
	f := mixing.Factors{
		Target: quantity.Celsius(25), Friction: quantity.DeltaCelsius(24), Mixing: ten,
		// 25 + (25 − 30) + (25 − 21) − 24 = 0, where the coldest that can be poured has 1 °C
		Others: []mixing.Factor{{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(30)},
			{Kind: mixing.RoomFactor, Temperature: quantity.Celsius(21)}},
	}
	m := shorter(found(f.Water()).Remedies)
	if m.Friction != quantity.DeltaCelsius(23) || m.Mixing.Duration() != 9*time.Minute+35*time.Second {
		t.Errorf("%v in %v: %v", m.Friction, m.Mixing, m)
	}
	trial.Holds(t, m.Working().Text(100), "t_new = 10 × (23.0 ÷ 24) t_new ≈ 9.6 min")
	plan := hallPlan()
	plan.Room, plan.Ingredients[0].Temperature = quantity.Celsius(30), quantity.Celsius(30)
	plan.Warming, plan.Mixing = quantity.DeltaCelsius(12), ten
	m = shorter(found(plan.Pour()).Remedies)
	seconds := m.Rise.Celsius() / 12 * 600
	if !m.Enough || m.Rise.Celsius() >= 12 || !(math.Abs(m.Mixing.Duration().Seconds()-seconds) <= 0.5) ||
		!strings.HasSuffix(m.String(), "about "+m.Mixing.String()+" of mixing") {
		t.Errorf("%v in %v: %v", m.Rise, m.Mixing, m)
	}
	trial.Holds(t, m.Working().Text(100), "mixing time in proportion t_new = t × (d_new ÷ d)")
}

// The bowl's most is one batch, and a microgram more is two.
func TestFullestBowlIsOneBatch(t *testing.T) {
	m := hallMix()
	m.Mixer, m.Bowl = mixing.Spiral, quantity.Liters(40)
	most := found(m.Fit()).MostLow
	for more, batches := range []int{1, 2} {
		m.Dough = most.Add(quantity.Micrograms(int64(more)))
		if r := found(m.Fit()); r.Batches != batches || r.Each.Times(int64(batches)).Sub(m.Dough).Compare(
			quantity.Micrograms(2)) > 0 {
			t.Errorf("%v where %v fit: %d batches of %v", m.Dough, most, r.Batches, r.Each)
		}
	}
}
