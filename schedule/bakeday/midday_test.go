package bakeday

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
)

func minutes(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }

// goOn plans a day again and checks what must hold whatever happened.
func goOn(t *testing.T, k KitchenDay, late ...Late) (Replanned, KitchenDay) {
	t.Helper()
	r, err := k.Replan(context.Background(), late...)
	if err != nil || !r.Possible() {
		t.Fatal(r, err)
	}
	after := k.After(r)
	work := []schedule.StepKind{schedule.Feed, schedule.Mix, schedule.Fold, schedule.Shape}
	busy := func(s schedule.Timed) bool {
		for _, kind := range work {
			if s.Kind == kind && !s.Spare {
				return true
			}
		}
		return false
	}
	for i, a := range r.Timetable.Steps {
		for _, b := range r.Timetable.Steps[i+1:] {
			if busy(a) && busy(b) && a.Start.Before(b.End) && b.Start.Before(a.End) {
				t.Errorf("%s at %v and %s at %v with one pair of hands", a.ID, a.Start, b.ID, b.Start)
			}
		}
	}
	return r, after
}

// moves are the steps of a bread that begin at another time than planned.
func moves(k, after KitchenDay, bread string) map[string]time.Duration {
	out := map[string]time.Duration{}
	for _, a := range k.Timetable.Steps {
		if b, ok := after.Timetable.Step(a.ID); ok && a.Bread == bread && !a.Spare && !a.Start.Equal(b.Start) {
			out[a.ID] = b.Start.Sub(a.Start)
		}
	}
	return out
}

// What happens to one bread leaves the others, and its own place in the oven, where they are.
func TestOnlyWhatMustMoveMoves(t *testing.T) {
	k := planAll(t, sunday())
	for _, by := range []int{-20, 30} {
		_, after := goOn(t, k, Late{Step: "Loaf/shape", By: minutes(by)})
		got := moves(k, after, "Loaf")
		if got["Loaf/shape"] != minutes(by).Duration() || got["Loaf/bake-1"] != 0 || got["Loaf/preheat"] != 0 {
			t.Errorf("shaped %d min late: %v", by, got)
		}
		for _, other := range []string{"Focaccia", "Buns"} {
			if got := moves(k, after, other); len(got) > 0 {
				t.Errorf("the loaf is shaped %d min late, and of the %s %v", by, other, got)
			}
		}
	}
	// A levain fed a little late moves what it must, and by no more than that.
	_, late := goOn(t, k, Late{Step: "Loaf/feed", By: minutes(5)})
	for id, by := range moves(k, late, "Loaf") {
		if by > 5*time.Minute || by < 0 {
			t.Errorf("fed 5 min late, %s moves by %v", id, by)
		}
	}
	// The folds come as long after mixing as planned.
	_, after := goOn(t, k, Late{Step: "Loaf/bulk", By: minutes(17)})
	for _, id := range []string{"Loaf/fold-1", "Loaf/fold-2"} {
		if got := moves(k, after, "Loaf")[id]; got != 17*time.Minute {
			t.Errorf("%s moves by %v", id, got)
		}
	}
}

// Two doughs are known to be off at once; the answer does not depend on the order in which they are told.
func TestSeveralDoughsAreOff(t *testing.T) {
	k := planAll(t, sunday())
	bulk, _ := k.Timetable.Step("Focaccia/bulk")
	late := []Late{
		{Step: "Buns/bulk", By: minutes(12)},
		{Step: "Focaccia/shape", By: minutes(-25), Seen: bulk.Start.Add(20 * time.Minute)},
		{Step: "Loaf/shape", By: minutes(20)},
	}
	r, after := goOn(t, k, late...)
	for id, by := range map[string]int{"Buns/bulk": 12, "Loaf/shape": 20} {
		was, _ := k.Timetable.Step(id)
		is, _ := after.Timetable.Step(id)
		if is.Start.Sub(was.Start) != minutes(by).Duration() {
			t.Errorf("%s begins at %v, planned at %v", id, is.Start, was.Start)
		}
	}
	was, _ := k.Timetable.Step("Focaccia/shape")
	is, _ := after.Timetable.Step("Focaccia/shape")
	if off := is.Start.Sub(was.Start) + 25*time.Minute; off > 45*time.Minute || off < -45*time.Minute {
		t.Errorf("the focaccia is shaped %v from when it is ready", off)
	}
	back, _ := goOn(t, k, late[2], late[0], late[1])
	for i, s := range r.Timetable.Steps {
		if !s.Start.Equal(back.Timetable.Steps[i].Start) {
			t.Errorf("%s at %v, told in another order at %v", s.ID, s.Start, back.Timetable.Steps[i].Start)
		}
	}
	if head := r.Report().Headline.String(); len(head) < 60 {
		t.Error(head)
	}
}

