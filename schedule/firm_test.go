package schedule

import (
	"testing"
	"time"
)

// What nobody can change is in the conflict and offers no remedy; the remedies that are offered are at most five, come
// in the order of their size, and each makes the day possible.
func TestRemediesAreOfWhatCanBend(t *testing.T) {
	p := hall()
	p.Bounds[0].Latest = time.Date(2026, 3, 14, 6, 0, 0, 0, time.UTC)
	p.Firm = true
	for i := range p.Steps {
		p.Steps[i].MinFirm = p.Steps[i].ID != "retard"
		p.Steps[i].MaxFirm = p.Steps[i].MinFirm
	}
	tt := plan(t, p)
	if tt.Verdict != Infeasible {
		t.Fatal(tt)
	}
	firm := 0
	for _, m := range tt.Conflict.Members {
		i := -1
		for k := range p.Steps {
			if p.Steps[k].ID == m.Step {
				i = k
			}
		}
		ofStep := m.Rule == StepMin || m.Rule == StepMax || m.Rule == StepExact
		if ofStep && p.Steps[i].MinFirm || m.Rule == PlanStart || m.Rule == PlanEnd {
			firm++
			if m.Enough || m.Change != 0 || m.Easing != 0 {
				t.Errorf("%v offers %v", m.Words, m.Remedy)
			}
		}
	}
	remedies := tt.Conflict.Remedies()
	if firm == 0 || len(remedies) == 0 || len(remedies) > mostRemedies {
		t.Fatalf("%d firm rules, %d remedies: %v", firm, len(remedies), tt.Conflict)
	}
	for i, m := range remedies {
		if i > 0 && remedies[i-1].Change > m.Change {
			t.Errorf("%v comes after %v", m.Change, remedies[i-1].Change)
		}
		eased := p
		eased.Steps = append([]DayStep(nil), p.Steps...)
		eased.Bounds = append([]Bound(nil), p.Bounds...)
		eased.Resources = append([]Resource(nil), p.Resources...)
		switch {
		case m.Wanted && m.Easing == Later:
			eased.Bounds[0].Latest = p.Bounds[0].Latest.Add(m.Change.Duration())
		case m.Rule == StepMin && m.Easing == Shorter:
			eased.Steps[5].Min -= m.Change
		case m.Rule == Absence:
			closed := append([]Span(nil), p.Resources[0].Closed...)
			for k := range closed {
				if closed[k].Words != m.Words {
					continue
				}
				switch m.Easing {
				case Begins:
					closed[k].From = closed[k].From.Add(m.Change.Duration())
				case Ends:
					closed[k].To = closed[k].To.Add(-m.Change.Duration())
				case Dropped:
					closed[k].To = closed[k].From.Add(time.Nanosecond)
				}
			}
			eased.Resources[0].Closed = closed
		default:
			t.Errorf("%v by %v: %v", m.Rule, m.Easing, m.Words)
			continue
		}
		if again := plan(t, eased); again.Verdict != Optimal {
			t.Errorf("%v does not help: %v", m.Help(), again)
		}
	}
}
