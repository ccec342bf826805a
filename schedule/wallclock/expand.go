package wallclock

import (
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
)

// maxDays bounds an expansion; no bake takes longer than a year.
const maxDays = 400

// Over answers: when does the habit happen, in real time, during the span within?
//
// For each day of the zone's calendar on which the habit begins, From and To are resolved by
// the rule of RFC 5545 (see [RFC5545]) and give one span in UTC. All spans that share some time
// with within are returned, ascending and whole, so the first and the last may reach outside;
// [Clip] cuts them. Lengths are elapsed time: asleep 22:30 to 06:30 is 7 hours in a night in
// which the clock jumps forward an hour, and 9 when it goes back.
//
// A day that the zone skipped altogether has no occurrence. Where From lies in a gap and its
// resolved instant would not come before To, the span begins when the clocks jump.
//
// Errors: a habit that does not pass [Habit.Check], no zone, a span that is empty or longer
// than 400 days.
func (h Habit) Over(within Occurrence, zone *time.Location) ([]Occurrence, error) {
	var bad quantity.Problems
	bad.Join("", h.Check())
	checkSpan(&bad, within, zone)
	if err := bad.ErrFor(h); err != nil {
		return nil, err
	}
	return h.over(within, zone)
}

func (h Habit) over(within Occurrence, zone *time.Location) ([]Occurrence, error) {
	var out []Occurrence
	last := DateOf(within.To, zone).AddDays(2)
	for d := DateOf(within.From, zone).AddDays(-2); d.Compare(last) <= 0 && d.IsValid(); d = d.AddDays(1) {
		if !h.begins(d) {
			continue
		}
		s, ok, err := h.on(d, zone)
		if err != nil {
			return nil, err
		}
		if ok && s.From.Before(within.To) && within.From.Before(s.To) {
			out = append(out, s)
		}
	}
	return out, nil
}

// Expand is [Habit.Over] for several habits: all their spans in one list, ascending by From,
// each with the words of its habit. Spans of different habits may overlap; see [Merge].
func Expand(habits []Habit, within Occurrence, zone *time.Location) ([]Occurrence, error) {
	var bad quantity.Problems
	for i, h := range habits {
		bad.Join(fmt.Sprintf("Habits[%d]", i), h.Check())
	}
	checkSpan(&bad, within, zone)
	if err := bad.ErrFor(nil); err != nil {
		return nil, err
	}
	var out []Occurrence
	for _, h := range habits {
		spans, err := h.over(within, zone)
		if err != nil {
			return nil, err
		}
		out = append(out, spans...)
	}
	slices.SortStableFunc(out, func(a, b Occurrence) int { return a.From.Compare(b.From) })
	return out, nil
}

func checkSpan(bad *quantity.Problems, within Occurrence, zone *time.Location) {
	switch {
	case within.From.IsZero():
		bad.Required("Within.From", quantity.Tell("wallclock.want_instant", "an instant"))
	case within.To.IsZero():
		bad.Required("Within.To", quantity.Tell("wallclock.want_instant", "an instant"))
	case !within.From.Before(within.To):
		bad.Add("Within.To", within, quantity.Tell("wallclock.want_instant_after_beginning",
			"an instant after the beginning"), quantity.ErrInconsistent)
	case within.To.Sub(within.From) > maxDays*24*time.Hour:
		bad.Add("Within.To", within,
			quantity.Tell("wallclock.want_at_most_days_after_beginning", "at most %d days after the beginning", maxDays),
			quantity.ErrOutOfRange)
	case within.From.UTC().Year() < firstYear+1 || within.To.UTC().Year() > lastYear-1:
		bad.Add("Within", within, quantity.Tell("wallclock.want_years_2_to_9998", "years 2 to 9998"), quantity.ErrOutOfRange)
	}
	if zone == nil {
		bad.Required("Zone", quantity.Tell("wallclock.want_time_zone", "a time zone"))
	}
}
