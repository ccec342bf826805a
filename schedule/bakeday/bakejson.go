package bakeday

import (
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

// Read reads a bake from JSON and reports everything at once that is wrong with the text: unknown keys, keys that
// stand twice, values of the wrong kind, texts that their quantity refuses, each with its path ("flour[1].percent").
// Whether the bake can be baked is for [Bake.Check], which reports by the same paths.
//
// A format may be missing; another one is refused. After an error the bake is partly filled, for a program that goes on
// to check the rest, and not to be used. Errors: as [quantity.ReadJSON].
func Read(data []byte) (Bake, error) {
	var t bakeText
	var p quantity.Problems
	p.Join("", quantity.ReadJSON(data, &t))
	if t.Format != "" && t.Format != BakeFormat {
		p.AddCode("Format", "other_format", quantity.Excerpt(t.Format),
			quantity.Tell("bakeday.want_format", "%s", BakeFormat), quantity.ErrInconsistent)
	}
	return Bake(t.plainBake), p.ErrFor(t)
}

// MarshalJSON implements json.Marshaler: the fields of the bake and "format".
func (b Bake) MarshalJSON() ([]byte, error) { return json.Marshal(bakeText{BakeFormat, plainBake(b)}) }

// UnmarshalJSON implements json.Unmarshaler; see [Read].
func (b *Bake) UnmarshalJSON(text []byte) error {
	v, err := Read(text)
	*b = v
	return err
}
