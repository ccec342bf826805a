package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
)

// Reading is one temperature of the dough, or of what it stands in, at a time from the start.
type Reading struct {
	At          time.Duration
	Temperature quantity.Temperature
}

// Readings is a temperature history from a probe's log or a handful of jotted values; between them the temperature runs
// straight, before the first and after the last it is held.
type Readings struct {
	Points []Reading
	// MaxGap is the longest time without a reading that straight lines may bridge; zero means 4 hours.
	MaxGap time.Duration
}

// standardGap: within 4 hours even a kilogram of dough moved to a refrigerator does most of its cooling, so a longer gap hides it.
const standardGap = 4 * time.Hour

// History makes the history. Errors: ErrRequired without readings; ErrInconsistent for readings out of order or twice at the
// same time, or a gap longer than MaxGap; ErrOutOfRange for times before 0 or temperatures that
// no dough has. Readings that look like Fahrenheit taken for Celsius are refused when no dough could be so warm,
// and noted when one could.
func (r Readings) History() (History, error) {
	var p problems
	gap := r.MaxGap
	if gap == 0 {
		gap = standardGap
	}
	p.Duration("MaxGap", gap, time.Second, longest)
	if len(r.Points) == 0 {
		p.Required("Points", "at least one reading")
		return History{}, p.Err()
	}
	h := History{knots: make([]knot, 0, len(r.Points)), measured: true}
	suspect := looksLikeFahrenheit(r.Points)
	const most = 20 // further faults of a million readings add nothing
	faults := 0
	for i, x := range r.Points {
		if faults > most {
			break
		}
		t := x.Temperature
		switch {
		case !t.IsValid():
			p.Required(fmt.Sprintf("Points[%d].Temperature", i), "−25 °C to 60 °C")
			faults++
		case t.Compare(lowestTemperature) < 0 || t.Compare(highestTemperature) > 0:
			want := "−25 °C to 60 °C"
			if suspect {
				want += " (these readings look like °F taken for °C)"
			}
			p.Add(fmt.Sprintf("Points[%d].Temperature", i), t.String(), want, errOutOfRange)
			faults++
		}
		switch {
		case x.At < 0 || x.At > longest:
			p.Duration(fmt.Sprintf("Points[%d].At", i), x.At, 0, longest)
			faults++
		case i > 0 && x.At <= r.Points[i-1].At:
			p.Add(fmt.Sprintf("Points[%d].At", i), quantity.FormatDuration(x.At), "after the reading before it, at "+quantity.FormatDuration(r.Points[i-1].At), quantity.ErrInconsistent)
			faults++
		case i > 0 && x.At-r.Points[i-1].At > gap:
			p.Add(fmt.Sprintf("Points[%d].At", i), "a gap of "+quantity.FormatDuration(x.At-r.Points[i-1].At), "at most "+quantity.FormatDuration(gap)+" without a reading", quantity.ErrInconsistent)
			faults++
		}
		h.knots = append(h.knots, knot{hours(x.At), t.Celsius()})
	}
	if err := p.Err(); err != nil {
		return History{}, err
	}
	if suspect {
		h.notes = append(h.notes, "every reading is at least 33 °C and would be an ordinary dough or refrigerator temperature in °F: was °F taken for °C?")
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, k := range h.knots {
		lo, hi = math.Min(lo, k.c), math.Max(hi, k.c)
	}
	h.label = fmt.Sprintf("%d readings over %s, %s to %s °C", len(h.knots), quantity.FormatDuration(r.Points[len(r.Points)-1].At), fixed(lo, 1), fixed(hi, 1))
	return h, nil
}

// looksLikeFahrenheit: all between 33 and 110 as they stand, which as °F is 0.6 to 43 °C, and at least 33 °C
// is far above any bulk but a proofing box.
func looksLikeFahrenheit(points []Reading) bool {
	for _, x := range points {
		if c := x.Temperature.Celsius(); !(c >= 33 && c <= 110) {
			return false
		}
	}
	return true
}
