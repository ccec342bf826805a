package bench

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// late lists what begins at another time than planned, by what was done and seen of this bread, in order of time.
func (m DayNow) late() []bakeday.Late {
	var out []bakeday.Late
	moved := time.Duration(0) // by what came before
	for _, b := range m.beginnings() {
		by := b.at.Sub(b.step.Start).Truncate(time.Minute)
		if off := by - moved; off < enough && off > -enough {
			continue
		}
		moved = by
		l := bakeday.Late{Step: b.step.ID, By: quantity.Elapsed(by)}
		if b.ready {
			l.Seen = m.Now
		}
		out = append(out, l)
	}
	return out
}

// beginning is when a step of the plan really begins, or when its dough is ready for it.
type beginning struct {
	step  bakeday.StepData
	at    time.Time
	ready bool
}

// beginnings are the last things that tell when a step really begins: what was ticked off last, or the dough.
func (m DayNow) beginnings() []beginning {
	ticked, last := m.afterTicked()
	bulk, hasBulk := m.Step(stepBulk)
	shape, ok := m.Step(stepShape)
	if _, shaped := m.Done[shape.ID]; !ok || shaped || !hasBulk || m.Dough == nil {
		return ticked
	}
	seen := len(m.Dough.Rises) > 0
	mixed := !m.Dough.Mix.Dough.IsZero() && m.Mixed.After(last)
	var out []beginning
	if mixed {
		out = append(out, beginning{step: bulk, at: m.Mixed})
	}
	if m.Progress == nil || !seen && !mixed {
		return append(out, ticked...)
	}
	ready := m.Mixed.Add(m.Progress.Now.Ready().Likely)
	// A dough that is late waits for its baker, who looks at it; long after the range nobody is waiting any more.
	const over = time.Hour
	if seen && ready.Before(m.Now) && !m.Now.After(m.Mixed.Add(m.Progress.Now.Ready().Late+over)) {
		ready = m.Now
	}
	return append(out, beginning{shape, ready, true})
}

// afterTicked is the step that follows on the one that was ticked off last, and when that was.
func (m DayNow) afterTicked() (out []beginning, last time.Time) {
	for i, s := range m.Steps {
		done, ok := m.Done[s.ID]
		if !ok || !s.Hands || done.Before(last) || s.Kind == schedule.Fold || s.Kind == schedule.Tend {
			continue
		}
		for _, next := range m.Steps[i+1:] {
			if !next.Start.Before(s.End) && next.Kind != schedule.Preheat && next.Kind != schedule.Tend {
				last, out = done, []beginning{{step: next, at: done.Add(next.Start.Sub(s.End))}}
				break
			}
		}
	}
	return out, last
}
