package wallclock_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
	"pgregory.net/rapid"
)

var evening = time.Date(2026, 11, 28, 18, 30, 0, 0, time.FixedZone("", 3600))

func ExampleReadPast() {
	for _, text := range []string{"18:20", "19:00", "18:31", "2026-11-20 07:15", "2026-11-28T12:00:00Z"} {
		at, err := wallclock.ReadPast(text, evening)
		fmt.Println(at.Format("Mon 2 Jan 15:04"), err)
	}
	// Output:
	// Sat 28 Nov 18:20 <nil>
	// Fri 27 Nov 19:00 <nil>
	// Sat 28 Nov 18:31 <nil>
	// Fri 20 Nov 07:15 <nil>
	// Sat 28 Nov 13:00 <nil>
}

func ExampleReadAfter() {
	for _, text := range []string{"2h10m", "20:40", "07:00", "18:30", "2026-11-29 18:30"} {
		fmt.Println(wallclock.ReadAfter(text, evening))
	}
	// Output:
	// 2h10m0s <nil>
	// 2h10m0s <nil>
	// 12h30m0s <nil>
	// 24h0m0s <nil>
	// 24h0m0s <nil>
}

// A clock that was told is within a day back, and one that is meant within a day on, and both show what was said.
func TestToldClocks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := wallclock.Clock{Hour: rapid.IntRange(0, 23).Draw(t, "hour"), Minute: rapid.IntRange(0, 59).Draw(t, "minute")}
		now := evening.Add(time.Duration(rapid.IntRange(0, 1440).Draw(t, "now")) * time.Minute)
		past, err := wallclock.ReadPast(c.String(), now)
		if back := now.Sub(past); err != nil || back < -time.Minute || back >= 24*time.Hour ||
			wallclock.ClockOf(past, now.Location()) != c {
			t.Errorf("%v at %v: %v, %v", c, now, past, err)
		}
		d, err := wallclock.ReadAfter(c.String(), now)
		if err != nil || d <= 0 || d > 24*time.Hour || wallclock.ClockOf(now.Add(d), now.Location()) != c {
			t.Errorf("%v after %v: %v, %v", c, now, d, err)
		}
	})
	for _, text := range []string{"", "soon", "25:00", "3"} {
		if _, err := wallclock.ReadPast(text, evening); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q: %v", text, err)
		}
		if _, err := wallclock.ReadAfter(text, evening); !errors.Is(err, quantity.ErrUnit) {
			t.Errorf("%q after: %v", text, err)
		}
	}
	zurich, err := time.LoadLocation("Europe/Zurich")
	if err != nil {
		t.Fatal(err)
	}
	night := time.Date(2026, 3, 28, 22, 0, 0, 0, zurich) // in which 02:30 is skipped
	if d, err := wallclock.ReadAfter("02:30", night); err != nil || d != 4*time.Hour+30*time.Minute {
		t.Errorf("%v, %v", d, err)
	}
}

func TestReadPast(t *testing.T) {
	zurich, err := time.LoadLocation("Europe/Zurich")
	if err != nil {
		t.Skip(err)
	}
	now := time.Date(2026, 11, 28, 0, 30, 0, 0, zurich)
	for _, c := range []struct{ text, want string }{
		{"00:20", "2026-11-28T00:20:00+01:00"},
		{"23:50", "2026-11-27T23:50:00+01:00"}, // just before midnight
		{"0:31", "2026-11-28T00:31:00+01:00"},  // a clock a minute fast
		{"2026-11-27 18:40", "2026-11-27T18:40:00+01:00"},
		{"2026-07-01 12:00", "2026-07-01T12:00:00+02:00"},
		{"2026-11-27T17:40:00Z", "2026-11-27T18:40:00+01:00"},
	} {
		got, err := wallclock.ReadPast(c.text, now)
		if err != nil || got.Format(time.RFC3339) != c.want {
			t.Errorf("%s: got %s, %v, want %s", c.text, got.Format(time.RFC3339), err, c.want)
		}
	}
	for _, text := range []string{"", "soon", "24:00", "12", "2026-13-01 10:00", strings.Repeat("9", 1<<20)} {
		if at, err := wallclock.ReadPast(text, now); err == nil {
			t.Errorf("%.20q: got %v", text, at)
		}
	}
}

func TestReadAfter(t *testing.T) {
	start := time.Date(2026, 11, 27, 16, 50, 0, 0, time.UTC)
	for _, c := range []struct {
		text string
		want time.Duration
	}{{"2h10m", 130 * time.Minute}, {"19:00", 130 * time.Minute}, {"02:50", 10 * time.Hour}, {"2026-11-28 16:50",
		24 * time.Hour}} {
		if got, err := wallclock.ReadAfter(c.text, start); err != nil || got != c.want {
			t.Errorf("%s: got %v, %v, want %v", c.text, got, err, c.want)
		}
	}
}
