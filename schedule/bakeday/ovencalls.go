package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// ovenCalls say which work at the bench waits while loaves go into the oven or come out of it: all hands that there are
// are busy then. The timetable lets the oven interrupt them, as bakers do; how long that takes it does not know.
func (k KitchenDay) ovenCalls() []working.Message {
	if !k.Possible() || len(k.Breads) < 2 {
		return nil
	}
	var work, rounds []schedule.Timed
	for _, s := range k.Timetable.Steps {
		switch {
		case s.Spare:
		case s.Kind == schedule.Bake:
			rounds = append(rounds, s)
		case s.Kind.Hands() && s.Kind != schedule.TakeOut:
			work = append(work, s)
		}
	}
	earlier := func(a, b schedule.Timed) int { return a.Start.Compare(b.Start) }
	slices.SortStableFunc(work, earlier)
	slices.SortStableFunc(rounds, earlier)
	busy := func(at time.Time) bool {
		n := 0
		for _, s := range work {
			if s.Start.Before(at) && s.End.After(at) {
				n++
			}
		}
		return n >= max(1, k.Kitchen.Hands)
	}
	var out []working.Message
	for _, s := range work {
		during := func(at time.Time) bool { return s.Start.Before(at) && s.End.After(at) && busy(at) }
		var calls []any
		for _, b := range rounds {
			bread := working.Tell("bakeday.named", "%v", b.Bread)
			if during(b.Start) {
				calls = append(calls, working.Tell("bakeday.goes_in", "%v goes in at %t", bread, b.Start.In(k.Zone)))
			}
			if during(b.End) {
				calls = append(calls, working.Tell("bakeday.comes_out", "%v comes out at %t", bread, b.End.In(k.Zone)))
			}
		}
		if len(calls) > 0 {
			out = append(out, working.Tell("bakeday.note_oven_calls",
				"%v, from %v, is interrupted at the oven: %v; keep hands and minutes for that",
				s.Title(), s.Start.In(k.Zone), working.And(calls...)))
		}
	}
	return out
}
