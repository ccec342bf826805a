package wallclock_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

func anyClock(t *rapid.T, label string) wallclock.Clock {
	m := rapid.IntRange(0, 1439).Draw(t, label)
	return wallclock.Clock{Hour: m / 60, Minute: m % 60}
}

func anyHabit(t *rapid.T, near wallclock.Date) wallclock.Habit {
	h := wallclock.Habit{
		Name: rapid.SampledFrom([]string{"", "asleep", "away", "at the market"}).Draw(t, "name"),
		From: anyClock(t, "from"), To: anyClock(t, "to"),
	}
	if h.From == h.To {
		h.From, h.To = wallclock.Clock{}, wallclock.Clock{}
	}
	switch rapid.IntRange(0, 2).Draw(t, "when") {
	case 1:
		h.Days = wallclock.Days(rapid.IntRange(1, 127).Draw(t, "days"))
	case 2:
		h.On = near.AddDays(rapid.IntRange(-3, 3).Draw(t, "on"))
	}
	return h
}

func TestHabitTextRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := anyHabit(t, wallclock.MustDate("2026-11-28"))
		text, err := h.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var back wallclock.Habit
		if err := back.UnmarshalText(text); err != nil || !back.Equal(h) {
			t.Fatalf("%s reads back as %v, %v", text, back, err)
		}
	})
}

// The elapsed length of an occurrence is the difference on the clock less what the offset gained.
func TestElapsedLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := anyZone(t)
		at := anyInstant(t, z)
		h := anyHabit(t, wallclock.DateOf(at, z))
		spans, err := h.Over(wallclock.Occurrence{From: at.Add(-48 * time.Hour), To: at.Add(48 * time.Hour)}, z)
		if err != nil {
			t.Fatal(err)
		}
		onClock := (h.To.Minutes() - h.From.Minutes() + 1440) % 1440
		if onClock == 0 {
			onClock = 1440
		}
		for _, s := range spans {
			from, to := wallclock.MomentOf(s.From, z), wallclock.MomentOf(s.To, z)
			next := from.Date
			if h.To.Compare(h.From) <= 0 {
				next = next.AddDays(1)
			}
			if from.Clock != h.From || to != next.At(h.To) {
				// An end lies in a gap: it is shown later, or the span begins when the clocks jump.
				continue
			}
			_, before := s.From.In(z).Zone()
			_, after := s.To.In(z).Zone()
			want := time.Duration(onClock)*time.Minute - time.Duration(after-before)*time.Second
			if s.Elapsed() != want {
				t.Fatalf("%v in %v: %v to %v is %v, want %v", h, z, from, to, s.Elapsed(), want)
			}
		}
	})
}

// Minute by minute: an instant lies in an occurrence if and only if the clock, at that instant,
// shows a time between From and To of a day on which the habit begins.
func TestHabitCoversWhatTheClockSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := anyZone(t)
		at := anyInstant(t, z)
		h := anyHabit(t, wallclock.DateOf(at, z))
		within := wallclock.Occurrence{From: at.Add(-24 * time.Hour), To: at.Add(24 * time.Hour)}
		spans, err := h.Over(within, z)
		if err != nil {
			t.Fatal(err)
		}
		step := time.Duration(rapid.IntRange(1, 17).Draw(t, "step")) * time.Minute
	minutes:
		for u := within.From; u.Before(within.To); u = u.Add(step) {
			m := wallclock.MomentOf(u, z)
			if mustResolve(t, m, z, 0).Reading != wallclock.Once {
				continue
			}
			want := false
			for back := range 3 {
				day := m.Date.AddDays(-back)
				if !h.On.IsZero() && day != h.On || h.Days != 0 && !h.Days.Has(day.Weekday()) {
					continue
				}
				from, to := day.At(h.From), day.At(h.To)
				if to.Compare(from) <= 0 {
					to.Date = to.Date.AddDays(1)
				}
				if mustResolve(t, from, z, 0).Reading != wallclock.Once || mustResolve(t, to, z, 0).Reading != wallclock.Once {
					continue minutes // the rule decides, not the clock; other tests look at those
				}
				want = want || from.Compare(m) <= 0 && m.Compare(to) < 0
			}
			got := slices.ContainsFunc(spans, func(s wallclock.Occurrence) bool { return !u.Before(s.From) && u.Before(s.To) })
			if got != want {
				t.Fatalf("%v in %v at %v: in an occurrence %v, want %v; %v", h, z, m, got, want, spans)
			}
		}
	})
}

