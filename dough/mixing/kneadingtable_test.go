package mixing_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// codes are the identifiers of messages, without the room.
func codes(messages []working.Message) string {
	var out []string
	for _, m := range messages {
		out = append(out, strings.TrimPrefix(m.ID(), "mixing."))
	}
	return strings.Join(out, " ")
}

// kneaded is a kilogram of flour as a dough.
func kneaded(mixer mixing.MixerKind, kind mixing.DoughKind, bowl, water, fat, sugar float64) mixing.Mix {
	g := quantity.Grams
	return mixing.Mix{Mixer: mixer, Kind: kind, Bowl: quantity.Liters(bowl), Flour: g(1000), Water: g(water), Salt: g(20),
		Fat: g(fat), Sugar: g(sugar), Dough: g(1020 + water + fat + sugar), Prefermented: g(150)}
}

// How every kind of dough is kneaded with every mixer: the parts with their times and authors, the notes and the signs,
// also where a figure stands at the border of a rule: 55 and 72 % of water, 10 % of fat, 20 % of sugar.
func TestKneadingOfEveryDough(t *testing.T) {
	var page strings.Builder
	line := func(in mixing.Mix, rest ...any) {
		k, err := in.Kneading()
		if err != nil {
			t.Fatal(err)
		}
		var by []string
		for _, s := range k.Stages {
			by = append(by, s.Source.Key)
		}
		fmt.Fprintln(&page, rest...)
		fmt.Fprintf(&page, "  %v; by %s; %v to %v\n  notes: %s\n  ready: %s; under: %s; over: %s; %v, by hand from %v\n", k,
			strings.Join(by, ", "), k.From, k.To, codes(k.Notes), codes(k.Ready), codes(k.Under), codes(k.Over), k.Windowpane,
			k.FinishByHand)
	}
	for mixer := mixing.Hand; mixer <= mixing.Processor; mixer++ {
		bowls := []float64{5}
		if mixer == mixing.Planetary {
			bowls = []float64{8, 8.1}
		}
		for _, bowl := range bowls {
			for kind := mixing.WheatDough; kind <= mixing.GlutenFreeDough; kind++ {
				for _, fat := range []float64{0, 99, 100} {
					line(kneaded(mixer, kind, bowl, 650, fat, 0), mixer, bowl, kind, "fat", fat)
				}
			}
			for _, kind := range []mixing.DoughKind{mixing.WheatDough, mixing.PizzaDough, mixing.EnrichedDough,
				mixing.RyeDough} {
				for _, water := range []float64{450, 451, 500, 501, 550, 551, 720, 721} {
					line(kneaded(mixer, kind, bowl, water, 0, 50), mixer, bowl, kind, "water", water)
				}
			}
			for _, sugar := range []float64{200, 201} {
				line(kneaded(mixer, mixing.WheatDough, bowl, 600, 0, sugar), mixer, bowl, "sugar", sugar)
			}
		}
	}
	trial.Kept(t, "kneading.txt", page.String())
}

// What is done with a dough that sticks: by its kind, how long it was kneaded and whether it has rested, how warm it
// is and what was added, at the borders of each rule and beyond.
func TestStickingOfEveryDough(t *testing.T) {
	var page strings.Builder
	line := func(in mixing.Sticking, rest ...any) {
		c, err := in.Advise()
		if err != nil {
			t.Fatal(rest, err)
		}
		fmt.Fprintln(&page, rest...)
		fmt.Fprintf(&page, "  %v, expected: %v, knead on %v; %s; left %v of %v; %v\n", c.Step, c.Expected, c.KneadOn,
			codes(c.Say), c.Left, c.Cap, c.Additions)
	}
	minutes := func(m float64) quantity.Elapsed { return quantity.Elapsed(m * float64(time.Minute)) }
	for mixer := mixing.Hand; mixer <= mixing.Processor; mixer++ {
		for kind := mixing.WheatDough; kind <= mixing.GlutenFreeDough; kind++ {
			in := mixing.Sticking{Mix: kneaded(mixer, kind, 8, 650, 0, 0)}
			for _, m := range []float64{0, 9, 15, 45} {
				in.Kneaded = minutes(m)
				line(in, mixer, kind, "after", in.Kneaded)
			}
			in.Rested = true
			line(in, mixer, kind, "rested")
		}
	}
	wheat := mixing.Sticking{Mix: kneaded(mixing.Spiral, mixing.WheatDough, 20, 600, 0, 0), Kneaded: minutes(12)}
	for _, water := range []float64{600, 601, 720, 721, 780, 781, 800, 801, 850} {
		in := wheat
		in.Mix = kneaded(mixing.Spiral, mixing.WheatDough, 20, water, 0, 0)
		line(in, "water", water)
		in.Mix.Mixer = mixing.Planetary
		line(in, "planetary, water", water)
	}
	for _, added := range []float64{0, 20, 27, 27.5, 29.99, 30, 200} {
		in := wheat
		in.Rested, in.Kneaded, in.Added = true, minutes(9), quantity.Grams(added)
		line(in, "added", added)
		in.Rested = false
		line(in, "not rested, added", added)
	}
	for _, warm := range []float64{20, 28, 28.1, 30, 30.1, 40} {
		in := wheat
		in.Dough = quantity.Celsius(warm)
		line(in, "warm", warm)
	}
	rich := mixing.Sticking{Mix: kneaded(mixing.Spiral, mixing.EnrichedDough, 20, 500, 300, 100), Kneaded: minutes(20)}
	line(rich, "fat not in")
	rich.FatIn = true
	line(rich, "fat in")
	for _, m := range []float64{9, 10, 14.9, 15, 15.1} {
		in := wheat
		in.Mix.Kind, in.Kneaded = mixing.WholeGrainDough, minutes(m)
		line(in, "whole grain after", in.Kneaded)
		in.Rested = true
		line(in, "whole grain rested after", in.Kneaded)
	}
	trial.Kept(t, "sticking.txt", page.String())
}

