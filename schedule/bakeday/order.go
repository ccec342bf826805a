package bakeday

import (
	"context"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// Order is what one kitchen is to bake in one go: any breads that share its oven, its mixers, its places and its hands.
type Order struct {
	Kitchen Kitchen `json:"kitchen,omitzero"` // for the bakes that describe none
	Wanted  Wish    `json:"wanted,omitzero"`  // for the bakes that have no wish of their own
	Bakes   []Bake  `json:"bake"`             // each with a name of its own
}

// mostBakes is how many breads are planned together. Judgment: a day of more is beyond what the search settles in
// seconds.
const mostBakes = 12

// whole is the order with the kitchen, the wish and the defaults filled in for every bake.
func (o Order) whole() (Order, error) {
	var p quantity.Problems
	switch n := len(o.Bakes); {
	case n == 0:
		p.Required("Bakes", quantity.Tell("bakeday.want_at_least_one_bake", "at least one bake"))
	case n > mostBakes:
		p.Add("Bakes", quantity.Tell("bakeday.got_bakes", "%d bakes", n),
			quantity.Tell("bakeday.want_at_most_one_day", "at most %d in one day", mostBakes), quantity.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return o, err
	}
	o.oneKitchen(&p)
	names := map[string]bool{}
	bakes := make([]Bake, len(o.Bakes))
	for i, b := range o.Bakes {
		path := fmt.Sprintf("Bakes[%d]", i)
		b.Kitchen = o.Kitchen
		if b.Wanted.IsZero() {
			b.Wanted = o.Wanted
		}
		want := quantity.Tell("bakeday.want_name_own_at_most_100",
			"a name of its own, at most 100 bytes, by which the day tells it from the others")
		switch {
		case len(o.Bakes) == 1:
		case b.Name == "":
			p.Required(path+".Name", want)
		case names[b.Name] || len(b.Name) > maxName/2:
			p.AddCode(path+".Name", "name_twice", quantity.Excerpt(b.Name), want, quantity.ErrInconsistent)
		}
		names[b.Name] = true
		bakes[i] = b
	}
	o.Bakes = bakes
	o.oneLevain(&p)
	return o, p.Err()
}

// Check reports everything that is wrong with the order as it stands, all at once, without planning it. Errors: as
// [Order.Plan].
func (o Order) Check(clock KitchenClock) error {
	whole, err := o.whole()
	var p quantity.Problems
	p.Join("", err)
	for i, b := range whole.Bakes {
		if i < mostBakes {
			p.Join(fmt.Sprintf("Bakes[%d]", i), b.faults(clock))
		}
	}
	return atFields(o, p.ErrFor(o))
}

// Plan works the whole day out: every bread as [Bake.Plan] does, and one timetable in which all of them share the
// oven, at one temperature at a time, the pots, the mixers, the places and the hands, around the absences of the
// kitchen.
//
// Between two breads the oven takes its time: to reheat, to rise, or to fall when the hotter bread comes first. A
// mixer is washed before a dough that does not carry all the allergens of the one before. Breads whose levains have
// the same name are fed with one. When the wanted times cannot be met [KitchenDay.Possible] is false and its data
// says what clashes; when wishes by weekday can no longer be met all breads move to the week after, and so they do when
// the first of wishes that lie within two days has passed.
//
// Errors: everything that is wrong with the order, all at once, by the paths of [Order]: no bakes or more than
// twelve, a name that is missing or stands twice, kitchens that differ, a bake that takes more of something than the
// kitchen has, a ripe levain shared by more than there is, a wanted time in the past; the context's error when it
// ended before any timetable was found or ruled out. Accuracy: as [Bake.Plan].
func (o Order) Plan(ctx context.Context, clock KitchenClock) (KitchenDay, error) {
	if err := o.Check(clock); err != nil {
		return KitchenDay{}, err
	}
	whole, err := o.whole()
	if err != nil {
		return KitchenDay{}, atFields(o, err)
	}
	if len(whole.Bakes) == 1 {
		day, err := whole.Bakes[0].Plan(ctx, clock)
		if err != nil {
			return KitchenDay{}, atFields(o, quantity.At("Bakes[0]", err))
		}
		return whole.ofOne(day), nil
	}
	for i := range whole.Bakes {
		b, err := whole.Bakes[i].inPercent()
		if err != nil {
			return KitchenDay{}, atFields(o, quantity.At(fmt.Sprintf("Bakes[%d]", i), err))
		}
		whole.Bakes[i] = b.withDefaults()
	}
	wishes, err := occasions(whole.Bakes, clock)
	if err != nil {
		return KitchenDay{}, atFields(o, err)
	}
	again := true // every bread has a next time
	for _, w := range wishes {
		again = again && len(w) > 1
	}
	at := func(k int) []time.Time {
		var out []time.Time
		for _, w := range wishes {
			out = append(out, w[k])
		}
		return out
	}
	first, err := whole.planFor(ctx, at(0), clock)
	if err != nil || first.Possible() {
		return first, atFields(o, err)
	}
	var next KitchenDay
	if again {
		if next, err = whole.weekAfter(ctx, at(1), clock); ended(err) {
			first.TimeRanOut = true
		}
	}
	whole.explain(ctx, &first, clock)
	if !next.Possible() {
		return first, nil
	}
	next.Missed = &MissedDay{Wanted: first.wanted(), Why: first.whyNot(), Earlier: first.Earlier, Later: first.Later}
	return next, nil
}

// weekAfter is the day of the same wishes a week later; one that is not possible has no reasons.
func (o *Order) weekAfter(ctx context.Context, wanted []time.Time, clock KitchenClock) (KitchenDay, error) {
	if ok, err := o.possible(ctx, wanted, clock, nil); !ok || err != nil {
		return KitchenDay{}, err
	}
	return o.planFor(ctx, wanted, clock)
}

// ofOne is the day of a kitchen that bakes one bread.
func (o *Order) ofOne(d Day) KitchenDay {
	k := KitchenDay{
		Kitchen: o.Kitchen, Zone: d.Zone, Now: d.Now, Breads: []Day{d}, Timetable: d.Timetable, problem: d.problem,
		Careful: d.Careful, Room: d.Room, Robust: d.Robust, Settled: d.Settled, TimeRanOut: d.TimeRanOut, worked: true,
	}
	by := func(t *time.Time) *quantity.Elapsed {
		if t == nil {
			return nil
		}
		e := quantity.Elapsed(t.Sub(d.Wanted))
		return &e
	}
	k.Earlier, k.Later = by(d.Earlier), by(d.Later)
	if m := d.Missed; m != nil {
		k.Missed = &MissedDay{Wanted: []time.Time{m.Wanted}, Why: m.Why}
	}
	return k
}

// planFor plans all breads for their wanted times.
func (o *Order) planFor(ctx context.Context, wanted []time.Time, clock KitchenClock) (KitchenDay, error) {
	k := KitchenDay{Kitchen: o.Kitchen, Zone: clock.Zone, Now: clock.Now, worked: true}
	p, err := o.planning(wanted, clock, asking{})
	if err != nil {
		return k, err
	}
	if err := p.run(ctx); err != nil {
		return k, err
	}
	if err := p.finish(ctx); err != nil {
		return k, err
	}
	return k.of(p), nil
}

// possible reports whether all breads can be there at these times, with a change of the rules, without looking for
// reasons.
func (o *Order) possible(ctx context.Context, wanted []time.Time, clock KitchenClock, change relief) (bool, error) {
	p, err := o.planning(wanted, clock, asking{brief: true, any: true, change: change})
	if err != nil {
		return false, err
	}
	if err = p.run(ctx); err == nil && p.timeRanOut {
		err = ctx.Err() // the timetable there is was not brought together with the doughs
	}
	return err == nil && p.possible(), err
}

// planning prepares all breads for their wanted times.
func (o *Order) planning(wanted []time.Time, clock KitchenClock, ask asking) (*planning, error) {
	p := &planning{kitchen: &o.Kitchen, clock: clock, asking: ask}
	var bad quantity.Problems
	for i := range o.Bakes {
		d, err := o.Bakes[i].prepare(wanted[i], clock)
		bad.Join(fmt.Sprintf("Bakes[%d]", i), err)
		d.levain = o.feeds(i)
		if len(o.Bakes) > 1 {
			d.prefix = d.Bake.Name + "/"
		}
		p.breads = append(p.breads, d)
	}
	if bad.Err() == nil {
		p.enoughLevain(&bad)
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	p.findShares()
	return p, nil
}

// explain looks for what clashes in a day that cannot be, and for ways out of it. What time ran out for is not named.
func (o *Order) explain(ctx context.Context, k *KitchenDay, clock KitchenClock) {
	k.alone = o.alone(ctx, k, clock)
	k.Wants, k.moves = k.clashes(ctx), o.moves(ctx, k, clock)
	k.tried = o.tries(ctx, k, clock)
	o.lookAround(ctx, k, clock)
	k.TimeRanOut = k.TimeRanOut || over(ctx)
}

// over reports whether a context has ended; a nil one never does.
func over(ctx context.Context) bool { return ctx != nil && ctx.Err() != nil }

// alone are the breads of a day that could not be there by themselves either, each with its reasons.
func (o *Order) alone(ctx context.Context, k *KitchenDay, clock KitchenClock) []Day {
	var out []Day
	for i, at := range k.wanted() {
		b := &o.Bakes[i]
		d, err := b.briefly(ctx, at, clock)
		if err != nil || d.Possible() {
			continue
		}
		if d, err = b.planFor(ctx, at, clock); err == nil && !d.Possible() {
			b.lookAround(ctx, &d, clock)
			out = append(out, d)
		}
	}
	return out
}

// lookAround finds how far all breads would have to move.
func (o *Order) lookAround(ctx context.Context, k *KitchenDay, clock KitchenClock) {
	k.Earlier = o.nearest(ctx, k, clock, func(t schedule.Timetable) *schedule.Shift { return t.Before }, false)
	k.Later = o.nearest(ctx, k, clock, func(t schedule.Timetable) *schedule.Shift { return t.After }, true)
}

// nearest follows the timetable's suggestions: the clocks of the doughs move with the time of day, so that one may fall
// short by a few minutes.
func (o *Order) nearest(
	ctx context.Context, first *KitchenDay, clock KitchenClock, suggestion func(schedule.Timetable) *schedule.Shift,
	later bool,
) *quantity.Elapsed {
	k := *first
	for range 4 {
		s := suggestion(k.Timetable)
		if s == nil {
			return nil
		}
		var wanted []time.Time
		for _, d := range k.Breads {
			at := d.Wanted.Add(s.By.Duration())
			if !at.After(clock.Now) {
				return nil
			}
			wanted = append(wanted, at)
		}
		next, err := o.planFor(ctx, wanted, clock)
		if ended(err) {
			first.TimeRanOut = true
		}
		if err != nil {
			return nil
		}
		if next.Possible() {
			by := o.awake(ctx, first, next.Breads[0].Wanted.Sub(first.Breads[0].Wanted), clock, later)
			return &by
		}
		k = next
	}
	return nil
}

// awake is a distance that works, or the next one with which nobody is asleep when a bread is wanted, if that works
// too.
func (o *Order) awake(
	ctx context.Context, first *KitchenDay, by time.Duration, clock KitchenClock, later bool,
) quantity.Elapsed {
	wanted := first.wanted()
	better := o.Kitchen.awakeBy(wanted, by, later, clock.Zone)
	for i := range wanted {
		if wanted[i] = wanted[i].Add(better); !wanted[i].After(clock.Now) {
			return quantity.Elapsed(by)
		}
	}
	if better != by {
		if ok, err := o.possible(ctx, wanted, clock, nil); err != nil || !ok {
			return quantity.Elapsed(by)
		}
	}
	return quantity.Elapsed(better)
}
