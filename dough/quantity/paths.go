package quantity

import (
	"errors"
	"reflect"
	"strings"
	"unicode"
)

// DataPaths gives every [InputError] inside err the path by which the data form of the input names it, derived from
// its Go path and the json tags of the input's type: "Flours[1].Percent" becomes "flours[1].percent". A field without a
// tag is named in snake_case, as is everything below what the type does not tell. A path that is already derived,
// from a part of the input, keeps what it says of the part. DataPaths of nil is nil.
func DataPaths(input any, err error) error {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		var out []error
		for _, e := range joined.Unwrap() {
			out = append(out, DataPaths(input, e))
		}
		return errors.Join(out...)
	}
	in, ok := err.(*InputError)
	if !ok || in.GoPath == "" && in.ahead == "" || in.Path != "" && in.ahead == "" {
		return err
	}
	named := *in
	named.Code = in.code()
	if in.ahead != "" {
		named.Path = joinPath(dataPath(input, in.ahead), in.derived)
	} else {
		named.Path = dataPath(input, in.GoPath)
	}
	named.ahead, named.derived = "", ""
	return &named
}

func joinPath(front, path string) string {
	switch {
	case front == "":
		return path
	case path == "":
		return front
	case strings.HasPrefix(path, "["):
		return front + path
	}
	return front + "." + path
}

// dataPath walks a Go path through the type of the input, and through its value where only that knows the type.
func dataPath(input any, goPath string) string {
	out := ""
	at := reflect.ValueOf(input)
	var typ reflect.Type // nil from where the type does not tell
	if at.IsValid() {
		typ = at.Type()
	}
	for rest := goPath; rest != ""; {
		var name string
		if strings.HasPrefix(rest, "[") {
			name, rest = cutIndex(rest)
			out += name
			typ, at = element(typ, at, name[1:len(name)-1])
		} else {
			end := strings.IndexAny(rest, ".[")
			if end < 0 {
				end = len(rest)
			}
			name, rest = rest[:end], rest[end:]
			var data string
			data, typ, at = member(typ, at, name)
			out = joinPath(out, data)
		}
		rest = strings.TrimPrefix(rest, ".")
	}
	return out
}

func cutIndex(path string) (index, rest string) {
	if end := strings.IndexByte(path, ']'); end >= 0 {
		return path[:end+1], path[end+1:]
	}
	return path + "]", ""
}

// settled follows pointers, and interfaces as far as there is a value.
func settled(typ reflect.Type, at reflect.Value) (reflect.Type, reflect.Value) {
	for typ != nil && (typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Interface) {
		if at.IsValid() && !at.IsNil() {
			at = at.Elem()
			typ = at.Type()
			continue
		}
		if typ.Kind() == reflect.Interface {
			return nil, reflect.Value{}
		}
		typ, at = typ.Elem(), reflect.Value{}
	}
	return typ, at
}

func element(typ reflect.Type, at reflect.Value, index string) (reflect.Type, reflect.Value) {
	typ, at = settled(typ, at)
	if typ == nil {
		return nil, reflect.Value{}
	}
	switch typ.Kind() {
	case reflect.Slice, reflect.Array:
		i, digits := 0, index != "" && len(index) < 10
		for _, r := range index {
			digits = digits && r >= '0' && r <= '9'
			i = 10*i + int(r-'0')
		}
		if at.IsValid() && digits && i < at.Len() {
			return typ.Elem(), at.Index(i)
		}
		return typ.Elem(), reflect.Value{}
	case reflect.Map:
		return typ.Elem(), reflect.Value{}
	}
	return nil, reflect.Value{}
}

// member names a field of a struct in its data form; promoted fields of embedded structs count as its own.
func member(typ reflect.Type, at reflect.Value, name string) (data string, _ reflect.Type, _ reflect.Value) {
	typ, at = settled(typ, at)
	if typ == nil || typ.Kind() != reflect.Struct {
		return snake(name), nil, reflect.Value{}
	}
	field, ok := typ.FieldByName(name)
	if !ok {
		return snake(name), nil, reflect.Value{}
	}
	for _, i := range field.Index {
		typ, at = settled(typ, at)
		step := typ.Field(i)
		if at.IsValid() {
			at = at.Field(i)
		}
		typ = step.Type
		data = joinPath(data, dataName(step))
	}
	return data, typ, at
}

// dataName is the key that JSON has for a field; an embedded struct without a tag has none.
func dataName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	switch {
	case name != "" && name != "-":
		return name
	case f.Anonymous && name == "":
		return ""
	}
	return snake(f.Name)
}

// snake writes a Go name as data does: "FlourKind" is flour_kind, "PHTarget" is ph_target.
func snake(name string) string {
	var b strings.Builder
	letters := []rune(name)
	for i, r := range letters {
		if unicode.IsUpper(r) {
			before := i > 0 && letters[i-1] != '_' && !unicode.IsUpper(letters[i-1])
			after := i > 0 && unicode.IsUpper(letters[i-1]) && i+1 < len(letters) && unicode.IsLower(letters[i+1])
			if before || after {
				b.WriteByte('_')
			}
			r = unicode.ToLower(r)
		}
		b.WriteRune(r)
	}
	return b.String()
}
