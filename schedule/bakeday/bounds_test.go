package bakeday

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// bound is a field that a bake takes from a least to a most, both of which are allowed; step is just beyond.
type bound struct {
	path              string
	least, most, step float64
	set               func(*Bake, float64)
}

func celsius(c float64) quantity.Temperature { return quantity.Celsius(c) }

func inMinutes(m float64) quantity.Elapsed {
	return quantity.Elapsed(math.Round(m * float64(time.Minute)))
}

// bounds are those of the fields that do not hang on each other.
func bounds() []bound {
	percent := quantity.NewPercent
	return []bound{
		{"Loaves.Pieces", 1, 1000, 1, func(b *Bake, v float64) { b.Loaves.Pieces = int(v) }},
		{"Loaves.Baked", 20, 10_000, 0.1, func(b *Bake, v float64) { b.Loaves.Baked = quantity.Grams(v) }},
		{"Loaves.Loss", 0, 40, 0.1, func(b *Bake, v float64) { b.Loaves.Loss = percent(v) }},
		{"Loaves.FreshWithin", 0, 7 * 24 * 60, 1, func(b *Bake, v float64) { b.Loaves.FreshWithin = inMinutes(v) }},
		{"Levain.Inoculation", 1, 500, 0.1, func(b *Bake, v float64) { b.Levain.Inoculation = percent(v) }},
		{"Levain.FedAgo", 0, 72 * 60, 1, func(b *Bake, v float64) { b.Levain.FedAgo = inMinutes(v) }},
		{"Levain.CultureAtHand", 0, 1e6, 1, func(b *Bake, v float64) { b.Levain.CultureAtHand = quantity.Grams(v) }},
		{"Levain.Temperature", 5, 40, 0.1, func(b *Bake, v float64) { b.Levain.Temperature = celsius(v) }},
		{"Levain.Takes", 1, 240, 0.5, func(b *Bake, v float64) { b.Levain.Takes = inMinutes(v) }},
		{"Mixing.Temperature", 10, 40, 0.1, func(b *Bake, v float64) { b.Mixing.Temperature = celsius(v) }},
		{"Mixing.Warming", -10, 20, 0.1, func(b *Bake, v float64) { b.Mixing.Warming = quantity.DeltaCelsius(v) }},
		{"Mixing.Takes", 1, 240, 0.5, func(b *Bake, v float64) { b.Mixing.Takes = inMinutes(v) }},
		{"Bulk.Rise", 10, 400, 0.1, func(b *Bake, v float64) { b.Bulk.Rise = percent(v) }},
		{"Bulk.Box", 10, 38, 0.1, func(b *Bake, v float64) { b.Bulk.Box = celsius(v) }},
		{"Bulk.Folds", 0, 12, 1, func(b *Bake, v float64) { b.Bulk.Folds = int(v) }},
		{"Bulk.FoldEvery", 5, 720, 0.5, func(b *Bake, v float64) { b.Bulk.FoldEvery = inMinutes(v) }},
		{"Bulk.FoldTakes", 1, 60, 0.5, func(b *Bake, v float64) { b.Bulk.FoldTakes = inMinutes(v) }},
		{"Bulk.Lamination.After", 5, 1440, 0.5, func(b *Bake, v float64) { laminated(b).After = inMinutes(v) }},
		{"Bulk.Lamination.Takes", 1, 120, 0.5, func(b *Bake, v float64) { laminated(b).Takes = inMinutes(v) }},
		{"Bulk.Lamination.Rest", 1, 720, 0.5, func(b *Bake, v float64) { laminated(b).Rest = inMinutes(v) }},
		{"Shaping.Takes", 1, 480, 0.5, func(b *Bake, v float64) { b.Shaping.Takes = inMinutes(v) }},
		{"Retard.AtLeast", 30, 5760, 0.5, func(b *Bake, v float64) {
			b.Retard.AtLeast, b.Retard.AtMost = inMinutes(v), inMinutes(min(max(v, 30), 5760))
		}},
		{"Retard.AtMost", 480, 5760, 0.5, func(b *Bake, v float64) { b.Retard.AtMost = inMinutes(v) }},
		{"Retard.WarmUp", 0, 720, 0.5, func(b *Bake, v float64) { b.Retard.WarmUp = inMinutes(v) }},
		{"Oven.Temperature", 120, 500, 0.1, func(b *Bake, v float64) { b.Oven.Temperature = celsius(v) }},
		{"Oven.Then", 100, 500, 0.1, func(b *Bake, v float64) { b.Oven.Then = celsius(v) }},
		{"Oven.Pots", 0, 1000, 1, func(b *Bake, v float64) { b.Oven.Pots = int(v) }},
		{"Oven.Together", 0, 1000, 1, func(b *Bake, v float64) { b.Oven.Together = int(v) }},
		{"Oven.Preheat", 0, 360, 0.5, func(b *Bake, v float64) { b.Oven.Preheat = inMinutes(v) }},
		{"Oven.Reheat", 0, 120, 0.5, func(b *Bake, v float64) { b.Oven.Reheat = inMinutes(v) }},
		{"Oven.Covered", 0, 240, 0.5, func(b *Bake, v float64) { b.Oven.Covered = inMinutes(v) }},
		{"Oven.Uncovered", 0, 240, 0.5, func(b *Bake, v float64) { b.Oven.Uncovered = inMinutes(v) }},
		{"Kitchen.Hands", 0, 100, 1, func(b *Bake, v float64) { b.Kitchen.Hands = int(v) }},
		{"Kitchen.Altitude", -500, 9000, 1, func(b *Bake, v float64) { b.Kitchen.Altitude = quantity.Meters(v) }},
		{"Kitchen.Day", 0, 45, 0.1, func(b *Bake, v float64) { b.Kitchen.Day = celsius(v) }},
		{"Kitchen.Night", 0, 45, 0.1, func(b *Bake, v float64) { b.Kitchen.Night = celsius(v) }},
		{"Kitchen.Refrigerator", -1, 15, 0.1, func(b *Bake, v float64) { b.Kitchen.Refrigerator = celsius(v) }},
		{"Kitchen.Flour", -20, 50, 0.1, func(b *Bake, v float64) { b.Kitchen.Flour = celsius(v) }},
		{"Kitchen.Tap", 0.5, 45, 0.1, func(b *Bake, v float64) { b.Kitchen.Tap = celsius(v) }},
		{"Kitchen.Ice", -40, 0, 0.1, func(b *Bake, v float64) { b.Kitchen.Ice = celsius(v) }},
		{"Kitchen.Scale", 0.001, 1000, 0.0005, func(b *Bake, v float64) { b.Kitchen.Scale = quantity.Grams(v) }},
		{"Kitchen.FineScale", 0, 1, 0.01, func(b *Bake, v float64) { b.Kitchen.FineScale = quantity.Grams(v) }},
		{"Kitchen.HalfLife", 1440, 366 * 1440, 1, func(b *Bake, v float64) { b.Kitchen.HalfLife = inMinutes(v) }},
		{"Kitchen.Oven.Decks", 0, 100, 1, func(b *Bake, v float64) { b.Kitchen.Oven.Decks = int(v) }},
		{"Kitchen.Oven.Holds", 0, 1000, 1, func(b *Bake, v float64) { b.Kitchen.Oven.Holds = int(v) }},
		{"Kitchen.Oven.Hottest", 120, 500, 0.1, func(b *Bake, v float64) { b.Kitchen.Oven.Hottest = celsius(v) }},
		{"Kitchen.Oven.Warms", 0, 120, 0.5, func(b *Bake, v float64) { b.Kitchen.Oven.Warms = inMinutes(v) }},
		{"Kitchen.Oven.Cools", 0, 120, 0.5, func(b *Bake, v float64) { b.Kitchen.Oven.Cools = inMinutes(v) }},
		{"Kitchen.Pots", 0, 1000, 1, func(b *Bake, v float64) { b.Kitchen.Pots = int(v) }},
		{"Kitchen.RefrigeratorPlaces", 0, 10_000, 1, func(b *Bake, v float64) { b.Kitchen.RefrigeratorPlaces = int(v) }},
		{"Kitchen.BoxPlaces", 0, 10_000, 1, func(b *Bake, v float64) { b.Kitchen.BoxPlaces = int(v) }},
		{"Kitchen.Mixers[0].Bowl", 0.5, 400, 0.1, func(b *Bake, v float64) { b.Kitchen.Mixers[0].Bowl = quantity.Liters(v) }},
		{"Kitchen.Mixers[0].Washing", 0, 240, 0.5, func(b *Bake, v float64) { b.Kitchen.Mixers[0].Washing = inMinutes(v) }},
		{"Preferments[0].Temperature", 0, 40, 0.1, func(b *Bake, v float64) { fermented(b).Temperature = celsius(v) }},
		{"Preferments[0].Takes", 1, 240, 0.5, func(b *Bake, v float64) { fermented(b).Takes = inMinutes(v) }},
		{"Preferments[0].AtLeast", 5, 5760, 0.5, func(b *Bake, v float64) {
			fermented(b).AtLeast, fermented(b).AtMost = inMinutes(v), inMinutes(5760)
		}},
		{"Preferments[0].AtMost", 300, 5760, 0.5, func(b *Bake, v float64) {
			fermented(b).AtLeast, fermented(b).AtMost = inMinutes(300), inMinutes(v)
		}},
		{"Soakers[0].Temperature", 0, 60, 0.1, func(b *Bake, v float64) { wetted(b).Temperature = celsius(v) }},
		{"Soakers[0].Takes", 1, 240, 0.5, func(b *Bake, v float64) { wetted(b).Takes = inMinutes(v) }},
		{"Soakers[0].AtLeast", 5, 5760, 0.5, func(b *Bake, v float64) {
			wetted(b).AtLeast, wetted(b).AtMost = inMinutes(v), inMinutes(5760)
		}},
		{"Soakers[0].AtMost", 60, 5760, 0.5, func(b *Bake, v float64) { wetted(b).AtMost = inMinutes(v) }},
		{"Inclusions[0].Temperature", -25, 60, 0.1, func(b *Bake, v float64) {
			b.Inclusions = []Ingredient{{Name: "nuts", Percent: percent(5), Kind: dough.KindNuts, Temperature: celsius(v)}}
		}},
		{"Levers.Prefermented[0]", 1, 80, 0.1, func(b *Bake, v float64) {
			b.Levers.Prefermented = []quantity.Percent{percent(v), percent(80)}
		}},
		{"Levers.Prefermented[1]", 5, 80, 0.1, func(b *Bake, v float64) {
			b.Levers.Prefermented = []quantity.Percent{percent(5), percent(v)}
		}},
		{"Levers.Inoculation[0]", 1, 500, 0.1, func(b *Bake, v float64) {
			b.Levers.Inoculation = []quantity.Percent{percent(v), percent(500)}
		}},
		{"Levers.Inoculation[1]", 20, 500, 0.1, func(b *Bake, v float64) {
			b.Levers.Inoculation = []quantity.Percent{percent(20), percent(v)}
		}},
		{"Levers.Temperature[0]", 10, 40, 0.1, func(b *Bake, v float64) {
			b.Levers.Temperature = []quantity.Temperature{celsius(v), celsius(40)}
		}},
		{"Levers.Temperature[1]", 20, 40, 0.1, func(b *Bake, v float64) {
			b.Levers.Temperature = []quantity.Temperature{celsius(20), celsius(v)}
		}},
		{"Levers.Box[0]", 10, 38, 0.1, func(b *Bake, v float64) {
			b.Levers.Box = []quantity.Temperature{celsius(v), celsius(38)}
		}},
		{"Levers.Box[1]", 20, 38, 0.1, func(b *Bake, v float64) {
			b.Levers.Box = []quantity.Temperature{celsius(20), celsius(v)}
		}},
		{"Levers.Retard[0]", 30, 5760, 0.5, func(b *Bake, v float64) {
			b.Levers.Retard = []quantity.Elapsed{inMinutes(v), inMinutes(5760)}
		}},
		{"Levers.Retard[1]", 60, 5760, 0.5, func(b *Bake, v float64) {
			b.Levers.Retard = []quantity.Elapsed{inMinutes(60), inMinutes(v)}
		}},
	}
}

