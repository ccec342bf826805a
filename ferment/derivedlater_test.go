package ferment_test

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// Doughs whose temperature changes, or that hold two kinds of cells, are derived from a table of what each stretch
// makes; where the late end is too far off, up to the likely time.
func TestFollowedDoughsAreDerived(t *testing.T) {
	changing := with(good(), func(b *ferment.Bulk) { b.History = corners(t, 0, 26, 2, 24.5, 4, 21, 9, 20) })
	mixed := with(good(), func(b *ferment.Bulk) {
		b.Yeast = ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.6)}
	})
	handed := with(good(), func(b *ferment.Bulk) {
		poolish := ferment.Ripening{Yeast: ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)},
			Hydration: pct(100), History: ferment.Constant(quantity.Celsius(20))}
		levain := ferment.Ripening{Seed: pct(10), Hydration: pct(60), History: ferment.Constant(quantity.Celsius(25))}
		b.Inoculation, b.Yeast = pct(2.5), ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.05)}
		b.Preferments = []ferment.HandedOn{{Flour: pct(15), Of: poolish, Ripened: quantity.Elapsed(12 * time.Hour)},
			{Flour: pct(5), Of: levain, Ripened: quantity.Elapsed(6 * time.Hour)}}
	})
	soon := with(yeasted(ferment.InstantYeast, 4), func(b *ferment.Bulk) { b.History = corners(t, 0, 30, 1, 28) })
	cold := with(good(), func(b *ferment.Bulk) { b.History = corners(t, 0, 20, 1, 6, 40, 1.5) })
	all := map[string]working.Working{}
	for name, b := range map[string]ferment.Bulk{"changing": changing, "levain and yeast": mixed, "all together": handed,
		"soon": soon, "late end not within thirty days": cold} {
		all[name] = estimate(t, b).Working()
	}
	derived(t, "followed.txt", all)
}

// An amount, a preferment and a flavor are derived.
func TestAmountsPrefermentsAndFlavorAreDerived(t *testing.T) {
	all := map[string]working.Working{}
	for name, b := range map[string]ferment.Bulk{
		"amount of levain":   with(good(), func(b *ferment.Bulk) { b.History = corners(t, 0, 26, 6, 22) }),
		"amount of yeast":    yeasted(ferment.FreshYeast, 1),
		"yeast for a levain": with(good(), func(b *ferment.Bulk) { b.Yeast.Kind = ferment.InstantYeast }),
	} {
		a, err := b.AmountFor(3*time.Hour + 20*time.Minute)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = a.Working()
	}
	for name, r := range map[string]ferment.Ripening{
		"levain ripening": {Seed: pct(20), Hydration: pct(100), History: ferment.Constant(quantity.Celsius(24))},
		"cold seed, cooling": {Seed: pct(40), ColdSeed: true, Hydration: pct(55), WholeGrain: pct(30),
			History: corners(t, 0, 26, 5, 22)},
		"poolish": {Yeast: ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.1)}, Hydration: pct(100),
			History: ferment.Constant(quantity.Celsius(18))},
	} {
		r.Law = ferment.GasBalance()
		ripe, err := r.Ripe()
		if err != nil {
			t.Fatal(err)
		}
		all[name] = ripe.Working()
	}
	flavor, err := estimate(t, with(good(), func(b *ferment.Bulk) {
		b.History = corners(t, 0, 24, 4, 30)
	})).Flavor(5 * time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	all["flavor"] = flavor.Working()
	derived(t, "amounts.txt", all)
}

// dated puts a date on each bake, a week apart.
func dated(log []ferment.LoggedBulk) []ferment.LoggedBulk {
	for i := range log {
		log[i].On = time.Date(2026, 1, 4+7*i, 8, 0, 0, 0, time.UTC)
	}
	return log
}

