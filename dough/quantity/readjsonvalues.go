package quantity

import (
	"encoding"
	"encoding/json"
	"reflect"
	"strconv"
	"strings"
	"time"
)

// readsItself returns what reads the JSON of v, where v does that itself or takes any JSON.
func readsItself(v reflect.Value) func([]byte) error {
	if v.Kind() == reflect.Pointer || !v.CanAddr() || v.Type() == reflect.TypeFor[time.Time]() {
		return nil
	}
	target := v.Addr().Interface()
	if u, ok := target.(json.Unmarshaler); ok {
		return u.UnmarshalJSON
	}
	if v.Kind() == reflect.Interface && v.NumMethod() == 0 || v.Type() == reflect.TypeFor[[]byte]() {
		return func(raw []byte) error { return json.Unmarshal(raw, target) }
	}
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
	r.put(at, "null", "null", "a value, or the key left out", ErrRequired)
}

const timeWant = "a moment with its offset, such as 2026-11-28T09:00:00+01:00"

// text reads a value that has a text form. What is no text is refused with what its quantity wants.
func (r *jsonReader) text(at jsonPath, token json.Token, v reflect.Value) error {
	given, ok := token.(string)
	if ok {
		err := readsText(v).UnmarshalText([]byte(given))
		if err != nil && v.Type() == reflect.TypeFor[time.Time]() {
			err = &InputError{Got: Excerpt(given), Want: timeWant, Err: ErrForm}
		}
		if err != nil {
			r.join(at, err)
		}
		return nil
	}
	want := "a text"
	if v.Type() == reflect.TypeFor[time.Time]() {
		want = timeWant
	}
	scratch := reflect.New(v.Type()).Elem()
	if found := InputErrors(readsText(scratch).UnmarshalText([]byte("?"))); len(found) > 0 && found[0].Want != "" {
		want = "a text: " + found[0].Want
	}
	r.add(at, "wrong_type", described(token), want)
	return r.skip(token)
}

func isNumber(v reflect.Value) bool { return v.CanInt() || v.CanUint() || v.CanFloat() }

// setNumber returns what is accepted instead, and "" when the number was set.
func setNumber(v reflect.Value, n string) string {
	switch {
	case v.CanInt():
		i, err := strconv.ParseInt(n, 10, v.Type().Bits())
		if err != nil {
			return "a whole number of at most " + strconv.Itoa(v.Type().Bits()-1) + " bits and a sign"
		}
		v.SetInt(i)
	case v.CanUint():
		i, err := strconv.ParseUint(n, 10, v.Type().Bits())
		if err != nil {
			return "a whole number from 0, of at most " + strconv.Itoa(v.Type().Bits()) + " bits"
		}
		v.SetUint(i)
	default:
		x, err := strconv.ParseFloat(n, v.Type().Bits())
		if err != nil {
			return "a number that a float of " + strconv.Itoa(v.Type().Bits()) + " bits can hold"
		}
		v.SetFloat(x)
	}
	return ""
}

// described names a token for an error.
func described(token json.Token) string {
	switch t := token.(type) {
	case json.Delim:
		if t == '{' {
			return "an object"
		}
		return "a list"
	case string:
		return "the text " + Excerpt(t)
	case json.Number:
		return "the number " + strings.Trim(Excerpt(t.String()), `"`)
	case bool:
		return strconv.FormatBool(t)
	}
	return "null"
}

func wanted(t reflect.Type) string {
	switch t.Kind() {
	case reflect.Struct, reflect.Map:
		return "an object"
	case reflect.Slice, reflect.Array:
		return "a list"
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "true or false"
	case reflect.Float32, reflect.Float64:
		return "a number"
	case reflect.Interface, reflect.Func, reflect.Chan:
		return "nothing: this part has no form in JSON"
	}
	return "a whole number"
}
