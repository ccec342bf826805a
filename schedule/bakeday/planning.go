package bakeday

import (
	"context"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// planning is one day of a kitchen being worked out: each bread by itself, and all of them in one timetable.
type planning struct {
	kitchen *Kitchen
	clock   KitchenClock
	breads  []*planned
	shares  shares
	found
	asking
	survives   schedule.Robustness
	settled    bool
	pinned     bool // mixing stays near where it was
	timeRanOut bool
	absent     map[wallclock.Occurrence][]schedule.Span // when nobody is there, once it was asked for
}

// asking is what a planning is for.
type asking struct {
	brief  bool   // reasons are not looked for
	any    bool   // whether there is a timetable is all that is asked: it need not be the latest
	change relief // of the rules, that is tried
}

// planned is one bread of a planning.
type planned struct {
	Day
	at     moments
	prefix string                              // of the IDs of its steps
	levain int                                 // the bread with whose levain it is fed: itself, or one before it
	told   map[working.Message]working.Message // what was said of it as one of several
}

// found is a timetable with what it keeps to.
type found struct {
	timetable schedule.Timetable
	problem   schedule.Problem // without the room that is kept for an early or late dough
	layout    int              // which of the layouts it has
	share     float64          // of the ranges, for which there is room
	ripe      float64          // of the hours after its peak, that what ripens takes; 0: all
	planned   bool             // a round before found it
}

// prepare works out what does not depend on the time of day.
func (b *Bake) prepare(wanted time.Time, clock KitchenClock) (*planned, error) {
	d := &planned{Day: Day{names: map[string]working.Message{}, Bake: *b, Zone: clock.Zone, Now: clock.Now,
		Wanted: wanted, worked: true}}
	own := *b
	b = &own
	loss, err := b.loss()
	if err != nil {
		return d, err
	}
	b.Loaves.Loss = loss
	if b, d.Batch, d.short, err = b.limited(); err != nil {
		return d, err
	}
	d.Bake = *b
	if d.Weighing, err = d.Batch.Weigh(b.scales()); err != nil {
		return d, quantity.At("Kitchen", err)
	}
	if d.Baking, err = b.bakeOff(d.Batch, b.roomAt(wanted, clock.Zone)); err != nil {
		return d, err
	}
	d.Baking.Loss = loss
	if err := b.boxHolds(d.Baking.Rounds); err != nil {
		return d, err
	}
	d.Bake.Oven = b.Oven
	d.at = b.firstGuess(wanted)
	d.at.now = clock.Now
	if b.Levain.standing() {
		d.at.fed = clock.Now.Add(-b.Levain.FedAgo.Duration())
	}
	return d, nil
}

// rounds bounds how often times and temperatures are brought together.
const rounds = 10

// run brings times and temperatures together: the clocks of the doughs depend on the time of day, and the time of day
// on the clocks of the doughs.
func (p *planning) run(ctx context.Context) error {
	kept := false // the round before has a timetable
	for round := range rounds {
		before := p.snapshot()
		if err := p.workOut(); err != nil {
			return err
		}
		if !p.feasible() {
			p.found = found{}
			return nil
		}
		first := p.layout // in the end no better layout is looked for, or the rounds would not agree
		if round < 3 {
			first = max(0, first-1)
		}
		p.pinned = round >= halfway
		next, err := p.planTogether(ctx, first)
		if p.pinned && err == nil && !possible(next.timetable) {
			p.pinned = false
			next, err = p.planTogether(ctx, first)
		}
		if err != nil {
			if !ended(err) || !kept {
				return err
			}
			p.timeRanOut = true
			p.restore(before) // the timetable is that of the round before, and so is all that it rests on
			break
		}
		p.found = next
		p.planned = true
		p.timeRanOut = next.timetable.TimeRanOut
		p.hand()
		if !p.possible() {
			return nil
		}
		kept = true
		if p.settled = p.agree(); p.settled {
			break
		}
	}
	return nil
}

// snapshot keeps what is known of the breads.
func (p *planning) snapshot() []planned {
	var out []planned
	for _, d := range p.breads {
		out = append(out, *d)
	}
	return out
}

func (p *planning) restore(breads []planned) {
	for i, d := range breads {
		*p.breads[i] = d
	}
}

// halfway is the round from which on the doughs are mixed near where the round before had them: two timetables that
// call each other forth would otherwise take turns for ever.
const halfway = 4

// near are the bounds that keep the mixing of every bread within an hour of where its dough was reckoned.
func (p *planning) near() []schedule.Bound {
	if !p.pinned {
		return nil
	}
	var out []schedule.Bound
	for _, d := range p.breads {
		at := d.at.mixed.Truncate(time.Minute)
		out = append(out, schedule.Bound{Step: d.prefix + idBulk, Earliest: at.Add(-time.Hour), Latest: at.Add(time.Hour)})
	}
	return out
}

// off is how far moments are from others, the farthest of them.
func (m moments) off(from moments) quantity.Elapsed {
	far := max(from.mixed.Sub(m.mixed).Abs(), from.fed.Sub(m.fed).Abs(), (from.retard - m.retard).Abs())
	return quantity.Elapsed((far + time.Minute - 1).Truncate(time.Minute))
}

// workOut asks every room about every bread.
func (p *planning) workOut() error {
	var problems quantity.Problems
	for i, d := range p.breads {
		problems.Join(p.path(i), d.workOut(&d.Bake, d.at, p.partners(i)))
	}
	return problems.Err()
}

// path is where the order has a bread; empty for the only one.
func (p *planning) path(i int) string {
	if len(p.breads) == 1 {
		return ""
	}
	return fmt.Sprintf("Bakes[%d]", i)
}

// partners are the breads that are fed with the levain of one, itself included.
func (p *planning) partners(i int) []*planned {
	var out []*planned
	for _, d := range p.breads {
		if d.levain == p.breads[i].levain {
			out = append(out, d)
		}
	}
	return out
}

func (p *planning) feasible() bool {
	for _, d := range p.breads {
		if !d.Rising.Feasible {
			return false
		}
	}
	return true
}

// possible reports whether there is a timetable.
func (p *planning) possible() bool { return possible(p.timetable) }

func possible(t schedule.Timetable) bool {
	return len(t.Steps) > 0 && (t.Verdict == schedule.Optimal || t.Verdict == schedule.Feasible)
}

// agree takes the moments from the timetable, and reports whether all are where they were.
func (p *planning) agree() bool {
	all := true
	for _, d := range p.breads {
		m, next := d.at, d.moments()
		if owner := p.breads[d.levain]; owner != d {
			next.fed = owner.moments().fed
		}
		all = all && near(next.mixed, m.mixed) && near(next.fed, m.fed) &&
			next.retard-m.retard < 5*time.Minute &&
			m.retard-next.retard < 5*time.Minute
	}
	if all {
		return true
	}
	for _, d := range p.breads {
		now := d.moments()
		if owner := p.breads[d.levain]; owner != d {
			now.fed = owner.moments().fed
		}
		d.unsettled = d.at.off(now)
		d.at = now
	}
	return false
}

// hand gives every bread its part of the timetable.
func (p *planning) hand() {
	for _, d := range p.breads {
		d.Timetable, d.problem, d.layout = p.part(d), p.problem, p.layout
		d.Careful, d.Room = p.possible() && p.share == 1, quantity.NewPercent(100*p.share)
		d.Settled, d.TimeRanOut = p.settled, p.timeRanOut
	}
}

// finish says what the timetable survives, and what is to be known of each bread.
func (p *planning) finish(ctx context.Context) error {
	var robust schedule.Robustness
	if p.possible() {
		p.timetable = p.timetable.Described(ctx)
		p.timeRanOut = p.timeRanOut || p.timetable.TimeRanOut
		var err error
		if robust, err = p.timetable.Surviving(ctx); err != nil {
			return fmt.Errorf("timetable: %w", err)
		}
		p.timeRanOut = p.timeRanOut || robust.TimeRanOut
	}
	p.survives = robust
	p.hand()
	for _, d := range p.breads {
		d.Robust = p.robust(robust, d)
		d.Notes = d.notes()
	}
	return nil
}

// planFor plans one bread for one wanted time.
func (b *Bake) planFor(ctx context.Context, wanted time.Time, clock KitchenClock) (Day, error) {
	return b.planAlone(ctx, wanted, clock, asking{})
}

// briefly plans like planFor, without the reasons when there is no timetable.
func (b *Bake) briefly(ctx context.Context, wanted time.Time, clock KitchenClock) (Day, error) {
	return b.planAlone(ctx, wanted, clock, asking{brief: true})
}

func (b *Bake) planAlone(ctx context.Context, wanted time.Time, clock KitchenClock, ask asking) (Day, error) {
	d, err := b.prepare(wanted, clock)
	if err != nil {
		return d.Day, err
	}
	p := &planning{kitchen: &b.Kitchen, clock: clock, breads: []*planned{d}, asking: ask}
	if err := p.run(ctx); err != nil {
		return d.Day, err
	}
	return d.Day, p.finish(ctx)
}

func near(a, b time.Time) bool {
	d := a.Sub(b)
	return d < 5*time.Minute && d > -5*time.Minute
}
