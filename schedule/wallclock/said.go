package wallclock

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// ReadPast answers when something was that somebody tells of: "10:40" is the last time that the clock showed it, and
// "2026-11-27 18:40" a moment, both in the zone of the present; an instant with its offset is itself, in that zone. A
// clock that is a minute ahead is believed. A time that the clock skips or shows twice is read as [RFC5545] does. Valid
// range: that of [ParseMoment]. Errors: ErrUnit for another text; those of [Resolve]. Source: RFC 3339 for instants;
// the rest is common practice, no source.
func ReadPast(text string, now time.Time) (time.Time, error) {
	text = strings.TrimSpace(text)
	zone := now.Location()
	if c, err := ParseClock(text); err == nil {
		day := DateOf(now, zone)
		at, err := resolved(day.At(c), zone)
		if err == nil && at.After(now.Add(time.Minute)) {
			at, err = resolved(day.AddDays(-1).At(c), zone)
		}
		return at, err
	}
	if m, err := ParseMoment(text); err == nil {
		return resolved(m, zone)
	}
	if at, err := time.Parse(time.RFC3339, text); err == nil {
		return at.In(zone), nil
	}
	return time.Time{}, &quantity.InputError{
		Got: quantity.Excerpt(text), Err: quantity.ErrUnit,
		Want: quantity.Tell("wallclock.want_time_18_40",
			"a time such as 18:40, 2026-11-27 18:40 or 2026-11-27T18:40:00+01:00"),
	}
}

// ReadAfter answers how long after a start something is: "2h10m", or by the clock, which then shows it for the first
// time since the start, or at a moment such as "2026-11-27 18:40", in the zone of the start. Valid range: that of
// [quantity.ParseDuration]; a moment may lie before the start. Errors: ErrUnit for another text; those of [Resolve].
// Source: common practice, no source.
func ReadAfter(text string, start time.Time) (time.Duration, error) {
	text = strings.TrimSpace(text)
	zone := start.Location()
	if c, err := ParseClock(text); err == nil {
		day := DateOf(start, zone)
		at, err := resolved(day.At(c), zone)
		if err == nil && !at.After(start) {
			at, err = resolved(day.AddDays(1).At(c), zone)
		}
		return at.Sub(start), err
	}
	if m, err := ParseMoment(text); err == nil {
		at, err := resolved(m, zone)
		return at.Sub(start), err
	}
	d, err := quantity.ParseDuration(text)
	if err != nil {
		return 0, &quantity.InputError{Got: quantity.Excerpt(text), Err: quantity.ErrUnit,
			Want: quantity.Tell("wallclock.want_time_after",
				"a time after mixing such as 2h10m, or a clock time such as 18:40")}
	}
	return d, nil
}

func resolved(m Moment, zone *time.Location) (time.Time, error) {
	r, err := Resolve(m, zone, RFC5545)
	return r.At, err
}
