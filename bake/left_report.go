package bake

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// Report tells how long still: to the target and until baked out, by the clock too when the probe knows it, what would
// happen if the loaf came out now, and what the answer rests on.
func (l Left) Report() report.Report {
	r := report.Report{Headline: l.message(), Cautions: l.Cautions()}
	if l.State != Vague {
		rows := report.Rows{}
		if l.State == Rising || l.State == Unreachable {
			rows = append(rows, span(working.Tell("bake.label_to_target", "to the target"), l.ToTarget, l.probe.Now))
		}
		rows = append(rows, span(working.Tell("bake.label_to_out", "until baked out"), l.ToOut, l.probe.Now))
		blocks := []report.Block{rows}
		if l.State == Rising && l.Approach == Exponential {
			blocks = append(blocks,
				report.Say(working.Tell("bake.exponential_late", "this is the plain law, and it runs late")))
		}
		r.Sections = append(r.Sections, report.Section{
			Key: "left", Title: working.Tell("bake.title_from_reading", "From the last reading on"), Blocks: blocks,
		})
	}
	if n := len(l.probe.Samples); n > 0 && l.State != NearBoiling && l.State != Vague {
		last := l.probe.Samples[n-1]
		if carry, err := (TakenOut{Place: l.probe.Place, Core: last.Core}).CarryOver(); err == nil {
			r.Sections = append(r.Sections, report.Section{
				Key: "carry_over", Title: working.Tell("bake.title_out_now", "If it came out now"),
				Blocks: []report.Block{report.Say(carry.message())},
			})
		}
	}
	if c, ok := l.chart(); ok {
		r.Sections = append(r.Sections, picture(c))
	}
	r.RestsOn = l.restsOn()
	return r
}

func (l Left) restsOn() []working.Message {
	var out []working.Message
	switch {
	case l.Used > 0 && l.Early > 0:
		out = append(
			out,
			working.Tell("bake.used_but_early", "%d readings; %d {2|reading|readings} of the early part left out",
				l.Used, l.Early),
		)
	case l.Used > 0:
		out = append(out, working.Tell("bake.used", "%d readings, %v approach to boiling", l.Used, l.Approach))
	}
	out = append(out, working.Tell("bake.boils_here", "water boils here at %.1f", l.Boiling))
	switch {
	case l.probe.EntryUnknown:
		out = append(
			out,
			working.Tell("bake.entry_unknown", "when the loaf went in is not known: bake-out is that of a usual piece"),
		)
	case rowOf(l.probe.Style).done.hearth:
		out = append(
			out,
			working.Tell("bake.out_hearth",
				"a hearth loaf bakes out in about as long again as its core took to come within %.0f of boiling; at the early "+
					"end by the plant rule for pan bread", quantity.DeltaCelsius(nearly)),
		)
	}
	if l.ReadAgain > 0 && l.State == Rising {
		out = append(
			out,
			working.Tell("bake.read_again", "read again in %v: the answer narrows",
				l.ReadAgain.Duration().Round(time.Minute)),
		)
	}
	return append(out, working.Tell("bake.color_yours", "the color of the crust is yours to judge"))
}

// span is a row with a range of times, by the clock where the present is known.
func span(label working.Message, r quantity.TimeRange, now time.Time) report.Row {
	row := report.Row{Label: label, Value: report.Of(r)}
	if !now.IsZero() {
		row.Note = working.Tell("bake.by_the_clock", "by the clock %t to %t, likely %t", now.Add(r.Early),
			now.Add(r.Late), now.Add(r.Likely))
	}
	return row
}

// Report tells how far the core still rises.
func (c CarryOver) Report() report.Report { return report.Report{Headline: c.message()} }

// Report tells when the core arrives.
func (a Arrival) Report() report.Report { return report.Report{Headline: a.message()} }

// Report tells when the loaf may be cut.
func (c CoolingTime) Report() report.Report {
	r := report.Report{Headline: c.message(), Cautions: c.Cautions(), Sections: noted(c.Notes())}
	r.RestsOn = []working.Message{
		working.Tell("bake.cooling_rests",
			"a room of %.0f and %v of its weight lost as steam; longer in a still corner, shorter on a rack in a draft",
			c.Room, quantity.NewPercent(c.lost)),
		working.Tell("bake.cooling_probe", "two readings of a probe, some 20 minutes apart, say much more"),
	}
	if chart, ok := c.chart(); ok {
		r.Sections = append(r.Sections, picture(chart))
	}
	return r
}

// Report tells when the loaf may be cut.
func (c CoolingLeft) Report() report.Report {
	r := report.Report{Headline: c.message(), Cautions: c.Cautions()}
	r.Sections = noted(warmRoom(c.usual, c.Slice, c.in.Room))
	if !c.Reached {
		r.Sections = append(r.Sections, report.Section{
			Key:   "left",
			Title: working.Tell("bake.title_from_reading", "From the last reading on"),
			Blocks: []report.Block{
				report.Rows{span(working.Tell("bake.label_to_slice", "until it may be cut"), c.Ready, c.in.Now)},
			},
		})
	}
	if chart, ok := c.chart(); ok {
		r.Sections = append(r.Sections, picture(chart))
	}
	return r
}

// noted is a section of notes; none without any.
func noted(notes []working.Message) []report.Section {
	if len(notes) == 0 {
		return nil
	}
	return []report.Section{{Key: "notes", Blocks: []report.Block{report.List(notes)}}}
}
