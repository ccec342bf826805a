package bakeday

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// draw draws what a random day is made of.
type draw struct{ *rand.Rand }

// randomly is what the day of a seed is drawn with.
func randomly(seed int) draw { return draw{rand.New(rand.NewPCG(16, uint64(seed)))} }

// in answers true once in n times.
func (r draw) in(n int) bool { return r.IntN(n) == 0 }

func pick[T any](r draw, of ...T) T { return of[r.IntN(len(of))] }

func (r draw) minutes(of ...int) quantity.Elapsed {
	return quantity.Elapsed(time.Duration(pick(r, of...)) * time.Minute)
}

func (r draw) celsius(of ...float64) quantity.Temperature { return quantity.Celsius(pick(r, of...)) }

func (r draw) percent(of ...float64) quantity.Percent { return quantity.NewPercent(pick(r, of...)) }

// drawnDay is an order with the clock at which it is planned.
type drawnDay struct {
	Order
	now time.Time
}

func (d drawnDay) clock(t testing.TB) KitchenClock { return KitchenClock{Now: d.now, Zone: zurich(t)} }

// someDay draws a day of one to five breads: whatever a bake file and a kitchen can say has its turn.
func someDay(r draw) drawnDay {
	d := drawnDay{now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC)}
	days := []string{"2026-11-27", "2026-11-28", "2026-11-28", "2026-11-29"}
	if r.in(10) { // over the night in which the clocks are put back
		d.now = time.Date(2026, 10, 23, 15, 0, 0, 0, time.UTC)
		days = []string{"2026-10-25", "2026-10-25", "2026-10-26"}
	}
	d.now = d.now.Add(r.minutes(0, 0, 7, 95, 11*60).Duration())
	d.Kitchen = r.kitchen()
	together := r.in(4) // all wanted fresh at one time
	if together {
		d.Wanted = OnDate(wallclock.MustMoment(days[1] + pick(r, " 15:00", " 10:30", " 18:00")))
	}
	sour := r.in(5) // a day of levain
	for i := range pick(r, 1, 1, 2, 2, 2, 3, 3, 4, 5) {
		b := r.bread(&d.Kitchen, sour)
		b.Name = []string{"Rye", "White", "Buns", "Seeded", "Tin"}[i]
		switch at := fmt.Sprintf("%02d:%02d", 8+r.IntN(12), pick(r, 0, 15, 30)); {
		case b.Levain.standing() && !together: // it does not wait for days
			b.Wanted = OnDate(wallclock.MustMoment(d.now.AddDate(0, 0, 1).Format("2006-01-02 ") + at))
		case together:
			b.Loaves.FreshWithin = r.minutes(10, 40, 120, 360)
		case r.in(6):
			b.Wanted = OnDay(pick(r, time.Saturday, time.Sunday), wallclock.MustClock(at))
		default:
			b.Wanted = OnDate(wallclock.MustMoment(pick(r, days...) + " " + at))
		}
		d.Bakes = append(d.Bakes, b)
	}
	return d
}

// kitchen draws the place: who is there when, what stands in it, how warm it is.
func (r draw) kitchen() Kitchen {
	k := hall().Kitchen
	habits := func(of ...string) []wallclock.Habit {
		if text := pick(r, of...); text != "" {
			return []wallclock.Habit{wallclock.MustHabit(text)}
		}
		return nil
	}
	k.Asleep = habits("22:30 to 06:30", "21:00 to 03:00", "23:30 to 05:00", "00:30 to 07:00", "")
	k.Away = habits("", "", "", "", "", "09:00 to 15:00 on Friday", "12:00 to 13:30", "07:30 to 11:00 on Saturday",
		"closed all day on 2026-11-27")
	k.Hands, k.Pots = pick(r, 0, 0, 1, 2, 3), pick(r, 0, 2, 4)
	k.RefrigeratorPlaces, k.BoxPlaces = pick(r, 0, 0, 8, 12, 20), pick(r, 0, 1, 2, 3)
	k.Oven = KitchenOven{
		Decks: pick(r, 0, 0, 1, 2, 3), Holds: pick(r, 0, 0, 4, 8), Warms: r.minutes(0, 0, 2, 4),
		Cools: r.minutes(0, 0, 5, 15),
	}
	if r.in(4) {
		k.Oven.Hottest = r.celsius(250, 300)
	}
	k.Mixers = []KitchenMixer{{Kind: mixing.Planetary, Bowl: quantity.Liters(pick(r, 7.0, 20, 20)),
		Washing: r.minutes(0, 5, 30)}}
	if r.in(2) {
		k.Mixers = append(k.Mixers, KitchenMixer{Kind: pick(r, mixing.Spiral, mixing.Fork, mixing.Processor),
			Bowl: quantity.Liters(pick(r, 12.0, 40)), Washing: r.minutes(0, 20)})
	}
	k.Altitude = quantity.Meters(pick(r, 0.0, 0, 1150, 3200))
	k.Day, k.Night = r.celsius(18, 21, 22, 26, 30), r.celsius(14, 16, 18)
	if r.in(3) {
		k.Night = quantity.Temperature{}
	}
	k.Refrigerator, k.Tap = r.celsius(2, 4, 6), r.celsius(6, 10, 18)
	k.Scale = quantity.Grams(pick(r, 0.0, 1, 5))
	k.FineScale = quantity.Grams(pick(r, 0.0, 0.1))
	return k
}

