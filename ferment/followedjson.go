package ferment

import (
	"encoding/json"
	"math"
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/gasbalance"
)

// followedFormat grows when a field of the stored form changes its meaning.
const followedFormat = 1

// followedData is a [Followed] as JSON. State and Passed are for reading back alone.
type followedData struct {
	Format   int         `json:"format"`
	Bulk     Bulk        `json:"bulk"`
	Readings int         `json:"readings"`
	Last     Knot        `json:"last"`
	State    [18]float64 `json:"state"`
	Passed   []float64   `json:"passed,omitempty"` // hours
}

// MarshalJSON writes all that is needed to go on following; null for the zero Followed.
func (f Followed) MarshalJSON() ([]byte, error) {
	if f.d == nil {
		return []byte("null"), nil
	}
	out := followedData{Format: followedFormat, Bulk: f.bulk, Readings: f.readings, Last: f.Last(),
		State: f.state.Floats()}
	for _, h := range f.passed {
		if !math.IsNaN(h) {
			out.Passed = append(out.Passed, h)
		}
	}
	return json.Marshal(out)
}

// UnmarshalJSON reads what MarshalJSON wrote. Errors: as [Bulk.Follow]; ErrOutOfRange for an unknown format;
// ErrInconsistent for numbers no dough comes to.
func (f *Followed) UnmarshalJSON(data []byte) error {
	*f = Followed{}
	if string(data) == "null" {
		return nil
	}
	var in followedData
	if err := quantity.ReadJSON(data, &in); err != nil {
		return err
	}
	if err := in.check(); err != nil {
		return err
	}
	out, err := in.Bulk.Follow(in.Last.Temperature)
	if err != nil {
		var p problems
		p.Join("Bulk", err)
		return p.ErrFor(in)
	}
	out.readings, out.state = in.Readings, gasbalance.StateOf(in.State)
	out.last = knot{Hour: hours(in.Last.At.Duration()), Celsius: in.Last.Temperature.Celsius()}
	copy(out.passed[:], in.Passed)
	*f = out
	return nil
}

func (in followedData) check() error {
	var p problems
	if in.Format != followedFormat {
		p.Add("Format", in.Format, quantity.Tell("ferment.want_format", "%d", followedFormat), errOutOfRange)
		return p.ErrFor(in)
	}
	p.Int("Readings", in.Readings, 1, math.MaxInt32)
	p.Duration("Last.At", in.Last.At.Duration(), 0, Horizon)
	p.Join("Last", (&Followed{bulk: in.Bulk}).checkTemperature(in.Last.Temperature))
	if slices.Min(in.State[:3]) < 0 { // cells and gas
		p.Add("State",
			quantity.Tell("ferment.got_numbers_contradict_each_other", "numbers that contradict each other"),
			quantity.Tell("ferment.want_what_following_dough_comes_to", "what following a dough comes to"),
			quantity.ErrInconsistent)
	}
	if len(in.Passed) > len(Followed{}.passed) {
		p.Add("Passed", len(in.Passed), quantity.Tell("ferment.want_at_most_three_hours", "at most three hours"),
			errOutOfRange)
	}
	return p.ErrFor(in)
}

// Equal reports whether two followed doughs are at the same point: the same input, readings and state.
func (f Followed) Equal(o Followed) bool {
	if f.d == nil || o.d == nil {
		return f.d == o.d
	}
	same := f.readings == o.readings && f.last == o.last && f.state == o.state && f.d.start == o.d.start &&
		f.d.need == o.d.need && f.d.belief == o.d.belief && f.d.formula == o.d.formula && f.bulk.Law == o.bulk.Law &&
		f.bulk.Extrapolate == o.bulk.Extrapolate
	for i := range f.passed {
		same = same && (f.passed[i] == o.passed[i] || math.IsNaN(f.passed[i]) && math.IsNaN(o.passed[i]))
	}
	return same
}
