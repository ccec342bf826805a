package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// closed lists when the baker's hands are not there.
func (k *Kitchen) closed(within wallclock.Occurrence, zone *time.Location) ([]schedule.Span, error) {
	var habits []wallclock.Habit
	add := func(name string, list []wallclock.Habit) {
		for _, h := range list {
			if h.Name == "" {
				h.Name = name
			}
			habits = append(habits, h)
		}
	}
	add("asleep", k.Asleep)
	add("away", k.Away)
	var out []schedule.Span
	for _, h := range habits {
		spans, err := wallclock.Expand([]wallclock.Habit{h}, within, zone)
		if err != nil {
			return nil, err
		}
		for _, s := range wallclock.Clip(spans, within) {
			out = append(out, schedule.Span{From: s.From.In(zone), To: s.To.In(zone), Words: absence(h)})
		}
	}
	slices.SortStableFunc(out, func(a, b schedule.Span) int { return a.From.Compare(b.From) })
	return out, nil
}

// absence is a habit without its days: "asleep 22:30 to 06:30".
func absence(h wallclock.Habit) working.Message {
	if h.From == h.To {
		return working.Tell("bakeday.absence_all_day", "%s all day", h.Name)
	}
	return working.Tell(
		"bakeday.absence", "%s %02d:%02d to %02d:%02d", h.Name, h.From.Hour, h.From.Minute, h.To.Hour, h.To.Minute,
	)
}
