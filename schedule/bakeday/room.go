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
		WarmestAt: time.Duration(b.Kitchen.WarmestAt.Minutes()) * time.Minute, Starts: sinceMidnight(from, zone),
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
	r := b.room(t, zone)
	warmest := r.WarmestAt
	if warmest == 0 {
		warmest = 15 * time.Hour
	}
	// The cosine of ferment.Room.
	day, night := r.Day.Celsius(), r.Night.Celsius()
	c := (day+night)/2 + (day-night)/2*math.Cos(2*math.Pi*(r.Starts-warmest).Hours()/24)
	return quantity.Celsius(math.Round(c*10) / 10)
}

// roundTo rounds to a fraction of one: 10 for tenths.
func roundTo(x, per float64) float64 { return math.Round(x*per) / per }
