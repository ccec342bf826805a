package quantity

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// The reasons an input is refused. They are stable: test for them with errors.Is.
var (
	// ErrRequired: the field must be given and is not.
	ErrRequired = errors.New("required")
	// ErrOutOfRange: no such dough, oven or loaf exists.
	ErrOutOfRange = errors.New("out of range")
	// ErrUnit: the unit is missing, unknown, or belongs to another quantity.
	ErrUnit = errors.New("unit")
	// ErrTooPrecise: more digits than can be kept exactly.
	ErrTooPrecise = errors.New("too precise")
	// ErrInconsistent: each field is possible, together they are not.
	ErrInconsistent = errors.New("inconsistent")
	// ErrModelRange: possible, but outside the data the model was fitted on.
	ErrModelRange = errors.New("outside the model's range")
)

// InputError says which input is refused, what was given, what is accepted, and why.
//
// Path is a Go field path from the input struct, such as "Flours[1].Percent", and is stable.
// Got and Want are for people. Err wraps one of the sentinels of this package.
type InputError struct {
	Path string
	Code string
	Got  string
	Want string
	Low  any
	High any
	Err  error
}

// Error prints path, reason, what was given and what is accepted in one line.
func (e *InputError) Error() string {
	var b strings.Builder
	if e.Path != "" {
		b.WriteString(e.Path + ": ")
	}
	if e.Err != nil {
		b.WriteString(e.Err.Error())
	} else {
		b.WriteString("refused")
	}
	if e.Got != "" {
		b.WriteString(": got " + e.Got)
	}
	if e.Want != "" {
		if e.Got != "" {
			b.WriteString(", want " + e.Want)
		} else {
			b.WriteString(": want " + e.Want)
		}
	}
	return b.String()
}

// Unwrap returns the reason.
func (e *InputError) Unwrap() error { return e.Err }

// Problems collects everything that is wrong with an input, in the order found. The zero
// value is ready. It is not safe for concurrent use; a calculation makes its own.
type Problems struct {
	list []error
}

// Add notes one problem.
func (p *Problems) Add(path, got, want string, reason error) {
	p.list = append(p.list, &InputError{Path: path, Got: got, Want: want, Err: reason})
}

// Required notes that a field is missing; want says what belongs there.
func (p *Problems) Required(path, want string) { p.Add(path, "", want, ErrRequired) }

// Join notes the problems of a part of the input, whose paths are put below path. An error
// that is not an [InputError] is kept, prefixed with the path. Nil is ignored.
func (p *Problems) Join(path string, err error) {
	if err != nil {
		p.list = append(p.list, At(path, err))
	}
}

// Float checks that a plain number lies in [low, high]; NaN does not. Unit is for the message.
func (p *Problems) Float(path string, got, low, high float64, unit string) bool {
	if got >= low && got <= high {
		return true
	}
	p.Add(path, number(got, unit), number(low, unit)+" to "+number(high, unit), ErrOutOfRange)
	return false
}

// Int checks that a count lies in [low, high].
func (p *Problems) Int(path string, got, low, high int) bool {
	if got >= low && got <= high {
		return true
	}
	p.Add(path, strconv.Itoa(got), strconv.Itoa(low)+" to "+strconv.Itoa(high), ErrOutOfRange)
	return false
}

// Duration checks that a duration lies in [low, high].
func (p *Problems) Duration(path string, got, low, high time.Duration) bool {
	if got >= low && got <= high {
		return true
	}
	p.Add(path, FormatDuration(got), FormatDuration(low)+" to "+FormatDuration(high), ErrOutOfRange)
	return false
}

func number(x float64, unit string) string {
	s := strconv.FormatFloat(x, 'g', 6, 64)
	switch {
	case math.IsNaN(x):
		s = "NaN"
	case math.Abs(x) < 1e6 && math.Abs(x) >= 1e-4 || x == 0:
		s = strconv.FormatFloat(x, 'f', -1, 64)
		if len(s) > 12 {
			s = strconv.FormatFloat(x, 'g', 6, 64)
		}
	}
	if unit != "" {
		s += " " + unit
	}
	return s
}

// Err returns nil when there is no problem, and otherwise all of them, joined.
func (p *Problems) Err() error {
	if len(p.list) == 0 {
		return nil
	}
	return errors.Join(p.list...)
}

// Ranged is what [Check] can compare: every quantity of this package.
type Ranged[T any] interface {
	Compare(T) int
	IsValid() bool
	String() string
}

// Check notes a problem unless got is valid and lies in [low, high]. A Temperature that was
// not given is reported as required.
func Check[T Ranged[T]](p *Problems, path string, got, low, high T) bool {
	if got.IsValid() && got.Compare(low) >= 0 && got.Compare(high) <= 0 {
		return true
	}
	want := low.String() + " to " + high.String()
	if t, ok := any(got).(Temperature); ok && t.IsZero() {
		p.Required(path, want)
		return false
	}
	p.Add(path, got.String(), want, ErrOutOfRange)
	return false
}

// At puts path in front of the paths of every [InputError] inside err, through any nesting
// of errors.Join. Other errors are wrapped as "path: …". At of nil is nil.
func At(path string, err error) error {
	if err == nil || path == "" {
		return err
	}
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		var out []error
		for _, e := range joined.Unwrap() {
			out = append(out, At(path, e))
		}
		return errors.Join(out...)
	}
	if in, ok := err.(*InputError); ok {
		moved := *in
		switch {
		case moved.Path == "":
			moved.Path = path
		case strings.HasPrefix(moved.Path, "["):
			moved.Path = path + moved.Path
		default:
			moved.Path = path + "." + moved.Path
		}
		return &moved
	}
	return fmt.Errorf("%s: %w", path, err)
}

// InputErrors lists every [InputError] inside err, in order, through any nesting.
func InputErrors(err error) []*InputError {
	switch e := err.(type) {
	case nil:
		return nil
	case *InputError:
		return []*InputError{e}
	case interface{ Unwrap() []error }:
		var out []*InputError
		for _, inner := range e.Unwrap() {
			out = append(out, InputErrors(inner)...)
		}
		return out
	default:
		return InputErrors(errors.Unwrap(err))
	}
}

// Excerpt quotes at most 32 bytes of what was given, for error messages.
func Excerpt(s string) string {
	const most = 32
	if len(s) <= most {
		return strconv.Quote(s)
	}
	cut := most
	for cut > 0 && !utf8.RuneStart(s[cut]) {
		cut--
	}
	return strconv.Quote(s[:cut]) + "…"
}
