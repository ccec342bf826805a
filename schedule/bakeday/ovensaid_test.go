package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
)

// The oven's page says how long a bread is baked covered and how long not; of what is not covered only the one time.
func TestHowLongABreadIsCovered(t *testing.T) {
	for want, set := range map[string]func(*OvenWork){
		"3 rounds of 2, 10m between them to reheat: 22m covered, then about 20m uncovered": func(*OvenWork) {},
		"6 in one round: 22m with steam or a cover, then about 20m without":                func(o *OvenWork) { o.Pots = 0 },
		"6 in one round: about 42m": func(o *OvenWork) {
			o.Pots, o.Covered, o.Uncovered = 0, 0, minutesOf(42)
		},
	} {
		b := hall()
		set(&b.Oven)
		page := plan(t, b).Report().Section("oven")
		text := report.Report{Sections: []report.Section{page}}.Text(report.Options{Width: 200})
		found := false
		for line := range strings.Lines(text) {
			found = found || strings.HasSuffix(strings.TrimSpace(line), want)
		}
		if !found {
			t.Errorf("not %q:\n%s", want, text)
		}
	}
}

// An oven that another bread leaves hot is told with where it goes from there, and with pots only if there are some.
func TestAnOvenThatIsHotAlready(t *testing.T) {
	at := func(minute int) time.Time {
		return time.Date(2026, 11, 28, 10, 0, 0, 0, time.UTC).Add(minutes(minute).Duration())
	}
	loaf := schedule.Timed{Label: schedule.Label{ID: "Loaf/bake-1", Bread: "Loaf", Kind: schedule.Bake}, Start: at(-10),
		End: at(37)}
	load := schedule.Timed{Label: schedule.Label{ID: "bake-1", Kind: schedule.Bake}, Start: at(75), End: at(95)}
	for _, c := range []struct {
		celsius, then float64
		pots          int
		want          string
	}{
		{220, 0, 0, "let the oven fall from 245 °C to 220 °C"},
		{245, 0, 0, "the oven stays at 245 °C"},
		{260, 0, 0, "heat the oven on from 245 °C to 260 °C"},
		{220, 210, 0, "heat the oven on from 210 °C to 220 °C"},
		{220, 0, 1, "let the oven fall from 245 °C to 220 °C, with the pots in it"},
	} {
		before, rolls := Day{Bake: Bake{Name: "Loaf"}}, Day{Bake: Bake{Name: "Rolls"}}
		before.Bake.Oven.Temperature = quantity.Celsius(245)
		if c.then > 0 {
			before.Bake.Oven.Then = quantity.Celsius(c.then)
		}
		rolls.Bake.Oven.Temperature, rolls.Bake.Oven.Pots = quantity.Celsius(c.celsius), c.pots
		rolls.Timetable.Steps = []schedule.Timed{load}
		k := KitchenDay{Zone: time.UTC, Breads: []Day{before, rolls}}
		k.Timetable.Steps = []schedule.Timed{loaf}
		heat, from := k.fromHot(StepData{Bread: "Rolls", Start: at(30), End: at(75)}, rolls)
		if heat.Name.String() != c.want || from != "Loaf" || !heat.Start.Equal(at(37)) || !heat.End.Equal(at(75)) ||
			heat.Takes != minutes(38) {
			t.Errorf("after %s: %q, from %v to %v, %v", from, heat.Name, heat.Start, heat.End, heat.Takes)
		}
		alone := StepData{Bread: "Rolls", Start: at(37), End: at(75)}
		if _, from := k.fromHot(alone, rolls); from != "" {
			t.Errorf("heated when the %s is out already, and on from it", from)
		}
	}
}
