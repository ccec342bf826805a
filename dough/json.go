package dough

import (
	"encoding/json"

	"example.org/maslin/dough/quantity"
)

// targets are the targets in the data form, one of which is given.
type targets struct {
	ByFlour  *ByFlour  `json:"by_flour,omitzero"`
	ByDough  *ByDough  `json:"by_dough,omitzero"`
	Pieces   *Pieces   `json:"pieces,omitzero"`
	Baked    *Baked    `json:"baked,omitzero"`
	ByLevain *ByLevain `json:"by_levain,omitzero"`
	AtHand   *AtHand   `json:"at_hand,omitzero"`
	ByVolume *ByVolume `json:"by_volume,omitzero"`
}

// order is a formula with the target that it is made for, in the data form.
type order struct {
	Formula Formula `json:"formula"`
	targets
}

func (o *targets) aim(t Target) {
	switch t := t.(type) {
	case ByFlour:
		o.ByFlour = &t
	case ByDough:
		o.ByDough = &t
	case Pieces:
		o.Pieces = &t
	case Baked:
		o.Baked = &t
	case ByLevain:
		o.ByLevain = &t
	case AtHand:
		o.AtHand = &t
	case ByVolume:
		o.ByVolume = &t
	}
}

func (o *targets) target() (Target, bool) {
	var found []Target
	if o.ByFlour != nil {
		found = append(found, *o.ByFlour)
	}
	if o.ByDough != nil {
		found = append(found, *o.ByDough)
	}
	if o.Pieces != nil {
		found = append(found, *o.Pieces)
	}
	if o.Baked != nil {
		found = append(found, *o.Baked)
	}
	if o.ByLevain != nil {
		found = append(found, *o.ByLevain)
	}
	if o.AtHand != nil {
		found = append(found, *o.AtHand)
	}
	if o.ByVolume != nil {
		found = append(found, *o.ByVolume)
	}
	if len(found) != 1 {
		return nil, false
	}
	return found[0], true
}

// batchData is a batch as data: what it was made from, from which it is made again when it is read, and its views.
type batchData struct {
	Order   *order   `json:"order,omitzero"`   // a formula and its target
	Weights *Weights `json:"weights,omitzero"` // or weights that were given
	// Pieces and Scaled stand where the flour was rounded up and the target no longer says them.
	Pieces int           `json:"pieces,omitzero"`
	Scaled quantity.Mass `json:"scaled,omitzero"`

	Views *batchViews `json:"views,omitzero"` // written, not read
}

// batchViews are what a batch says, for those who do not compute it.
type batchViews struct {
	Dough         quantity.Mass      `json:"dough"`
	Flour         quantity.Mass      `json:"flour"`
	Water         quantity.Mass      `json:"water"`
	Pieces        int                `json:"pieces,omitzero"`
	ScalingWeight quantity.Mass      `json:"scaling_weight,omitzero"`
	Limiting      string             `json:"limiting,omitzero"`
	Hydration     quantity.Percent   `json:"hydration"`
	Effective     EffectiveHydration `json:"effective_hydration"`
	Prefermented  quantity.Percent   `json:"prefermented"`
	Salt          quantity.Percent   `json:"salt"`
	WholeGrain    quantity.Percent   `json:"whole_grain"`
	Rye           quantity.Percent   `json:"rye"`
	Allergens     Allergens          `json:"allergens"`
	Unstated      []string           `json:"unstated,omitzero"`
	Overall       []DoughLine        `json:"overall"`
	Builds        []Build            `json:"builds"`
	FinalDough    []DoughLine        `json:"final_dough"`
}

// MarshalJSON implements json.Marshaler: what the batch was made from, and its views. A batch that is not from
// Formula.For or Weights.Batch is null.
func (b Batch) MarshalJSON() ([]byte, error) {
	if len(b.mass) == 0 {
		return []byte("null"), nil
	}
	d := batchData{Views: &batchViews{
		Dough: b.dough, Flour: b.flour, Water: b.Water(), Pieces: b.Pieces(), ScalingWeight: b.ScalingWeight(),
		Limiting:  b.Limiting(),
		Hydration: b.Hydration(), Effective: b.EffectiveHydration(), Prefermented: b.Prefermented(), Salt: b.SaltShare(),
		WholeGrain: b.WholeGrain(), Rye: b.Rye(), Allergens: b.Allergens(), Unstated: b.Unstated(),
		Overall: b.Overall(), Builds: append([]Build{}, b.Builds()...), FinalDough: b.FinalDough(),
	}}
	if b.weighed {
		w := b.Weights()
		d.Weights = &w
		return json.Marshal(d)
	}
	d.Order = &order{Formula: b.Formula()}
	d.Order.aim(b.target)
	if d.Order.ByFlour != nil && b.goal.pieces > 0 {
		d.Pieces, d.Scaled = b.goal.pieces, b.goal.scaled
	}
	return json.Marshal(d)
}

// UnmarshalJSON implements json.Unmarshaler: it makes the batch again from what it was made from, and does not read its
// views. Errors: those of [Formula.For] and [Weights.Batch].
func (b *Batch) UnmarshalJSON(data []byte) error {
	var d batchData
	if err := quantity.ReadJSON(data, &d); err != nil {
		return err
	}
	switch {
	case d.Weights != nil && d.Order == nil:
		made, err := d.Weights.Batch()
		if err == nil {
			*b = made
		}
		return quantity.At("Weights", err)
	case d.Order != nil && d.Weights == nil:
		target, ok := d.Order.target()
		if !ok {
			return quantity.DataPaths(d, &quantity.InputError{GoPath: "Order",
				Want: quantity.Tell("dough.want_one_target_by_dough_or",
					"one target, such as by_dough or baked"),
				Err: quantity.ErrInconsistent})
		}
		made, ofFormula, ofTarget := d.Order.Formula.weighed(target)
		var p quantity.Problems
		p.Join("Order.Formula", ofFormula)
		p.Join("Order", ofTarget)
		if err := p.ErrFor(d); err != nil {
			return err
		}
		if d.Pieces > 0 {
			made.goal.pieces, made.goal.scaled = d.Pieces, d.Scaled
		}
		*b = made
		return nil
	case string(data) == "null":
		*b = Batch{}
		return nil
	}
	return quantity.DataPaths(d, &quantity.InputError{
		GoPath: "Order",
		Want:   quantity.Tell("dough.want_formula_target_or_weights", "a formula with its target, or weights"),
		Err:    quantity.ErrRequired,
	})
}
