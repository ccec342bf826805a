package bakeday

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

// Formula returns the bake's dough in baker's percentages, the levain taken out of its lines.
// Whether it is a possible formula is for [dough.Formula.Check] to say, or for [Bake.Batch].
func (b Bake) Formula() dough.Formula {
	if full, err := b.inPercent(); err == nil {
		b = full
	}
	return b.formula()
}

// Scales returns what the bake's kitchen weighs with: a step of 1 g where it does not say.
func (b Bake) Scales() dough.Scales { return b.scales() }

// Batch answers how much of everything a target takes, by the bake's formula.
//
// A nil target is the bake's own: its loaves, with their bake loss or the guide value for style and
// size. Nothing else of the bake needs to be filled in. Ranges, accuracy and errors are those of
// [dough.Formula.For]; what is wrong with the formula is reported under the fields of the bake, and
// what is wrong with a target of the caller under the target's own. Source: as there.
func (b Bake) Batch(target dough.Target) (dough.Batch, error) {
	full, err := b.inPercent()
	if err != nil {
		return dough.Batch{}, atFields(b, err)
	}
	if target != nil {
		f := full.formula()
		if err := f.Check(); err != nil {
			return dough.Batch{}, atFields(b, b.asWritten(full.from(ofFormula, err), false))
		}
		return f.For(target)
	}
	_, batch, _, err := full.limited()
	return batch, atFields(b, b.asWritten(err, false))
}

// ownBatch is the batch of the bake's own loaves; the bake is one in percent.
func (b *Bake) ownBatch() (dough.Batch, error) {
	f := b.formula()
	var p quantity.Problems
	p.Int("Loaves.Pieces", b.Loaves.Pieces, 1, 1000)
	quantity.Check(&p, "Loaves.Baked", b.Loaves.Baked, quantity.Grams(20), quantity.Kilograms(10))
	quantity.Check(&p, "Loaves.Loss", b.Loaves.Loss, quantity.NewPercent(0), quantity.NewPercent(40))
	p.Join("", b.from(ofFormula, f.Check()))
	if err := p.Err(); err != nil {
		return dough.Batch{}, err
	}
	loss, err := b.loss()
	if err != nil {
		return dough.Batch{}, err
	}
	batch, err := f.For(dough.Baked{Pieces: b.Loaves.Pieces, Each: b.Loaves.Baked, Loss: loss})
	return batch, b.from(ofFormula, err)
}
