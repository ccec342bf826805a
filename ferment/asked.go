package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// AskedDough is a dough and everything that is asked of it at once: when it is ready, by what was read of it, how far
// it may rise before the cold, and what would make it ready by a time.
type AskedDough struct {
	Bulk Bulk `json:"bulk"`
	// Readings are how far it had risen, in order of time.
	Readings []RiseReading `json:"readings,omitempty"`
	// Cold is what comes after shaping, without the Bulk and the Total, which are this dough's and its Rise; nil: it is
	// baked when it has risen.
	Cold *Proof `json:"cold,omitempty"`
	// ReadyBy is when it should be ready, from mixing; 0: not asked. Room is how it stands, for other temperatures of it.
	ReadyBy quantity.Elapsed `json:"ready_by,omitzero"`
	Room    Relaxing         `json:"room,omitzero"`
	// Mixed is when it was mixed, by the clock, where it is known.
	Mixed time.Time `json:"mixed,omitzero"`
}

// DoughAnswers are the answers of [AskedDough.Answer].
type DoughAnswers struct {
	Estimate Estimate     `json:"estimate"` // with the readings taken in, where there are some
	Seen     *Progress    `json:"seen,omitempty"`
	Shape    *ShapeTarget `json:"shape,omitempty"`
	Ways     *Ways        `json:"ready_by,omitempty"`
	Mixed    time.Time    `json:"mixed,omitzero"`
}

// Answer asks [Bulk.Estimate], and as far as they are asked [Estimate.Update], [Proof.RiseBeforeShaping], whose time is
// brought up to date with the readings too, and [Bulk.WaysTo]. Valid range, accuracy, errors and sources are theirs.
func (a AskedDough) Answer() (DoughAnswers, error) {
	out := DoughAnswers{Mixed: a.Mixed}
	var err error
	if out.Estimate, err = a.Bulk.Estimate(); err != nil {
		return out, quantity.At("Bulk", err)
	}
	if len(a.Readings) > 0 {
		seen, err := out.Estimate.Update(a.Readings...)
		if err != nil {
			return out, err
		}
		out.Estimate, out.Seen = seen.Now, &seen
	}
	if a.Cold != nil {
		cold := *a.Cold
		cold.Bulk, cold.Total = out.Estimate.Bulk(), a.Bulk.Rise
		target, err := cold.RiseBeforeShaping()
		if err == nil && target.Feasible && len(a.Readings) > 0 {
			var seen Progress
			seen, err = target.Shape.Update(a.Readings...)
			target.Shape = seen.Now
		}
		if out.Shape = &target; err != nil {
			return out, quantity.At("Cold", err)
		}
	}
	if a.ReadyBy != 0 {
		if err := a.wished(); err != nil {
			return out, err
		}
		ways, err := a.Bulk.WaysTo(a.ReadyBy.Duration(), a.Room)
		if out.Ways = &ways; err != nil {
			return out, err
		}
	}
	return out, nil
}

// wished checks the time wished for and how the dough stands, each at its place in the question.
func (a AskedDough) wished() error {
	var p problems
	p.Duration("ReadyBy", a.ReadyBy.Duration(), 10*time.Minute, Horizon)
	if a.Room != (Relaxing{}) && !a.Bulk.History.measured {
		_, err := a.Room.History()
		p.Join("Room", err)
	}
	return p.ErrFor(a)
}

// String is the headline of the report.
func (a DoughAnswers) String() string { return a.Report().Headline.String() }

// Report tells the target for shaping, or how the dough stands, or when it is ready; and then the ways to the time that
// was wished for.
func (a DoughAnswers) Report() report.Report {
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

// Workings derive the estimate that the dough is watched for, the rise at which to shape, and the amount for the time
// wished for.
func (a DoughAnswers) Workings() []working.Working {
	if a.Shape != nil {
		main := a.Estimate
		if a.Shape.Feasible {
			main = a.Shape.Shape
		}
		return []working.Working{main.Working(), a.Shape.Working()}
	}
	out := []working.Working{a.Estimate.Working()}
	if a.Ways != nil {
		if w := a.Ways.Amount.Working(); w.Len() > 0 {
			out = append(out, w)
		}
	}
	return out
}
