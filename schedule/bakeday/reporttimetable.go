package bakeday

import (
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// timetable is the steps in order of time, and when the bread is wanted.
func (s PlanData) timetable() report.Grid {
	t := gridOf(s.Steps)
	wanted := report.Of(working.Tell("bakeday.wanted", "the bread is wanted"))
	t.Rows = append(t.Rows, []report.Cell{report.Of(s.Wanted), {}, {}, {}, wanted})
	return t
}

// gridOf is the steps in order of time. A step that may start in several spans says so.
func gridOf(steps []StepData) report.Grid {
	t := report.Grid{Key: "timetable", Columns: []report.GridColumn{
		{Key: "start", Title: working.Tell("bakeday.column_start", "start")},
		{Key: "end", Title: working.Tell("bakeday.column_end", "end")},
		{Key: "earliest", Title: working.Tell("bakeday.column_from", "may start from")},
		{Key: "hands"},
		{Key: "step", Title: working.Tell("bakeday.column_step", "step")},
	}}
	type alike struct {
		bread string
		kind  schedule.StepKind
	}
	first := map[alike]StepData{}
	for _, x := range steps {
		of := alike{x.Bread, x.Kind}
		if one, ok := first[of]; ok {
			x = x.repeated(one)
		} else {
			first[of] = x
		}
		hands := report.Cell{}
		if x.Hands {
			hands = report.Of(working.Tell("bakeday.column_hands", "hands"))
		}
		t.Rows = append(
			t.Rows,
			[]report.Cell{report.Of(x.Start), report.Of(x.End), report.Of(x.EarliestStart), hands, report.Of(x.says())},
		)
	}
	return t
}

// says is the name of the step, with when to look at it and, where hands are needed, when it may start. What goes by
// itself follows them.
func (x StepData) says() working.Message {
	says := x.withAdditions()
	for _, note := range x.Notes {
		says = working.Tell("bakeday.step_note", "%v (%s)", says, note)
	}
	if x.LookFrom != nil && x.LookTo != nil {
		says = working.Tell("bakeday.step_look", "%v; look at it from %v", says, span(*x.LookFrom, *x.LookTo))
	}
	if n := len(x.Windows); n == 2 && x.Hands {
		// From when at the earliest, and the latest time, stand in columns of their own.
		return working.Tell("bakeday.step_gap", "%v; begin it by %v or from %v", says, x.Windows[0].To, x.Windows[1].From)
	} else if n > 2 && x.Hands {
		spans := make([]any, len(x.Windows))
		for i, w := range x.Windows {
			spans[i] = span(w.From, w.To)
		}
		says = working.Tell("bakeday.step_windows", "%v; it may start %v", says, working.Or(spans...))
	}
	return says
}

// span is from when to when, with the second day where it is another.
func span(from, to time.Time) working.Message {
	switch {
	case from.Equal(to):
		return working.Tell("bakeday.window_point", "%v", from)
	case from.YearDay() == to.YearDay() && from.Year() == to.Year():
		return working.Tell("bakeday.window_within_a_day", "%v to %t", from, to)
	}
	return working.Tell("bakeday.window", "%v to %v", from, to)
}

// whyBlocks tell why a plan does not fit: by how much it misses, the nearest times that work, what is in the way.
func (s PlanData) whyBlocks() []report.Block {
	w := s.Why
	if w == nil {
		return []report.Block{report.Say(working.Tell("bakeday.no_timetable", "no timetable was found"))}
	}
	var out []report.Block
	if w.Short > 0 {
		out = append(
			out,
			report.Paragraph{Text: working.Tell("bakeday.misses", "It misses by %v.", w.Short), Tone: report.Warning},
		)
	}
	out = append(out, report.Paragraph{Text: s.nearest(), Tone: report.Strong})
	if len(w.Rules) == 0 {
		return append(out, report.Say(w.Says))
	}
	var list report.List
	for _, o := range w.obstacles() {
		list = append(list, o.says())
	}
	if w.InOrder {
		list = append(list, working.Tell("bakeday.in_order", "each step follows the one before it"))
	}
	return append(out, report.Say(working.Tell("bakeday.not_all", "These cannot all be kept:")), list)
}

// nearest are the nearest wanted times that work.
func (s PlanData) nearest() working.Message {
	w := s.Why
	switch {
	case w.Earlier != nil && w.Later != nil:
		return working.Tell("bakeday.nearest_both", "Nearest that works: %x or %x.", *w.Earlier, *w.Later)
	case w.Earlier != nil:
		return working.Tell(
			"bakeday.nearest_earlier",
			"Nearest that works: %x (%v earlier).",
			*w.Earlier,
			s.Wanted.Sub(*w.Earlier),
		)
	case w.Later != nil:
		return working.Tell(
			"bakeday.nearest_later",
			"Nearest that works: %x (%v later).",
			*w.Later,
			w.Later.Sub(s.Wanted),
		)
	}
	return working.Tell("bakeday.nearest_none", "No wanted time nearby works either.")
}

// obstacle is a rule that is in the way, and how often it is.
type obstacle struct {
	RuleData
	times int
}

// obstacles are the rules of a conflict, the same ones together: first those of which a change alone would help, last
// the frame of the day.
func (w WhyData) obstacles() []obstacle {
	ranks := make([][]obstacle, 3)
	for _, r := range w.Rules {
		rank := 0
		switch {
		case r.Wanted || r.Rule == schedule.PlanStart || r.Rule == schedule.PlanEnd:
			rank = 2
		case r.Remedy.IsZero():
			rank = 1
		}
		found := false
		for i, o := range ranks[rank] {
			if o.Words == r.Words && o.Remedy == r.Remedy {
				ranks[rank][i].times++
				found = true
			}
		}
		if !found {
			ranks[rank] = append(ranks[rank], obstacle{r, 1})
		}
	}
	return append(append(ranks[0], ranks[1]...), ranks[2]...)
}

func (o obstacle) says() working.Message {
	says := o.Words
	if o.times > 1 {
		says = working.Tell("bakeday.times", "%v (%d times)", says, o.times)
	}
	if !o.Remedy.IsZero() {
		says = working.Tell("bakeday.enough", "%v — enough by itself: %v", says, o.Remedy)
	}
	return says
}
