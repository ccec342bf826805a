package schedule

import (
	"time"

	"example.org/maslin/dough/quantity"
)

// units turns a duration into whole units of the grid.
func (c *compiled) units(bad *quantity.Problems, path string, d quantity.Elapsed) int {
	if d%c.grid != 0 {
		bad.Add(path, d, quantity.Tell("schedule.want_multiple", "a multiple of %v", c.grid), quantity.ErrTooPrecise)
	}
	if d > 2*maxHorizon || d < -2*maxHorizon {
		bad.Add(path, d, quantity.Tell("schedule.want_within", "within %v", (2*maxHorizon)), quantity.ErrOutOfRange)
		return 0
	}
	return int(d / c.grid)
}

// farAway is further than any sum of durations inside a plan.
const farAway = 1 << 20

// floor and ceil place an instant on the grid; instants years away are brought to farAway,
// where they mean the same.
func (c *compiled) floor(t time.Time) int {
	d := quantity.Elapsed(t.Sub(c.in.Anchor)) // saturates
	u := int64(d / c.grid)
	if d%c.grid < 0 {
		u--
	}
	return int(max(-farAway, min(u, farAway)))
}

func (c *compiled) ceil(t time.Time) int {
	d := quantity.Elapsed(t.Sub(c.in.Anchor))
	u := int64(d / c.grid)
	if d%c.grid > 0 {
		u++
	}
	return int(max(-farAway, min(u, farAway)))
}

// when is the instant of a time of the plan.
func (c *compiled) when(unit int) time.Time {
	return c.in.Anchor.Add(c.long(unit).Duration())
}

// long is the duration of so many units.
func (c *compiled) long(units int) quantity.Elapsed { return quantity.Elapsed(units) * c.grid }

// say prints a duration for people.
func (c *compiled) say(units int) string { return c.long(units).String() }