// laminated is the lamination of the bake, with one where it has none, far from any fold.
func laminated(b *Bake) *Lamination {
	if b.Bulk.Lamination == nil {
		b.Bulk.Folds = 0
		b.Bulk.Lamination = (&Lamination{}).withDefaults()
	}
	return b.Bulk.Lamination
}

// fermented is the preferment of the bake, with one of five to ten hours where it has none.
func fermented(b *Bake) *PrefermentWork {
	if len(b.Preferments) == 0 {
		b.Preferments = []PrefermentWork{{Name: "biga", Kind: dough.Biga, Prefermented: pct(10), Hydration: pct(55),
			Takes: inMinutes(10), AtLeast: inMinutes(300), AtMost: inMinutes(600)}}
	}
	return &b.Preferments[0]
}

// wetted is the soaker of the bake, with one of an hour or two where it has none.
func wetted(b *Bake) *SoakerWork {
	if len(b.Soakers) == 0 {
		b.Soakers = []SoakerWork{{Name: "soaked rye", Kind: dough.ColdSoaker, Takes: inMinutes(10), AtLeast: inMinutes(60),
			AtMost: inMinutes(120), Parts: []SoakerPart{{Name: "whole rye flour", Percent: pct(5)},
				{Name: "water", Percent: pct(5)}}}}
	}
	return &b.Soakers[0]
}

