package schedule

import (
	"fmt"
	"strings"

	"example.org/maslin/dough/quantity"
)

// String names the verdict.
func (v Verdict) String() string {
	switch v {
	case Optimal:
		return "optimal"
	case Feasible:
		return "feasible"
	case Infeasible:
		return "infeasible"
	case Unknown:
		return "unknown"
	default:
		return fmt.Sprintf("Verdict(%d)", int(v))
	}
}

// String names the kind of link.
func (k Kind) String() string {
	switch k {
	case EndToStart:
		return "end to start"
	case StartToStart:
		return "start to start"
	case EndToEnd:
		return "end to end"
	case StartToEnd:
		return "start to end"
	default:
		return fmt.Sprintf("Kind(%d)", int(k))
	}
}

// String names the edge.
func (e Edge) String() string {
	switch e {
	case Start:
		return "start"
	case End:
		return "end"
	default:
		return fmt.Sprintf("Edge(%d)", int(e))
	}
}

var ruleNames = [...]string{
	StepMin: "shortest duration", StepMax: "longest duration", LinkMin: "shortest time between", LinkMax: "longest time between",
	NotBefore: "not before", NotAfter: "not after", Absence: "absence", Capacity: "capacity", Limits: "limits of the plan",
	InOrder: "order of like steps", StepExact: "duration", LinkExact: "time between", FixedTime: "fixed time",
}

// String names the kind of rule.
func (r Rule) String() string {
	if r < 0 || int(r) >= len(ruleNames) {
		return fmt.Sprintf("Rule(%d)", int(r))
	}
	return ruleNames[r]
}

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
		fmt.Fprintf(&b, "%s to %s  %s  (start %s to %s, slack %s)", s.Start.Format("Mon 15:04"), s.End.Format("Mon 15:04"), s.Name,
			s.EarliestStart.Format("Mon 15:04"), s.LatestStart.Format("Mon 15:04"), quantity.FormatDuration(s.Slack))
		if s.Watch != nil {
			fmt.Fprintf(&b, "; look at it from %s to %s", s.Watch.From.Format("Mon 15:04"), s.Watch.To.Format("Mon 15:04"))
		}
	}
	if t.Verdict == Feasible {
		fmt.Fprintf(&b, "\nnot proven best: costs %d, none costs less than %d", t.Cost, t.Bound)
	}
	return b.String()
}
