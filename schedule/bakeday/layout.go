package bakeday

import (
	"context"
	"fmt"
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// layout is how much a timetable keeps to beyond its rules.
type layout struct {
	share float64          // of the dough's range, early and late, for which it has room
	fresh bool             // the bread is cool within half the time that it may be
	folds quantity.Elapsed // how far a fold may be from its interval; everFar: as far as folds may be moved at all
	// of the time from its peak until it is past its best, how much a levain or preferment may take; 0: all
	ripe float64
}

const everFar = quantity.Elapsed(-1)

// layouts lists them from the one wished for to the one that asks for nothing but the rules: the most room for the
// dough first. A bake that does not say how fresh its bread is to be gets bread of the same day before more room, as
// long as there is room for a quarter of the range. Judgment. Usual says that some bread is one of them.
func layouts(usual bool) []layout {
	shares := []float64{1, 0.75, 0.5, 0.25}
	var out []layout
	if usual {
		for _, s := range shares {
			out = append(out, layout{share: s, fresh: true})
		}
	}
	for _, s := range shares {
		out = append(out, layout{share: s})
	}
	if usual {
		out = append(out, layout{fresh: true})
	}
	return append(out, layout{})
}

// planTogether asks for the plan: of those with the best layout the latest. First is where in the list to begin: the
// round before found nothing better.
func (p *planning) planTogether(ctx context.Context, first int) (found, error) {
	var nets []*network
	usual, folded, ripens := false, false, false
	for i, d := range p.breads {
		n, err := d.Bake.network(d.Now, d.Wanted, d.Zone, d.times(), p.company(i))
		if err != nil {
			return found{}, quantity.At(p.path(i), err)
		}
		nets = append(nets, n)
		usual = usual || d.Bake.Loaves.FreshWithin == usualFreshness
		folded = folded || d.Bake.Bulk.Folds > 0
		ripens = ripens || slices.ContainsFunc(n.p.Steps, ripensByItself)
	}
	asked := func(l layout) schedule.Problem {
		problem := p.together(nets, l)
		if p.any {
			problem.Effort = anyEffort
		}
		problem.Bounds = append(problem.Bounds[:len(problem.Bounds):len(problem.Bounds)], p.near()...)
		return problem
	}
	try := func(l layout) (schedule.Problem, bool, error) {
		problem := asked(l)
		ok, err := problem.Possible(ctx)
		if err != nil {
			err = fmt.Errorf("timetable: %w", err)
		}
		return problem, ok, err
	}
	all := layouts(usual)
	// Mostly the layout of the round before fits as it is, with the folds at their interval: then nothing else is
	// asked.
	same := all[first]
	if same.ripe = p.ripe; !p.planned {
		same.ripe = nearPeak[0]
	}
	if t, fits, err := asked(same).LatestTimes(ctx); err != nil {
		return found{}, fmt.Errorf("timetable: %w", err)
	} else if fits {
		return found{timetable: t, problem: p.together(nets, layout{folds: everFar}), layout: first,
			share: all[first].share, ripe: same.ripe}, nil
	}
	plain, ok, err := try(layout{folds: everFar})
	if err != nil {
		return found{}, err
	}
	out := found{problem: p.together(nets, layout{folds: everFar})} // what is kept for planning again has no room to keep
	best, l := plain, layout{folds: everFar}
	for i := first; ok && i < len(all); i++ {
		l = all[i]
		l.folds = everFar
		problem, fits, err := try(l)
		if err != nil {
			return out, err
		}
		if fits {
			best, out.layout = problem, i
			break
		}
	}
	for _, share := range nearPeak { // and what ripens is used as near to its peak
		if !ripens || !ok {
			break
		}
		nearer := l
		nearer.ripe = share
		problem, fits, err := try(nearer)
		if err != nil {
			return out, err
		}
		if fits {
			best, l, out.ripe = problem, nearer, share
			break
		}
	}
	for _, give := range foldGives { // folds stay as near to their interval as that allows
		if !folded || !ok {
			break
		}
		closer := l
		closer.folds = give
		problem, fits, err := try(closer)
		if err != nil {
			return out, err
		}
		if fits {
			best = problem
			break
		}
	}
	if p.brief && !ok {
		out.timetable = schedule.Timetable{Verdict: schedule.Unknown}
		return out, nil
	}
	if ok {
		out.share = l.share
		out.timetable, _, err = best.LatestTimes(ctx)
	} else {
		out.timetable, err = best.Latest(ctx)
	}
	if err != nil {
		return out, fmt.Errorf("timetable: %w", err)
	}
	return out, nil
}

// anyEffort bounds the search for late times where any timetable will do. Judgment: the first ones are found within a
// few nodes.
const anyEffort = 20

// nearPeak are how much of its good hours a levain or preferment is let stand after its peak, where that can be: the
// least is tried first. Judgment: at its peak it raises most and is least sour; its last hour is for emergencies.
var nearPeak = [...]float64{0.25, 0.5, 0.75}

// ripensByItself reports whether a step is a levain or preferment whose clock was computed.
func ripensByItself(s schedule.DayStep) bool {
	return s.Kind == schedule.Ripen && s.MaxFirm && s.Max > s.Min
}

// foldsMoved is the farthest that a fold is planned from its interval.
func (d *Day) foldsMoved() quantity.Elapsed {
	bulk, ok := d.Timetable.Step(idBulk)
	f, err := d.Bake.folding(d.Rising.Bulk.Ready())
	if !ok || err != nil {
		return 0
	}
	var most quantity.Elapsed
	for _, s := range d.Timetable.Steps {
		if s.Kind == schedule.Fold {
			off := quantity.Elapsed(s.Start.Sub(bulk.Start)) - quantity.Elapsed(s.Number)*f.every
			most = max(most, off, -off)
		}
	}
	return most
}
