package cli

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// past is the moment that a flag tells; none when it is not given. What cannot be read is noted.
func (c *call) past(flag, text string, now time.Time) time.Time {
	if text == "" {
		return time.Time{}
	}
	at, err := timeIn(text, now)
	if err != nil {
		c.note(flag, err)
	}
	return at
}

// after is how long after the start the time of a flag is. What cannot be read is noted.
func (c *call) after(flag, text string, start time.Time) quantity.Elapsed {
	d, err := whenFrom(text, start)
	if err != nil {
		c.note(flag, err)
	}
	return quantity.Elapsed(d)
}

// timeIn reads "10:40" (the last time the clock showed it), "2026-11-27 18:40" or an instant with
// its offset, in the zone of the present.
func timeIn(text string, now time.Time) (time.Time, error) {
	text = strings.TrimSpace(text)
	zone := now.Location()
	if c, err := wallclock.ParseClock(text); err == nil {
		day := wallclock.DateOf(now, zone)
		at, err := resolved(day.At(c), zone)
		if err == nil && at.After(now.Add(time.Minute)) {
			at, err = resolved(day.AddDays(-1).At(c), zone)
		}
		return at, err
	}
	if m, err := wallclock.ParseMoment(text); err == nil {
		return resolved(m, zone)
	}
	if at, err := time.Parse(time.RFC3339, text); err == nil {
		return at.In(zone), nil
	}
	return time.Time{}, &quantity.InputError{
		Got:  quantity.Excerpt(text),
		Want: quantity.Tell("cli.want_time_18_40", "a time such as 18:40, 2026-11-27 18:40 or 2026-11-27T18:40:00+01:00"),
		Err:  quantity.ErrUnit,
	}
}

func resolved(m wallclock.Moment, zone *time.Location) (time.Time, error) {
	r, err := wallclock.Resolve(m, zone, wallclock.RFC5545)
	return r.At, err
}

// whenFrom reads a time after the start: "2h10m", or a clock time, the first one after the start.
func whenFrom(text string, start time.Time) (time.Duration, error) {
	text = strings.TrimSpace(text)
	if c, err := wallclock.ParseClock(text); err == nil {
		day := wallclock.DateOf(start, start.Location())
		for range 2 {
			at, err := resolved(day.At(c), start.Location())
			if err != nil {
				return 0, err
			}
			if at.After(start) {
				return at.Sub(start), nil
			}
			day = day.AddDays(1)
		}
	}
	if m, err := wallclock.ParseMoment(text); err == nil {
		at, err := resolved(m, start.Location())
		return at.Sub(start), err
	}
	d, err := quantity.ParseDuration(text)
	if err != nil {
		return 0, &quantity.InputError{Got: quantity.Excerpt(text),
			Want: quantity.Tell("cli.want_time_after_mixing_2h10m_or",
				"a time after mixing such as 2h10m, or a clock time such as 18:40"), Err: quantity.ErrUnit}
	}
	return d, nil
}
