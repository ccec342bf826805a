package bakeday

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// midday is a day in the middle of which something happens.
type midday struct {
	first     schedule.Timetable // as it was planned
	timetable schedule.Timetable // as it is, after what happened so far
	problem   schedule.Problem
	wanted    time.Time // the first bread
}

// begun is a step that begins at another time than planned: at that moment, or, where somebody has seen that its dough
// will be ready then, as soon as there are hands.
type begun struct {
	step schedule.Timed
	at   time.Time
	seen time.Time // zero: it begins at that moment
	// ended is when it was done; zero: it takes what is planned
	ended time.Time
}

// when is the moment from which on the day is planned again.
func (b begun) when() time.Time {
	switch {
	case !b.ended.IsZero():
		return b.ended
	case b.seen.IsZero():
		return b.at
	}
	return b.seen
}

func beginning(step schedule.Timed, l Late) begun {
	b := begun{step: step, at: step.Start.Add(l.By.Duration().Truncate(time.Minute))}
	if !l.Seen.IsZero() {
		if b.seen = l.Seen.Truncate(time.Minute); b.seen.Before(l.Seen) {
			b.seen = b.seen.Add(time.Minute)
		}
	}
	if !l.Ended.IsZero() {
		b.ended = l.Ended.Truncate(time.Minute)
	}
	return b
}

// after plans the rest of a day again after steps began early or late: one after the other in order of time, each on
// the plan that the one before left.
func (d midday) after(ctx context.Context, all []begun) (Replanned, error) {
	slices.SortStableFunc(all, func(a, b begun) int { return a.when().Compare(b.when()) })
	out := Replanned{before: d.timetable, Wanted: d.wanted, begun: all}
	day := d
	day.first = d.timetable
	day.problem = d.readyThen(all)
	day = day.foldedAnew(all)
	for i, b := range all {
		r, err := day.replan(ctx, b, all[i+1:])
		if err != nil {
			return Replanned{}, err
		}
		out.Late, out.Now, out.Timetable = r.Late, r.Now, r.Timetable
		out.Moved += r.Moved
		if out.Why == nil {
			out.Why = r.Why
		}
		if !r.Possible() {
			break
		}
		day.timetable, day.problem = r.Timetable, day.moved(r.Moved)
	}
	out.Wanted = d.wanted.Add(out.Moved.Duration())
	if out.Possible() {
		out.Changes = schedule.Changes(d.timetable, out.Timetable)
	}
	return out, nil
}

