package cli

import (
	"context"
	"errors"
	"path/filepath"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/bakesheet"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/schedule/bakeday"
)

// runTogether plans several bake files as one day of their kitchen.
func runTogether(ctx context.Context, s System, names []string, f planFlags) error {
	f.in.only("a single bake file", "fit", "svg", "csv")
	if wrong := f.in.complain(nil); wrong != nil {
		return wrong
	}
	g := outfile.Guard{
		Outputs: append(f.files.outputs(), outfile.Output{Flag: "--ics", Name: f.ics, Form: outfile.Calendar()}),
		Replace: f.files.replace,
	}
	for _, name := range names {
		g.Inputs = append(g.Inputs, outfile.Input{Called: "a bake file", Name: name})
	}
	if err := s.guarded("plan", g, f.log); err != nil {
		return err
	}
	d, err := loadTogether(s, names, f)
	if err != nil {
		return err
	}
	day, err := d.order.Plan(ctx, d.clock)
	if err != nil {
		return d.complain(err)
	}
	if f.late != 0 || f.at != "" {
		return runLate(s, f, day.Possible(), day, func(late bakeday.Late) (replanned, error) { return day.Replan(ctx, late) })
	}
	if f.ics != "" && day.Possible() {
		if err := writeCalendar(f.ics, day.String(), day.Data(), d.clock.Now); err != nil {
			return err
		}
	}
	if f.files.html != "" {
		if err := writeFile(f.files.html, bakesheet.RenderDay(day, s.sheetOptions(f.output))); err != nil {
			return err
		}
	}
	f.output.everyCaution = f.cautions
	return s.tell(f.output, day, day.Possible())
}

// dayFiles is a day of several bake files.
type dayFiles struct {
	files []loaded
	order bakeday.Order
	clock bakeday.KitchenClock
}

// loadTogether reads the files; what is wrong with any of them is reported for all.
func loadTogether(s System, names []string, f planFlags) (dayFiles, error) {
	var d dayFiles
	var wrong []string
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
			return d, err
		}
		if len(faults) > 0 {
			wrong = append(wrong, complain(name, faults).Error())
		}
		if f.learned {
			applied, err := learnedInto(s, f.log, l.bake)
			if err != nil {
				return d, err
			}
			l.bake = applied.Bake
		}
		if zone == "" {
			zone = l.bake.Kitchen.Zone
		}
		d.files = append(d.files, l)
		d.order.Bakes = append(d.order.Bakes, l.bake)
	}
	if len(wrong) > 0 {
		return d, badInput("%s", strings.Join(wrong, "\n"))
	}
	clock, err := clockFor(s, zone, f.now)
	var flag *exit
	if errors.As(err, &flag) {
		return d, err
	}
	if err != nil {
		return d, complain(names[0], []placed{{1, 1, working.Say("kitchen.zone: " + err.Error())}})
	}
	d.clock = clock
	if err := d.order.Check(d.clock); err != nil {
		return d, d.complain(err)
	}
	return d, nil
}

// complain puts the faults of the day at their places in the files.
func (d dayFiles) complain(err error) error {
	var lines []string
	of := make([]quantity.Problems, len(d.files))
	for _, e := range quantity.InputErrors(err) {
		rest, isBake := strings.CutPrefix(e.GoPath, "Bakes[")
		number, field, _ := strings.Cut(rest, "]")
		i, bad := strconv.Atoi(number)
		if !isBake || bad != nil || i >= len(d.files) {
			lines = append(lines, "maslin plan: "+e.Error())
			continue
		}
		own := *e
		own.GoPath = strings.TrimPrefix(field, ".")
		of[i].Join("", &own)
	}
	for i, l := range d.files {
		if err := of[i].Err(); err != nil {
			lines = append(lines, complain(l.name, located(l.file, err)).Error())
		}
	}
	if len(lines) == 0 {
		return err
	}
	return badInput("%s", strings.Join(lines, "\n"))
}
