package tomlbind

import (
	"encoding"
	"encoding/json"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/nearest"
)

// MaxBytes is the largest file that is read; a bake file is a page of text.
const MaxBytes = 1 << 20

// A Fault is one thing wrong with the file, and where.
type Fault struct {
	Line, Column int
	Key          string // as in the file: "flour[1].percent"
	Text         working.Message
}

// Message tells the fault with its key.
func (f Fault) Message() working.Message {
	if f.Key == "" {
		return f.Text
	}
	return working.Tell("tomlbind.at_key", "%s: %v", working.Say(f.Key), f.Text)
}

// A File is what was read, with its faults and the places of its keys.
type File struct {
	Faults       []Fault
	keys, values map[string]place // where they stand, by path
	alone        map[string]bool  // lists of one item that is written without brackets
	slips        map[string]bool  // keys that an unknown key was probably meant to be
	unread       map[string]bool  // tables that stand in a file which cannot be read
	open         map[string]Open  // by key
}

// Open reads the file that stands in the place of a table, by the name it is given there.
type Open func(name string) ([]byte, error)

// Meant reports whether a key that is missing was probably written with a slip, or in a file that cannot be read, which
// is reported already.
func (f *File) Meant(key string) bool {
	table, _, _ := strings.Cut(key, ".")
	return f.slips[key] || f.unread[table]
}

// Has reports whether there is a fault at a place already.
func (f *File) Has(line, column int) bool {
	return slices.ContainsFunc(f.Faults, func(x Fault) bool { return x.Line == line && x.Column == column })
}

// Locate returns the line and column where the value of a key stands, or where the closest part of the file that
// encloses it stands. Keys are the paths of input errors.
func (f *File) Locate(key string) (line, column int) {
	at := f.nearest(key)
	return at.line, at.column
}

func (f *File) nearest(key string) place {
	for {
		if at, ok := f.values[f.written(key)]; ok {
			return at
		}
		cut := strings.LastIndexAny(key, ".[")
		if cut < 0 {
			return place{line: 1, column: 1}
		}
		key = key[:cut]
	}
}

// written is the path of a key as the file has it: without the index of an item that has no brackets.
func (f *File) written(key string) string {
	const only = "[0]"
	out := ""
	for rest := key; ; {
		list, after, found := strings.Cut(rest, only)
		out += list
		if !found {
			return out
		}
		if !f.alone[strings.TrimSuffix(key, only+after)] {
			out += only
		}
		rest = after
	}
}

// Bind reads the source into target, which must be a pointer to a struct. Whatever can be read
// is read; the faults say what could not.
func Bind(source []byte, target any) *File { return BindWith(source, target, nil) }

