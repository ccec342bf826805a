package quantity

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/shopspring/decimal"
)

// Elapsed is a time.Duration whose text form is "4h30m", for fields that reach files and JSON; as argument and
// result of a function use time.Duration. Its text is exact to the nanosecond ("4h30m0.25s"), String and
// [FormatDuration] round to the second.
type Elapsed time.Duration

var elapsedWant = Tell("quantity.want_duration_units_4h30m_45_min",
	`a duration with its units, such as "4h30m", "45 min" or "20s"`)

// maxElapsed bounds what a text may say; no bake takes longer than a year.
const maxElapsed = 366 * 24 * time.Hour

// ParseDuration reads "4h30m", "4 h 30 min", "1 hour 30 minutes", "45m", "20s", "1.5 h", "1,5 h" or "2d12h". Units are
// required, from large to small, each at most once, and only the last may have a fraction; the result is
// exact and at most 366 days. A day is 24 hours of elapsed time. Errors: ErrUnit, ErrTooPrecise (parts of a
// nanosecond), ErrOutOfRange, ErrRequired (empty text).
func ParseDuration(text string) (time.Duration, error) {
	d, err := parseDuration(text)
	if err == nil && (d > maxElapsed || d < -maxElapsed) {
		return 0, &InputError{Got: Excerpt(text), Want: Tell("quantity.want_at_most_366_days", "at most 366 days"),
			Low:  -Elapsed(maxElapsed),
			High: Elapsed(maxElapsed), Err: ErrOutOfRange}
	}
	return d, err
}

// parseDuration reads every duration that Go can hold.
func parseDuration(text string) (time.Duration, error) {
	refuse := func(reason error) (time.Duration, error) {
		return 0, &InputError{Got: Excerpt(text), Want: elapsedWant, Err: reason}
	}
	if len(text) > maxText {
		return refuse(ErrOutOfRange)
	}
	rest := strings.TrimSpace(text)
	if rest == "" {
		return refuse(ErrRequired)
	}
	negative := strings.HasPrefix(rest, "-") || strings.HasPrefix(rest, "−")
	rest = strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(rest, "-"), "−"))
	if rest == "" {
		return refuse(ErrUnit)
	}
	var total decimal.Decimal // nanoseconds
	last := time.Duration(1<<63 - 1)
	fraction := false
	for rest != "" {
		n := 0
		for n < len(rest) && (rest[n] >= '0' && rest[n] <= '9' || rest[n] == '.' || rest[n] == ',') {
			n++
		}
		digits := rest[:n]
		rest = strings.TrimSpace(rest[n:])
		u := 0
		for u < len(rest) && (rest[u] >= 'a' && rest[u] <= 'z') {
			u++
		}
		unit := elapsedUnit(rest[:u])
		rest = strings.TrimSpace(rest[u:])
		if digits == "" || unit == 0 || unit >= last || fraction {
			return refuse(ErrUnit)
		}
		last, fraction = unit, strings.ContainsAny(digits, ".,")
		plain, err := plainNumber(digits)
		if err != nil {
			return refuse(ErrUnit)
		}
		d, err := decimal.NewFromString(plain)
		if err != nil {
			return refuse(ErrUnit)
		}
		part := d.Mul(decimal.NewFromInt(int64(unit)))
		if !part.IsInteger() {
			return refuse(ErrTooPrecise)
		}
		total = total.Add(part)
	}
	if negative {
		total = total.Neg()
	}
	n := total.BigInt()
	if !n.IsInt64() {
		return refuse(ErrOutOfRange)
	}
	return time.Duration(n.Int64()), nil
}

func elapsedUnit(name string) time.Duration {
	switch name {
	case "d", "day", "days":
		return 24 * time.Hour
	case "h", "hr", "hour", "hours":
		return time.Hour
	case "m", "min", "mins", "minute", "minutes":
		return time.Minute
	case "s", "sec", "secs", "second", "seconds":
		return time.Second
	}
	return 0
}

// FormatDuration prints "4h30m", "45m", "20s", rounded to the second; zero is "0m".
func FormatDuration(d time.Duration) string {
	sign := ""
	if d < 0 {
		sign = "−"
		if d == -1<<63 {
			d++
		}
		d = -d
	}
	d = d.Round(time.Second)
	h, m, s := int64(d/time.Hour), int64(d%time.Hour/time.Minute), int64(d%time.Minute/time.Second)
	switch {
	case d == 0:
		return "0m"
	case h > 0 && s > 0:
		return fmt.Sprintf("%s%dh%02dm%02ds", sign, h, m, s)
	case h > 0 && m > 0:
		return fmt.Sprintf("%s%dh%02dm", sign, h, m)
	case h > 0:
		return fmt.Sprintf("%s%dh", sign, h)
	case m > 0 && s > 0:
		return fmt.Sprintf("%s%dm%02ds", sign, m, s)
	case m > 0:
		return fmt.Sprintf("%s%dm", sign, m)
	default:
		return fmt.Sprintf("%s%ds", sign, s)
	}
}

// Duration returns the plain Go duration.
func (e Elapsed) Duration() time.Duration { return time.Duration(e) }

// String prints "4h30m"; see [FormatDuration].
func (e Elapsed) String() string { return FormatDuration(time.Duration(e)) }

// Compare returns −1, 0 or 1.
func (e Elapsed) Compare(f Elapsed) int { return cmp.Compare(e, f) }

// AppendText implements encoding.TextAppender: "4h30m", exact to the nanosecond.
func (e Elapsed) AppendText(b []byte) ([]byte, error) {
	d := time.Duration(e)
	rest := d % time.Second
	whole := strings.Replace(FormatDuration(d-rest), "−", "-", 1)
	if rest == 0 {
		return append(b, whole...), nil
	}
	// The part of a second goes behind the whole seconds, or behind hours and minutes as "0.25s".
	switch before, seconds := strings.CutSuffix(whole, "s"); {
	case seconds:
		b = append(append(b, before...), '.')
	case d <= -time.Second || d >= time.Second:
		b = append(append(b, whole...), "0."...)
	case d < 0:
		b = append(b, "-0."...)
	default:
		b = append(b, "0."...)
	}
	digits := strconv.FormatInt(int64(max(rest, -rest)), 10)
	b = append(b, "000000000"[len(digits):]...)
	b = append(b, strings.TrimRight(digits, "0")...)
	return append(b, 's'), nil
}

// MarshalText implements encoding.TextMarshaler.
func (e Elapsed) MarshalText() ([]byte, error) { return e.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseDuration]. It reads whatever MarshalText
// writes, also beyond 366 days.
func (e *Elapsed) UnmarshalText(text []byte) error {
	d, err := parseDuration(textOf(text))
	if err != nil {
		return err
	}
	*e = Elapsed(d)
	return nil
}
