package wallclock

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// Moment is a day and a time of day as people write them, not yet an instant: that needs a
// zone, see [Resolve]. The zero value means "not given".
type Moment struct {
	Date  Date
	Clock Clock
}

var momentWant = quantity.Tell("wallclock.want_date_and_time_2026_11",
	`a date and a time such as "2026-11-28 12:30" or "Sat 2026-11-28 12:30"`)

// ParseMoment reads "2026-11-28 12:30"; a T may stand for the space, and the name of the
// weekday may precede ("Sat", "Saturday", with or without a comma) and must be right.
func ParseMoment(text string) (Moment, error) {
	if len(text) > maxText {
		return Moment{}, refuse(text, momentWant)
	}
	rest := text
	var weekday string
	if rest != "" && letter(rest[0]) {
		name, after, ok := strings.Cut(rest, " ")
		if !ok {
			return Moment{}, refuse(text, momentWant)
		}
		weekday, rest = strings.TrimSuffix(name, ","), after
	}
	if len(rest) < len("2026-11-28 1:30") || rest[10] != ' ' && rest[10] != 'T' {
		return Moment{}, refuse(text, momentWant)
	}
	d, ok := readDate(rest[:10])
	if !ok {
		return Moment{}, refuse(text, momentWant)
	}
	if !d.IsValid() {
		return Moment{}, noSuchDay(d)
	}
	c, err := ParseClock(rest[11:])
	if err != nil {
		return Moment{}, err
	}
	if weekday != "" {
		named, ok := readWeekday(weekday)
		if !ok {
			return Moment{}, &quantity.InputError{
				Got:  quantity.Excerpt(weekday),
				Want: quantity.Tell("wallclock.want_name_weekday", "the name of a weekday"),
				Err:  ErrSyntax,
			}
		}
		if named != d.Weekday() {
			return Moment{}, &quantity.InputError{
				Got:  quantity.Excerpt(text),
				Want: quantity.Tell("wallclock.want_is_a", "%v (%v is a %v)", d.Weekday(), d, d.Weekday()), Err: ErrWeekday,
			}
		}
	}
	return Moment{d, c}, nil
}

func letter(b byte) bool { return b|0x20 >= 'a' && b|0x20 <= 'z' }

// readWeekday reads an English weekday, whole or its first three letters, in any case.
func readWeekday(name string) (time.Weekday, bool) {
	for d := time.Sunday; d <= time.Saturday; d++ {
		if full := d.String(); strings.EqualFold(name, full) || strings.EqualFold(name, full[:3]) {
			return d, true
		}
	}
	return 0, false
}

// MustMoment is [ParseMoment] for literals; it panics on a bad one.
func MustMoment(text string) Moment { return must(ParseMoment(text)) }

// MomentOf returns what calendar and clock show in the zone at the instant t, without the
// seconds. A nil zone is UTC.
func MomentOf(t time.Time, zone *time.Location) Moment {
	return Moment{DateOf(t, zone), ClockOf(t, zone)}
}

// IsValid reports whether the day exists and a clock can show the time. Whether the clocks of
// a zone show it on that day is for [Resolve] to say.
func (m Moment) IsValid() bool { return m.Date.IsValid() && m.Clock.IsValid() }

// IsZero reports whether the moment was not given.
func (m Moment) IsZero() bool { return m == Moment{} }

// Compare returns −1, 0 or +1 as calendar and clock show m before, together with, or after the
// other.
func (m Moment) Compare(other Moment) int {
	if c := m.Date.Compare(other.Date); c != 0 {
		return c
	}
	return m.Clock.Compare(other.Clock)
}

// Equal reports whether calendar and clock show the same.
func (m Moment) Equal(other Moment) bool { return m == other }

// wall is the moment counted in seconds as if it were UTC.
func (m Moment) wall() int64 { return m.Date.midnight().Unix() + int64(m.Clock.Minutes())*60 }

// String prints "Sat 2026-11-28 12:30".
func (m Moment) String() string {
	if m.IsZero() {
		return "no moment"
	}
	if !m.Date.IsValid() {
		return m.Date.String() + " " + m.Clock.String()
	}
	return m.Date.Weekday().String()[:3] + " " + m.Date.String() + " " + m.Clock.String()
}

// told is the moment where an error speaks of it, in the language of its reader: "Saturday 2026-11-28 12:30".
func (m Moment) told() quantity.Phrase {
	switch {
	case m.IsZero():
		return quantity.Tell("wallclock.no_moment", "no moment")
	case !m.Date.IsValid():
		return quantity.Tell("wallclock.moment_of_no_day", "%v %v", m.Date, m.Clock)
	}
	return quantity.Tell("wallclock.moment", "%v %v %v", m.Date.Weekday(), m.Date, m.Clock)
}

// AppendText implements encoding.TextAppender: "2026-11-28 12:30"; the zero value is an empty
// text, and a moment that is not valid is refused.
func (m Moment) AppendText(b []byte) ([]byte, error) {
	if m.IsZero() {
		return b, nil
	}
	b, err := m.Date.AppendText(b)
	if err != nil {
		return b, err
	}
	if m.Date.IsZero() {
		return b, quantity.DataPaths(m, &quantity.InputError{GoPath: "Date", Want: dateWant, Err: quantity.ErrRequired})
	}
	return m.Clock.AppendText(append(b, ' '))
}

// MarshalText implements encoding.TextMarshaler; see [Moment.AppendText].
func (m Moment) MarshalText() ([]byte, error) { return m.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseMoment]. An empty text is the
// zero value.
func (m *Moment) UnmarshalText(text []byte) error { return unmarshal(m, text, ParseMoment) }
