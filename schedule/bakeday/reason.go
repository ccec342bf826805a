package bakeday

import "example.org/maslin/internal/enum"

// Reason says, for programs, why a day has no timetable.
type Reason int

// The reasons.
const (
	Clash       Reason = iota + 1 // rules that cannot all be kept
	RisesTooFar                   // even unrisen dough would rise beyond what is wanted in the cold
	TimeRanOut                    // the time given for planning ran out before anything was found or ruled out
)

var reasons = enum.Of[Reason]("reason", "", "clash", "rises too far", "time ran out")

// String names the reason; the zero value is an empty text.
func (r Reason) String() string { return reasons.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r Reason) MarshalText() ([]byte, error) { return reasons.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (r *Reason) UnmarshalText(text []byte) error { return reasons.Unmarshal(r, text) }
