package bakeday

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

func minutesOf(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }

// A bake that says nothing of its oven is baked by the guide values of its style, and says that they are that.
func TestTheOvenByGuideValues(t *testing.T) {
	b := hall()
	b.Oven = OvenWork{}
	d := plan(t, b)
	if !d.Possible() {
		t.Fatal(d.Data().Why)
	}
	guide, err := bake.OvenPiece{Dough: d.Batch.ScalingWeight(), Cold: true}.BakeTime()
	if err != nil {
		t.Fatal(err)
	}
	o := d.Data().Oven
	whole := o.Covered + o.Uncovered
	if off := whole.Duration() - guide.Time.Likely; off > time.Minute || off < -time.Minute || o.Covered != minutesOf(15) {
		t.Errorf("%v covered and %v uncovered, the guide says %v", o.Covered, o.Uncovered, guide.Time)
	}
	if o.Temperature != quantity.Celsius(250) || o.Then != quantity.Celsius(220) || !o.GuideTime ||
		o.Preheat != minutesOf(50) {
		t.Errorf("%+v", o)
	}
	if o.Takes.Early >= o.Takes.Likely || o.Takes.Late <= o.Takes.Likely {
		t.Errorf("one round takes %v", o.Takes)
	}
	text := d.Report().Text(report.Options{})
	for _, want := range []string{"the time is a guide value", "then set the oven to 220 °C"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said", want)
		}
	}
	bakes := step(t, d, "bake-1")
	if got := quantity.Elapsed(bakes.End.Sub(bakes.Start)); got != whole {
		t.Errorf("planned for %v", got)
	}
	// Planned again as it stands there it is the same.
	again, err := d.Bake.Plan(t.Context(), wednesday(t))
	if err != nil || again.Data().Oven.Covered != o.Covered || again.Data().Oven.Uncovered != o.Uncovered {
		t.Error(again.Data().Oven, err)
	}
}

// What the baker gives stays; what is left out follows.
func TestTheOvenAsGiven(t *testing.T) {
	for name, c := range map[string]struct {
		oven               OvenWork
		style              bake.Style
		covered, uncovered float64 // minutes; negative: at least so many
		preheat            float64
		guide              bool
	}{
		"all": {OvenWork{Covered: minutesOf(22), Uncovered: minutesOf(20), Preheat: minutesOf(30), Pots: 2},
			bake.LeanHearth, 22, 20, 30, false},
		"no lid":       {OvenWork{Uncovered: minutesOf(20)}, bake.LeanHearth, 0, 20, 50, false},
		"covered only": {OvenWork{Covered: minutesOf(12)}, bake.LeanHearth, 12, -25, 50, true},
		"pots":         {OvenWork{Pots: 6}, bake.LeanHearth, 22, -20, 45, true},
		"one pot":      {OvenWork{Pots: 1}, bake.LeanHearth, 22, -20, 45, true},
		"a tin":        {OvenWork{}, bake.Pan, 8, -15, 20, true},
		"a tray":       {OvenWork{Vessel: bake.Tray}, bake.LeanHearth, 15, -25, 20, true},
	} {
		b := hall()
		b.Loaves.Style, b.Loaves.Shape, b.Oven = c.style, bake.UsualShape, c.oven
		d := plan(t, b)
		o := d.Data().Oven
		un := o.Uncovered.Duration().Minutes()
		if name == "a tin" {
			if o.Covered.Duration().Minutes() > 10 {
				t.Errorf("%s: %v with steam", name, o.Covered)
			}
		} else if !(math.Abs(o.Covered.Duration().Minutes()-c.covered) <= 0.01) {
			t.Errorf("%s: covered %v", name, o.Covered)
		}
		if c.uncovered >= 0 && un != c.uncovered || c.uncovered < 0 && un < -c.uncovered {
			t.Errorf("%s: uncovered %v", name, o.Uncovered)
		}
		if o.GuideTime != c.guide || o.Preheat.Duration().Minutes() != c.preheat {
			t.Errorf("%s: %+v", name, o)
		}
	}
}