// A dough that is seen to be ready while the hands are busy waits for them; one that must begin then does not.
func TestReadyDoughWaitsForHands(t *testing.T) {
	k := planAll(t, sunday())
	busy, _ := k.Timetable.Step("Buns/mix-1")
	shape, _ := k.Timetable.Step("Focaccia/shape")
	by := quantity.Elapsed(busy.Start.Add(time.Minute).Sub(shape.Start))
	_, after := goOn(t, k, Late{Step: "Focaccia/shape", By: by, Seen: busy.Start.Add(-30 * time.Minute)})
	is, _ := after.Timetable.Step("Focaccia/shape")
	if off := is.Start.Sub(busy.Start); off > 45*time.Minute || off < -45*time.Minute {
		t.Errorf("shaped %v from when it is ready", off)
	}
}

func TestWrongReplans(t *testing.T) {
	k := planAll(t, sunday())
	ctx := context.Background()
	for name, x := range map[string]struct {
		late []Late
		want error
	}{
		"none":   {nil, quantity.ErrRequired},
		"twice":  {[]Late{{Step: "Loaf/shape"}, {Step: "Loaf/shape", By: minutes(5)}}, quantity.ErrInconsistent},
		"no one": {[]Late{{Step: "Loaf/shape"}, {Step: "Moon/shape"}}, quantity.ErrInconsistent},
		"far":    {[]Late{{Step: "Loaf/shape"}, {Step: "Buns/shape", By: minutes(60 * 60)}}, quantity.ErrOutOfRange},
		"before": {[]Late{{Step: "Loaf/feed", By: minutes(-40 * 60)}}, nil},
	} {
		_, err := k.Replan(ctx, x.late...)
		if x.want != nil && !errors.Is(err, x.want) {
			t.Errorf("%s: %v", name, err)
		}
		for _, e := range quantity.InputErrors(err) {
			if len(x.late) > 1 && e.GoPath != "[1].Step" && e.GoPath != "[1].By" {
				t.Errorf("%s: %s", name, e.GoPath)
			}
		}
	}
	if _, err := k.Breads[0].Replan(ctx); !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
	if r, err := (KitchenDay{}).Replan(ctx, Late{Step: "shape"}); err == nil || r.Possible() {
		t.Error("a day that was not planned is planned again")
	}
	if got := k.After(Replanned{}); got.String() != k.String() {
		t.Error("nothing happened, and the day is another one")
	}
}

// A warmer dough is ready sooner, and one that is mixed as planned rises as planned.
func TestMixedAt(t *testing.T) {
	d := plan(t, hall())
	bulk, _ := d.Timetable.Step(idBulk)
	last := 100 * time.Hour
	for _, c := range []float64{22, 24, 26, 28} {
		r, err := d.MixedAt(bulk.Start, quantity.Celsius(c))
		if err != nil {
			t.Fatal(err)
		}
		likely := r.Bulk.Ready().Likely
		if likely >= last {
			t.Errorf("at %v °C ready after %v, cooler after %v", c, likely, last)
		}
		last = likely
		if near := likely - d.Rising.Bulk.Ready().Likely; c == 26 && (near > 2*time.Minute || near < -2*time.Minute) {
			t.Errorf("mixed as planned, ready %v from the plan", near)
		}
	}
	if _, err := d.MixedAt(bulk.Start, quantity.Celsius(90)); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Error(err)
	}
	if _, err := (Day{}).MixedAt(bulk.Start, quantity.Celsius(25)); !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
}

// Folds come as long after mixing, or after the fold before, as planned; those for which no time is left are left out,
// and that is said.
func TestLateFoldsKeepTheirInterval(t *testing.T) {
	d := plan(t, hall())
	every := hall().Bulk.FoldEvery
	begins := func(r Replanned, id string) time.Time {
		s, _ := r.Timetable.Step(id)
		return s.Start
	}
	for _, late := range []int{-10, 5, 25, 40, 70} {
		r, err := d.Replan(context.Background(), Late{Step: "mix-2", By: minutes(late)})
		if err != nil || !r.Possible() {
			t.Fatal(late, err)
		}
		for n, id := range []string{"fold-1", "fold-2"} {
			if after := begins(r, id).Sub(begins(r, idBulk)); after != time.Duration(n+1)*every.Duration() {
				t.Errorf("mixed %d min late, %s %v after mixing", late, id, after)
			}
		}
	}
	for _, late := range []int{5, 25, 40} {
		r, err := d.Replan(context.Background(), Late{Step: "fold-1", By: minutes(late)})
		if err != nil || !r.Possible() {
			t.Fatal(late, err)
		}
		if after := begins(r, "fold-2").Sub(begins(r, "fold-1")); after != every.Duration() {
			t.Errorf("folded %d min late, and %v later again", late, after)
		}
		if text := r.Report().Text(report.Options{}); strings.Contains(text, "left out") {
			t.Errorf("folded %d min late: %s", late, text)
		}
	}
	r, err := d.Replan(context.Background(), Late{Step: "fold-1", By: minutes(90)})
	if err != nil || !r.Possible() {
		t.Fatal(err)
	}
	if _, still := r.Timetable.Step("fold-2"); still || !strings.Contains(r.Report().Text(report.Options{}),
		"left out, as no time is left for it: fold, 2 of 2") {
		t.Error(r.Report().Text(report.Options{}))
	}
}
