package quantity

import (
	"cmp"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

const maxFormItems = 1000 // in one list of a form

// ReadForm reads texts by the paths of the data form into the value that into points to, such as the fields of an
// HTML form: "target": "26 °C", "others[0].temperature": "21 °C". The names of the fields are then the paths of the
// errors, and no application needs a table from one to the other. A name without a text is not given. It
// reports everything that is wrong at once, as [ReadJSON] does and with the same codes: an unknown name, one that is
// given twice, a text that its quantity or enumeration refuses, an index beyond 999 or beyond a gap of the list.
//
// Names are those of the json tags, exactly; numbers and "true", "false" or "on" are read from text too. A table with
// keys of its own is not read. Whether what must be given is given, and fits, is for the check of the input; see
// [Problems.ErrFor]. After an error the value is partly filled and not to be used.
func ReadForm(form map[string][]string, into any) error {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		return &InputError{Code: "wrong_type", Want: Tell("quantity.want_pointer_to_read_into", "a pointer to read into"),
			Err: ErrForm}
	}
	f := formReader{jsonReader{keys: map[reflect.Type][]jsonField{}}}
	for _, name := range slices.SortedFunc(maps.Keys(form), compareNames) {
		texts := slices.DeleteFunc(slices.Clone(form[name]), func(t string) bool { return strings.TrimSpace(t) == "" })
		switch at := (jsonPath{data: short(name), inGo: short(name)}); {
		case len(f.problems.list) >= maxProblems:
		case len(texts) > 1:
			f.add(at, "duplicate_key", Tell("quantity.got_name_second_time", "the name a second time"),
				Tell("quantity.want_each_name_once", "each name once"))
		default:
			f.field(jsonPath{}, name, strings.Join(texts, ""), target.Elem())
		}
	}
	return f.problems.Err()
}

// compareNames sorts others[2] before others[10], so that lists grow from their beginning.
func compareNames(a, b string) int {
	for a != "" && b != "" {
		x, y := leadingDigits(a), leadingDigits(b)
		if x != "" && y != "" {
			if c := cmp.Or(cmp.Compare(len(x), len(y)), strings.Compare(x, y)); c != 0 {
				return c
			}
			a, b = a[len(x):], b[len(y):]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

func leadingDigits(text string) string {
	return text[:len(text)-len(strings.TrimLeft(text, "0123456789"))]
}

type formReader struct{ jsonReader }

// field sets the part of v that the rest of the name leads to.
func (f *formReader) field(at jsonPath, rest, text string, v reflect.Value) {
	for v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		v = v.Elem()
	}
	inner := &at
	if at.outer == nil && at.data == "" {
		inner = nil
	}
	switch {
	case rest == "":
		f.set(at, text, v)
	case rest[0] == '[' && v.Kind() == reflect.Slice:
		digits, after, closed := strings.Cut(rest[1:], "]")
		i, err := strconv.Atoi(digits)
		there := jsonPath{inner, "[" + short(digits) + "]", "[" + short(digits) + "]"}
		if !closed || err != nil || strconv.Itoa(i) != digits || i < 0 || i >= maxFormItems || i > v.Len() {
			f.add(there, "unknown_key", Tell("quantity.got_index", "the index %s", Excerpt(digits)),
				Tell("quantity.want_indexes_from_0_without_gap", "indexes from 0 without a gap, at most 999"))
			return
		}
		if i == v.Len() {
			v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
		}
		f.field(there, strings.TrimPrefix(after, "."), text, v.Index(i))
	case v.Kind() == reflect.Struct && readsText(v) == nil:
		end := strings.IndexAny(rest, ".[")
		key, after := rest, ""
		if end >= 0 {
			key, after = rest[:end], strings.TrimPrefix(rest[end:], ".")
		}
		fields := f.fields(v.Type())
		if i := find(fields, key); i >= 0 {
			f.field(jsonPath{inner, key, fields[i].name}, after, text, v.FieldByIndex(fields[i].index))
			return
		}
		f.add(jsonPath{inner, short(key), short(key)}, "unknown_key",
			Tell("quantity.got_name_not_known", "a name that is not known"), accepted(fields))
	default:
		f.add(at, "unknown_key", Tell("quantity.got_more_name", "more of a name, %s", Excerpt(rest)),
			Tell("quantity.want_name_to_end_here", "the name to end here"))
	}
}

// set reads the text into a value without parts; no text leaves it as it is.
func (f *formReader) set(at jsonPath, text string, v reflect.Value) {
	switch reads := readsText(v); {
	case strings.TrimSpace(text) == "":
	case reads != nil:
		if err := reads.UnmarshalText([]byte(text)); err != nil {
			f.join(at, err)
		}
	case v.Kind() == reflect.String:
		v.SetString(text)
	case v.Kind() == reflect.Bool:
		on := text == "on" || text == "true"
		if !on && text != "false" {
			f.add(at, "wrong_type", Excerpt(text), Tell("quantity.want_true_false_or", "true, false or on"))
		}
		v.SetBool(on)
	case isNumber(v):
		if want := setNumber(v, strings.TrimSpace(text)); !want.IsZero() {
			f.add(at, "wrong_type", Excerpt(text), want)
		}
	default:
		f.add(at, "wrong_type", Tell("quantity.got_text", "a text"),
			Tell("quantity.want_names_parts", "the names of its parts"))
	}
}
