package bakeday

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// What stands in the way is told with the lengths that were used, the work that cannot be done while everybody sleeps
// among them: added to the end of the night they miss the wanted time by what the plan says.
func TestTheReasonsAddUp(t *testing.T) {
	b := rolls()
	b.Wanted, b.Oven = OnDay(time.Sunday, wallclock.MustClock("12:00")), OvenWork{}
	b.Others[0].Percent = pct(0.35)
	b.Loaves.FreshWithin = minutesOf(240)
	d, err := b.Plan(context.Background(), wednesday(t))
	if err != nil || d.Possible() {
		t.Fatal(err, d)
	}
	var sum time.Duration
	worked := false
	for _, r := range d.Data().Why.Rules {
		s, ok := stepOf(d.problem, r.Step)
		switch {
		case r.Rule != schedule.StepExact && r.Rule != schedule.StepMin || !ok:
		case s.Living:
			sum += s.Likely.Duration()
			if !strings.Contains(r.Words.String(), "likely takes "+s.Likely.String()) {
				t.Errorf("%q, reckoned with %v", r.Words, s.Likely)
			}
		default:
			sum += s.Min.Duration()
			worked = worked || s.Kind == schedule.Mix
		}
	}
	awake := time.Date(2026, 11, 29, 6, 30, 0, 0, d.Zone)
	short := d.Timetable.Conflict.Short.Duration()
	if off := awake.Add(sum).Sub(d.Wanted) - short; !worked || off < -time.Minute || off > time.Minute {
		t.Errorf("from %v on %v: misses by %v more than the %v that are told: %v", awake, sum, off, short,
			d.Data().Why.Rules)
	}
}

func stepOf(p schedule.Problem, id string) (schedule.DayStep, bool) {
	for _, s := range p.Steps {
		if s.ID == id {
			return s, true
		}
	}
	return schedule.DayStep{}, false
}

