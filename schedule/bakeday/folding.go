package bakeday

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// folding is how the folds lie in the bulk: all of them before the dough is divided, as likely long as it takes.
type folding struct {
	asked, planned int
	every          quantity.Elapsed // from one to the next: the interval asked for, or closer where an addition needs it
	takes          quantity.Elapsed
	last           quantity.Elapsed // after mixing: when the last one begins at the latest
	bulk           quantity.TimeRange
}

// restsAfterFold is how long a dough lies still after the last fold before it is divided. Common practice, no source:
// half an hour is better, less than a quarter leaves it too tight to shape.
const restsAfterFold = quantity.Elapsed(15 * time.Minute)

// folding plans as many folds as the likely bulk has time for, up to a quarter closer together than asked for. Folds at
// which something goes in are all made, however close that is.
//
// Errors: ErrInconsistent where the bulk is too short for those.
func (b *Bake) folding(bulk quantity.TimeRange) (folding, error) {
	f := folding{asked: b.Bulk.Folds, every: b.Bulk.FoldEvery, takes: grid(b.Bulk.FoldTakes.Duration()), bulk: bulk}
	f.last = grid(bulk.Likely) - f.takes - restsAfterFold
	for f.planned < f.asked {
		at := b.foldAt(f.planned + 1)
		if at-foldSlack(at) > f.last {
			break
		}
		f.planned++
	}
	if needed := b.lastFoldWithAddition(); needed > f.planned {
		share := grid(bulk.Likely) * quantity.Elapsed(needed) / quantity.Elapsed(needed+1)
		f.planned, f.last = needed, max(f.last, quantity.Elapsed(share.Duration().Truncate(time.Minute)))
	}
	if f.planned == 0 {
		return f, nil
	}
	f.every = min(f.every, quantity.Elapsed((f.last.Duration() / time.Duration(f.planned)).Truncate(time.Minute)))
	if f.every < f.takes {
		var p quantity.Problems
		p.AddCode("Bulk.Folds", "no_time_for_folds", quantity.Tell("bakeday.got_folds",
			"%d of %v each, in a bulk of likely %v", f.planned, f.takes, grid(bulk.Likely)),
			quantity.Tell("bakeday.want_time_for_folds",
				"what goes in at a fold earlier, shorter folds, or a slower dough"), quantity.ErrInconsistent)
		return f, p.Err()
	}
	return f, nil
}

// lastFoldWithAddition is the number of the last fold at which something goes in; 0: at none.
func (b *Bake) lastFoldWithAddition() int {
	last := 0
	for _, list := range b.lists() {
		for _, l := range list.lines {
			if at, fold := l.moment(); at == schedule.Fold {
				last = max(last, fold)
			}
		}
	}
	return last
}

// due is when a fold begins after mixing, from 1, where nothing else is in its way.
func (f folding) due(n int) quantity.Elapsed { return quantity.Elapsed(n) * f.every }

// between are the limits of a fold that may be moved so far from when it is due.
func (f folding) between(n int, far quantity.Elapsed) (least, most quantity.Elapsed) {
	at := f.due(n)
	off := foldSlack(at)
	if far != everFar {
		off = min(off, far)
	}
	return at - off, max(at, min(at+off, f.last))
}

// notes say which folds the bulk has no time for, and which an early dough is ready before.
func (b *Bake) foldNotes(f folding) []working.Message {
	var out []working.Message
	likely := grid(f.bulk.Likely)
	needs := b.foldAt(f.asked) + f.takes + restsAfterFold
	switch {
	case f.planned < f.asked && f.planned == 0:
		out = append(out, working.Tell("bakeday.note_no_folds",
			"%d {1|fold|folds} every %v and a rest after that take %v, and the bulk is likely over after %v: none is planned; "+
				"fold sooner, or give the dough more time with less yeast or levain",
			f.asked, b.Bulk.FoldEvery, needs, likely))
	case f.planned < f.asked:
		out = append(out, working.Tell("bakeday.note_fewer_folds",
			"%d folds every %v and a rest after that take %v, and the bulk is likely over after %v: planned are %d, every %v",
			f.asked, b.Bulk.FoldEvery, needs, likely, f.planned, f.every))
	case f.every < b.Bulk.FoldEvery:
		out = append(out, working.Tell("bakeday.note_closer_folds",
			"%d {1|fold|folds} every %v and a rest after that take %v, and the bulk is likely over after %v: planned every %v",
			f.asked, b.Bulk.FoldEvery, needs, likely, f.every))
	}
	early := grid(f.bulk.Early)
	for n := 1; n <= f.planned; n++ {
		if f.due(n)+f.takes > early {
			out = append(out, working.Tell("bakeday.note_fold_after_early",
				"an early dough is ready %v after mixing, before fold %d of %d is over: it is then divided without that",
				early, n, f.planned))
			break
		}
	}
	return out
}
