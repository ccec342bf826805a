package gasbalance

import "math"

// Score is how well ranges have held: of each bake logged, how far it fell from what was expected of it before it
// was known. It is added up; it is a record of what was said, so that it is never worked out again from what was
// learned later.
type Score struct {
	// Squares is Σ z², z the distance in the standard deviations expected (of Student's form as of a normal one),
	// bounded; Weight is Σ w.
	Squares float64 `json:"squares"`
	Weight  float64 `json:"weight"`
	// Foretold is the log of how likely all bakes were by what was expected of each.
	Foretold float64 `json:"foretold"`
	// Inside of Ranges is how many of the 80 % ranges that were given held their bake.
	Inside int `json:"inside"`
	Ranges int `json:"ranges"`
}

// wild is beyond how many standard deviations a bake says ever less of the spread of ordinary ones, by the fourth
// power: judgment.
const (
	wild     = 2.5
	mostWild = 1.25 // of the stretch so far, which wild bakes must not widen for the next ones
)

// ordinarySquares is the mean over a standard normal z of z² so bounded, by quadrature.
const ordinarySquares = 0.96257

func (s *Score) add(z, stretch float64) {
	squares := z * z / ordinarySquares
	if x := wild * math.Min(stretch, mostWild) / math.Abs(z); x < 1 {
		squares *= x * x * x * x
	}
	s.Squares += squares
	s.Weight++
}

// given counts a range that was given.
func (s *Score) given(held bool) {
	s.Ranges++
	if held {
		s.Inside++
	}
}

func (s *Score) merge(t Score) {
	s.Squares += t.Squares
	s.Weight += t.Weight
	s.Foretold += t.Foretold
	s.Inside += t.Inside
	s.Ranges += t.Ranges
}

// trusted is on how many bakes the stated beliefs count as having been scored, judgment.
const trusted = 3.0

// Stretch is the factor by which ranges have been too narrow, drawn toward 1 while there are few: √((ν + Σ z²)/(ν +
// n)).
func (s Score) Stretch() float64 {
	return math.Max(0.7, math.Sqrt((trusted+s.Squares)/(trusted+s.Weight)))
}
