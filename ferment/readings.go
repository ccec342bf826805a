package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Readings is a temperature history from a probe's log or a handful of jotted values; between them the temperature runs
// straight, before the first and after the last it is held.
type Readings struct {
	Points []Knot `json:"points"`
	// MaxGap is the longest time without a reading that straight lines may bridge; zero means 4 hours.
	MaxGap quantity.Elapsed `json:"max_gap,omitzero"`
}

// standardGap: within 4 hours even a kilogram of dough moved to a refrigerator does most of its cooling, so a longer
// gap hides it.
const standardGap = 4 * time.Hour

// History makes the history. Errors: ErrRequired without readings; ErrInconsistent for readings out of order or twice
// at the same time, or a gap longer than MaxGap; ErrOutOfRange for times before 0 or temperatures that no dough has.
// Readings that look like Fahrenheit taken for Celsius are refused when no dough could be so warm, and noted when one
// could.
func (r Readings) History() (History, error) {
	var p problems
	gap := r.MaxGap.Duration()
	if gap == 0 {
		gap = standardGap
	}
	p.Duration("MaxGap", gap, time.Second, longest)
	if len(r.Points) == 0 {
		p.Required("Points", quantity.Tell("ferment.want_at_least_one_reading", "at least one reading"))
		return History{}, p.ErrFor(r)
	}
	h := History{knots: make([]knot, len(r.Points)), measured: true}
	suspect := looksLikeFahrenheit(r.Points)
	lo, hi := math.Inf(1), math.Inf(-1)
	last := time.Duration(-1)
	faults := 0
	for i := range r.Points {
		x := &r.Points[i]
		c, at := x.Temperature.Celsius(), x.At.Duration() // NaN when not given
		if !(c >= tableLow && c <= tableHigh && at > last && at <= longest && (i == 0 || at-last <= gap)) {
			if faults++; faults <= mostFaults { // further faults of a million readings add nothing
				x.fault(&p, i, last, gap, suspect)
			}
		}
		lo, hi = min(lo, c), max(hi, c)
		h.knots[i] = exact(hours(at), c)
		last = at
	}
	if err := p.ErrFor(r); err != nil {
		return History{}, err
	}
	if suspect {
		h.notes = append(h.notes, working.Tell("ferment.looks_like_fahrenheit",
			"every reading is at least 33 °C and would be an ordinary dough or refrigerator temperature in °F: was °F taken "+
				"for °C?"))
	}
	h.label = working.Tell("ferment.readings", "%d {1|reading|readings} over %v, %.1f to %.1f", len(h.knots),
		r.Points[len(r.Points)-1].At, degrees(lo), degrees(hi))
	return h, nil
}

const mostFaults = 20

// fault says what is wrong with reading i.
func (x *Knot) fault(p *problems, i int, last, gap time.Duration, suspect bool) {
	t := x.Temperature
	switch path := fmt.Sprintf("Points[%d].Temperature", i); {
	case !t.IsValid():
		p.Required(path, quantity.Tell("ferment.want_minus_25_c_to_60", "−25 °C to 60 °C"))
	case t.Compare(lowestTemperature) < 0 || t.Compare(highestTemperature) > 0:
		want := quantity.Tell("ferment.want_minus_25_c_to_60", "−25 °C to 60 °C")
		if suspect {
			want = quantity.Tell("ferment.want_no_fahrenheit", "%v (these readings look like °F taken for °C)", want)
		}
		p.Add(path, t, want, errOutOfRange)
	}
	switch path, at := fmt.Sprintf("Points[%d].At", i), x.At.Duration(); {
	case at < 0 || at > longest:
		p.Duration(path, at, 0, longest)
	case at <= last:
		p.Add(path, x.At,
			quantity.Tell("ferment.want_after_reading_before_at", "after the reading before it, at %v", last),
			quantity.ErrInconsistent)
	case i > 0 && at-last > gap:
		p.Add(path, quantity.Tell("ferment.got_gap", "a gap of %v", at-last),
			quantity.Tell("ferment.want_at_most_without_reading", "at most %v without a reading", gap), quantity.ErrInconsistent)
	}
}

// looksLikeFahrenheit: all between 33 and 110 as they stand, which as °F is 0.6 to 43 °C, and at least 33 °C
// is far above any bulk but a proofing box.
func looksLikeFahrenheit(points []Knot) bool {
	for _, x := range points {
		if c := x.Temperature.Celsius(); !(c >= 33 && c <= 110) {
			return false
		}
	}
	return true
}
