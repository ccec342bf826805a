package bakeday

import (
	"context"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

// Folds of a dough that is not mixed yet keep their interval from mixing, and nothing else of the day is changed.
func TestOnlyTheIntervalsOfFoldsAreKept(t *testing.T) {
	o := sunday()
	o.Bakes[1].Bulk.Folds, o.Bakes[1].Bulk.FoldEvery = 1, minutes(20)
	o.Bakes[1].Others[0].Percent = quantity.NewPercent(0.3)
	k := planAll(t, o)
	d := midday{first: k.Timetable, timetable: k.Timetable, problem: k.problem, wanted: k.Breads[0].Wanted}
	start := func(id string) quantity.Elapsed {
		s, _ := k.Timetable.Step(id)
		return quantity.Elapsed(s.Start.Sub(k.Now))
	}
	var want []schedule.Link
	folds, others := 0, 0
	for _, l := range k.problem.Links {
		if l.From == "Loaf/bulk" && (l.To == "Loaf/fold-1" || l.To == "Loaf/fold-2") && l.Kind == schedule.StartToStart {
			l.Min = start(l.To) - start(l.From)
			l.Max = l.Min
			folds++
		}
		if l.To == "Focaccia/fold-1" && l.Min < l.Max {
			others++
		}
		want = append(want, l)
	}
	p, ok := d.spaced(context.Background(), k.problem, "Loaf", nil)
	if !ok || folds < 2 || others < 1 {
		t.Fatal(ok, folds, others)
	}
	if diff := cmp.Diff(want, p.Links, sameWords); diff != "" {
		t.Error(diff)
	}
	begun := []schedule.Done{{Step: "Loaf/bulk"}}
	if p, ok = d.spaced(context.Background(), k.problem, "Loaf", begun); ok {
		t.Error("a dough that is mixed keeps an interval from mixing")
	}
	if diff := cmp.Diff(k.problem.Links, p.Links, sameWords); diff != "" {
		t.Error(diff)
	}
	if _, ok = d.spaced(context.Background(), k.problem, "Nobody", nil); ok {
		t.Error("a bread that is not there keeps its folds")
	}
}
