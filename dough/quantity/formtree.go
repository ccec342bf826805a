package quantity

import (
	"cmp"
	"encoding/json"
	"strconv"
	"strings"
)

// A formPart is a step of the names of a form, with what is named by it and below it.
type formPart struct {
	step  string // "temperature" or "[0]"
	name  string // the whole name, where one ends here
	text  string
	named bool
	parts []*formPart // in the order of the names
	at    map[string]*formPart
}

// put adds a name, as its steps, with its text.
func (n *formPart) put(steps []string, name, text string) {
	for _, s := range steps {
		next := n.find(s)
		if next == nil {
			next = &formPart{step: s}
			if n.at == nil {
				n.at = map[string]*formPart{}
			}
			n.at[s] = next
			n.parts = append(n.parts, next)
		}
		n = next
	}
	n.name, n.text, n.named = name, text, true
}

func (n *formPart) find(step string) *formPart { return n.at[step] }

// blank reports whether there is no text here or below.
func (n *formPart) blank() bool {
	if n.text != "" {
		return false
	}
	for _, p := range n.parts {
		if !p.blank() {
			return false
		}
	}
	return true
}

// json is the JSON that the names spell, of texts alone; a text that is an object or a list itself stays as it is. It
// is not ok where a list has a gap, or has keys too.
func (n *formPart) json() (text []byte, ok bool) {
	if len(n.parts) == 0 {
		whole := strings.TrimSpace(n.text)
		if (strings.HasPrefix(whole, "{") || strings.HasPrefix(whole, "[")) && tooDeep([]byte(whole)) < 0 &&
			json.Valid([]byte(whole)) {
			return []byte(whole), true
		}
		text, err := json.Marshal(n.text)
		return text, err == nil
	}
	if n.text != "" {
		return nil, false
	}
	list := strings.HasPrefix(n.parts[0].step, "[")
	for i, p := range n.parts {
		switch isIndex := strings.HasPrefix(p.step, "["); {
		case isIndex != list || isIndex && (i >= maxFormItems || p.step != "["+strconv.Itoa(i)+"]"):
			return nil, false
		case !list && p.blank():
			continue // a key that is not given
		}
		if len(text) > 0 {
			text = append(text, ',')
		}
		if !list {
			key, err := json.Marshal(p.step)
			if err != nil {
				return nil, false
			}
			text = append(append(text, key...), ':')
		}
		value, ok := p.json()
		if !ok {
			return nil, false
		}
		text = append(text, value...)
	}
	if list {
		return append(append([]byte{'['}, text...), ']'), true
	}
	return append(append([]byte{'{'}, text...), '}'), true
}

// formSteps cuts a name into its steps: others, [0], temperature.
func formSteps(name string) (steps []string, ok bool) {
	if name == "" {
		return nil, true
	}
	if len(name) > maxFormName {
		return nil, false
	}
	for rest := name; rest != ""; {
		end := strings.IndexAny(rest, ".[")
		switch {
		case rest[0] == '[':
			if end = strings.IndexByte(rest, ']') + 1; end == 0 {
				return nil, false
			}
		case end < 0:
			end = len(rest)
		case end == 0:
			return nil, false // a point without a key before it
		}
		steps = append(steps, rest[:end])
		if rest = rest[end:]; rest == "" || rest[0] == '[' {
			continue
		}
		if rest[0] != '.' || len(rest) == 1 || rest[1] == '[' {
			return nil, false
		}
		rest = rest[1:]
	}
	return steps, true
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
