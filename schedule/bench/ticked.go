package bench

import (
	"slices"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// tick takes in what was ticked off, in order of time. A step that can hardly be over by then is questioned, and stays
// undone.
func (m *DayNow) tick(seen Observations) {
	doubted := map[int]bool{}
	for _, d := range m.Doubts {
		doubted[d.Index] = true
	}
	for i, o := range seen {
		if o.Kind != SawStep || o.Bread != m.Name || doubted[i] {
			continue
		}
		step, planned := m.Step(o.Step)
		if soonest, ok := m.soonestOver(step, seen.Until(o.At)); planned && ok && !o.Sure && o.At.Before(soonest) {
			m.Doubts = append(m.Doubts, Doubt{i, o, working.Tell("bench.doubt_step", "%v can hardly be over before %v: "+
				"was another step meant, or did the dough or the loaf begin earlier than was said?", step.Name, soonest)})
			continue
		}
		m.Done[o.Step] = o.At
	}
	m.Doubts = slices.DeleteFunc(m.Doubts, func(d Doubt) bool { // it has been done since
		step, planned := m.Step(d.Observation.Step)
		return planned && m.done(step)
	})
	slices.SortStableFunc(m.Doubts, func(a, b Doubt) int { return a.Index - b.Index })
}

// soonestOver is when a step could be over at best, where a dough has to rise or a loaf to bake before it is. Hands may
// be quicker than planned, and what ferments before the mixing may have been begun earlier; a dough rises no faster
// than the liveliest, and a loaf needs its heat. It counts from what is known of the dough: from its mixing, as
// observed, ticked off or planned, and from the steps that were ticked off since. Of a plan that was first heard of
// with the tick itself nothing is known.
func (m *DayNow) soonestOver(step bakeday.StepData, seen Observations) (at time.Time, ok bool) {
	bulk, hasBulk := m.Step(stepBulk)
	last := seen[len(seen)-1].At
	if m.Followed == nil || !m.Followed.Made.Before(last.Add(-time.Minute)) || !hasBulk ||
		step.ID != stepBulk && step.Start.Before(bulk.End) {
		return at, false
	}
	at = m.mixedBy(seen, bulk.Start)
	if m.Day.Rising.Bulk.Reached() {
		at = at.Add(hurried(m.Day.Rising.Bulk.Ready().Early))
	}
	for _, o := range seen {
		if o.Kind == SawReady && o.whole() && (o.Bread == m.Name || o.Bread == "") {
			at = o.At
		}
	}
	for _, s := range m.Steps {
		ticked, done := m.Done[s.ID]
		switch {
		case done && !s.Start.Before(bulk.Start) && s.Kind != schedule.Fold:
			at = ticked
		case s.Kind == schedule.Bake && (s.ID == step.ID || !s.End.After(step.Start)):
			at = at.Add(hurried(s.Takes.Duration()))
		}
	}
	return at.Round(time.Minute), true
}

// mixedBy is when the dough was mixed: as it was logged, as it was ticked off, or as planned.
func (m *DayNow) mixedBy(seen Observations, planned time.Time) time.Time {
	at := planned
	if ticked, ok := m.lastMixed(); ok {
		at = ticked
	}
	for _, o := range seen {
		if o.Kind == SawMixed && o.whole() && o.Bread == m.Name {
			at = o.At
		}
	}
	return at
}

// hurried is less time than that takes at best.
func hurried(d time.Duration) time.Duration { return time.Duration(fastest * float64(d)) }
