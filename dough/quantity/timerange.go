package quantity

import (
	"encoding/json"
	"time"
)

// TimeRange is a prediction about something alive or something in an oven: it lies between
// Early and Late with the stated probability, and Likely is its median. It is never one number.
type TimeRange struct {
	Early, Likely, Late time.Duration
	Probability         Percent
}

// timeRangeData is the form of a TimeRange in JSON, with its durations as text.
type timeRangeData struct {
	Early       Elapsed `json:"early"`
	Likely      Elapsed `json:"likely"`
	Late        Elapsed `json:"late"`
	Probability Percent `json:"probability"`
}

// String prints "5h10m to 7h25m (80 %), likely 6h10m", to the minute; "15m" where all three are that.
func (r TimeRange) String() string {
	f := func(d time.Duration) string { return FormatDuration(d.Round(time.Minute)) }
	if one := f(r.Likely); one == f(r.Early) && one == f(r.Late) {
		return one
	}
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

// MarshalJSON implements json.Marshaler:
// {"early":"5h10m","likely":"6h10m","late":"7h25m","probability":"80 %"}.
func (r TimeRange) MarshalJSON() ([]byte, error) {
	return json.Marshal(timeRangeData{Elapsed(r.Early), Elapsed(r.Likely), Elapsed(r.Late), r.Probability})
}

// UnmarshalJSON implements json.Unmarshaler; see [ReadJSON].
func (r *TimeRange) UnmarshalJSON(text []byte) error {
	var d timeRangeData
	if err := ReadJSON(text, &d); err != nil {
		return err
	}
	*r = TimeRange{time.Duration(d.Early), time.Duration(d.Likely), time.Duration(d.Late), d.Probability}
	return nil
}
