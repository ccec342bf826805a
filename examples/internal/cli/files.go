package cli

import (
	"strings"
	"time"

	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/calendar"
)

// writeFile writes what a command was asked for beside what it prints.
func writeFile(name string, content []byte) error {
	if err := outfile.Write(name, content); err != nil {
		return badInput("%s", textpage.Printable(err.Error()))
	}
	return nil
}

// guarded refuses, before anything is computed, outputs that would destroy a file. The bake log is never
// one to replace, whether the command reads it or not.
func (s System) guarded(command string, g outfile.Guard, log string) error {
	if name, err := (logFlags{log: log}).place(s); err == nil {
		g.Inputs = append(g.Inputs, outfile.Input{Called: "the bake log", Name: name})
	}
	err := g.Check()
	if err == nil {
		return nil
	}
	var lines []string
	for _, line := range strings.Split(err.Error(), "\n") {
		lines = append(lines, "maslin "+command+": "+textpage.Printable(line))
	}
	return badInput("%s", strings.Join(lines, "\n"))
}

// planned is a plan as data, of one bread or of a day.
type planned interface {
	CalendarID() string
	CalendarEvents() []calendar.Event
}

// writeCalendar writes the timetable as a calendar file. The sequence number grows with the clock, so
// that a later export of the same plan moves the events of an earlier one.
func writeCalendar(name, title string, s planned, now time.Time) error {
	content, err := calendar.File{
		Plan: s.CalendarID(), Name: title, Stamp: now, Sequence: int(now.Unix() / 60), Events: s.CalendarEvents(),
	}.Encode()
	if err != nil {
		return badInput("%s: %s", name, err)
	}
	return writeFile(name, content)
}
