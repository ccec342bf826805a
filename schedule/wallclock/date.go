package wallclock

import (
	"cmp"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
)

// Date is a day of the Gregorian calendar. The zero value is no day and means "not given".
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

const (
	firstYear = 1
	lastYear  = 9999
	maxText   = 64 // bytes of a date, clock time or moment

)

var dateWant = quantity.Tell("wallclock.want_date_2026_11_28", `a date such as "2026-11-28"`)

// ParseDate reads "2026-11-28": four digits, two, two. A day that does not exist, such as
// 2026-02-30, is refused.
func ParseDate(text string) (Date, error) {
	d, ok := readDate(text)
	if !ok {
		return Date{}, refuse(text, dateWant)
	}
	if !d.IsValid() {
		return Date{}, noSuchDay(d)
	}
	return d, nil
}

// MustDate is [ParseDate] for literals; it panics on a bad one.
func MustDate(text string) Date { return must(ParseDate(text)) }

// DateOf returns the day the calendar shows in the zone at the instant t. A nil zone is UTC.
func DateOf(t time.Time, zone *time.Location) Date {
	y, m, d := in(t, zone).Date()
	return Date{y, m, d}
}

// readDate reads the digits only; the caller checks that the day exists.
func readDate(s string) (Date, bool) {
	if len(s) != 10 || s[4] != '-' || s[7] != '-' {
		return Date{}, false
	}
	y, ok1 := digits(s[:4])
	m, ok2 := digits(s[5:7])
	d, ok3 := digits(s[8:])
	return Date{y, time.Month(m), d}, ok1 && ok2 && ok3
}

// IsValid reports whether there is such a day in the years 1 to 9999.
func (d Date) IsValid() bool {
	return d.Year >= firstYear && d.Year <= lastYear && d.Month >= 1 && d.Month <= 12 && d.Day >= 1 &&
		d.Day <= daysIn(d.Year, d.Month)
}

// IsZero reports whether the date was not given.
func (d Date) IsZero() bool { return d == Date{} }

func daysIn(year int, m time.Month) int {
	switch m {
	case time.April, time.June, time.September, time.November:
		return 30
	case time.February:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// Weekday returns the day of the week; of a date that is no day it is meaningless.
func (d Date) Weekday() time.Weekday { return d.midnight().Weekday() }

// midnight is the start of the day in UTC, where no time is skipped or repeated.
func (d Date) midnight() time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

// AddDays returns the day n days later, or earlier when n is negative. Outside the years 1 to
// 9999 the result is not valid.
func (d Date) AddDays(n int) Date {
	const most = 366 * (lastYear + 1)
	if !d.IsValid() || n > most || n < -most {
		return Date{}
	}
	next := DateOf(d.midnight().AddDate(0, 0, n), time.UTC)
	if !next.IsValid() {
		return Date{}
	}
	return next
}

// Compare returns −1, 0 or +1 as d is before, the same as, or after the other day.
func (d Date) Compare(other Date) int {
	return cmp.Or(cmp.Compare(d.Year, other.Year), cmp.Compare(d.Month, other.Month), cmp.Compare(d.Day, other.Day))
}

// Equal reports whether the two are the same day.
func (d Date) Equal(other Date) bool { return d == other }

// At joins the day with a clock time.
func (d Date) At(c Clock) Moment { return Moment{d, c} }

// String prints "2026-11-28".
func (d Date) String() string {
	if d.IsZero() {
		return "no date"
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
}

// AppendText implements encoding.TextAppender. A date that is not valid is refused, except
// that the zero value is an empty text.
func (d Date) AppendText(b []byte) ([]byte, error) {
	if d.IsZero() {
		return b, nil
	}
	if !d.IsValid() {
		return b, noSuchDay(d)
	}
	return append(b, d.String()...), nil
}

// MarshalText implements encoding.TextMarshaler; see [Date.AppendText].
func (d Date) MarshalText() ([]byte, error) { return d.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseDate]. An empty text is the zero
// value.
func (d *Date) UnmarshalText(text []byte) error { return unmarshal(d, text, ParseDate) }

func noSuchDay(d Date) error {
	want := dateWant
	if d.Month >= 1 && d.Month <= 12 && d.Year >= firstYear && d.Year <= lastYear {
		want = quantity.Tell("wallclock.want_day_from_1_to", "a day from 1 to %d (%v %d)", daysIn(d.Year, d.Month), d.Month,
			d.Year)
	}
	return &quantity.InputError{Got: quantity.Excerpt(d.String()), Want: want,
		Err: fmt.Errorf("%w: there is no such day", quantity.ErrOutOfRange)}
}