func TestHabitsAtTheJump(t *testing.T) {
	den := zone(t, "America/Denver")
	for _, c := range []struct{ habit, day, want string }{
		{"watch 02:15 to 02:45 every day", "2026-03-08", "03:15 -0600 to 03:45 -0600"}, // both ends by the rule
		{"watch 01:30 to 02:30 every day", "2026-03-08", "01:30 -0700 to 03:30 -0600"},
		{"watch 02:30 to 04:00 every day", "2026-03-08", "03:30 -0600 to 04:00 -0600"},
		{"watch 02:30 to 03:10 every day", "2026-03-08", "03:00 -0600 to 03:10 -0600"}, // not 03:30 to 03:10
		{"watch 02:30 to 03:30 every day", "2026-03-08", "03:00 -0600 to 03:30 -0600"}, // not empty
		{"watch 01:15 to 01:45 every day", "2026-11-01", "01:15 -0600 to 01:45 -0600"}, // the first time round
		{"watch 01:15 to 02:15 every day", "2026-11-01", "01:15 -0600 to 02:15 -0700"}, // two hours
		{"watch all day on Sunday", "2026-03-08", "00:00 -0700 to 00:00 -0600"},
	} {
		h := wallclock.MustHabit(c.habit)
		h.Days, h.On = 0, wallclock.MustDate(c.day)
		noon := mustResolve(t, h.On.At(wallclock.MustClock("12:00")), den, wallclock.Refuse).At
		spans, err := h.Over(wallclock.Occurrence{From: noon.Add(-24 * time.Hour), To: noon.Add(24 * time.Hour)}, den)
		if err != nil || len(spans) != 1 {
			t.Errorf("%s on %s: %v, %v", c.habit, c.day, spans, err)
			continue
		}
		const form = "15:04 -0700"
		if got := spans[0].From.In(den).Format(form) + " to " + spans[0].To.In(den).Format(form); got != c.want {
			t.Errorf("%s on %s: %s, want %s", c.habit, c.day, got, c.want)
		}
	}
}

func TestExpandReportsEverything(t *testing.T) {
	_, err := wallclock.Expand([]wallclock.Habit{
		{Name: "asleep", From: wallclock.MustClock("22:30"), To: wallclock.Clock{Hour: 30}},
		wallclock.MustHabit("away 09:00 to 15:00 on Friday"),
		{From: wallclock.MustClock("9:00"), To: wallclock.MustClock("10:00"), Days: wallclock.EveryDay,
			On: wallclock.MustDate("2026-11-27")},
	}, wallclock.Occurrence{From: time.Unix(100, 0)}, nil)
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.GoPath)
	}
	if diff := cmp.Diff([]string{"Habits[0].To", "Habits[2].On", "Within.To", "Zone"}, paths); diff != "" {
		t.Error(diff, err)
	}
	day := time.Date(2026, 11, 28, 0, 0, 0, 0, time.UTC)
	for name, within := range map[string]wallclock.Occurrence{
		"empty":     {From: day, To: day},
		"backward":  {From: day, To: day.Add(-time.Hour)},
		"too long":  {From: day, To: day.AddDate(0, 0, 401)},
		"too late":  {From: time.Date(1<<30, 1, 1, 0, 0, 0, 0, time.UTC), To: time.Date(1<<30, 1, 2, 0, 0, 0, 0, time.UTC)},
		"too early": {From: time.Date(-1<<30, 1, 1, 0, 0, 0, 0, time.UTC), To: time.Date(-1<<30, 1, 2, 0, 0, 0, 0, time.UTC)},
	} {
		if _, err := wallclock.MustHabit("1:00 to 2:00").Over(within, time.UTC); len(quantity.InputErrors(err)) != 1 {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestWeek(t *testing.T) {
	den := zone(t, "America/Denver")
	from := time.Date(2026, 11, 26, 18, 0, 0, 0, den) // Thursday evening; no jump near
	within := wallclock.Occurrence{From: from, To: from.Add(48 * time.Hour)}
	spans, err := wallclock.Expand([]wallclock.Habit{
		wallclock.MustHabit("asleep 22:30 to 06:30 every day"), wallclock.MustHabit("away 09:00 to 15:00 on Friday"),
	}, within, den)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range spans {
		got = append(got, s.String())
	}
	if diff := cmp.Diff([]string{
		"2026-11-27 05:30Z to 2026-11-27 13:30Z (asleep 22:30 to 06:30)",
		"2026-11-27 16:00Z to 2026-11-27 22:00Z (away 09:00 to 15:00)",
		"2026-11-28 05:30Z to 2026-11-28 13:30Z (asleep 22:30 to 06:30)",
	}, got); diff != "" {
		t.Error(diff)
	}
	got = nil
	for _, s := range wallclock.Free(within, spans) {
		got = append(got, fmt.Sprint(wallclock.MomentOf(s.From, den), " ", s.Elapsed()))
	}
	if diff := cmp.Diff([]string{"Thu 2026-11-26 18:00 4h30m0s", "Fri 2026-11-27 06:30 2h30m0s",
		"Fri 2026-11-27 15:00 7h30m0s", "Sat 2026-11-28 06:30 11h30m0s"}, got); diff != "" {
		t.Error(diff)
	}
}

func anySpans(t *rapid.T) []wallclock.Occurrence {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) wallclock.Occurrence {
		from := time.Unix(rapid.Int64Range(0, 100).Draw(t, "from"), 0)
		return wallclock.Occurrence{From: from, To: from.Add(time.Duration(rapid.Int64Range(-5, 30).Draw(t,
			"length")) * time.Second), Words: rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "words")}
	}), 0, 12).Draw(t, "spans")
}

