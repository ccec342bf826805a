package working

import (
	"cmp"
	"context"
	"errors"

	"example.org/maslin/dough/quantity"
)

// Problem tells an error in its reader's language and units: one sentence for each [quantity.InputError] in it,
// with its path, what was given and what is accepted; several are put on lines of their own. An error that is
// none keeps its text. No error is no message.
func Problem(err error) Message {
	if err == nil {
		return Message{}
	}
	switch problems := Problems(err); len(problems) {
	case 1:
		return problems[0]
	default:
		return Join(problems, "\n")
	}
}

// Problems tells each problem of an error, in order.
func Problems(err error) []Message {
	var out []Message
	switch e := err.(type) {
	case nil:
	case *quantity.InputError:
		out = append(out, inputProblem(e))
	case interface{ Unwrap() []error }:
		for _, inner := range e.Unwrap() {
			out = append(out, Problems(inner)...)
		}
	default:
		out = append(out, otherProblem(err))
	}
	return out
}

// otherProblem tells an error that is none of package quantity: in its own words, where it has any.
func otherProblem(err error) Message {
	switch told := err.(type) {
	case teller:
		return told.Message()
	case phrased:
		return phrase(told.Phrase())
	}
	switch {
	case errors.Is(err, context.DeadlineExceeded):
		return Tell("error.time_ran_out", "time ran out: %s", err.Error())
	case errors.Is(err, context.Canceled):
		return Tell("error.canceled", "canceled: %s", err.Error())
	}
	return Tell("error.other", "%s", err.Error())
}

// inputProblem puts together where, why, what was given and what is accepted. Bounds that are typed are told in the
// reader's units.
func inputProblem(e *quantity.InputError) Message {
	reason := reasonMessage(e)
	if path := cmp.Or(e.Path, e.GoPath); path != "" {
		reason = Tell("error.at", "%s: %v", Say(path), reason)
	}
	got, want := givenMessage(e.Got), phrase(e.Want)
	switch {
	case !got.IsZero() && !want.IsZero():
		return Tell("error.got_want", "%v: got %s, want %s", reason, got, want)
	case !got.IsZero():
		return Tell("error.got", "%v: got %s", reason, got)
	case !want.IsZero():
		return Tell("error.want", "%v: want %s", reason, want)
	}
	return reason
}

// givenMessage is what an error was given. A text is what somebody typed, and stays as it is in every language.
func givenMessage(got any) Message {
	switch got := got.(type) {
	case nil:
		return Message{}
	case string:
		if got == "" {
			return Message{}
		}
		return Say(got)
	}
	return Say("%v", got)
}

// phrase is a phrase of an error as a message.
func phrase(p quantity.Phrase) Message {
	if p.IsZero() {
		return Message{}
	}
	return Message{id: p.ID, template: p.English, args: encodeArgs(argsOf(p.Args))}
}

// reasonMessage is why an input is refused. A room's own code, such as "culture_too_large", is for programs; what
// people read is the reason that it stands for.
func reasonMessage(e *quantity.InputError) Message {
	switch err := e.Err; {
	case err == nil:
		return Tell("error.refused", "refused")
	case err == quantity.ErrRequired:
		return Tell("error.required", "required")
	case err == quantity.ErrOutOfRange:
		return Tell("error.out_of_range", "out of range")
	case err == quantity.ErrUnit:
		return Tell("error.unit", "unit")
	case err == quantity.ErrTooPrecise:
		return Tell("error.too_precise", "too precise")
	case err == quantity.ErrInconsistent:
		return Tell("error.inconsistent", "inconsistent")
	case err == quantity.ErrModelRange:
		return Tell("error.outside_model", "outside the model's range")
	case err == quantity.ErrForm:
		return Tell("error.wrong_form", "wrong form")
	default:
		return otherProblem(err)
	}
}
