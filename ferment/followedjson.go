package ferment

import (
	"encoding/json"
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/gasbalance"
)

// followedData is a [Followed] as JSON.
type followedData struct {
	Bulk     Bulk        `json:"bulk"`
	Readings int         `json:"readings"`
	Hour     float64     `json:"hour"`    // of the last reading
	Celsius  float64     `json:"celsius"` // of the last reading
	State    [18]float64 `json:"state"`
	Passed   []float64   `json:"passed,omitempty"` // hours
}

// MarshalJSON writes all that is needed to go on following; null for the zero Followed.
func (f Followed) MarshalJSON() ([]byte, error) {
	if f.d == nil {
		return []byte("null"), nil
	}
	out := followedData{Bulk: f.bulk, Readings: f.readings, Hour: f.last.Hour, Celsius: f.last.Celsius,
		State: f.state.Floats()}
	for _, h := range f.passed {
		if !math.IsNaN(h) {
			out.Passed = append(out.Passed, h)
		}
	}
	return json.Marshal(out)
}

// UnmarshalJSON reads what MarshalJSON wrote. Errors: as [Bulk.Follow]; ErrInconsistent for numbers no dough comes to.
func (f *Followed) UnmarshalJSON(data []byte) error {
	*f = Followed{}
	if string(data) == "null" {
		return nil
	}
	var in followedData
	if err := quantity.ReadJSON(data, &in); err != nil {
		return err
	}
	var p problems
	p.Float("Celsius", in.Celsius, tableLow, tableHigh, "°C")
	p.Float("Hour", in.Hour, 0, hours(Horizon), "h")
	p.Int("Readings", in.Readings, 1, math.MaxInt32)
	for _, v := range in.State {
		if math.IsNaN(v) || math.IsInf(v, 0) || in.State[0] < 0 || in.State[1] < 0 || in.State[2] < 0 {
			p.Add(
				"State",
				quantity.Tell("ferment.got_numbers_contradict_each_other", "numbers that contradict each other"),
				quantity.Tell("ferment.want_what_following_dough_comes_to", "what following a dough comes to"),
				quantity.ErrInconsistent,
			)
			break
		}
	}
	if len(in.Passed) > len(f.passed) {
		p.Add("Passed", len(in.Passed), quantity.Tell("ferment.want_at_most_three_hours", "at most three hours"),
			errOutOfRange)
	}
	if err := p.ErrFor(in); err != nil {
		return err
	}
	out, err := in.Bulk.Follow(quantity.Celsius(in.Celsius))
	if err != nil {
		return err
	}
	out.readings, out.last, out.state = in.Readings, knot{
		Hour:    in.Hour,
		Celsius: in.Celsius,
	}, gasbalance.StateOf(in.State)
	copy(out.passed[:], in.Passed)
	*f = out
	return nil
}

// Equal reports whether two followed doughs are at the same point: the same input, readings and state.
func (f Followed) Equal(o Followed) bool {
	if f.d == nil || o.d == nil {
		return f.d == o.d
	}
	same := f.readings == o.readings && f.last == o.last && f.state == o.state && f.d.start == o.d.start &&
		f.d.need == o.d.need && f.d.belief == o.d.belief
	for i := range f.passed {
		same = same && (f.passed[i] == o.passed[i] || math.IsNaN(f.passed[i]) && math.IsNaN(o.passed[i]))
	}
	return same
}
