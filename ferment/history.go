package ferment

import (
	"fmt"
	"math"
	"sort"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// History is the temperature of a dough over time: straight lines between knots, from time 0 on; after the last knot the
// last temperature is held. Make one with [Constant], [Readings], [Relaxing], [Piece] or [Join]. It is immutable; the
// zero value is no history and is refused by every calculation.
type History struct {
	knots []knot
	// measured says that the end is the end of what is known, so that leaning on it is worth a note.
	measured bool
	notes    []working.Message
	label    working.Message
}

// knot is a temperature at a time; two at the same time are a jump.
type knot struct {
	h float64 // hours
	c float64 // °C
}

// Constant is a dough that stays at one temperature. A temperature that is not given or outside −25 to 60 °C makes no
// history, which the calculations report.
func Constant(t quantity.Temperature) History {
	if !t.IsValid() || t.Compare(lowestTemperature) < 0 || t.Compare(highestTemperature) > 0 {
		return History{}
	}
	return History{knots: []knot{{0, t.Celsius()}}, label: working.Say("held at %v", t)}
}

// IsZero reports whether there is no history.
func (h History) IsZero() bool { return len(h.knots) == 0 }

// String says what the history is, in metric units: "held at 24 °C".
func (h History) String() string { return h.Message().String() }

// Message says what the history is, for the units of its reader.
func (h History) Message() working.Message {
	if h.IsZero() {
		return working.Say("no history")
	}
	return h.label
}

// Known is how long the history lasts; after it the last temperature is held.
func (h History) Known() time.Duration {
	if h.IsZero() {
		return 0
	}
	return span(h.knots[len(h.knots)-1].h)
}

// Notes are things to know about the history, such as readings that look like another unit.
func (h History) Notes() []working.Message { return append([]working.Message(nil), h.notes...) }

// At is the dough's temperature at a time; before 0 it is that at 0. At a jump it is the later one. The zero
// History gives no temperature.
func (h History) At(t time.Duration) quantity.Temperature {
	if h.IsZero() {
		return quantity.Temperature{}
	}
	return degrees(h.celsius(hours(t)))
}

// after is the index of the first knot later than t.
func (h History) after(t float64) int {
	return sort.Search(len(h.knots), func(i int) bool { return h.knots[i].h > t })
}

func (h History) celsius(t float64) float64 {
	i := h.after(t)
	switch i {
	case 0:
		return h.knots[0].c
	case len(h.knots):
		return h.knots[i-1].c
	}
	return between(h.knots[i-1], h.knots[i], t)
}

func between(p, q knot, t float64) float64 { return p.c + (q.c-p.c)*(t-p.h)/(q.h-p.h) }

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
	h.segments(hours(from), hours(to), func(p, q knot) { sum += (q.h - p.h) * (p.c + q.c) / 2 })
	return degrees(sum / (hours(to) - hours(from))), nil
}

// Knot is a temperature at a time from the start: a probe's reading, or a corner of a [History].
type Knot struct {
	At          quantity.Elapsed     `json:"at"`
	Temperature quantity.Temperature `json:"temperature"`
}

// Knots lists the corners of the history: for plotting. Times are rounded to the second.
func (h History) Knots() []Knot {
	out := make([]Knot, len(h.knots))
	for i, k := range h.knots {
		out[i] = Knot{quantity.Elapsed(span(k.h)), degrees(k.c)}
	}
	return out
}

// longest bounds every time asked about.
const longest = 366 * 24 * time.Hour

func (h History) interval(from, to time.Duration) error {
	var p problems
	if h.IsZero() {
		p.Required("History", "a temperature history between −25 and 60 °C")
	}
	p.Duration("From", from, 0, longest)
	p.Duration("To", to, max(from, 0), longest)
	return p.Err()
}

// segments visits the straight runs between two times, the held end included.
func (h History) segments(from, to float64, visit func(p, q knot)) {
	i := h.after(from)
	p := knot{from, h.celsius(from)}
	for ; i < len(h.knots) && h.knots[i].h < to; i++ {
		q := h.knots[i]
		if q.h > p.h {
			visit(p, q)
		}
		p = q
	}
	q := knot{to, p.c}
	if i < len(h.knots) {
		q.c = between(p, h.knots[i], to)
		if h.knots[i].h == to {
			q.c = h.knots[i].c
		}
	}
	if q.h > p.h {
		visit(p, q)
	}
}

