package food

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// Named constants read and print their trade words, in files as in Go.

func nameOf(names []string, i int) string {
	if i < 0 || i >= len(names) {
		return "unnamed value " + strconv.Itoa(i)
	}
	return names[i]
}

func appendName(b []byte, names []string, i int) ([]byte, error) {
	if i < 0 || i >= len(names) {
		return b, &quantity.InputError{Got: nameOf(names, i), Want: oneOf(names), Err: quantity.ErrOutOfRange}
	}
	return append(b, names[i]...), nil
}

func readName(text []byte, names []string) (int, error) {
	for i, name := range names {
		if string(text) == name {
			return i, nil
		}
	}
	got := text[:min(len(text), 64)]
	return 0, &quantity.InputError{Got: quantity.Excerpt(string(got)), Want: oneOf(names), Err: quantity.ErrOutOfRange}
}

func oneOf(names []string) string { return "one of " + strings.Join(names, ", ") }

func checkName(p *quantity.Problems, path string, names []string, i int) {
	if i < 0 || i >= len(names) {
		p.Add(path, nameOf(names, i), oneOf(names), quantity.ErrOutOfRange)
	}
}
