package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"github.com/google/go-cmp/cmp"
)

// wished are bakes with nothing but what they are wished for.
func wished(t *testing.T, wishes ...string) []Bake {
	t.Helper()
	out := make([]Bake, len(wishes))
	for i, text := range wishes {
		w, err := ParseWish(text)
		if err != nil {
			t.Fatal(err)
		}
		out[i].Wanted = w
	}
	return out
}

// Breads of one occasion are planned for the same week, whichever of them has passed. The dates are counted by hand:
// the 29th of November 2026 is a Sunday.
func TestBreadsOfOneDayAreOfTheSameWeek(t *testing.T) {
	for _, c := range []struct{ now, wishes, first, second string }{
		{"11-29 08:00", "Sunday 16:00, Sunday 12:30", "11-29 16:00, 11-29 12:30", "12-06 16:00, 12-06 12:30"},
		{"11-29 12:40", "Sunday 16:00, Sunday 12:30", "12-06 16:00, 12-06 12:30", "12-13 16:00, 12-13 12:30"},
		{"11-29 17:00", "Sunday 16:00, Sunday 12:30", "12-06 16:00, 12-06 12:30", "12-13 16:00, 12-13 12:30"},
		// Over midnight, and over the end of the week.
		{"11-29 00:00", "Sunday 10:00, Saturday 09:00", "12-06 10:00, 12-05 09:00", "12-13 10:00, 12-12 09:00"},
		{"11-29 08:00", "Monday 07:00, Saturday 22:00", "12-07 07:00, 12-05 22:00", "12-14 07:00, 12-12 22:00"},
		{"11-28 21:00", "Monday 07:00, Saturday 22:00", "11-30 07:00, 11-28 22:00", "12-07 07:00, 12-05 22:00"},
		// Too far apart to be of one occasion: each is the next.
		{"11-29 08:00", "Monday 07:00, Friday 22:00", "11-30 07:00, 12-04 22:00", "12-07 07:00, 12-11 22:00"},
		{"12-01 08:00", "Monday 07:00, Friday 22:00", "12-07 07:00, 12-04 22:00", "12-14 07:00, 12-11 22:00"},
		// A date is what it is, and moves nobody.
		{"11-29 12:40", "2026-11-29 16:00, Sunday 12:30", "11-29 16:00, 12-06 12:30", ", 12-13 12:30"},
	} {
		at := func(text string) time.Time {
			out, err := time.ParseInLocation("2006-01-02 15:04", "2026-"+text, zurich(t))
			if err != nil {
				t.Fatal(err)
			}
			return out
		}
		first, second := strings.Split(c.first, ", "), strings.Split(c.second, ", ")
		got, err := occasions(wished(t, strings.Split(c.wishes, ", ")...), KitchenClock{Now: at(c.now), Zone: zurich(t)})
		if err != nil {
			t.Fatal(err)
		}
		for i, times := range got {
			want := []time.Time{at(first[i])}
			if second[i] != "" {
				want = append(want, at(second[i]))
			}
			if diff := cmp.Diff(want, times); diff != "" {
				t.Errorf("at %s, number %d of %s:\n%s", c.now, i, c.wishes, diff)
			}
		}
	}
	now := KitchenClock{Now: time.Date(2026, 11, 29, 0, 0, 0, 0, time.UTC), Zone: time.UTC}
	_, err := occasions(wished(t, "Sunday 12:30", "2026-11-01 12:30"), now)
	if len(quantity.InputErrors(err)) != 1 || quantity.InputErrors(err)[0].GoPath != "Bakes[1].Wanted" {
		t.Errorf("a date that has passed: %v", err)
	}
}

// In the middle of the occasion the plan is for the next one, of every bread, and says for each why.
func TestWhatBelongsToADayThatHasBegunIsSaid(t *testing.T) {
	o := sunday()
	for i := range o.Bakes {
		o.Bakes[i].Wanted = wished(t, "Sunday 12:30", "Sunday 16:00", "Sunday 16:00")[i%3].Wanted
	}
	day, err := o.Plan(t.Context(), KitchenClock{Now: time.Date(2026, 11, 29, 12, 40, 0, 0, zurich(t)), Zone: zurich(t)})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range day.Breads {
		if d.Wanted.Day() != 6 {
			t.Errorf("%s is planned for %v", d.Bake.Name, d.Wanted)
		}
	}
	text := strings.Join(strings.Fields(day.DayReport().Text(report.Options{})), " ")
	for _, want := range []string{"Sunday 12:30 is over for today, so this is for Sunday 6 December 2026, 12:30.",
		"Sunday 16:00 goes with the bread before it, whose time is over, so this is for Sunday 6 December 2026, 16:00."} {
		if strings.Count(text, want) != 1 {
			t.Errorf("%q stands %d times in:\n%.600s", want, strings.Count(text, want), text)
		}
	}
}
