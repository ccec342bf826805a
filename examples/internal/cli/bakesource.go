package cli

import (
	"cmp"
	"errors"
	"os"
	"path/filepath"
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/schedule/bakeday"
)

// A bakeSource is a bake file as it was read, and what is wrong with it.
type bakeSource struct {
	name    string
	kitchen string // where the file of the kitchen is that it names
	file    *tomlbind.File
	bake    bakeday.Bake
	faults  []placed
	err     error // it cannot be read at all
}

// placed is a line of complaint and where in the file it belongs.
type placed struct {
	line, column int
	text         working.Message
}

// readBake reads the text of a bake file, and of the kitchen file that it names.
func readBake(name string) *bakeSource {
	b := &bakeSource{name: name}
	source, err := readFile(name, tomlbind.MaxBytes)
	if err != nil {
		b.err = err
		return b
	}
	b.file = tomlbind.BindWith(source, &b.bake, map[string]tomlbind.Open{"kitchen": b.openKitchen})
	if len(b.file.Faults) > 0 && describesKitchen(source) {
		b.err = badInput(working.Tell("cli.describes_kitchen_and_no_bake",
			"%s: describes a kitchen and no bake; want a bake file, such as one with kitchen = %q",
			fileName(name), filepath.Base(name)))
	}
	for _, f := range b.file.Faults {
		b.faults = append(b.faults, placed{f.Line, f.Column, f.Message()})
	}
	return b
}

// openKitchen reads the kitchen file that the bake file names, seen from there.
func (b *bakeSource) openKitchen(name string) ([]byte, error) {
	path := filepath.FromSlash(name)
	if !filepath.IsAbs(path) {
		path = filepath.Join(filepath.Dir(b.name), path)
	}
	b.kitchen = filepath.Clean(path)
	own, errOwn := os.Stat(b.name)
	other, errOther := os.Stat(b.kitchen)
	if errOwn == nil && errOther == nil && os.SameFile(own, other) {
		return nil, badInput(working.Tell("cli.names_itself",
			"%s names itself; want the kitchen, or another file that describes it", fileName(name)))
	}
	return readFile(b.kitchen, tomlbind.MaxBytes)
}

// describesKitchen reports whether a file holds a kitchen and nothing else.
func describesKitchen(source []byte) bool {
	var k bakeday.Kitchen
	return len(tomlbind.Bind(source, &k).Faults) == 0 && k.Zone != ""
}

// note puts the library's input errors at their places in the file, where nothing stands yet.
func (b *bakeSource) note(err error) {
	found := quantity.InputErrors(err)
	for _, e := range found {
		key := cmp.Or(e.Path, e.GoPath)
		line, column := b.file.Locate(key)
		taken := func(f placed) bool { return f.line == line && f.column == column && line > 1 }
		if b.file.Has(line, column) || errors.Is(e, quantity.ErrRequired) && b.file.Meant(standsIn(key)) ||
			len(b.file.Faults) > 0 && slices.ContainsFunc(b.faults, taken) {
			continue
		}
		b.faults = append(b.faults, placed{line, column, working.Problem(e)})
	}
	if len(found) == 0 && err != nil {
		b.faults = append(b.faults, placed{1, 1, working.Problem(err)})
	}
}

// standsIn is the key that a missing one would have been taken from.
func standsIn(key string) string {
	if key == "mixing.mixer" { // the kitchen's only one
		return "kitchen.mixer"
	}
	return key
}

// mostFaults are told of a file: whoever mends so many looks again.
const mostFaults = 100

// complaint joins the faults of the file, in its order.
func (b *bakeSource) complaint() working.Message {
	slices.SortStableFunc(b.faults, func(a, b placed) int { return cmp.Or(a.line-b.line, a.column-b.column) })
	var lines []working.Message
	for _, f := range b.faults[:min(len(b.faults), mostFaults)] {
		lines = append(lines, working.Say("%s:%d:%d: %v", fileName(b.name), f.line, f.column, f.text))
	}
	if more := len(b.faults) - mostFaults; more > 0 {
		lines = append(lines, working.Tell("cli.more_faults", "%s: and %d more of them", fileName(b.name), more))
	}
	return working.Join(lines, "\n")
}
