package bakeday

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// shortage is what there is too little of for the loaves wanted.
type shortage struct {
	name       string
	levain     bool // it is the levain
	need, have quantity.Mass
	wanted     Loaves // what was wanted; the bake has what there is enough for
}

// limited is the bake with as many of its loaves as there is flour, levain and everything else for, and its batch;
// where not even one can be made, with one smaller loaf. The shortage is nil when there is enough. What a levain
// holds that stands ready is not taken from the flour at hand a second time.
func (b *Bake) limited() (*Bake, dough.Batch, *shortage, error) {
	batch, err := b.ownBatch()
	if err != nil {
		return b, batch, nil, err
	}
	short := b.scarcest(batch)
	if short == nil {
		return b, batch, nil, nil
	}
	less := *b
	l := &less.Loaves
	if n := quantity.Grams(float64(l.Pieces)).Scale(short.have, short.need).Grams(); n >= 1 {
		l.Pieces = int(n)
	} else {
		l.Baked = l.Baked.Times(int64(l.Pieces)).Scale(short.have, short.need)
		l.Pieces = 1
	}
	batch, err = less.ownBatch()
	return &less, batch, short, err
}

// noScale shows less than this; so much is rounding.
var noScale = quantity.Grams(0.001)

// scarcest is what runs out first, or nil.
func (b *Bake) scarcest(batch dough.Batch) *shortage {
	var worst *shortage
	look := func(name string, levain bool, need, have quantity.Mass) {
		if have.IsZero() || need.Sub(have).Compare(noScale) < 0 {
			return
		}
		if worst == nil || have.PercentOf(need).Compare(worst.have.PercentOf(worst.need)) < 0 {
			worst = &shortage{name: name, levain: levain, need: need, have: have, wanted: b.Loaves}
		}
	}
	standing := map[string]quantity.Mass{}
	if b.Levain.standing() {
		build, _ := batch.Build(levainName)
		for _, l := range build.Lines {
			standing[l.Name] = l.Mass
		}
		look(levainName, true, build.Made, b.Levain.CultureAtHand)
	}
	needs := map[string]quantity.Mass{}
	for _, l := range batch.Overall() {
		needs[l.Name] = l.Mass.Sub(standing[l.Name])
	}
	for _, list := range b.lists() {
		for _, l := range list.lines {
			look(l.Name, false, needs[l.Name], l.AtHand)
		}
	}
	return worst
}

// note says what there was too little of, and what comes of it.
func (s *shortage) note(made Loaves) working.Message {
	name := working.Tell("bakeday.named", "%v", s.name)
	if s.levain {
		name = working.Tell("bakeday.levain_name", "levain")
	}
	return working.Tell("bakeday.note_limited",
		"%d of %.0f would take %.0f of %v, and there are %.0f: the plan is for %d of %.0f",
		s.wanted.Pieces, s.wanted.Baked, s.need, name, s.have, made.Pieces, made.Baked)
}
