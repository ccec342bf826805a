package bakeday

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// Lamination is a stretching of the whole dough over the bench during the bulk, with what is laid into it, and a rest
// of its own before the dough is touched again.
type Lamination struct {
	After quantity.Elapsed `json:"after,omitzero"` // from mixing; zero: one hour
	Takes quantity.Elapsed `json:"takes,omitzero"` // zero: a quarter of an hour
	Rest  quantity.Elapsed `json:"rest,omitzero"`  // before the next fold, or shaping; zero: half an hour
}

// soonestLamination is how soon after mixing a dough can be laminated.
const soonestLamination = quantity.Elapsed(5 * time.Minute)

// withDefaults fills in what may be left out: common practice, no source.
func (l *Lamination) withDefaults() *Lamination {
	if l == nil {
		return nil
	}
	full := *l
	for _, x := range []struct {
		e     *quantity.Elapsed
		usual time.Duration
	}{{&full.After, time.Hour}, {&full.Takes, 15 * time.Minute}, {&full.Rest, 30 * time.Minute}} {
		if *x.e == 0 {
			*x.e = quantity.Elapsed(x.usual)
		}
	}
	return &full
}

// foldAt is when a fold is due after mixing, from 1.
func (b *Bake) foldAt(n int) quantity.Elapsed { return quantity.Elapsed(n) * b.Bulk.FoldEvery }

// checkLamination reports a lamination that a fold falls into.
func (b *Bake) checkLamination(p *quantity.Problems) {
	l := b.Bulk.Lamination
	if l == nil {
		return
	}
	const path = "Bulk.Lamination."
	ok := p.Duration(path+"After", l.After.Duration(), soonestLamination.Duration(), 24*time.Hour)
	ok = p.Duration(path+"Takes", l.Takes.Duration(), time.Minute, 2*time.Hour) && ok
	ok = p.Duration(path+"Rest", l.Rest.Duration(), time.Minute, 12*time.Hour) && ok
	if !ok || b.Bulk.FoldEvery < 0 {
		return
	}
	for n := 1; n <= min(b.Bulk.Folds, 12); n++ {
		at := b.foldAt(n)
		if at+b.Bulk.FoldTakes > l.After && at < l.After+l.Takes+l.Rest {
			after, before := at+b.Bulk.FoldTakes, at-l.Takes-l.Rest
			want := quantity.Tell("bakeday.want_time_no_fold_or_rest",
				"a time with no fold in it or in the rest after it: %v or later, or %v or earlier", after, before)
			if before < soonestLamination {
				want = quantity.Tell("bakeday.want_time_after_fold", "a time after the fold: %v or later", after)
			}
			p.AddCode(path+"After", "fold_falls_into_it", quantity.Tell("bakeday.got_fold_at", "%v, with fold %d at %v",
				l.After, n, at), want, quantity.ErrInconsistent)
			return
		}
	}
}

// laminate puts the lamination between the folds, with its rest.
func (n *network) laminate(bulk string, folds []string, shape string) {
	l := n.b.Bulk.Lamination
	if l == nil {
		return
	}
	id := n.add(schedule.DayStep{
		ID: idLaminate, Kind: schedule.Laminate, Name: working.Tell("bakeday.step_laminate", "laminate the dough"),
		Min: grid(l.Takes.Duration()), Needs: n.work,
	})
	at, rest := grid(l.After.Duration()), grid(l.Rest.Duration())
	off := min(foldSlack(at), quantity.Elapsed(10*time.Minute))
	about := working.Tell("bakeday.rule_laminate", "laminate about %v into the bulk", at)
	n.p.Links = append(n.p.Links, schedule.Link{
		From: bulk, To: id, Kind: schedule.StartToStart, Min: at - off, Max: at + off, Firm: true,
		MinWords: about, MaxWords: about,
	})
	rests := working.Tell("bakeday.rule_laminated_rests", "the laminated dough rests %v", rest)
	for i, fold := range folds {
		before := schedule.Link{From: fold, To: id, Max: schedule.NoLimit, Firm: true}
		if n.b.foldAt(i+1) >= l.After {
			before = schedule.Link{From: id, To: fold, Min: rest, Max: schedule.NoLimit, Firm: true, MinWords: rests}
		}
		n.p.Links = append(n.p.Links, before)
	}
	n.p.Links = append(n.p.Links, schedule.Link{
		From: id, To: shape, Min: rest, Max: schedule.NoLimit, Firm: true, MinWords: rests,
	})
}
