package cli

import (
	"errors"
	"fmt"
	"os"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bench"
	"example.org/maslin/schedule/wallclock"
)

// logFlags say where the bake log is and what time it is.
type logFlags struct {
	Log string `flag:"log"`
	Now string `flag:"now"`
}

// place is the log file.
func (f logFlags) place(s System) (string, error) {
	if f.Log != "" {
		return f.Log, nil
	}
	name, ok := bakelog.Place(s.Getenv)
	if !ok {
		return "", badInput(working.Tell("cli.no_place_for_log",
			"no place for the bake log: give --log FILE, or set MASLIN_LOG, XDG_DATA_HOME or HOME"))
	}
	return name, nil
}

// read reads the log, or the latest of a very long one, and warns of what is not read.
func (f logFlags) read(s System) (string, bench.KeptLog, error) {
	return f.reading(s, bench.LogReading{})
}

// readUntil reads what the log holds up to a moment.
func (f logFlags) readUntil(s System, at time.Time) (string, bench.KeptLog, error) {
	return f.reading(s, bench.LogReading{Keep: func(o bench.Observation) bool { return !o.At.After(at) }})
}

func (f logFlags) reading(s System, r bench.LogReading) (string, bench.KeptLog, error) {
	name, err := f.place(s)
	if err != nil {
		return "", bench.KeptLog{}, err
	}
	content, err := bakelog.Read(name, r)
	if err != nil {
		return name, content, refusedLog(name, err)
	}
	warn := func(m working.Message) { fmt.Fprintln(s.Err, s.complaint(&exit{text: m})) }
	for _, p := range content.Unreadable {
		warn(working.Tell("cli.log_line", "%s:%d: %v; read on without it: %s", fileName(name), p.Line, p.Why,
			textpage.Printable(p.Text)))
	}
	if content.More > 0 {
		warn(working.Tell("cli.log_lines", "%s: and %d more such {2|line|lines}", fileName(name), content.More))
	}
	if content.Older > 0 && r.Last == 0 {
		warn(working.Tell("cli.log_older", "%s: the log is very long; %d older {2|observation is|observations are}"+
			" not looked at", fileName(name), content.Older))
	}
	return name, content, nil
}

// writable refuses a log that is no file, such as a pipe, which a command that is to write would wait for in vain.
func (f logFlags) writable(s System) error {
	name, err := f.place(s)
	if err != nil {
		return nil // it is said when it is written to
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return badInput(working.Tell("cli.log_no_file", "%s: is not a file; want a bake log, or a name that is not taken",
			fileName(name)))
	}
	return nil
}

// append writes entries to the log.
func (f logFlags) append(s System, entries ...bench.Observation) (string, error) {
	name, err := f.place(s)
	if err != nil {
		return "", err
	}
	if err := bakelog.Append(name, entries...); err != nil {
		if len(quantity.InputErrors(err)) > 0 {
			return name, err
		}
		return name, refusedLog(name, err)
	}
	return name, nil
}

func refusedLog(name string, err error) error {
	name = fileName(name)
	if errors.As(err, new(bench.LaterVersion)) {
		return badInput(working.Tell("cli.nothing_was_read_or_written",
			"%s: %s; nothing was read or written: use that version", name, err))
	}
	return badInput(working.Say("%s: %s", name, reason(err)))
}

// clock is the present, in a zone; nil means the machine's own.
func (f logFlags) clock(s System, zone *time.Location) (time.Time, error) {
	now := s.Now()
	if zone == nil {
		zone = now.Location()
	}
	now = now.In(zone)
	if f.Now == "" {
		return now, nil
	}
	at, err := wallclock.ReadPast(f.Now, now)
	if err != nil {
		return now, badInput(working.Tell("cli.now", "--now: %s", err))
	}
	return at, nil
}
