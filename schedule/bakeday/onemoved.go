package bakeday

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

const (
	moveStep = quantity.Elapsed(5 * time.Minute)
	moveMost = quantity.Elapsed(2 * time.Hour)
)

// oneMoved finds, for each bread of a day that cannot be, how much earlier or later it alone would have to be wanted:
// the least of both in steps of five minutes, up to two hours. Each was checked to work.
func (k *KitchenDay) oneMoved(ctx context.Context) []RuleData {
	var out []RuleData
	for i, b := range k.problem.Bounds {
		if !b.Wanted || !k.within(ctx, i, moveMost) {
			continue
		}
		low, high := quantity.Elapsed(0), moveMost // nothing nearer helps than what does within a span
		for high-low > moveStep {
			mid := (low + (high-low)/2) / moveStep * moveStep
			if k.within(ctx, i, mid) {
				high = mid
			} else {
				low = mid
			}
		}
		for by := high; by <= moveMost && !over(ctx); by += moveStep {
			if way, ok := k.movedBy(ctx, i, by); ok {
				out = append(out, k.wantedBy(b, way, by))
				break
			}
		}
	}
	if len(out) == 0 && len(k.alone) == 0 {
		out = k.allWaiting(ctx)
	}
	return out
}

// aloneMoved is the only bread that could not be there by itself, when it could.
func (k *KitchenDay) aloneMoved() []RuleData {
	var out []RuleData
	if len(k.alone) != 1 {
		return nil
	}
	d := k.alone[0]
	at := slices.IndexFunc(k.problem.Bounds, func(b schedule.Bound) bool {
		return b.Wanted && b.Step == d.Bake.Name+"/"+idCool
	})
	for _, near := range []*time.Time{d.Later, d.Earlier} {
		switch {
		case near == nil || at < 0:
		case near.After(d.Wanted):
			if by := quantity.Elapsed(near.Sub(d.Wanted)); by > moveMost {
				out = append(out, k.wantedBy(k.problem.Bounds[at], schedule.Later, by))
			}
		case d.Wanted.Sub(*near) > moveMost.Duration():
			out = append(out, k.wantedBy(k.problem.Bounds[at], schedule.Earlier, quantity.Elapsed(d.Wanted.Sub(*near))))
		}
	}
	return out
}

// wantedBy is a bread wanted so much later or earlier.
func (k *KitchenDay) wantedBy(b schedule.Bound, way schedule.Easing, by quantity.Elapsed) RuleData {
	r := RuleData{Rule: schedule.FixedTime, Step: b.Step, Wanted: true, Words: b.Words, Change: by, Easing: way}
	at := b.Latest.In(k.Zone)
	if way == schedule.Later {
		r.Remedy = working.Tell("bakeday.wanted_later", "%v later: %v", by, at.Add(by.Duration()))
	} else {
		r.Remedy = working.Tell("bakeday.wanted_earlier", "%v earlier: %v", by, at.Add(-by.Duration()))
	}
	return r
}

// moves are the ways of [KitchenDay.oneMoved] that still help when the day is planned again with them: the clocks of
// the doughs move with the time of day, so that one may fall short by a few minutes.
func (o *Order) moves(ctx context.Context, k *KitchenDay, clock KitchenClock) []RuleData {
	var out []RuleData
	for _, m := range append(k.oneMoved(ctx), k.aloneMoved()...) {
		if !m.Wanted {
			if ok, err := o.waitsLonger(k, m.Change).possible(ctx, k.wanted(), clock, nil); ok && err == nil {
				out = append(out, m)
			}
			continue
		}
		at := slices.IndexFunc(k.problem.Bounds, func(b schedule.Bound) bool { return b.Wanted && b.Step == m.Step })
		for range 4 {
			if o.helps(ctx, k, m, clock) {
				out = append(out, m)
				break
			}
			m = k.wantedBy(k.problem.Bounds[at], m.Easing, m.Change+moveStep)
		}
	}
	return out
}

