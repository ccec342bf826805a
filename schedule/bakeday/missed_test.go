package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// sectionOf is a section of the day's report as text.
func sectionOf(d Day, key string) string {
	return report.Report{Sections: []report.Section{d.Report().Section(key)}}.Text(report.Options{})
}

// A wish by weekday that cannot be met any more says why, and the nearest time before the next week.
func TestTheMissedDayIsExplained(t *testing.T) {
	clock := KitchenClock{Now: time.Date(2026, 11, 28, 5, 0, 0, 0, time.UTC), Zone: zurich(t)}
	d, err := hall().Plan(t.Context(), clock)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(sectionOf(d, "missed")), " ")
	later := d.Missed.Why.Later.In(d.Zone)
	for _, want := range []string{"The wish for Saturday 28 November 2026, 12:30 can no longer be met", "is missed by",
		"Nearest that works: " + later.Format("Monday 2 January 2006, 15:04")} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
	if !later.Before(d.Wanted) {
		t.Error("the nearest is not before the week after")
	}
	d.Missed.Why.Later, d.Missed.Why.Earlier = &d.Wanted, nil
	if text := sectionOf(d, "missed"); strings.Contains(text, "Nearest") {
		t.Errorf("the week after is no nearest time: %s", text)
	}
	d.Missed.Why = nil
	if text := sectionOf(d, "missed"); !strings.Contains(text, "can no longer be met") {
		t.Error(text)
	}
}

// On the weekday itself, after the time, it is said that today is over.
func TestTodayIsOver(t *testing.T) {
	for at, over := range map[string]bool{"12:29": false, "12:30": true, "20:00": true} {
		now, err := time.ParseInLocation("2006-01-02 15:04", "2026-11-28 "+at, zurich(t))
		if err != nil {
			t.Fatal(err)
		}
		d, err := hall().Plan(t.Context(), KitchenClock{Now: now, Zone: zurich(t)})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(sectionOf(d, "missed"),
			"Saturday 12:30 is over for today, so this is for Saturday 5 December"); got != over {
			t.Errorf("at %s: %q", at, sectionOf(d, "missed"))
		}
	}
	if w := plan(t, hall()); len(w.missedBlocks()) != 0 {
		t.Error("on Wednesday nothing is over")
	}
	dated := plan(t, hall()).Bake.Wanted
	dated.weekly = false
	if dated.over(time.Date(2026, 11, 28, 23, 0, 0, 0, time.UTC), zurich(t)) || (Wish{}).over(time.Now(), nil) {
		t.Error("a date is not over for today")
	}
}

// After a change the new plan stands beside the old, with what changed and nothing else.
func TestTheNewPlanBesideTheOld(t *testing.T) {
	d := plan(t, hall())
	r, err := d.Replan(t.Context(), Late{Step: "shape", By: minutesOf(35)})
	if err != nil {
		t.Fatal(err)
	}
	table := r.beside()
	var got []string
	for _, row := range table.Rows {
		got = append(got,
			row[0].Text(working.Reader{})+": "+row[1].Text(working.Reader{})+" > "+row[2].Text(working.Reader{}))
	}
	if len(got) == 0 || len(got) > 5 {
		t.Errorf("%d lines: %q", len(got), got)
	}
	was, is := step(t, d, "shape").Start, r.Now.In(d.Zone)
	want := "divide and shape: " + was.Format("Mon 15:04") + " > " + is.Format("Mon 15:04")
	if len(got) > 0 && !strings.Contains(strings.Join(got, "\n"), want) {
		t.Errorf("%q is not in %q", want, got)
	}
	changed := map[string]bool{}
	for _, c := range r.Changes {
		changed[c.ID] = c.Start != 0 || c.Length != 0
	}
	for _, s := range r.Timetable.Steps {
		said := strings.Contains(strings.Join(got, "\n"), s.Title().String()+": ")
		if s.Kind.Hands() && !s.Spare && said != changed[s.ID] {
			t.Errorf("%s changed: %v, said: %v", s.ID, changed[s.ID], said)
		}
	}
	same, err := d.Replan(t.Context(), Late{Step: "shape", By: 0})
	if err != nil || len(same.beside().Rows) != 0 {
		t.Errorf("nothing is late and %v changes, %v", same.beside().Rows, err)
	}
	if text := (report.Report{Sections: []report.Section{same.Report().Section("changes")}}).Text(report.Options{}); !strings.Contains(text, "it stays as it was") {
		t.Error(text)
	}
}

// With a cold retard the forecast is what the dough will do, whatever rise is wished for in all.
func TestShapeAtForecastsTheDough(t *testing.T) {
	at := func(shape, rise float64) float64 {
		b := hall()
		b.Bulk.ShapeAt, b.Bulk.Rise = quantity.NewPercent(shape), quantity.NewPercent(rise)
		return plan(t, b).Rising.InOven.Likely.Points()
	}
	one, two, three := at(30, 90), at(30, 130), at(30, 200)
	if one != two || two != three {
		t.Errorf("shaped at 30 %%: %.1f, %.1f and %.1f %% by the wish of 90, 130 and 200 %%", one, two, three)
	}
	if more := at(45, 90); more < one+10 {
		t.Errorf("shaped at 45 %% it is at %.1f %%, at 30 %% %.1f %%", more, one)
	}
}
