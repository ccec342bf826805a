package bakeday

import (
	"testing"
	"time"

	"example.org/maslin/schedule/wallclock"
)

// Somebody is there to put a thing into the cold until the absences before its limit begin.
func TestTheLastMomentBeforeEverybodySleeps(t *testing.T) {
	d := Day{Zone: time.UTC}
	d.Bake.Kitchen.Asleep = []wallclock.Habit{wallclock.MustHabit("22:30 to 06:30")}
	d.Bake.Kitchen.Away = []wallclock.Habit{wallclock.MustHabit("20:00 to 22:30")}
	at := func(day int, clock string) time.Time {
		c := wallclock.MustClock(clock)
		return time.Date(2026, 11, day, c.Hour, c.Minute, 0, 0, time.UTC)
	}
	for _, c := range []struct{ from, limit, want time.Time }{
		{at(27, "18:00"), at(27, "19:30"), at(27, "19:30")},
		{at(27, "18:00"), at(27, "20:00"), at(27, "20:00")},
		{at(27, "18:00"), at(27, "21:00"), at(27, "20:00")},
		{at(27, "18:00"), at(27, "22:30"), at(27, "20:00")}, // from one absence into the other
		{at(27, "18:00"), at(28, "02:00"), at(27, "20:00")},
		{at(27, "18:00"), at(28, "09:00"), at(28, "09:00")},
		{at(28, "01:00"), at(28, "02:00"), at(28, "01:00")}, // nobody is there
	} {
		if got := d.lastAwake(c.from, c.limit); !got.Equal(c.want) {
			t.Errorf("from %v to %v: %v, want %v", c.from, c.limit, got, c.want)
		}
	}
}
