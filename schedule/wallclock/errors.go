package wallclock

import (
	"errors"
	"fmt"

	"example.org/maslin/dough/quantity"
)

// The reasons this package adds to those of package quantity.
var (
	// ErrSyntax: the text cannot be read.
	ErrSyntax = errors.New("cannot be read")
	// ErrSkipped: the clocks of the zone never show this time; it lies in a gap.
	ErrSkipped = fmt.Errorf("%w: the clocks skip this time", quantity.ErrInconsistent)
	// ErrTwice: the clocks of the zone show this time twice; it lies in a fold.
	ErrTwice = fmt.Errorf("%w: the clocks show this time twice", quantity.ErrInconsistent)
	// ErrWeekday: the weekday does not belong to the date.
	ErrWeekday = fmt.Errorf("%w: the weekday does not belong to the date", quantity.ErrInconsistent)
)
