package bakeday

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// A bread that bakes in an oven which another one has left hot is not told to heat it from the room, and not that it
// is heated early; the first of them is.
func TestTheOvenThatIsHotAlready(t *testing.T) {
	o := Order{Kitchen: hall().Kitchen, Wanted: wishAt(time.Date(2026, 11, 29, 15, 0, 0, 0, time.UTC))}
	o.Kitchen.Away, o.Kitchen.Hands = nil, 2
	for i, name := range []string{"White", "Rye", "Buns"} {
		b := rolls()
		b.Kitchen, b.Name, b.Wanted, b.Loaves.Pieces, b.Mixing.Mixer = Kitchen{}, name, Wish{}, 4, mixing.Hand
		b.Oven = OvenWork{Temperature: quantity.Celsius([]float64{230, 250, 230}[i]),
			Preheat:   quantity.Elapsed(30 * time.Minute),
			Uncovered: quantity.Elapsed(20 * time.Minute)}
		o.Bakes = append(o.Bakes, b)
	}
	k := planAll(t, o)
	page := strings.Join(strings.Fields(k.Report().Text(report.Options{})), " ")
	said := func(d Day) string {
		var all []string
		for _, m := range d.heating() {
			all = append(all, m.String())
		}
		return strings.Join(all, "; ")
	}
	hot := 0
	for _, d := range k.Breads {
		got := said(d)
		var own StepData
		for _, s := range k.ownSteps(d) {
			if s.Kind == schedule.Preheat {
				own = s
			}
		}
		after, ok := "", false
		for _, s := range k.Timetable.Steps {
			if s.Kind == schedule.Bake && s.Bread != d.Bake.Name && s.End.Equal(own.Start) {
				after, ok = s.Bread, true
			}
		}
		switch {
		case ok:
			hot++
			if want := "the oven is hot from " + after + ": " + own.Name.String(); got != want {
				t.Errorf("%s: %s\nwant %s", d.Bake.Name, got, want)
			}
		case !strings.HasPrefix(got, "preheat "):
			t.Errorf("%s: %s", d.Bake.Name, got)
		}
		if !strings.Contains(page, strings.Join(strings.Fields(got), " ")) && !strings.Contains(got, ";") {
			t.Errorf("%q is not on the page", got)
		}
	}
	if hot == 0 {
		t.Error("each bread heats the oven anew")
	}
	one := plan(t, hall())
	if got := said(one); got != "preheat oven and pots 45m to 245 °C" {
		t.Error(got)
	}
	early := rolls()
	early.Oven = OvenWork{Temperature: quantity.Celsius(210), Preheat: quantity.Elapsed(20 * time.Minute),
		Uncovered: quantity.Elapsed(16 * time.Minute)}
	d := plan(t, early)
	heat, _ := d.Timetable.Step(idHeat)
	longer := quantity.Elapsed(heat.End.Sub(heat.Start)) - d.Bake.Oven.Preheat
	want := "preheat the oven 20m to 210 °C"
	if longer > quantity.Elapsed(5*time.Minute) {
		want += "; heated from " + working.Say("%v", heat.Start.In(d.Zone)).String() + " on, " + longer.String() +
			" longer than it takes: an early dough then finds it hot"
	} else {
		t.Error("it is not heated early")
	}
	if got := said(d); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// fedByOneLevain are two breads of one levain.
func fedByOneLevain() Order {
	o := Order{Kitchen: hall().Kitchen}
	o.Kitchen.Away = nil
	for _, name := range []string{"Country", "Rye"} {
		b := hall()
		l := *b.Levain
		l.Name, l.CultureAtHand = "market levain", quantity.Mass{}
		b.Levain, b.Name, b.Kitchen, b.Loaves.Pieces = &l, name, Kitchen{}, 2
		o.Bakes = append(o.Bakes, b)
	}
	return o
}

// One levain for several breads is fed in one step, which names them; how long a dough is in the cold is what the
// timetable has; and a levain that is ripe does not ripen.
func TestStepsSayWhatIsDone(t *testing.T) {
	k := planAll(t, fedByOneLevain())
	fed := 0
	for _, s := range k.Data().Steps {
		if s.Kind == schedule.Feed {
			if fed++; s.Name.String() != "feed market levain, for Country and Rye" {
				t.Error(s.Name)
			}
		}
	}
	if fed != 1 {
		t.Errorf("fed %d times", fed)
	}
	for _, b := range k.Data().Breads {
		for _, s := range b.Steps {
			if s.Kind == schedule.Retard && s.Takes != b.Retard.For {
				t.Errorf("%v in the cold, told are %v", s.Takes, b.Retard.For)
			}
		}
	}
	morning := wednesday(t)
	morning.Now = time.Date(2026, 11, 26, 7, 0, 0, 0, time.UTC)
	for now, want := range map[bool]string{true: "the levain stands ripe", false: "levain ripens"} {
		ripe := ripeAt("2026-11-27 12:30")
		if ripe.Levain.RipeNow = now; !now {
			ripe.Levain.FedAgo, ripe.Levain.Inoculation = quantity.Elapsed(5*time.Hour), quantity.NewPercent(40)
		}
		d, err := ripe.Plan(context.Background(), morning)
		s, ok := d.Timetable.Step(idRipen)
		if err != nil || !ok || s.Name.String() != want {
			t.Errorf("%v, %v, want %s", s.Name, err, want)
		}
	}
}

// Five minutes of a hot oven are not worth a word, six are.
func TestHeatedEarlierThanItHasToBe(t *testing.T) {
	d := plan(t, rolls())
	start := time.Date(2026, 11, 29, 13, 0, 0, 0, d.Zone)
	for longer, want := range map[time.Duration]int{0: 0, 5: 0, 6: 1} {
		heat := schedule.Timed{Start: start, End: start.Add(d.Bake.Oven.Preheat.Duration() + longer*time.Minute)}
		if got := d.heatedEarly(heat, true); len(got) != want {
			t.Errorf("%d minutes longer: %v", longer, got)
		}
		if got := d.heatedEarly(heat, false); got != nil {
			t.Errorf("without a timetable: %v", got)
		}
	}
}
