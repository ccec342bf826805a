package cli

import (
	"fmt"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
)

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
		return report.Report{Headline: working.Tell("maslin.log_empty", "Nothing is logged in %s. For example: maslin log rise 30%%", l.Log)}
	}
	g := report.Grid{Key: "log", Columns: []report.GridColumn{{Key: "at"}, {Key: "bread"}, {Key: "by"}, {Key: "what"}}}
	for _, o := range l.Entries {
		by := report.Cell{}
		if o.By != "" {
			by = report.Of(o.By)
		}
		g.Rows = append(g.Rows, []report.Cell{report.Of(working.Say("%x", o.At)), report.Of(o.Bread), by, report.Of(o.Message())})
	}
	return report.Report{Headline: working.Tell("maslin.log_holds", "%d {1|observation|observations}", len(l.Entries)), Sections: []report.Section{{Key: "log", Blocks: []report.Block{g}}}}
}

func newLogShow(s System) *cobra.Command {
	var f logFlags
	var o output
	var bread string
	var last int
	cmd := &cobra.Command{
		Use: "show", Short: "What is in the log", Example: "  maslin log show --last 20\n  maslin log show --bread rolls", Args: flagsOnly,
	}
	in := ask(cmd)
	in.number(&last, "last", "only the last so many observations")
	cmd.Flags().StringVar(&bread, "bread", "", "only those of the bread with this `NAME`")
	o.register(cmd)
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if last < 0 {
			in.fault("last", fmt.Sprint(last), quantity.Tell("cli.want_number_observations", "a number of observations"), quantity.ErrOutOfRange)
		}
		if err := in.complain(nil); err != nil {
			return err
		}
		name, content, err := f.read(s)
		if err != nil {
			return err
		}
		now, err := f.clock(s, nil)
		if err != nil {
			return err
		}
		data := shownLog{loggedFormat, name, bench.Observations{}, len(content.Problems) + content.More}
		for _, e := range content.Entries {
			if bread == "" || e.Bread == bread {
				e.At = e.At.In(now.Location())
				data.Entries = append(data.Entries, e)
			}
		}
		if n := len(data.Entries); last > 0 && n > last {
			data.Entries = data.Entries[n-last:]
		}
		return s.tell(o, data, true)
	}
	return cmd
}
