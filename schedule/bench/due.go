package bench

import (
	"slices"
	"time"

	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// Step is the step with the ID, as it is planned now.
func (m DayNow) Step(id string) (bakeday.StepData, bool) {
	for _, s := range m.Steps {
		if s.ID == id {
			return s, true
		}
	}
	return bakeday.StepData{}, false
}

// done reports whether a step is over because somebody said so: it was ticked off, or what comes after it was, or the
// dough that it makes was mixed, or was said to be ready.
func (m DayNow) done(s bakeday.StepData) bool {
	if _, ticked := m.Done[s.ID]; ticked {
		return true
	}
	if m.bulkOver() && (s.ID == stepBulk || s.Kind == schedule.Fold || s.Kind == schedule.Laminate) {
		return true
	}
	if bulk, ok := m.Step(stepBulk); ok && m.Dough != nil && !m.Dough.Mix.Dough.IsZero() && !s.End.After(bulk.Start) {
		return true
	}
	return slices.ContainsFunc(m.Steps, func(o bakeday.StepData) bool {
		_, ticked := m.Done[o.ID]
		return ticked && !o.Start.Before(s.End)
	})
}

// bulkOver reports whether somebody said that the dough is ready, or shaped.
func (m DayNow) bulkOver() bool {
	_, ready := m.saidReady()
	_, ticked := m.Done[stepBulk]
	_, shaped := m.Done[m.afterBulk()]
	return ready || ticked || shaped
}

// afterBulk is the step that ends the bulk: the dough is shaped, or put into the cold as it is.
func (m DayNow) afterBulk() string {
	if _, chilled := m.Step(stepChill); chilled {
		return stepChill
	}
	return stepShape
}

// UnderWay lists what is going on; what needs hands and is over counts as done.
func (m DayNow) UnderWay() []bakeday.StepData {
	var out []bakeday.StepData
	for _, s := range m.Steps {
		if !m.done(s) && !s.Start.After(m.Now) && s.End.After(m.Now) {
			out = append(out, s)
		}
	}
	return out
}

// StepsDue lists the steps that may be meant by "it is done": the one that needed hands, is over by the plan and was
// not ticked off; where there is none, or more than one, also the one that needs hands now. None: nothing was due
// yet; several: it has to be asked which.
// Of folds left behind only the last is asked for, since nothing else waits for them; and a bread that has not been in
// the oven for half of its time is not done.
func (m DayNow) StepsDue() []bakeday.StepData { return due(m.Steps, m.done, m.Now) }

func due(steps []bakeday.StepData, done func(bakeday.StepData) bool, now time.Time) []bakeday.StepData {
	var over, begun []bakeday.StepData
	for _, s := range steps {
		switch {
		case done(s) || !s.Hands || s.Start.After(now):
		case s.Kind == schedule.Bake && now.Sub(s.Start) < s.End.Sub(s.Start)/2:
		case s.End.After(now.Add(enough)):
			begun = append(begun, s)
		default:
			if n := len(over); n > 0 && s.Kind == schedule.Fold && over[n-1].Kind == schedule.Fold {
				over = over[:n-1]
			}
			over = append(over, s)
		}
	}
	if len(over) != 1 && len(begun) > 0 { // of one that is over and one that has just begun, the first is done
		return append(over, begun[0])
	}
	return over
}

// Next is the step that needs hands now or next, or the oven that has to be switched on. A bake that is in the oven
// needs none before it is tended or done.
func (m DayNow) Next() (bakeday.StepData, bool) {
	for _, s := range m.Steps {
		if s.Kind == schedule.Bake && !s.Start.After(m.Now) {
			continue
		}
		switchOn := s.Kind == schedule.Preheat && s.Start.After(m.Now) // the oven heats by itself, once it is on
		if !m.done(s) && (s.Hands && s.End.After(m.Now) || switchOn) {
			return s, true
		}
	}
	return bakeday.StepData{}, false
}

// Later lists at most so many steps that come after the next one.
func (m DayNow) Later(most int) []bakeday.StepData {
	next, ok := m.Next()
	var out []bakeday.StepData
	for _, s := range m.Steps {
		if len(out) == most {
			break
		}
		if !m.done(s) && s.Start.After(m.Now) && (!ok || s.ID != next.ID) {
			out = append(out, s)
		}
	}
	return out
}
