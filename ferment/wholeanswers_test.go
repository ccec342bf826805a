package ferment_test

import (
	"slices"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
)

// pager is an answer with a page.
type pager interface{ Report() report.Report }

// page is the page of an answer that there is.
func page[T pager](answer T, err error) report.Report {
	if err != nil {
		panic(err)
	}
	return answer.Report()
}

// What makes a dough ready at a time, each way with what it leads to, and on which side there is none.
func TestWholePagesOfAmountsAndTemperatures(t *testing.T) {
	c := quantity.Celsius
	drift := ferment.Relaxing{Start: c(25), Room: ferment.Room{Night: c(22)}}
	drifting := changed(func(b *ferment.Bulk) { b.History = history(t, drift) })
	dry, beside := yeasted(ferment.ActiveDryYeast, 1), both(10, 1)
	hours := func(h float64) time.Duration { return span(h).Duration() }
	mixed := time.Date(2026, 11, 28, 8, 15, 0, 0, time.UTC)
	ways := func(b ferment.Bulk, ready time.Duration, drift ferment.Relaxing) ferment.Ways {
		w, err := b.WaysTo(ready, drift)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	leaves := []leaf{
		{"levain for 6 h", page(good().AmountFor(hours(6)))},
		{"yeast for 3 h", page(dry.AmountFor(hours(3)))},
		{"yeast beside a levain for 4 h", page(beside.AmountFor(hours(4)))},
		{"levain for 10 minutes", page(good().AmountFor(10 * time.Minute))},
		{"levain for a week", page(good().AmountFor(hours(168)))},
		{"yeast beside a levain for a day", page(beside.AmountFor(hours(24)))},
		{"dough for 6 h", page(drifting.StartFor(hours(6), drift))},
		{"room for 6 h", page(drifting.RoomFor(hours(6), drift))},
		{"box for 6 h", page(good().HeldFor(hours(6)))},
		{"box for an hour", page(good().HeldFor(hours(1)))},
		{"box with yeast for 20 minutes", page(dry.HeldFor(20 * time.Minute))},
		{"box for four days", page(good().HeldFor(hours(96)))},
		{"room for an hour", page(drifting.RoomFor(hours(1), drift))},
		{"room for four days", page(drifting.RoomFor(hours(96), drift))},
		{"ways of a drifting dough", ways(drifting, hours(6), drift).ReportFrom(mixed)},
		{"ways of a dough in a box", ways(dry, hours(3), ferment.Relaxing{}).Report()},
		{"ways of a dough with a probe", ways(changed(func(b *ferment.Bulk) { b.History = probed(t, 25, 24) }), hours(6),
			drift).Report()},
		{"no way", ways(drifting, 15*time.Minute, drift).Report()},
	}
	for i := range leaves {
		leaves[i].page = brief(leaves[i].page)
	}
	keep(t, "inverses.txt", leaves...)
}

// Preferments: by hours and by the clock, stiff and soft, ripe soon, late and never.
func TestWholePagesOfPreferments(t *testing.T) {
	fed := time.Date(2026, 11, 27, 21, 40, 0, 0, time.UTC)
	ripe := func(seed, hydration, celsius float64) ferment.Ripeness {
		r, err := ferment.Ripening{Seed: pct(seed), Hydration: pct(hydration), Law: ferment.GasBalance(),
			History: ferment.Constant(quantity.Celsius(celsius))}.Ripe()
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	poolish, err := ferment.Ripening{Yeast: ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.2)},
		History: probed(t, 36, 35), Law: ferment.GasBalance()}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	keep(t, "preferments.txt",
		leaf{"levain", ripe(20, 100, 24).Report()},
		leaf{"levain, by the clock", ripe(20, 100, 24).ReportFrom(fed)},
		leaf{"of 60 % of water", ripe(20, 60, 24).Report()},
		leaf{"of 59.9 % of water", ripe(20, 59.9, 24).Report()},
		leaf{"in the refrigerator", ripe(33, 100, 4).ReportFrom(fed)},
		leaf{"too cold for its end", ripe(20, 100, 2).ReportFrom(fed)},
		leaf{"too cold for its peak", ripe(1, 100, 1.5).Report()},
		leaf{"frozen", ripe(1, 100, -1).Report()},
		leaf{"poolish with a probe", poolish.Report()},
		leaf{"none", ferment.Ripeness{}.Report()},
	)
}

// Shaping: for a rise that is found, for one that is given, for none; then on the bench, in the cold, in a room that
// warms in the day.
func TestWholePagesOfShaping(t *testing.T) {
	mixed := time.Date(2026, 11, 28, 17, 30, 0, 0, time.UTC)
	cold := ferment.Piece{Mass: quantity.Grams(900), Into: ferment.Room{Night: quantity.Celsius(4)}, For: span(12),
		Exposure: ferment.RefrigeratorBag, Crowded: true}
	bench := ferment.Piece{Mass: quantity.Grams(900), Exposure: ferment.Covered, For: span(1.5),
		Into: ferment.Room{Night: quantity.Celsius(18), Day: quantity.Celsius(25), Starts: span(17.5)}}
	shaped := func(change func(*ferment.Proof)) ferment.ShapeTarget {
		p := ferment.Proof{Bulk: good(), Bench: span(0.5), Stages: []ferment.Piece{cold, bench}, Total: pct(85)}
		change(&p)
		out, err := p.RiseBeforeShaping()
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	slow := changed(func(b *ferment.Bulk) { b.Inoculation, b.History = pct(0.5), ferment.Constant(quantity.Celsius(2)) })
	leaves := []leaf{
		{"as asked", shaped(func(*ferment.Proof) {}).ReportFrom(mixed)},
		{"at a rise that is given", shaped(func(p *ferment.Proof) { p.ShapeAt = pct(30) }).Report()},
		{"too late for any rise", shaped(func(p *ferment.Proof) { p.Stages[1].For, p.Total = span(20), pct(30) }).Report()},
		{"on the bench only", shaped(func(p *ferment.Proof) { p.Stages = nil }).Report()},
		{"without a bench", shaped(func(p *ferment.Proof) { p.Bench, p.Stages = 0, p.Stages[:1] }).Report()},
		{"never", shaped(func(p *ferment.Proof) { p.Bulk, p.Stages = slow, p.Stages[:1] }).Report()},
		{"none", ferment.ShapeTarget{}.Report()},
	}
	for i := range leaves {
		leaves[i].page.Sections = slices.DeleteFunc(leaves[i].page.Sections, func(s report.Section) bool {
			return s.Key == "rise"
		})
	}
	keep(t, "shaping.txt", leaves...)
}

// Readings of a dough: as expected, later, earlier, and too far off to be believed.
func TestWholePagesOfReadings(t *testing.T) {
	e := estimate(t, good())
	mixed := time.Date(2026, 11, 28, 8, 0, 0, 0, time.UTC)
	read := func(readings ...ferment.RiseReading) ferment.Progress {
		p, err := e.Update(readings...)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	at := func(hour, rise float64) ferment.RiseReading {
		return ferment.RiseReading{At: span(hour), Rise: pct(rise)}
	}
	keep(t, "read.txt",
		leaf{"later", brief(read(at(4, 10)).ReportFrom(mixed))},
		leaf{"earlier, by two readings", brief(read(at(3, 25), at(4, 45)).Report())},
		leaf{"far off", brief(read(at(4, 250)).Report())},
	)
}
