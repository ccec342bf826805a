package mixing_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// The usual times of every dough in every mixer, in seconds by stage: step, speed, from, to. A figure that changes here
// has to change with its source.
func TestUsualTimes(t *testing.T) {
	type key struct {
		mixer  mixing.MixerKind
		liters float64
	}
	mixers := []key{
		{mixing.Hand, 0}, {mixing.Planetary, 8}, {mixing.Planetary, 8.1}, {mixing.Spiral, 20}, {mixing.Fork, 20},
		{mixing.Processor, 2},
	}
	want := strings.Fields(`
		hand        wheat       knead.0.480-720
		hand        whole-grain knead.0.360-600
		hand        rye         mix.0.240-360
		hand        spelt       knead.0.240-360
		hand        pizza       knead.0.480-720
		hand        enriched    knead.0.480-600,knead-the-fat-in.0.480-720
		hand        mixed-rye   knead.0.300-480
		hand        gluten-free mix.0.180-300
		planetary8  wheat       mix.1.120-240,knead.2.360-480
		planetary8  whole-grain mix.1.120-180,knead.2.240-300
		planetary8  rye         mix.1.240-360
		planetary8  spelt       mix.1.180-180,knead.2.120-180
		planetary8  pizza       mix.1.120-240,knead.2.360-480
		planetary8  enriched    mix.1.120-180,knead.2.240-360,knead-the-fat-in.2.480-720
		planetary8  mixed-rye   mix.1.180-240,knead.1.120-180
		planetary8  gluten-free mix.2.180-300
		planetary8.1 wheat       mix.1.180-300,knead.2.360-600
		planetary8.1 whole-grain mix.1.240-360,knead.2.240-360
		planetary8.1 rye         mix.1.300-480
		planetary8.1 spelt       mix.1.240-240,knead.2.120-180
		planetary8.1 pizza       mix.1.180-300,knead.2.360-600
		planetary8.1 enriched    mix.1.180-240,knead.2.360-480,knead-the-fat-in.1.240-360
		planetary8.1 mixed-rye   mix.1.120-240,knead.2.120-180
		planetary8.1 gluten-free mix.1.180-300
		spiral20    wheat       mix.1.180-180,knead.2.180-300
		spiral20    whole-grain mix.1.240-360,knead.2.180-300
		spiral20    rye         mix.1.360-600
		spiral20    spelt       mix.1.240-240,knead.2.120-180
		spiral20    pizza       mix.1.180-180,knead.2.180-300
		spiral20    enriched    mix.1.240-240,knead.2.360-480,knead-the-fat-in.1.180-300
		spiral20    mixed-rye   mix.1.300-300,knead.2.120-180
		spiral20    gluten-free mix.1.300-480
		fork20      wheat       mix.1.480-600,knead.2.480-720
		fork20      whole-grain mix.1.480-600,knead.2.240-360
		fork20      rye         mix.1.600-900
		fork20      spelt       mix.1.480-600,knead.2.120-180
		fork20      pizza       mix.1.480-600,knead.2.480-720
		fork20      enriched    mix.1.480-600,knead.2.360-480,knead-the-fat-in.1.360-480
		fork20      mixed-rye   mix.1.480-600,knead.2.120-240
		fork20      gluten-free mix.1.300-480
		processor2  wheat       knead.0.30-90
		processor2  whole-grain knead.0.30-90
		processor2  rye         mix.0.20-40
		processor2  spelt       knead.0.30-90
		processor2  pizza       knead.0.30-90
		processor2  enriched    knead.0.30-60,knead-the-fat-in.0.20-40
		processor2  mixed-rye   mix.0.20-40
		processor2  gluten-free mix.0.30-60`)
	var got []string
	for _, m := range mixers {
		for _, kind := range quantity.Values[mixing.DoughKind]() {
			k, err := mixing.Mix{
				Mixer: m.mixer, Bowl: quantity.Liters(m.liters), Kind: kind, Flour: quantity.Grams(1000),
				Water: quantity.Grams(650), Dough: quantity.Grams(1700),
			}.Kneading()
			if err != nil {
				t.Fatal(err)
			}
			var stages []string
			for _, s := range k.Stages {
				stages = append(stages, fmt.Sprintf("%s.%d.%.0f-%.0f",
					strings.ReplaceAll(s.Step.String(), " ", "-"), s.Speed,
					s.From.Duration().Seconds(), s.To.Duration().Seconds()))
			}
			name := m.mixer.String()
			if m.liters > 0 {
				name += fmt.Sprint(m.liters)
			}
			got = append(got, name, strings.ReplaceAll(kind.String(), " ", "-"), strings.Join(stages, ","))
		}
	}
	if len(got) != len(want) {
		t.Fatalf("%d entries, want %d", len(got), len(want))
	}
	for i := range got {
		if got[i] != want[i] {
			t.Errorf("entry %d: %s, want %s", i/3, strings.Join(got[i/3*3:i/3*3+3], " "),
				strings.Join(want[i/3*3:i/3*3+3], " "))
		}
	}
}