// What bakes teach is derived bake by bake: the last two dozen, or all; how old ones fade where they are dated; and
// where none counts, nothing but what was known before. Doughs of such a culture are derived with what was learned.
func TestLessonsAreDerived(t *testing.T) {
	all := map[string]working.Working{}
	lesson := func(name string, l ferment.Learning) ferment.Culture {
		got := learn(t, l)
		all[name] = got.Working()
		return got.Culture
	}
	lesson("a first bake", ferment.Learning{Bakes: bakeLog(t, 1)})
	known := lesson("thirty bakes", ferment.Learning{Bakes: bakeLog(t, 30)})
	log := bakeLog(t, 16)
	copy(log[8:], slower(log[8:], 60))
	changed := dated(log)
	changed[2].On, changed[3].On = changed[3].On, changed[2].On
	lesson("dated bakes of a culture that changed", ferment.Learning{Bakes: changed, Person: "Ada", Name: "rye"})
	wild := slower(bakeLog(t, 1), 900)
	lesson("a wild bake after thirty", ferment.Learning{Bakes: wild, Prior: known, Robust: true})
	steady := with(good(), func(b *ferment.Bulk) { b.Culture, b.History = known, ferment.Constant(quantity.Celsius(19)) })
	all["a dough of the culture, steady"] = estimate(t, steady).Working()
	all["a dough of the culture, changing"] = estimate(t, with(steady, func(b *ferment.Bulk) {
		b.History, b.Kneading = corners(t, 0, 26, 3, 21), ferment.ByHand
	})).Working()
	derived(t, "lessons.txt", all)
}

// Readings of a dough are derived one by one, and its times start from what they say.
func TestDoughsThatWereReadAreDerived(t *testing.T) {
	read := func(b ferment.Bulk, readings ...ferment.RiseReading) working.Working {
		p, err := estimate(t, b).Update(readings...)
		if err != nil {
			t.Fatal(err)
		}
		return p.Working()
	}
	at := func(minutes int, rise float64) ferment.RiseReading {
		return ferment.RiseReading{At: quantity.Elapsed(time.Duration(minutes) * time.Minute), Rise: pct(rise)}
	}
	sure := at(200, 38)
	sure.Error = pct(1.5)
	derived(t, "read.txt", map[string]working.Working{
		"levain at 24 °C, read twice": read(with(good(), func(b *ferment.Bulk) {
			b.History = ferment.Constant(quantity.Celsius(24))
		}), at(120, 5), sure),
		"yeast, not risen": read(yeasted(ferment.InstantYeast, 0.4), at(60, -4)),
		"cooling levain dough": read(with(good(), func(b *ferment.Bulk) {
			b.History = corners(t, 0, 27, 4, 20)
		}), at(150, 40)),
		"levain and yeast, slow": read(both(10, 0.2), at(75, 8)),
	})
}

// How far a dough may rise before it is shaped is derived: to the total, from a rise that was given, from what was read
// of the dough, and where there is no such rise.
func TestShapingIsDerived(t *testing.T) {
	cold := ferment.Piece{Mass: quantity.Grams(900), Form: ferment.Round, Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.Refrigerator, For: quantity.Elapsed(9*time.Hour + 30*time.Minute + 20*time.Second)}
	p := ferment.Proof{Bulk: with(good(), func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(24)) }),
		Bench: quantity.Elapsed(30 * time.Minute), Stages: []ferment.Piece{cold}, Total: pct(80)}
	all := map[string]working.Working{}
	shape := func(name string, p ferment.Proof) {
		got, err := p.RiseBeforeShaping()
		if err != nil {
			t.Fatal(err)
		}
		all[name] = got.Working()
	}
	shape("to the total", p)
	given := p
	given.ShapeAt = pct(35)
	shape("at a rise that was given", given)
	warm := p
	warm.Stages = []ferment.Piece{cold, cold}
	warm.Stages[1].Into.Night, warm.Stages[1].Exposure = quantity.Celsius(27), ferment.Covered
	shape("too long in the warm", warm)
	warm.Stages = warm.Stages[1:]
	warm.Stages[0].For = quantity.Elapsed(40 * time.Hour)
	shape("two days in the warm", warm)
	for name, rise := range map[string]float64{"a dough ahead of its time": 50, "a dough behind its time": 2} {
		a := ferment.AskedDough{Bulk: p.Bulk, Cold: &p, Readings: []ferment.RiseReading{
			{At: quantity.Elapsed(150 * time.Minute), Rise: pct(rise)}}}
		a.Bulk.Rise = p.Total
		got, err := a.Answer()
		if err != nil {
			t.Fatal(err)
		}
		all[name] = got.Shape.Working()
	}
	derived(t, "shaping.txt", all)
}
