package tomlbind

import (
	"encoding/json"
	"errors"
	"math"
	"sort"
	"strconv"
	"strings"

	"example.org/maslin/dough/working"
	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// A place is a line and column, both from 1. In a file that another one names it is where that is named, and the place
// there.
type place struct {
	line, column     int
	in               string // the name of the file
	inLine, inColumn int
}

// inside is the place seen from the file that names the one it is in.
func (p place) inside(outer place) place {
	if outer.in == "" {
		return p
	}
	outer.inLine, outer.inColumn = p.line, p.column
	return outer
}

type node struct {
	kind   unstable.Kind // Table for anything with fields, Array for anything with items
	text   string        // of a leaf, as it stands in the file, strings without their quotes
	at     place         // of the value
	key    place         // of the key
	names  []string      // of fields, in order
	fields map[string]*node
	items  []*node
}

func table(at place) *node {
	return &node{kind: unstable.Table, at: at, key: at, fields: map[string]*node{}}
}

func (n *node) put(name string, child *node) {
	if _, ok := n.fields[name]; !ok {
		n.names = append(n.names, name)
	}
	n.fields[name] = child
}

// parse builds the tree. Syntax errors, duplicate keys and the like are found by the TOML
// library first; the walk that follows only remembers where everything stands.
func parse(source []byte) (*node, *Fault) {
	var whole map[string]any
	if err := toml.Unmarshal(source, &whole); err != nil {
		var decode *toml.DecodeError
		if errors.As(err, &decode) {
			line, column := decode.Position()
			return nil, noTOML(line, column, decode)
		}
		return nil, noTOML(1, 1, err)
	}
	var p unstable.Parser
	p.Reset(source)
	w := walker{lines: startsOfLines(source)}
	root := table(place{line: 1, column: 1})
	current := root
	for p.NextExpression() {
		e := p.Expression()
		switch e.Kind {
		case unstable.Table:
			current = w.open(root, e, false)
		case unstable.ArrayTable:
			current = w.open(root, e, true)
		case unstable.KeyValue:
			w.keyValue(current, e)
		}
	}
	if err := p.Error(); err != nil {
		return nil, noTOML(1, 1, err)
	}
	return root, nil
}

// noTOML is a fault that the parser found; its words are not the program's.
func noTOML(line, column int, err error) *Fault {
	text := working.Say(strings.TrimPrefix(err.Error(), "toml: "))
	return &Fault{Line: line, Column: column, Text: working.Tell("tomlbind.no_toml", "no TOML: %v", text)}
}

// json writes the node as JSON, for the library to read. Dates and numbers without end are texts.
func (n *node) json(b []byte) []byte {
	switch n.kind {
	case unstable.Table:
		b = append(b, '{')
		for i, name := range n.names {
			if i > 0 {
				b = append(b, ',')
			}
			b = append(quoted(b, name), ':')
			b = n.fields[name].json(b)
		}
		return append(b, '}')
	case unstable.Array:
		b = append(b, '[')
		for i, item := range n.items {
			if i > 0 {
				b = append(b, ',')
			}
			b = item.json(b)
		}
		return append(b, ']')
	case unstable.Bool:
		return append(b, n.text...)
	case unstable.Integer:
		if i, err := strconv.ParseInt(n.text, 0, 64); err == nil {
			return strconv.AppendInt(b, i, 10)
		}
	case unstable.Float:
		if x, err := strconv.ParseFloat(n.text, 64); err == nil && !math.IsInf(x, 0) && !math.IsNaN(x) {
			return strconv.AppendFloat(b, x, 'g', -1, 64)
		}
	}
	return quoted(b, n.text)
}

func quoted(b []byte, text string) []byte {
	q, _ := json.Marshal(text) // a text always has a form
	return append(b, q...)
}

type walker struct {
	lines []int // offsets at which lines begin: the parser counts them from the top for every place
}

func startsOfLines(source []byte) []int {
	starts := []int{0}
	for i, b := range source {
		if b == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

func (w walker) place(n *unstable.Node, otherwise place) place {
	if n.Raw.Length == 0 {
		return otherwise
	}
	offset := int(n.Raw.Offset)
	line := sort.SearchInts(w.lines, offset+1)
	return place{line: line, column: offset - w.lines[line-1] + 1}
}

func (w walker) open(root *node, e *unstable.Node, array bool) *node {
	at := root
	keys := e.Key()
	for keys.Next() {
		k := keys.Node()
		where, name := w.place(k, place{line: 1, column: 1}), string(k.Data)
		child, ok := at.fields[name]
		last := keys.IsLast()
		switch {
		case last && array:
			if !ok || child.kind != unstable.Array {
				child = &node{kind: unstable.Array, at: where, key: where}
				at.put(name, child)
			}
			child.items = append(child.items, table(where))
		case !ok:
			child = table(where)
			at.put(name, child)
		}
		if child.kind == unstable.Array && len(child.items) > 0 {
			child = child.items[len(child.items)-1]
		}
		at = child
	}
	if at.fields == nil {
		return table(place{line: 1, column: 1}) // refused by the library already
	}
	return at
}

func (w walker) keyValue(at *node, e *unstable.Node) {
	keys := e.Key()
	for keys.Next() {
		k := keys.Node()
		where, name := w.place(k, at.at), string(k.Data)
		if !keys.IsLast() {
			child, ok := at.fields[name]
			if !ok {
				child = table(where)
				at.put(name, child)
			}
			at = child
			continue
		}
		child := w.value(e.Value(), where)
		child.key = where
		at.put(name, child)
	}
}

func (w walker) value(v *unstable.Node, where place) *node {
	n := &node{kind: v.Kind, at: w.place(v, where), key: where}
	switch v.Kind {
	case unstable.Array:
		for it := v.Children(); it.Next(); {
			if c := it.Node(); c.Kind != unstable.Comment {
				n.items = append(n.items, w.value(c, n.at))
			}
		}
	case unstable.InlineTable:
		t := table(n.at)
		for it := v.Children(); it.Next(); {
			if c := it.Node(); c.Kind == unstable.KeyValue {
				w.keyValue(t, c)
			}
		}
		return t
	case unstable.Integer, unstable.Float:
		n.text = strings.ReplaceAll(string(v.Data), "_", "")
	default:
		n.text = string(v.Data)
	}
	return n
}
