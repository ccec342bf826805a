package ferment

import (
	"encoding/json"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// historyData is a [History] as JSON.
type historyData struct {
	Knots    []Knot            `json:"knots"`
	Measured bool              `json:"measured,omitzero"`
	Notes    []working.Message `json:"notes,omitempty"`
	Label    working.Message   `json:"label"`
}

// MarshalJSON writes the knots of the history and what it says of itself; null for no history.
func (h History) MarshalJSON() ([]byte, error) {
	if h.IsZero() {
		return []byte("null"), nil
	}
	return json.Marshal(historyData{Knots: h.Knots(), Measured: h.measured, Notes: h.notes, Label: h.label})
}

// UnmarshalJSON reads what MarshalJSON wrote. A history written by hand needs only its knots. Errors: as [FromKnots],
// under the paths of the data.
func (h *History) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*h = History{}
		return nil
	}
	var d historyData
	if err := quantity.ReadJSON(data, &d); err != nil {
		return err
	}
	read, err := FromKnots(d.Knots...)
	if err != nil {
		return err
	}
	read.measured, read.notes = d.Measured, d.Notes
	if d.Label != (working.Message{}) {
		read.label = d.Label
	}
	*h = read
	return nil
}
