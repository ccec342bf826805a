package cli

import (
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
	return []outfile.Output{f.page(), f.curve(), f.table(), f.calendar()}
}

func (f sheetFiles) page() outfile.Output {
	return outfile.Output{Flag: "--html", Name: f.HTML, Form: outfile.HTML()}
}

func (f sheetFiles) curve() outfile.Output {
	return outfile.Output{Flag: "--svg", Name: f.SVG, Form: outfile.SVG()}
}

func (f sheetFiles) table() outfile.Output {
	return outfile.Output{Flag: "--csv", Name: f.CSV, Form: outfile.CSV(planHeading())}
}

func (f sheetFiles) calendar() outfile.Output {
	return outfile.Output{Flag: "--ics", Name: f.ICS, Form: outfile.Calendar()}
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

// write writes the files that are asked for. The sequence number of the calendar grows with the clock, so that a later
// export of the same plan moves the events of an earlier one; the curve and the table are those of the only bread.
func (f sheetFiles) write(c *call, day bakeday.KitchenDay, now time.Time) error {
	on := c.sheetOptions()
	if f.ICS != "" && day.Possible() {
		data, title := day.Data(), day.String()
		if len(day.Breads) == 1 {
			title = day.Breads[0].Bake.Name
		}
		content, err := calendar.File{
			Plan: data.CalendarID(), Name: title, Stamp: now, Sequence: int(now.Unix() / 60), Events: data.CalendarEvents(),
		}.Encode()
		if err != nil {
			return badInput(working.Say("%s: %s", f.ICS, err))
		}
		if err := writeFile(f.calendar(), f.Replace, content); err != nil {
			return err
		}
	}
	if f.HTML != "" {
		if err := writeFile(f.page(), f.Replace, day.Sheet(on)); err != nil {
			return err
		}
	}
	if f.SVG != "" {
		if err := writePicture(f.curve(), f.Replace, day.Breads[0].Report().Section("rising"), on); err != nil {
			return err
		}
	}
	if f.CSV != "" {
		return writeFile(f.table(), f.Replace, []byte(day.Breads[0].Data().CSV()))
	}
	return nil
}

// writePicture writes the first picture of a section.
func writePicture(to outfile.Output, replace bool, of report.Section, on report.Options) error {
	for _, b := range of.Blocks {
		if c, ok := b.(report.Chart); ok {
			picture, err := c.SVG(on, 700, 400)
			if err != nil {
				return badInput(working.Say("%s: %s", to.Name, err))
			}
			return writeFile(to, replace, []byte(picture))
		}
	}
	return badInput(working.Say("%s: %s", to.Name, "there is no rise to draw"))
}

// planHeading is the first line of a plan as a table.
func planHeading() string {
	heading, _, _ := strings.Cut(bakeday.PlanData{}.CSV(), "\n")
	return heading
}
