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

// outputs are the files with the forms that each may replace.
func (f sheetFiles) outputs() []outfile.Output {
	return []outfile.Output{
		{Flag: "--html", Name: f.HTML, Form: outfile.HTML()}, {Flag: "--svg", Name: f.SVG, Form: outfile.SVG()},
		{Flag: "--csv", Name: f.CSV, Form: outfile.CSV(planHeading())},
		{Flag: "--ics", Name: f.ICS, Form: outfile.Calendar()},
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
func writeFile(name string, content []byte) error {
	if err := outfile.Write(name, content); err != nil {
		return badInput(working.Say("%s", textpage.Printable(err.Error())))
	}
	return nil
}

// fileName is the name of a file as a message shows it.
func fileName(name string) string {
	const most = 300
	if len(name) > most {
		name = name[:most] + "…"
	}
	return textpage.Printable(name)
}

// planned is a plan as data, of one bread or of a day.
type planned interface {
	CalendarID() string
	CalendarEvents() []calendar.Event
}

// writeCalendar writes the timetable as a calendar file. The sequence number grows with the clock, so
// that a later export of the same plan moves the events of an earlier one.
func (f sheetFiles) writeCalendar(title string, s planned, now time.Time) error {
	if f.ICS == "" {
		return nil
	}
	content, err := calendar.File{
		Plan: s.CalendarID(), Name: title, Stamp: now, Sequence: int(now.Unix() / 60), Events: s.CalendarEvents(),
	}.Encode()
	if err != nil {
		return badInput(working.Say("%s: %s", f.ICS, err))
	}
	return writeFile(f.ICS, content)
}

// writeSheet writes the page to print, when it is asked for.
func (f sheetFiles) writeSheet(page func() []byte) error {
	if f.HTML == "" {
		return nil
	}
	return writeFile(f.HTML, page())
}

// writeTables writes the curve and the table, when they are asked for.
func (f sheetFiles) writeTables(day bakeday.Day, on report.Options) error {
	if f.SVG != "" {
		picture, err := picture(day.Report().Section("rising"), on)
		if err != nil {
			return badInput(working.Say("%s: %s", f.SVG, err))
		}
		if err := writeFile(f.SVG, []byte(picture)); err != nil {
			return err
		}
	}
	if f.CSV != "" {
		return writeFile(f.CSV, []byte(day.Data().CSV()))
	}
	return nil
}

// picture is the first picture of a section.
func picture(of report.Section, on report.Options) (string, error) {
	for _, b := range of.Blocks {
		if c, ok := b.(report.Chart); ok {
			return c.SVG(on, 700, 400)
		}
	}
	return "", errors.New("there is no rise to draw")
}

// planHeading is the first line of a plan as a table.
func planHeading() string {
	heading, _, _ := strings.Cut(bakeday.PlanData{}.CSV(), "\n")
	return heading
}
