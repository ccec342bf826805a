package wallclock

import (
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
)

// Habit is something that happens by the clock on the wall, again and again or on one
// day: "asleep 22:30 to 06:30 every day".
//
// It begins at From on each of its days and ends at To: on the same day when To is later on
// the clock, otherwise on the next. From and To both 00:00 is the whole day; otherwise they may
// not be equal.
type Habit struct {
	Name string // "asleep", "away"; may be empty
	From Clock
	To   Clock

	// Days are the weekdays on which it begins. On is one particular day instead. When neither
	// is given it is every day; both together are refused.
	Days Days
	On   Date
}

const (
	maxHabitText = 256
	maxHabitName = 64
)

var habitWant = quantity.Tell("wallclock.want_asleep_22_30_to_06",
	`such as "asleep 22:30 to 06:30 every day", "away 09:00 to 15:00 on Friday", "closed all day on 2026-11-27"`)

// ParseHabit reads an optional name, a from and a to, and optional days:
//
//	asleep 22:30 to 06:30 every day
//	away 09:00 to 15:00 on Friday
//	at market from 5:00 to 13:00 on Wed and Sat
//	closed all day on 2026-11-27
//	22:30–06:30
//
// Without days it is every day.
func ParseHabit(text string) (Habit, error) {
	if len(text) > maxHabitText || !utf8.ValidString(text) {
		return Habit{}, refuse(text, habitWant)
	}
	words := strings.Fields(text)
	for i := range words {
		from, to, used, err := readTimes(words[i:])
		if err != nil {
			return Habit{}, err
		}
		if used == 0 {
			continue
		}
		name := words[:i]
		if i > 0 && words[i-1] == "from" {
			name = words[:i-1]
		}
		h := Habit{Name: strings.Join(name, " "), From: from, To: to}
		if err := h.readDays(words[i+used:]); err != nil {
			return Habit{}, err
		}
		if err := h.Check(); err != nil {
			return Habit{}, err
		}
		return h, nil
	}
	return Habit{}, refuse(strings.TrimSpace(text), habitWant)
}

// readTimes reads "22:30 to 06:30", "22:30–06:30" or "all day" at the head of the words and
// says how many words that took. A bad time is an error only where a time must stand.
func readTimes(words []string) (from, to Clock, used int, err error) {
	if len(words) >= 2 && words[0] == "all" && words[1] == "day" {
		return Clock{}, Clock{}, 2, nil
	}
	first, second, joined := cutDash(words[0])
	if !looksLikeClock(first) {
		return Clock{}, Clock{}, 0, nil
	}
	used = 1
	if !joined {
		if len(words) < 3 || words[1] != "to" && words[1] != "-" && words[1] != "–" {
			return Clock{}, Clock{}, 0, refuse(strings.Join(words, " "), habitWant)
		}
		second, used = words[2], 3
	}
	var bad quantity.Problems
	from, err = ParseClock(first)
	bad.Join("From", err)
	to, err = ParseClock(second)
	bad.Join("To", err)
	return from, to, used, bad.ErrFor(nil)
}

func cutDash(word string) (first, second string, ok bool) {
	if first, second, ok = strings.Cut(word, "–"); ok {
		return first, second, true
	}
	return strings.Cut(word, "-")
}

// looksLikeClock is looser than the parser, so that a mistyped time is reported as such and
// does not become part of the name.
func looksLikeClock(word string) bool {
	return word != "" && word[0] >= '0' && word[0] <= '9' && strings.Contains(word, ":")
}

func (h *Habit) readDays(words []string) error {
	if len(words) == 0 {
		return nil
	}
	if words[0] == "on" {
		words = words[1:]
		if len(words) == 1 && len(words[0]) > 0 && words[0][0] >= '0' && words[0][0] <= '9' {
			d, err := ParseDate(words[0])
			h.On = d
			return quantity.At("On", err)
		}
	}
	days, err := ParseDays(strings.Join(words, " "))
	h.Days = days
	return quantity.At("Days", err)
}

// MustHabit is [ParseHabit] for literals; it panics on a bad one.
func MustHabit(text string) Habit { return must(ParseHabit(text)) }

// Check returns everything that is wrong with the habit, or nil.
func (h Habit) Check() error {
	var bad quantity.Problems
	if why := h.nameProblem(); !why.IsZero() {
		bad.Add("Name", quantity.Excerpt(h.Name), why, ErrSyntax)
	}
	if !h.From.IsValid() {
		bad.Add("From", h.From, clockWant, quantity.ErrOutOfRange)
	}
	if !h.To.IsValid() {
		bad.Add("To", h.To, clockWant, quantity.ErrOutOfRange)
	}
	if h.From == h.To && h.From != (Clock{}) && h.From.IsValid() {
		bad.Add(
			"To",
			h.To,
			quantity.Tell("wallclock.want_another_time_than_beginning_or",
				"another time than the beginning, or 00:00 to 00:00 for the whole day"),
			quantity.ErrInconsistent,
		)
	}
	if h.Days != 0 && !h.Days.IsValid() {
		bad.Add("Days", h.Days, daysWant, quantity.ErrOutOfRange)
	}
	if !h.On.IsZero() && !h.On.IsValid() {
		bad.Join("On", noSuchDay(h.On))
	}
	if !h.On.IsZero() && h.Days != 0 {
		bad.Add("On", h.On, quantity.Tell("wallclock.want_either_weekdays_or_one_date", "either weekdays or one date"),
			quantity.ErrInconsistent)
	}
	return bad.ErrFor(h)
}

