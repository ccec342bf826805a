package tomlbind

import (
	"errors"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// A place is a line and column, both from 1.
type place struct{ line, column int }

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
			return nil, &Fault{Line: line, Column: column, Text: strings.TrimPrefix(decode.Error(), "toml: ")}
		}
		return nil, &Fault{Line: 1, Column: 1, Text: strings.TrimPrefix(err.Error(), "toml: ")}
	}
	var p unstable.Parser
	p.Reset(source)
	w := walker{parser: &p}
	root := table(place{1, 1})
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
		return nil, &Fault{Line: 1, Column: 1, Text: err.Error()}
	}
	return root, nil
}

type walker struct{ parser *unstable.Parser }

func (w walker) place(n *unstable.Node, otherwise place) place {
	r := n.Raw
	if r.Length == 0 {
		return otherwise
	}
	s := w.parser.Shape(r)
	return place{s.Start.Line, s.Start.Column}
}

func (w walker) open(root *node, e *unstable.Node, array bool) *node {
	at := root
	keys := e.Key()
	for keys.Next() {
		k := keys.Node()
		where, name := w.place(k, place{1, 1}), string(k.Data)
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
		return table(place{1, 1}) // refused by the library already
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