func covers(spans []wallclock.Occurrence, at time.Time) bool {
	return slices.ContainsFunc(spans,
		func(s wallclock.Occurrence) bool { return !at.Before(s.From) && at.Before(s.To) })
}

func TestMergeClipFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spans := anySpans(t)
		before := slices.Clone(spans)
		merged := wallclock.Merge(spans)
		if diff := cmp.Diff(before, spans); diff != "" {
			t.Fatal("the argument was changed", diff)
		}
		within := wallclock.Occurrence{From: time.Unix(20, 0), To: time.Unix(80, 0)}
		clipped, free := wallclock.Clip(spans, within), wallclock.Free(within, spans)
		for u := int64(-10); u < 150; u++ {
			at := time.Unix(u, 0)
			if covers(spans, at) != covers(merged, at) {
				t.Fatalf("%v: merging changed what is covered at %d", spans, u)
			}
			inside := u >= 20 && u < 80
			if covers(clipped, at) != (inside && covers(spans, at)) {
				t.Fatalf("%v: clipped wrongly at %d", spans, u)
			}
			if covers(free, at) != (inside && !covers(spans, at)) {
				t.Fatalf("%v: wrongly free or busy at %d", spans, u)
			}
		}
		for i := range merged[:max(0, len(merged)-1)] {
			if !merged[i].To.Before(merged[i+1].From) {
				t.Fatalf("%v and %v overlap or touch", merged[i], merged[i+1])
			}
		}
		if diff := cmp.Diff(merged, wallclock.Merge(merged)); diff != "" {
			t.Fatal("merging twice is not merging once", diff)
		}
		if sum := wallclock.Total(clipped) + wallclock.Total(free); sum != within.Elapsed() {
			t.Fatalf("busy and free make %v", sum)
		}
	})
}

func TestMergedWords(t *testing.T) {
	at := func(s int64) time.Time { return time.Unix(s, 0) }
	got := wallclock.Merge([]wallclock.Occurrence{
		{From: at(5), To: at(9), Words: "away"}, {From: at(0), To: at(5), Words: "asleep"},
		{From: at(2), To: at(3), Words: "asleep"}, {From: at(20), To: at(21)},
	})
	want := []wallclock.Occurrence{{From: at(0), To: at(9), Words: "asleep, away"}, {From: at(20), To: at(21)}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A habit's own spans have the shape of what the planner takes.
func TestHostileHabits(t *testing.T) {
	within := wallclock.Occurrence{From: time.Unix(0, 0), To: time.Unix(86400, 0)}
	for _, h := range []wallclock.Habit{
		{Name: strings.Repeat("x", 1<<20)},
		{Name: " two  spaces"},
		{Name: "9:00 is a time"},
		{Name: "all day"},
		{Name: "away from"},
		{Name: "asl\u202eeep"},
		{Name: "asl\u200feep"},
		{From: wallclock.Clock{Hour: math.MinInt, Minute: math.MaxInt}},
		{Days: 255},
		{On: wallclock.Date{Year: 2026, Month: 2, Day: 30}},
	} {
		_, err := h.Over(within, time.UTC)
		if err == nil || len(err.Error()) > 600 {
			t.Errorf("%.60v: %.100v", h, err)
		}
	}
	if got := wallclock.Merge(nil); len(got) != 0 || wallclock.Total(nil) != 0 ||
		len(wallclock.Clip(nil, within)) != 0 {
		t.Errorf("got %v", got)
	}
	if got := wallclock.Free(wallclock.Occurrence{}, nil); len(got) != 0 {
		t.Errorf("got %v", got)
	}
}

func BenchmarkExpand60Days(b *testing.B) {
	z := zone(b, "America/Denver")
	habits := []wallclock.Habit{wallclock.MustHabit("asleep 22:30 to 06:30 every day"),
		wallclock.MustHabit("away 09:00 to 15:00 on Friday")}
	from := time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)
	within := wallclock.Occurrence{From: from, To: from.AddDate(0, 0, 60)}
	for b.Loop() {
		if _, err := wallclock.Expand(habits, within, z); err != nil {
			b.Fatal(err)
		}
	}
}
