package bench

import (
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

func (m DayNow) done(s bakeday.StepData) bool {
	_, done := m.Done[s.ID]
	return done
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

// StepDue is the step that needed hands last and was not ticked off; ok is false before the first.
func (m DayNow) StepDue() (due bakeday.StepData, ok bool) {
	for _, s := range m.Steps {
		if !m.done(s) && s.Hands && !s.Start.After(m.Now) {
			due, ok = s, true
		}
	}
	return due, ok
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