// nameProblem says what a name must be like, so that the text form can be read back.
func (h Habit) nameProblem() quantity.Phrase {
	words := strings.Fields(h.Name)
	switch {
	case len(h.Name) > maxHabitName:
		return quantity.Tell("wallclock.want_at_most_bytes", "at most %d bytes", maxHabitName)
	case !utf8.ValidString(h.Name) || strings.ContainsFunc(h.Name, unicode.IsControl) ||
		strings.ContainsFunc(h.Name, func(r rune) bool { return unicode.Is(unicode.Bidi_Control, r) }):
		return quantity.Tell("wallclock.want_text_without_control_characters",
			"text without control or direction characters")
	case strings.Join(words, " ") != h.Name:
		return quantity.Tell("wallclock.want_words_single_spaces_between_them", "words with single spaces between them")
	}
	for i, w := range words {
		if looksLikeClock(w) || w == "all" && i+1 < len(words) && words[i+1] == "day" {
			return quantity.Tell("wallclock.want_name_without_times", "a name without times in it")
		}
	}
	if len(words) > 0 && words[len(words)-1] == "from" {
		return quantity.Tell("wallclock.want_name_does_not_end_from", `a name that does not end in "from"`)
	}
	return quantity.Phrase{}
}

// begins reports whether the habit begins on the day.
func (h Habit) begins(d Date) bool {
	switch {
	case !h.On.IsZero():
		return d == h.On
	case h.Days != 0:
		return h.Days.Has(d.Weekday())
	}
	return true
}

// Words is the habit without its days: "asleep 22:30 to 06:30".
func (h Habit) Words() string {
	times := h.From.String() + " to " + h.To.String()
	if h.From == h.To {
		times = "all day"
	}
	if h.Name == "" {
		return times
	}
	return h.Name + " " + times
}

// String prints "asleep 22:30 to 06:30 every day".
func (h Habit) String() string {
	switch {
	case !h.On.IsZero():
		return h.Words() + " on " + h.On.String()
	case h.Days == 0 || h.Days == EveryDay:
		return h.Words() + " every day"
	}
	return h.Words() + " on " + h.Days.String()
}

// Equal reports whether the two are the same habit.
func (h Habit) Equal(other Habit) bool {
	if h.On.IsZero() && h.Days == 0 {
		h.Days = EveryDay
	}
	if other.On.IsZero() && other.Days == 0 {
		other.Days = EveryDay
	}
	return h == other
}

// AppendText implements encoding.TextAppender; a habit that does not pass [Habit.Check] is
// refused.
func (h Habit) AppendText(b []byte) ([]byte, error) {
	if err := h.Check(); err != nil {
		return b, err
	}
	return append(b, h.String()...), nil
}

// MarshalText implements encoding.TextMarshaler.
func (h Habit) MarshalText() ([]byte, error) { return h.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseHabit]. An empty text is
// refused.
func (h *Habit) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return refuse("", habitWant)
	}
	return unmarshal(h, text, ParseHabit)
}

// on returns the span of the occurrence that begins on the day; ok is false when there is
// none because the zone skipped the whole day.
func (h Habit) on(d Date, zone *time.Location) (s Occurrence, ok bool, err error) {
	end := d
	if h.To.Compare(h.From) <= 0 {
		end = d.AddDays(1)
	}
	if !d.IsValid() || !end.IsValid() {
		return Occurrence{}, false, nil
	}
	from, err := resolve(d.At(h.From), zone, RFC5545)
	if err != nil {
		return Occurrence{}, false, err
	}
	to, err := resolve(end.At(h.To), zone, RFC5545)
	if err != nil {
		return Occurrence{}, false, err
	}
	if from.Reading == Skipped {
		// A gap that swallows the whole day: the place moved over the date line.
		first, err := resolve(d.At(Clock{0, 0}), zone, RFC5545)
		if err != nil {
			return Occurrence{}, false, err
		}
		last, err := resolve(d.At(Clock{23, 59}), zone, RFC5545)
		if err != nil {
			return Occurrence{}, false, err
		}
		if first.Reading == Skipped && last.Reading == Skipped && first.After.Equal(last.After) {
			return Occurrence{}, false, nil
		}
	}
	s = Occurrence{From: from.At.UTC(), To: to.At.UTC(), Words: h.Words()}
	if !s.From.Before(s.To) && from.Reading == Skipped {
		s.From = from.After.UTC()
	}
	return s, s.From.Before(s.To), nil
}
