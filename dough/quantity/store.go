package quantity

import (
	"database/sql/driver"
	"encoding/binary"
	"fmt"
)

// A quantity is stored in a database as its canonical text ("12.5 g"), which says its unit, and in
// binary form as one letter for its kind and its exact integer in eight bytes, most significant first. A program that
// wants a numeric column stores the exact integer (Micrograms, Millionths, Quanta, …) itself.

const binaryWant = "the nine bytes that this quantity's MarshalBinary writes"

func appendBinary(b []byte, letter byte, q int64) []byte {
	return binary.BigEndian.AppendUint64(append(b, letter), uint64(q))
}

func fromBinary(k *kind, letter byte, data []byte) (int64, error) {
	if len(data) != 9 || data[0] != letter {
		return invalid, &InputError{Got: fmt.Sprintf("%d bytes that are no %s", len(data), k.noun), Want: binaryWant, Err: ErrForm}
	}
	q := int64(binary.BigEndian.Uint64(data[1:]))
	if !k.valid(q) {
		return invalid, &InputError{Got: fmt.Sprintf("a %s beyond its limits", k.noun), Want: k.limits(&k.scales[0]), Err: ErrOutOfRange}
	}
	return q, nil
}

// scanText returns what a database column holds as text; a number is refused, since nobody can tell its unit.
func scanText(k *kind, from any) ([]byte, error) {
	switch v := from.(type) {
	case string:
		return []byte(v), nil
	case []byte:
		return v, nil
	case nil:
		return nil, &InputError{Got: "NULL", Want: k.accepted, Err: ErrRequired}
	}
	return nil, &InputError{Got: fmt.Sprintf("a column of type %T", from), Want: "a text: " + k.accepted, Err: ErrUnit}
}

func textValue(text []byte, err error) (driver.Value, error) {
	if err != nil {
		return nil, err
	}
	return string(text), nil
}
