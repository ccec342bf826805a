package quantity

import (
	"encoding"
	"encoding/json"
	"errors"
	"reflect"
	"strconv"
	"strings"
	"time"

	"github.com/shopspring/decimal"
)

// readsItself returns what reads the JSON of v, where v does that itself or takes any JSON.
func readsItself(v reflect.Value) func([]byte) error {
	if v.Kind() == reflect.Pointer || !v.CanAddr() || v.Type() == reflect.TypeFor[time.Time]() {
		return nil
	}
	target := v.Addr().Interface()
	if d, ok := target.(*decimal.Decimal); ok {
		return func(raw []byte) error { return readDecimal(d, raw) }
	}
	if u, ok := target.(json.Unmarshaler); ok {
		return u.UnmarshalJSON
	}
	if v.Kind() == reflect.Interface && v.NumMethod() == 0 || v.Type() == reflect.TypeFor[[]byte]() {
		return func(raw []byte) error { return json.Unmarshal(raw, target) }
	}
	return nil
}

// readDecimal reads a number, or a text that is one, of a size that can be printed.
func readDecimal(into *decimal.Decimal, raw []byte) error {
	text := strings.Trim(string(raw), `"`)
	refused := &InputError{Got: Excerpt(text), Want: Tell("quantity.want_decimal", `a number, such as "4.20"`),
		Code: "wrong_type", Err: ErrForm}
	if len(text) > maxText {
		return refused
	}
	d, err := decimal.NewFromString(text)
	if err != nil {
		return refused
	}
	if d.Exponent() > maxText || d.Exponent() < -maxText {
		refused.Code, refused.Err = "", ErrOutOfRange
		return refused
	}
	*into = d
	return nil
}

// readsText returns v as what reads a text. A time.Duration is read as an Elapsed.
func readsText(v reflect.Value) encoding.TextUnmarshaler {
	if v.Kind() == reflect.Pointer || !v.CanAddr() {
		return nil
	}
	if d, ok := v.Addr().Interface().(*time.Duration); ok {
		return (*Elapsed)(d)
	}
	u, _ := v.Addr().Interface().(encoding.TextUnmarshaler)
	return u
}

// raw hands a value over to what reads itself.
func (r *jsonReader) raw(at jsonPath, read func([]byte) error, whole reflect.Value) error {
	var raw json.RawMessage
	if err := r.tokens.Decode(&raw); err != nil {
		return err
	}
	if string(raw) == "null" {
		r.null(at, whole)
		return nil
	}
	if err := read(raw); err != nil {
		r.join(at, err)
	}
	return nil
}

// null reads null where the zero value of the type is written so, and refuses it elsewhere.
func (r *jsonReader) null(at jsonPath, v reflect.Value) {
	v.SetZero()
	if text, err := json.Marshal(v.Interface()); err == nil && string(text) == "null" {
		return
	}
	r.put(at, "null", Tell("quantity.got_null_2", "null"),
		Tell("quantity.want_value_or_key_left_out", "a value, or the key left out"), ErrRequired)
}

var timeWant = Tell("quantity.want_moment_offset_2026_11_28t09",
	"a moment with its offset, such as 2026-11-28T09:00:00+01:00")

// text reads a value that has a text form. What is no text is refused with what its quantity wants.
func (r *jsonReader) text(at jsonPath, token json.Token, v reflect.Value) error {
	given, ok := token.(string)
	if ok {
		r.given(at, given, v)
		return nil
	}
	want := Tell("quantity.want_text", "a text")
	if v.Type() == reflect.TypeFor[time.Time]() {
		want = timeWant
	}
	scratch := reflect.New(v.Type()).Elem()
	if found := InputErrors(readsText(scratch).UnmarshalText([]byte("?"))); len(found) > 0 && !found[0].Want.IsZero() {
		want = Tell("quantity.want_text_with", "a text: %v", found[0].Want)
	}
	r.add(at, "wrong_type", described(token), want)
	return r.skip(token)
}

// given reads a text into a value that has a text form.
func (r *jsonReader) given(at jsonPath, text string, v reflect.Value) {
	err := readsText(v).UnmarshalText([]byte(text))
	if err != nil && v.Type() == reflect.TypeFor[time.Time]() {
		err = &InputError{Got: Excerpt(text), Want: timeWant, Err: ErrForm}
	}
	if err != nil {
		r.join(at, err)
	}
}

func isNumber(v reflect.Value) bool { return v.CanInt() || v.CanUint() || v.CanFloat() }

// setNumber returns what is accepted instead, and nothing when the number was set.
func setNumber(v reflect.Value, n string) Phrase {
	var err error
	bits := v.Type().Bits()
	switch {
	case v.CanInt():
		var i int64
		if i, err = strconv.ParseInt(n, 10, bits); err == nil {
			v.SetInt(i)
		}
	case v.CanUint():
		var i uint64
		if i, err = strconv.ParseUint(n, 10, bits); err == nil {
			v.SetUint(i)
		}
	default:
		var x float64
		if x, err = strconv.ParseFloat(n, bits); err == nil {
			v.SetFloat(x)
		}
	}
	switch {
	case err == nil:
		return Phrase{}
	case errors.Is(err, strconv.ErrSyntax) && v.CanUint():
		return Tell("quantity.want_whole_number_from_0", "a whole number from 0")
	case errors.Is(err, strconv.ErrSyntax):
		return wanted(v.Type())
	case v.CanInt():
		return Tell("quantity.want_signed", "a whole number of at most %d bits and a sign", bits-1)
	case v.CanUint():
		return Tell("quantity.want_unsigned", "a whole number from 0, of at most %d bits", bits)
	}
	return Tell("quantity.want_float", "a number that a float of %d bits can hold", bits)
}

// described names a token for an error.
func described(token json.Token) Phrase {
	switch t := token.(type) {
	case json.Delim:
		if t == '{' {
			return Tell("quantity.want_object", "an object")
		}
		return Tell("quantity.want_some_list", "a list")
	case string:
		return Tell("quantity.got_the_text", "the text %s", Excerpt(t))
	case json.Number:
		return Tell("quantity.got_the_number", "the number %s", strings.Trim(Excerpt(t.String()), `"`))
	case bool:
		return literally(strconv.FormatBool(t))
	}
	return literally("null")
}

// literally is a text that is the same in every language.
func literally(text string) Phrase { return Phrase{English: "%s", Args: []any{text}} }

func oneOf(words string) Phrase { return Tell("quantity.want_one_of", "one of %s", words) }

func wanted(t reflect.Type) Phrase {
	switch t.Kind() {
	case reflect.Struct, reflect.Map:
		return Tell("quantity.want_object", "an object")
	case reflect.Slice, reflect.Array:
		return Tell("quantity.want_some_list", "a list")
	case reflect.String:
		return Tell("quantity.want_text", "a text")
	case reflect.Bool:
		return Tell("quantity.want_bool", "true or false")
	case reflect.Float32, reflect.Float64:
		return Tell("quantity.want_number", "a number")
	case reflect.Interface, reflect.Func, reflect.Chan:
		return Tell("quantity.want_no_form", "nothing: this part has no form in JSON")
	}
	return Tell("quantity.want_whole_number", "a whole number")
}