// replan plans the rest of a day again after a step began early or late. Of others it is known that they will, later
// on: until then they have not begun.
func (d midday) replan(ctx context.Context, b begun, others []begun) (Replanned, error) {
	r := Replanned{Late: b.step.Label, Now: b.when()}
	at, ok := d.timetable.Step(b.step.ID)
	if !ok || r.Now.Before(d.problem.Anchor) || b.at.Before(d.problem.Anchor) {
		var p quantity.Problems
		p.Add("By", quantity.Elapsed(b.at.Sub(b.step.Start)),
			quantity.Tell("bakeday.want_beginning_after_clock_plan", "a beginning after the clock of the plan"),
			quantity.ErrOutOfRange)
		return Replanned{}, p.ErrFor(nil)
	}
	var done []schedule.Done
	if b.seen.IsZero() {
		done = d.doneBefore(&at, b, others)
	} else {
		others = append(slices.Clone(others), b)
		done = d.doneBefore(nil, b, others)
	}
	for range 3 {
		problem, err := stillHot(d.moved(r.Moved), done).Midway(schedule.Midway{Now: r.Now, Done: done})
		if err != nil {
			return Replanned{}, fmt.Errorf("timetable: %w", err)
		}
		problem = d.keeping(ctx, d.giving(ctx, problem), r.Moved, done, append(slices.Clone(others), b))
		if r.Timetable, err = d.nearest(ctx, problem, r.Moved); err != nil {
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
	return r, nil
}

// keeping is the problem in which what need not move stays where it is: each bread as a whole, first those that are
// not early or late themselves; or, where that cannot be, its time in the oven, its mixing, and its folds as long after
// mixing, or after the fold before, as planned.
func (d midday) keeping(ctx context.Context, p schedule.Problem, by quantity.Elapsed, done []schedule.Done,
	moved []begun) schedule.Problem {
	var breads []string
	for _, s := range d.timetable.Steps {
		if !slices.Contains(breads, s.Bread) {
			breads = append(breads, s.Bread)
		}
	}
	if ok, err := p.Possible(ctx); !ok || err != nil {
		return p
	}
	keep := func(bread string, later time.Duration, these func(schedule.Timed) bool) bool {
		for _, give := range foldGives {
			kept := p
			kept.Bounds = slices.Clone(p.Bounds)
			for _, s := range d.timetable.Steps {
				begins := slices.ContainsFunc(done, func(e schedule.Done) bool { return e.Step == s.ID })
				if s.Bread != bread || s.Spare || begins || !these(s) {
					continue
				}
				bound := schedule.Bound{Step: s.ID, Earliest: s.Start.Add(by.Duration()), Latest: s.Start.Add(by.Duration())}
				if s.Kind == schedule.Fold {
					bound.Earliest = bound.Earliest.Add(later - give.Duration())
					bound.Latest = bound.Latest.Add(later + give.Duration())
				}
				kept.Bounds = append(kept.Bounds, bound)
			}
			if ok, err := kept.Possible(ctx); ok && err == nil {
				p = kept
				return true
			}
		}
		return false
	}
	all := func(schedule.Timed) bool { return true }
	oven := func(s schedule.Timed) bool { return s.Kind == schedule.Preheat || s.Kind == schedule.Bake }
	mixes := func(s schedule.Timed) bool { return s.Kind == schedule.Mix }
	folds := func(s schedule.Timed) bool { return s.Kind == schedule.Fold }
	late := func(bread string) int {
		if slices.ContainsFunc(moved, func(b begun) bool { return b.step.Bread == bread }) {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(breads, func(a, b string) int { return late(a) - late(b) })
	for _, bread := range breads {
		later := d.later(bread, done)
		if keep(bread, later, all) {
			continue
		}
		keep(bread, 0, oven)
		keep(bread, 0, mixes)
		if spaced, ok := d.spaced(ctx, p, bread, done); ok {
			p = spaced
		} else if !keep(bread, later, folds) && later != 0 {
			keep(bread, 0, folds)
		}
	}
	return p
}

// nearest is the timetable of a problem that is nearer to what was planned: that in which all is done as late as it can
// be, or as soon.
func (d midday) nearest(ctx context.Context, p schedule.Problem, moved quantity.Elapsed) (schedule.Timetable, error) {
	last, err := p.Latest(ctx)
	if err != nil || len(last.Steps) == 0 {
		return last, err
	}
	first, err := p.Earliest(ctx)
	if err != nil || len(first.Steps) == 0 {
		return last, err
	}
	if d.off(first, moved) < d.off(last, moved) {
		return first, nil
	}
	return last, nil
}

// off is how far the steps that somebody has to do are from where they were planned, together.
func (d midday) off(t schedule.Timetable, moved quantity.Elapsed) time.Duration {
	var sum time.Duration
	for _, s := range t.Steps {
		was, ok := d.timetable.Step(s.ID)
		if by := s.Start.Sub(was.Start.Add(moved.Duration())); ok && !s.Spare && s.Kind.Hands() {
			sum += max(by, -by)
		}
	}
	return sum
}

// readyThen is the problem in which a dough that is known to be ready early or late takes as long as that.
func (d midday) readyThen(all []begun) schedule.Problem {
	p := d.problem
	p.Steps = slices.Clone(p.Steps)
	for _, b := range all {
		for i := range p.Steps {
			s := &p.Steps[i]
			bulk, ok := d.timetable.Step(s.ID)
			if !ok || !s.Living || s.Bread != b.step.Bread || !bulk.End.Equal(b.step.Start) {
				continue
			}
			start := bulk.Start
			if k := slices.IndexFunc(all, func(o begun) bool { return o.step.ID == s.ID }); k >= 0 {
				start = all[k].at
			}
			if takes := quantity.Elapsed(b.at.Sub(start)); takes > 0 {
				s.Min, s.Likely, s.Max = min(s.Min, takes), takes, max(s.Max, takes)
			}
		}
	}
	return p
}

// gives are how far a dough may be shaped, or loaded, from when it is likely ready where several doughs would be ready
// at once. Judgment: of the last one an eye at the dough is needed, and its range is mostly wider.
var gives = [...]quantity.Elapsed{
	quantity.Elapsed(5 * time.Minute), quantity.Elapsed(10 * time.Minute), quantity.Elapsed(15 * time.Minute),
	quantity.Elapsed(20 * time.Minute), quantity.Elapsed(30 * time.Minute), quantity.Elapsed(45 * time.Minute),
}

// giving is the problem itself, or, where several doughs cannot all be taken when they are likely ready, the one in
// which they wait or come early by the least that helps.
func (d midday) giving(ctx context.Context, p schedule.Problem) schedule.Problem {
	several := slices.ContainsFunc(p.Steps, func(s schedule.DayStep) bool { return s.Bread != p.Steps[0].Bread })
	if !several {
		return p
	}
	if ok, err := p.Possible(ctx); ok || err != nil {
		return p
	}
	for _, give := range gives {
		q := p
		q.Steps = slices.Clone(p.Steps)
		for i := range q.Steps {
			if s := &q.Steps[i]; s.Living {
				likely := s.Likely
				s.Living, s.Watch, s.Likely = false, "", 0
				s.Min, s.Max = max(s.Min, likely-give), min(s.Max, likely+give)
			}
		}
		if ok, err := q.Possible(ctx); !ok && err == nil {
			continue
		}
		for i := range q.Steps { // those that need not wait do not
			one := q
			one.Steps = slices.Clone(q.Steps)
			if one.Steps[i] = p.Steps[i]; !p.Steps[i].Living {
				continue
			}
			if ok, err := one.Possible(ctx); ok && err == nil {
				q = one
			}
		}
		return q
	}
	return p
}

// doneBefore lists what has happened when the step begins: what was planned before it, and of other breads what was
// planned up to now and does not wait for it, or for one that is to begin after it. What is under way before such a one
// goes on.
func (d midday) doneBefore(at *schedule.Timed, b begun, others []begun) []schedule.Done {
	now := b.when()
	var done []schedule.Done
	waits := map[string]bool{}
	for _, o := range others {
		maps.Copy(waits, d.waitFor(o.step.ID))
	}
	if at != nil {
		done = append(done, schedule.Done{Step: at.ID, Start: b.at, End: b.ended})
		maps.Copy(waits, d.waitFor(at.ID))
	}
	for _, s := range d.timetable.Steps {
		own := at != nil && s.Bread == at.Bread
		if s.Spare || waits[s.ID] || s.Start.After(now) ||
			own && !s.Start.Before(at.Start) && s.Kind != schedule.Preheat {
			continue
		}
		e := schedule.Done{Step: s.ID, Start: s.Start, End: s.End}
		// What follows it has begun, so it is over: what stretches lasted until then, and hands were no slower.
		if own && s.End.Equal(at.Start) && (!s.Kind.Hands() || b.at.Before(s.End)) {
			e.End = b.at
		}
		for _, o := range others {
			next, ok := d.timetable.Step(o.step.ID)
			if ok && !s.Kind.Hands() && s.Bread == o.step.Bread && s.End.Equal(next.Start) {
				e.End = time.Time{}
			}
		}
		if e.End.After(now) || e.End.Before(e.Start) {
			e.End = time.Time{}
		}
		done = append(done, e)
	}
	return done
}

// stillHot is the problem in which an oven that heats already may stay hot for as long as it has to: nobody turns it
// off and on again because a dough is late.
func stillHot(p schedule.Problem, done []schedule.Done) schedule.Problem {
	p.Steps = slices.Clone(p.Steps)
	for _, e := range done {
		for i := range p.Steps {
			if s := &p.Steps[i]; s.ID == e.Step && s.Kind == schedule.Preheat && e.End.IsZero() {
				s.Max = schedule.NoLimit
			}
		}
	}
	return p
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
