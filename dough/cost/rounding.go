package cost

import "example.org/maslin/internal/enum"

// MoneyRounding says how an amount of money is rounded.
type MoneyRounding int

// The roundings.
const (
	// MoneyExact keeps the exact fraction for further arithmetic.
	MoneyExact MoneyRounding = iota
	// MoneyUp rounds up: the trade's habit for unit costs.
	MoneyUp
	// MoneyHalfUp rounds to the nearest, halves up.
	MoneyHalfUp
	// MoneyHalfEven rounds to the nearest, halves to even.
	MoneyHalfEven
)

var roundings = enum.Of[MoneyRounding]("rounding of money", "exact", "up", "half up", "half even")

// String names the rounding: "half up".
func (m MoneyRounding) String() string { return roundings.String(m) }

// MarshalText implements encoding.TextMarshaler.
func (m MoneyRounding) MarshalText() ([]byte, error) { return roundings.Marshal(m) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (m *MoneyRounding) UnmarshalText(text []byte) error { return roundings.Unmarshal(m, text) }