// Shift is the history as seen from a later start: what was at start is at 0. Errors: as [History.Mean].
func (h History) Shift(start time.Duration) (History, error) {
	if err := h.interval(start, longest); err != nil {
		return History{}, err
	}
	s := hours(start)
	i := h.after(s)
	out := History{measured: h.measured, notes: h.notes, label: h.label}
	out.knots = append(out.knots, knot{0, h.celsius(s)})
	for _, k := range h.knots[i:] {
		out.knots = append(out.knots, knot{k.h - s, k.c})
	}
	return out, nil
}

// Stretch is a part of a joined history.
type Stretch struct {
	History History          `json:"history"`
	For     quantity.Elapsed `json:"for,omitzero"` // how long; ignored for the last part, which goes on
}

// Join puts histories one after the other: each part is used from its own start for its length, the last one goes on. Where the
// temperatures at a seam differ, the dough jumps: [Piece] and [Relaxing] starting from
// the temperature the dough has then avoid that. Errors: ErrRequired without parts or for a zero History; ErrOutOfRange for
// a length that is not positive or over 366 days.
func Join(parts ...Stretch) (History, error) {
	var p problems
	if len(parts) == 0 {
		p.Required("Parts", "at least one part")
	}
	for i, part := range parts {
		path := fmt.Sprintf("[%d]", i)
		if part.History.IsZero() {
			p.Required(path+".History", "a temperature history between −25 and 60 °C")
		}
		if i+1 < len(parts) {
			p.Duration(path+".For", part.For.Duration(), time.Second, longest)
		}
	}
	if err := p.Err(); err != nil {
		return History{}, err
	}
	var out History
	start := 0.0
	for i, part := range parts {
		h := part.History
		end := math.Inf(1)
		if i+1 < len(parts) {
			end = hours(part.For.Duration())
		}
		for _, k := range h.knots {
			if k.h >= end {
				break
			}
			out.add(knot{start + k.h, k.c})
		}
		if i+1 < len(parts) {
			out.add(knot{start + end, h.endingAt(end)})
			start += end
			out.label = working.Say("%v%v for %s, then ", out.label, h.label, part.For)
		} else {
			out.label = working.Say("%v%v", out.label, h.label)
		}
		out.measured = h.measured
		out.notes = append(out.notes, h.notes...)
	}
	return out, nil
}

// endingAt is the temperature just before a time, where a jump has not yet happened.
func (h History) endingAt(t float64) float64 {
	i := sort.Search(len(h.knots), func(i int) bool { return h.knots[i].h >= t })
	switch i {
	case 0:
		return h.knots[0].c
	case len(h.knots):
		return h.knots[i-1].c
	}
	return between(h.knots[i-1], h.knots[i], t)
}

// add appends a knot unless it repeats the last one.
func (h *History) add(k knot) {
	if n := len(h.knots); n == 0 || h.knots[n-1] != k {
		h.knots = append(h.knots, k)
	}
}

// follow makes a history of a function by halving steps until straight lines are within tolerance
// of it, °C. Marks are times where it may have corners, in order.
func follow(f func(hour float64) float64, marks []float64, tolerance float64) []knot {
	var out []knot
	emit := func(k knot) {
		if n := len(out); n == 0 || out[n-1].h < k.h {
			out = append(out, k)
		}
	}
	var split func(p, q knot, depth int)
	split = func(p, q knot, depth int) {
		fits := true
		for _, x := range [3]float64{0.25, 0.5, 0.75} {
			t := p.h + x*(q.h-p.h)
			if math.Abs(f(t)-between(p, q, t)) > tolerance {
				fits = false
				break
			}
		}
		if fits || depth == 0 {
			emit(q)
			return
		}
		m := (p.h + q.h) / 2
		mid := knot{m, f(m)}
		split(p, mid, depth-1)
		split(mid, q, depth-1)
	}
	p := knot{marks[0], f(marks[0])}
	emit(p)
	for _, m := range marks[1:] {
		q := knot{m, f(m)}
		split(p, q, 14)
		p = q
	}
	return out
}
