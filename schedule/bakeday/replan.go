package bakeday

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
)

// Late says that a step begins later than planned.
type Late struct {
	// its ID, or its kind where the day has one such step: "shape"; see [Day.StepNamed]
	Step string           `json:"step"`
	By   quantity.Elapsed `json:"by"` // how much later than planned; negative is earlier
	// Seen is when it was seen that the dough will be ready so early or late: the step then begins as soon as there are
	// hands. Zero: it begins when By says.
	Seen time.Time `json:"seen,omitzero"`
	// Ended is when the step was done, however long it was to take; zero: it takes what is planned.
	Ended time.Time `json:"ended,omitzero"`
}

// Replanned is the rest of a day after something happened.
type Replanned struct {
	answer

	Late      schedule.Label     `json:"late"` // the step that is late; of several, the one that begins last
	Now       time.Time          `json:"now"`  // when it begins
	Timetable schedule.Timetable `json:"timetable"`
	Changes   []schedule.Change  `json:"changes"` // what is different from the plan before, in order of time
	// Wanted is when the bread, or the first one, is there; Moved is how much later than wanted that is, for all
	// breads.
	Wanted time.Time        `json:"wanted"`
	Moved  quantity.Elapsed `json:"moved"`
	// Why says why the wanted time had to move; nil when it did not.
	Why *schedule.Conflict `json:"why,omitempty"`
	// Risen is the rise likely to be there when the dough is shaped, and Allowed how far it may
	// have risen for the rest that is left; both are set when shaping is late or early.
	Risen   quantity.Percent `json:"risen,omitzero"`
	Allowed quantity.Percent `json:"allowed,omitzero"`

	zone *time.Location
	made bool
	// several breads have wanted times of their own, which stay, or move together.
	several bool
	rest    report.Grid // of the timetable
	// before is the timetable that was planned.
	before schedule.Timetable
	begun  []begun // everything that began early or late, in order of time
}

// Replan answers: this step begins late (or early), or several do; what now?
//
// What came before stands as planned, the steps that may stretch up to it (bulk, retard, a ripening
// levain) having lasted until it begins; the rest is planned again, latest first. When the wanted time
// can no longer be kept it moves to the nearest later one that works. Errors: ErrInconsistent when no step,
// or more than one, has the name, or one stands twice; ErrRequired for none; ErrOutOfRange for more than 48 hours or a
// beginning before the clock of the plan; a day without a timetable.
func (d Day) Replan(ctx context.Context, late ...Late) (Replanned, error) {
	all, err := beginnings(d.Possible(), d.StepNamed, late)
	if err != nil {
		return Replanned{}, err
	}
	m := midday{timetable: d.Timetable, problem: d.problem, wanted: d.Wanted}
	r, err := m.after(ctx, all)
	if err != nil {
		return Replanned{}, err
	}
	after := d
	after.Timetable, after.Wanted = r.Timetable, r.Wanted
	r.zone, r.made = d.Zone, d.made()
	if r.Possible() {
		r.rest = after.Data().from(r.Now).timetable()
	}
	return r, d.riseNow(&r)
}

// beginnings finds the steps that are late, and when they begin.
func beginnings(possible bool, named func(string) (schedule.Timed, error), late []Late) ([]begun, error) {
	if !possible {
		return nil, quantity.DataPaths(nil, &quantity.InputError{
			GoPath: "Day", Got: quantity.Tell("bakeday.got_day_without_timetable", "a day without a timetable"),
			Want: quantity.Tell("bakeday.want_day_can_be_baked", "a day that can be baked"), Err: quantity.ErrInconsistent,
		})
	}
	var p quantity.Problems
	var all []begun
	if len(late) == 0 {
		_, err := named("")
		p.Join("Step", err)
	}
	for i, l := range late {
		path := ""
		if len(late) > 1 {
			path = fmt.Sprintf("[%d].", i)
		}
		p.Duration(path+"By", l.By.Duration(), -48*time.Hour, 48*time.Hour)
		at, err := named(l.Step)
		p.Join(path+"Step", err)
		if slices.ContainsFunc(all, func(b begun) bool { return b.step.ID == at.ID && err == nil }) {
			p.Add(path+"Step", quantity.Excerpt(l.Step), quantity.Tell("bakeday.want_each_step_once", "each step once"),
				quantity.ErrInconsistent)
		}
		b := beginning(at, l)
		if !b.ended.IsZero() && b.ended.Before(b.at) {
			p.Add(path+"Ended", l.Ended.Format(time.RFC3339),
				quantity.Tell("bakeday.want_end_after_beginning", "not before it began"), quantity.ErrInconsistent)
		}
		all = append(all, b)
	}
	return all, p.ErrFor(nil)
}

// from is the data with only the steps that are not over.
func (s PlanData) from(now time.Time) PlanData {
	s.Steps = notOver(s.Steps, now)
	return s
}

func notOver(steps []StepData, now time.Time) []StepData {
	var rest []StepData
	for _, s := range steps {
		if s.End.After(now) {
			rest = append(rest, s)
		}
	}
	return rest
}

// riseNow compares the rise at shaping with what the rest that is left allows.
func (d Day) riseNow(r *Replanned) error {
	bulk, ok := r.Timetable.Step(idBulk)
	shape, shaped := r.Timetable.Step(d.Bake.afterBulk())
	retard, cold := r.Timetable.Step(idRetard)
	known := slices.ContainsFunc(r.begun, func(b begun) bool { return !b.seen.IsZero() }) // who looked knows better
	if !ok || !shaped || !cold || r.Late.ID != d.Bake.afterBulk() || known {
		return nil
	}
	after := shape.Start.Sub(bulk.Start)
	if after < 0 || after > 20*24*time.Hour {
		return nil
	}
	band, err := d.Rising.Bulk.RiseAt(after)
	if err != nil {
		return err
	}
	m := moments{mixed: bulk.Start, retard: retard.End.Sub(retard.Start), shaping: d.Bake.Shaping.Takes.Duration(),
		peaks: d.peaks()}
	again, err := d.Bake.rise(d.Batch, m, d.Zone)
	if err != nil {
		return err
	}
	r.Risen, r.Allowed = band.Likely, again.ShapeAt
	return nil
}

// String is the headline of the report.
func (r Replanned) String() string { return r.Report().Headline.String() }
