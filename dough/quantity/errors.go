package quantity

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A reason is a constant, so that no program can put another in its place.
type reason string

func (r reason) Error() string { return string(r) }

// The reasons an input is refused. They are stable: test for them with errors.Is.
const (
	// ErrRequired: the field must be given and is not. A number that is zero where none can be zero is not given, in
	// every room, since Go cannot tell the two apart.
	ErrRequired = reason("required")
	// ErrOutOfRange: no such dough, oven or loaf exists.
	ErrOutOfRange = reason("out of range")
	// ErrUnit: the unit is missing, unknown, or belongs to another quantity.
	ErrUnit = reason("unit")
	// ErrTooPrecise: more digits than can be kept exactly.
	ErrTooPrecise = reason("too precise")
	// ErrInconsistent: each field is possible, together they are not.
	ErrInconsistent = reason("inconsistent")
	// ErrModelRange: possible, but outside the data the model was fitted on.
	ErrModelRange = reason("outside the model's range")
	// ErrForm: a text that is not of the form it must have, such as JSON with a wrong type or an unknown key.
	ErrForm = reason("wrong form")
)

// InputError says which input is refused, what was given, what is accepted, and why.
//
// Path names the input as its data form does ("flours[2].percent", the keys of its JSON), GoPath as its Go type does
// ("Flours[2].Percent"); a check names the Go path, and [Problems.ErrFor] derives the other. Both are stable. Code is
// for programs: that of the reason ("required", "out_of_range", "unit", "too_precise", "inconsistent", "outside_model",
// "wrong_form") or one of the room's own. Got and Want are for people: Got is a text as it was given, a quantity, a
// word, a number or a [Phrase]; working.Problem tells both in another language. Low and High are the bounds where there
// are two: a quantity, an [Elapsed], a float64 or an int. Err wraps one of the sentinels of this package.
type InputError struct {
	Path   string
	GoPath string
	Code   string
	Got    any
	Want   Phrase
	Low    any
	High   any
	Err    error

	// ahead is the Go path of what was put in front of Path since it was derived, and derived is that Path; ErrFor of
	// the outer input derives the rest.
	ahead, derived string
}

// Error prints path, reason, what was given and what is accepted in one line. The path is that of the data form
// where it is known.
func (e *InputError) Error() string {
	if path := e.where(); path != "" {
		return path + ": " + e.message()
	}
	return e.message()
}

func (e *InputError) where() string {
	if e.Path != "" {
		return e.Path
	}
	return e.GoPath
}

func (e *InputError) message() string {
	var b strings.Builder
	if e.Err != nil {
		b.WriteString(e.Err.Error())
	} else {
		b.WriteString("refused")
	}
	got, want := given(e.Got), e.Want.String()
	if got != "" {
		b.WriteString(": got " + got)
	}
	switch {
	case want != "" && got != "":
		b.WriteString(", want " + want)
	case want != "":
		b.WriteString(": want " + want)
	}
	return b.String()
}

// Unwrap returns the reason.
func (e *InputError) Unwrap() error { return e.Err }

// MarshalJSON implements json.Marshaler, for an answer to a client: path, go_path, code, got, want, low and high where
// they are known, and the message without its path.
func (e *InputError) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Path    string `json:"path,omitempty"`
		GoPath  string `json:"go_path,omitempty"`
		Code    string `json:"code"`
		Got     string `json:"got,omitempty"`
		Want    string `json:"want,omitempty"`
		Low     any    `json:"low,omitempty"`
		High    any    `json:"high,omitempty"`
		Message string `json:"message"`
	}{e.Path, e.GoPath, e.code(), given(e.Got), e.Want.String(), bound(e.Low), bound(e.High), e.message()})
}

// bound is a limit in a form that JSON has: a number that is infinite, or a quantity that is not valid, is no limit.
func bound(v any) any {
	if _, err := json.Marshal(v); err != nil {
		return nil
	}
	return v
}

// code returns the error's own code, or that of its reason.
func (e *InputError) code() string {
	if e.Code != "" {
		return e.Code
	}
	for _, c := range [...]struct {
		reason error
		code   string
	}{
		{ErrRequired, "required"}, {ErrOutOfRange, "out_of_range"}, {ErrUnit, "unit"}, {ErrTooPrecise, "too_precise"},
		{ErrInconsistent, "inconsistent"}, {ErrModelRange, "outside_model"}, {ErrForm, "wrong_form"},
	} {
		if errors.Is(e.Err, c.reason) {
			return c.code
		}
	}
	return "refused"
}

// At puts a Go path in front of the paths of every [InputError] inside err, through any nesting
// of errors.Join. Other errors are wrapped as "path: …". At of nil is nil. The data path that is already known
// gets the path in snake_case in front, until [DataPaths] or [Problems.ErrFor] of the outer input derives it.
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
		moved.Code = in.code()
		moved.GoPath = joinPath(path, in.GoPath)
		if in.Path != "" {
			if in.derived == "" {
				moved.derived = in.Path
			}
			moved.ahead = joinPath(path, in.ahead)
			moved.Path = joinPath(dataPath(nil, path), in.Path)
		}
		return &moved
	}
	return fmt.Errorf("%s: %w", path, err)
}

// InputErrors lists every [InputError] inside err, in order, through any nesting, each with its Code.
func InputErrors(err error) []*InputError {
	switch e := err.(type) {
	case nil:
		return nil
	case *InputError:
		if e.Code != "" {
			return []*InputError{e}
		}
		coded := *e
		coded.Code = e.code()
		return []*InputError{&coded}
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