// bread draws one bread: a formula, and how it is made.
func (r draw) bread(k *Kitchen, sour bool) Bake {
	kind := pick(r, r.sour, r.sour, r.yeasted, r.yeasted, r.preferred, r.soaked, r.rich, r.flat, r.boiled, r.weighed)
	if sour {
		kind = r.sour
	}
	b := kind()
	b.Kitchen = Kitchen{}
	kinds := []mixing.MixerKind{mixing.Hand, mixing.Planetary, mixing.Planetary}
	for _, m := range k.Mixers {
		kinds = append(kinds, m.Kind)
	}
	b.Mixing.Mixer, b.Mixing.Takes = pick(r, kinds...), r.minutes(0, 15, 25)
	b.Mixing.Temperature = r.celsius(23, 25, 26, 28)
	if r.in(2) {
		b.Mixing.Warming = quantity.TemperatureDelta{}
	}
	if holds := k.Oven.Holds; holds > 0 {
		b.Oven.Together = min(b.Oven.Together, holds)
	}
	if hottest := k.Oven.Hottest; !hottest.IsZero() && b.Oven.Temperature.Compare(hottest) > 0 {
		b.Oven.Temperature = hottest
	}
	b.Shaping.Takes = r.minutes(0, 15, 40)
	if b.Bulk.Folds == 0 && r.in(3) {
		b.Bulk.Folds = 1 + r.IntN(4)
	}
	b.Bulk.FoldEvery, b.Bulk.FoldTakes = r.minutes(0, 20, 30, 45), r.minutes(0, 3, 10)
	if b.Bulk.Box.IsZero() && r.in(4) {
		b.Bulk.Box = r.celsius(24, 27, 30)
	}
	if r.in(8) {
		b.Bulk.ShapeAt = quantity.NewPercent(b.Bulk.Rise.Points() * pick(r, 0.5, 0.7))
	}
	if r.in(10) {
		b.Loaves.Warm = true
	}
	if r.in(5) {
		b.Loaves.FreshWithin = r.minutes(30, 240)
	}
	if r.in(6) {
		step := pick(r, "shape", "bulk", "bake-1")
		b.Notes = append(b.Notes, StepNote{Step: step, Says: "as we did last time"})
	}
	return b
}

// loaves draws how many there are, and of which weight.
func (r draw) loaves(style bake.Style, baked ...float64) Loaves {
	l := Loaves{Pieces: pick(r, 1, 2, 4, 6, 8), Style: style}
	if w := quantity.Grams(pick(r, baked...)); r.in(4) {
		l.Scaling = w
	} else {
		l.Baked = w
	}
	if r.in(3) {
		l.Loss = r.percent(11, 13)
	}
	return l
}

// oven draws the work at the oven of a hearth bread.
func (r draw) oven(hot ...float64) OvenWork {
	o := OvenWork{Temperature: r.celsius(hot...), Together: pick(r, 0, 0, 4, 6)}
	if r.in(4) {
		o.Pots = pick(r, 1, 2)
	}
	if r.in(4) { // the guide values
		return o
	}
	o.Preheat, o.Reheat = r.minutes(30, 45), r.minutes(5, 10)
	o.Covered, o.Uncovered = r.minutes(0, 15), r.minutes(15, 25)
	if o.Covered > 0 && r.in(3) {
		o.Then = quantity.Celsius(o.Temperature.Celsius() - pick(r, 20.0, 40))
	}
	if r.in(5) {
		o.TurnAfter = r.minutes(10)
	}
	if r.in(6) {
		o.RescoreAfter = r.minutes(6)
	}
	return o
}

func (r draw) retard() *Retard {
	out := &Retard{AtLeast: r.minutes(60 * pick(r, 4, 8, 12)), WarmUp: r.minutes(0, 0, 45)}
	out.AtMost = out.AtLeast + r.minutes(60, 6*60, 10*60)
	return out.perhapsUndivided()
}

