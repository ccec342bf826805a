package cli

import (
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// bulkAnswer is everything that was asked of a dough.
type bulkAnswer struct {
	Estimate ferment.Estimate     `json:"estimate"` // with the readings taken in, when there are some
	Seen     *ferment.Progress    `json:"seen,omitempty"`
	Shape    *ferment.ShapeTarget `json:"shape,omitempty"`
	Ways     *ferment.Ways        `json:"ready_by,omitempty"`
	Mixed    time.Time            `json:"mixed,omitzero"` // by the clock, when it is known
}

// main is the estimate that the dough is watched for.
func (a bulkAnswer) main() ferment.Estimate {
	if a.Shape != nil && a.Shape.Feasible && a.Shape.Shape.Reached() {
		return a.Shape.Shape
	}
	return a.Estimate
}

// Report puts the answers together.
func (a bulkAnswer) Report() report.Report {
	out := a.Estimate.ReportFrom(a.Mixed)
	switch {
	case a.Shape != nil:
		out = a.Shape.ReportFrom(a.Mixed)
	case a.Seen != nil:
		out = a.Seen.ReportFrom(a.Mixed)
	}
	if a.Ways != nil {
		out.Sections = append(out.Sections, a.Ways.ReportFrom(a.Mixed).Sections...)
	}
	return out
}

// Workings derive the estimate, the rise at which to shape, and the amount for the time wanted.
func (a bulkAnswer) Workings() []working.Working {
	if a.Shape != nil {
		return []working.Working{a.main().Working(), a.Shape.Working()}
	}
	out := []working.Working{a.Estimate.Working()}
	if a.Ways != nil {
		if w := a.Ways.Amount.Working(); w.Len() > 0 {
			out = append(out, w)
		}
	}
	return out
}
