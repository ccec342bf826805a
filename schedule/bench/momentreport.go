package bench

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// String is the headline.
func (m DayNow) String() string { return m.headline().String() }

func (m DayNow) headline() working.Message {
	if !m.Day.Possible() {
		return working.Tell("bench.not_possible", "%s, wanted %v: the plan does not fit", m.Name, m.Wanted)
	}
	return working.Tell("bench.now", "%v; it is %x", m.wanted(m.Now), m.Now)
}

// wanted says when the bread is wanted: by its weekday within the week, and after that by its date.
func (m DayNow) wanted(now time.Time) working.Message {
	if m.Wanted.Sub(now) > 6*24*time.Hour {
		return working.Tell("bench.wanted_on", "%s, wanted %x", m.Name, m.Wanted)
	}
	return working.Tell("bench.wanted", "%s, wanted %v", m.Name, m.Wanted)
}

// Report tells what a baker needs at the bench, and no more.
func (m DayNow) Report() report.Report {
	return KitchenNow{Now: m.Now, Followed: m.Followed, Breads: []DayNow{m}, Changed: m.Changed}.Report()
}

func (m DayNow) doubts() []report.Block {
	var out []report.Block
	for _, d := range m.Doubts {
		out = append(out, report.Paragraph{
			Text: working.Tell("bench.doubted", "%v: %v Until it is confirmed it changes nothing.",
				d.Observation.At.In(m.Now.Location()), d.Says),
			Tone: report.Warning,
		})
	}
	return out
}

// dough says when the dough is ready, by what is known of it now.
func (m DayNow) dough() []report.Block {
	_, shaped := m.Done[m.afterBulk()]
	if m.Progress == nil || shaped {
		return nil
	}
	for _, s := range m.Steps {
		if s.ID == m.afterBulk() && m.Now.After(s.End) {
			return nil // nobody said otherwise: it was shaped, or put into the cold, as planned
		}
	}
	if at, said := m.saidReady(); said {
		return []report.Block{report.Say(working.Tell("bench.ready_at", "ready at %t, risen by %.0f", at,
			m.Dough.Ready.Ready.Rise))}
	}
	if _, ticked := m.Done[stepBulk]; ticked {
		return nil
	}
	e := m.Progress.Now
	var out []report.Block
	says := working.Tell("bench.ready", "risen by %.0f: %v after mixing", e.Bulk().Rise, e.Ready())
	if last, seen := m.lastRise(); seen {
		out = append(
			out,
			report.Say(working.Tell("bench.seen", "risen by %.0f at %t", last.Rise.Rise, last.At.In(m.Now.Location()))),
		)
		says = working.Tell("bench.ready_now", "risen by %.0f, %v after mixing", e.Bulk().Rise, m.Progress.Message())
	}
	at := func(d time.Duration) time.Time { return onTheMinute(m.Mixed, d) }
	ready := e.Ready()
	out = append(
		out,
		report.Say(says),
		report.Say(
			working.Tell("bench.by_clock", "by the clock: %v to %v, likely %v", at(ready.Early), at(ready.Late),
				at(ready.Likely)),
		),
	)
	band, err := e.RiseAt(m.Now.Sub(m.Mixed))
	switch {
	case err != nil || !m.Now.After(m.Mixed) || band.Likely.Points() < 1:
	case len(e.Readings()) > 0:
		out = append(out, report.Say(working.Tell("bench.should_be_read",
			"now it should be at %.0f to %.0f, likely %.0f, by "+
				"what was read, which may be some points off, and by the pace of such doughs", band.Low, band.High, band.Likely)))
	default:
		out = append(out, report.Say(working.Tell("bench.should_be", "now it should be at %.0f to %.0f, likely %.0f",
			band.Low, band.High, band.Likely)))
	}
	return out
}

// lastRise is the last that was read of the rise.
func (m DayNow) lastRise() (Observation, bool) {
	if m.Dough == nil || len(m.Dough.Rises) == 0 {
		return Observation{}, false
	}
	last := m.Dough.Rises[len(m.Dough.Rises)-1]
	return last, last.Rise != nil
}

func (m DayNow) hazards(kind schedule.StepKind) []working.Caution {
	switch kind {
	case schedule.Feed, schedule.Ripen:
		if m.Day.Levain != nil {
			return m.Day.Levain.Ripeness.Cautions()
		}
	case schedule.Mix:
		return m.Day.Water.Fit.Cautions
	case schedule.Bulk, schedule.Proof, schedule.Chill, schedule.Shape:
		return m.Day.Rising.Bulk.Cautions()
	case schedule.Preheat, schedule.Bake, schedule.Tend:
		return bake.OvenCautions()
	case schedule.Cool:
		return bake.FoodCautions()
	}
	return nil
}
