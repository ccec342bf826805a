package bench

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// KitchenUnder is the day of a kitchen under way: the breads, and what was observed so far.
type KitchenUnder struct {
	Order bakeday.Order `json:"order"`
	// Observations are those of every bake that the baker knows of: earlier ones teach.
	Observations Observations `json:"observations,omitempty"`
}

// KitchenNow is how the day of a kitchen stands at one moment.
type KitchenNow struct {
	answer

	Now time.Time `json:"now"`
	// Followed is the plan that is being followed; nil: this is the plan if it is made now.
	Followed *FollowedPlan `json:"followed,omitempty"`
	// Day is the plan, with what was learned before it was made.
	Day bakeday.KitchenDay `json:"day"`
	// Breads are how each bread stands, its steps called as if it were alone.
	Breads []DayNow `json:"breads,omitempty"`
	// Changed is the rest of the day, planned again because something happened otherwise; nil when nothing did.
	Changed *bakeday.Replanned `json:"changed,omitempty"`
}

// At answers: how does the day of several breads stand, what is due, and what changes? The clock is that of the
// kitchen's zone.
//
// The plan is that of the moment at which the first of the breads began to be followed, as by [Under.At]. Each bread is
// planned with what was learned of doughs raised like it, its mixer and its loaves. A dough that is early or late moves
// its own bread; the others stay where they are, if that is possible. What names no bread is of the dough that was
// mixed last.
//
// Errors: those of [bakeday.Order.Plan] and [Observations.Learn].
func (u KitchenUnder) At(ctx context.Context, clock bakeday.KitchenClock) (KitchenNow, error) {
	if clock.Zone == nil {
		want := quantity.Tell("bench.want_zone_bake", "the zone of the bake")
		var p quantity.Problems
		p.Required("Clock.Zone", want)
		return KitchenNow{}, p.ErrFor(nil)
	}
	now := clock.Now.In(clock.Zone)
	seen := u.Observations.Until(now).ByTime()
	k := KitchenNow{Now: now}
	made := clock
	k.Followed, made.Now = seen.madeFor(u.Order.Bakes, clock)
	learned, err := seen.Until(made.Now).Learn(u.halfLife())
	if err != nil {
		if wrong := u.Order.Check(made); wrong != nil {
			return KitchenNow{}, wrong // the same of the half-life, at its place in the order
		}
		return KitchenNow{}, err
	}
	order := u.Order
	order.Bakes = slices.Clone(order.Bakes)
	var rests []Applied
	for i, b := range order.Bakes {
		applied := learned.Apply(b)
		order.Bakes[i] = applied.Bake
		rests = append(rests, applied)
	}
	if k.Day, err = order.Plan(ctx, made); err != nil {
		return KitchenNow{}, err
	}
	for i, d := range k.Day.Breads {
		k.Breads = append(k.Breads, DayNow{
			Now: now, Wanted: d.Wanted, Name: d.Bake.Name, Followed: seen.followed(d.Bake.Name, now), Day: d,
			RestsOn: rests[i].RestsOn, Done: map[string]time.Time{},
		})
	}
	if !k.Day.Possible() {
		return k, nil
	}
	k.take(k.Day)
	for i := range k.Breads {
		m := &k.Breads[i]
		if bulk, ok := m.Step(stepBulk); ok {
			m.Mixed = bulk.Start
		}
	}
	since := seen.since(made.Now).named(k.Breads)
	for i := range k.Breads {
		m := &k.Breads[i]
		m.look(since)
		if _, hasBulk := m.Step(stepBulk); !hasBulk || m.Mixed.After(now) {
			continue
		}
		if err := m.follow(learned); err != nil {
			return KitchenNow{}, err
		}
	}
	return k, k.replan(ctx)
}

// halfLife is that of the kitchen, which the order or one of its bakes describes.
func (u KitchenUnder) halfLife() time.Duration {
	for _, b := range u.Order.Bakes {
		if b.Kitchen.HalfLife > 0 {
			return b.Kitchen.HalfLife.Duration()
		}
	}
	return u.Order.Kitchen.HalfLife.Duration()
}

// madeFor is the plan that is followed for any of the bakes, and the moment of which the plan is: when the first of
// them was made. Where nobody said so and yet a bake is under way, it is that of the moment before it was mixed, with
// time enough for what came before.
func (all Observations) madeFor(bakes []bakeday.Bake, clock bakeday.KitchenClock) (*FollowedPlan, time.Time) {
	now := clock.Now.In(clock.Zone)
	var followed *FollowedPlan
	made := clock.Now
	for _, b := range bakes {
		if f := all.followed(b.Name, now); f != nil && (followed == nil || f.Made.Before(followed.Made)) {
			followed, made = f, f.Made
		}
	}
	if followed != nil {
		return followed, made
	}
	for _, b := range bakes {
		if today, ok := all.mixedLately(b, now); ok && today.At.Add(-mixedBefore).Before(made) {
			made = today.At.Add(-mixedBefore)
		}
	}
	return nil, made
}

