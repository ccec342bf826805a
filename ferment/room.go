package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Room is what a dough stands in: one temperature (Night alone), or a day and a night.
//
//	T = (Day + Night)/2 + (Day − Night)/2·cos(2π·(clock − WarmestAt)/24 h)
type Room struct {
	Night quantity.Temperature `json:"night"`
	Day   quantity.Temperature `json:"day,omitzero"` // not given: the same as Night
	// WarmestAt is the time of day when it is warmest; zero means 15:00.
	WarmestAt quantity.Elapsed `json:"warmest_at,omitzero"`
	// Starts is the time of day at which the history begins, 0 to 24 h.
	Starts quantity.Elapsed `json:"starts,omitzero"`
}

func (r Room) check(p *problems, path string) {
	if path != "" {
		path += "."
	}
	quantity.Check(&p.Problems, path+"Night", r.Night, lowestTemperature, highestTemperature)
	if !r.Day.IsZero() {
		quantity.Check(&p.Problems, path+"Day", r.Day, lowestTemperature, highestTemperature)
	}
	p.Duration(path+"WarmestAt", r.WarmestAt.Duration(), 0, 24*time.Hour)
	p.Duration(path+"Starts", r.Starts.Duration(), 0, 24*time.Hour)
}

func (r Room) changes() bool { return !r.Day.IsZero() && r.Day != r.Night }

// celsius is the room's temperature some hours after the start.
func (r Room) celsius(h float64) float64 {
	if !r.changes() {
		return r.Night.Celsius()
	}
	night, day := r.Night.Celsius(), r.Day.Celsius()
	return (day+night)/2 + (day-night)/2*math.Cos(2*math.Pi*(hours(r.Starts.Duration())+h-r.warmest())/24)
}

// warmest is the hour of day at which the room is warmest.
func (r Room) warmest() float64 {
	if r.WarmestAt == 0 {
		return 15
	}
	return hours(r.WarmestAt.Duration())
}

// At answers: how warm is the room some time after the start? Errors: ErrRequired and ErrOutOfRange in the fields of
// the room; ErrOutOfRange for a time outside 0 to 366 days. Source: the cosine of [Room], a judgment: no room follows
// one exactly.
func (r Room) At(after time.Duration) (quantity.Temperature, error) {
	var p problems
	r.check(&p, "")
	p.Duration("After", after, 0, longest)
	if err := p.ErrFor(r); err != nil {
		return quantity.Temperature{}, err
	}
	return degrees(r.celsius(hours(after))), nil
}

// String prints "21 °C" or "19 °C by night, 22 °C by day".
func (r Room) String() string { return r.Message().String() }

// Message says how warm the room is, for the units of its reader.
func (r Room) Message() working.Message {
	if !r.changes() {
		return working.Tell("ferment.room", "%v", r.Night)
	}
	return working.Tell("ferment.room_day_night", "%v by night, %v by day", r.Night, r.Day)
}