// sour is a bread of levain: its own, one shared by name, ripe on the counter, or fed some hours ago.
func (r draw) sour() Bake {
	b := hall()
	l := *b.Levain
	b.Levain = &l
	b.Loaves, b.Oven = r.loaves(bake.LeanHearth, 400, 700, 900), r.oven(230, 245, 250)
	l.CultureAtHand = quantity.Grams(pick(r, 0.0, 60, 220))
	switch r.IntN(8) {
	case 0, 1, 2, 3:
		l.Name, l.CultureAtHand = "levain of the day", quantity.Mass{}
	case 4:
		l.RipeNow, l.Inoculation = true, quantity.Percent{}
	case 5:
		l.FedAgo = r.minutes(120, 300)
	default:
		l.Inoculation, l.Temperature = r.percent(20, 60, 100), pick(r, quantity.Temperature{}, quantity.Celsius(27))
	}
	b.Levain = &l
	if b.Retard = r.retard(); r.in(3) {
		b.Retard = nil
	}
	if r.in(6) {
		b.Others = append(b.Others, Ingredient{Name: "instant yeast", Percent: quantity.NewPercent(0.1),
			Kind: dough.KindInstantYeast})
	}
	if r.in(6) {
		b.Flours[0].AtHand = quantity.Kilograms(pick(r, 0.8, 2))
	}
	return b
}

// yeasted is a bread of the day with yeast.
func (r draw) yeasted() Bake {
	b := rolls()
	b.Bulk = BulkWork{Rise: r.percent(120, 150, 180)}
	b.Loaves, b.Oven = r.loaves(pick(r, bake.LeanHearth, bake.Pan, bake.CrustyRoll), 80, 400, 600), r.oven(200, 220, 230)
	if r.in(3) {
		b.Others = append(b.Others, Ingredient{Name: "sesame", Percent: quantity.NewPercent(5), Kind: dough.KindSesame})
	}
	if r.in(5) {
		b.Retard = r.retard()
	}
	return b
}

// preferred is a bread with a poolish, a biga or old dough, whose hours are computed or the baker's own.
func (r draw) preferred() Bake {
	b := r.yeasted()
	p := PrefermentWork{Name: "poolish", Kind: dough.Poolish, Prefermented: r.percent(15, 30),
		Hydration: quantity.NewPercent(100), Yeast: r.percent(0.1, 0.3)}
	switch r.IntN(4) {
	case 0:
		p.Name, p.Kind, p.Hydration = "biga", dough.Biga, quantity.NewPercent(55)
		p.AtLeast, p.AtMost = r.minutes(10*60), r.minutes(16*60)
	case 1:
		p.Name, p.Kind, p.Hydration, p.Salt = "old dough", dough.OldDough, quantity.NewPercent(62), quantity.NewPercent(1.8)
		p.AtLeast, p.AtMost, p.Temperature = r.minutes(4*60), r.minutes(24*60), quantity.Celsius(6)
	}
	b.Preferments = []PrefermentWork{p}
	return b
}

// soaked is a bread with soakers, cold, hot or scalded.
func (r draw) soaked() Bake {
	b := pick(r, r.sour, r.yeasted)()
	b.Flours = []Ingredient{{Name: "wheat bread flour", Percent: quantity.NewPercent(75), Kind: dough.KindWheat},
		{Name: "whole rye flour", Percent: quantity.NewPercent(25), Kind: dough.KindWholeRye}}
	s := SoakerWork{Name: "scald", Kind: pick(r, dough.Scald, dough.Scald, dough.HotSoaker, dough.ColdSoaker),
		AtLeast: r.minutes(60, 120), AtMost: r.minutes(180, 14*60),
		Parts: []SoakerPart{{Name: "whole rye flour", Percent: quantity.NewPercent(5)},
			{Name: "water", Percent: quantity.NewPercent(10)}}}
	if r.in(4) {
		s.Temperature = r.celsius(8, 25)
	}
	b.Soakers = []SoakerWork{s}
	return b
}

// rich is a bread with something that goes in later: at a fold, laminated, shaped in, on top.
func (r draw) rich() Bake {
	b := r.yeasted()
	b.Liquids = []Ingredient{{Name: "water", Percent: quantity.NewPercent(40)},
		{Name: "milk", Percent: quantity.NewPercent(22), Kind: dough.KindMilk, Water: quantity.NewPercent(88)}}
	b.Bulk.Folds = 1 + r.IntN(3)
	b.Loaves = r.loaves(pick(r, bake.Enriched, bake.SoftRoll, bake.Pan), 70, 400)
	walnuts := Ingredient{Name: "walnuts", Percent: quantity.NewPercent(12), Kind: dough.KindNuts}
	switch r.IntN(4) {
	case 0:
		walnuts.Fold = 1 + r.IntN(b.Bulk.Folds)
	case 1:
		walnuts.At, b.Bulk.Folds = schedule.Laminate, 0
		b.Bulk.Lamination = &Lamination{After: r.minutes(0, 40), Rest: r.minutes(0, 20)}
	case 2:
		walnuts.At = schedule.Shape
	default:
		walnuts.At = schedule.Bake
	}
	b.Inclusions = []Ingredient{walnuts}
	if r.in(2) {
		b.Inclusions = append(b.Inclusions, Ingredient{Name: "onions", Percent: quantity.NewPercent(20),
			Kind: dough.KindCookedFilling, At: pick(r, schedule.Shape, schedule.Bake), Perishable: true})
	}
	return b
}

