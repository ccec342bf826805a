package bakeday

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
	"pgregory.net/rapid"
)

// A load whose oven is turned down bakes alone, however many decks there are: another one would bake in its falling
// heat. Without that two loads at one temperature stand side by side.
func TestFallingHeatIsNotShared(t *testing.T) {
	for then, together := range map[float64]bool{0: true, 230: true, 200: false} {
		o := Order{Kitchen: hall().Kitchen, Wanted: wishAt(time.Date(2026, 11, 29, 15, 0, 0, 0, time.UTC))}
		o.Kitchen.Away, o.Kitchen.Oven.Decks, o.Kitchen.Hands = nil, 2, 2
		for i, name := range []string{"White", "Rye"} {
			b := rolls()
			b.Kitchen, b.Name, b.Wanted, b.Loaves.Pieces = Kitchen{}, name, Wish{}, 4
			b.Mixing.Mixer = mixing.Hand
			b.Oven = OvenWork{Temperature: quantity.Celsius(230), Together: 4, Preheat: quantity.Elapsed(30 * time.Minute),
				Covered: quantity.Elapsed(10 * time.Minute), Uncovered: quantity.Elapsed(15 * time.Minute)}
			if i == 0 && then > 0 {
				b.Oven.Then = quantity.Celsius(then)
			}
			o.Bakes = append(o.Bakes, b)
		}
		k := planAll(t, o)
		a, okA := k.Timetable.Step("White/bake-1")
		b, okB := k.Timetable.Step("Rye/bake-1")
		if !okA || !okB {
			t.Fatalf("turned down to %v °C: %v", then, k.Data().Why)
		}
		if got := a.Start.Before(b.End) && b.Start.Before(a.End); got != together {
			t.Errorf("turned down to %v °C: side by side %v", then, got)
		}
	}
}

// Of several breads at one temperature the one that takes the oven longest says how long it takes to come there.
func TestTheSlowestHeatingCounts(t *testing.T) {
	reheats := []time.Duration{5, 25, 10}
	var p planning
	k := hall().Kitchen
	k.Oven.Decks = 2
	p.kitchen = &k
	for _, r := range reheats {
		d := &planned{}
		d.Bake.Oven = OvenWork{Temperature: quantity.Celsius(230), Reheat: quantity.Elapsed(r * time.Minute)}
		d.Baking.Decks = 1
		p.breads = append(p.breads, d)
	}
	s := shares{needs: make([]map[schedule.StepKind][]schedule.Need, len(p.breads))}
	for i := range s.needs {
		s.needs[i] = map[schedule.StepKind][]schedule.Need{}
	}
	p.shareOven(&s)
	if c := s.resources[0].Changes; len(c) != 1 || c[0].Takes != quantity.Elapsed(25*time.Minute) {
		t.Error(c)
	}
	if n := s.needs[1][schedule.Bake]; len(n) != 1 || n[0].Program != "230 °C" || n[0].Amount != 1 {
		t.Error(n)
	}
}

// A proof of more trays than the box has places for is refused where the bake says it, of one bread and of several.
func TestTheBoxHasAPlaceForEachTray(t *testing.T) {
	trays := func(loaves, places int, box, retard bool) error {
		b := rolls()
		b.Loaves.Pieces, b.Oven.Pots, b.Oven.Together, b.Kitchen.BoxPlaces = loaves, 0, 2, places
		if box {
			b.Bulk.Box = quantity.Celsius(28)
		}
		if retard {
			b.Retard = hall().Retard
		}
		_, err := b.Plan(context.Background(), wednesday(t))
		return err
	}
	for _, c := range []struct {
		loaves, places int
		box, retard    bool
		wrong          bool
	}{{6, 2, true, false, true}, {6, 3, true, false, false}, {6, 0, true, false, false}, {6, 2, false, false, false},
		{6, 2, true,
			true, false}} {
		err := trays(c.loaves, c.places, c.box, c.retard)
		all := quantity.InputErrors(err)
		if (err != nil) != c.wrong || c.wrong && (len(all) != 1 || all[0].Path != "bulk.box" ||
			!errors.Is(err, quantity.ErrInconsistent) ||
			!strings.Contains(err.Error(), "a final proof of 3 trays") ||
			!strings.Contains(err.Error(), "at most 2, the places")) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	o := sunday()
	o.Kitchen.BoxPlaces, o.Bakes[2].Bulk.Box, o.Bakes[2].Oven.Together = 1, quantity.Celsius(28), 4
	_, err := o.Plan(context.Background(), wednesday(t))
	if all := quantity.InputErrors(err); len(all) != 1 || all[0].Path != "bake[2].bulk.box" {
		t.Error(err)
	}
}

// Folds lie on whole minutes, however long the bulk is and whatever goes in at them.
func TestFoldsOnTheMinute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := rolls()
		b.Bulk.Folds = rapid.IntRange(1, 6).Draw(t, "folds")
		b.Bulk.FoldEvery = quantity.Elapsed(time.Duration(rapid.IntRange(5, 60).Draw(t, "every")) * time.Minute)
		b.Bulk.FoldTakes = quantity.Elapsed(3 * time.Minute)
		fold := rapid.IntRange(0, b.Bulk.Folds).Draw(t, "with seeds")
		b.Inclusions = []Ingredient{{Name: "seeds", Fold: fold}}
		likely := time.Duration(rapid.IntRange(30*60, 8*3600).Draw(t, "seconds")) * time.Second
		f, err := b.folding(quantity.TimeRange{Early: likely * 3 / 4, Likely: likely, Late: likely * 5 / 4})
		if err != nil {
			t.Skip(err)
		}
		if f.planned < fold {
			t.Fatalf("%d folds planned, the seeds go in at fold %d", f.planned, fold)
		}
		for n := 1; n <= f.planned; n++ {
			least, most := f.between(n, everFar)
			if least%quantity.Elapsed(time.Minute) != 0 || most%quantity.Elapsed(time.Minute) != 0 || least > most {
				t.Fatalf("fold %d of %d between %v and %v", n, f.planned, least, most)
			}
		}
	})
}

