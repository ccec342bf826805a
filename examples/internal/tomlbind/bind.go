package tomlbind

import (
	"encoding"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// MaxBytes is the largest file that is read; a bake file is a page of text.
const MaxBytes = 1 << 20

// A Fault is one thing wrong with the file, and where.
type Fault struct {
	Line, Column int
	Key          string // as in the file: "flour[1].percent"
	Text         string
}

// A File is what was read, with its faults and the places of its keys.
type File struct {
	Faults []Fault
	places map[string]place  // by Go field path
	keys   map[string]string // Go field path to key in the file
	target reflect.Type
	slips  map[string]bool // keys that an unknown key was probably meant to be
	open   map[string]Open // by Go field path
}

// Open reads the file that stands in the place of a table, by the name it is given there.
type Open func(name string) ([]byte, error)

// Meant reports whether a key that is missing was probably written with a slip, which is
// reported already.
func (f *File) Meant(key string) bool { return f.slips[key] }

// Has reports whether there is a fault at a place already.
func (f *File) Has(line, column int) bool {
	return slices.ContainsFunc(f.Faults, func(x Fault) bool { return x.Line == line && x.Column == column })
}

// key translates a Go field path into the file's words, also for what is not in the file.
func (f *File) key(goPath string) string {
	t, out := f.target, ""
	for _, part := range strings.Split(goPath, ".") {
		name, index, _ := strings.Cut(part, "[")
		for t != nil && (t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice) {
			t = t.Elem()
		}
		if t == nil || t.Kind() != reflect.Struct {
			return join(out, part)
		}
		field, ok := t.FieldByName(name)
		if !ok {
			return join(out, part)
		}
		tag, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		out = join(out, tag)
		if index != "" {
			out += "[" + index
		}
		t = field.Type
	}
	return out
}

// Locate returns the key of the value for a Go field path, and the line and column where it stands,
// or where the closest part of the file that encloses it stands.
func (f *File) Locate(goPath string) (line, column int, key string) {
	key, ok := f.keys[goPath]
	if !ok {
		key = f.key(goPath)
	}
	for p := goPath; ; {
		if at, ok := f.places[p]; ok {
			return at.line, at.column, key
		}
		cut := strings.LastIndexAny(p, ".[")
		if cut < 0 {
			return 1, 1, key
		}
		p = p[:cut]
	}
}

// Bind reads the source into target, which must be a pointer to a struct. Whatever can be read
// is read; the faults say what could not.
func Bind(source []byte, target any) *File { return BindWith(source, target, nil) }

// BindWith is [Bind] for a file in which the name of another file may stand instead of a table: for the fields, by their
// Go field paths, for which it says how to open one. What is wrong in the other file is reported where it is named.
func BindWith(source []byte, target any, open map[string]Open) *File {
	f := &File{
		places: map[string]place{}, keys: map[string]string{}, slips: map[string]bool{}, target: reflect.TypeOf(target).Elem(),
		open: open,
	}
	if len(source) > MaxBytes {
		f.Faults = []Fault{{Line: 1, Column: 1, Text: fmt.Sprintf("the file has more than the %d bytes that are read", MaxBytes)}}
		return f
	}
	root, fault := parse(source)
	if fault != nil {
		f.Faults = []Fault{*fault}
		return f
	}
	if len(root.names) == 0 {
		f.Faults = []Fault{{Line: 1, Column: 1, Text: "the file is empty"}}
		return f
	}
	f.object(root, reflect.ValueOf(target).Elem(), "", "")
	slices.SortStableFunc(f.Faults, func(a, b Fault) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
	return f
}

func (f *File) fault(at place, key, text string) {
	f.Faults = append(f.Faults, Fault{at.line, at.column, key, text})
}

func (f *File) object(n *node, v reflect.Value, goPath, key string) {
	fields := map[string]int{}
	var names []string
	for i := range v.NumField() {
		name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		if name != "" && name != "-" {
			fields[name] = i
			names = append(names, name)
		}
	}
	for _, name := range n.names {
		child := n.fields[name]
		full := join(key, name)
		i, ok := fields[name]
		if !ok {
			text := "unknown key"
			if near := nearest(name, names); near != "" {
				text += fmt.Sprintf("; did you mean %q?", near)
				f.slips[join(key, near)] = true
			} else {
				text += "; known here: " + strings.Join(names, ", ")
			}
			f.fault(child.key, full, text)
			continue
		}
		f.value(child, v.Field(i), join(goPath, v.Type().Field(i).Name), full)
	}
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

var textType = reflect.TypeFor[encoding.TextUnmarshaler]()

func (f *File) value(n *node, v reflect.Value, goPath, key string) {
	f.places[goPath], f.keys[goPath] = n.at, key
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		v = v.Elem()
	}
	if v.Addr().Type().Implements(textType) {
		if n.kind == unstable.Table || n.kind == unstable.Array {
			f.fault(n.at, key, "got "+describe(n)+", want a text")
			return
		}
		if err := v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(n.text)); err != nil {
			f.fault(n.at, key, err.Error())
		}
		return
	}
	wrong := func(want string) { f.fault(n.at, key, "got "+describe(n)+", want "+want) }
	switch v.Kind() {
	case reflect.Struct:
		if open, ok := f.open[goPath]; ok && n.kind == unstable.String {
			f.include(n, v, open, key)
			return
		}
		if n.kind != unstable.Table {
			wrong("a table")
			return
		}
		f.object(n, v, goPath, key)
	case reflect.Slice:
		if n.kind != unstable.Array {
			// One item without brackets is what a person means.
			n = &node{kind: unstable.Array, items: []*node{n}, at: n.at, key: n.key}
		}
		s := reflect.MakeSlice(v.Type(), len(n.items), len(n.items))
		for i, item := range n.items {
			index := "[" + strconv.Itoa(i) + "]"
			f.value(item, s.Index(i), goPath+index, key+index)
		}
		v.Set(s)
	case reflect.String:
		if n.kind != unstable.String {
			wrong("a text in quotes")
			return
		}
		v.SetString(n.text)
	case reflect.Bool:
		if n.kind != unstable.Bool {
			wrong("true or false")
			return
		}
		v.SetBool(n.text == "true")
	case reflect.Int:
		i, err := strconv.Atoi(n.text)
		if n.kind != unstable.Integer || err != nil {
			wrong("a whole number")
			return
		}
		v.SetInt(int64(i))
	case reflect.Float64:
		x, err := strconv.ParseFloat(n.text, 64)
		if n.kind != unstable.Integer && n.kind != unstable.Float || err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			wrong("a number")
			return
		}
		v.SetFloat(x)
	default:
		wrong("something this program cannot hold (" + v.Kind().String() + ")")
	}
}

