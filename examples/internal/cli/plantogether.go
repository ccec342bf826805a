package cli

import (
	"context"
	"errors"
	"path/filepath"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// together plans several bake files as one day of their kitchen.
func (q *plan) together(c *call) error {
	d, err := loadDay(c, q.Now)
	if err != nil {
		return err
	}
	if q.Learned {
		for i, b := range d.order.Bakes {
			applied, err := learnedInto(c.System, q.Log, b)
			if err != nil {
				return err
			}
			d.order.Bakes[i] = applied.Bake
		}
	}
	if q.Fit {
		best, err := fit(c, func(ctx context.Context, progress func(tried, left int)) (bakeday.FittedDay, error) {
			return d.order.Fit(ctx, d.clock, progress)
		})
		return c.tellIf(best.Day.Possible(), fittedDay{best, best.Day}, d.complain(err))
	}
	day, err := d.order.Plan(c.cmd.Context(), d.clock)
	if err != nil {
		return d.complain(err)
	}
	replan := func(late bakeday.Late) (replanned, error) { return day.Replan(c.cmd.Context(), late) }
	if q.Late != 0 || q.Step != "" {
		return q.again(c, day.Possible(), day, replan)
	}
	if day.Possible() {
		if err := q.writeCalendar(day.String(), day.Data(), d.clock.Now); err != nil {
			return err
		}
	}
	if err := q.writeSheet(func() []byte { return day.Sheet(c.sheetOptions()) }); err != nil {
		return err
	}
	c.everyCaution = q.Cautions
	return c.tellIf(day.Possible(), day, nil)
}

// dayFiles is a day of one bake file or several.
type dayFiles struct {
	command string
	files   []loaded
	order   bakeday.Order
	clock   bakeday.KitchenClock
}

// loadDay reads the bake files of a day, or the only one.
func loadDay(c *call, now string) (dayFiles, error) {
	d := dayFiles{command: c.cmd.Name()}
	if len(c.args) > 1 {
		return d, d.load(c.System, c.args, now)
	}
	l, err := load(c.System, c.args[0], now)
	d.files, d.order.Bakes, d.clock = []loaded{l}, []bakeday.Bake{l.bake}, l.clock
	return d, err
}

// load reads the files; what is wrong with any of them is reported for all.
func (d *dayFiles) load(s System, names []string, now string) error {
	var wrong []working.Message
	zone := ""
	kitchens := map[string]bool{} // which the bakes name: all files of a folder are its bakes and their kitchen
	for _, name := range names {
		if l, _, err := readBake(name); err == nil && l.place != "" {
			kitchens[l.place] = true
		}
	}
	for _, name := range names {
		if kitchens[filepath.Clean(name)] {
			continue
		}
		l, faults, err := readBake(name)
		if err != nil {
			return err
		}
		if len(faults) > 0 {
			wrong = append(wrong, complaintOf(name, faults))
		}
		if zone == "" {
			zone = l.bake.Kitchen.Zone
		}
		d.files = append(d.files, l)
		d.order.Bakes = append(d.order.Bakes, l.bake)
	}
	if len(wrong) > 0 {
		return badInput(working.Join(wrong, "\n"))
	}
	clock, err := clockFor(s, zone, now)
	var flag *exit
	if errors.As(err, &flag) {
		return err
	}
	if err != nil {
		return complain(names[0], []placed{{1, 1, working.Problem(quantity.At("kitchen.zone", err))}})
	}
	d.clock = clock
	if err := d.order.Check(d.clock); err != nil {
		return d.complain(err)
	}
	return nil
}

// complain puts the faults of the day at their places in the files.
func (d dayFiles) complain(err error) error {
	var lines []working.Message
	of := make([]quantity.Problems, len(d.files))
	for _, e := range quantity.InputErrors(err) {
		rest, isBake := strings.CutPrefix(e.GoPath, "Bakes[")
		number, field, _ := strings.Cut(rest, "]")
		i, bad := strconv.Atoi(number)
		if !isBake || bad != nil || i >= len(d.files) {
			lines = append(lines, working.Tell("cli.plan_complaint", "maslin %s: %v", d.command, e))
			continue
		}
		own := *e
		_, path, _ := strings.Cut(e.Path, "].")
		own.GoPath, own.Path = strings.TrimPrefix(field, "."), path
		of[i].Join("", &own)
	}
	for i, l := range d.files {
		if err := of[i].Err(); err != nil {
			lines = append(lines, complaintOf(l.name, located(l.file, err)))
		}
	}
	if len(lines) == 0 {
		return err
	}
	return badInput(working.Join(lines, "\n"))
}
