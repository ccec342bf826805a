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
		if !b.Wanted {
			continue
		}
		for by := moveStep; by <= moveMost; by += moveStep {
			if way, ok := k.movedBy(ctx, i, by); ok {
				r := RuleData{Rule: schedule.FixedTime, Step: b.Step, Wanted: true, Words: b.Words, Change: by}
				at := b.Latest.In(k.Zone)
				if r.Easing = way; way == schedule.Later {
					r.Remedy = working.Tell("bakeday.wanted_later", "%v later: %v", by, at.Add(by.Duration()))
				} else {
					r.Remedy = working.Tell("bakeday.wanted_earlier", "%v earlier: %v", by, at.Add(-by.Duration()))
				}
				out = append(out, r)
				break
			}
			if ctx != nil && ctx.Err() != nil {
				return out
			}
		}
	}
	return out
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
