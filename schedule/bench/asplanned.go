package bench

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// AsPlanned fills what was not observed of a dough with what the plan says it is made of.
func (m DoughMixed) AsPlanned(day bakeday.Day) DoughMixed {
	b := day.Rising.Bulk.Bulk()
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
	or(&m.Hydration, day.Batch.Hydration())
	or(&m.WholeGrain, day.Batch.WholeGrain())
	or(&m.Rise, day.Rising.ShapeAt)
	if m.Altitude.IsZero() {
		m.Altitude = day.Bake.Kitchen.Altitude
	}
	if m.Room.IsZero() {
		for _, f := range day.Water.Factors {
			if f.Kind == mixing.RoomFactor {
				m.Room = quantity.Celsius(roundTo(f.Temperature.Celsius(), 10))
			}
		}
	}
	return m
}
