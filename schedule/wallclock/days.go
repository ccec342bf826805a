package wallclock

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// Days is a set of weekdays. The zero value is the empty set.
type Days uint8

// Sets of weekdays.
const (
	EveryDay Days = 1<<7 - 1
	Workdays Days = 1<<time.Monday | 1<<time.Tuesday | 1<<time.Wednesday | 1<<time.Thursday | 1<<time.Friday
	Weekend  Days = 1<<time.Saturday | 1<<time.Sunday
)

var daysWant = quantity.Tell("wallclock.want_every_day_weekdays_weekends_or",
	`"every day", "weekdays", "weekends", or days such as "Friday" or "Monday, Wednesday and Friday" or `+
		`"Monday to Friday"`)

// On makes a set of weekdays.
func On(days ...time.Weekday) Days {
	var s Days
	for _, d := range days {
		if d >= time.Sunday && d <= time.Saturday {
			s |= 1 << d
		}
	}
	return s
}

// Has reports whether the day belongs to the set.
func (s Days) Has(d time.Weekday) bool {
	return d >= time.Sunday && d <= time.Saturday && s&(1<<d) != 0
}

// week is the order in which weekdays are printed.
var week = [7]time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday, time.Saturday,
	time.Sunday}

// ParseDays reads "every day", "weekdays" (Monday to Friday), "weekends", "Friday", "Fri",
// "Mon, Wed and Fri", or "Monday to Friday". A range may go over the end of the week.
func ParseDays(text string) (Days, error) {
	if len(text) > maxHabitText {
		return 0, refuse(text, daysWant)
	}
	words := strings.Fields(strings.ReplaceAll(text, ",", " , "))
	switch strings.ToLower(strings.Join(words, " ")) {
	case "every day", "daily":
		return EveryDay, nil
	case "weekdays", "workdays":
		return Workdays, nil
	case "weekends", "weekend":
		return Weekend, nil
	}
	var s Days
	for i := 0; i < len(words); {
		day, ok := readWeekday(words[i])
		if !ok {
			return 0, refuse(text, daysWant)
		}
		s |= On(day)
		i++
		if i+1 < len(words) && words[i] == "to" {
			last, ok := readWeekday(words[i+1])
			if !ok {
				return 0, refuse(text, daysWant)
			}
			for d := day; d != last; d = (d + 1) % 7 {
				s |= On(d)
			}
			s |= On(last)
			i += 2
		}
		if i == len(words) {
			return s, nil
		}
		if words[i] == "," {
			i++
		}
		if i < len(words) && words[i] == "and" {
			i++
		}
		if i == len(words) {
			break // a list that ends in a comma or "and"
		}
	}
	return 0, refuse(text, daysWant)
}

// IsValid reports whether the set has at least one day and nothing but days.
func (s Days) IsValid() bool { return s != 0 && s <= EveryDay }

// String prints "every day", "Friday" or "Monday, Wednesday and Friday".
func (s Days) String() string {
	switch {
	case s == 0:
		return "no day"
	case s > EveryDay:
		return "unknown days"
	case s == EveryDay:
		return "every day"
	}
	var names []string
	for _, d := range week {
		if s.Has(d) {
			names = append(names, d.String())
		}
	}
	last := len(names) - 1
	if last == 0 {
		return names[0]
	}
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

// AppendText implements encoding.TextAppender; the empty set is an empty text.
func (s Days) AppendText(b []byte) ([]byte, error) {
	if s == 0 {
		return b, nil
	}
	if !s.IsValid() {
		return b, &quantity.InputError{Got: s, Want: daysWant, Err: quantity.ErrOutOfRange}
	}
	return append(b, s.String()...), nil
}

// MarshalText implements encoding.TextMarshaler.
func (s Days) MarshalText() ([]byte, error) { return s.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseDays]. An empty text is the
// empty set.
func (s *Days) UnmarshalText(text []byte) error { return unmarshal(s, text, ParseDays) }
