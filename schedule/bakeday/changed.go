package bakeday

import (
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// beside sets the rest of the plan beside the plan before: only the steps that changed and that somebody has to know
// of. Dough and bread that go on by themselves as long as before, a little earlier or later, follow from the others.
func (r Replanned) beside() report.Grid {
	t := report.Grid{Key: "changed", Columns: []report.GridColumn{
		{Key: "step", Title: working.Tell("bakeday.column_step", "step")},
		{Key: "was", Title: working.Tell("bakeday.column_was", "was")},
		{Key: "now", Title: working.Tell("bakeday.column_now", "now")},
	}}
	zone := r.zone
	for _, c := range r.Changes {
		was, before := r.before.Step(c.ID)
		is, after := r.Timetable.Step(c.ID)
		begins := c.Kind.Hands() || c.Kind == schedule.Preheat // and how long it takes is known
		if !before || !after || is.Spare || begins && c.Start == 0 || !begins && c.Length == 0 {
			continue
		}
		span := func(s schedule.Timed) report.Cell {
			if begins {
				return report.Of(s.Start.In(zone))
			}
			return report.Of(working.Tell("bakeday.span", "%v to %v", s.Start.In(zone), s.End.In(zone)))
		}
		t.Rows = append(t.Rows, []report.Cell{report.Of(is.Title()), span(was), span(is)})
	}
	return t
}

// changeBlocks are those lines, or a word that there are none.
func (r Replanned) changeBlocks() []report.Block {
	t := r.beside()
	if len(t.Rows) == 0 && r.Moved > 0 {
		return nil // what is late is past
	}
	if len(t.Rows) == 0 {
		return []report.Block{report.Say(working.Tell("bakeday.nothing_changes", "it stays as it was"))}
	}
	return []report.Block{t}
}
