package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// One loaf is shaped and not divided, a levain that is used up is said to be, and one that feeds several doughs ripens
// in one line until the last of them takes it.
func TestStepsAreSaidAsABakerSaysThem(t *testing.T) {
	b := hall()
	b.Loaves.Pieces, b.Levain.CultureAtHand = 1, quantity.Mass{}
	d := plan(t, b)
	if s, _ := d.Timetable.Step(idShape); s.Name.String() != "shape the loaf" {
		t.Error(s.Name)
	}
	page := d.Report().Text(report.Options{Width: 200})
	if !strings.Contains(page, "keep some culture back") || strings.Contains(plan(t, hall()).Report().Text(
		report.Options{Width: 200}), "keep some culture back") {
		t.Error("whether culture is left is said where it is known, or not said where it is not")
	}
	k := planAll(t, fedByOneLevain())
	page = k.Report().Text(report.Options{Width: 200})
	n := strings.Count(page, "market levain ripens, for Country and Rye")
	if n != 1 || strings.Contains(page, "levain ripens\n") ||
		strings.Count(page, "keep some culture back") != 1 {
		t.Errorf("%d times\n%s", n, page)
	}
	var last StepData
	for _, s := range k.ripensOnce(k.Data().Steps) {
		if s.Kind == schedule.Ripen {
			last = s
		}
	}
	for _, s := range k.Data().Steps {
		if s.Kind == schedule.Ripen && s.End.After(last.End) {
			t.Errorf("one dough takes it at %v, told is %v", s.End, last.End)
		}
	}
}

// Work that the oven interrupts is named with the loaves that go in or come out meanwhile, where no hands are free.
func TestTheOvenInterruptsWork(t *testing.T) {
	ever := 0
	for i, wanted := range []string{"14:30", "14:45", "15:00", "15:15", "15:30"} {
		o := sunday()
		o.Kitchen.Hands = 1 + i%2
		o.Bakes[2].Wanted = OnDay(time.Sunday, wallclock.MustClock(wanted))
		k := planAll(t, o)
		var work, rounds []StepData
		for _, s := range k.Data().Steps {
			switch {
			case s.Kind == schedule.Bake:
				rounds = append(rounds, s)
			case s.Hands && s.Kind != schedule.Tend:
				work = append(work, s)
			}
		}
		want := 0
		for _, s := range work {
			called := false
			for _, b := range rounds {
				for _, at := range []time.Time{b.Start, b.End} {
					busy := 0
					for _, w := range work {
						if w.Start.Before(at) && w.End.After(at) {
							busy++
						}
					}
					called = called || busy >= o.Kitchen.Hands && s.Start.Before(at) && s.End.After(at)
				}
			}
			if called {
				want++
			}
		}
		ever += want
		if got := k.ovenCalls(); len(got) != want {
			t.Errorf("%d hands, buns at %s: %d times called to the oven, said: %v", o.Kitchen.Hands, wanted, want, got)
		}
	}
	if ever == 0 {
		t.Error("the oven never calls")
	}
}

// What is poured is named, as it is weighed, for each batch.
func TestWhatIsPouredIsNamed(t *testing.T) {
	b := rolls()
	b.Liquids = []Ingredient{{Name: "whole milk", Percent: quantity.NewPercent(70), Kind: dough.KindMilk,
		Water: quantity.NewPercent(88)}}
	b.Loaves.Pieces = 20
	d := plan(t, b)
	s := d.Data()
	if len(s.Water.Portions) != d.Water.Mixes || d.Water.Mixes < 2 {
		t.Fatalf("%d portions of %d batches", len(s.Water.Portions), d.Water.Mixes)
	}
	for i, l := range s.Weigh[len(s.Weigh)-1].Lines {
		if l.Name == "whole milk" {
			for k, m := range s.Water.Portions {
				if l.Portions[k] != m {
					t.Errorf("line %d: %v is weighed, %v poured", i, l.Portions[k], m)
				}
			}
		}
	}
	page := d.Report().Text(report.Options{Width: 200})
	if !strings.Contains(page, " of whole milk for each batch at ") || strings.Contains(page, "ask for water") {
		t.Error(page)
	}
}
