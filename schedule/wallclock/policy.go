package wallclock

import "example.org/maslin/dough/quantity"

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

const policyWant = `"rfc5545", "earlier", "later" or "refuse"`

var policyNames = [...]string{"rfc5545", "earlier", "later", "refuse"}

// IsValid reports whether it is one of the four.
func (p Policy) IsValid() bool { return p >= RFC5545 && p <= Refuse }

// String prints the name.
func (p Policy) String() string {
	if !p.IsValid() {
		return "unknown policy"
	}
	return policyNames[p]
}

// ParsePolicy reads the name of a policy.
func ParsePolicy(text string) (Policy, error) {
	for i, name := range policyNames {
		if text == name {
			return Policy(i), nil
		}
	}
	return 0, refuse(text, policyWant)
}

// AppendText implements encoding.TextAppender.
func (p Policy) AppendText(b []byte) ([]byte, error) {
	if !p.IsValid() {
		return b, &quantity.InputError{Got: p.String(), Want: policyWant, Err: quantity.ErrOutOfRange}
	}
	return append(b, p.String()...), nil
}

// MarshalText implements encoding.TextMarshaler.
func (p Policy) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParsePolicy]. An empty text is the
// zero value.
func (p *Policy) UnmarshalText(text []byte) error { return unmarshal(p, text, ParsePolicy) }
