package ferment

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// History is the temperature of a dough over time: straight lines between knots, from time 0 on; after the last knot
// the last temperature is held. Make one with [Constant], [Readings], [Relaxing], [Piece], [Join] or [FromKnots]. It is
// immutable; the zero value is no history and is refused by every calculation. Knots stand at whole milliseconds and
// exact temperatures, so that a history comes back equal from JSON and from its own [History.Knots].
type History struct {
	knots []knot
	// measured says that the end is the end of what is known, so that leaning on it is worth a note.
	measured bool
	notes    []working.Message
	label    working.Message
}

// knot is a temperature at a time; two at the same time are a jump.
type knot = gasbalance.Knot

// exact is a knot at a whole millisecond and a temperature that has an exact text.
func exact(hour, celsius float64) knot {
	const perHour = 3_600_000
	return knot{Hour: math.Round(hour*perHour) / perHour, Celsius: degrees(celsius).Celsius()}
}

// Constant is a dough that stays at one temperature. A temperature that is not given or outside −25 to 60 °C makes no
// history, which the calculations report.
func Constant(t quantity.Temperature) History {
	if !t.IsValid() || t.Compare(lowestTemperature) < 0 || t.Compare(highestTemperature) > 0 {
		return History{}
	}
	return History{knots: []knot{{Celsius: t.Celsius()}}, label: working.Tell("ferment.held_at", "held at %v", t)}
}

// Knot is a temperature at a time from the start: a probe's reading, or a corner of a [History].
type Knot struct {
	At          quantity.Elapsed     `json:"at"`
	Temperature quantity.Temperature `json:"temperature"`
}

// FromKnots makes a history of its corners; two at the same time are a jump. Errors: ErrRequired without knots;
// ErrOutOfRange for times outside 0 to 366 days or temperatures outside −25 to 60 °C; ErrInconsistent for knots out
// of order.
func FromKnots(knots ...Knot) (History, error) {
	var p problems
	if len(knots) == 0 {
		p.Required("Knots", quantity.Tell("ferment.want_at_least_one_temperature_at", "at least one temperature at a time"))
	}
	h := History{knots: make([]knot, len(knots))}
	lo, hi := math.Inf(1), math.Inf(-1)
	last := time.Duration(0)
	for i, k := range knots {
		c, at := k.Temperature.Celsius(), k.At.Duration()
		if !(c >= tableLow && c <= tableHigh && at >= last && at <= longest) &&
			len(quantity.InputErrors(p.Err())) < mostFaults {
			path := fmt.Sprintf("Knots[%d]", i)
			quantity.Check(&p.Problems, path+".Temperature", k.Temperature, lowestTemperature, highestTemperature)
			if p.Duration(path+".At", at, 0, longest) && at < last {
				p.Add(path+".At", k.At, quantity.Tell("ferment.want_not_before_knot_before_at",
					"not before the knot before it, at %v", last),
					quantity.ErrInconsistent)
			}
		}
		h.knots[i] = exact(hours(at), c)
		lo, hi, last = min(lo, c), max(hi, c), at
	}
	if err := p.ErrFor(nil); err != nil {
		return History{}, err
	}
	h.label = working.Tell("ferment.knots", "%d {1|corner|corners} over %v, %.1f to %.1f",
		len(knots), quantity.Elapsed(last), degrees(lo), degrees(hi))
	return h, nil
}

// IsZero reports whether there is no history.
func (h History) IsZero() bool { return len(h.knots) == 0 }

// Equal reports whether two histories are the same: knots, notes and what they say of themselves.
func (h History) Equal(o History) bool {
	return slices.Equal(h.knots, o.knots) && h.measured == o.measured && slices.Equal(h.notes, o.notes) &&
		h.label == o.label
}

// String says what the history is, in metric units: "held at 24 °C".
func (h History) String() string { return h.Message().String() }

// Message says what the history is, for the units of its reader.
func (h History) Message() working.Message {
	if h.IsZero() {
		return working.Tell("ferment.no_history", "no history")
	}
	return h.label
}

// Known is how long the history lasts; after it the last temperature is held.
func (h History) Known() time.Duration {
	if h.IsZero() {
		return 0
	}
	return span(h.knots[len(h.knots)-1].Hour)
}

// Notes are things to know about the history, such as readings that look like another unit.
func (h History) Notes() []working.Message { return slices.Clone(h.notes) }

// At is the dough's temperature at a time; before 0 it is that at 0. At a jump it is the later one. The zero
// History gives no temperature.
func (h History) At(t time.Duration) quantity.Temperature {
	if h.IsZero() {
		return quantity.Temperature{}
	}
	return degrees(h.celsius(hours(t)))
}

