package cli

import (
	"errors"
	"fmt"
	"os"
	"regexp"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/wallclock"
	"github.com/spf13/cobra"
)

// logFlags say where the bake log is and what time it is.
type logFlags struct{ log, now string }

func (f *logFlags) register(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.log, "log", "", "the bake log is this `FILE` (MASLIN_LOG, or maslin/bakes.jsonl in your data folder)")
	cmd.Flags().StringVar(&f.now, "now", "", "as if it were this `TIME`, such as \"2026-11-27 18:40\"")
}

// place is the log file.
func (f logFlags) place(s System) (string, error) {
	if f.log != "" {
		return f.log, nil
	}
	name, err := bakelog.Place(s.Getenv)
	if err != nil {
		return "", badInput("%s", err)
	}
	return name, nil
}

// read reads the log and warns of lines that cannot be read.
func (f logFlags) read(s System) (string, bakelog.Content, error) {
	name, err := f.place(s)
	if err != nil {
		return "", bakelog.Content{}, err
	}
	content, err := bakelog.ReadFile(name)
	if err != nil {
		return name, content, refusedLog(name, err)
	}
	for _, p := range content.Problems {
		fmt.Fprintf(s.Err, "%s:%d: %s; read on without it: %s\n", fileName(name), p.Line, p.Why, printable(p.Text))
	}
	if content.More > 0 {
		fmt.Fprintf(s.Err, "%s: and %d more such lines\n", name, content.More)
	}
	return name, content, nil
}

// append writes entries to the log.
func (f logFlags) append(s System, entries ...bakelog.Entry) (string, error) {
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

// fileName is the name of a file as a message shows it.
func fileName(name string) string {
	const most = 300
	if len(name) > most {
		name = name[:most] + "…"
	}
	return printable(name)
}

func refusedLog(name string, err error) error {
	name = fileName(name)
	if errors.Is(err, bakelog.ErrVersion) {
		return badInput("%s: %s; nothing was read or written: use that version", name, err)
	}
	return badInput("%s: %s", name, reason(err))
}

// clock is the present, in a zone; nil means the machine's own.
func (f logFlags) clock(s System, zone *time.Location) (time.Time, error) {
	now := s.Now()
	if zone == nil {
		zone = now.Location()
	}
	now = now.In(zone)
	if f.now == "" {
		return now, nil
	}
	at, err := timeIn(f.now, now)
	if err != nil {
		return now, badInput("--now: %s", err)
	}
	return at, nil
}

// timeIn reads "10:40" (the last time the clock showed it), "2026-11-27 18:40" or an instant with
// its offset, in the zone of the present.
func timeIn(text string, now time.Time) (time.Time, error) {
	text = strings.TrimSpace(text)
	zone := now.Location()
	if c, err := wallclock.ParseClock(text); err == nil {
		day := wallclock.DateOf(now, zone)
		at, err := resolved(day.At(c), zone)
		if err == nil && at.After(now.Add(time.Minute)) {
			at, err = resolved(day.AddDays(-1).At(c), zone)
		}
		return at, err
	}
	if m, err := wallclock.ParseMoment(text); err == nil {
		return resolved(m, zone)
	}
	if at, err := time.Parse(time.RFC3339, text); err == nil {
		return at.In(zone), nil
	}
	return time.Time{}, fmt.Errorf("got %s, want a time such as 18:40, 2026-11-27 18:40 or 2026-11-27T18:40:00+01:00", quantity.Excerpt(text))
}

func resolved(m wallclock.Moment, zone *time.Location) (time.Time, error) {
	r, err := wallclock.Resolve(m, zone, wallclock.RFC5545)
	return r.At, err
}

// whenFrom reads a time after the start: "2h10m", or a clock time, the first one after the start.
func whenFrom(text string, start time.Time) (time.Duration, error) {
	text = strings.TrimSpace(text)
	if c, err := wallclock.ParseClock(text); err == nil {
		day := wallclock.DateOf(start, start.Location())
		for range 2 {
			at, err := resolved(day.At(c), start.Location())
			if err != nil {
				return 0, err
			}
			if at.After(start) {
				return at.Sub(start), nil
			}
			day = day.AddDays(1)
		}
	}
	if m, err := wallclock.ParseMoment(text); err == nil {
		at, err := resolved(m, start.Location())
		return at.Sub(start), err
	}
	d, err := quantity.ParseDuration(text)
	if err != nil {
		return 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: "a time after mixing such as 2h10m, or a clock time such as 18:40", Err: quantity.ErrUnit}
	}
	return d, nil
}

// readReadings reads a probe's file; faults are named with their line.
func readReadings(name string) (ferment.Readings, error) {
	source, err := readBounded(name, 64<<20)
	name = fileName(name)
	if err != nil {
		return ferment.Readings{}, err
	}
	r, err := ferment.ParseReadings(string(source))
	if err != nil {
		return r, badInput("%s", readingFaults(name, err))
	}
	return r, nil
}

// readingFaults turns paths such as "line 3 time" into places.
func readingFaults(name string, err error) string {
	var lines []string
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		rest, ok := strings.CutPrefix(e.Path, "line ")
		number, column, _ := strings.Cut(rest, " ")
		if _, bad := strconv.Atoi(number); ok && bad == nil {
			moved.Path = column
			lines = append(lines, name+":"+number+": "+moved.Error())
			continue
		}
		if m := readingPath.FindStringSubmatch(e.Path); m != nil {
			if n, err := strconv.Atoi(m[1]); err == nil {
				moved.Path = fmt.Sprintf("reading %d, %s", n+1, strings.ToLower(strings.Replace(m[2], "At", "time", 1)))
			}
		}
		lines = append(lines, name+": "+moved.Error())
	}
	if len(lines) == 0 {
		return name + ": " + err.Error()
	}
	return strings.Join(lines, "\n")
}

var readingPath = regexp.MustCompile(`^Points\[(\d+)\]\.(At|Temperature)$`)

func readBounded(name string, most int64) ([]byte, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, badInput("%s: %s", fileName(name), reason(err))
	}
	switch {
	case info.IsDir():
		return nil, badInput("%s: is a folder; want a file", name)
	case info.Size() > most:
		return nil, badInput("%s: got %d MB, want at most %d MB", name, info.Size()>>20, most>>20)
	}
	source, err := os.ReadFile(name)
	if err != nil {
		return nil, badInput("%s: %s", name, reason(err))
	}
	return source, nil
}

// yeastOf reads "0.6 % instant".
func yeastOf(text string) (y ferment.Yeast, kind string, err error) {
	const want = `an amount and a kind, such as "0.6 % instant", "0.8 % active dry" or "2 % fresh"`
	amount, rest, found := strings.Cut(strings.TrimSpace(text), "%")
	kind = strings.TrimSuffix(strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(rest, "-", " ")), " ")), " yeast")
	if kind == "dry" {
		kind = "active dry"
	}
	kinds := map[string]ferment.YeastKind{"fresh": ferment.FreshYeast, "active dry": ferment.ActiveDryYeast, "instant": ferment.InstantYeast}
	if found {
		y.Amount, err = quantity.ParsePercent(amount + "%")
	}
	if y.Kind = kinds[kind]; !found || err != nil || y.Kind == ferment.NoYeast {
		return y, kind, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrUnit}
	}
	return y, kind, nil
}