// BindWith is [Bind] for a file in which the name of another file may stand instead of a table: for the keys for which
// it says how to open one. What is wrong in the other file is reported where it is named.
func BindWith(source []byte, target any, open map[string]Open) *File {
	f := &File{keys: map[string]place{}, values: map[string]place{}, alone: map[string]bool{}, slips: map[string]bool{},
		unread: map[string]bool{}, open: open}
	data := f.read(source, reflect.TypeOf(target).Elem(), "", place{})
	switch {
	case data == nil && len(f.Faults) > 0:
		return f
	case len(data) == 0 && len(f.Faults) == 0:
		f.fault(place{line: 1, column: 1}, "", working.Tell("tomlbind.empty", "the file is empty"))
		return f
	}
	text, err := json.Marshal(data)
	if err == nil {
		err = quantity.ReadJSON(text, target)
	}
	for _, e := range quantity.InputErrors(err) {
		bare := *e
		bare.Path, bare.GoPath = "", ""
		f.fault(f.nearest(e.Path), e.Path, working.Problem(&bare))
	}
	slices.SortStableFunc(f.Faults, func(a, b Fault) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
	return f
}

// read reads a file as a table of the type: the whole, or one that is named at a place of another file. Without data it
// could not be read.
func (f *File) read(source []byte, t reflect.Type, key string, outer place) map[string]any {
	at := place{line: 1, column: 1}.inside(outer)
	if len(source) > MaxBytes {
		at.in = "" // the whole file is meant
		f.fault(at, key, working.Tell("tomlbind.too_large", "the file has more than the %d bytes that are read", MaxBytes))
		return nil
	}
	data, fault := parse(source)
	if fault != nil {
		f.fault(place{line: fault.Line, column: fault.Column}.inside(outer), key, fault.Text)
		return nil
	}
	w := walk{prefix: key, outer: outer, keys: f.keys, values: f.values, items: map[string]int{}}
	w.through(source)
	if name := join(key, key); key != "" && isText(data[key]) {
		f.fault(f.values[name], key, working.Tell("tomlbind.names_again", "names a file again; want the %s itself",
			working.Say(key)))
		delete(data, key) // the rest of it is read
	}
	f.table(data, t, key)
	return data
}

func isText(v any) bool { _, is := v.(string); return is }

// fault notes what is wrong, with the place in the other file where there is one.
func (f *File) fault(at place, key string, text working.Message) {
	if at.in != "" {
		text = working.Tell("tomlbind.in_file", `in "%s":%d:%d: %v`, working.Say(at.in), at.inLine, at.inColumn, text)
	}
	f.Faults = append(f.Faults, Fault{at.line, at.column, key, text})
}

// table takes out keys that are not known, and puts one item without brackets into a list, which is what a person means
// by it.
func (f *File) table(data map[string]any, t reflect.Type, key string) {
	fields, names := fieldsOf(t)
	for _, name := range slices.Sorted(maps.Keys(data)) {
		of, known := fields[name]
		switch {
		case known:
			data[name] = f.value(data[name], of, join(key, name))
		case len(names) > 0:
			f.unknown(key, name, names)
			delete(data, name)
		}
	}
}

// fieldsOf lists the keys of a struct, and their types.
func fieldsOf(t reflect.Type) (fields map[string]reflect.Type, names []string) {
	fields = map[string]reflect.Type{}
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name != "" && name != "-" {
			fields[name] = t.Field(i).Type
			names = append(names, name)
		}
	}
	return fields, names
}

func (f *File) unknown(key, name string, names []string) {
	text := working.Tell("tomlbind.unknown_key_of", "unknown key; known here: %s", working.Say(strings.Join(names, ", ")))
	if near := nearest.Word(name, names); near != "" {
		text = working.Tell("tomlbind.unknown_key", `unknown key; did you mean "%s"?`, working.Say(near))
		f.slips[join(key, near)] = true
	}
	f.fault(f.keys[f.written(join(key, name))], join(key, name), text)
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

var textType = reflect.TypeFor[encoding.TextUnmarshaler]()

// value is what is to be read into the type.
func (f *File) value(v any, t reflect.Type, key string) any {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	isText := reflect.PointerTo(t).Implements(textType)
	switch is := v.(type) {
	case float64: // JSON has no number without end, and none that is none
		if math.IsInf(is, 0) || math.IsNaN(is) {
			return strings.TrimPrefix(strings.ToLower(strconv.FormatFloat(is, 'g', -1, 64)), "+")
		}
	case string:
		if open, ok := f.open[key]; ok {
			return f.include(is, t, open, key)
		}
	case map[string]any:
		if t.Kind() == reflect.Struct && !isText {
			f.table(is, t, key)
			return is
		}
	}
	if t.Kind() != reflect.Slice || isText {
		return v
	}
	items, ok := v.([]any)
	if !ok {
		items, f.alone[key] = []any{v}, true
	}
	for i := range items {
		items[i] = f.value(items[i], t.Elem(), key+"["+strconv.Itoa(i)+"]")
	}
	return items
}

// include is a table from a file of its own. Such a file names no other one.
func (f *File) include(name string, t reflect.Type, open Open, key string) map[string]any {
	at := f.values[key]
	source, err := open(name)
	if err != nil {
		text := working.Problem(err)
		if told, ok := err.(interface{ Message() working.Message }); ok {
			text = told.Message()
		}
		f.fault(at, key, text)
	}
	at.in = name
	if err == nil {
		if data := f.read(source, t, key, at); data != nil {
			return data
		}
	}
	f.unread[key] = true
	return map[string]any{}
}
