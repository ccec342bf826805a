package mixing

import (
	"encoding/json"

	"example.org/maslin/dough/quantity"
)

// learnedForm is the JSON of a Learned: the log it was learned from, from which it is learned again, beside what was
// found for whoever only reads.
type learnedForm struct {
	Log Log `json:"log"`
	learnedFigures
}

type learnedFigures struct {
	PerMinute []RiseEstimate `json:"per_minute,omitempty"`
	Bowl      *ShareEstimate `json:"bowl,omitempty"`
	Batches   int            `json:"batches"`
}

// MarshalJSON implements json.Marshaler: the log, and what it teaches. Nothing learned is null.
func (l Learned) MarshalJSON() ([]byte, error) {
	if !l.ok {
		return []byte("null"), nil
	}
	return json.Marshal(learnedForm{l.in, learnedFigures{l.PerMinute, &l.Bowl, l.Batches}})
}

// UnmarshalJSON implements json.Unmarshaler: it learns from the log in the text, and so comes back equal. Errors are
// those of [Log.Learn].
func (l *Learned) UnmarshalJSON(text []byte) error {
	if string(text) == "null" {
		*l = Learned{}
		return nil
	}
	var form learnedForm
	if err := quantity.ReadJSON(text, &form); err != nil {
		return err
	}
	learned, err := form.Log.Learn()
	if err != nil {
		return err
	}
	*l = learned
	return nil
}
