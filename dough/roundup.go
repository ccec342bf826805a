package dough

import "example.org/maslin/dough/quantity"

// FlourUp is the trade's habit of rounding the flour up and keeping the formula: the batch for the
// next higher multiple of step of total flour. It covers losses that nobody has measured. The
// second result is how much more dough that is. The batch grows; nothing is fed back silently,
// because this is a new batch.
//
//	flour′ = ⌈flour ÷ step⌉ · step
//
// Step from 1 mg to 1 t. Errors: ErrOutOfRange. Source: Gisslen, Professional Baking (flour for 96 oz of
// dough at 377.5 % is 25.43 oz, rounded up to 26 oz).
func (b Batch) FlourUp(step quantity.Mass) (Batch, quantity.Mass, error) {
	var p quantity.Problems
	if len(b.mass) == 0 {
		p.Required("Batch", quantity.Tell("dough.want_batch_was_reckoned", "a batch that was reckoned"))
	}
	quantity.Check(&p, "step", step, quantity.Micrograms(1000), quantity.Kilograms(1000))
	if err := p.ErrFor(b); err != nil {
		return Batch{}, quantity.Mass{}, err
	}
	flour, _ := b.flour.RoundUp(step)
	up := Batch{c: b.c, target: ByFlour{flour}, goal: goal{flour: flour, pieces: b.goal.pieces}}
	if err := up.weigh(); err != nil {
		return Batch{}, quantity.Mass{}, err
	}
	up.goal.scaled = up.dough.Scale(b.goal.scaled, b.dough) // the process loss stays the same share
	return up, up.dough.Sub(b.dough), nil
}
