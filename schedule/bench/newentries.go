package bench

import (
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// NewEntries are what was written to a log, and what it says at once ([Observations.Tells]).
type NewEntries struct {
	Entries Observations      `json:"logged"`
	Says    []working.Message `json:"says"`
	// Done is the step that was ticked off, as the plan calls it; not given: as the log does.
	Done working.Message `json:"-"`
}

// String is the headline of the report.
func (l NewEntries) String() string { return l.Report().Headline.String() }

// Report tells what was written, when and of which bread, and what it says.
func (l NewEntries) Report() report.Report {
	r := report.Report{Headline: working.Tell("bench.logged_nothing", "nothing new is logged")}
	var several report.List
	for _, o := range l.Entries {
		what := o.Message()
		if o.Kind == SawStep && !l.Done.IsZero() {
			what = working.Tell("bench.logged_step", "done: %v (%v)", l.Done, working.Say(o.Step))
		}
		says := working.Tell("bench.logged_of", "%v, %s: %v", o.At, o.Bread, what)
		if o.Bread == "" {
			says = working.Tell("bench.logged_any", "%v, %v", o.At, o.Message())
		}
		r.Headline = working.Tell("bench.logged", "logged: %v", says)
		several = append(several, says)
	}
	if len(several) > 1 {
		r.Headline = working.Tell("bench.logged_several", "logged:")
		r.Sections = append(r.Sections, report.Section{Key: "logged", Blocks: []report.Block{several}})
	}
	if len(l.Says) > 0 {
		r.Sections = append(r.Sections, report.Section{Key: "says", Blocks: []report.Block{report.List(l.Says)}})
	}
	return r
}
