package cli

import (
	"errors"
	"strings"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/calendar"
)

// sheetFiles are the files that plan writes beside what it prints.
type sheetFiles struct {
	HTML    string `flag:"html"`
	SVG     string `flag:"svg"`
	CSV     string `flag:"csv"`
	ICS     string `flag:"ics"`
	Replace bool   `flag:"replace"`
}

// outputs are the files with the forms that each may replace, in the order in which they are written.
func (f sheetFiles) outputs() []outfile.Output {
	return []outfile.Output{
		{Flag: "--ics", Name: f.ICS, Form: outfile.Calendar()}, {Flag: "--html", Name: f.HTML, Form: outfile.HTML()},
		{Flag: "--svg", Name: f.SVG, Form: outfile.SVG()}, {Flag: "--csv", Name: f.CSV, Form: outfile.CSV(planHeading())},
	}
}

// guarded refuses, before anything is computed, outputs that would destroy a file. The bake log is never
// one to replace, whether the command reads it or not.
func (c *call) guarded(g outfile.Guard, log string) error {
	if name, err := (logFlags{Log: log}).place(c.System); err == nil {
		g.Inputs = append(g.Inputs, outfile.Input{Called: "the bake log", Name: name})
	}
	err := g.Check()
	if err == nil {
		return nil
	}
	var lines []string
	for _, line := range strings.Split(err.Error(), "\n") {
		lines = append(lines, c.cmd.CommandPath()+": "+textpage.Printable(line))
	}
	return badInput(working.Say("%s", strings.Join(lines, "\n")))
}

// sheetOptions are those of the reader of a file; with --working it says where every number comes from.
func (c *call) sheetOptions() report.Options {
	on := c.options(c.output)
	on.ASCII, on.WithSources = false, c.Working != ""
	return on
}

// writeFile writes what a command was asked for beside what it prints.
func writeFile(to outfile.Output, replace bool, content []byte) error {
	if err := to.Write(content, replace); err != nil {
		return badInput(working.Say("%s", textpage.Printable(err.Error())))
	}
	return nil
}

// write writes the files that are asked for. The curve and the table are those of the only bread.
func (f sheetFiles) write(c *call, day bakeday.KitchenDay, now time.Time) error {
	for _, to := range f.outputs() {
		if to.Name == "" || to.Flag == "--ics" && !day.Possible() {
			continue
		}
		var content []byte
		var err error
		switch to.Flag {
		case "--html":
			content = day.Sheet(c.sheetOptions())
		case "--svg":
			content, err = picture(day.Breads[0].Report().Section("rising"), c.sheetOptions())
		case "--csv":
			content = []byte(day.Breads[0].Data().CSV())
		case "--ics":
			content, err = eventsOf(day, now)
		}
		if err != nil {
			return badInput(working.Say("%s: %s", to.Name, err))
		}
		if err := writeFile(to, f.Replace, content); err != nil {
			return err
		}
	}
	return nil
}

// eventsOf are the steps of a day as a calendar. Its sequence number grows with the clock, so that a later export of the
// same plan moves the events of an earlier one.
func eventsOf(day bakeday.KitchenDay, now time.Time) ([]byte, error) {
	data, title := day.Data(), day.String()
	if len(day.Breads) == 1 {
		title = day.Breads[0].Bake.Name
	}
	return calendar.File{
		Plan: data.CalendarID(), Name: title, Stamp: now, Sequence: int(now.Unix() / 60), Events: data.CalendarEvents(),
	}.Encode()
}

// picture is the first picture of a section.
func picture(of report.Section, on report.Options) ([]byte, error) {
	for _, b := range of.Blocks {
		if c, ok := b.(report.Chart); ok {
			text, err := c.SVG(on, 700, 400)
			return []byte(text), err
		}
	}
	return nil, errors.New("there is no rise to draw")
}

// planHeading is the first line of a plan as a table.
func planHeading() string {
	heading, _, _ := strings.Cut(bakeday.PlanData{}.CSV(), "\n")
	return heading
}
