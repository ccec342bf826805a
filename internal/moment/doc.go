// Package moment answers: can this moment be kept?
//
// A moment that comes from outside, such as when food was made or a plan was followed, is added to and written as data.
// Data form of a moment is RFC 3339, whose years have four digits; a year beyond them would make an answer that cannot
// be written.
//
//	may the answer be made from it     Check
//
// # Limits
//
// It knows nothing of zones and of moments that a clock skips; that is package wallclock's.
package moment

import (
	"time"

	"example.org/maslin/dough/quantity"
)

// Check notes a moment outside the years 1900 to 9998: with what is added to it, it would have no form as data
// (RFC 3339 ends with the year 9999). Of a moment that is not given nothing is said.
func Check(p *quantity.Problems, path string, at time.Time) bool {
	if year := at.Year(); at.IsZero() || year >= 1900 && year <= 9998 {
		return true
	}
	p.Add(path, at.Format(time.RFC3339), quantity.Tell("moment.want_year_from_1900_to_9998", "a year from 1900 to 9998"),
		quantity.ErrOutOfRange)
	return false
}
