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

func otherProblem(err error) Message {
	switch {
	case errors.Is(err, context.DeadlineExceeded):
		return Tell("error.time_ran_out", "time ran out: %s", err.Error())
	case errors.Is(err, context.Canceled):
		return Tell("error.canceled", "canceled: %s", err.Error())
	}
	return Tell("error.other", "%s", err.Error())
}

// inputProblem puts together where, why, what was given and what is accepted.
func inputProblem(e *quantity.InputError) Message {
	reason := reasonMessage(e.Err)
	if path := cmp.Or(e.Path, e.GoPath); path != "" {
		reason = Tell("error.at", "%s: %v", path, reason)
	}
	switch {
	case e.Got != "" && e.Want != "":
		return Tell("error.got_want", "%v: got %s, want %s", reason, e.Got, e.Want)
	case e.Got != "":
		return Tell("error.got", "%v: got %s", reason, e.Got)
	case e.Want != "":
		return Tell("error.want", "%v: want %s", reason, e.Want)
	}
	return reason
}

func reasonMessage(err error) Message {
	switch {
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
		return Tell("error.model_range", "outside the model's range")
	}
	return Say("%s", err.Error())
}
