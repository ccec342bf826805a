package quantity

import "time"

// TimeRange is a prediction about something alive or something in an oven: it lies between
// Early and Late with the stated probability, and Likely is its median. It is never one number.
type TimeRange struct {
	Early, Likely, Late time.Duration
	Probability         Percent
}

// String prints "5h10m to 7h25m (80 %), likely 6h10m", to the minute.
func (r TimeRange) String() string {
	f := func(d time.Duration) string { return FormatDuration(d.Round(time.Minute)) }
	return f(r.Early) + " to " + f(r.Late) + " (" + r.Probability.String() + "), likely " + f(r.Likely)
}

// Add returns the range shifted by d: what follows a fixed step of that length.
func (r TimeRange) Add(d time.Duration) TimeRange {
	return TimeRange{Early: r.Early + d, Likely: r.Likely + d, Late: r.Late + d, Probability: r.Probability}
}

// Spread returns Late − Early.
func (r TimeRange) Spread() time.Duration { return r.Late - r.Early }

// Contains reports whether d lies between Early and Late.
func (r TimeRange) Contains(d time.Duration) bool { return d >= r.Early && d <= r.Late }