// include reads a table from a file of its own. Such a file names no other one.
func (f *File) include(n *node, v reflect.Value, open Open, key string) {
	source, err := open(n.text)
	if err != nil {
		f.fault(n.at, key, err.Error())
		return
	}
	at := func(line, column int) string {
		return fmt.Sprintf("in %s:%d:%d: ", strconv.Quote(n.text), line, column)
	}
	if root, fault := parse(source); fault == nil {
		if other, ok := root.fields[key]; ok && other.kind == unstable.String {
			f.fault(n.at, key, at(other.at.line, other.at.column)+"names a file again; want the "+key+" itself")
			return
		}
	}
	inner := Bind(source, v.Addr().Interface())
	for _, x := range inner.Faults {
		text := x.Text
		if x.Key != "" {
			text = x.Key + ": " + text
		}
		f.fault(n.at, key, at(x.Line, x.Column)+text)
	}
}

func describe(n *node) string {
	switch n.kind {
	case unstable.Table:
		return "a table"
	case unstable.Array:
		return "a list"
	case unstable.String:
		if len(n.text) > 32 {
			return fmt.Sprintf("a text of %d bytes", len(n.text))
		}
		return strconv.Quote(n.text)
	}
	if len(n.text) > 32 {
		return "a value of " + strconv.Itoa(len(n.text)) + " bytes"
	}
	return n.text
}

// nearest returns the known name with the fewest edits, if that is few enough to be a slip.
func nearest(name string, known []string) string {
	best, fewest := "", 3
	if len(name) <= 4 {
		fewest = 2
	}
	if len(name) > 64 {
		return ""
	}
	for _, k := range known {
		if d := edits(name, k); d < fewest {
			best, fewest = k, d
		}
	}
	return best
}

// edits counts insertions, deletions, substitutions and swaps of neighbors (optimal string
// alignment).
func edits(a, b string) int {
	x, y := []rune(a), []rune(b)
	d := make([][]int, len(x)+1)
	for i := range d {
		d[i] = make([]int, len(y)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(x); i++ {
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(x)][len(y)]
}

// Suggest returns the known word closest to name, or "" if none is close.
func Suggest(name string, known []string) string { return nearest(name, known) }
