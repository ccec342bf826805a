package quantity

import (
	"encoding/json"
	"reflect"
	"strings"
)

// A jsonField is a key that a struct has in JSON, and where the value goes.
type jsonField struct {
	key, name string
	index     []int
}

// fields lists the keys of a struct; those of embedded structs without a key of their own come last and give way.
func (r *jsonReader) fields(t reflect.Type) []jsonField {
	if known, ok := r.keys[t]; ok {
		return known
	}
	var own, embedded []jsonField
	for i := range t.NumField() {
		f := t.Field(i)
		tag := f.Tag.Get("json")
		key, _, _ := strings.Cut(tag, ",")
		switch {
		case tag == "-":
		case f.Anonymous && key == "" && f.Type.Kind() == reflect.Struct:
			for _, inner := range r.fields(f.Type) {
				inner.index = append([]int{i}, inner.index...)
				embedded = append(embedded, inner)
			}
		case !f.IsExported():
		case key != "":
			own = append(own, jsonField{key, f.Name, f.Index})
		default:
			own = append(own, jsonField{f.Name, f.Name, f.Index})
		}
	}
	for _, e := range embedded {
		if find(own, e.key) < 0 {
			own = append(own, e)
		}
	}
	r.keys[t] = own
	return own
}

func find(fields []jsonField, key string) int {
	for i := range fields {
		if fields[i].key == key {
			return i
		}
	}
	return -1
}

// object reads the keys of a struct, whose opening brace was read.
func (r *jsonReader) object(at jsonPath, v reflect.Value) error {
	fields := r.fields(v.Type())
	seen := make([]bool, len(fields))
	return r.each(func(int) error {
		key, err := r.key()
		if err != nil {
			return err
		}
		i := find(fields, key)
		if i < 0 {
			r.add(jsonPath{&at, short(key), short(key)}, "unknown_key",
				Tell("quantity.got_key_not_known", "a key that is not known"), accepted(fields))
			return r.ignore()
		}
		there := jsonPath{&at, key, fields[i].name}
		if seen[i] {
			r.add(there, "duplicate_key", Tell("quantity.got_key_second_time", "the key a second time"),
				Tell("quantity.want_each_key_once", "each key once"))
			return r.ignore()
		}
		seen[i] = true
		return r.value(there, v.FieldByIndex(fields[i].index))
	})
}

// table reads a map, whose opening brace was read.
func (r *jsonReader) table(at jsonPath, v reflect.Value) error {
	t := v.Type()
	made := reflect.MakeMap(t)
	err := r.each(func(int) error {
		text, err := r.key()
		if err != nil {
			return err
		}
		index := "[" + short(text) + "]"
		there := jsonPath{&at, index, index}
		key := reflect.New(t.Key()).Elem()
		switch reads := readsText(key); {
		case reads != nil:
			if err := reads.UnmarshalText([]byte(text)); err != nil {
				r.join(there, err)
				return r.ignore()
			}
		case key.Kind() == reflect.String:
			key.SetString(text)
		case !isNumber(key) || !setNumber(key, text).IsZero():
			r.add(there, "wrong_type", Tell("quantity.got_key", "the key %s", Excerpt(text)),
				Tell("quantity.want_as_key", "%v as key", wanted(t.Key())))
			return r.ignore()
		}
		if made.MapIndex(key).IsValid() {
			r.add(there, "duplicate_key", Tell("quantity.got_key_second_time", "the key a second time"),
				Tell("quantity.want_each_key_once", "each key once"))
			return r.ignore()
		}
		item := reflect.New(t.Elem()).Elem()
		if err := r.value(there, item); err != nil {
			return err
		}
		made.SetMapIndex(key, item)
		return nil
	})
	v.Set(made)
	return err
}

// list reads a slice or an array, whose opening bracket was read.
func (r *jsonReader) list(at jsonPath, v reflect.Value) error {
	slice := v.Kind() == reflect.Slice
	if slice {
		v.Set(reflect.MakeSlice(v.Type(), 0, 0))
	}
	n := 0
	err := r.each(func(i int) error {
		n++
		if !slice && i >= v.Len() {
			return r.ignore()
		}
		if slice {
			v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
		}
		return r.value(at.at(i), v.Index(i))
	})
	if err == nil && !slice && n != v.Len() {
		r.add(at, "wrong_type", Tell("quantity.got_list", "a list of %d", n),
			Tell("quantity.want_list", "a list of %d", v.Len()))
	}
	return err
}

// each reads the items of an object or a list and its end.
func (r *jsonReader) each(item func(i int) error) error {
	for i := 0; r.tokens.More(); i++ {
		r.items++
		if r.items > maxJSONItems {
			return errTooMany
		}
		if err := item(i); err != nil {
			return err
		}
		if len(r.problems.list) >= maxProblems {
			return errEnough
		}
	}
	_, err := r.tokens.Token()
	return err
}

func (r *jsonReader) key() (string, error) {
	token, err := r.tokens.Token()
	key, _ := token.(string)
	return key, err
}

func (r *jsonReader) ignore() error {
	token, err := r.tokens.Token()
	if err != nil {
		return err
	}
	return r.skip(token)
}

// accepted lists keys for an error, the first dozen of many.
func accepted(fields []jsonField) Phrase {
	const most = 12
	var keys []string
	for _, f := range fields[:min(len(fields), most)] {
		keys = append(keys, f.key)
	}
	out := strings.Join(keys, ", ")
	if len(fields) > most {
		out += ", …"
	}
	if len(fields) == 0 {
		return Tell("quantity.want_no_keys", "no keys")
	}
	return oneOf(out)
}

// short cuts a key of the data for a path.
func short(key string) string {
	quoted := Excerpt(key)
	if quoted == `"`+key+`"` {
		return key
	}
	return quoted
}

// skip reads to the end of the value whose first token was read.
func (r *jsonReader) skip(token json.Token) error {
	for open := 0; ; {
		if d, ok := token.(json.Delim); ok {
			if d == '{' || d == '[' {
				open++
			} else {
				open--
			}
		}
		if open <= 0 {
			return nil
		}
		var err error
		if token, err = r.tokens.Token(); err != nil {
			return err
		}
	}
}