// Mean is the time average of the temperature between two times. Errors: ErrRequired for the zero History,
// ErrOutOfRange unless 0 ≤ from < to ≤ 366 days.
func (h History) Mean(from, to time.Duration) (quantity.Temperature, error) {
	if err := h.interval(from, to); err != nil {
		return quantity.Temperature{}, err
	}
	if from == to {
		return h.At(from), nil
	}
	sum := 0.0
	h.segments(hours(from), hours(to), func(p, q knot) { sum += (q.Hour - p.Hour) * (p.Celsius + q.Celsius) / 2 })
	return degrees(sum / (hours(to) - hours(from))), nil
}

// Knots lists the corners of the history, for plotting and for keeping: [FromKnots] makes the history again.
func (h History) Knots() []Knot {
	out := make([]Knot, len(h.knots))
	for i, k := range h.knots {
		out[i] = Knot{milliseconds(k.Hour), degrees(k.Celsius)}
	}
	return out
}

func milliseconds(hour float64) quantity.Elapsed {
	return quantity.Elapsed(math.Round(hour*3_600_000)) * quantity.Elapsed(time.Millisecond)
}

// longest bounds every time asked about.
const longest = 366 * 24 * time.Hour

func (h History) interval(from, to time.Duration) error {
	var p problems
	if h.IsZero() {
		p.Required("History", quantity.Tell("ferment.want_temperature_history_between_minus_25",
			"a temperature history between −25 and 60 °C"))
	}
	p.Duration("From", from, 0, longest)
	p.Duration("To", to, max(from, 0), longest)
	return p.ErrFor(h)
}

// Shift is the history as seen from a later start: what was at start is at 0. Errors: as [History.Mean].
func (h History) Shift(start time.Duration) (History, error) { return h.shift(start, longest) }

// shift is the history from a later start, with what it takes to know it until enough has passed.
func (h History) shift(start, enough time.Duration) (History, error) {
	if err := h.interval(start, longest); err != nil {
		return History{}, err
	}
	s := hours(start)
	i := h.after(s)
	out := History{measured: h.measured, notes: h.notes, label: h.label}
	out.knots = append(out.knots, exact(0, h.celsius(s)))
	for _, k := range h.knots[i:] {
		out.add(exact(k.Hour-s, k.Celsius))
		if k.Hour-s > hours(enough)+1 {
			break
		}
	}
	return out, nil
}

// Stretch is a part of a joined history.
type Stretch struct {
	History History          `json:"history"`
	For     quantity.Elapsed `json:"for,omitzero"` // how long; ignored for the last part, which goes on
}

// Join puts histories one after the other: each part is used from its own start for its length, the last one goes on.
// Where the temperatures at a seam differ, the dough jumps: [Piece] and [Relaxing] starting from the temperature the
// dough has then avoid that. Errors: ErrRequired without parts or for a zero History; ErrOutOfRange for a length that
// is not positive or over 366 days.
func Join(parts ...Stretch) (History, error) { return join(parts, true) }

// join puts the parts one after the other, and only when told to says what they are.
func join(parts []Stretch, told bool) (History, error) {
	var p problems
	if len(parts) == 0 {
		p.Required("Parts", quantity.Tell("ferment.want_at_least_one_part", "at least one part"))
	}
	for i, part := range parts {
		path := fmt.Sprintf("[%d]", i)
		if part.History.IsZero() {
			p.Required(path+".History", quantity.Tell("ferment.want_temperature_history_between_minus_25",
				"a temperature history between −25 and 60 °C"))
		}
		if i+1 < len(parts) {
			p.Duration(path+".For", part.For.Duration(), time.Second, longest)
		}
	}
	if err := p.ErrFor(nil); err != nil {
		return History{}, err
	}
	var out History
	start := 0.0
	for i, part := range parts {
		h, last := part.History, i+1 == len(parts)
		end := math.Inf(1)
		if !last {
			end = hours(part.For.Duration())
		}
		for _, k := range h.knots {
			if k.Hour >= end {
				break
			}
			out.add(exact(start+k.Hour, k.Celsius))
		}
		said := h.label
		if !last {
			out.add(exact(start+end, h.endingAt(end)))
			start += end
		}
		if told && !last {
			said = working.Tell("ferment.stretch", "%v for %v", h.label, part.For)
		}
		switch {
		case i == 0:
			out.label = said
		case told:
			out.label = working.Tell("ferment.then", "%v, then %v", out.label, said)
		}
		out.measured = h.measured
		out.notes = append(out.notes, h.notes...)
	}
	return out, nil
}

// add appends a knot unless it repeats the last one.
func (h *History) add(k knot) {
	if n := len(h.knots); n == 0 || h.knots[n-1] != k {
		h.knots = append(h.knots, k)
	}
}

// after is the index of the first knot later than t.
func (h History) after(t float64) int {
	return sort.Search(len(h.knots), func(i int) bool { return h.knots[i].Hour > t })
}
