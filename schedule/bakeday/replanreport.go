package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// Report tells the rest of the day: whether the bread is still there when it is wanted, what changes, and the timetable
// from now on.
func (r Replanned) Report() report.Report {
	if !r.made {
		return report.Report{Headline: working.Tell("bakeday.no_plan", "no plan was made")}
	}
	out := report.Report{Headline: r.headline()}
	add := func(key string, title working.Message, blocks ...report.Block) {
		out.Sections = append(out.Sections, report.Section{Key: key, Title: title, Blocks: blocks})
	}
	if len(r.Timetable.Steps) == 0 {
		var list report.List
		if c := r.Timetable.Conflict; c != nil {
			for _, m := range c.Members {
				list = append(list, m.Words)
			}
		}
		add(
			"why",
			working.Message{},
			report.Say(working.Tell("bakeday.nothing_fits",
				"the rest fits no more, today or later; these cannot all be kept:")),
			list,
		)
		return out
	}
	head := []report.Block{report.Say(r.inTime())}
	if r.Moved > 0 {
		head[0] = report.Paragraph{Text: r.inTime(), Tone: report.Warning}
		var unless report.List
		if r.Why != nil {
			for _, m := range r.Why.Members {
				if m.Enough && !m.Remedy.IsZero() {
					unless = append(unless, working.Tell("bakeday.unless", "unless: %v (%v)", m.Words, m.Remedy))
				}
			}
		}
		head = append(head, unless)
	}
	add("changes", working.Message{}, slices.Concat(head, r.changeBlocks(), r.leftOut(), r.riseBlocks())...)
	add("timetable", working.Tell("bakeday.title_rest", "The rest of the day"), r.rest)
	return out
}

// leftOut says which folds there is no time for any more.
func (r Replanned) leftOut() []report.Block {
	var out []any
	for _, s := range r.before.Steps {
		if _, ok := r.Timetable.Step(s.ID); !ok && s.Kind == schedule.Fold && !s.Spare {
			out = append(out, s.Title())
		}
	}
	if len(out) == 0 {
		return nil
	}
	return []report.Block{report.Say(working.Tell("bakeday.left_out", "left out, as no time is left for it: %v",
		working.And(out...)))}
}

// headline says what begins when.
func (r Replanned) headline() working.Message {
	begins := func(b begun) time.Time {
		if s, ok := r.Timetable.Step(b.step.ID); ok {
			return s.Start.In(r.zone)
		}
		return b.at.In(r.zone)
	}
	if len(r.begun) == 1 {
		return working.Tell("bakeday.replanned", "%v begins at %v", r.Late.Title(), begins(r.begun[0]))
	}
	all := make([]any, len(r.begun))
	for i, b := range r.begun {
		all[i] = working.Tell("bakeday.step_begins", "%v at %v", b.step.Title(), begins(b))
	}
	return working.Tell("bakeday.replanned_several", "These begin at other times: %v.", working.And(all...))
}

// riseBlocks compare how far the dough has risen by then with what the rest that is left wants.
func (r Replanned) riseBlocks() []report.Block {
	if r.Allowed.Sign() <= 0 {
		return nil
	}
	out := []report.Block{report.Say(working.Tell("bakeday.risen_by_then",
		"by then the dough has likely risen by %.0f; the rest that is left wants it shaped at %.0f", r.Risen,
		r.Allowed))}
	const near = 5.0 // points of rise that nobody sees
	switch over := r.Risen.Points() - r.Allowed.Points(); {
	case over > near:
		out = append(
			out,
			report.Say(working.Tell("bakeday.further_on",
				"it will be further on than wanted, so get it cold quickly and bake it first")),
		)
	case over < -near:
		out = append(
			out,
			report.Say(working.Tell("bakeday.behind",
				"it will be behind, so let it rise on before it goes into the cold, if there is time")),
		)
	}
	return out
}

// Possible reports whether the rest of the day can be done.
func (r Replanned) Possible() bool { return len(r.Timetable.Steps) > 0 }

// fittedPage tells what was written and what fits best, and then the plan.
func fittedPage(r report.Report, tried int, written, best Choice, others []Choice) report.Report {
	head := working.Tell("bakeday.nothing_better",
		"%d settings tried; nothing within the levers fits better than what is written", tried)
	if len(best.Changes) > 0 {
		head = working.Tell("bakeday.fits_better", "%d settings tried; this fits better: %v", tried,
			working.Join(best.words(), "; "))
	}
	if best.without() {
		r.Headline = working.Tell("bakeday.no_setting_fits",
			"%d {1|setting|settings} tried, and no timetable fits any of them",
			tried)
		return r
	}
	plan := append([]report.Section{}, r.Sections...)
	r.Sections = nil
	add := func(key string, title working.Message, c Choice) {
		blocks := []report.Block{
			report.Rows{
				{
					Label: working.Tell("bakeday.points_against", "points against it"),
					Value: report.Rounded(c.Points, 1),
				},
			},
		}
		if all := c.words(); len(all) > 0 {
			blocks = append(blocks, report.List(all))
		}
		if len(c.Against) > 0 {
			var against report.List
			for _, a := range c.Against {
				against = append(against, working.Tell("bakeday.against", "against it: %v", a.Words))
			}
			blocks = append(blocks, against)
		}
		r.Sections = append(r.Sections, report.Section{Key: key, Title: title, Blocks: blocks})
	}
	add("as_written", working.Tell("bakeday.as_written", "As written"), written)
	add("best", working.Tell("bakeday.best", "What fits best"), best)
	const most = 3
	for i, c := range others {
		if i == most {
			break
		}
		add("other", working.Tell("bakeday.other", "Or"), c)
	}
	r.Headline, r.Sections = head, append(r.Sections, plan...)
	return r
}

// without reports whether the choice has no timetable.
func (c Choice) without() bool {
	return slices.ContainsFunc(c.Against, func(a Against) bool { return a.Drawback == NoTimetable })
}

// words are the changes as sentences.
func (c Choice) words() []working.Message {
	var out []working.Message
	for _, m := range c.Changes {
		out = append(out, m.Words)
	}
	return out
}

// inTime says whether the bread is there when it is wanted, or by how much it is late.
func (r Replanned) inTime() working.Message {
	switch {
	case r.several && r.Moved > 0:
		return working.Tell("bakeday.every_bread_later", "every bread is ready %v later than wanted", r.Moved)
	case r.several:
		return working.Tell("bakeday.every_bread_in_time", "every bread is still there when it is wanted")
	case r.Moved > 0:
		return working.Tell("bakeday.later", "the bread is ready %v later than wanted, at %x", r.Moved, r.Wanted.In(r.zone))
	}
	return working.Tell("bakeday.still_there", "the bread is still there when it is wanted, %x", r.Wanted.In(r.zone))
}