// faulty are the paths of what is wrong with a bake.
func faulty(b *Bake) []string {
	var out []string
	for _, e := range quantity.InputErrors(b.check()) {
		out = append(out, e.GoPath)
	}
	return out
}

// Every field takes what lies between its bounds, the bounds included, and is named where it lies just beyond.
func TestBoundsOfABake(t *testing.T) {
	for _, x := range bounds() {
		for value, ok := range map[float64]bool{x.least: true, x.most: true, (x.least + x.most) / 2: true,
			x.least - x.step: false, x.most + x.step: false} {
			b := hall()
			b.Kitchen.Mixers = slices.Clone(b.Kitchen.Mixers)
			b = b.withDefaults()
			x.set(&b, value)
			if got := faulty(&b); slices.Contains(got, x.path) == ok {
				t.Errorf("%s at %v: %v is wrong", x.path, value, got)
			}
		}
	}
}

// What hangs on something else: the places of the kitchen, a box that is a refrigerator, a ripe levain, names.
func TestWhatABakeHasToHave(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Bake)
		want   string
	}{
		"as it is":          {func(*Bake) {}, ""},
		"all pots":          {func(b *Bake) { b.Kitchen.Pots = 2 }, ""},
		"a pot too many":    {func(b *Bake) { b.Kitchen.Pots = 1 }, "Oven.Pots"},
		"all on a deck":     {func(b *Bake) { b.Kitchen.Oven.Holds, b.Oven.Together = 3, 3 }, ""},
		"one too many":      {func(b *Bake) { b.Kitchen.Oven.Holds, b.Oven.Together = 3, 4 }, "Oven.Together"},
		"all in the cold":   {func(b *Bake) { b.Kitchen.RefrigeratorPlaces = 6 }, ""},
		"one left out":      {func(b *Bake) { b.Kitchen.RefrigeratorPlaces = 5 }, "Loaves.Pieces"},
		"none in the cold":  {func(b *Bake) { b.Kitchen.RefrigeratorPlaces, b.Retard = 5, nil }, ""},
		"as hot as it gets": {func(b *Bake) { b.Kitchen.Oven.Hottest = celsius(245) }, ""},
		"hotter":            {func(b *Bake) { b.Kitchen.Oven.Hottest = celsius(244) }, "Oven.Temperature"},
		"no refrigerator":   {func(b *Bake) { b.Kitchen.Refrigerator = quantity.Temperature{} }, "Kitchen.Refrigerator"},
		"none needed": {func(b *Bake) { b.Kitchen.Refrigerator, b.Retard = quantity.Temperature{}, nil },
			""},
		"no mixer":       {func(b *Bake) { b.Mixing.Mixer, b.Kitchen.Mixers = 0, nil }, "Mixing.Mixer"},
		"by hand":        {func(b *Bake) { b.Mixing.Mixer = mixing.Hand }, ""},
		"not in kitchen": {func(b *Bake) { b.Mixing.Mixer = mixing.Spiral }, "Mixing.Mixer"},
		"hand in kitchen": {func(b *Bake) { b.Kitchen.Mixers[0].Kind, b.Mixing.Mixer = mixing.Hand, mixing.Hand },
			"Kitchen.Mixers[0].Kind"},
		"twice": {func(b *Bake) { b.Kitchen.Mixers = append(b.Kitchen.Mixers, b.Kitchen.Mixers[0]) },
			"Kitchen.Mixers[1].Kind"},
		"of no kind": {func(b *Bake) { b.Kitchen.Mixers = append(b.Kitchen.Mixers, KitchenMixer{}) },
			"Kitchen.Mixers[1].Kind"},
		"no bowl": {func(b *Bake) { b.Kitchen.Mixers[0].Bowl = quantity.Volume{} }, "Kitchen.Mixers[0].Bowl"},
		"ripe and fed": {func(b *Bake) { b.Levain.RipeNow, b.Levain.FedAgo = true, inMinutes(60) },
			"Levain.FedAgo"},
		"ripe":          {func(b *Bake) { b.Levain.RipeNow = true }, ""},
		"no leaven":     {func(b *Bake) { b.Levain = nil }, "Levain"},
		"no wish":       {func(b *Bake) { b.Wanted = Wish{} }, "Wanted"},
		"a long name":   {func(b *Bake) { b.Name = strings.Repeat("x", 200) }, ""},
		"too long":      {func(b *Bake) { b.Name = strings.Repeat("x", 201) }, "Name"},
		"a kitchen":     {func(b *Bake) { b.Kitchen.Name = strings.Repeat("x", 201) }, "Kitchen.Name"},
		"a line break":  {func(b *Bake) { b.Name = "a\nb" }, "Name"},
		"one end":       {func(b *Bake) { b.Levers.Box = []quantity.Temperature{celsius(20)} }, "Levers.Box"},
		"high then low": {func(b *Bake) { b.Levers.Box = []quantity.Temperature{celsius(21), celsius(20)} }, "Levers.Box[1]"},
		"no more than that": {func(b *Bake) { b.Retard.AtMost = b.Retard.AtLeast - 1 },
			"Retard.AtMost"},
	} {
		b := hall()
		b.Kitchen.Mixers = slices.Clone(b.Kitchen.Mixers)
		b = b.withDefaults()
		c.change(&b)
		if got := strings.Join(faulty(&b), " "); got != c.want {
			t.Errorf("%s: %q is wrong, want %q", name, got, c.want)
		}
	}
}