// What is said of a dough for a mixer, and of the questions about it, when they are refused.
func TestRefusalsAreSaidWhole(t *testing.T) {
	var page strings.Builder
	said := func(what any, err error) {
		text := "taken"
		if err != nil {
			text = strings.ReplaceAll(err.Error(), "\n", "\n  ")
		}
		fmt.Fprintf(&page, "%v\n  %s\n", what, text)
	}
	g, c := quantity.Grams, quantity.Celsius
	whole := kneaded(mixing.Spiral, mixing.WheatDough, 20, 600, 0, 0)
	for _, x := range []struct {
		what   string
		change func(*mixing.Mix)
	}{
		{"nothing", func(m *mixing.Mix) { *m = mixing.Mix{} }},
		{"no water", func(m *mixing.Mix) { m.Water = g(0) }},
		{"water of a fifth", func(m *mixing.Mix) { m.Water = g(200) }},
		{"too dry", func(m *mixing.Mix) { m.Water = g(199.9) }},
		{"too wet", func(m *mixing.Mix) { m.Water, m.Dough = g(1501), g(3000) }},
		{"too little dough", func(m *mixing.Mix) { m.Dough = g(1599) }},
		{"flour and water alone", func(m *mixing.Mix) { m.Dough = g(1600) }},
		{"all prefermented", func(m *mixing.Mix) { m.Prefermented = g(1000) }},
		{"more prefermented", func(m *mixing.Mix) { m.Prefermented = g(1000.1) }},
		{"prefermented of no flour", func(m *mixing.Mix) { m.Flour, m.Prefermented = g(0), g(1) }},
		{"prefermented less", func(m *mixing.Mix) { m.Prefermented = g(-1) }},
		{"bowl of a cup", func(m *mixing.Mix) { m.Bowl = quantity.Liters(0.499) }},
		{"bowl of a room", func(m *mixing.Mix) { m.Bowl = quantity.Liters(401) }},
		{"bowl of half a liter", func(m *mixing.Mix) { m.Bowl = quantity.Liters(0.5) }},
		{"bowl of 400 liters", func(m *mixing.Mix) { m.Bowl = quantity.Liters(400) }},
		{"coldest water", func(m *mixing.Mix) { m.WaterTemperature = c(-270) }},
		{"colder water", func(m *mixing.Mix) { m.WaterTemperature = c(-271) }},
		{"steam", func(m *mixing.Mix) { m.WaterTemperature = c(400) }},
		{"less of all", func(m *mixing.Mix) { m.Salt, m.Fat, m.Sugar, m.Rated = g(-1), g(-2), g(-3), g(-4) }},
		{"kinds that are none", func(m *mixing.Mix) { m.Mixer, m.Kind = 99, 99 }},
	} {
		in := whole
		x.change(&in)
		said(x.what, second(in.Kneading()))
	}
	for _, h := range []float64{0, 19.9, 20, 60, 60.1, 151} {
		said(fmt.Sprint("flour for ", h), second(whole.FlourFor(quantity.NewPercent(h))))
	}
	for _, in := range []mixing.Sticking{
		{Mix: whole, Kneaded: quantity.Elapsed(-time.Second)}, {Mix: whole, Kneaded: quantity.Elapsed(4 * time.Hour)},
		{Mix: whole, Kneaded: quantity.Elapsed(4*time.Hour + time.Second)},
		{Mix: whole, Added: g(200)}, {Mix: whole, Added: g(200.1)},
		{Mix: whole, Added: g(-1)}, {Mix: whole, Dough: c(-1)}, {Mix: whole, Dough: c(0)}, {Mix: whole, Dough: c(60)},
		{Mix: whole, Dough: c(50.1)},
	} {
		said(fmt.Sprintf("kneaded %v, added %v, of %v", in.Kneaded.Duration(), in.Added, in.Dough), second(in.Advise()))
	}
	for _, into := range []interface{ UnmarshalText([]byte) error }{new(mixing.MixerKind), new(mixing.DoughKind),
		new(mixing.KneadingStep), new(mixing.WindowpaneGoal), new(mixing.ClearingStep), new(mixing.LimitBasis),
		new(mixing.Substance), new(mixing.FactorKind)} {
		said("a word that is none", into.UnmarshalText([]byte("stone")))
	}
	long := hallLog()
	long.Batches[0].Speeds = make([]quantity.Elapsed, 12)
	said("twelve speeds", second(long.Learn()))
	trial.Kept(t, "refusals.txt", page.String())
}
