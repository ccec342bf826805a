package cli

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
)

func newLogImport(s System) *cobra.Command {
	var f logFlags
	var o output
	cmd := &cobra.Command{
		Use:   "import FILE.csv",
		Short: "Take observations from a spreadsheet into the log",
		Long: `import takes observations from a CSV file: one a row, under a heading with the names of the
columns in any order. What is already in the log is not taken again, and when anything is
wrong nothing is.

columns: ` + strings.Join(bakelog.Columns(), ", ") + `
kinds: mix, rise, ready, core, weights, note`,
		Example: "  maslin log import bakes.csv",
		Args:    oneValue("a CSV file"),
	}
	o.register(cmd)
	f.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := o.check(); err != nil {
			return err
		}
		now, err := f.clock(s, nil)
		if err != nil {
			return err
		}
		file, err := os.Open(args[0])
		if err != nil {
			return badInput("%s: %s", fileName(args[0]), reason(err))
		}
		defer file.Close()
		entries, problems, err := bakelog.ReadCSV(file, func(text string) (time.Time, error) { return timeIn(text, now) })
		if err != nil {
			return badInput("%s: %s", fileName(args[0]), reason(err))
		}
		if len(problems) > 0 {
			var lines []string
			for _, p := range problems {
				lines = append(lines, fileName(args[0])+":"+p.String())
			}
			return badInput("%s", strings.Join(lines, "\n"))
		}
		_, content, err := f.read(s)
		if err != nil {
			return err
		}
		fresh, again, err := notYet(content.Entries, entries)
		if err != nil {
			return err
		}
		name, err := f.append(s, fresh...)
		if err != nil {
			return err
		}
		data := logged{loggedFormat, name, fresh, []working.Message{working.Tell("maslin.imported", "taken: %d; there already: %d", len(fresh), again)}}
		err = s.tell(o, importedLog(data), true)
		if len(fresh) > 0 {
			err = kept(name, err)
		}
		return err
	}
	return cmd
}

// importedLog tells how many observations were taken, and not each of them.
type importedLog logged

// Report tells how many.
func (l importedLog) Report() report.Report { return report.Report{Headline: l.Says[0]} }

// notYet leaves out what is in the log already.
func notYet(there, entries bench.Observations) (fresh bench.Observations, again int, err error) {
	key := func(e bench.Observation) (string, error) {
		e.At = e.At.UTC()
		line, err := json.Marshal(e)
		return string(bytes.TrimSpace(line)), err
	}
	known := map[string]bool{}
	for _, e := range there {
		k, err := key(e)
		if err != nil {
			return nil, 0, err
		}
		known[k] = true
	}
	fresh = bench.Observations{}
	for _, e := range entries {
		k, err := key(e)
		if err != nil {
			return nil, 0, err
		}
		if known[k] {
			again++
			continue
		}
		known[k] = true
		fresh = append(fresh, e)
	}
	return fresh, again, nil
}
