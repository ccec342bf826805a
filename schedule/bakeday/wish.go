package bakeday

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// Wish is when the bread is wanted, by the clock on the wall: a moment ("2026-11-28 12:30"), or a
// day of the week ("Saturday 12:30"), which means the next one that can still be met. The
// zero value means "not given".
type Wish struct {
	Moment  wallclock.Moment // the zero value: by weekday
	Weekday time.Weekday
	Clock   wallclock.Clock
	weekly  bool
}

var wishWant = quantity.Tell("bakeday.want_day_and_time_saturday_12",
	`a weekday or a date and a time of 24 hours, such as "Saturday 12:30" or "2026-11-28 12:30"`)

// OnDay wishes for the next such weekday that can be met. What is no weekday is no wish: the zero value.
func OnDay(day time.Weekday, clock wallclock.Clock) Wish {
	if day < time.Sunday || day > time.Saturday {
		return Wish{}
	}
	return Wish{Weekday: day, Clock: clock, weekly: true}
}

// OnDate wishes for one moment.
func OnDate(m wallclock.Moment) Wish { return Wish{Moment: m} }

// ParseWish reads "Saturday 12:30", "Sat 12:30", "2026-11-28 12:30" or "Sat 2026-11-28 12:30".
func ParseWish(text string) (Wish, error) {
	if len(text) > 64 {
		return Wish{}, &quantity.InputError{
			Got:  quantity.Tell("bakeday.got_text_extreme_length", "a text of extreme length"),
			Want: wishWant,
			Err:  quantity.ErrOutOfRange,
		}
	}
	fields := strings.Fields(text)
	switch len(fields) {
	case 0:
		return Wish{}, &quantity.InputError{Got: quantity.Tell("bakeday.got_empty_text", "an empty text"), Want: wishWant,
			Err: quantity.ErrRequired}
	case 2:
		if days, err := wallclock.ParseDays(fields[0]); err == nil {
			for d := time.Sunday; d <= time.Saturday; d++ {
				if days == wallclock.On(d) {
					clock, err := wallclock.ParseClock(fields[1])
					return OnDay(d, clock), err
				}
			}
		}
	}
	m, err := wallclock.ParseMoment(text)
	if err != nil && strings.Contains(text, "-") { // it was to be a date, of which the error speaks
		return Wish{}, err
	}
	if err != nil {
		return Wish{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: wishWant, Err: wallclock.ErrSyntax}
	}
	return OnDate(m), nil
}

// over reports whether a wish by weekday is of today, at a time that has passed.
func (w Wish) over(now time.Time, zone *time.Location) bool {
	if !w.weekly || zone == nil {
		return false
	}
	today := wallclock.DateOf(now, zone)
	return w.valid() && today.Weekday() == w.Weekday && wallclock.ClockOf(now, zone).Minutes() >= w.Clock.Minutes()
}

// valid reports whether a wish by weekday names one.
func (w Wish) valid() bool { return w.Weekday >= time.Sunday && w.Weekday <= time.Saturday }

// IsZero reports whether no time was given.
func (w Wish) IsZero() bool { return w == Wish{} }

// String prints "Saturday 12:30" or "Sat 2026-11-28 12:30".
func (w Wish) String() string {
	switch {
	case w.IsZero():
		return "no time"
	case w.weekly && !w.valid():
		return "no such day"
	case w.weekly:
		return w.Weekday.String() + " " + w.Clock.String()
	}
	return w.Moment.String()
}

// MarshalText implements encoding.TextMarshaler; the zero value is an empty text.
func (w Wish) MarshalText() ([]byte, error) {
	if w.IsZero() {
		return nil, nil
	}
	if w.weekly && !w.valid() {
		return nil, &quantity.InputError{Got: w, Want: wishWant, Err: quantity.ErrOutOfRange}
	}
	return []byte(w.String()), nil
}

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseWish].
func (w *Wish) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*w = Wish{}
		return nil
	}
	v, err := ParseWish(string(text[:min(len(text), 65)]))
	if err != nil {
		return err
	}
	*w = v
	return nil
}

// told is the wish where an error speaks of it, in the language of its reader.
func (w Wish) told() quantity.Phrase {
	if w.weekly {
		return quantity.Tell("bakeday.wish_weekly", "%v %v", w.Weekday, w.Clock)
	}
	return toldMoment(w.Moment)
}

func toldMoment(m wallclock.Moment) quantity.Phrase {
	return quantity.Tell("bakeday.moment", "%v %v %v", m.Date.Weekday(), m.Date, m.Clock)
}

// instants lists when the wish could be met: the one moment, or the next two such weekdays
// after now. A wish that the clocks skip or show twice, and one in the past, is refused.
func (w Wish) instants(now time.Time, zone *time.Location) ([]time.Time, error) {
	if w.IsZero() {
		return nil, &quantity.InputError{GoPath: "Wanted", Want: wishWant, Err: quantity.ErrRequired}
	}
	moments := []wallclock.Moment{w.Moment}
	if w.weekly {
		today := wallclock.DateOf(now, zone)
		ahead := (int(w.Weekday) - int(today.Weekday()) + 7) % 7
		moments = nil
		for _, days := range []int{ahead, ahead + 7, ahead + 14} {
			moments = append(moments, today.AddDays(days).At(w.Clock))
		}
	}
	var out []time.Time
	for _, m := range moments {
		r, err := wallclock.Resolve(m, zone, wallclock.Refuse)
		if err != nil {
			return nil, quantity.At("Wanted", err)
		}
		if r.At.After(now) {
			out = append(out, r.At)
		}
	}
	if len(out) == 0 {
		return nil, &quantity.InputError{
			GoPath: "Wanted", Got: w.told(), Want: quantity.Tell("bakeday.want_time_after_clock_plan",
				"a time after %v, the clock of the plan", toldMoment(wallclock.MomentOf(now, zone))), Err: quantity.ErrOutOfRange,
		}
	}
	if out[0].Sub(now) > mostAhead {
		return nil, &quantity.InputError{
			GoPath: "Wanted", Got: w.told(), Want: quantity.Tell("bakeday.want_time_within_weeks",
				"a time at most 12 weeks after %v, the clock of the plan", toldMoment(wallclock.MomentOf(now, zone))),
			Err: quantity.ErrOutOfRange,
		}
	}
	return out[:min(len(out), 2)], nil
}

// mostAhead is how far ahead a bake is planned: the timetable takes 90 days, with room to find the next time
// that works.
const mostAhead = 12 * 7 * 24 * time.Hour
