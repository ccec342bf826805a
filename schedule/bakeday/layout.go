package bakeday

import (
	"context"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// layout is how much a timetable keeps to beyond its rules.
type layout struct {
	share float64          // of the dough's range, early and late, for which it has room
	fresh bool             // the bread is cool within half the time that it may be
	folds quantity.Elapsed // how far a fold may be from its interval; everFar: as far as folds may be moved at all
}

const everFar = quantity.Elapsed(-1)

// layouts lists them from the one wished for to the one that asks for nothing but the rules: the most room for the dough
// first. A bake that does not say how fresh its bread is to be gets bread of the same day before more room, as long as there is
// room for a quarter of the range. Judgment.
func (b *Bake) layouts() []layout {
	shares := []float64{1, 0.75, 0.5, 0.25}
	var out []layout
	if b.Loaves.FreshWithin == usualFreshness {
		for _, s := range shares {
			out = append(out, layout{share: s, fresh: true})
		}
	}
	for _, s := range shares {
		out = append(out, layout{share: s})
	}
	if b.Loaves.FreshWithin == usualFreshness {
		out = append(out, layout{fresh: true})
	}
	return append(out, layout{})
}

// timetable asks for the plan: of those with the best layout the latest. First is where in the list to begin: the round
// before found nothing better.
func (d *Day) timetable(ctx context.Context, b *Bake, first int) error {
	n, err := b.network(d.Now, d.Wanted, d.Zone, d.times())
	if err != nil {
		return err
	}
	try := func(l layout) (schedule.Problem, bool, error) {
		p := n.layOut(l)
		ok, err := p.Possible(ctx)
		if err != nil {
			err = fmt.Errorf("timetable: %w", err)
		}
		return p, ok, err
	}
	all := b.layouts()
	plain, ok, err := try(layout{folds: everFar})
	if err != nil {
		return err
	}
	best, l := plain, layout{folds: everFar}
	for i := first; ok && i < len(all); i++ {
		l = all[i]
		l.folds = everFar
		p, fits, err := try(l)
		if err != nil {
			return err
		}
		if !fits {
			continue
		}
		best, d.layout = p, i
		break
	}
	for _, minutes := range []int{0, 5, 10} { // folds stay as near to their interval as that allows
		if b.Bulk.Folds == 0 || !ok {
			break
		}
		closer := l
		closer.folds = quantity.Elapsed(minutes) * quantity.Elapsed(time.Minute)
		p, fits, err := try(closer)
		if err != nil {
			return err
		}
		if fits {
			best = p
			break
		}
	}
	if d.brief && !ok {
		d.Timetable = schedule.Timetable{Verdict: schedule.Unknown}
		return nil
	}
	if d.Timetable, err = best.Latest(ctx); err != nil {
		return fmt.Errorf("timetable: %w", err)
	}
	// What is kept for planning again has no room to keep.
	d.Careful, d.Room, d.problem = ok && l.share == 1, quantity.NewPercent(100*l.share), plain
	return nil
}

// foldsMoved is the farthest that a fold is planned from its interval.
func (d *Day) foldsMoved() quantity.Elapsed {
	bulk, ok := d.Timetable.Step(idBulk)
	if !ok {
		return 0
	}
	var most quantity.Elapsed
	for _, s := range d.Timetable.Steps {
		if s.Kind == schedule.Fold {
			off := quantity.Elapsed(s.Start.Sub(bulk.Start)) - quantity.Elapsed(s.Number)*d.Bake.Bulk.FoldEvery
			most = max(most, off, -off)
		}
	}
	return most
}
