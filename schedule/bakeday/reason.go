package bakeday

import (
	"example.org/maslin/dough/quantity"
)

// Reason says, for programs, why a day has no timetable.
type Reason int

// The reasons.
const (
	Clash       Reason = iota + 1 // rules that cannot all be kept
	RisesTooFar                   // even unrisen dough would rise beyond what is wanted in the cold
	TimeRanOut                    // the time given for planning ran out before anything was found or ruled out
)

func reasonWords() []string {
	return []string{Clash: "clash", RisesTooFar: "rises too far", TimeRanOut: "time ran out"}
}

// String names the reason; the zero value is an empty text.
func (r Reason) String() string {
	if r < 0 || int(r) >= len(reasonWords()) {
		return "unknown reason"
	}
	return reasonWords()[r]
}

// MarshalText implements encoding.TextMarshaler.
func (r Reason) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText implements encoding.TextUnmarshaler.
func (r *Reason) UnmarshalText(text []byte) error {
	for i, name := range reasonWords() {
		if name == string(text) {
			*r = Reason(i)
			return nil
		}
	}
	return &quantity.InputError{Got: quantity.Excerpt(string(text)), Want: "clash, rises too far or time ran out", Err: quantity.ErrOutOfRange}
}
