package cli

import (
	"cmp"
	"errors"
	"io"
	"os"
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/tomlbind"
)

// readFile reads a bake file, refusing what cannot be one before it is read whole.
func readFile(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, badInput("%s: %s", fileName(name), reason(err))
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, badInput("%s: %s", fileName(name), reason(err))
	}
	if info.IsDir() {
		return nil, badInput("%s: is a folder; want a bake file", fileName(name))
	}
	source, err := io.ReadAll(io.LimitReader(f, tomlbind.MaxBytes+1))
	if err != nil {
		return nil, badInput("%s: %s", fileName(name), reason(err))
	}
	return source, nil
}

func reason(err error) string {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// placed is a line of complaint and where in the file it belongs.
type placed struct {
	line, column int
	text         working.Message
}

func (p placed) at(name string) working.Message {
	return sentence("%s:%d:%d: %v", name, p.line, p.column, p.text)
}

// located puts the library's input errors at their places in the file.
func located(file *tomlbind.File, err error) []placed {
	var out []placed
	for _, e := range quantity.InputErrors(err) {
		line, column, key := file.Locate(e.GoPath)
		if file.Has(line, column) || errors.Is(e, quantity.ErrRequired) && file.Meant(key) {
			continue
		}
		moved := *e
		moved.Path, moved.GoPath = "", key
		out = append(out, placed{line, column, working.Problem(&moved)})
	}
	if len(quantity.InputErrors(err)) == 0 && err != nil {
		out = append(out, placed{1, 1, working.Problem(err)})
	}
	return out
}

// complain joins all faults of a file, in its order.
func complain(name string, faults []placed) error {
	slices.SortStableFunc(faults, func(a, b placed) int { return cmp.Or(a.line-b.line, a.column-b.column) })
	var lines []working.Message
	for _, f := range faults {
		lines = append(lines, f.at(fileName(name)))
	}
	return badInput("%v", working.Join(lines, "\n"))
}
