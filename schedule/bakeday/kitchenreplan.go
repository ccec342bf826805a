package bakeday

import (
	"context"
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// Replan answers: this step of one bread begins late (or early); what now, for all breads?
//
// What was planned before it stands, and of the other breads what has begun by then; the rest is planned again,
// latest first. When the wanted times can no longer be kept all of them move, by the least that works. Errors: as
// [Day.Replan].
func (k KitchenDay) Replan(ctx context.Context, late Late) (Replanned, error) {
	if !k.Possible() {
		return Replanned{}, &quantity.InputError{
			GoPath: "Day", Got: quantity.Tell("bakeday.got_day_without_timetable", "a day without a timetable"),
			Want: quantity.Tell("bakeday.want_day_can_be_baked", "a day that can be baked"), Err: quantity.ErrInconsistent,
		}
	}
	var p quantity.Problems
	p.Duration("By", late.By.Duration(), -48*time.Hour, 48*time.Hour)
	at, err := k.StepNamed(late.Step)
	p.Join("Step", err)
	if err := p.Err(); err != nil {
		return Replanned{}, err
	}
	m := midday{timetable: k.Timetable, problem: k.problem, wanted: k.Breads[0].Wanted}
	r, err := m.replan(ctx, at, late.By)
	if err != nil {
		return Replanned{}, err
	}
	r.zone, r.made, r.several = k.Zone, true, len(k.Breads) > 1
	if r.Possible() {
		after := k
		after.Timetable = r.Timetable
		after.Breads = nil
		for _, d := range k.Breads {
			d.Wanted = d.Wanted.Add(r.Moved.Duration())
			d.Timetable = partOf(r.Timetable, d)
			after.Breads = append(after.Breads, d)
		}
		r.rest = after.timetable(notOver(after.stepData(), r.Now))
	}
	return r, nil
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
