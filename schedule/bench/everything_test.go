package bench_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// What was not seen of a dough is taken from the plan, as a baker would have written it down, and what was seen stays.
func TestADoughAsPlanned(t *testing.T) {
	b := hall(t)
	b.Kitchen.Night, b.Kitchen.Day = quantity.Celsius(17), quantity.Celsius(23.3)
	b.Loaves.Style = bake.Pan
	k := alone(t, b, at(3, 20, 0))
	day := k.Breads[0].Day
	when := begins(t, k, "hall", "bulk")
	m := bench.DoughMixed{Dough: quantity.Celsius(26)}.AsPlanned(day, when)
	if m.Style != bake.Pan || m.Mixer != mixing.Planetary || m.Altitude != b.Kitchen.Altitude ||
		m.Inoculation != quantity.NewPercent(12) || m.RaisedBy() != bench.ByLevain || m.Salt != quantity.NewPercent(2.1) {
		t.Errorf("%+v", m)
	}
	if sum := m.FlourWeight.Add(m.WaterWeight).Add(m.LevainWeight); sum.Compare(m.Weight) >= 0 ||
		sum.Compare(m.Weight.Scale(quantity.Grams(95), quantity.Grams(100))) < 0 { // salt alone is missing
		t.Errorf("%v of flour, water and levain in a dough of %v", sum, m.Weight)
	}
	room := m.Room.Celsius()
	if room < 17 || room > 23.3 || !(math.Abs(10*room-math.Round(10*room)) <= 1e-2) {
		t.Errorf("a room of %v between 17 and 23.3 °C", m.Room)
	}
	rich := b
	rich.Others = []bakeday.Ingredient{{Name: "egg", Percent: quantity.NewPercent(10), Kind: dough.KindEgg},
		{Name: "sugar", Percent: quantity.NewPercent(15), Kind: dough.KindSweetener}}
	if m := (bench.DoughMixed{Dough: quantity.Celsius(26)}).AsPlanned(
		alone(t, rich, at(3, 20, 0)).Breads[0].Day, when); !m.Enriched || m.Sugar != quantity.NewPercent(15) {
		t.Errorf("a dough with egg and sugar: %+v", m)
	}
	seen := bench.DoughMixed{Dough: quantity.Celsius(26), Style: bake.SoftRoll, Mixer: mixing.Hand,
		Room: quantity.Celsius(20), FlourWeight: quantity.Grams(1234), Rise: quantity.NewPercent(40)}
	if m := seen.AsPlanned(day, when); m.Style != seen.Style || m.Mixer != seen.Mixer || m.Room != seen.Room ||
		m.FlourWeight != seen.FlourWeight || m.Rise != seen.Rise {
		t.Errorf("%+v of %+v", m, seen)
	}
}

// What one log teaches of mixer, culture and oven is told and derived, each of them; a half-life is of a day to a year.
func TestEverythingThatIsLearned(t *testing.T) {
	o := measured(at(1, 6, 0), mixing.Planetary)
	o.Mix.LevainWeight, o.Mix.Levain = quantity.Grams(300), quantity.Celsius(20)
	done := saw(o.At.Add(3*time.Hour), bench.SawReady, func(o *bench.Observation) {
		o.Ready = &bench.ReadyDough{Rise: quantity.NewPercent(28)}
	})
	all := bench.Observations{o, done, weighed(o.At.Add(9*time.Hour), 900, 774)}
	batch, why := bench.LoggedBake{Mixed: o.At, Mix: *o.Mix}.Batch()
	if !why.IsZero() || len(batch.Ingredients) != 3 || batch.Ingredients[2].Mass != quantity.Grams(300) {
		t.Errorf("%+v, %v", batch.Ingredients, why)
	}
	for days, ok := range map[float64]bool{0: true, 0.9: false, 1: true, 366: true, 366.1: false} {
		l, err := all.Learn(time.Duration(days * 24 * float64(time.Hour)))
		if (err == nil) != ok {
			t.Errorf("a half-life of %v days: %v", days, err)
		}
		if !ok {
			continue
		}
		if n := len(l.Workings()); n != 3 {
			t.Errorf("%d derivations of a mixer, a culture and an oven", n)
		}
		page := l.Report().Text(report.Options{Width: 100})
		for _, want := range []string{"a minute at the first speed warms", "a minute at the second speed warms"} {
			if strings.Count(page, want) != 1 {
				t.Errorf("%q is told %d times:\n%s", want, strings.Count(page, want), page)
			}
		}
	}
	lines, err := all.Lines()
	if err != nil {
		t.Fatal(err)
	}
	kept, err := bench.LogReading{}.From(strings.NewReader("\ufeff" + string(lines)))
	if err != nil || len(kept.Entries) != 3 || len(kept.Unreadable) > 0 {
		t.Errorf("as an editor keeps it: %d entries, %v, %v", len(kept.Entries), kept.Unreadable, err)
	}
}

// Whoever says that a step is done, and not which, means the one that is due; what is done and over is not in the data.
func TestTheStepThatIsDue(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	feed, mix := start.Steps[0], bakeday.StepData{}
	for _, s := range start.Steps {
		if s.ID == "mix-1" {
			mix = s
		}
	}
	k := alone(t, hall(t), feed.End.Add(time.Minute), plan)
	if s, err := k.StepNamed(""); err != nil || s.ID != feed.ID {
		t.Errorf("%s is meant, %v; want %s", s.ID, err, feed.ID)
	}
	text, err := json.Marshal(moment(t, mix.Start.Add(time.Minute), plan, ticked(feed.ID, feed.End),
		ticked("mix-1", mix.Start.Add(time.Minute))))
	if err != nil {
		t.Fatal(err)
	}
	var data struct {
		Steps []bakeday.StepData `json:"steps"`
	}
	if err := json.Unmarshal(text, &data); err != nil || len(data.Steps) == 0 {
		t.Fatal(len(data.Steps), err)
	}
	for _, s := range data.Steps {
		if s.ID == feed.ID || s.ID == "mix-1" || !s.End.After(mix.Start) {
			t.Errorf("%s is still to come, of %v", s.ID, s.End)
		}
	}
}

// A core counts for the round in which it was read, and not one that was read before the loaf went in; a step that was
// done a little early is not still to come.
func TestWhatIsOfThisRound(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bulk, _ := start.Step("bulk")
	load, _ := start.Step("bake-1")
	for minutes, told := range map[int]bool{-20: false, 12: true} {
		read := saw(load.Start.Add(time.Duration(minutes)*time.Minute), bench.SawCore, func(o *bench.Observation) {
			o.Core = &bench.SeenCore{Core: quantity.Celsius(71.5)}
		})
		m := moment(t, load.Start.Add(15*time.Minute), plan, mixed(bulk.Start, 26), read)
		if page := m.Report().Text(report.Options{}); strings.Contains(page, "71.5 °C") != told {
			t.Errorf("read %d minutes after the loaf went in, told %v:\n%s", minutes, !told, page)
		}
	}
	feed := start.Steps[0]
	text, err := json.Marshal(moment(t, feed.End.Add(-time.Minute), plan, ticked(feed.ID, feed.End.Add(-2*time.Minute))))
	if err != nil {
		t.Fatal(err)
	}
	var data struct {
		Steps []bakeday.StepData `json:"steps"`
	}
	if err := json.Unmarshal(text, &data); err != nil || len(data.Steps) == 0 || data.Steps[0].ID == feed.ID {
		t.Errorf("%+v, %v", data.Steps, err)
	}
}
