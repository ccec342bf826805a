package bench

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// String is the headline.
func (m DayNow) String() string { return m.headline().String() }

func (m DayNow) headline() working.Message {
	if !m.Day.Possible() {
		return working.Tell("bench.not_possible", "%s, wanted %v: the plan does not fit", m.Name, m.Wanted)
	}
	return working.Tell("bench.now", "%s, wanted %v; it is %x", m.Name, m.Wanted, m.Now)
}

// mostLater is how many steps are shown behind the next one.
const mostLater = 4

// Report tells what a baker needs at the bench, and no more.
func (m DayNow) Report() report.Report {
	r := report.Report{Headline: m.headline(), RestsOn: m.RestsOn}
	if m.Day.Possible() {
		r.Cautions = m.cautions()
	}
	if !m.Day.Possible() {
		r.Sections = append(r.Sections, m.Day.Report().Section("why"))
		return r
	}
	if m.Followed == nil && m.Dough == nil {
		r.Sections = append(r.Sections, report.Section{Key: "plan", Blocks: []report.Block{
			report.Say(working.Tell("bench.not_followed", "This is the plan if it is made now.")),
		}})
	}
	add := func(key string, title working.Message, blocks ...report.Block) {
		if len(blocks) > 0 {
			r.Sections = append(r.Sections, report.Section{Key: key, Title: title, Blocks: blocks})
		}
	}
	add("doubts", working.Tell("bench.title_doubts", "Is this so?"), m.doubts()...)
	shown := map[string]bool{}
	var under []report.Block
	for _, s := range m.UnderWay() {
		under = append(under, m.step(s, working.Tell("bench.under_way", "%v, %t to %v", s.Name, s.Start, s.End))...)
		shown[s.ID] = true
	}
	add("under_way", working.Tell("bench.title_under_way", "Under way"), under...)
	add("dough", working.Tell("bench.title_dough", "The dough"), m.dough()...)
	if next, ok := m.Next(); ok && !shown[next.ID] {
		wait := max(0, next.Start.Sub(m.Now).Round(time.Minute))
		add(
			"next",
			working.Tell("bench.title_next", "Next, in %v", wait),
			m.step(next, working.Tell("bench.next", "%v: %v (%v)", next.Start, next.Name, next.Takes))...)
		shown[next.ID] = true
	}
	add("changes", working.Tell("bench.title_changes", "So the rest of the plan changes"), m.changes()...)
	var rows [][]report.Cell
	for _, s := range m.Later(mostLater + len(shown)) {
		if shown[s.ID] || len(rows) == mostLater {
			continue
		}
		hands := report.Cell{}
		if s.Hands {
			hands = report.Of(working.Tell("bench.hands", "hands"))
		}
		rows = append(rows, []report.Cell{report.Of(s.Start), hands, report.Of(s.Name)})
	}
	if len(rows) > 0 {
		add("later", working.Tell("bench.title_later", "After that"), report.Grid{
			Key: "later", Columns: []report.GridColumn{{Key: "start"}, {Key: "hands"}, {Key: "step"}}, Rows: rows,
		})
	}
	return r
}

func (m DayNow) step(s bakeday.StepData, line working.Message) []report.Block {
	out := []report.Block{report.Paragraph{Text: line, Tone: report.Strong}}
	if all := m.LookFor(s); len(all) > 0 {
		out = append(out, report.List(all))
	}
	return out
}

func (m DayNow) doubts() []report.Block {
	var out []report.Block
	for _, d := range m.Doubts {
		out = append(out, report.Paragraph{
			Text: working.Tell(
				"bench.doubted",
				"%v: %v Until it is confirmed it changes nothing.",
				d.Observation.At.In(m.Now.Location()),
				d.Says,
			), Tone: report.Warning,
		})
	}
	return out
}

// dough says when the dough is ready, by what is known of it now.
func (m DayNow) dough() []report.Block {
	_, shaped := m.Done[stepShape]
	if m.Progress == nil || shaped {
		return nil
	}
	for _, s := range m.Steps {
		if s.Kind == schedule.Shape && m.Now.After(s.End) {
			return nil // nobody said otherwise: it was shaped as planned
		}
	}
	e := m.Progress.Now
	var out []report.Block
	says := working.Tell("bench.ready", "risen by %.0f %v after mixing", e.Bulk().Rise, e.Ready())
	if m.Dough != nil && len(m.Dough.Rises) > 0 {
		last := m.Dough.Rises[len(m.Dough.Rises)-1]
		out = append(
			out,
			report.Say(working.Tell("bench.seen", "risen by %.0f at %t", last.Rise.Rise, last.At.In(m.Now.Location()))),
		)
		says = working.Tell("bench.ready_now", "risen by %.0f %v after mixing", e.Bulk().Rise, m.Progress.Message())
	}
	at := func(d time.Duration) time.Time { return m.Mixed.Add(d.Round(time.Minute)) }
	ready := e.Ready()
	out = append(
		out,
		report.Say(says),
		report.Say(
			working.Tell(
				"bench.by_clock",
				"by the clock: %v to %v, likely %v",
				at(ready.Early),
				at(ready.Late),
				at(ready.Likely),
			),
		),
	)
	if band, err := e.RiseAt(m.Now.Sub(m.Mixed)); err == nil && m.Now.After(m.Mixed) {
		out = append(
			out,
			report.Say(
				working.Tell(
					"bench.should_be",
					"now it should be at %.0f to %.0f, likely %.0f",
					band.Low,
					band.High,
					band.Likely,
				),
			),
		)
	}
	return out
}

func (m DayNow) changes() []report.Block {
	if m.Changed == nil {
		return nil
	}
	if len(m.Changed.Timetable.Steps) == 0 {
		out := []report.Block{
			report.Say(working.Tell("bench.fits_no_more", "the rest fits no more; these cannot all be kept:")),
		}
		if c := m.Changed.Timetable.Conflict; c != nil {
			var list report.List
			for _, x := range c.Members {
				if x.Enough && !x.Remedy.IsZero() {
					list = append(
						list,
						working.Tell("bench.member_enough", "%v — enough by itself: %v", x.Words, x.Remedy),
					)
					continue
				}
				list = append(list, x.Words)
			}
			out = append(out, list)
		}
		return out
	}
	return m.Changed.Report().Section("changes").Blocks
}

// cautions are those of what is under way or next, each once.
func (m DayNow) cautions() []working.Caution {
	steps := m.UnderWay()
	if next, ok := m.Next(); ok {
		steps = append(steps, next)
	}
	var out []working.Caution
	seen := map[working.Message]bool{}
	for _, s := range steps {
		for _, c := range m.hazards(s.Kind) {
			if !seen[c.Message()] {
				seen[c.Message()] = true
				out = append(out, c)
			}
		}
	}
	return out
}

func (m DayNow) hazards(kind schedule.StepKind) []working.Caution {
	switch kind {
	case schedule.Feed, schedule.Ripen:
		if m.Day.Levain != nil {
			return m.Day.Levain.Ripeness.Cautions()
		}
	case schedule.Mix:
		return m.Day.Water.Fit.Cautions
	case schedule.Bulk, schedule.Proof, schedule.Shape:
		return m.Day.Rising.Bulk.Cautions()
	case schedule.Preheat, schedule.Bake, schedule.Tend:
		return bake.OvenCautions()
	case schedule.Cool:
		return bake.FoodCautions()
	}
	return nil
}
