package wallclock_test

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// A stretch in which habits are looked for ends at the years 2 and 9998, and 400 days after it begins.
func TestTheEndsOfAStretch(t *testing.T) {
	habit := wallclock.MustHabit("22:30 to 6:30")
	at := func(year, month, day int) time.Time {
		return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	}
	start := at(2026, 11, 28)
	for name, c := range map[string]struct {
		from, to time.Time
		nights   int // −1: refused
	}{
		"two days":           {start, start.AddDate(0, 0, 2), 3},
		"the first year":     {at(1, 12, 31), at(2, 1, 2), -1},
		"the second":         {at(2, 1, 1), at(2, 1, 3), 3},
		"the last but one":   {at(9998, 12, 29), at(9998, 12, 31), 3},
		"the last":           {at(9998, 12, 30), at(9999, 1, 1), -1},
		"no time at all":     {start, start, -1},
		"backward":           {start, start.Add(-time.Hour), -1},
		"as long as may be":  {start, start.Add(400 * 24 * time.Hour), 401},
		"a second too long":  {start, start.Add(400*24*time.Hour + time.Second), -1},
		"without beginning":  {time.Time{}, start, -1},
		"without end":        {start, time.Time{}, -1},
		"a minute at noon":   {start.Add(12 * time.Hour), start.Add(12*time.Hour + time.Minute), 0},
		"to when it begins":  {start.Add(12 * time.Hour), start.Add(22*time.Hour + 30*time.Minute), 0},
		"from when it ended": {start.Add(6*time.Hour + 30*time.Minute), start.Add(12 * time.Hour), 0},
	} {
		spans, err := habit.Over(wallclock.Occurrence{From: c.from, To: c.to}, time.UTC)
		if c.nights < 0 {
			if len(quantity.InputErrors(err)) != 1 {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		if err != nil || len(spans) != c.nights {
			t.Errorf("%s: %d nights, %v; want %d", name, len(spans), err, c.nights)
		}
	}
}
