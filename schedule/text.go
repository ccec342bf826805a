package schedule

import (
	"fmt"
	"strings"
)

// String prints the timetable in order of time, one step a line: when it starts and ends, the
// earliest and latest start and the slack; or why there is none.
func (t Timetable) String() string {
	var b strings.Builder
	switch t.Verdict {
	case Infeasible:
		fmt.Fprintf(&b, "no timetable: %v", t.Conflict)
		if t.Before != nil {
			fmt.Fprintf(&b, "\nwould work: %v", t.Before)
		}
		if t.After != nil {
			fmt.Fprintf(&b, "\nwould work: %v", t.After)
		}
		return b.String()
	case Unknown:
		return "no timetable found in the time given; whether there is one is not known"
	}
	for i, k := range t.ByTime() {
		s := t.Steps[k]
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s to %s  %v  (start %s to %s, slack %s)", s.Start.Format("Mon 15:04"), s.End.Format("Mon 15:04"), s.Title(),
			s.EarliestStart.Format("Mon 15:04"), s.LatestStart.Format("Mon 15:04"), s.Slack)
		if s.Watch != nil {
			fmt.Fprintf(&b, "; look at it from %s to %s", s.Watch.From.Format("Mon 15:04"), s.Watch.To.Format("Mon 15:04"))
		}
	}
	if t.Verdict == Feasible {
		fmt.Fprintf(&b, "\nnot proven best: costs %d, none costs less than %d", t.Cost, t.Bound)
	}
	return b.String()
}
