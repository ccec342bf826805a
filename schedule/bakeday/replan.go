package bakeday

import (
	"context"
	"fmt"
	"slices"
	"strings"
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
}

// Replanned is the rest of a day after something happened.
type Replanned struct {
	Late      schedule.Label     `json:"late"` // the step that is late
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
}

// Replan answers: this step begins late (or early); what now?
//
// What came before stands as planned, the steps that may stretch up to it (bulk, retard, a ripening
// levain) having lasted until it begins; the rest is planned again, latest first. When the wanted time
// can no longer be kept it moves to the nearest later one that works. Errors: ErrInconsistent when no step,
// or more than one, has the name; ErrOutOfRange for more than 48 hours or a beginning before the
// clock of the plan; a day without a timetable.
func (d Day) Replan(ctx context.Context, late Late) (Replanned, error) {
	if !d.Possible() {
		return Replanned{}, &quantity.InputError{
			GoPath: "Day",
			Got:    quantity.Tell("bakeday.got_day_without_timetable", "a day without a timetable"),
			Want:   quantity.Tell("bakeday.want_day_can_be_baked", "a day that can be baked"),
			Err:    quantity.ErrInconsistent,
		}
	}
	var p quantity.Problems
	p.Duration("By", late.By.Duration(), -48*time.Hour, 48*time.Hour)
	at, err := d.StepNamed(late.Step)
	p.Join("Step", err)
	if err := p.Err(); err != nil {
		return Replanned{}, err
	}
	m := midday{timetable: d.Timetable, problem: d.problem, wanted: d.Wanted}
	r, err := m.replan(ctx, at, late.By)
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

// midday is a day in the middle of which something happens.
type midday struct {
	timetable schedule.Timetable
	problem   schedule.Problem
	wanted    time.Time // the first bread
}

// replan plans the rest of a day again after a step began early or late.
func (d midday) replan(ctx context.Context, at schedule.Timed, by quantity.Elapsed) (Replanned, error) {
	r := Replanned{
		before: d.timetable,
		Late:   at.Label,
		Now:    at.Start.Add(by.Duration().Truncate(time.Minute)),
		Wanted: d.wanted,
	}
	if r.Now.Before(d.problem.Anchor) {
		var p quantity.Problems
		p.Add("By", by, quantity.Tell("bakeday.want_beginning_after_clock_plan", "a beginning after the clock of the plan"),
			quantity.ErrOutOfRange)
		return Replanned{}, p.Err()
	}
	done := d.doneBefore(at, r.Now)
	for range 3 {
		problem, err := d.moved(r.Moved).Midway(schedule.Midway{Now: r.Now, Done: done})
		if err != nil {
			return Replanned{}, fmt.Errorf("timetable: %w", err)
		}
		if others := d.asPlanned(problem, at, r.Moved, done); len(others.Bounds) > len(problem.Bounds) {
			if ok, err := others.Possible(ctx); err == nil && ok {
				problem = others
			}
		}
		if r.Timetable, err = problem.Latest(ctx); err != nil {
			return Replanned{}, fmt.Errorf("timetable: %w", err)
		}
		if len(r.Timetable.Steps) > 0 {
			break
		}
		if r.Why == nil {
			r.Why = r.Timetable.Conflict
		}
		if r.Timetable.After == nil {
			break
		}
		r.Moved += r.Timetable.After.By
	}
	r.Wanted = d.wanted.Add(r.Moved.Duration())
	if r.Possible() {
		r.Changes = schedule.Changes(d.timetable, r.Timetable)
	}
	return r, nil
}

// asPlanned is the problem in which the other breads stay where they are, those apart that have begun.
func (d midday) asPlanned(p schedule.Problem, at schedule.Timed, moved quantity.Elapsed,
	done []schedule.Done) schedule.Problem {
	p.Bounds = slices.Clone(p.Bounds)
	for _, s := range d.timetable.Steps {
		begun := slices.ContainsFunc(done, func(e schedule.Done) bool { return e.Step == s.ID })
		if s.Bread == at.Bread || s.Spare || begun {
			continue
		}
		start := s.Start.Add(moved.Duration())
		p.Bounds = append(p.Bounds, schedule.Bound{Step: s.ID, Edge: schedule.Start, Earliest: start, Latest: start})
	}
	return p
}

// doneBefore lists what has happened when the step begins: what was planned before it, and of other breads what was
// planned up to now and does not wait for it.
func (d midday) doneBefore(at schedule.Timed, now time.Time) []schedule.Done {
	done := []schedule.Done{{Step: at.ID, Start: now}}
	waits := d.waitFor(at.ID)
	for _, s := range d.timetable.Steps {
		other := s.Bread != at.Bread && !s.Start.After(now) && !waits[s.ID]
		if s.Spare || s.ID == at.ID || !s.Start.Before(at.Start) && !other || s.Start.After(now) {
			continue
		}
		e := schedule.Done{Step: s.ID, Start: s.Start, End: s.End}
		if !s.Kind.Hands() && s.End.Equal(at.Start) && s.Bread == at.Bread {
			e.End = now
		}
		if e.End.After(now) || e.End.Before(e.Start) {
			e.End = time.Time{}
		}
		done = append(done, e)
	}
	return done
}

// waitFor are the steps that come after a step by the links.
func (d midday) waitFor(id string) map[string]bool {
	waits := map[string]bool{id: true}
	for range d.problem.Steps {
		grown := false
		for _, l := range d.problem.Links {
			if waits[l.From] && !waits[l.To] && l.Min >= 0 {
				waits[l.To], grown = true, true
			}
		}
		if !grown {
			break
		}
	}
	return waits
}

// moved is the problem, without the room for a dough that is early or late, with everything wanted so much later.
func (d midday) moved(by quantity.Elapsed) schedule.Problem {
	p := d.problem
	p.Bounds = append([]schedule.Bound(nil), p.Bounds...)
	for i := range p.Bounds {
		if b := &p.Bounds[i]; b.Wanted {
			b.Earliest, b.Latest = b.Earliest.Add(by.Duration()), b.Latest.Add(by.Duration())
		}
	}
	return p
}

// riseNow compares the rise at shaping with what the rest that is left allows.
func (d Day) riseNow(r *Replanned) error {
	bulk, ok := d.Timetable.Step(idBulk)
	shape, shaped := r.Timetable.Step(idShape)
	retard, cold := r.Timetable.Step(idRetard)
	if !ok || !shaped || !cold || r.Late.ID != idShape {
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

// String says what changes, in a few words: "divide and shape begins 40m late: cold retard 40m
// shorter".
func (r Replanned) String() string {
	var b strings.Builder
	if len(r.Timetable.Steps) == 0 {
		return "nothing fits any more: " + r.Timetable.Conflict.String()
	}
	if r.Moved > 0 {
		fmt.Fprintf(&b, "the bread is ready %v later, at %s", r.Moved, r.Wanted.Format("Mon 15:04"))
	}
	for _, c := range r.Changes {
		if b.Len() > 0 {
			b.WriteString("; ")
		}
		b.WriteString(c.String())
	}
	if b.Len() == 0 {
		return "nothing changes"
	}
	return b.String()
}
