package tomlbind

import (
	"errors"
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

// parse reads the values of a file. Syntax errors, duplicate keys and the like are found by the TOML library.
func parse(source []byte) (map[string]any, *Fault) {
	whole := map[string]any{}
	err := toml.Unmarshal(source, &whole)
	if err == nil {
		return whole, nil
	}
	line, column := 1, 1
	var decode *toml.DecodeError
	if errors.As(err, &decode) {
		line, column = decode.Position()
	}
	text := working.Say(strings.TrimPrefix(err.Error(), "toml: ")) // its words are not the program's
	return nil, &Fault{Line: line, Column: column, Text: working.Tell("tomlbind.no_toml", "no TOML: %v", text)}
}

// A walk goes through a file that could be read and remembers where everything stands, by its path.
type walk struct {
	parser       unstable.Parser
	prefix       string // of a file that stands for a table
	outer        place  // where that file is named
	keys, values map[string]place
	items        map[string]int // of tables in a list, so far
	lines        []int          // offsets at which lines begin: the parser counts them from the top for every place
}

func (w *walk) through(source []byte) {
	w.lines = []int{0}
	for i, b := range source {
		if b == '\n' {
			w.lines = append(w.lines, i+1)
		}
	}
	w.parser.Reset(source)
	table := w.prefix
	for w.parser.NextExpression() {
		switch e := w.parser.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			table = w.header(e)
		case unstable.KeyValue:
			w.keyValue(table, e)
		}
	}
}

// header is the path of the table that begins here.
func (w *walk) header(e *unstable.Node) string {
	path := w.prefix
	for keys := e.Key(); keys.Next(); {
		path = w.key(path, keys.Node())
		if keys.IsLast() && e.Kind == unstable.ArrayTable {
			w.items[path]++
			item := path + "[" + strconv.Itoa(w.items[path]-1) + "]"
			w.values[item] = w.place(keys.Node(), place{})
		}
		if n := w.items[path]; n > 0 {
			path += "[" + strconv.Itoa(n-1) + "]"
		}
	}
	return path
}

// key is the path of a key, which stands where it was seen first.
func (w *walk) key(path string, n *unstable.Node) string {
	path = join(path, string(n.Data))
	if _, ok := w.keys[path]; !ok {
		w.keys[path] = w.place(n, place{line: 1, column: 1})
		w.values[path] = w.keys[path]
	}
	return path
}

func (w *walk) keyValue(path string, e *unstable.Node) {
	for keys := e.Key(); keys.Next(); {
		path = w.key(path, keys.Node())
	}
	w.value(path, e.Value(), w.keys[path])
}

func (w *walk) value(path string, v *unstable.Node, otherwise place) {
	at := w.place(v, otherwise)
	w.values[path] = at
	i := 0
	for it := v.Children(); it.Next(); {
		switch c := it.Node(); {
		case c.Kind == unstable.Comment:
		case v.Kind == unstable.InlineTable && c.Kind == unstable.KeyValue:
			w.keyValue(path, c)
		case v.Kind == unstable.Array:
			w.value(path+"["+strconv.Itoa(i)+"]", c, at)
			i++
		}
	}
}

// place is where a part of the file stands; what has no text of its own stands otherwise.
func (w *walk) place(n *unstable.Node, otherwise place) place {
	if n.Raw.Length == 0 {
		return otherwise
	}
	offset := int(n.Raw.Offset)
	line := sort.SearchInts(w.lines, offset+1)
	return place{line: line, column: offset - w.lines[line-1] + 1}.inside(w.outer)
}
