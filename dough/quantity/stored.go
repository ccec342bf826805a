package quantity

import (
	"database/sql/driver"
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
)

// Stored keeps any value of the library in a column of a database: an enumeration or another value with a text as that
// text, what has a JSON form as its JSON. Of is a pointer to it:
//
//	db.Exec("insert into culture values (?, ?)", name, quantity.Stored(&culture))
//	row.Scan(quantity.Stored(&culture))
//
// Quantities and [Elapsed] need none, they store themselves; an enumeration without it would be stored as a bare
// number, and any number would be read. What is not given, or nil, is NULL, and NULL is read where the value may be
// that. Errors of Value: those of the value's own text or JSON; of Scan: [InputErrors], as [ReadJSON] and the value's
// own text, ErrRequired for NULL, ErrForm for a column that is no text.
func Stored(of any) interface {
	driver.Valuer
	Scan(from any) error
} {
	return stored{of}
}

// stored is a driver.Valuer and a sql.Scanner.
type stored struct{ of any }

func (c stored) Value() (driver.Value, error) {
	if m, ok := c.of.(encoding.TextMarshaler); ok && !isNil(c.of) && !ownJSON(c.of) {
		text, err := m.MarshalText()
		if err != nil || len(text) == 0 {
			return nil, err
		}
		return string(text), nil
	}
	text, err := json.Marshal(c.of)
	if err != nil || string(text) == "null" {
		return nil, err
	}
	return string(text), nil
}

func (c stored) Scan(from any) error {
	if isNil(c.of) || reflect.ValueOf(c.of).Kind() != reflect.Pointer {
		return &InputError{Code: "wrong_type", Want: Tell("quantity.want_pointer_to_read_into", "a pointer to read into"),
			Err: ErrForm}
	}
	u, isText := c.of.(encoding.TextUnmarshaler)
	var text []byte
	switch v := from.(type) {
	case string:
		text = []byte(v)
	case []byte:
		text = v
	case nil:
		return c.scanNull(u)
	default:
		want := Tell("quantity.want_text", "a text")
		return &InputError{Code: "wrong_type", Got: columnType(from), Want: want, Err: ErrForm}
	}
	if isText && !ownJSON(c.of) {
		return u.UnmarshalText(text)
	}
	return ReadJSON(text, c.of)
}

func (c stored) scanNull(u encoding.TextUnmarshaler) error {
	if u == nil || ownJSON(c.of) {
		return ReadJSON([]byte("null"), c.of)
	}
	refused := &InputError{Got: Tell("quantity.got_null", "NULL"), Want: Tell("quantity.want_text", "a text"),
		Err: ErrRequired}
	if err := u.UnmarshalText(nil); err != nil {
		if found := InputErrors(err); len(found) > 0 {
			refused.Want = found[0].Want
		}
		return refused
	}
	return nil
}

// ownJSON reports whether a value says more in a JSON of its own than in its text.
func ownJSON(v any) bool {
	_, ok := v.(json.Marshaler)
	return ok
}

func isNil(v any) bool {
	at := reflect.ValueOf(v)
	return !at.IsValid() || at.Kind() == reflect.Pointer && at.IsNil()
}

func columnType(from any) Phrase {
	return Tell("quantity.got_column", "a column of type %s", fmt.Sprintf("%T", from))
}

// Value implements driver.Valuer for database/sql: the text, "4h30m". A program that wants a numeric column stores
// the nanoseconds itself.
func (e Elapsed) Value() (driver.Value, error) {
	text, err := e.MarshalText()
	return string(text), err
}

// Scan implements sql.Scanner: a text with its units, as string or bytes. A bare number is refused, since nobody can
// tell its unit, and so is NULL.
func (e *Elapsed) Scan(from any) error {
	return scanText(from, e, elapsedWant)
}

// scanText reads a column that has to hold a text with a unit.
func scanText(from any, into encoding.TextUnmarshaler, want Phrase) error {
	switch v := from.(type) {
	case string:
		return into.UnmarshalText([]byte(v))
	case []byte:
		return into.UnmarshalText(v)
	case nil:
		return &InputError{Got: Tell("quantity.got_null", "NULL"), Want: want, Err: ErrRequired}
	}
	return &InputError{Got: columnType(from), Want: Tell("quantity.want_text_with", "a text: %v", want), Err: ErrUnit}
}