// A lamination that a fold falls into is told which times are free of folds; there is none before an early fold.
func TestWhenALaminationFits(t *testing.T) {
	for after, want := range map[int]string{40: "a time after the fold: 50m or later",
		90: "1h35m or later, or 45m or earlier"} {
		b := rolls()
		b.Bulk.Folds, b.Bulk.FoldEvery = 2, quantity.Elapsed(45*time.Minute)
		b.Bulk.Lamination = &Lamination{After: quantity.Elapsed(time.Duration(after) * time.Minute)}
		err := b.Check(wednesday(t))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%d minutes: %v", after, err)
		}
	}
	b := rolls()
	b.Bulk.Lamination = &Lamination{After: soonestLamination}
	if err := b.Check(wednesday(t)); err != nil {
		t.Error(err)
	}
	b.Bulk.Lamination.After--
	if err := b.Check(wednesday(t)); err == nil {
		t.Error("laminated before it is mixed")
	}
}

// Two doughs that would rise too far are both named.
func TestAllThatRiseTooFarAreNamed(t *testing.T) {
	o := sunday()
	for i := range o.Bakes[:2] {
		b := &o.Bakes[i]
		b.Bulk.Rise, b.Retard = quantity.NewPercent(40), &Retard{AtLeast: quantity.Elapsed(70 * time.Hour),
			AtMost: quantity.Elapsed(71 * time.Hour)}
		b.Wanted = wishAt(time.Date(2026, 12, 1, 15, 0, 0, 0, time.UTC))
	}
	w := planAll(t, o).Data().Why
	if w == nil || w.Reason != RisesTooFar || !strings.Contains(w.Says.String(), "Loaf: ") ||
		!strings.Contains(w.Says.String(), "; Focaccia: ") || strings.Contains(w.Says.String(), "Buns") {
		t.Error(w)
	}
	if slices.ContainsFunc(w.Remedies, func(RuleData) bool { return true }) {
		t.Error(w.Remedies)
	}
}

// A box that stays as warm takes the loaves of the dough that was in it as soon as they are shaped.
func TestTheBoxStaysWarm(t *testing.T) {
	o := Order{Kitchen: hall().Kitchen}
	o.Kitchen.Away, o.Kitchen.BoxPlaces = nil, 1
	for i, name := range []string{"Saturday", "Sunday"} {
		b := rolls()
		b.Name, b.Kitchen, b.Bulk.Box = name, Kitchen{}, quantity.Celsius(27)
		b.Wanted = OnDay([]time.Weekday{time.Saturday, time.Sunday}[i], wallclock.MustClock("15:00"))
		b.Shaping.Takes = quantity.Elapsed(15 * time.Minute)
		b.Oven = OvenWork{Temperature: quantity.Celsius(210), Preheat: quantity.Elapsed(20 * time.Minute),
			Uncovered: quantity.Elapsed(18 * time.Minute)}
		o.Bakes = append(o.Bakes, b)
	}
	if k := planAll(t, o); !k.Possible() {
		t.Error(k.whyNot().Says)
	}
	o.Bakes[1].Wanted, o.Bakes[1].Bulk.Box = o.Bakes[0].Wanted, quantity.Celsius(30) // not both at one time
	if k := planAll(t, o); k.Possible() {
		box := map[string][]time.Time{}
		for _, s := range k.Timetable.Steps {
			if s.Kind == schedule.Bulk || s.Kind == schedule.Proof {
				box[s.Bread] = append(box[s.Bread], s.Start, s.End)
			}
		}
		first, second := box["Saturday"], box["Sunday"]
		if second[0].Before(first[0]) {
			first, second = second, first
		}
		if gap := second[0].Sub(first[len(first)-1]); gap < boxChange.Duration() {
			t.Errorf("%v from one temperature to the other", gap)
		}
	}
}
