package bakeday

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// Folds may follow each other at once; folds of which one would begin before the one before is over are refused.
func TestFoldsOneRightAfterTheOther(t *testing.T) {
	b := folded(1, 3, 10)
	bulk := quantity.TimeRange{Early: 2 * time.Hour, Likely: 2 * time.Hour, Late: 2 * time.Hour}
	b.Bulk.FoldTakes = minutesOf(10)
	f, err := b.folding(bulk)
	if err != nil || f.planned != 3 || f.every != minutesOf(10) {
		t.Errorf("three folds of 10 minutes every 10: %d every %v, %v", f.planned, f.every, err)
	}
	b.Bulk.FoldTakes = minutesOf(11)
	_, err = b.folding(bulk)
	want := "Bulk.Folds: inconsistent: got 3 of 11m each, in a bulk of likely 2h, " +
		"want what goes in at a fold earlier, shorter folds, or a slower dough"
	if problems := quantity.InputErrors(err); len(problems) != 1 || problems[0].Error() != want {
		t.Errorf("three folds of 11 minutes every 10: %v", err)
	}
}

// A dough is called too quick for the hands when it has risen by more than a twentieth too much in the oven.
func TestWhichDoughIsQuickerThanTheHands(t *testing.T) {
	b := rolls()
	b.Bulk.Rise = quantity.NewPercent(100)
	d := plan(t, b)
	d.Rising.HasProof = true
	for points, quick := range map[float64]bool{100: false, 104.9: false, 105: false, 105.1: true, 130: true} {
		d.Rising.InOven.Likely = quantity.NewPercent(points)
		found := false
		for _, m := range d.risingNotes() {
			found = found || m.ID() == "bakeday.note_quick"
		}
		if found != quick {
			t.Errorf("risen by %v of 100 %%: said to be quick: %v", points, found)
		}
	}
}

// The dough may be mixed from the peak of a poolish until it is past its best, by the clock of the plan.
func TestAPoolishIsGoodForAWhile(t *testing.T) {
	for _, yeast := range []float64{0.05, 0.1, 0.4} {
		d := plan(t, poolished(yeast))
		r := d.Preferments[0]
		found := false
		for _, s := range d.problem.Steps {
			if s.Kind != schedule.Ripen {
				continue
			}
			found = true
			if got := s.Min.Duration() - r.Peak.Likely; got.Abs() > time.Minute {
				t.Errorf("%v %%: ripens for %v, at its peak after %v", yeast, s.Min, r.Peak.Likely)
			}
			if got := s.Max.Duration() - r.Until.Likely; got.Abs() > time.Minute || s.Max <= s.Min {
				t.Errorf("%v %%: ripens for %v to %v, good until %v", yeast, s.Min, s.Max, r.Until.Likely)
			}
		}
		if !found {
			t.Error("it does not ripen")
		}
	}
}

// A dough that is kneaded to another temperature takes longer, as long, or is ready sooner.
func TestHowMuchLongerAnotherDoughTakes(t *testing.T) {
	takes := func(minutes int) PlanData {
		var d PlanData
		d.Bulk.Ready.Likely = time.Duration(minutes) * time.Minute
		d.Water.Target = quantity.Celsius(23.4)
		return d
	}
	for minutes, want := range map[int]string{
		151: "with the same water the dough comes out at 23.4 °C, and bulk likely takes 2h31m instead of 2h30m, 1m longer",
		150: "with the same water the dough comes out at 23.4 °C, and bulk likely takes as long, 2h30m",
		149: "with the same water the dough comes out at 23.4 °C, and bulk likely takes 2h29m instead of 2h30m, 1m shorter",
	} {
		if got := bulkChange(takes(150), takes(minutes)).String(); got != want {
			t.Errorf("got  %q\nwant %q", got, want)
		}
	}
}
