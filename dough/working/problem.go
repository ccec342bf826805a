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

// inputProblem puts together where, why, what was given and what is accepted. Bounds that are typed are told in the
// reader's units.
func inputProblem(e *quantity.InputError) Message {
	reason := reasonMessage(e)
	if path := cmp.Or(e.Path, e.GoPath); path != "" {
		reason = Tell("error.at", "%s: %v", Say(path), reason)
	}
	want := wantMessage(e)
	switch {
	case e.Got != "" && !want.IsZero():
		return Tell("error.got_want", "%v: got %s, want %s", reason, Say(e.Got), want)
	case e.Got != "":
		return Tell("error.got", "%v: got %s", reason, Say(e.Got))
	case !want.IsZero():
		return Tell("error.want", "%v: want %s", reason, want)
	}
	return reason
}

// wantMessage is what is accepted: the bounds where they say it all, and otherwise a word of its own key,
// "quantity.Want/a name to show beside results", so that a language can have it.
func wantMessage(e *quantity.InputError) Message {
	if e.Low != nil && e.High != nil {
		bounds := Tell("working.range_plain", "%[1]s to %[2]s", e.Low, e.High)
		if e.Want == "" || e.Want == bounds.String() {
			return bounds
		}
	}
	if e.Want == "" {
		return Message{}
	}
	return wordMessage("quantity.Want/" + e.Want)
}

// reasonMessage is why an input is refused. A room's own code is an identifier of its own, "error.culture_too_large",
// whose English is that of the reason.
func reasonMessage(e *quantity.InputError) Message {
	known := Tell("error.refused", "refused")
	switch err := e.Err; {
	case err == nil:
	case err == quantity.ErrRequired:
		known = Tell("error.required", "required")
	case err == quantity.ErrOutOfRange:
		known = Tell("error.out_of_range", "out of range")
	case err == quantity.ErrUnit:
		known = Tell("error.unit", "unit")
	case err == quantity.ErrTooPrecise:
		known = Tell("error.too_precise", "too precise")
	case err == quantity.ErrInconsistent:
		known = Tell("error.inconsistent", "inconsistent")
	case err == quantity.ErrModelRange:
		known = Tell("error.outside_model", "outside the model's range")
	case err == quantity.ErrForm:
		known = Tell("error.wrong_form", "wrong form")
	default:
		known = Say("%s", err.Error())
	}
	if code := quantity.InputErrors(e)[0].Code; code != "" && "error."+code != known.id {
		return Message{id: "error." + code, template: known.template, args: known.args}
	}
	return known
}
