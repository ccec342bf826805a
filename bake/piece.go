package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// ScaledPiece asks what a piece of dough weighs when it is baked.
type ScaledPiece struct {
	Dough quantity.Mass    `json:"dough"` // the piece when it goes in
	Loss  quantity.Percent `json:"loss"`  // lost in the oven
	// lost while cooling, of the loaf out of the oven; 0 % when Loss includes it
	Cooling quantity.Percent `json:"cooling,omitzero"`
	Basis   LossBasis        `json:"basis,omitzero"` // what Loss is a percentage of
}

// Bread answers: how heavy is the loaf that this piece becomes? It is the inverse of [PromisedLoaf.Scaling].
//
// Formula: bread = dough·(1 − L)·(1 − c) when the loss is of the dough; dough/(1 + L)·(1 − c) when it is of the bread.
// Symbols: L loss in the oven, c loss while cooling. Valid range: 10 g to 20 kg; losses as [PromisedLoaf.Scaling].
// Accuracy: exact to a microgram or two. Errors: [quantity.ErrOutOfRange]. Source: arithmetic.
func (in ScaledPiece) Bread() (Scaling, error) {
	var p quantity.Problems
	quantity.Check(&p, "Dough", in.Dough, leastPiece, mostPiece)
	checkLosses(&p, in.Loss, in.Cooling, in.Basis)
	if err := p.ErrFor(in); err != nil {
		return Scaling{}, err
	}
	whole := quantity.NewPercent(100)
	hot := whole.Sub(in.Loss).Of(in.Dough)
	if in.Basis == OfBread {
		hot = in.Dough.Over(whole.Add(in.Loss))
	}
	bread := whole.Sub(in.Cooling).Of(hot)
	loaf := PromisedLoaf{Baked: bread, Loss: in.Loss, Cooling: in.Cooling, Basis: in.Basis}
	return Scaling{Dough: in.Dough, Baked: bread, Lost: in.Dough.Sub(bread), in: loaf, fromDough: true}, nil
}

func checkLosses(p *quantity.Problems, loss, cooling quantity.Percent, basis LossBasis) {
	quantity.Check(p, "Loss", loss, quantity.Percent{}, mostLoss)
	quantity.Check(p, "Cooling", cooling, quantity.Percent{}, quantity.NewPercent(10))
	lossBases.Check(p, "Basis", basis)
}

func (s Scaling) message() working.Message {
	if s.fromDough {
		return working.Tell("bake.bread_of_dough", "%.1f of dough makes %.1f of bread", s.Dough, s.Baked)
	}
	return working.Tell("bake.scaling", "%.1f of dough for %v baked", s.Dough, s.Baked)
}
