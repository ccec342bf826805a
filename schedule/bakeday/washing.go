package bakeday

import (
	"slices"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// washed says when a mixer is washed between two doughs, because the one before carried what the next does not.
func (p *planning) washed() []working.Message {
	var out []working.Message
	for _, m := range p.kitchen.Mixers {
		var mixes []schedule.Timed
		for _, s := range p.timetable.Steps {
			if d := p.bread(s.Bread); s.Kind == schedule.Mix && d != nil && d.Bake.Mixing.Mixer == m.Kind {
				mixes = append(mixes, s)
			}
		}
		slices.SortStableFunc(mixes, func(a, b schedule.Timed) int { return a.Start.Compare(b.Start) })
		for i := 1; i < len(mixes); i++ {
			before, next := p.bread(mixes[i-1].Bread), p.bread(mixes[i].Bread)
			left := before.Batch.Allergens() &^ next.Batch.Allergens()
			if left == 0 {
				continue
			}
			out = append(out, working.Tell("bakeday.note_wash",
				"wash the %v mixer, and what the dough touches, at %v, between %v and %v: the first carries %v, the second does "+
					"not; this is no promise that none is left",
				m.Kind, mixes[i-1].End.In(p.clock.Zone), working.Tell("bakeday.named", "%v", before.Bake.Name),
				working.Tell("bakeday.named", "%v", next.Bake.Name), left))
		}
	}
	return out
}

// bread is the one of a name.
func (p *planning) bread(name string) *planned {
	for _, d := range p.breads {
		if d.Bake.Name == name {
			return d
		}
	}
	return nil
}
