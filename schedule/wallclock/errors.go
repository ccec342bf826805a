package wallclock

import "example.org/maslin/dough/quantity"

// A reason is a constant, so that no program can put another in its place. The one that it wraps is of package
// quantity.
type reason string

func (r reason) Error() string {
	if r == ErrSyntax {
		return string(r)
	}
	return r.Unwrap().Error() + ": " + string(r)
}

// Phrase tells the reason in the language of its reader: package working asks for it.
func (r reason) Phrase() quantity.Phrase {
	switch r {
	case ErrSkipped:
		return quantity.Tell("wallclock.reason_skipped", "inconsistent: the clocks skip this time")
	case ErrTwice:
		return quantity.Tell("wallclock.reason_twice", "inconsistent: the clocks show this time twice")
	case ErrWeekday:
		return quantity.Tell("wallclock.reason_weekday", "inconsistent: the weekday does not belong to the date")
	}
	return quantity.Tell("wallclock.reason_syntax", "cannot be read")
}

func (r reason) Unwrap() error {
	if r == ErrSyntax {
		return quantity.ErrForm
	}
	return quantity.ErrInconsistent
}

// The reasons this package adds to those of package quantity.
const (
	// ErrSyntax: the text cannot be read.
	ErrSyntax = reason("cannot be read")
	// ErrSkipped: the clocks of the zone never show this time; it lies in a gap.
	ErrSkipped = reason("the clocks skip this time")
	// ErrTwice: the clocks of the zone show this time twice; it lies in a fold.
	ErrTwice = reason("the clocks show this time twice")
	// ErrWeekday: the weekday does not belong to the date.
	ErrWeekday = reason("the weekday does not belong to the date")
)