// named gives observations that name no bread the one whose dough was mixed last before them, as observed or planned.
func (all Observations) named(breads []DayNow) Observations {
	if len(breads) < 2 {
		return all
	}
	mixed := map[string]time.Time{}
	for _, m := range breads {
		mixed[m.Name] = m.Mixed
	}
	for _, o := range all {
		if _, ours := mixed[o.Bread]; ours && o.Kind == SawMixed {
			mixed[o.Bread] = o.At
		}
	}
	out := slices.Clone(all)
	for i, o := range out {
		if o.Bread != "" || o.Kind == SawMixed || o.Kind == SawPlan {
			continue
		}
		last := time.Time{}
		for _, m := range breads {
			if at := mixed[m.Name]; !at.After(o.At) && at.After(last) {
				last, out[i].Bread = at, m.Name
			}
		}
	}
	return out
}

// take takes the steps of the breads from a day.
func (k *KitchenNow) take(day bakeday.KitchenDay) {
	for i, b := range day.Data().Breads {
		k.Breads[i].Steps = b.Steps
	}
}

// replan plans the rest of the day again when what happened differs from the plan.
func (k *KitchenNow) replan(ctx context.Context) error {
	var late []bakeday.Late
	for _, m := range k.Breads {
		for _, l := range m.late() {
			if len(k.Breads) > 1 {
				l.Step = m.Name + "/" + l.Step
			}
			late = append(late, l)
		}
	}
	r, ok := k.replanned(ctx, late)
	for range mostBreads {
		more := k.otherwise(r, late)
		if !ok || len(more) == 0 || ctx.Err() != nil {
			break
		}
		late = append(late, more...)
		if again, fits := k.replanned(ctx, late); fits {
			r = again
		}
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if ok {
		r.Risen, r.Allowed = quantity.Percent{}, quantity.Percent{} // by the plan; the dough was looked at, or is shaped
		r.Changes = slices.DeleteFunc(slices.Clone(r.Changes), func(c schedule.Change) bool {
			s, _ := r.Timetable.Step(c.ID)
			return !s.End.After(k.Now) // what is past is told by what was logged
		})
		k.Changed = &r
		k.take(k.Day.After(r))
		if len(k.Breads) == 1 {
			k.Breads[0].Changed = &r
		}
	}
	for i := range k.Breads {
		k.Breads[i].mixedThen()
	}
	return nil
}

// mostBreads is how many breads move one another at most.
const mostBreads = 12

// otherwise are the steps that were ticked off at another time than a plan made again has them: as they were planned
// first, but moved since by what another bread did.
func (k *KitchenNow) otherwise(r bakeday.Replanned, late []bakeday.Late) []bakeday.Late {
	var out []bakeday.Late
	if len(k.Breads) < 2 || !r.Possible() {
		return nil
	}
	for _, m := range k.Breads {
		for _, b := range m.beginnings() {
			id := m.Name + "/" + b.step.ID
			s, planned := r.Timetable.Step(id)
			known := slices.ContainsFunc(late, func(l bakeday.Late) bool { return l.Step == id })
			if off := b.ended.Sub(s.End); known || !planned || b.ended.IsZero() || off < enough && off > -enough {
				continue
			}
			by := quantity.Elapsed(b.at.Sub(b.step.Start).Truncate(time.Minute))
			out = append(out, bakeday.Late{Step: id, By: by, Ended: b.ended})
			break // what follows in the same bread goes by it
		}
	}
	return out
}

// replanned is the rest of the day after what is late. What lies too far from the plan is left out: then the plan
// stands, and the range of the dough says so.
func (k *KitchenNow) replanned(ctx context.Context, late []bakeday.Late) (bakeday.Replanned, bool) {
	if len(late) == 0 {
		return bakeday.Replanned{}, false
	}
	if r, err := k.Day.Replan(ctx, late...); err == nil || len(late) == 1 {
		return r, err == nil
	}
	var near []bakeday.Late
	for _, l := range late {
		if _, err := k.Day.Replan(ctx, l); err == nil {
			near = append(near, l)
		}
	}
	if len(near) == 0 || len(near) == len(late) {
		return bakeday.Replanned{}, false
	}
	r, err := k.Day.Replan(ctx, near...)
	return r, err == nil
}

// mixedThen puts the beginning of the bulk where it was observed, however little that is from the plan.
func (m *DayNow) mixedThen() {
	if m.Dough == nil || m.Dough.Mix.Dough.IsZero() {
		return
	}
	for i := range m.Steps {
		if m.Steps[i].Kind == schedule.Bulk {
			m.Steps[i].Start = m.Mixed
			m.Steps[i].Takes = quantity.Elapsed(m.Steps[i].End.Sub(m.Mixed))
		}
	}
}
