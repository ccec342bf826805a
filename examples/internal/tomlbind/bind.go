package tomlbind

import (
	"encoding"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/nearest"
	"github.com/pelletier/go-toml/v2/unstable"
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
	Faults []Fault
	places map[string]place // by key
	slips  map[string]bool  // keys that an unknown key was probably meant to be
	unread map[string]bool  // tables that stand in a file which cannot be read
	open   map[string]Open  // by key
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
		if at, ok := f.places[key]; ok {
			return at
		}
		cut := strings.LastIndexAny(key, ".[")
		if cut < 0 {
			return place{line: 1, column: 1}
		}
		key = key[:cut]
	}
}

// Bind reads the source into target, which must be a pointer to a struct. Whatever can be read
// is read; the faults say what could not.
func Bind(source []byte, target any) *File { return BindWith(source, target, nil) }

// BindWith is [Bind] for a file in which the name of another file may stand instead of a table: for the keys for which
// it says how to open one. What is wrong in the other file is reported where it is named.
func BindWith(source []byte, target any, open map[string]Open) *File {
	f := &File{places: map[string]place{}, slips: map[string]bool{}, unread: map[string]bool{}, open: open}
	start := place{line: 1, column: 1}
	if len(source) > MaxBytes {
		f.fault(start, "", working.Tell("tomlbind.too_large", "the file has more than the %d bytes that are read", MaxBytes))
		return f
	}
	root, fault := parse(source)
	if fault != nil {
		f.Faults = []Fault{*fault}
		return f
	}
	if len(root.names) == 0 {
		f.fault(start, "", working.Tell("tomlbind.empty", "the file is empty"))
		return f
	}
	f.table(root, reflect.TypeOf(target).Elem(), "", place{})
	for _, e := range quantity.InputErrors(quantity.ReadJSON(root.json(nil), target)) {
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

// fault notes what is wrong, with the place in the other file where there is one.
func (f *File) fault(at place, key string, text working.Message) {
	if at.in != "" {
		text = working.Tell("tomlbind.in_file", `in "%s":%d:%d: %v`, working.Say(at.in), at.inLine, at.inColumn, text)
	}
	f.Faults = append(f.Faults, Fault{at.line, at.column, key, text})
}

// table remembers where the values of a table stand, takes out keys that are not known, and puts one item without
// brackets into a list, which is what a person means by it. Outer is where the file that the table is in is named.
func (f *File) table(n *node, t reflect.Type, key string, outer place) {
	fields, names := fieldsOf(t)
	if len(names) == 0 {
		return
	}
	known := n.names[:0:0]
	for _, name := range n.names {
		child, full := n.fields[name], join(key, name)
		of, ok := fields[name]
		if !ok {
			f.unknown(child.key.inside(outer), key, name, names)
			delete(n.fields, name)
			continue
		}
		known = append(known, name)
		n.fields[name] = f.value(child, of, full, outer)
	}
	n.names = known
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

func (f *File) unknown(at place, key, name string, names []string) {
	text := working.Tell("tomlbind.unknown_key_of", "unknown key; known here: %s", working.Say(strings.Join(names, ", ")))
	if near := nearest.Word(name, names); near != "" {
		text = working.Tell("tomlbind.unknown_key", `unknown key; did you mean "%s"?`, working.Say(near))
		f.slips[join(key, near)] = true
	}
	f.fault(at, join(key, name), text)
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

var textType = reflect.TypeFor[encoding.TextUnmarshaler]()

// value is the node as it is to be read into the type.
func (f *File) value(n *node, t reflect.Type, key string, outer place) *node {
	f.places[key] = n.at.inside(outer)
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if reflect.PointerTo(t).Implements(textType) {
		return n
	}
	switch t.Kind() {
	case reflect.Struct:
		if open, ok := f.open[key]; ok && n.kind == unstable.String && outer.in == "" {
			return f.include(n, t, open, key)
		}
		if n.kind == unstable.Table {
			f.table(n, t, key, outer)
		}
	case reflect.Slice:
		if n.kind != unstable.Array {
			n = &node{kind: unstable.Array, items: []*node{n}, at: n.at, key: n.key}
		}
		for i, item := range n.items {
			n.items[i] = f.value(item, t.Elem(), key+"["+strconv.Itoa(i)+"]", outer)
		}
	}
	return n
}

// include is a table from a file of its own. Such a file names no other one.
func (f *File) include(n *node, t reflect.Type, open Open, key string) *node {
	none := table(n.at)
	f.unread[key] = true
	source, err := open(n.text)
	if err != nil {
		text := working.Problem(err)
		if told, ok := err.(interface{ Message() working.Message }); ok {
			text = told.Message()
		}
		f.fault(n.at, key, text)
		return none
	}
	outer := place{line: n.at.line, column: n.at.column, in: n.text}
	if len(source) > MaxBytes {
		f.fault(n.at, key, working.Tell("tomlbind.too_large", "the file has more than the %d bytes that are read", MaxBytes))
		return none
	}
	root, fault := parse(source)
	if fault != nil {
		f.fault(place{line: fault.Line, column: fault.Column}.inside(outer), key, fault.Text)
		return none
	}
	if other, ok := root.fields[key]; ok && other.kind == unstable.String {
		f.fault(other.at.inside(outer), key, working.Tell("tomlbind.names_again", "names a file again; want the %s itself",
			working.Say(key)))
		delete(root.fields, key) // the rest of it is read
		root.names = slices.DeleteFunc(root.names, func(name string) bool { return name == key })
	}
	f.unread[key] = false
	f.table(root, t, key, outer)
	return root
}
