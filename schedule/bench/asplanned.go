package bench

import (
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/wallclock"
)

// AsPlanned fills what was not observed of a dough that left the mixer at a moment with what the plan says it is made
// of, and where it rises. So the log reckons as the bench does.
func (m DoughMixed) AsPlanned(day bakeday.Day, mixed time.Time) DoughMixed {
	rising := day.Rising
	if r, err := day.MixedAt(mixed, m.Dough); err == nil && r.Feasible {
		rising = r
	}
	b := rising.Bulk.Bulk()
	or := func(to *quantity.Percent, from quantity.Percent) {
		if to.IsZero() {
			*to = tenth(from)
		}
	}
	weigh := func(to *quantity.Mass, from quantity.Mass) {
		if to.IsZero() {
			*to, _ = from.RoundTo(quantity.Grams(1))
		}
	}
	mixes := int64(max(1, day.Water.Mixes))
	var flour, levain quantity.Mass
	for _, l := range day.Batch.FinalDough() {
		switch l.Role {
		case dough.RoleFlour:
			flour = flour.Add(l.Mass)
		case dough.RolePreferment:
			levain = levain.Add(l.Mass)
		}
	}
	weigh(&m.FlourWeight, flour.Divide(mixes))
	weigh(&m.WaterWeight, day.Water.Pour)
	weigh(&m.LevainWeight, levain.Divide(mixes))
	weigh(&m.Weight, day.Batch.Dough())
	if m.Mixer == 0 {
		m.Mixer = day.Bake.Mixing.Mixer
	}
	if m.RaisedBy() == 0 {
		m.Yeast, m.YeastKind = b.Yeast.Amount, b.Yeast.Kind
		m.Inoculation = tenth(b.Inoculation)
	}
	or(&m.Salt, day.Batch.SaltShare())
	or(&m.Sugar, b.Sugar)
	or(&m.Hydration, b.Hydration) // with the water of milk and eggs
	or(&m.WholeGrain, day.Batch.WholeGrain())
	or(&m.Rise, rising.ShapeAt)
	m.Enriched = m.Enriched || b.Enriched
	if m.Style == 0 {
		m.Style = day.Bake.Loaves.Style
	}
	if m.Altitude.IsZero() {
		m.Altitude = day.Bake.Kitchen.Altitude
	}
	if m.Room.IsZero() {
		m.Into = roomOf(day.Bake, mixed, day.Zone)
		if at, err := m.Into.At(0); err == nil {
			m.Room = quantity.Celsius(roundTo(at.Celsius(), 10))
		}
		if box := day.Bake.Bulk.Box; !box.IsZero() {
			m.Into = ferment.Room{Night: box}
		}
	}
	return m
}

// roomOf is the kitchen by its day and night, from a moment on.
func roomOf(b bakeday.Bake, from time.Time, zone *time.Location) ferment.Room {
	minutes := func(c wallclock.Clock) quantity.Elapsed {
		return quantity.Elapsed(time.Duration(c.Minutes()) * time.Minute)
	}
	k := b.Kitchen
	return ferment.Room{
		Night: k.Night, Day: k.Day, WarmestAt: minutes(k.WarmestAt), Starts: minutes(wallclock.ClockOf(from, zone)),
	}
}