// A time in the lamination or in its rest is no time for a fold: a fold of 5 minutes at 45 ends at 50; a lamination of
// 15 minutes with 30 of rest that ends when the next fold begins, at 90, begins at 45 at the latest.
func TestFoldsAroundALamination(t *testing.T) {
	for _, c := range []struct {
		after, every float64
		folds        int
		ok           bool
	}{
		{50, 45, 1, true}, {49, 45, 1, false}, {44, 45, 1, false}, {50, 45, 2, false}, {95, 45, 2, true},
		{45, 90, 1, true}, {45.5, 90, 1, false}, {60, 45, 0, true}, {5, 50, 1, true}, {6, 50, 1, false},
	} {
		b := hall()
		b.Bulk.Folds, b.Bulk.FoldEvery = c.folds, inMinutes(c.every)
		b.Bulk.Lamination = &Lamination{After: inMinutes(c.after)}
		b = b.withDefaults()
		if got := faulty(&b); (len(got) == 0) != c.ok || !c.ok && got[0] != "Bulk.Lamination.After" {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// How many loaves bake at once, and on how many decks: by the pots, by what the bake says, by what a deck holds.
func TestLoavesInOneRound(t *testing.T) {
	for _, c := range []struct {
		pieces, pots, together, holds, decks int
		each, on                             int
	}{
		{6, 2, 0, 0, 0, 2, 1}, {6, 0, 0, 0, 0, 6, 1}, {6, 0, 4, 0, 0, 4, 1}, {6, 0, 4, 0, 2, 6, 2}, {6, 0, 0, 4, 1, 4, 1},
		{6, 0, 0, 4, 2, 6, 2}, {3, 0, 0, 4, 2, 3, 1}, {6, 2, 4, 0, 0, 4, 1}, {6, 5, 0, 4, 2, 5, 2}, {12, 0, 0, 3, 3, 9, 3},
	} {
		b := hall()
		b.Loaves.Pieces, b.Oven.Pots, b.Oven.Together = c.pieces, c.pots, c.together
		b.Kitchen.Oven.Holds, b.Kitchen.Oven.Decks = c.holds, c.decks
		if each, on := b.load(); each != c.each || on != c.on {
			t.Errorf("%+v: %d on %d", c, each, on)
		}
	}
}

// What is hardly meant is asked back from where on it is, and not before.
func TestWhatIsHardlyMeant(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Bake)
		want   string
	}{
		"as it is":       {func(*Bake) {}, ""},
		"300 °C":         {func(b *Bake) { b.Oven.Temperature, b.Oven.Then = celsius(300), celsius(300) }, ""},
		"hotter":         {func(b *Bake) { b.Oven.Temperature = celsius(301) }, "was it °F?"},
		"hotter then":    {func(b *Bake) { b.Oven.Then = celsius(350) }, "350 °F would be 177 °C"},
		"a pizza":        {func(b *Bake) { b.Loaves.Style, b.Oven.Temperature = bake.Pizza, celsius(450) }, ""},
		"ten minutes":    {func(b *Bake) { b.Oven.Covered, b.Oven.Uncovered = 0, inMinutes(10) }, ""},
		"nine":           {func(b *Bake) { b.Oven.Covered, b.Oven.Uncovered = inMinutes(4), inMinutes(5) }, "for 9m in all"},
		"as usual":       {func(b *Bake) { b.Oven.Covered, b.Oven.Uncovered = 0, 0 }, ""},
		"many":           {func(b *Bake) { b.Loaves.Pieces = 199 }, ""},
		"very many":      {func(b *Bake) { b.Loaves.Pieces = 200 }, "200 loaves are to be made"},
		"without salt":   {func(b *Bake) { b.Salt = quantity.Percent{} }, "there is no salt"},
		"with a little":  {func(b *Bake) { b.Salt = quantity.NewPercent(0.1) }, ""},
		"a hot flat one": {func(b *Bake) { b.Loaves.Style, b.Oven.Uncovered = bake.FlatBread, inMinutes(3) }, ""},
	} {
		b := hall()
		b.Levain.CultureAtHand = quantity.Mass{}
		c.change(&b)
		batch, err := b.Batch(nil)
		if err != nil {
			t.Fatal(name, err)
		}
		var all []string
		for _, m := range (Day{Bake: b, Batch: batch}).meant() {
			all = append(all, m.String())
		}
		if len(all) != min(1, len(c.want)) || !strings.Contains(strings.Join(all, " "), c.want) {
			t.Errorf("%s: %q", name, all)
		}
	}
}

// A wish is read up to sixty-four bytes, from a weekday or a date.
func TestHowLongAWishMayBe(t *testing.T) {
	text := "Saturday" + strings.Repeat(" ", 51) + "12:30"
	if w, err := ParseWish(text); err != nil || w.String() != "Saturday 12:30" || len(text) != 64 {
		t.Errorf("%d bytes: %v, %v", len(text), w, err)
	}
	var w Wish
	if err := w.UnmarshalText([]byte(text)); err != nil || w.String() != "Saturday 12:30" {
		t.Errorf("%v, %v", w, err)
	}
	for _, bad := range []string{text + " ", strings.Repeat(text, 9)} {
		if err := w.UnmarshalText([]byte(bad)); err == nil || !strings.Contains(err.Error(), "extreme length") {
			t.Errorf("%d bytes: %v", len(bad), err)
		}
	}
	if OnDay(time.Saturday+1, w.Clock) != (Wish{}) || OnDay(time.Sunday-1, w.Clock) != (Wish{}) ||
		OnDay(time.Sunday, w.Clock).IsZero() || OnDay(time.Saturday, w.Clock).IsZero() {
		t.Error("days of the week")
	}
}
