package bakeday

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

// Every lever is moved over its points, each with every other, and nothing else is touched.
func TestLeversAreMovedOverTheirPoints(t *testing.T) {
	hours := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Hour) }
	b := hall()
	b.Levers = Levers{Retard: []quantity.Elapsed{hours(6), hours(20)}}
	all := b.settings()
	if len(all) != 2 || *all[0].Retard != *b.Retard || all[1].Retard.AtLeast != hours(6) ||
		all[1].Retard.AtMost != hours(20) {
		t.Errorf("the retard: %+v", all)
	}
	if b.Retard.AtLeast == hours(6) {
		t.Error("the bake itself was changed")
	}
	points := func(set func(*Levers), read func(Bake) float64) []float64 {
		c := hall()
		set(&c.Levers)
		var out []float64
		for _, s := range c.settings() {
			out = append(out, read(s))
		}
		return out
	}
	percents := func(a, b float64) []quantity.Percent {
		return []quantity.Percent{quantity.NewPercent(a), quantity.NewPercent(b)}
	}
	degrees := func(a, b float64) []quantity.Temperature {
		return []quantity.Temperature{quantity.Celsius(a), quantity.Celsius(b)}
	}
	for name, c := range map[string]struct{ got, want []float64 }{
		"prefermented": {points(func(l *Levers) { l.Prefermented = percents(8, 20) },
			func(b Bake) float64 { return b.Levain.Prefermented.Points() }), []float64{8, 11, 14, 17, 20}},
		"inoculation": {points(func(l *Levers) { l.Inoculation = percents(20, 80) },
			func(b Bake) float64 { return b.Levain.Inoculation.Points() }), []float64{20, 40, 60, 80}},
		"temperature": {points(func(l *Levers) { l.Temperature = degrees(23, 26) },
			func(b Bake) float64 { return b.Mixing.Temperature.Celsius() }), []float64{23, 24, 25, 26}},
		"box": {points(func(l *Levers) { l.Box = degrees(24, 30) },
			func(b Bake) float64 { return b.Bulk.Box.Celsius() }), []float64{24, 26, 28, 30}},
	} {
		if diff := cmp.Diff(c.want, c.got); diff != "" {
			t.Error(name, diff)
		}
	}
	b = hall()
	b.Levers = Levers{Prefermented: percents(8, 20), Inoculation: percents(20, 80), Temperature: degrees(23, 26)}
	if got := len(b.settings()); got != 5*4*4 {
		t.Errorf("%d settings of three levers", got)
	}
}

// What speaks against a plan is counted as the documentation says: by the minute, by the share not survived, by how far
// a lever was moved.
func TestPointsAgainst(t *testing.T) {
	b := hall()
	b.Levers.Prefermented = []quantity.Percent{quantity.NewPercent(2), quantity.NewPercent(42)}
	d := plan(t, b)
	changed := b
	levain := *b.Levain
	levain.Prefermented = quantity.NewPercent(22) // of 12, a quarter of the lever
	changed.Levain = &levain

	minutes := 0.0
	for _, s := range d.Data().Steps {
		for at := s.Start; s.Hands && at.Before(s.End); at = at.Add(time.Minute) {
			if at.Hour() < 7 || at.Hour() >= 21 {
				minutes++
			}
		}
	}
	if c := b.choice(d, b); c.Points != minutes || len(c.Changes) != 0 {
		t.Errorf("%v points for %v minutes: %v", c.Points, minutes, c.Against)
	}
	c := b.choice(d, changed)
	if c.Points != minutes+5 || len(c.Changes) != 1 || c.Changes[0].Lever != PrefermentedLever {
		t.Errorf("%v points for %v minutes and a quarter of a lever: %v", c.Points, minutes, c.Changes)
	}
	d.Careful, d.Robust.Survives, d.Robust.Share = false, false, 0.4
	if c := b.choice(d, b); !(math.Abs(c.Points-minutes-120) <= 1e-9) || c.Against[0].Drawback != Fragile ||
		c.Against[0].Words.ID() != "bakeday.against_fragile" {
		t.Errorf("%v points for %v minutes and 40 %% survived: %v", c.Points, minutes, c.Against)
	}
	d.Robust.Share = 0.001
	if c := b.choice(d, b); c.Against[0].Words.ID() != "bakeday.against_brittle" {
		t.Error(c.Against)
	}
	d.Timetable.Verdict = 2
	if c := b.choice(d, b); c.Points != 1000 || c.Against[0].Drawback != NoTimetable {
		t.Errorf("%v points for nothing: %v", c.Points, c.Against)
	}
}

func TestAMoveTellsItsLever(t *testing.T) {
	b := hall()
	b.Levers.Temperature = []quantity.Temperature{quantity.Celsius(22), quantity.Celsius(30)}
	changed := b
	changed.Mixing.Temperature = quantity.Celsius(24)
	changed.Bulk.Box = quantity.Celsius(28)
	r := *b.Retard
	r.AtMost += quantity.Elapsed(time.Hour)
	changed.Retard = &r
	var got []string
	by := map[Lever]float64{}
	for _, m := range b.moved(changed) {
		got = append(got, m.Lever.String()+": "+m.String())
		by[m.Lever] = m.by
	}
	want := []string{
		"dough temperature: dough at 24 °C instead of 26 °C",
		"proofing box: bulk at 28 °C instead of the room",
		"retard: retard from 8h to 15h instead of 8h to 14h",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if !(math.Abs(by[TemperatureLever]+0.25) <= 1e-9) || by[BoxLever] != 1 || by[RetardLever] != 0.5 {
		t.Error(by)
	}
	again := changed
	again.Bulk.Box = quantity.Celsius(26)
	changed.Levers.Box = []quantity.Temperature{quantity.Celsius(24), quantity.Celsius(28)}
	if m := changed.moved(again); len(m) != 1 || !(math.Abs(m[0].by+0.5) <= 1e-9) {
		t.Error(m)
	}
}
