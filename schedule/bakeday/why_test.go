package bakeday

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// ripeAt is a loaf from a levain that stands ripe, wanted at a time of its own.
func ripeAt(wanted string) Bake {
	b := hall()
	b.Loaves.Pieces = 1
	b.Levain.RipeNow, b.Levain.Inoculation, b.Levain.CultureAtHand = true, quantity.Percent{}, quantity.Mass{}
	b.Kitchen.Away = nil
	b.Retard = &Retard{AtLeast: quantity.Elapsed(10 * time.Hour), AtMost: quantity.Elapsed(20 * time.Hour)}
	b.Wanted = OnDate(wallclock.MustMoment(wanted))
	return b
}

// What does not fit is said in one sentence with the time there is, then the nearest time, then what would help.
func TestWhyInOneSentence(t *testing.T) {
	morning := wednesday(t)
	morning.Now = time.Date(2026, 11, 25, 7, 0, 0, 0, time.UTC)
	d, err := ripeAt("2026-11-26 04:00").Plan(context.Background(), morning)
	if err != nil || d.Possible() {
		t.Fatal("a loaf in the night is possible", err)
	}
	w := d.Data().Why
	if w.Short <= 0 || !strings.Contains(w.Says.String(), "is missed by "+w.Short.String()) {
		t.Error(w.Says)
	}
	page := d.Report().Section("why")
	text := strings.Join(strings.Fields(report.Report{Sections: []report.Section{page}}.Text(report.Options{})), " ")
	for _, want := range []string{w.Says.String(), "Nearest that works"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %s", want, text)
		}
	}
	if strings.Contains(text, "nothing before") || strings.Contains(text, "bulk at least") {
		t.Errorf("what nobody can change is told: %s", text)
	}
	for _, r := range w.Remedies {
		if !strings.Contains(text, r.Words.String()+": "+r.Remedy.String()) {
			t.Errorf("%v is not in %s", r.Remedy, text)
		}
	}
	if len(w.Remedies) == 0 || len(w.Together) != 0 {
		t.Errorf("%d remedies, %d together", len(w.Remedies), len(w.Together))
	}
}

// Where no one change is enough, all that are needed are named: a levain that is ripe in the evening.
func TestAllOfThese(t *testing.T) {
	d := plan(t, ripeAt("2026-11-26 04:00"))
	w := d.Data().Why
	if d.Possible() || len(w.Remedies) != 0 || len(w.Together) < 2 {
		t.Fatalf("%d remedies, %d together", len(w.Remedies), len(w.Together))
	}
	text := report.Report{Sections: []report.Section{d.Report().Section("why")}}.Text(report.Options{})
	if !strings.Contains(text, "Or all of these:") || strings.Count(text, "·") != len(w.Together) {
		t.Error(text)
	}
}

// A dough that does nearly all of its rising after shaping is said to, and why; one that is shaped late is not.
func TestShapedSoon(t *testing.T) {
	for share, want := range map[float64]bool{12: false, 22: true} {
		b := hall()
		b.Flours[0].Percent, b.Flours[1].Percent = quantity.NewPercent(50), quantity.NewPercent(50)
		b.Levain.Prefermented, b.Levain.CultureAtHand = quantity.NewPercent(share), quantity.Mass{}
		d := plan(t, b)
		said := false
		for _, n := range d.Notes {
			said = said || n.ID() == "bakeday.note_shaped_soon"
		}
		if said != want || d.Rising.Feasible && said != (d.Rising.ShapeAt.Points() < soonShaped) {
			t.Errorf("with %v %% in the levain it is shaped at %v, feasible %v: said %v", share, d.Rising.ShapeAt,
				d.Rising.Feasible, said)
		}
	}
}

// Where there is not enough time, the sentence says how much there is.
func TestTheTimeThereIs(t *testing.T) {
	b := rolls()
	b.Wanted = OnDate(wallclock.MustMoment("2026-11-26 06:45"))
	b.Kitchen.Asleep = nil
	now := wednesday(t)
	now.Now = time.Date(2026, 11, 26, 6, 0, 0, 0, now.Zone)
	d, err := b.Plan(context.Background(), now)
	if err != nil || d.Possible() {
		t.Fatal(d, err)
	}
	if says := d.Data().Why.Says.String(); !strings.Contains(says, "only 45m is left") {
		t.Error(says)
	}
	o := wantedTooSoon()
	k, err := o.Plan(context.Background(), now)
	if err != nil || k.Possible() {
		t.Fatal(k, err)
	}
	says := k.Data().Why.Says.String()
	if !strings.HasPrefix(says, "Focaccia: Thu") || !strings.Contains(says, "only 45m is left") {
		t.Error(says)
	}
}

// Four breads that are all to be cool just now cannot be from one oven; that all of them may be cool earlier is the way
// out when no one of them is enough, and it is the least on its grid.
func TestAllALittleLessFresh(t *testing.T) {
	o := sunday()
	for i := range o.Bakes {
		o.Bakes[i].Wanted = OnDate(wallclock.MustMoment("2026-11-29 15:00"))
		o.Bakes[i].Loaves.FreshWithin, o.Bakes[i].Loaves.Warm = minutes(5), false
		o.Bakes[i].Loaves.Style = bake.LeanHearth
	}
	k := planAll(t, o)
	if k.Possible() {
		t.Fatal("three breads come out of one oven at once")
	}
	all := k.allWaiting(context.Background())
	if len(all) != 1 || all[0].Change <= 0 {
		t.Fatal(all)
	}
	for by, want := range map[quantity.Elapsed]bool{all[0].Change: true, all[0].Change - waitStep: false} {
		if ok, err := waitingLonger(k.problem, by).Possible(context.Background()); err != nil || ok != want {
			t.Errorf("with %v more: %v, %v", by, ok, err)
		}
	}
}

const movedAlone = 67

// Every bread that is told to be moved alone makes the day possible when it is planned again so.
func TestMovedAloneIsPlannedAgain(t *testing.T) {
	d := someDay(randomly(movedAlone))
	k, err := d.Plan(context.Background(), d.clock(t))
	if err != nil {
		t.Fatal(err)
	}
	moved := 0
	for _, m := range k.Data().Why.Remedies {
		if again, ok := moved1(d.Order, k, m); ok {
			moved++
			if next, err := again.Plan(context.Background(), d.clock(t)); err != nil || !next.Possible() {
				t.Errorf("%v: %v does not help (%v)", m.Words, m.Remedy, err)
			}
			if m.Rule != schedule.FixedTime || m.Change%moveStep != 0 {
				t.Error(m)
			}
		}
	}
	if moved == 0 {
		t.Error("no bread is moved")
	}
}

// wantedTooSoon are two of the Sunday's breads of which the first is wanted too soon, and nobody sleeps.
func wantedTooSoon() Order {
	o := sunday()
	o.Bakes = o.Bakes[1:]
	o.Kitchen.Asleep = nil
	for i := range o.Bakes {
		o.Bakes[i].Wanted = OnDate(wallclock.MustMoment([]string{"2026-11-26 06:45", "2026-11-26 17:00"}[i]))
	}
	return o
}
