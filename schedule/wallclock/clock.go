package wallclock

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// Clock is a time of day to the minute, as a clock on the wall shows it, from 00:00 to 23:59.
// The zero value is midnight.
type Clock struct {
	Hour   int
	Minute int
}

var clockWant = quantity.Tell("wallclock.want_time_day_06_30_00", `a time of day such as "06:30", 00:00 to 23:59`)

// ParseClock reads "06:30" or "6:30", on the 24-hour clock. Seconds are accepted when they are
// ":00". Midnight at the end of a day is 00:00 of the next.
func ParseClock(text string) (Clock, error) {
	if len(text) > maxText {
		return Clock{}, refuse(text, clockWant)
	}
	hour, rest, found := strings.Cut(text, ":")
	minute, seconds, withSeconds := strings.Cut(rest, ":")
	h, okHour := digits(hour)
	m, okMinute := digits(minute)
	if !found || !okHour || !okMinute || len(hour) > 2 || len(minute) != 2 {
		return Clock{}, refuse(text, clockWant)
	}
	if withSeconds {
		s, ok := digits(seconds)
		if !ok || len(seconds) != 2 {
			return Clock{}, refuse(text, clockWant)
		}
		if s != 0 {
			return Clock{}, &quantity.InputError{
				Got:  quantity.Excerpt(text),
				Want: quantity.Tell("wallclock.want_whole_minutes", "whole minutes"),
				Err:  quantity.ErrTooPrecise,
			}
		}
	}
	c := Clock{h, m}
	if !c.IsValid() {
		want := clockWant
		if c == (Clock{24, 0}) {
			want = quantity.Tell("wallclock.want_clock_midnight", "%v (midnight is 00:00 of the next day)", clockWant)
		}
		return Clock{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrOutOfRange}
	}
	return c, nil
}

// MustClock is [ParseClock] for literals; it panics on a bad one.
func MustClock(text string) Clock { return must(ParseClock(text)) }

// ClockOf returns what the clock shows in the zone at the instant t, without the seconds. A
// nil zone is UTC.
func ClockOf(t time.Time, zone *time.Location) Clock {
	h, m, _ := in(t, zone).Clock()
	return Clock{h, m}
}

// IsValid reports whether a clock can show it.
func (c Clock) IsValid() bool {
	return c.Hour >= 0 && c.Hour <= 23 && c.Minute >= 0 && c.Minute <= 59
}

// Minutes returns the minutes since 00:00 on the clock.
func (c Clock) Minutes() int { return 60*c.Hour + c.Minute }

// Compare returns −1, 0 or +1 as c is earlier in the day, the same, or later.
func (c Clock) Compare(other Clock) int {
	return cmp.Or(cmp.Compare(c.Hour, other.Hour), cmp.Compare(c.Minute, other.Minute))
}

// Equal reports whether the clock shows the same.
func (c Clock) Equal(other Clock) bool { return c == other }

// String prints "06:30".
func (c Clock) String() string { return fmt.Sprintf("%02d:%02d", c.Hour, c.Minute) }

// AppendText implements encoding.TextAppender; a value no clock can show is refused.
func (c Clock) AppendText(b []byte) ([]byte, error) {
	if !c.IsValid() {
		return b, &quantity.InputError{Got: c, Want: clockWant, Err: quantity.ErrOutOfRange}
	}
	return append(b, c.String()...), nil
}

// MarshalText implements encoding.TextMarshaler.
func (c Clock) MarshalText() ([]byte, error) { return c.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseClock]. An empty text is
// refused: midnight must be written.
func (c *Clock) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return refuse("", clockWant)
	}
	return unmarshal(c, text, ParseClock)
}
