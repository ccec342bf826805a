package desk

import (
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/wallclock"
)

// A handStep is a step that the class puts on the clock by hand before the plan is revealed: the first of its kind, of
// one bread where there are several.
type handStep struct {
	bread string
	kind  schedule.StepKind
}

const byHand = "by_hand."

func (h handStep) name() string {
	if h.bread == "" {
		return byHand + h.kind.String()
	}
	return byHand + h.bread + "." + h.kind.String()
}

func (h handStep) label() working.Message {
	if h.bread == "" {
		return working.Tell("desk.word", "%v", h.kind)
	}
	return working.Tell("desk.step_of_bread", "%v: %v", working.Tell("desk.named", "%v", h.bread), h.kind)
}

// in is the step in a timetable; false where there is none.
func (h handStep) in(t schedule.Timetable) (schedule.Timed, bool) {
	for _, i := range t.ByTime() {
		if s := t.Steps[i]; s.Kind == h.kind && (h.bread == "" || s.Bread == h.bread) {
			return s, true
		}
	}
	return schedule.Timed{}, false
}

// handFields are the fields that the steps are put on the clock in, all of them empty at first.
func handFields(steps []handStep) []field {
	var out []field
	for _, h := range steps {
		out = append(out, field{name: h.name(), label: h.label(), kind: aMoment, places: halfHours(), empty: true, hand: true})
	}
	return out
}

// halfHours are the places of a slider over the days of the class.
func halfHours() []string {
	var out []string
	now, last := wallclock.MustMoment(hallNow), wallclock.MustMoment(hallEnd)
	for date := now.Date; date.Compare(last.Date) <= 0; date = date.AddDays(1) {
		for minutes := 0; minutes < 24*60; minutes += 30 {
			m := date.At(wallclock.Clock{Hour: minutes / 60, Minute: minutes % 60})
			if m.Compare(now) >= 0 && m.Compare(last) <= 0 {
				out = append(out, m.String())
			}
		}
	}
	return out
}

// momentOf reads a moment of the class's days: a date and a time, or a weekday and a time.
func momentOf(text string) (wallclock.Moment, error) {
	w, err := bakeday.ParseWish(text)
	if err != nil || w.Moment != (wallclock.Moment{}) {
		return w.Moment, err
	}
	date := wallclock.MustMoment(hallNow).Date
	for date.Weekday() != w.Weekday {
		date = date.AddDays(1)
	}
	return date.At(w.Clock), nil
}

// handGiven are the moments that were put by hand, by the names of their fields. Errors: what cannot be read, and where
// nothing was put at all.
func (s State) handGiven(t task) (map[string]wallclock.Moment, error) {
	v := &values{task: t, texts: s.Fields, reader: s.reader()}
	given := map[string]wallclock.Moment{}
	for _, f := range t.fields {
		if f.hand && strings.TrimSpace(v.text(f.name)) != "" {
			given[f.name] = get[wallclock.Moment](v, f.name)
		}
	}
	if len(given) == 0 {
		v.problems.Required("guess", quantity.Tell("desk.want_one_time", "a time for one step at least"))
	}
	return given, v.problems.Err()
}

// withoutHand are the fields of a state without the moments put by hand.
func (s State) withoutHand(t task) map[string]string {
	kept := map[string]string{}
	for name, text := range s.Fields {
		if f, ok := t.field(name); !ok || !f.hand {
			kept[name] = text
		}
	}
	return kept
}

// handWords is what was put by hand, as a reader sees it.
func (s State) handWords(t task) string {
	given, _ := s.handGiven(t)
	var words []any
	for _, h := range t.steps {
		if m, ok := given[h.name()]; ok {
			words = append(words, working.Tell("desk.step_at", "%v %v", h.label(), momentShown(m)))
		}
	}
	return working.And(words...).Text(s.reader())
}

// momentShown is a moment with its weekday.
func momentShown(m wallclock.Moment) any {
	zone, err := hallLocation()
	if err != nil {
		return m
	}
	at, err := wallclock.Resolve(m, zone, wallclock.RFC5545)
	if err != nil {
		return m
	}
	return at.At
}

// byHandSection sets what was put by hand beside the timetable: when the library does each step, when else it could
// begin with the other steps giving way, and what is in the way of each that cannot.
func (s State) byHandSection(t task, plan *schedule.Timetable) (report.Section, working.Message) {
	given, err := s.handGiven(t)
	if err != nil {
		return report.Section{}, working.Tell("desk.guess_unread", "The guess cannot be read: %v", working.Problem(err))
	}
	if plan == nil {
		return report.Section{}, working.Tell("desk.hand_none",
			"There is no timetable to hold your times against: see below what is in the way.")
	}
	grid := report.Grid{Key: "by-hand", Columns: []report.GridColumn{
		{Key: "step", Title: working.Tell("desk.column_step", "step")},
		{Key: "yours", Title: working.Tell("desk.column_yours", "by your hand")},
		{Key: "planned", Title: working.Tell("desk.column_planned", "planned")},
		{Key: "possible", Title: working.Tell("desk.column_possible", "can begin")},
		{Key: "says", Title: working.Tell("desk.column_says", "so")},
	}}
	fit := 0
	for _, h := range t.steps {
		m, put := given[h.name()]
		step, done := h.in(*plan)
		if !put || !done {
			continue
		}
		at, _ := momentShown(m).(time.Time)
		says, fits := judgedByHand(at, step)
		if fits {
			fit++
		}
		grid.Rows = append(grid.Rows, []report.Cell{report.Of(h.label()), report.Of(at), report.Of(step.Start),
			report.Of(spansOf(step)), report.Of(says)})
	}
	verdict := working.Tell("desk.hand_verdict", "%d of your %d {2|time|times} can be kept.", fit, len(grid.Rows))
	return report.Section{Key: "by-hand", Title: working.Tell("desk.title_by_hand", "Your times beside the plan"),
		Blocks: []report.Block{grid}}, verdict
}

// nearEnough is how far a moment put by hand may lie outside: the slider goes by half hours.
const nearEnough = 15 * time.Minute

// judgedByHand says whether a step can begin at a moment, the others giving way.
func judgedByHand(at time.Time, s schedule.Timed) (working.Message, bool) {
	within := func(more time.Duration) bool {
		return slices.ContainsFunc(s.Windows, func(w schedule.Span) bool {
			return !at.Before(w.From.Add(-more)) && !at.After(w.To.Add(more))
		})
	}
	switch {
	case within(0):
		return working.Tell("desk.hand_fits", "possible"), true
	case within(nearEnough):
		return working.Tell("desk.hand_near", "possible, to a quarter of an hour"), true
	case at.After(s.LatestStart):
		if s.Drives.IsZero() {
			return working.Tell("desk.hand_late", "too late"), false
		}
		return working.Tell("desk.hand_late_why", "too late; it is held by: %v", s.Drives), false
	case at.Before(s.EarliestStart):
		return working.Tell("desk.hand_early", "too early: what stands before it is not done"), false
	}
	return working.Tell("desk.hand_between", "not then: somebody sleeps or is away, or something is in use"), false
}

// spansOf are the spans in which a step can begin.
func spansOf(s schedule.Timed) working.Message {
	var spans []any
	for _, w := range s.Windows {
		if w.From.Equal(w.To) {
			spans = append(spans, working.Tell("desk.moment", "%v", w.From))
			continue
		}
		spans = append(spans, working.Tell("desk.span", "%v to %v", w.From, w.To))
	}
	if len(spans) == 0 {
		return working.Tell("desk.moment", "%v", s.Start)
	}
	return working.And(spans...)
}
