package bakeday

import (
	"context"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// laterBy are how much later bread may be wanted that would otherwise wait through the night. Judgment.
var laterBy = [...]time.Duration{15 * time.Minute, 30 * time.Minute, time.Hour, 2 * time.Hour}

// waits is when the bread is cool and how long it waits from then until it is wanted; nothing for bread eaten warm and
// where there is no timetable.
func (d *Day) waits() (ready time.Time, waits time.Duration) {
	cool, ok := d.Timetable.Step(idCool)
	if !ok || d.Bake.Loaves.Warm {
		return time.Time{}, 0
	}
	ready = cool.Start.Add(d.times().cool)
	return ready, d.Wanted.Sub(ready)
}

// fresher says of bread that waits long how little later it would have to be wanted to be fresh: baked in the morning
// and not the evening before, because somebody is up by then.
func (b *Bake) fresher(ctx context.Context, d *Day, clock KitchenClock) {
	if _, waits := d.waits(); waits <= freshEnough {
		return
	}
	for _, by := range laterBy {
		next, err := b.briefly(ctx, d.Wanted.Add(by), clock)
		if err != nil {
			return // the plan that was asked for stands
		}
		if !next.Possible() {
			continue
		}
		if ready, waits := next.waits(); waits <= freshEnough {
			cool, _ := next.Timetable.Step(idCool)
			d.Notes = append(d.Notes, working.Tell("bakeday.note_fresher",
				"wanted %v later, at %v, it would come out of the oven at %v and be cool at %v", quantity.Elapsed(by),
				next.Wanted.In(d.Zone), cool.Start.In(d.Zone), ready.In(d.Zone)))
			return
		}
	}
}
