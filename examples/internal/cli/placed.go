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
		return nil, badInput(working.Say("%s: %s", fileName(name), reason(err)))
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, badInput(working.Say("%s: %s", fileName(name), reason(err)))
	}
	if info.IsDir() {
		return nil, badInput(working.Tell("cli.folder_want_bake_file", "%s: is a folder; want a bake file", fileName(name)))
	}
	source, err := io.ReadAll(io.LimitReader(f, tomlbind.MaxBytes+1))
	if err != nil {
		return nil, badInput(working.Say("%s: %s", fileName(name), reason(err)))
	}
	return source, nil
}

// reason is why a file cannot be had. What the system says otherwise is not the program's.
func reason(err error) working.Message {
	var path *os.PathError
	switch {
	case errors.Is(err, os.ErrNotExist):
		return working.Tell("cli.no_such_file", "no such file or directory")
	case errors.Is(err, os.ErrPermission):
		return working.Tell("cli.no_permission", "permission denied")
	case errors.As(err, &path):
		return working.Say(path.Err.Error())
	}
	return working.Say(err.Error())
}

// placed is a line of complaint and where in the file it belongs.
type placed struct {
	line, column int
	text         working.Message
}

func (p placed) at(name string) working.Message {
	return working.Say("%s:%d:%d: %v", name, p.line, p.column, p.text)
}

// located puts the library's input errors at their places in the file.
func located(file *tomlbind.File, err error) []placed {
	var out []placed
	for _, e := range quantity.InputErrors(err) {
		key := cmp.Or(e.Path, e.GoPath)
		line, column := file.Locate(key)
		if file.Has(line, column) || errors.Is(e, quantity.ErrRequired) && file.Meant(standsIn(key)) {
			continue
		}
		out = append(out, placed{line, column, working.Problem(e)})
	}
	if len(quantity.InputErrors(err)) == 0 && err != nil {
		out = append(out, placed{1, 1, working.Problem(err)})
	}
	return out
}

// standsIn is the key that a missing one would have been taken from.
func standsIn(key string) string {
	if key == "mixing.mixer" { // the kitchen's only one
		return "kitchen.mixer"
	}
	return key
}

// complain refuses a file.
func complain(name string, faults []placed) error { return badInput(complaintOf(name, faults)) }

// complaintOf joins all faults of a file, in its order.
func complaintOf(name string, faults []placed) working.Message {
	slices.SortStableFunc(faults, func(a, b placed) int { return cmp.Or(a.line-b.line, a.column-b.column) })
	var lines []working.Message
	for _, f := range faults {
		lines = append(lines, f.at(fileName(name)))
	}
	return working.Join(lines, "\n")
}
