package bakeday

import (
	"context"
	"slices"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// Replan answers: these steps begin late (or early), each of its bread; what now, for all breads?
//
// What was planned before them stands, and of the other breads what has begun by then; the rest is planned again,
// latest first. When the wanted times can no longer be kept all of them move, by the least that works. Steps of several
// breads are taken in order of time. Errors: as [Day.Replan]; ErrRequired for none.
func (k KitchenDay) Replan(ctx context.Context, late ...Late) (Replanned, error) {
	if len(k.Breads) == 1 {
		return k.Breads[0].Replan(ctx, late...)
	}
	all, err := beginnings(k.Possible(), k.StepNamed, late)
	if err != nil {
		return Replanned{}, err
	}
	m := midday{timetable: k.Timetable, problem: k.problem, wanted: k.Breads[0].Wanted}
	r, err := m.after(ctx, all)
	if err != nil {
		return Replanned{}, err
	}
	r.zone, r.made, r.several = k.Zone, true, true
	if !r.Possible() {
		return r, nil
	}
	after := k.After(r)
	r.Changes = slices.DeleteFunc(r.Changes, func(c schedule.Change) bool { // it shows in the loads before and after it
		return c.Kind == schedule.Preheat && after.foundHot(c.Bread)
	})
	r.rest = after.timetable(notOver(after.stepData(), r.Now))
	if len(all) > 1 {
		return r, nil
	}
	for i, d := range k.Breads { // how far a dough has risen that is shaped late
		if own := all[0].step.Label; own.Bread == d.Bake.Name {
			alone := Replanned{Late: d.plain(own), Timetable: after.Breads[i].Timetable, begun: all}
			err := d.riseNow(&alone)
			r.Risen, r.Allowed = alone.Risen, alone.Allowed
			return r, err
		}
	}
	return r, nil
}

// foundHot reports whether another bread leaves the oven hot for this one.
func (k KitchenDay) foundHot(bread string) bool {
	d, ok := k.Bread(bread)
	return ok && !k.hotFrom(d).IsZero()
}

// After is the day as it goes on after it was planned again: the same breads, at their new times.
func (k KitchenDay) After(r Replanned) KitchenDay {
	if !r.Possible() {
		return k
	}
	after := k
	after.Timetable, after.Breads = r.Timetable, nil
	for _, d := range k.Breads {
		d.Wanted = d.Wanted.Add(r.Moved.Duration())
		if d.Timetable = r.Timetable; len(k.Breads) > 1 {
			d.Timetable = partOf(r.Timetable, d)
		}
		after.Breads = append(after.Breads, d)
	}
	return after
}

// StepNamed answers: which step of the day is meant? By its ID ("Rye/fold-2"), or by the bread and its kind
// ("Rye/shape") where the bread has only one such step. Errors: as [Day.StepNamed].
func (k KitchenDay) StepNamed(text string) (schedule.Timed, error) {
	if len(k.Breads) == 1 {
		return k.Breads[0].StepNamed(text)
	}
	ids, count := "", 0
	for _, s := range k.Timetable.Steps {
		if s.ID == text && !s.Spare {
			return s, nil
		}
	}
	var found schedule.Timed
	for _, d := range k.Breads {
		own, err := d.StepNamed(afterBread(text, d.Bake.Name))
		if ids != "" {
			ids += ", "
		}
		ids += strconv.Quote(d.Bake.Name + "/shape")
		if err != nil {
			continue
		}
		if s, ok := k.Timetable.Step(d.Bake.Name + "/" + own.ID); ok {
			found, count = s, count+1
		}
	}
	if count == 1 {
		return found, nil
	}
	want := quantity.Tell("bakeday.want_bread_and_one_steps", "a bread and one of its steps, such as %s", ids)
	if text == "" {
		return schedule.Timed{}, &quantity.InputError{Want: want, Err: quantity.ErrRequired}
	}
	return schedule.Timed{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrInconsistent}
}

// afterBread is the step in "Rye/shape" for the bread Rye; a text that names no bread is the step itself, and for
// another bread there is none.
func afterBread(text, bread string) string {
	if n := len(bread) + 1; len(text) > n && text[:n] == bread+"/" {
		return text[n:]
	}
	return text
}
