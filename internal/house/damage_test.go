package house

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// A damage is one thing that is wrong with a JSON text, and where.
type damage struct {
	what string
	path string // by the keys of the data: "flours[1].percent"
	text []byte
}

// pair is a key of an object, so that one can stand twice.
type pair struct {
	key   string
	value any
}

// damages lists texts that differ from a JSON text in one place: a value of another kind, null, a key that is not
// known, a key that stands twice.
func damages(text []byte) []damage {
	var tree any
	if !read(text, &tree) {
		return nil
	}
	tree = ordered(tree)
	var out []damage
	visit(tree, "", func(path string, at any, put func(any)) {
		for _, bad := range insteadOf(at) {
			put(bad.value)
			out = append(out, damage{bad.what, joined(path, bad.key), written(tree)})
		}
		put(at)
	})
	return out
}

// instead is what stands where something else belongs; key is below it, where the fault is there.
type instead struct {
	what  string
	key   string
	value any
}

func insteadOf(at any) []instead {
	all := []instead{{"null", "", nil}}
	list, object := instead{"a list", "", []any{}}, instead{"an object", "", []pair{}}
	number, text := instead{"a number", "", json.Number("7")}, instead{"a text", "", "no such word"}
	truth := instead{"true", "", true}
	switch at := at.(type) {
	case []pair:
		all = append(all, list, number, text, truth,
			instead{"an unknown key", "no_such_key", append(slices.Clone(at), pair{"no_such_key", "7"})})
		if len(at) > 0 {
			all = append(all, instead{"a key twice", at[0].key, append(slices.Clone(at), at[0])})
		}
	case []any:
		all = append(all, object, number, text, truth)
	case string:
		all = append(all, list, object, number, text, truth, instead{"hostile text", "", "\x00\u202e%d"},
			instead{"long text", "", strings.Repeat("x", 5000)}, instead{"a bare number", "", "12"})
	case json.Number:
		all = append(all, list, object, text, truth, instead{"a huge number", "", json.Number("1e400")},
			instead{"a long number", "", json.Number(strings.Repeat("9", 400))})
	case bool:
		all = append(all, list, object, number, text)
	}
	return all
}

func joined(path, key string) string {
	switch {
	case key == "":
		return path
	case path == "":
		return key
	}
	return path + "." + key
}

// ordered puts objects into pairs, by key.
func ordered(at any) any {
	switch at := at.(type) {
	case map[string]any:
		out := []pair{}
		for _, key := range sortedKeys(at) {
			out = append(out, pair{key, ordered(at[key])})
		}
		return out
	case []any:
		for i := range at {
			at[i] = ordered(at[i])
		}
	}
	return at
}

// visit goes through a tree; put replaces what it is at, until it is put back. Of a long list it sees three items.
func visit(at any, path string, see func(path string, at any, put func(any))) {
	switch at := at.(type) {
	case []pair:
		for i := range at {
			there := joined(path, at[i].key)
			see(there, at[i].value, func(v any) { at[i].value = v })
			visit(at[i].value, there, see)
		}
	case []any:
		for i := range at[:min(len(at), 3)] {
			there := fmt.Sprintf("%s[%d]", path, i)
			see(there, at[i], func(v any) { at[i] = v })
			visit(at[i], there, see)
		}
	}
}

func written(at any) []byte {
	switch at := at.(type) {
	case []pair:
		var b []byte
		for i, p := range at {
			if i > 0 {
				b = append(b, ',')
			}
			b = append(append(append(b, written(p.key)...), ':'), written(p.value)...)
		}
		return append(append([]byte{'{'}, b...), '}')
	case []any:
		var b []byte
		for i, v := range at {
			if i > 0 {
				b = append(b, ',')
			}
			b = append(b, written(v)...)
		}
		return append(append([]byte{'['}, b...), ']')
	}
	b, err := json.Marshal(at)
	if err != nil {
		return []byte("0")
	}
	return b
}

// sameJSON reports whether two texts say the same; null and a key that is left out do, a number and a text that is one,
// and a message and its text alone. What stands beside the template of a message is told again, not read.
func sameJSON(a, b []byte) bool {
	var x, y any
	return read(a, &x) && read(b, &y) && bytes.Equal(written(ordered(plain(x))), written(ordered(plain(y))))
}

func read(text []byte, into *any) bool {
	tokens := json.NewDecoder(bytes.NewReader(text))
	tokens.UseNumber()
	return tokens.Decode(into) == nil
}

func plain(at any) any {
	switch at := at.(type) {
	case map[string]any:
		for key, v := range at {
			if at[key] = plain(v); at[key] == nil {
				delete(at, key)
			}
		}
		text, told := at["text"]
		if at["say"] != nil {
			delete(at, "text")
		} else if told && len(at) == 1 {
			return text
		}
	case []any:
		for i := range at {
			at[i] = plain(at[i])
		}
	case json.Number:
		return at.String()
	}
	return at
}