// How long the steps take is told only where it is by that much that the time is missed.
func TestOnlySumsThatExplainAreTold(t *testing.T) {
	hours := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Hour) }
	step := schedule.Member{Breach: schedule.Breach{Rule: schedule.StepMin}, Limit: hours(5)}
	asleep := schedule.Member{Breach: schedule.Breach{Rule: schedule.Absence, Words: working.Say("asleep")}}
	for _, c := range []struct {
		conflict schedule.Conflict
		want     string
	}{
		{schedule.Conflict{Members: []schedule.Member{step}, Short: hours(2)},
			"the steps take 5h one after the other, and only 3h is left"},
		{schedule.Conflict{Members: []schedule.Member{step}, Short: hours(20)},
			"the whole bake takes longer, and only 3h is left"},
		{schedule.Conflict{Members: []schedule.Member{step, asleep}, Short: hours(2)}, "this is in the way: asleep"},
	} {
		if got := inTheWay(&c.conflict, hours(3)).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// A levain is used near its peak where the rest of the day lets it, not in the last hour that it is good.
func TestALevainIsUsedNearItsPeak(t *testing.T) {
	b := hall()
	b.Kitchen.Away = nil
	b.Retard.AtLeast, b.Retard.AtMost = minutesOf(8*60), minutesOf(20*60)
	for hour := 10; hour <= 19; hour += 3 {
		b.Wanted = OnDay(time.Saturday, wallclock.Clock{Hour: hour})
		d := plan(t, b)
		s, r := step(t, d, "ripen"), d.Levain.Ripeness
		good := r.Until.Likely - r.Peak.Likely
		if after := s.End.Sub(s.Start) - r.Peak.Likely; after > good/2+2*time.Minute {
			t.Errorf("for %d:00 it is used %v after its peak, of %v that it is good", hour, after, good)
		}
	}
}

// Dough in a tray follows the room faster than a ball of it; balls for pizza stay balls until they are stretched.
func TestATrayOfDoughWarmsAsASheet(t *testing.T) {
	b := hall()
	b.Loaves = Loaves{Pieces: 2, Scaling: quantity.Grams(1000), Style: bake.Focaccia}
	b.Retard.WarmUp = minutesOf(120)
	b.Oven = OvenWork{Temperature: quantity.Celsius(230), Uncovered: minutesOf(22)}
	tray := plan(t, b)
	b.Loaves.Style = bake.LeanHearth
	ball := plan(t, b)
	if room := tray.Bake.roomAt(tray.Wanted, tray.Zone).Celsius(); tray.Rising.Into.Celsius() < room-6 ||
		ball.Rising.Into.Celsius() > room-8 {
		t.Errorf("after two hours in %.1f °C: the tray at %v, the ball at %v", room, tray.Rising.Into, ball.Rising.Into)
	}
	for _, c := range []struct {
		loaves Loaves
		form   string
		height float64
	}{
		{Loaves{Style: bake.Focaccia}, "slab", 2}, {Loaves{Shape: bake.Sheet}, "slab", 2},
		{Loaves{Shape: bake.Flat}, "slab", 1}, {Loaves{Style: bake.Baguette}, "log", 50},
		{Loaves{Style: bake.Pizza}, "round", 0}, {Loaves{}, "round", 0},
	} {
		p := (&Bake{Loaves: c.loaves}).piece(quantity.Grams(300))
		if p.Form.String() != c.form || !(math.Abs(100*p.Height.Meters()-c.height) <= 1e-9) ||
			p.Metallic != (c.height == 2) {
			t.Errorf("%v: %v, %v high, metallic %v", c.loaves, p.Form, p.Height, p.Metallic)
		}
	}
}

// The sheet says of which flour its percentages are, and a pinch of yeast keeps its digits.
func TestSharesAreLabeled(t *testing.T) {
	b := sticks()
	b.Preferments[0].Yeast = pct(0.08)
	text := plan(t, b).Report().Text(report.Options{})
	for _, want := range []string{"of the flour in it", "0.08 %"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

// An oven that is heated for a dough that may be early says why; bread that waits long says since when.
func TestEarlyOvensAndWaitingBreadAreExplained(t *testing.T) {
	d := plan(t, rolls())
	heat := step(t, d, "preheat")
	early := heat.End.Sub(heat.Start)-d.Bake.Oven.Preheat.Duration() > 5*time.Minute
	if text := strings.Join(strings.Fields(d.Report().Text(report.Options{})), " "); strings.Contains(text,
		"an early dough then finds it hot") != early {
		t.Errorf("heated for %v, with a preheating of %v:\n%s", heat.End.Sub(heat.Start), d.Bake.Oven.Preheat, text)
	}
	b := rolls()
	b.Wanted = OnDay(time.Sunday, wallclock.MustClock("08:00"))
	if d = plan(t, b); !said(d, "bakeday.note_waits") {
		cool := step(t, d, "cool")
		t.Errorf("cools from %v on: %v", cool.Start, d.Notes)
	}
	if d = plan(t, hall()); said(d, "bakeday.note_waits") || said(d, "bakeday.note_fresher") {
		t.Error(d.Notes)
	}
}

// Bagels are boiled, and their kettle is heated.
func TestBagelsAreBoiled(t *testing.T) {
	b := rolls()
	b.Loaves = Loaves{Pieces: 10, Scaling: quantity.Grams(115), Style: bake.Bagel}
	b.Oven = OvenWork{}
	d := plan(t, b)
	for id, want := range map[string]string{"bake-1": "boil 1m to 2m in a wide pot, and bake",
		"preheat": "heat the oven, and a wide pot of water"} {
		if got := step(t, d, id).Name.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	// Ten make three potfuls, which take five minutes before they are in the oven.
	bakes, o := step(t, d, "bake-1"), d.Data().Oven
	if got := bakes.End.Sub(bakes.Start); got != 5*time.Minute+o.Uncovered.Duration() {
		t.Errorf("boiled and baked for %v, of which %v in the oven", got, o.Uncovered)
	}
	i := slices.IndexFunc(d.Data().Steps, func(s StepData) bool { return s.ID == "load-1" })
	if i < 0 {
		t.Fatal("nothing says when they go in")
	}
	if s := d.Data().Steps[i]; s.Start.Sub(bakes.Start) < 4*time.Minute || s.Start.Sub(bakes.Start) > 5*time.Minute ||
		s.Name.String() != "drain and load" || !s.Hands {
		t.Errorf("%+v", s)
	}
}

// Two timetables that call each other forth do not take turns for ever: from some round on mixing stays near where it
// was, and the plan settles. How far moments are from others is the farthest of them.
func TestPlansSettle(t *testing.T) {
	for hour := 9; hour <= 21; hour += 3 {
		b := pizzas()
		b.Wanted = OnDay(time.Sunday, wallclock.Clock{Hour: hour})
		if d := plan(t, b); d.Possible() && !d.Settled {
			t.Errorf("for %d:00 times and temperatures did not settle, by %v", hour, d.unsettled)
		}
	}
	at := time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC)
	a := moments{mixed: at, fed: at, retard: 8 * time.Hour}
	z := moments{mixed: at.Add(2 * time.Hour), fed: at.Add(-time.Hour), retard: 5 * time.Hour}
	if got := a.off(z); got != quantity.Elapsed(3*time.Hour) {
		t.Errorf("off by %v", got)
	}
}

// Where no setting has a timetable, nothing is told to fit best.
func TestNothingFits(t *testing.T) {
	day := plan(t, hall())
	whole := Order{Bakes: []Bake{hall()}}
	f := FittedDay{Day: whole.ofOne(day), Tried: 7, Best: Choice{Day: day, Points: 1000,
		Against: []Against{{Drawback: NoTimetable}}}}
	r := f.Report()
	if got := r.Headline.String(); got != "7 settings tried, and no timetable fits any of them" ||
		len(r.Section("best").Blocks) > 0 {
		t.Errorf("%q with %v", got, r.Section("best"))
	}
}

// Bread that would wait through the night says how little later it would be fresh; at that time it is, and at the steps
// before it is not.
func TestBreadThatWaitsSaysWhenItWouldBeFresh(t *testing.T) {
	b := rolls()
	at := func(by time.Duration) Day {
		b.Wanted = OnDay(time.Sunday, wallclock.Clock{Hour: 9 + int(by/time.Hour), Minute: int(by % time.Hour / time.Minute)})
		return plan(t, b)
	}
	met := 0
	for start := 2 * time.Hour; start <= 4*time.Hour; start += 30 * time.Minute {
		d := at(start)
		i := slices.IndexFunc(d.Notes, func(m working.Message) bool { return m.ID() == "bakeday.note_fresher" })
		if !said(d, "bakeday.note_waits") {
			if i >= 0 {
				t.Errorf("%v: fresh, and still told when it would be", d.Wanted)
			}
			continue
		}
		var named string
		for _, by := range laterBy {
			if next := at(start + by); next.Possible() && !said(next, "bakeday.note_waits") {
				named = next.Wanted.Format("Mon 15:04")
				break
			}
		}
		switch {
		case named == "" && i >= 0:
			t.Errorf("%v: %v", d.Wanted, d.Notes[i])
		case named != "" && (i < 0 || !strings.Contains(d.Notes[i].String(), "at "+named+",")):
			t.Errorf("%v: %v, want it to say %s", d.Wanted, d.Notes, named)
		case named != "":
			met++
		}
	}
	if met == 0 {
		t.Error("no wanted time was told when it would be fresh")
	}
}
