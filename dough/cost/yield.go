package cost

import "example.org/maslin/dough/quantity"

// Trimming is an ingredient of which only a part is usable: give what was bought and what was usable of it to learn the
// yield, or the yield and what has to be usable to learn how much to buy.
type Trimming struct {
	Usable quantity.Mass    `json:"usable"`
	Bought quantity.Mass    `json:"bought,omitzero"`
	Yield  quantity.Percent `json:"yield,omitzero"`
}

// UsableYield answers which part of what was bought is usable: 100 · usable ÷ bought. Both above 0,
// usable at most bought. Rounded half to even to a millionth of a point. Errors: ErrOutOfRange,
// ErrInconsistent. Source: BC Cook Articulation Committee, yield testing.
func (t Trimming) UsableYield() (quantity.Percent, error) {
	var p quantity.Problems
	u := quantity.Check(&p, "Usable", t.Usable, quantity.Mass{}, mostDough)
	b := quantity.Check(&p, "Bought", t.Bought, quantity.Micrograms(1), mostDough)
	if u && b && t.Usable.Compare(t.Bought) > 0 {
		p.Add("Usable", t.Usable, quantity.Tell("cost.want_at_most_what_was_bought", "at most what was bought, %v",
			t.Bought), quantity.ErrInconsistent)
	}
	if err := p.ErrFor(t); err != nil {
		return quantity.Percent{}, err
	}
	return t.Usable.PercentOf(t.Bought), nil
}

// tooMuchToBuy is wanted of a weight that with its yield would be more than any that can be told.
func tooMuchToBuy() quantity.Phrase {
	return quantity.Tell("cost.want_less_to_buy", "less, or a higher yield: so much cannot be bought")
}

// ToBuy answers how much to buy for a usable weight: usable ÷ yield, the inverse of [Trimming.UsableYield].
// Yield 1 to 100 %. Rounded half to even to the microgram. Errors: ErrOutOfRange.
func (t Trimming) ToBuy() (quantity.Mass, error) {
	var p quantity.Problems
	quantity.Check(&p, "Usable", t.Usable, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Yield", t.Yield, quantity.MustPercent("1 %"), wholeFlour)
	if err := p.ErrFor(t); err != nil {
		return quantity.Mass{}, err
	}
	buy := t.Usable.Over(t.Yield)
	if !buy.IsValid() {
		p.Add("Usable", t.Usable, tooMuchToBuy(), quantity.ErrOutOfRange)
		return quantity.Mass{}, p.ErrFor(t)
	}
	return buy, nil
}
