package bakeday

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// said reports whether a day says a sentence.
func said(d Day, id string) bool { return sentence(d, id).ID() == id }

func sentence(d Day, id string) working.Message {
	for _, n := range d.Notes {
		if n.ID() == id {
			return n
		}
	}
	return working.Message{}
}

// foldsOf are the folds of a day, after mixing; each is checked to be over before the dough is divided.
func foldsOf(t *testing.T, d Day) []time.Duration {
	t.Helper()
	if !d.Possible() {
		t.Fatal(d.Data().Why.Says)
	}
	bulk := step(t, d, "bulk")
	var out []time.Duration
	for _, s := range d.Timetable.Steps {
		if s.Kind != schedule.Fold {
			continue
		}
		if s.Start.Before(bulk.Start) || s.End.After(bulk.End) {
			t.Errorf("%s from %v to %v, outside of the bulk from %v to %v", s.ID, s.Start, s.End, bulk.Start, bulk.End)
		}
		out = append(out, s.Start.Sub(bulk.Start))
	}
	return out
}

// folded is a same-day bread whose dough is folded.
func folded(yeast float64, folds, every int) Bake {
	b := rolls()
	b.Kitchen.Asleep = nil
	b.Others[0].Percent = quantity.NewPercent(yeast)
	b.Bulk.Folds, b.Bulk.FoldEvery = folds, minutesOf(every)
	return b
}

// Whatever the dough and the interval, no fold comes after dividing, and folds that are left out or closer are told.
func TestNoFoldAfterDividing(t *testing.T) {
	for _, yeast := range []float64{0.2, 0.5, 1, 2} {
		for _, every := range []int{10, 30, 60} {
			for _, folds := range []int{1, 3, 6} {
				d := plan(t, folded(yeast, folds, every))
				at := foldsOf(t, d)
				fewer := said(d, "bakeday.note_no_folds") || said(d, "bakeday.note_fewer_folds")
				if fewer != (len(at) < folds) {
					t.Errorf("yeast %v %%, every %d min: %d of %d folds, said %v", yeast, every, len(at), folds, d.Notes)
				}
				for i, a := range at {
					asked := time.Duration(every*(i+1)) * time.Minute
					if a > asked*5/4 || a < asked*9/16 { // the interval a quarter closer, and a quarter of that moved
						t.Errorf("yeast %v %%: fold %d of %d after %v instead of %v", yeast, i+1, len(at), a, asked)
					}
				}
			}
		}
	}
}

// A bulk of half an hour has no time for folds every 40 minutes: the plan says how long they take and that it has none.
func TestABulkTooShortForItsFolds(t *testing.T) {
	d := plan(t, folded(1, 3, 40))
	likely := grid(d.Rising.Bulk.Ready().Likely)
	if at := foldsOf(t, d); len(at) != 0 {
		t.Fatalf("folds after %v in a bulk of %v", at, likely)
	}
	n := sentence(d, "bakeday.note_no_folds").String()
	for _, want := range []string{"3 folds every 40m", "take 2h20m", "likely over after " + likely.String(),
		"none is planned"} {
		if !strings.Contains(n, want) {
			t.Errorf("no %q in %q", want, n)
		}
	}
}

// Folds that nearly fit are made closer together, a quarter at most, and evenly.
func TestFoldsComeCloserTogether(t *testing.T) {
	free := plan(t, folded(0.3, 0, 40))
	likely := grid(free.Rising.Bulk.Ready().Likely).Duration()
	room := likely - 20*time.Minute // five for the fold, fifteen for the rest
	b := folded(0.3, 3, 40)
	b.Bulk.FoldEvery = quantity.Elapsed((room/3 + 4*time.Minute).Truncate(time.Minute))
	d := plan(t, b)
	at := foldsOf(t, d)
	if len(at) != 3 || !said(d, "bakeday.note_closer_folds") {
		t.Fatalf("folds after %v, %v", at, d.Notes)
	}
	every := (room / 3).Truncate(time.Minute)
	for i, a := range at {
		if want := time.Duration(i+1) * every; a != want {
			t.Errorf("fold %d after %v, want %v", i+1, a, want)
		}
	}
}

// A fold at which something goes in is made, however short the bulk; where there is no time at all it is refused.
func TestAFoldWithAnAdditionIsMade(t *testing.T) {
	b := folded(1, 3, 40)
	b.Inclusions = []Ingredient{{Name: "raisins", Percent: quantity.NewPercent(20), Kind: dough.KindFruit, Fold: 2}}
	d := plan(t, b)
	if at := foldsOf(t, d); len(at) != 2 || !said(d, "bakeday.note_fewer_folds") {
		t.Errorf("folds after %v, %v", at, d.Notes)
	}
	b.Bulk.FoldTakes = minutesOf(20)
	_, err := b.Plan(context.Background(), wednesday(t))
	problems := quantity.InputErrors(err)
	if len(problems) != 1 || problems[0].Path != "bulk.folds" || problems[0].Code != "no_time_for_folds" {
		t.Errorf("two folds of 20 minutes in half an hour: %v", err)
	}
}

// Of an early dough it is said which fold it is ready before.
func TestAnEarlyDoughMissesAFold(t *testing.T) {
	b := folded(0.3, 1, 40)
	ready := plan(t, b).Rising.Bulk.Ready()
	between := (ready.Early + ready.Likely - 20*time.Minute) / 2
	for _, c := range []struct {
		at   time.Duration
		says bool
	}{{between, true}, {ready.Early - 6*time.Minute, false}} {
		b.Bulk.FoldEvery = quantity.Elapsed(c.at.Truncate(time.Minute))
		d := plan(t, b)
		if len(foldsOf(t, d)) != 1 || said(d, "bakeday.note_fold_after_early") != c.says {
			t.Errorf("fold after %v, early %v: %v", c.at, ready.Early, d.Notes)
		}
	}
}

// A dough that is divided before a fold was due is not folded any more.
func TestReplanLeavesOutFoldsAfterDividing(t *testing.T) {
	d := plan(t, hall())
	fold, shape := step(t, d, "fold-2"), step(t, d, "shape")
	early := fold.Start.Add(-5 * time.Minute).Sub(shape.Start)
	r, err := d.Replan(context.Background(), Late{Step: "shape", By: quantity.Elapsed(early)})
	if err != nil || !r.Possible() {
		t.Fatal(err, r)
	}
	if _, there := r.Timetable.Step("fold-2"); there {
		t.Error("fold 2 is planned after dividing")
	}
	if _, there := r.Timetable.Step("fold-1"); !there {
		t.Error("fold 1 was made and is gone")
	}
	if r, err = d.Replan(context.Background(), Late{Step: "mix-2", By: minutesOf(20)}); err != nil {
		t.Fatal(err)
	}
	bulk, _ := r.Timetable.Step("bulk")
	if two, there := r.Timetable.Step("fold-2"); !there || two.Start.Before(bulk.Start) || two.End.After(bulk.End) {
		t.Errorf("a late mixing: fold 2 at %v, bulk from %v to %v: %v", two.Start, bulk.Start, bulk.End, r)
	}
}
