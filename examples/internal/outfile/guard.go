package outfile

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// Input is a file that a command reads, and what the user calls it: a flag, or "the bake file".
type Input struct{ Called, Name string }

// Output is a file that a command writes: its flag, its name and its form.
type Output struct {
	Flag, Name string
	Form       Form
}

// Guard is everything that one command reads and writes.
type Guard struct {
	Inputs  []Input
	Outputs []Output
	// Replace allows to replace files of another form; never an input.
	Replace bool
}

// Check answers whether all outputs may be written, before any of them is. Outputs and inputs with an
// empty name are not used. All problems are reported at once, each with its flag.
func (g Guard) Check() error {
	var faults []error
	fault := func(o Output, format string, args ...any) {
		faults = append(faults, fmt.Errorf("%s: %s", o.Flag, fmt.Sprintf(format, args...)))
	}
	for i, o := range g.Outputs {
		if o.Name == "" {
			continue
		}
		clash := false
		for _, in := range g.Inputs {
			if in.Name != "" && same(in.Name, o.Name) {
				fault(o, "got %s, which is %s and would be destroyed; want another name", o.Name, in.Called)
				clash = true
				break
			}
		}
		for _, other := range g.Outputs[:i] {
			if !clash && other.Name != "" && same(other.Name, o.Name) {
				fault(o, "got %s, which %s writes too; want another name", o.Name, other.Flag)
				clash = true
			}
		}
		if clash {
			continue
		}
		if err := o.Form.writable(o.Name, g.Replace); err != nil {
			fault(o, "%s", err)
		}
	}
	return errors.Join(faults...)
}

// writable says why a file that exists is not to be replaced; nil when it may.
func (f Form) writable(name string, replace bool) error {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%s: %w", name, reason(err))
	case info.IsDir():
		return fmt.Errorf("got %s, which is a folder; want a file", name)
	case !info.Mode().IsRegular() || replace || printedTo(info) != nil:
		return nil
	case info.Mode().Perm()&0o222 == 0:
		return fmt.Errorf("%s is protected from being written: it is left as it is; choose another name, or say --replace",
			name)
	}
	ours, err := f.holds(name)
	if err != nil {
		return fmt.Errorf("%s: %w", name, reason(err))
	}
	if !ours {
		return fmt.Errorf("%s exists and is not %s: it is left as it is; choose another name, or say --replace", name, f.Name)
	}
	return nil
}

// same reports whether two names are one file: by the file where both exist, and otherwise by the place
// that the names lead to. Devices may be named more than once.
func same(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	if errX == nil && errY == nil {
		return os.SameFile(x, y) && x.Mode().IsRegular()
	}
	one, errX := place(a)
	other, errY := place(b)
	return errX == nil && errY == nil && one == other
}

// place is where a name leads: links are followed, the last one too, even where nothing is yet. A ".." behind a linked
// folder is the folder above the one that it leads to, so that no path is shortened before its links are followed.
func place(name string) (string, error) {
	for range mostLinks {
		folder, file := filepath.Split(name)
		folder, err := filepath.EvalSymlinks(folder)
		if err != nil {
			return "", err
		}
		to, err := os.Readlink(filepath.Join(folder, file))
		if err != nil { // no link
			return filepath.Abs(filepath.Join(folder, file))
		}
		if filepath.IsAbs(to) {
			name = to
		} else {
			name = folder + string(filepath.Separator) + to
		}
	}
	return "", fmt.Errorf("%s: leads through too many links", name)
}

const mostLinks = 40 // as Linux follows

// printedTo is the file that the program's own words go to, where it is this one: nothing of it is replaced, and what
// is written stands between them.
func printedTo(info os.FileInfo) *os.File {
	for _, f := range []*os.File{os.Stdout, os.Stderr} {
		if own, err := f.Stat(); err == nil && os.SameFile(own, info) {
			return f
		}
	}
	return nil
}

// reason is the cause without the path, which the message has already.
func reason(err error) error {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}
