package wallclock

import "example.org/maslin/internal/enum"

// Policy says which instant a moment means when the clocks skip it or show it twice.
type Policy int

// The policies. The zero value is the rule of the calendar standard.
const (
	// RFC5545 reads a skipped time with the offset from before the gap (so it is shown later),
	// and takes the first of two. Source: RFC 5545 (2009), section 3.3.5.
	RFC5545 Policy = iota
	// Earlier takes the earlier instant: a skipped time is read with the offset from after the gap,
	// and of two the first is taken.
	Earlier
	// Later takes the later instant: a skipped time is read with the offset from before the
	// gap, and of two the last is taken.
	Later
	// Refuse gives an error that names the two nearest real times.
	Refuse
)

var policies = enum.Of[Policy]("policy", "rfc5545", "earlier", "later", "refuse")

// IsValid reports whether it is one of the four.
func (p Policy) IsValid() bool { return policies.Has(p) }

// String prints the name.
func (p Policy) String() string { return policies.String(p) }

// MarshalText implements encoding.TextMarshaler.
func (p Policy) MarshalText() ([]byte, error) { return policies.Marshal(p) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints. The empty text is the zero value.
func (p *Policy) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*p = RFC5545
		return nil
	}
	return policies.Unmarshal(p, text)
}
