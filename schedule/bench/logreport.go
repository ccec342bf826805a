package bench

import (
	"encoding/json"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// String is the headline of the report.
func (all Observations) String() string { return all.Report().Headline.String() }

// Report lists the observations, each by the clock that it was logged with.
func (all Observations) Report() report.Report {
	if len(all) == 0 {
		return report.Report{Headline: working.Tell("bench.log_empty", "nothing is logged")}
	}
	g := report.Grid{Key: "log", Columns: []report.GridColumn{{Key: "at"}, {Key: "bread"}, {Key: "by"}, {Key: "what"}}}
	for _, o := range all {
		by := report.Cell{}
		if o.By != "" {
			by = report.Of(o.By)
		}
		g.Rows = append(g.Rows, []report.Cell{report.Of(working.Say("%x", o.At)), report.Of(o.Bread), by,
			report.Of(o.Message())})
	}
	return report.Report{
		Headline: working.Tell("bench.log_holds", "%d {1|observation|observations}", len(all)),
		Sections: []report.Section{{Key: "log", Blocks: []report.Block{g}}},
	}
}

// Without returns those that are not among the others: of equal ones, of the same instant in whatever zone, the first
// is kept. So a table is taken into a log twice without harm. Errors: those of writing them as JSON.
func (all Observations) Without(others Observations) (Observations, error) {
	known := map[string]bool{}
	out := Observations{}
	for i, o := range append(others[:len(others):len(others)], all...) {
		own := o
		own.At = o.At.In(time.UTC)
		line, err := json.Marshal(own)
		if err != nil {
			return nil, err
		}
		if i >= len(others) && !known[string(line)] {
			out = append(out, o)
		}
		known[string(line)] = true
	}
	return out, nil
}

// Workings derive what was learned of mixers, cultures and losses.
func (l Lessons) Workings() []working.Working {
	var out []working.Working
	for _, m := range l.Mixers {
		if len(m.Batches) > 0 {
			out = append(out, m.Learned.Working())
		}
	}
	for _, c := range l.Cultures {
		if len(c.Bakes) > 0 {
			out = append(out, c.Lesson.Working())
		}
	}
	for _, x := range l.Losses {
		out = append(out, x.Learned.Working())
	}
	return out
}
