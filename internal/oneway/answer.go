package oneway

import "example.org/maslin/dough/quantity"

// An Answer keeps a type that embeds it from being read from JSON. An answer keeps its question privately, for its
// report and its working; read without it, it would tell something else.
type Answer struct{}

// UnmarshalJSON refuses.
func (*Answer) UnmarshalJSON([]byte) error {
	return &quantity.InputError{
		Got:  quantity.Tell("oneway.got_answer", "an answer"),
		Want: quantity.Tell("oneway.want_question", "its question, to be asked again: answers do not come back from JSON"),
		Err:  quantity.ErrForm,
	}
}
