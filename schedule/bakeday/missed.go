package bakeday

import (
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// missedBlocks say why the day that was wished for by its weekday cannot be met any more, and which times near it
// could be, before the plan for the week after.
func (d Day) missedBlocks() []report.Block {
	m := d.Missed
	if m == nil {
		if d.Bake.Wanted.over(d.Now, d.Zone) {
			return []report.Block{report.Say(working.Tell("bakeday.today_is_over",
				"%v %t is over for today, so this is for %x.", d.Bake.Wanted.Weekday, d.Wanted.In(d.Zone), d.Wanted.In(d.Zone)))}
		}
		return nil
	}
	out := []report.Block{report.Say(working.Tell("bakeday.missed",
		"The wish for %x can no longer be met, so this is for the week after.", m.Wanted.In(d.Zone)))}
	if m.Why == nil {
		return out
	}
	if !m.Why.Says.IsZero() {
		out = append(out, report.Say(m.Why.Says))
	}
	if near := m.nearest(d.Wanted); near.Earlier != nil || near.Later != nil {
		out = append(out, report.Paragraph{Text: PlanData{Wanted: m.Wanted.In(d.Zone), Why: near}.nearest(),
			Tone: report.Strong})
	}
	return out
}

// nearest are the times that work next to the one missed, before the plan that is made instead.
func (m Missed) nearest(instead time.Time) *WhyData {
	near := WhyData{Earlier: m.Why.Earlier, Later: m.Why.Later}
	if near.Later != nil && !near.Later.Before(instead) {
		near.Later = nil
	}
	return &near
}
