package bakeday

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
)

// oneOccasion is how far apart the wishes by weekday of an order may lie and still be of one occasion, in minutes: from
// a Saturday's market to a Sunday's breakfast. Judgment.
const oneOccasion = 48 * 60

// occasions are the next two times of each bake's wish. Wishes by weekday that lie close together are of one occasion:
// when the first of them has passed all are of the week after, and no bread is planned a week before another.
func occasions(bakes []Bake, clock KitchenClock) ([][]time.Time, error) {
	out := make([][]time.Time, len(bakes))
	first, together := firstOfOccasion(bakes)
	for i, b := range bakes {
		times, err := b.Wanted.instants(clock.Now, clock.Zone)
		if err != nil {
			return nil, quantity.At(fmt.Sprintf("Bakes[%d]", i), err)
		}
		out[i] = times
	}
	if !together {
		return out, nil
	}
	for i, b := range bakes {
		if !b.Wanted.weekly {
			continue
		}
		for k, begins := range out[first] {
			times, err := b.Wanted.instants(begins.Add(-time.Nanosecond), clock.Zone)
			if err != nil {
				return nil, quantity.At(fmt.Sprintf("Bakes[%d]", i), err)
			}
			out[i][k] = times[0] // a wish by weekday always has two
		}
	}
	return out, nil
}

// firstOfOccasion is the bake with which an occasion begins, and whether the wishes by weekday are of one: it is the
// bake after the longest time of the week without a wish.
func firstOfOccasion(bakes []Bake) (first int, together bool) {
	const week = 7 * 24 * 60
	type wish struct{ bake, minute int }
	var all []wish
	for i, b := range bakes {
		if w := b.Wanted; w.weekly {
			all = append(all, wish{i, int(w.Weekday)*24*60 + w.Clock.Minutes()})
		}
	}
	if len(all) < 2 {
		return 0, false
	}
	slices.SortStableFunc(all, func(a, b wish) int { return cmp.Compare(a.minute, b.minute) })
	last, longest := all[len(all)-1].minute-week, 0
	for _, w := range all {
		if gap := w.minute - last; gap > longest {
			longest, first = gap, w.bake
		}
		last = w.minute
	}
	return first, week-longest <= oneOccasion
}
