package bench

import (
	"slices"
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
		l := bakeday.Late{Step: b.step.ID, By: quantity.Elapsed(by), Ended: b.ended}
		if by.Abs() < enough { // as planned, though what came before was not
			l.By, l.Ended = 0, time.Time{}
		}
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
	ended time.Time // when it was done, where somebody said so
}

// beginnings tell when steps really begin, in order of time: what was ticked off began as long before as it takes, or
// when what came before it was done, and what follows it begins at once; the bulk began when the dough was mixed; and
// the dough is shaped when it was said to be ready, or else when its readings say that it will be.
func (m DayNow) beginnings() []beginning {
	var out []beginning
	known := map[string]bool{}
	add := func(b beginning) {
		if !known[b.step.ID] {
			known[b.step.ID], out = true, append(out, b)
		}
	}
	bulk, hasBulk := m.Step(stepBulk)
	mixed := hasBulk && m.Dough != nil && !m.Dough.Mix.Dough.IsZero()
	ended := m.ended()
	last := m.Day.Now
	for i, e := range ended {
		if e.step.Hands {
			start := e.at.Add(-e.step.Takes.Duration())
			if start.Before(last) {
				start = last
			}
			if !start.After(e.at) {
				add(beginning{step: e.step, at: start, ended: e.at})
			}
		}
		if last = e.at; e.step.ID == stepBulk {
			known[stepBulk] = true
		}
		next, ok := m.follows(e.step)
		if later := slices.ContainsFunc(ended[i+1:], func(o ending) bool { return o.step.ID == next.ID }); !ok || later {
			continue
		}
		if next.ID == stepBulk && mixed {
			continue
		}
		add(beginning{step: next, at: e.at.Add(next.Start.Sub(e.step.End))})
	}
	if mixed && !known[stepBulk] {
		add(beginning{step: bulk, at: m.Mixed})
	}
	if shape, ok := m.Step(m.afterBulk()); ok && hasBulk && !known[shape.ID] && !m.done(shape) {
		if at, ok := m.looksReady(mixed && m.Mixed.After(last)); ok {
			add(beginning{step: shape, at: at, ready: true})
		}
	}
	slices.SortStableFunc(out, func(a, b beginning) int { return a.at.Compare(b.at) })
	return out
}

// looksReady is when the dough will likely be ready, where it is known better than planned: by readings, or by how warm
// it left the mixer.
func (m DayNow) looksReady(mixed bool) (at time.Time, ok bool) {
	if m.Progress == nil || m.Dough == nil {
		return at, false
	}
	seen := len(m.Dough.Rises) > 0
	at = m.Mixed.Add(m.Progress.Now.Ready().Likely)
	// A dough that is late waits for its baker, who looks at it; long after the range nobody is waiting any more.
	const over = time.Hour
	if seen && at.Before(m.Now) && !m.Now.After(m.Mixed.Add(m.Progress.Now.Ready().Late+over)) {
		at = m.Now
	}
	return at, seen || mixed
}

// ending is when somebody said that a step was done.
type ending struct {
	step bakeday.StepData
	at   time.Time
}

// ended lists what was ticked off, in order of time; a dough that was said to be ready has ended its bulk. What is done
// to a dough or a loaf on the way moves nothing.
func (m DayNow) ended() []ending {
	var out []ending
	for _, s := range m.Steps {
		at, ok := m.Done[s.ID]
		if ready, said := m.saidReady(); s.ID == stepBulk && said && (!ok || ready.Before(at)) {
			at, ok = ready, true
		}
		if ok && (s.Hands || s.ID == stepBulk) && s.Kind != schedule.Fold && s.Kind != schedule.Tend {
			out = append(out, ending{s, at})
		}
	}
	slices.SortStableFunc(out, func(a, b ending) int { return a.at.Compare(b.at) })
	return out
}

// saidReady is when the baker said that the dough is ready.
func (m DayNow) saidReady() (time.Time, bool) {
	if m.Dough == nil || m.Dough.Ready == nil || m.Dough.Ready.Ready == nil {
		return time.Time{}, false
	}
	return m.Dough.Ready.At.In(m.Now.Location()), true
}

// follows is the step that follows on another.
func (m DayNow) follows(s bakeday.StepData) (bakeday.StepData, bool) {
	if s.ID == stepBulk {
		return m.Step(m.afterBulk())
	}
	at := slices.IndexFunc(m.Steps, func(o bakeday.StepData) bool { return o.ID == s.ID })
	for _, next := range m.Steps[at+1:] {
		if !next.Start.Before(s.End) && next.Kind != schedule.Preheat && next.Kind != schedule.Tend {
			return next, true
		}
	}
	return bakeday.StepData{}, false
}
