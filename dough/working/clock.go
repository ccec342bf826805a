package working

import (
	"time"

	"example.org/maslin/dough/quantity"
)

// Elapsed shows a duration, "4h30m", to the second, and from two days on in days: "4 days", "2 days 6h".
func (r Reader) Elapsed(d time.Duration) string { return elapsedMessage(d).Text(r) }

func elapsedMessage(d time.Duration) Message {
	d = d.Round(time.Second)
	if d < 0 {
		return Tell("working.negative", "−%v", elapsedMessage(-max(d, -1<<63+1)))
	}
	const day = 24 * time.Hour
	if d >= 2*day {
		days, rest := int64(d/day), d%day
		if rest == 0 {
			return Tell("working.days", "%d days", days)
		}
		return Tell("working.days_and", "%d days %v", days, elapsedMessage(rest))
	}
	h, m, s := int64(d/time.Hour), int64(d%time.Hour/time.Minute), int64(d%time.Minute/time.Second)
	switch {
	case h > 0 && s > 0:
		return Tell("working.hours_minutes_seconds", "%dh%02dm%02ds", h, m, s)
	case h > 0 && m > 0:
		return Tell("working.hours_minutes", "%dh%02dm", h, m)
	case h > 0:
		return Tell("working.hours", "%dh", h)
	case m > 0 && s > 0:
		return Tell("working.minutes_seconds", "%dm%02ds", m, s)
	case s > 0:
		return Tell("working.seconds", "%ds", s)
	}
	return Tell("working.minutes", "%dm", m)
}

// Clock shows the time of day to the nearest minute, "14:05" or "2:05 pm", and in an hour that the clocks show twice
// which of the two is meant, by the zone's abbreviation: "02:14 CET".
func (r Reader) Clock(t time.Time) string {
	t = r.in(t)
	if shownTwice(t) {
		zone, _ := t.Zone()
		return Tell("working.clock_in_zone", "%s %s", r.onDial(t), zone).Text(r)
	}
	return r.onDial(t)
}

// shownTwice reports whether the clocks of the moment's zone, put back, show its time of day twice.
func shownTwice(t time.Time) bool {
	const near = 3 * time.Hour // clocks have never been put back by more
	_, now := t.Zone()
	for _, by := range []time.Duration{-near, near} {
		_, then := t.Add(by).Zone()
		other := t.Add(time.Duration(now-then) * time.Second)
		if _, offset := other.Zone(); then != now && offset == then {
			return true
		}
	}
	return false
}

func (r Reader) onDial(t time.Time) string {
	if r.Language.Clock == Clock12 || r.Language.Clock == ClockByUnits && r.Units == USCustomary {
		hour := (t.Hour()+11)%12 + 1
		if t.Hour() < 12 {
			return Tell("working.clock_morning", "%d:%02d am", hour, t.Minute()).Text(r)
		}
		return Tell("working.clock_afternoon", "%d:%02d pm", hour, t.Minute()).Text(r)
	}
	return Tell("working.clock", "%02d:%02d", t.Hour(), t.Minute()).Text(r)
}

// DayClock shows the short weekday and the time of day, "Sat 14:05".
func (r Reader) DayClock(t time.Time) string {
	return Tell("working.day_clock", "%s %s", dayWord{r.in(t).Weekday().String()[:3]}, r.Clock(t)).Text(r)
}

// Date shows the weekday and the date, "Saturday 28 November".
func (r Reader) Date(t time.Time) string {
	t = r.in(t)
	day, month := dayWord{t.Weekday().String()}, monthWord{t.Month()}
	return Tell("working.date", "%[1]s %[2]d %[3]s", day, t.Day(), month).Text(r)
}

// DateClock shows all of a moment, "Saturday 28 November 2026, 14:05".
func (r Reader) DateClock(t time.Time) string {
	return Tell("working.date_clock", "%[1]s %[2]d, %[3]s", r.Date(t), r.in(t).Year(), r.Clock(t)).Text(r)
}

// in is the moment in the reader's zone, to the nearest minute as durations are, so that the two add up.
func (r Reader) in(t time.Time) time.Time {
	t = t.Round(time.Minute)
	if r.Zone != nil {
		return t.In(r.Zone)
	}
	return t
}

type (
	dayWord   struct{ english string }
	monthWord struct{ time.Month }
)

// Message makes a weekday a word of its own key.
func (w dayWord) Message() Message { return wordMessage("time.Weekday/" + w.english) }

// Message makes a month a word of its own key.
func (w monthWord) Message() Message { return wordMessage("time.Month/" + w.String()) }

func wordMessage(key string) Message {
	return Message{template: "%v", args: encodeArgs([]arg{{kind: kindWord, text: key}})}
}

// windowMessage shows "Sat 06:40 to 07:25", the second with its day where it is another.
func windowMessage(w quantity.Window) Message {
	y, m, d := w.From.Date()
	if y2, m2, d2 := w.To.Date(); y == y2 && m == m2 && d == d2 {
		return Tell("working.window", "%v to %t", w.From, w.To)
	}
	return Tell("working.window_days", "%v to %v", w.From, w.To)
}
