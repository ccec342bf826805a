package quantity

import "time"

// Range is a prediction, or a span to stay in, of a quantity: it lies between Low and High, both
// included. Where it is a prediction, it does so with the stated probability, and Likely is its median;
// where it is a span from a table, both are zero and are left out of text and JSON. Times have [TimeRange] and
// [Window].
type Range[T interface {
	Compare(T) int
	String() string
}] struct {
	Low         T       `json:"low"`
	Likely      T       `json:"likely,omitzero"`
	High        T       `json:"high"`
	Probability Percent `json:"probability,omitzero"`
}

// String prints "24 °C to 26 °C (80 %), likely 25 °C".
func (r Range[T]) String() string {
	out := r.Low.String() + " to " + r.High.String()
	if !r.Probability.IsZero() {
		out += " (" + r.Probability.String() + ")"
	}
	var none T
	if r.Likely.Compare(none) != 0 {
		out += ", likely " + r.Likely.String()
	}
	return out
}

// Contains reports whether v lies between Low and High.
func (r Range[T]) Contains(v T) bool { return v.Compare(r.Low) >= 0 && v.Compare(r.High) <= 0 }

// Window is a span of clock time, from From up to To.
type Window struct {
	From time.Time `json:"from"`
	To   time.Time `json:"to"`
}

// String prints both moments to the minute, the second without its date when it is the same day:
// "Sat 2026-11-28 06:40 to 07:25".
func (w Window) String() string {
	const moment = "Mon 2006-01-02 15:04"
	to := w.To.Format(moment)
	if w.From.Format(time.DateOnly) == w.To.Format(time.DateOnly) {
		to = w.To.Format("15:04")
	}
	return w.From.Format(moment) + " to " + to
}

// Duration returns To − From.
func (w Window) Duration() time.Duration { return w.To.Sub(w.From) }

// Contains reports whether t lies in the window, its ends included.
func (w Window) Contains(t time.Time) bool { return !t.Before(w.From) && !t.After(w.To) }

// IsZero reports whether the window is not given.
func (w Window) IsZero() bool { return w.From.IsZero() && w.To.IsZero() }
