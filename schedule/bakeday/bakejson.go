package bakeday

import (
	"bytes"
	"encoding/json"

	"example.org/maslin/dough/quantity"
)

// BakeFormat names the shape of a [Bake] in JSON; the number grows when a field changes its meaning.
const BakeFormat = "maslin bake 1"

// plainBake is a Bake without methods.
type plainBake Bake

// bakeText is a bake with the name of its format.
type bakeText struct {
	Format string `json:"format"`
	plainBake
}

// MarshalJSON implements json.Marshaler: the fields of the bake and "format".
func (b Bake) MarshalJSON() ([]byte, error) { return json.Marshal(bakeText{BakeFormat, plainBake(b)}) }

// UnmarshalJSON implements json.Unmarshaler. A format may be missing; another one is refused, and so is a key that
// no bake has.
func (b *Bake) UnmarshalJSON(text []byte) error {
	var t bakeText
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&t); err != nil {
		return err
	}
	if t.Format != "" && t.Format != BakeFormat {
		return &quantity.InputError{GoPath: "Format", Got: quantity.Excerpt(t.Format), Want: BakeFormat, Err: quantity.ErrInconsistent}
	}
	*b = Bake(t.plainBake)
	return nil
}
