package quantity

import (
	"bytes"
	"cmp"
	"database/sql/driver"
	"encoding/binary"
	"fmt"
)

// exact is what every quantity is: an exact count of the quanta of its kind. Its methods are the methods of every
// quantity; what a kind has of its own stands with its type.
type exact[K kinder] struct{ quanta int64 }

// A kinder is an empty type that stands for a kind of quantity, so that a mass and a percentage are types that do not
// convert into each other.
type kinder interface{ kind() *kind }

func kindOf[K kinder]() *kind {
	var k K
	return k.kind()
}

// IsValid reports whether the value is a number within the limits of its kind; a temperature also has to be given.
func (e exact[K]) IsValid() bool { return kindOf[K]().valid(e.quanta) }

// IsZero reports whether the value is zero; a temperature, whether it is not given.
func (e exact[K]) IsZero() bool { return e.quanta == 0 }

// Sign returns −1, 0 or 1.
func (e exact[K]) Sign() int { return cmp.Compare(e.quanta, 0) }

// String prints every digit that is there, in the unit that people use: "12.5 g", "68.5 %", "240 mL", "0.24 m". A
// temperature and a difference are printed in °C with at most three decimals, where MarshalText is exact.
func (e exact[K]) String() string {
	k := kindOf[K]()
	if !e.IsValid() {
		return k.absent()
	}
	return k.text(e.quanta, k.shown(), k.shown().places)
}

func (e exact[K]) textIn(s *scale, places int) string {
	k := kindOf[K]()
	if !e.IsValid() {
		return k.absent()
	}
	return string(k.append(nil, e.quanta, s, places, false))
}

// Format implements fmt.Formatter: %v and %s print String, %.1f and %.1v one decimal with the unit, %#v Go syntax.
func (e exact[K]) Format(f fmt.State, verb rune) {
	format(f, verb, e.String(), func(places int) string { return e.textIn(kindOf[K]().shown(), places) }, e.GoString())
}

// GoString prints Go syntax.
func (e exact[K]) GoString() string {
	k := kindOf[K]()
	if !e.IsValid() {
		return k.goInvalid
	}
	return fmt.Sprintf("quantity.%s(%q)", k.goMust, k.canonical(nil, e.quanta))
}

// AppendText implements encoding.TextAppender; see MarshalText.
func (e exact[K]) AppendText(b []byte) ([]byte, error) {
	k := kindOf[K]()
	switch {
	case e.IsValid():
		return k.canonical(b, e.quanta), nil
	case k.optional && e.quanta == 0:
		return b, nil
	}
	return b, e.refused()
}

// MarshalText implements encoding.TextMarshaler: the canonical text, which is the same whatever unit was read, and from
// which the exact value is read back: g, %, L, m, °C, Δ°C. A temperature that is not given is the empty text; any other
// value that is not valid is an error.
func (e exact[K]) MarshalText() ([]byte, error) { return e.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what the Parse function of the quantity reads. The
// empty text is a temperature that is not given, and an error for everything else.
func (e *exact[K]) UnmarshalText(text []byte) error {
	k := kindOf[K]()
	if k.optional && len(text) == 0 {
		e.quanta = 0
		return nil
	}
	q, err := k.read(textOf(text))
	if err == nil {
		e.quanta = q
	}
	return err
}

// Value implements driver.Valuer for database/sql: the canonical text, and NULL for a temperature that is not given. A
// program that wants a numeric column stores the exact integer itself.
func (e exact[K]) Value() (driver.Value, error) {
	text, err := e.MarshalText()
	if err != nil || len(text) == 0 {
		return nil, err
	}
	return string(text), nil
}

// Scan implements sql.Scanner: a text with its unit, as string or bytes. A bare number is refused, since nobody can
// tell its unit; NULL is a temperature that is not given, and an error for everything else.
func (e *exact[K]) Scan(from any) error {
	k := kindOf[K]()
	if from == nil && k.optional {
		e.quanta = 0
		return nil
	}
	return scanText(from, e, k.accepted)
}

// MarshalBinary implements encoding.BinaryMarshaler, for encoding/gob: one letter for the kind and the exact integer in
// eight bytes, most significant first.
func (e exact[K]) MarshalBinary() ([]byte, error) {
	k := kindOf[K]()
	if !e.IsValid() && !(k.optional && e.quanta == 0) {
		return nil, e.refused()
	}
	return binary.BigEndian.AppendUint64([]byte{k.letter}, uint64(e.quanta)), nil
}

// UnmarshalBinary implements encoding.BinaryUnmarshaler; it reads what MarshalBinary writes.
func (e *exact[K]) UnmarshalBinary(data []byte) error {
	want := Tell("quantity.want_binary", "the nine bytes that a value of this quantity is stored in")
	k := kindOf[K]()
	if len(data) != 9 || data[0] != k.letter {
		return &InputError{Got: Tell("quantity.got_binary", "%d bytes of another form", len(data)), Want: want, Err: ErrForm}
	}
	q := int64(binary.BigEndian.Uint64(data[1:]))
	if !k.valid(q) && !(k.optional && q == 0) {
		return &InputError{Got: Tell("quantity.got_beyond_limits", "a value beyond its limits"), Want: k.limits(k.shown()),
			Err: ErrOutOfRange}
	}
	e.quanta = q
	return nil
}

func (e exact[K]) refused() error {
	return &InputError{Got: e, Want: kindOf[K]().accepted, Err: ErrOutOfRange}
}

// shown is the unit that String prints.
func (k *kind) shown() *scale { return &k.scales[k.show] }

// absent says that there is no value.
func (k *kind) absent() string {
	if k.optional {
		return "no " + k.noun
	}
	return "invalid " + k.noun
}

// read parses a text as the Parse function of the kind does.
func (k *kind) read(text string) (int64, error) {
	if k.compound != nil {
		if q, ok, err := k.compound(k, text); ok {
			return q, err
		}
	}
	return k.parse(text)
}

// canonical appends the text from which the exact value is read back.
func (k *kind) canonical(b []byte, q int64) []byte {
	s := &k.scales[0]
	start := len(b)
	if s.most == 0 {
		return asciiMinus(k.append(b, q, s, s.places, true), start)
	}
	// With as few decimals as bring q back.
	for places := 0; ; places++ {
		b = k.append(b[:start], q, s, places, true)
		if places == s.most || k.back(q, s, places) {
			return asciiMinus(b, start)
		}
	}
}

// asciiMinus keeps machine-readable text free of the typographic minus sign.
func asciiMinus(b []byte, start int) []byte {
	if minus := []byte("−"); bytes.HasPrefix(b[start:], minus) {
		b[start] = '-'
		b = append(b[:start+1], b[start+len(minus):]...)
	}
	return b
}