// Where the figures turn: what is stiff, wet, rich or a household machine.
func TestWhereKneadingTurns(t *testing.T) {
	mix := func(mixer mixing.MixerKind, liters, water, fat, sugar float64, kind mixing.DoughKind) mixing.Kneading {
		k, err := mixing.Mix{
			Mixer: mixer, Bowl: quantity.Liters(liters), Kind: kind, Flour: quantity.Grams(1000),
			Water: quantity.Grams(10 * water),
			Fat:   quantity.Grams(10 * fat), Sugar: quantity.Grams(10 * sugar),
			Dough: quantity.Grams(1100 + 10*water + 10*fat + 10*sugar),
		}.Kneading()
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	total := func(k mixing.Kneading) string { return fmt.Sprintf("%v-%v", k.From, k.To) }
	for _, c := range []struct{ got, want string }{
		{total(mix(mixing.Planetary, 5, 55, 0, 0, mixing.WheatDough)), "3m-5m"},
		{total(mix(mixing.Planetary, 5, 55.1, 0, 0, mixing.WheatDough)), "8m-12m"},
		{total(mix(mixing.Planetary, 5, 72, 0, 0, mixing.WheatDough)), "8m-12m"},
		{total(mix(mixing.Planetary, 5, 72.1, 0, 0, mixing.WheatDough)), "10m-16m"},
		{total(mix(mixing.Planetary, 5, 65, 9.9, 20, mixing.WheatDough)), "8m-12m"},
		{total(mix(mixing.Planetary, 5, 65, 10, 0, mixing.WheatDough)), "14m-21m"},
		{total(mix(mixing.Planetary, 5, 65, 0, 20.1, mixing.WheatDough)), "14m-21m"},
		{total(mix(mixing.Planetary, 20, 45, 0, 0, mixing.PizzaDough)), "3m-5m"},
		{total(mix(mixing.Planetary, 20, 45.1, 0, 0, mixing.PizzaDough)), "9m-15m"},
		{total(mix(mixing.Spiral, 20, 65, 8, 0, mixing.EnrichedDough)), "9m-12m"},
		{mix(mixing.Spiral, 20, 65, 0, 0, mixing.WheatDough).String(),
			"mix slow (first speed), 3m; knead fast (second speed), 3m to 5m"},
		{mix(mixing.Spiral, 20, 50, 0, 0, mixing.WheatDough).String(),
			"mix slow (first speed), 3m; knead slow (first speed), 3m to 5m"},
		{mix(mixing.Spiral, 20, 50.1, 0, 0, mixing.WheatDough).String(),
			"mix slow (first speed), 3m; knead fast (second speed), 3m to 5m"},
		{mix(mixing.Processor, 2, 60, 0, 0, mixing.WheatDough).String(), "knead with the blade, 30s to 1m30s"},
		{mix(mixing.Hand, 0, 60, 40, 0, mixing.EnrichedDough).String(),
			"knead by hand, 8m to 10m; work the fat in by hand, 8m to 12m"},
		{mix(mixing.Hand, 0, 60, 0, 0, mixing.WheatDough).FinishByHand.String(), "28 °C"},
		{mix(mixing.Hand, 0, 60, 0, 0, mixing.WheatDough).Windowpane.String(), "holds but tears"},
		{mix(mixing.Spiral, 20, 60, 0, 0, mixing.WheatDough).Windowpane.String(), "transparent"},
		{mix(mixing.Spiral, 20, 72, 0, 0, mixing.WheatDough).Windowpane.String(), "transparent"},
		{mix(mixing.Spiral, 20, 72.1, 0, 0, mixing.WheatDough).Windowpane.String(), "holds but tears"},
		{mix(mixing.Spiral, 20, 72.1, 0, 0, mixing.EnrichedDough).Windowpane.String(), "transparent"},
	} {
		if c.got != c.want {
			t.Errorf("got %s, want %s", c.got, c.want)
		}
	}
}

// The figures to start with, in °F for three factors and in Δ°C a minute.
func TestGuideValues(t *testing.T) {
	for kind, want := range map[mixing.MixerKind][5]float64{
		mixing.Hand:      {5, 0, 12, 0.1, 0.1},
		mixing.Planetary: {22, 6, 35, 0.4, 0.2},
		mixing.Spiral:    {24, 10, 35, 0.4, 0.2},
		mixing.Fork:      {16, 6, 30, 0.2, 0.15},
		mixing.Processor: {25, 15, 35, 4, 2},
	} {
		p, err := kind.Prior()
		if err != nil || p.Friction.Factor != quantity.DeltaFahrenheit(want[0]) || p.Friction.Factors != 3 ||
			p.Low != quantity.DeltaFahrenheit(want[1]) ||
			p.High != quantity.DeltaFahrenheit(want[2]) || p.RisePerMinute != quantity.DeltaCelsius(want[3]) ||
			p.RiseSpread != quantity.DeltaCelsius(want[4]) {
			t.Errorf("%v: %+v, %v", kind, p, err)
		}
	}
}

// How much flour a household bowl takes, where the stiffness turns, and where the charts take over.
func TestHouseholdBowl(t *testing.T) {
	for _, c := range []struct {
		liters, water float64
		kind          mixing.DoughKind
		low, high     float64 // kg of flour
		least         float64
	}{
		{5, 60, mixing.WheatDough, 1.25, 1.35, 0.4},
		{5, 60.1, mixing.WheatDough, 1.5, 1.5, 0.4},
		{5, 70, mixing.WheatDough, 1.5, 1.5, 0.4},
		{5, 70.1, mixing.WheatDough, 1.25, 1.35, 0.4},
		{5, 65, mixing.WholeGrainDough, 0.9, 1.05, 0.4},
		{5, 65, mixing.RyeDough, 0.9, 1.05, 0.4},
		{4, 65, mixing.SpeltDough, 1.2, 1.2, 0.32},
	} {
		m := mixing.Mix{
			Mixer: mixing.Planetary,
			Bowl:  quantity.Liters(c.liters),
			Kind:  c.kind,
			Flour: quantity.Grams(500),
			Water: quantity.Grams(5 * c.water),
		}
		m.Dough = m.Flour.Add(m.Water).Add(quantity.Grams(10))
		r, err := m.Fit()
		if err != nil {
			t.Fatal(err)
		}
		over := m.Dough.Grams() / 500
		for name, x := range map[string][2]float64{
			"low": {r.MostLow.Kilograms(), c.low * over}, "high": {r.MostHigh.Kilograms(), c.high * over},
			"least": {r.Least.Kilograms(), c.least * over},
		} {
			if d := x[0] - x[1]; !(d < 1e-5 && d > -1e-5) {
				t.Errorf("%v L, %v %%, %v, %s: %v kg, want %v", c.liters, c.water, c.kind, name, x[0], x[1])
			}
		}
	}
}
