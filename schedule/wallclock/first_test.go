package wallclock_test

import (
	"testing"
	"time"
	_ "time/tzdata"

	"example.org/maslin/schedule/wallclock"
)

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

func TestSpringNight(t *testing.T) {
	den := zone(t, "America/Denver")
	h := wallclock.MustHabit("asleep 22:30 to 06:30 every day")
	from := time.Date(2026, 3, 8, 0, 0, 0, 0, time.UTC)
	s, err := h.Over(wallclock.Span{From: from, To: from.Add(24 * time.Hour)}, den)
	if err != nil {
		t.Fatal(err)
	}
	if len(s) != 1 || s[0].Elapsed() != 7*time.Hour {
		t.Errorf("got %v", s)
	}
}
