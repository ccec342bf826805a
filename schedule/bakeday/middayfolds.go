package bakeday

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// spaced is the problem in which the folds of a dough that is not mixed yet come as long after mixing as planned, or
// as near to that as can be.
func (d midday) spaced(ctx context.Context, p schedule.Problem, bread string, done []schedule.Done) (
	schedule.Problem, bool,
) {
	i := slices.IndexFunc(d.timetable.Steps, func(s schedule.Timed) bool {
		return s.Kind == schedule.Bulk && s.Bread == bread
	})
	if i < 0 || slices.ContainsFunc(done, func(e schedule.Done) bool { return e.Step == d.timetable.Steps[i].ID }) {
		return p, false
	}
	bulk, links := d.timetable.Steps[i], p.Links
	mixed, _ := d.first.Step(bulk.ID)
	for _, slack := range foldGives {
		p.Links = slices.Clone(links)
		for k := range p.Links {
			l := &p.Links[k]
			fold, _ := d.first.Step(l.To) // what another bread has moved since is no interval to keep to
			if l.From != bulk.ID || fold.Kind != schedule.Fold {
				continue
			}
			after := quantity.Elapsed(fold.Start.Sub(mixed.Start))
			l.Min, l.Max = max(l.Min, after-slack), min(l.Max, after+slack)
		}
		if ok, err := p.Possible(ctx); ok && err == nil {
			return p, true
		}
	}
	p.Links = links
	return p, false
}

// foldGives are how far folds are planned from their interval, the least that can be.
var foldGives = [...]quantity.Elapsed{0, quantity.Elapsed(5 * time.Minute), quantity.Elapsed(10 * time.Minute)}

// later is how much later than planned the bulk of a bread began, or its last fold, where it has begun: the folds that
// follow keep their interval.
func (d midday) later(bread string, done []schedule.Done) (by time.Duration) {
	var last time.Time
	for _, s := range d.timetable.Steps {
		for _, e := range done {
			if s.ID == e.Step && s.Bread == bread && (s.Kind == schedule.Bulk || s.Kind == schedule.Fold) &&
				e.Start.After(last) {
				last, by = e.Start, e.Start.Sub(s.Start)
			}
		}
	}
	return by
}

// foldedAnew is the day without the folds for which no time is left: those of a dough that is divided, or past that,
// before they were due, and those that would follow a late fold too near to the end of the bulk. The others may follow
// a late fold at their interval.
func (d midday) foldedAnew(all []begun) midday {
	gone := map[string]bool{}
	latest := map[string]time.Time{} // of folds that follow a late one
	for _, b := range all {
		shape := slices.IndexFunc(d.timetable.Steps, func(s schedule.Timed) bool {
			return s.Kind == schedule.Shape && s.Bread == b.step.Bread && !s.Spare
		})
		if shape < 0 {
			continue
		}
		divided := d.waitFor(d.timetable.Steps[shape].ID)[b.step.ID]
		delay := b.at.Sub(b.step.Start)
		for _, s := range d.timetable.Steps {
			next := s.Start.Add(delay)
			switch {
			case s.Kind != schedule.Fold || s.Bread != b.step.Bread:
			case divided && !s.Start.Before(b.at):
				gone[s.ID] = true
			case b.step.Kind != schedule.Fold || s.Number <= b.step.Number || delay <= 0:
			case next.Add(s.End.Sub(s.Start) + restsAfterFold.Duration()).After(d.timetable.Steps[shape].Start):
				gone[s.ID] = true
			default:
				latest[s.ID] = next
			}
		}
	}
	d.timetable.Steps = slices.DeleteFunc(slices.Clone(d.timetable.Steps),
		func(s schedule.Timed) bool { return gone[s.ID] })
	d.problem.Steps = slices.DeleteFunc(slices.Clone(d.problem.Steps),
		func(s schedule.DayStep) bool { return gone[s.ID] })
	d.problem.Links = slices.DeleteFunc(slices.Clone(d.problem.Links),
		func(l schedule.Link) bool { return gone[l.From] || gone[l.To] })
	for i := range d.problem.Links {
		l := &d.problem.Links[i]
		bulk, ok := d.timetable.Step(l.From)
		if next := latest[l.To]; ok && !next.IsZero() && bulk.Kind == schedule.Bulk && l.Kind == schedule.StartToStart {
			l.Max = max(l.Max, quantity.Elapsed(next.Sub(bulk.Start)))
		}
	}
	return d
}
