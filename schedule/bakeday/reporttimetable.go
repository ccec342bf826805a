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
		by, from := x.Windows[0].To, x.Windows[1].From
		if sameDay(by, from) {
			return working.Tell("bakeday.step_gap_within_a_day", "%v; begin by %v or from %t", says, by, from)
		}
		return working.Tell("bakeday.step_gap", "%v; begin by %v or from %v", says, by, from)
	} else if n > 2 && x.Hands {
		spans := make([]any, len(x.Windows))
		for i, w := range x.Windows {
			spans[i] = span(w.From, w.To)
		}
		says = working.Tell("bakeday.step_windows", "%v; it may start %v", says, working.Or(spans...))
	}
	return says
}

func sameDay(a, b time.Time) bool { return a.YearDay() == b.YearDay() && a.Year() == b.Year() }

// span is from when to when, with the second day where it is another.
func span(from, to time.Time) working.Message {
	switch {
	case from.Equal(to):
		return working.Tell("bakeday.window_point", "%v", from)
	case sameDay(from, to):
		return working.Tell("bakeday.window_within_a_day", "%v to %t", from, to)
	}
	return working.Tell("bakeday.window", "%v to %v", from, to)
}

// whyBlocks tell why a plan does not fit: in one sentence, then the nearest times that work, then what would help.
func (s PlanData) whyBlocks() []report.Block {
	w := s.Why
	if w == nil {
		return []report.Block{report.Say(working.Tell("bakeday.no_timetable", "no timetable was found"))}
	}
	out := []report.Block{
		report.Paragraph{Text: w.Says, Tone: report.Warning}, report.Paragraph{Text: s.nearest(), Tone: report.Strong},
	}
	return append(out, w.help()...)
}

// help tells the changes of which one is enough, or those of which all are needed.
func (w WhyData) help() []report.Block {
	list := func(title working.Message, all []RuleData, says func(RuleData) working.Message) []report.Block {
		var out report.List
		for _, r := range all {
			out = append(out, says(r))
		}
		return []report.Block{report.Say(title), out}
	}
	switch {
	case len(w.Remedies) == 1:
		return list(working.Tell("bakeday.would_help_one", "Or this:"), w.Remedies, RuleData.gives)
	case len(w.Remedies) > 0:
		return list(working.Tell("bakeday.would_help", "Or one of these, each enough by itself:"), w.Remedies, RuleData.gives)
	case len(w.Together) > 0:
		return list(working.Tell("bakeday.together_help", "Or all of these:"), w.Together, RuleData.gives)
	}
	return nil
}

// gives says a rule, and how far it would have to give.
func (r RuleData) gives() working.Message {
	return working.Tell("bakeday.gives", "%v: %v", r.Words, r.Remedy)
}

// nearest are the nearest wanted times that work.
func (s PlanData) nearest() working.Message {
	w := s.Why
	switch {
	case w.Earlier != nil && w.Later != nil:
		return working.Tell("bakeday.nearest_both", "Nearest that works: %x or %x.", *w.Earlier, *w.Later)
	case w.Earlier != nil:
		return working.Tell("bakeday.nearest_earlier", "Nearest that works: %x (%v earlier).", *w.Earlier,
			s.Wanted.Sub(*w.Earlier))
	case w.Later != nil:
		return working.Tell("bakeday.nearest_later", "Nearest that works: %x (%v later).", *w.Later,
			w.Later.Sub(s.Wanted))
	}
	return working.Tell("bakeday.nearest_none", "No wanted time nearby works either.")
}
