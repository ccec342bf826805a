package cli

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

// bakes are the bake files of a command line: one day of their kitchen, mostly of one bread.
type bakes struct {
	command string
	files   []*bakeSource
	order   bakeday.Order
	clock   bakeday.KitchenClock
}

// first is the bake of a command that takes one.
func (b bakes) first() *bakeday.Bake { return &b.order.Bakes[0] }

// load reads bake files and reports everything that is wrong with any of them.
func load(c *call, now string, names ...string) (bakes, error) {
	b, err := readBakes(c, names)
	if err != nil || !b.readable() {
		return b, cmp.Or(err, b.complain(nil))
	}
	zone := ""
	for _, own := range b.order.Bakes {
		zone = cmp.Or(zone, own.Kitchen.Zone)
	}
	b.clock, err = clockFor(c.System, zone, now)
	if flag := (*exit)(nil); errors.As(err, &flag) {
		return b, err
	}
	b.files[0].note(quantity.At("kitchen.zone", err))
	return b, b.complain(b.order.Check(b.clock))
}

// loadFormula reads a bake file for its formula; the rest of it may be missing.
func loadFormula(c *call, name string) (bakes, error) {
	b, err := readBakes(c, []string{name})
	if err != nil || !b.readable() {
		return b, cmp.Or(err, b.complain(nil))
	}
	if err = b.first().Formula().Check(); err != nil || len(b.files[0].faults) > 0 {
		_, err = b.first().Batch(dough.ByDough{Mass: quantity.Kilograms(1)})
	}
	return b, b.complain(err)
}

// readBakes reads the texts of bake files. Among all files of a folder is the kitchen that its bakes name, which is no
// bake.
func readBakes(c *call, names []string) (bakes, error) {
	b := bakes{command: c.cmd.CommandPath()}
	kitchens := map[string]bool{}
	var all []*bakeSource
	for _, name := range names {
		f := readBake(name)
		if f.kitchen != filepath.Clean(name) {
			kitchens[f.kitchen] = true
		}
		all = append(all, f)
	}
	for _, f := range all {
		if kitchens[filepath.Clean(f.name)] {
			continue
		}
		if f.err != nil {
			return b, f.err
		}
		b.files, b.order.Bakes = append(b.files, f), append(b.order.Bakes, f.bake)
	}
	return b, nil
}

// readable reports whether the texts could be read, even if not all of them means something.
func (b bakes) readable() bool {
	for _, f := range b.files {
		if len(f.file.Faults) > 0 && f.file.Faults[0].Key == "" {
			return false
		}
	}
	return true
}

// complain puts what the library says of the bakes at its places in the files, beside what is wrong there already; nil
// when nothing is.
func (b bakes) complain(err error) error {
	var lines []working.Message
	for _, e := range quantity.InputErrors(err) {
		if f, own := b.at(e); f != nil {
			f.note(own)
		} else {
			lines = append(lines, working.Say("%s: %v", b.command, e))
		}
	}
	for _, f := range b.files {
		if len(f.faults) > 0 {
			lines = append(lines, f.complaint())
		}
	}
	if len(lines) == 0 {
		return err
	}
	return badInput(working.Join(lines, "\n"))
}

// at is the file that a fault belongs to, and the fault by its place there; no file for one of the day as a whole.
func (b bakes) at(e *quantity.InputError) (*bakeSource, *quantity.InputError) {
	own := *e
	for i, f := range b.files {
		field, of := strings.CutPrefix(e.GoPath, fmt.Sprintf("Bakes[%d]", i))
		if of {
			_, own.Path, _ = strings.Cut(e.Path, "].")
			own.GoPath = strings.TrimPrefix(field, ".")
		}
		if of || len(b.files) == 1 && !strings.HasPrefix(e.GoPath, "Bakes[") {
			return f, &own
		}
	}
	return nil, e
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
	at, err := logFlags{Now: now}.clock(s, where)
	return bakeday.KitchenClock{Now: at, Zone: where}, err
}
