package bakeday

import (
	"math"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// Lever names one of the amounts and temperatures that [Bake.Fit] may change.
type Lever int

// The levers.
const (
	PrefermentedLever Lever = iota + 1
	InoculationLever
	TemperatureLever
	BoxLever
	RetardLever
)

var levers = enum.Of[Lever]("lever", "", "prefermented flour", "inoculation", "dough temperature", "proofing box",
	"retard")

// String names the lever.
func (l Lever) String() string { return levers.String(l) }

// MarshalText implements encoding.TextMarshaler.
func (l Lever) MarshalText() ([]byte, error) { return levers.Marshal(l) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (l *Lever) UnmarshalText(text []byte) error { return levers.Unmarshal(l, text) }

// Drawback names what can speak against a plan.
type Drawback int

// The drawbacks.
const (
	NoTimetable Drawback = iota + 1
	Fragile              // it does not survive the whole range of the dough
	OddHours             // hands are needed early or late
)

var drawbacks = enum.Of[Drawback]("drawback", "", "no timetable", "fragile", "odd hours")

// String names the drawback.
func (d Drawback) String() string { return drawbacks.String(d) }

// MarshalText implements encoding.TextMarshaler.
func (d Drawback) MarshalText() ([]byte, error) { return drawbacks.Marshal(d) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (d *Drawback) UnmarshalText(text []byte) error { return drawbacks.Unmarshal(d, text) }

// Moved is one lever that was moved.
type Moved struct {
	Lever Lever           `json:"lever"`
	Words working.Message `json:"words"` // "prefermented flour 16 % instead of 12 %"
}

// String is the change in words.
func (m Moved) String() string { return m.Words.String() }

// Against is one thing that speaks against a plan.
type Against struct {
	Drawback Drawback        `json:"drawback"`
	Points   float64         `json:"points"`
	Words    working.Message `json:"words"`
}

// String is the drawback in words.
func (a Against) String() string { return a.Words.String() }

// Choice is one setting of the levers with the day it makes.
type Choice struct {
	Day     Day       `json:"-"`
	Changes []Moved   `json:"changes"` // against the bake as written
	Points  float64   `json:"points"`  // what speaks against it; the lowest fits best
	Against []Against `json:"against"` // the largest first
}

// choice weighs a day against the bake as written.
func (b Bake) choice(d Day, changed Bake) Choice {
	c := Choice{Day: d}
	against := func(what Drawback, points float64, words working.Message) {
		if points > 0 {
			c.Points += points
			c.Against = append(c.Against, Against{what, points, words})
		}
	}
	if !d.Possible() {
		against(NoTimetable, 1000, working.Tell("bakeday.against_no_timetable", "no timetable fits"))
	} else {
		if !d.Careful && !d.Robust.Survives {
			words := working.Tell("bakeday.against_fragile",
				"the plan holds over only %.0f of the range in which the dough may be early or "+
					"late", quantity.NewPercent(100*d.Robust.Share))
			if d.Robust.Share < 0.01 {
				words = working.Tell("bakeday.against_brittle", "the plan holds only if the dough keeps to its likely time")
			}
			against(Fragile, 200*(1-d.Robust.Share), words)
		}
		odd := d.oddHours()
		against(OddHours, odd.Minutes(), working.Tell("bakeday.against_odd_hours",
			"%v of hands-on work before 7:00 or after 21:00", odd))
	}
	slices.SortStableFunc(c.Against, func(a, b Against) int { return int(b.Points - a.Points) })
	for _, m := range b.moved(changed) {
		c.Changes = append(c.Changes, m.Moved)
	}
	c.Points += b.distance(changed)
	return c
}

// distance is what speaks against a setting because it is not the bake as written.
func (b Bake) distance(changed Bake) (points float64) {
	for _, m := range b.moved(changed) {
		points += 20 * math.Min(1, math.Abs(m.by))
	}
	return points
}

// movedBy is a lever with how far it was moved, as a share of its length.
type movedBy struct {
	Moved
	by float64
}

// moved lists which levers differ.
func (b Bake) moved(changed Bake) []movedBy {
	var out []movedBy
	add := func(lever Lever, words working.Message, by float64) {
		out = append(out, movedBy{Moved{lever, words}, by})
	}
	l := b.Levers
	if n, o := changed.Levain, b.Levain; n != nil && o != nil {
		if n.Prefermented != o.Prefermented {
			add(
				PrefermentedLever,
				working.Tell("bakeday.moved_prefermented", "prefermented flour %v instead of %v", n.Prefermented,
					o.Prefermented),
				ratio(l.Prefermented, quantity.Percent.Points, n.Prefermented.Points()-o.Prefermented.Points()),
			)
		}
		if n.Inoculation != o.Inoculation {
			add(
				InoculationLever,
				working.Tell("bakeday.moved_inoculation", "culture in the levain's feed %v instead of %v",
					n.Inoculation, o.Inoculation),
				ratio(l.Inoculation, quantity.Percent.Points, n.Inoculation.Points()-o.Inoculation.Points()),
			)
		}
	}
	if n, o := changed.Mixing.Temperature, b.Mixing.Temperature; n != o {
		add(TemperatureLever, working.Tell("bakeday.moved_temperature", "dough at %v instead of %v", n, o),
			ratio(l.Temperature, quantity.Temperature.Celsius, n.Sub(o).Celsius()))
	}
	switch n, o := changed.Bulk.Box, b.Bulk.Box; {
	case n == o:
	case o.IsZero():
		add(BoxLever, working.Tell("bakeday.moved_box_from_room", "bulk at %v instead of the room", n), 1)
	default:
		add(BoxLever, working.Tell("bakeday.moved_box", "bulk at %v instead of %v", n, o),
			ratio(l.Box, quantity.Temperature.Celsius, n.Sub(o).Celsius()))
	}
	if n, o := changed.Retard, b.Retard; n != nil && o != nil && *n != *o {
		add(
			RetardLever,
			working.Tell("bakeday.moved_retard", "retard from %v to %v instead of %v to %v", n.AtLeast, n.AtMost,
				o.AtLeast, o.AtMost),
			0.5,
		)
	}
	return out
}

// ratio is a change as a share of the lever's length.
func ratio[T any](bounds []T, value func(T) float64, by float64) float64 {
	if len(bounds) != 2 || by == 0 {
		return 0
	}
	length := value(bounds[1]) - value(bounds[0])
	if length == 0 {
		return 1
	}
	return by / length
}

// oddHours is how long hands are needed before 7:00 or after 21:00.
func (d Day) oddHours() time.Duration {
	var sum time.Duration
	for _, s := range d.Timetable.Steps {
		if s.Spare || !s.Kind.Hands() {
			continue
		}
		for t := s.Start; t.Before(s.End); t = t.Add(time.Minute) {
			if h := t.In(d.Zone).Hour(); h < 7 || h >= 21 {
				sum += time.Minute
			}
		}
	}
	return sum
}
