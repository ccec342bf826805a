package bakeday

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/wallclock"
)

// sinceMidnight is the time of day at an instant, as the clock on the wall shows it.
func sinceMidnight(t time.Time, zone *time.Location) time.Duration {
	return time.Duration(wallclock.ClockOf(t, zone).Minutes()) * time.Minute
}

// room is the kitchen as package ferment sees it, from an instant on.
func (b *Bake) room(from time.Time, zone *time.Location) ferment.Room {
	return ferment.Room{
		Night: b.Kitchen.Night, Day: b.Kitchen.Day,
		WarmestAt: quantity.Elapsed(time.Duration(b.Kitchen.WarmestAt.Minutes()) * time.Minute),
		Starts:    quantity.Elapsed(sinceMidnight(from, zone)),
	}
}

// proofing is where bulk and proof stand: the box, or the room.
func (b *Bake) proofing(from time.Time, zone *time.Location) ferment.Room {
	if !b.Bulk.Box.IsZero() {
		return ferment.Room{Night: b.Bulk.Box}
	}
	return b.room(from, zone)
}

// roomAt is the temperature of the kitchen at an instant, by the same day and night.
func (b *Bake) roomAt(t time.Time, zone *time.Location) quantity.Temperature {
	at, err := b.room(t, zone).At(0)
	if err != nil {
		return quantity.Temperature{} // the kitchen was checked, and what needs the temperature says that it is missing
	}
	return at
}

// roundTo rounds to a fraction of one: 10 for tenths.
func roundTo(x, per float64) float64 { return math.Round(x*per) / per }