// flat is focaccia, or what is baked to order.
func (r draw) flat() Bake {
	b := r.yeasted()
	b.Oven = OvenWork{Temperature: r.celsius(220, 250, 300)}
	if b.Loaves = r.loaves(pick(r, bake.Focaccia, bake.Pizza, bake.FlatBread), 220, 250); b.Loaves.Style == bake.Focaccia {
		b.Loaves.Pieces, b.Loaves.Warm = 1, true
		b.Loaves.Baked, b.Loaves.Scaling = quantity.Grams(800), quantity.Mass{}
	}
	if b.Retard = nil; r.in(2) {
		b.Retard = &Retard{AtLeast: r.minutes(24 * 60), AtMost: r.minutes(48*60, 72*60), WarmUp: r.minutes(0, 120)}
		b.Others[0].Percent = quantity.NewPercent(0.1)
	}
	return b
}

// boiled is bagels.
func (r draw) boiled() Bake {
	b := r.yeasted()
	b.Loaves = r.loaves(bake.Bagel, 90, 110)
	b.Oven = OvenWork{Temperature: r.celsius(220, 230), Together: pick(r, 0, 4)}
	if b.Retard = nil; r.in(2) {
		b.Retard = r.retard()
	}
	return b
}

// weighed is a bread by weights.
func (r draw) weighed() Bake {
	b := hall()
	b.Flours = []Ingredient{{Name: "wheat bread flour", Weight: quantity.Grams(450), Kind: dough.KindWheat},
		{Name: "whole rye flour", Weight: quantity.Grams(50), Kind: dough.KindWholeRye}}
	b.Liquids = []Ingredient{{Name: "water", Weight: quantity.Grams(350)}}
	b.Salt, b.SaltWeight = quantity.Percent{}, quantity.Grams(10)
	l := *b.Levain
	l.Prefermented, l.Weight, l.CultureAtHand = quantity.Percent{}, quantity.Grams(100), quantity.Mass{}
	l.RipeNow = r.in(2)
	b.Levain, b.Loaves, b.Retard = &l, Loaves{Pieces: pick(r, 0, 1, 2)}, r.retard()
	b.PerLoaf = r.in(2)
	b.Oven = r.oven(230, 245)
	return b
}

// has lists what a day drawn has of what a generator may miss.
func (d drawnDay) has() (out []string) {
	add := func(when bool, what string) {
		if when && !slices.Contains(out, what) {
			out = append(out, what)
		}
	}
	k, levains := d.Kitchen, map[string]int{}
	add(len(d.Bakes) == 1, "one bread")
	add(len(d.Bakes) > 3, "four breads")
	add(len(k.Away) > 0, "absences")
	add(len(k.Mixers) > 1, "two mixers")
	add(k.Oven.Decks > 1, "two decks")
	add(k.Hands > 1, "two pairs of hands")
	add(k.Altitude.Meters() > 1000, "altitude")
	for _, b := range d.Bakes {
		add(b.Retard != nil, "a retard")
		add(b.Retard != nil && b.Retard.Undivided, "dough in the cold undivided")
		add(b.Retard != nil && k.RefrigeratorPlaces > 0, "limited places")
		add(!b.Bulk.Box.IsZero() && k.BoxPlaces > 0, "a limited box")
		add(!b.Oven.Then.IsZero(), "falling heat")
		add(b.Bulk.Lamination != nil, "a lamination")
		add(b.Loaves.Style == bake.Bagel, "boils")
		add(b.Loaves.toOrder(), "flat breads")
		add(b.PerLoaf, "weights of a loaf")
		add(!b.Flours[0].AtHand.IsZero(), "flour at hand")
		for _, p := range b.Preferments {
			add(p.Kind == dough.OldDough, "old dough")
			add(p.computed(), "a poolish by its clock")
		}
		for _, s := range b.Soakers {
			add(s.Kind == dough.Scald, "a scald")
		}
		for _, i := range b.Inclusions {
			add(i.At != 0 || i.Fold != 0, "fillings")
		}
		if l := b.Levain; l != nil {
			add(l.RipeNow, "ripe levain")
			add(l.FedAgo > 0, "levain fed before")
			if levains[l.Name]++; l.Name != "" {
				add(levains[l.Name] > 1, "a shared levain")
			}
		}
	}
	add(d.Wanted.IsZero() && len(d.Bakes) > 1, "two wanted times")
	add(d.now.Month() == time.October, "clocks put back")
	return out
}