// helps reports whether the day can be planned with one bread wanted at another time, one that a wish can say.
func (o *Order) helps(ctx context.Context, k *KitchenDay, m RuleData, clock KitchenClock) bool {
	shift := m.Change.Duration()
	if m.Easing == schedule.Earlier {
		shift = -shift
	}
	wanted := k.wanted()
	for i, d := range k.Breads {
		if d.Bake.Name+"/"+idCool == m.Step {
			if wanted[i] = wanted[i].Add(shift); !plainly(wanted[i], k.Zone) {
				return false // no file can say so
			}
		}
	}
	ok, err := o.possible(ctx, wanted, clock, nil)
	return err == nil && ok
}

// waitsLonger is the order with all bread waiting so much longer when it is cool.
func (o *Order) waitsLonger(k *KitchenDay, by quantity.Elapsed) *Order {
	again := *o
	again.Bakes = slices.Clone(o.Bakes)
	for i := range again.Bakes {
		again.Bakes[i].Loaves.FreshWithin = k.Breads[i].Bake.Loaves.FreshWithin + by
	}
	return &again
}

// waitStep is the grid of how much longer every bread would have to wait, and waitMost the most that is looked for.
const (
	waitStep = quantity.Elapsed(15 * time.Minute)
	waitMost = quantity.Elapsed(12 * time.Hour)
)

// allWaiting finds how much longer every bread would have to wait when it is cool, the least on a grid, where no change
// of one bread is enough.
func (k *KitchenDay) allWaiting(ctx context.Context) []RuleData {
	works := func(by quantity.Elapsed) bool {
		ok, err := waitingLonger(k.problem, by).Possible(ctx)
		return ok && err == nil
	}
	low, high := quantity.Elapsed(0), waitMost
	if !works(high) {
		return nil
	}
	for high-low > waitStep {
		mid := low + (high-low)/2/waitStep*waitStep
		if works(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return []RuleData{{
		Rule: schedule.StepMax, Words: working.Tell("bakeday.rule_all_fresh", "how fresh every bread is to be"),
		Easing: schedule.Longer, Change: high,
		Remedy: working.Tell("bakeday.all_wait", "every bread may be cool %v earlier", high),
	}}
}

// waitingLonger is a problem in which every bread may wait so much longer when it is cool.
func waitingLonger(p schedule.Problem, by quantity.Elapsed) schedule.Problem {
	p.Steps = slices.Clone(p.Steps)
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Kind == schedule.Cool && s.Max > 0 {
			s.Max += by
		}
	}
	return p
}

// within reports whether the day can be with one bread at most so much later or earlier.
func (k *KitchenDay) within(ctx context.Context, bound int, by quantity.Elapsed) bool {
	p := k.problem
	p.Bounds = slices.Clone(p.Bounds)
	b := &p.Bounds[bound]
	b.Earliest, b.Latest = b.Earliest.Add(-by.Duration()), b.Latest.Add(by.Duration())
	ok, err := p.Possible(ctx)
	return ok && err == nil
}

// movedBy reports whether the day can be with one bread so much later, or earlier.
func (k *KitchenDay) movedBy(ctx context.Context, bound int, by quantity.Elapsed) (schedule.Easing, bool) {
	for _, way := range []schedule.Easing{schedule.Later, schedule.Earlier} {
		shift := by.Duration()
		if way == schedule.Earlier {
			shift = -shift
		}
		p := k.problem
		p.Bounds = slices.Clone(p.Bounds)
		b := &p.Bounds[bound]
		b.Earliest, b.Latest = b.Earliest.Add(shift), b.Latest.Add(shift)
		if ok, err := p.Possible(ctx); err == nil && ok {
			return way, true
		}
	}
	return 0, false
}

// mostMoves is how many ways out are told; more are not read.
const mostMoves = 5

// withMoves adds the breads that would be moved alone to the ways out, those that change least first.
func (k *KitchenDay) withMoves(remedies []RuleData) []RuleData {
	all := slices.Concat(k.moves, remedies)
	slices.SortStableFunc(all, func(a, b RuleData) int { return a.Change.Compare(b.Change) })
	return all[:min(len(all), mostMoves)]
}
