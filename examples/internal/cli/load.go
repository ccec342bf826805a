package cli

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/wallclock"
)

// loaded is a bake file with its clock.
type loaded struct {
	name  string
	place string // of the kitchen file that it names
	file  *tomlbind.File
	bake  bakeday.Bake
	clock bakeday.KitchenClock
}

// load reads a bake file and reports everything that is wrong with it.
func load(s System, name, now string) (loaded, error) {
	l, faults, err := readBake(name)
	if err != nil {
		return l, err
	}
	if l.readable() {
		l.clock, err = clockFor(s, l.bake.Kitchen.Zone, now)
		var flag *exit
		if errors.As(err, &flag) {
			return l, err
		}
		if err != nil && !l.file.Meant("kitchen.zone") {
			line, column := l.file.Locate("kitchen.zone")
			faults = append(faults, placed{line, column, working.Problem(quantity.At("kitchen.zone", err))})
		}
		faults = withNew(faults, located(l.file, l.bake.Check(l.clock)))
	}
	if len(faults) > 0 {
		return l, complain(name, faults)
	}
	return l, nil
}

// readBake reads the text of a bake file, and of the kitchen file that it names.
func readBake(name string) (loaded, []placed, error) {
	l := loaded{name: name}
	source, err := readFile(name)
	if err != nil {
		return l, nil, err
	}
	l.file = tomlbind.BindWith(source, &l.bake, map[string]tomlbind.Open{"kitchen": func(other string) ([]byte, error) {
		l.place = kitchenPath(name, other)
		return kitchenFile(name, other)
	}})
	if len(l.file.Faults) > 0 && describesKitchen(source) {
		return l, nil, badInput(working.Tell("cli.describes_kitchen_and_no_bake",
			"%s: describes a kitchen and no bake; want a bake file, such as one with kitchen = %q",
			fileName(name), filepath.Base(name)))
	}
	var faults []placed
	for _, f := range l.file.Faults {
		faults = append(faults, placed{f.Line, f.Column, f.Message()})
	}
	return l, faults, nil
}

// readable reports whether the text could be read, even if not all of it means something.
func (l loaded) readable() bool { return len(l.file.Faults) == 0 || l.file.Faults[0].Key != "" }

// kitchenPath is where the kitchen file is that a bake file names, seen from there.
func kitchenPath(from, name string) string {
	path := filepath.FromSlash(name)
	if !filepath.IsAbs(path) {
		path = filepath.Join(filepath.Dir(from), path)
	}
	return filepath.Clean(path)
}

// describesKitchen reports whether a file holds a kitchen and nothing else.
func describesKitchen(source []byte) bool {
	var k bakeday.Kitchen
	return len(tomlbind.Bind(source, &k).Faults) == 0 && k.Zone != ""
}

// kitchenFile reads the kitchen file that a bake file names, seen from there.
func kitchenFile(from, name string) ([]byte, error) {
	path := kitchenPath(from, name)
	a, errA := os.Stat(from)
	b, errB := os.Stat(path)
	if errA == nil && errB == nil && os.SameFile(a, b) {
		return nil, badInput(working.Tell("cli.names_itself",
			"%s names itself; want the kitchen, or another file that describes it", fileName(name)))
	}
	return readFile(path)
}

// withNew adds the faults for which none stands at the same place.
func withNew(faults, more []placed) []placed {
	for _, f := range more {
		if !slices.ContainsFunc(faults, func(g placed) bool {
			return g.line == f.line && g.column == f.column &&
				g.line > 1
		}) {
			faults = append(faults, f)
		}
	}
	return faults
}

func clockFor(s System, zone, now string) (bakeday.KitchenClock, error) {
	refuse := func(reason error) (bakeday.KitchenClock, error) {
		return bakeday.KitchenClock{}, &quantity.InputError{
			Got: quantity.Excerpt(textpage.Printable(zone)), Err: reason,
			Want: quantity.Tell("cli.want_zone", `an IANA time zone, such as "Europe/Zurich" or "America/Denver"`),
		}
	}
	if zone == "" {
		return refuse(quantity.ErrRequired)
	}
	where, err := time.LoadLocation(zone)
	if err != nil || zone == "Local" || len(zone) > 64 {
		return refuse(quantity.ErrOutOfRange)
	}
	clock := bakeday.KitchenClock{Now: s.Now(), Zone: where}
	if now != "" {
		m, err := wallclock.ParseMoment(now)
		if err != nil {
			return clock, badInput(working.Tell("cli.now", "--now: %s", err))
		}
		r, err := wallclock.Resolve(m, where, wallclock.RFC5545)
		if err != nil {
			return clock, badInput(working.Tell("cli.now", "--now: %s", err))
		}
		clock.Now = r.At
	}
	return clock, nil
}

// complain puts what the library says of a bake at its place in the file; nil stays nil.
func (l loaded) complain(err error) error {
	if err == nil {
		return nil
	}
	return complain(l.name, located(l.file, err))
}
