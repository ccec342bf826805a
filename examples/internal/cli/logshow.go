package cli

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bench"
	"example.org/maslin/schedule/wallclock"
)

// logShow asks what is in the log.
type logShow struct {
	logFlags
	Bread string `flag:"bread"`
	Last  int    `flag:"last"`
}

func (q *logShow) ask(c *call) error {
	if c.given("last") && q.Last < 1 {
		c.fault("last", fmt.Sprint(q.Last), quantity.Tell("cli.want_number_observations", "a number of observations, 1 or more"),
			quantity.ErrOutOfRange)
	}
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	// Of a long log no more is held than is shown.
	name, content, err := q.reading(c.System, bench.LogReading{Most: -1, Last: q.Last,
		Keep: func(o bench.Observation) bool { return q.Bread == "" || o.Bread == q.Bread }})
	if err != nil {
		return err
	}
	if _, err := q.clock(c.System, nil); err != nil {
		return err
	}
	// Each by the clock of its bake, which it was logged with.
	data := shownLog{loggedFormat, name, append(bench.Observations{}, content.Entries...),
		len(content.Unreadable) + content.More}
	return c.tell(data, nil)
}

// shownLog is what is in the log.
type shownLog struct {
	Format   string             `json:"format"`
	Log      string             `json:"log"`
	Entries  bench.Observations `json:"entries"`
	Problems int                `json:"unreadable_lines"`
}

// Report lists the observations.
func (l shownLog) Report() report.Report {
	if len(l.Entries) == 0 {
		return report.Report{Headline: working.Tell("maslin.log_empty",
			"Nothing is logged in %s. For example: maslin log rise 30%%", l.Log)}
	}
	return l.Entries.Report()
}

// logImport takes observations from a spreadsheet into the log.
type logImport struct{ logFlags }

func (q *logImport) ask(c *call) error {
	if wrong := c.complain(q.writable(c.System)); wrong != nil {
		return wrong
	}
	now, err := q.clock(c.System, nil)
	if err != nil {
		return err
	}
	text, err := readText(c.args[0])
	if err != nil {
		return err
	}
	entries, err := bench.ReadCSV(text, func(text string) (time.Time, error) { return wallclock.ReadPast(text, now) })
	if err != nil {
		return lineFaults(c.args[0], err)
	}
	fresh, err := q.notYet(c.System, entries)
	if err != nil {
		return err
	}
	name, err := q.append(c.System, fresh...)
	if err != nil {
		return err
	}
	taken := working.Tell("maslin.imported", "taken: %d; there already: %d", len(fresh), len(entries)-len(fresh))
	err = c.tell(importedLog{loggedFormat, name, bench.NewEntries{Entries: fresh, Says: []working.Message{taken}}}, nil)
	if len(fresh) > 0 {
		err = kept(name, err)
	}
	return err
}

// importedLog tells how many observations were taken, and not each of them.
type importedLog logged

// Report tells how many.
func (l importedLog) Report() report.Report { return report.Report{Headline: l.Says[0]} }

// notYet leaves out what is in the log already, of which no more is held than what was at the same instants.
func (q *logImport) notYet(s System, entries bench.Observations) (bench.Observations, error) {
	instants := map[time.Time]bool{}
	for _, e := range entries {
		instants[e.At.UTC()] = true
	}
	_, content, err := q.reading(s, bench.LogReading{Most: -1,
		Keep: func(o bench.Observation) bool { return instants[o.At.UTC()] }})
	if err != nil {
		return nil, err
	}
	return entries.Without(content.Entries)
}