// Hands go to the oven at their minutes, in every round, in the plan and its calendar.
func TestTendingTheOven(t *testing.T) {
	b := hall()
	b.Oven.RescoreAfter, b.Oven.TurnAfter, b.Oven.Then = minutesOf(6), minutesOf(32), quantity.Celsius(215)
	d := plan(t, b)
	var got []string
	events := d.Data().CalendarEvents()
	for i, s := range d.Data().Steps {
		if s.Kind != schedule.Tend {
			continue
		}
		round := step(t, d, nth(idBake, s.Number-1))
		after := s.Start.Sub(round.Start)
		got = append(got, s.ID+" "+s.Phase.String()+" "+after.String()+": "+s.Name.String())
		if !s.Hands || s.End.Sub(s.Start) != time.Minute || s.Start.After(round.End) ||
			s.LatestStart.Sub(round.LatestStart) != after || s.EarliestStart.Sub(round.EarliestStart) != after {
			t.Errorf("%+v", s)
		}
		for k, w := range s.Windows {
			if w.From.Sub(round.Windows[k].From) != after || w.To.Sub(round.Windows[k].To) != after {
				t.Errorf("%s: %v", s.ID, s.Windows)
			}
		}
		if e := events[i]; e.Step != s.ID || len(e.Alarms) != 1 || e.Alarms[0].Before != 0 || !e.From.Equal(s.Start) {
			t.Errorf("event %+v", e)
		}
		if i > 0 && d.Data().Steps[i-1].Start.After(s.Start) {
			t.Errorf("%s is out of order", s.ID)
		}
	}
	want := []string{
		"rescore-1 score again 6m0s: open the cuts again, quickly, 1 of 3",
		"vent-1 vent 22m0s: lid off, away from you; set the oven to 215 °C, 1 of 3",
		"turn-1 turn 32m0s: turn it front to back, 1 of 3",
	}
	if len(got) != 9 {
		t.Fatal(got)
	}
	if diff := cmp.Diff(want, got[:3]); diff != "" {
		t.Error(diff)
	}
	if _, err := d.StepNamed("bake-2"); err != nil {
		t.Error(err)
	}
}

// What is impossible at the oven is said where it is written.
func TestImpossibleOvens(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*OvenWork)
		path   string
	}{
		"turned after the bake": {func(o *OvenWork) { o.TurnAfter = minutesOf(42) }, "oven.turn_after"},
		"scored before it":      {func(o *OvenWork) { o.RescoreAfter = minutesOf(-1) }, "oven.rescore_after"},
		"seconds":               {func(o *OvenWork) { o.Covered, o.Uncovered = 0, minutesOf(1) }, "oven.uncovered"},
		"pots of tin":           {func(o *OvenWork) { o.Vessel = bake.TinPan }, "oven.vessel"},
		"no vessel":             {func(o *OvenWork) { o.Vessel = 99 }, "oven.vessel"},
		"colder than bread":     {func(o *OvenWork) { o.Then = quantity.Celsius(80) }, "oven.then"},
		"cold":                  {func(o *OvenWork) { o.Temperature = quantity.Celsius(80) }, "oven.temperature"},
		"covered for too long":  {func(o *OvenWork) { o.Covered, o.Uncovered = minutesOf(120), 0 }, "oven.covered"},
	} {
		b := hall()
		c.change(&b.Oven)
		_, err := b.Plan(t.Context(), wednesday(t))
		all := quantity.InputErrors(err)
		if len(all) == 0 || all[0].Path != c.path {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A piece of another size than the guide times are for is planned all the same.
func TestAGuideTimeOutsideItsData(t *testing.T) {
	b := hall()
	b.Loaves.Baked, b.Loaves.Pieces, b.Oven = quantity.Grams(200), 2, OvenWork{}
	d := plan(t, b)
	if !d.Baking.Program.Extrapolated || !d.Possible() {
		t.Errorf("%+v", d.Baking.Program)
	}
	narrow := plan(t, hall()).Baking.Program
	if narrow.Extrapolated {
		t.Error("a loaf of 780 g is within the data")
	}
}

// What a kitchen may bake at all its oven may bake, in rounds that a day can hold.
func TestManyLoaves(t *testing.T) {
	b := rolls()
	b.Loaves, b.Oven = Loaves{Pieces: 1000, Baked: quantity.Grams(70), Style: bake.SoftRoll,
		Warm: true}, OvenWork{Together: 250}
	d := plan(t, b)
	if d.Baking.Rounds != 4 || d.Baking.Program.Rounds != 4 {
		t.Errorf("%d rounds, the program has %d", d.Baking.Rounds, d.Baking.Program.Rounds)
	}
	b.Oven.Together = 10
	if all := quantity.InputErrors(errOf(b.Plan(t.Context(), wednesday(t)))); len(all) != 1 ||
		all[0].Path != "oven.together" {
		t.Error(all)
	}
}

func errOf(_ Day, err error) error { return err }
