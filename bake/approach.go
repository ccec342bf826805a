package bake

import (
	"math"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// Approach is how a core nears the boiling point.
type Approach int

// The approaches. The zero value is the better of the two.
const (
	// Quickening: the time constant itself shrinks as the crumb warms, τ = τ∞·(1 + 1.5·y²) with y the
	// distance to boiling over 75 °C, because vapor in the pores carries more and more of the heat. The
	// factor 1.5 was fitted to numerical solutions with a moving evaporation front, not to bread.
	Quickening Approach = iota
	// Exponential: the distance to the boiling point shrinks by the same share every minute. One time
	// constant, as in the late part of any heating with constant properties.
	Exponential
)

var approaches = enum.Of[Approach]("approach to boiling", "quickening", "exponential")

// String names the approach.
func (a Approach) String() string { return approaches.String(a) }

// MarshalText implements encoding.TextMarshaler.
func (a Approach) MarshalText() ([]byte, error) { return approaches.Marshal(a) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (a *Approach) UnmarshalText(text []byte) error { return approaches.Unmarshal(a, text) }

const (
	quicken = 1.5  // the factor of y²
	scaleOf = 75.0 // °C, from a dough of 25 °C to boiling at sea level
)

// ordinate turns a distance below boiling into a number that falls in a straight line with time, with slope
// −1/τ.
func (a Approach) ordinate(below float64) float64 {
	if a == Quickening {
		y := below / scaleOf
		return math.Log(below) + quicken/2*y*y
	}
	return math.Log(below)
}

// slope is the derivative of the ordinate: how far an error of 1 °C moves it.
func (a Approach) slope(below float64) float64 {
	if a == Quickening {
		y := below / scaleOf
		return (1 + quicken*y*y) / below
	}
	return 1 / below
}

// below inverts ordinate.
func (a Approach) below(ordinate float64) float64 {
	d := math.Exp(ordinate)
	if a == Quickening {
		for range 40 {
			step := (a.ordinate(d) - ordinate) / a.slope(d)
			d = math.Max(d-step, d/4)
			if math.Abs(step) < 1e-12*d {
				break
			}
		}
	}
	return d
}

func (a Approach) source() working.Source {
	if a == Quickening {
		return sources.Judged(
			"time constant that shrinks as the crumb warms, fitted to numerical solutions with a moving evaporation front",
		)
	}
	return sources.Zanoni1993
}
